// What a sheet is on paper, as far as its text says: room for a pencil, words that are large enough, and what stays together over the end of a
// page. That nothing is wider than the paper, the checks in the editor's browser hold.
import { describe, expect, test } from "vitest";
import { samples } from "../samples.ts";
import { attribute, readPage, rowsOf, textOf } from "./read-page.ts";
import { sheetsOf, sheetsOfSample } from "./sheets.ts";

/** The room between the margins of A4, the narrower of the two papers, mm. */
const WIDE = 210 - 2 * 12;
const HIGH = 279.4 - 14 - 16;
const PIXEL = 25.4 / 96;
const POINT = 25.4 / 72;

/** What a person writes a size into. */
const SIZES = new Set([
  "0°",
  "45°",
  "90°",
  "135°",
  "Swing",
  "Read",
  "Read again",
  "Reads on it before",
  "and after",
]);

type Element = ReturnType<typeof readPage>["elements"][number];

const hasClass = (element: Element, name: string): boolean =>
  attribute(element, "class")?.split(" ").includes(name) === true;

function elementsIn(element: Element): readonly Element[] {
  return element.childNodes.flatMap((each) =>
    "tagName" in each ? [each, ...elementsIn(each)] : [],
  );
}

/** The value in mm of a property that the page's style gives a selector. */
function millimetres(html: string, selector: string, property: string): number {
  const rule = new RegExp(`^${selector} \\{([^}]*)\\}`, "m").exec(html)?.[1];
  return Number(
    new RegExp(`(?:^|[; ])${property}: ([\\d.]+)mm`).exec(rule ?? "")?.[1],
  );
}

describe.each(samples)("$path", ({ path }) => {
  const { job, blank } = sheetsOfSample(path);
  const pages = [job, blank].map(readPage);

  test("what asks for something stands in one line with where that is written", () => {
    for (const { elements } of pages) {
      const asking = elements.filter((each) => hasClass(each, "ask"));
      const alone = elements.filter(
        (each) =>
          hasClass(each, "line") &&
          !hasClass(each, "angle") &&
          !asking.some((one) => elementsIn(one).includes(each)),
      );
      // of three readings of a reamer the second and the third
      expect(alone.length % 2).toBe(0);
      expect(
        alone.every(
          ({ parentNode }) =>
            parentNode !== null &&
            "tagName" in parentNode &&
            textOf(parentNode).startsWith("It measures"),
        ),
      ).toBe(true);
    }
  });

  test("a size is written into a field 25 mm wide", () => {
    const tables = (pages[1]?.elements ?? []).filter((each) =>
      hasClass(each, "fill"),
    );
    for (const table of tables) {
      const within = elementsIn(table);
      const heads = within
        .filter(({ tagName }) => tagName === "th")
        .map(textOf);
      const given = within
        .filter(({ tagName }) => tagName === "col")
        .map((each) => /([\d.]+)%/.exec(attribute(each, "style") ?? "")?.[1])
        .map((each) => (each === undefined ? undefined : Number(each)));
      const left =
        100 - given.reduce<number>((sum, each) => sum + (each ?? 0), 0);
      const open = given.filter((each) => each === undefined).length;
      heads.forEach((head, at) => {
        if (!SIZES.has(head)) return;
        const share = given[at] ?? left / open;
        expect((share / 100) * WIDE, head).toBeGreaterThan(25);
      });
      expect(rowsOf(table).every((row) => row.length === heads.length)).toBe(
        true,
      );
    }
  });

  test("no word of a picture is printed under 9 pt, and none is taller than a page", () => {
    const figures = (pages[0]?.elements ?? []).filter(
      ({ tagName }) => tagName === "figure",
    );
    for (const each of figures) {
      const share = hasClass(each, "beside") ? (1 - 3 / WIDE) / 2 : 1;
      const within = elementsIn(each);
      const svg = within.find(({ tagName }) => tagName === "svg");
      const [width = 0, height = 0] = ["width", "height"].map((name) =>
        Number(svg === undefined ? 0 : attribute(svg, name)),
      );
      const scale = (WIDE * share) / (width * PIXEL);
      const least = Math.min(
        ...within
          .filter(({ tagName }) => tagName === "text")
          .map((text) => Number(attribute(text, "font-size") ?? 12)),
      );
      expect((least * PIXEL * scale) / POINT).toBeGreaterThan(8.99);
      expect(height * PIXEL * scale).toBeLessThan(HIGH);
    }
  });

  test("a table of more than two columns scrolls by itself on a narrow screen", () => {
    for (const { elements } of pages) {
      const within = elements
        .filter((each) => hasClass(each, "wide"))
        .flatMap(elementsIn);
      const wide = elements.filter(
        (each) =>
          each.tagName === "table" &&
          2 <
            elementsIn(each).filter(({ tagName }) => tagName === "col").length,
      );
      expect(wide.every((each) => within.includes(each))).toBe(true);
    }
  });

  test("a sentence that opens a section goes with what it opens", () => {
    const opening = (pages[0]?.elements ?? []).filter((each) => {
      const beside =
        each.parentNode !== null && "childNodes" in each.parentNode
          ? each.parentNode.childNodes
          : [];
      const before = beside[beside.indexOf(each) - 1];
      return (
        each.tagName === "p" &&
        before !== undefined &&
        "tagName" in before &&
        before.tagName === "h2" &&
        textOf(each).length > 0
      );
    });
    expect(
      opening.filter((each) => !hasClass(each, "heads")).map(textOf),
    ).toEqual([]);
  });
});

test("lines to write on are 25 mm long and 8 mm apart, and so are the rows of tables to fill in", () => {
  const { job, blank } = sheetsOfSample("shop/winch.thou");
  for (const html of [job, blank]) {
    expect(millimetres(html, "\\.line", "width")).toBeGreaterThanOrEqual(25);
    expect(millimetres(html, "\\.pen", "line-height")).toBeGreaterThanOrEqual(
      8,
    );
    expect(millimetres(html, "\\.fill td", "height")).toBeGreaterThanOrEqual(8);
  }
});

test("the frame of a table stands off the edge of what is printed by more than half its line", () => {
  const { job } = sheetsOfSample("shop/winch.thou");
  const line = Number(
    /thead th \{[^}]*border-bottom-width: ([\d.]+)mm/.exec(job)?.[1],
  );
  const edge = Number(/^body \{[^}]*padding: 0 ([\d.]+)mm;/m.exec(job)?.[1]);
  expect(edge).toBeGreaterThan(line / 2);
});

test("the style says what stays together: the first and the last rows of results, and what is said below them", () => {
  const { job } = sheetsOfSample("shop/winch.thou");
  expect(job).toContain(".heads { break-after: avoid;");
  expect(job).toContain(".short tbody tr:first-child { break-after: avoid; }");
  expect(job).toContain(
    ".short tbody tr:last-child, .below { break-before: avoid; }",
  );
  const { elements } = readPage(job);
  expect(
    elements
      .filter((each) => hasClass(each, "below"))
      .map((each) => textOf(each).slice(0, 12)),
  ).toEqual(
    expect.arrayContaining(["(a) unknown:", "To have grou", "* oversize t"]),
  );
});

test("pictures stay black on white where a reader has colours of their own, which the words take", () => {
  const { job } = sheetsOfSample("shop/winch.thou");
  expect(job).toMatch(
    /@media screen and \(forced-colors: active\) \{\s+figure svg \{ forced-color-adjust: none; background: #fff; \}/,
  );
});

test("what a dry fit finds is asked for on a line of its own", () => {
  const { elements } = readPage(sheetsOfSample("shop/winch.thou").job);
  const found = elements.filter(
    (each) => hasClass(each, "pen") && textOf(each) === "Found",
  );
  expect(found.map(({ tagName }) => tagName)).toEqual(["div", "div"]);
});

test("the sizes of two fits stand side by side with their clearances below; the last of an odd number has them beside", () => {
  const fit = (name: string): string =>
    `journal ${name} on p\nbore ${name} in q\nfit ${name} of journal ${name} in bore ${name}\n`;
  const captions = (names: string): readonly string[] =>
    readPage(
      sheetsOf(
        `job a\n  units mm\npart p\npart q\n${Array.from(names, fit).join("")}`,
      ).job,
    )
      .elements.filter(({ tagName }) => tagName === "figcaption")
      .map(textOf);
  expect(captions("a")).toEqual(["fit a: sizes", "fit a: clearance"]);
  expect(captions("abc")).toEqual([
    "fit a: sizes",
    "fit b: sizes",
    "fit a: clearance",
    "fit b: clearance",
    "fit c: sizes",
    "fit c: clearance",
  ]);
});

test("a picture of a fit leaves no more than a good third of a page empty before it", () => {
  const heights = ["shop/hot-case.thou", "shop/winch.thou"].flatMap((path) =>
    readPage(sheetsOfSample(path).job)
      .elements.filter(
        (each) => each.tagName === "figure" && hasClass(each, "beside"),
      )
      .map((each) => {
        const svg = elementsIn(each).find(({ tagName }) => tagName === "svg");
        const [width = 0, height = 0] = ["width", "height"].map((name) =>
          Number(svg === undefined ? 0 : attribute(svg, name)),
        );
        return (height / width) * ((WIDE - 3) / 2);
      }),
  );
  expect(heights).toHaveLength(8);
  expect(Math.max(...heights)).toBeLessThan(0.4 * HIGH);
});

test("who read a swing and on which day is written into a field 30 mm wide", () => {
  const swings = (more: string): string =>
    sheetsOf(
      `job a\n  units mm\npart p\npart q\njournal a on p\n${more}bore a in q\nbore b in q\nfit a of journal a in bore a\n` +
        "line l\n  bore a from 0 to 30\n  bore b from 60 to 90\n",
    ).blank;
  const shares = ["", "  swing 0.02 on vee 60 deg, 3 lobes\n"].flatMap((more) =>
    readPage(swings(more))
      .elements.filter((each) => hasClass(each, "fill"))
      .flatMap((table) => {
        const within = elementsIn(table);
        const at = within
          .filter(({ tagName }) => tagName === "th")
          .findIndex((each) => textOf(each) === "By, and the day");
        const column = within.filter(({ tagName }) => tagName === "col")[at];
        return column === undefined
          ? []
          : [Number(/([\d.]+)%/.exec(attribute(column, "style") ?? "")?.[1])];
      }),
  );
  expect(shares).toHaveLength(6);
  expect((Math.min(...shares) / 100) * WIDE).toBeGreaterThan(30);
});

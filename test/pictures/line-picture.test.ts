// The line in section against its own numbers: places along the axis are linear, what is drawn larger is drawn as many times larger as it
// says, a ledge stands where it was worked out by hand, and what is not known says what to write.
import { describe, expect, test } from "vitest";
import { linePicture, rankingTable } from "../../server/pictures/pictures.ts";
import {
  all,
  childOf,
  group,
  numberOf,
  readSvg,
  textOf,
  titled,
  titleOf,
  type SvgElement,
} from "./read-svg.ts";
import { changed, changedIn, sampleShop, textShop } from "./shop.ts";
import type { Shop } from "../../server/model/shop.ts";

function drawn(shop: Shop, line: string, width = 700): SvgElement {
  return readSvg(linePicture(shop, line, { theme: "paper", width }));
}

/** Left and right end of the edge of a bore. */
function endsOf(svg: SvgElement, bore: string): readonly [number, number] {
  const line = childOf(
    group(svg, new RegExp(`^${bore}, (?:measured|predicted)[^:]*: `)),
    "line",
  );
  return [numberOf(line, "x1"), numberOf(line, "x2")];
}

const THREE = sampleShop("shop/three-bores.thou");
const WINCH = sampleShop("shop/winch.thou");

describe("along the axis", () => {
  // three bores of the capstan: 0 to 30, 140 to 170, 290 to 320 mm
  test.each([360, 700, 900])("places are linear at a width of %d", (width) => {
    const svg = drawn(THREE, "line capstan", width);
    const places = [
      ...endsOf(svg, "bore top"),
      ...endsOf(svg, "bore middle"),
      ...endsOf(svg, "bore bottom"),
    ];
    const [first = 0, , , , , last = 0] = places;
    const scale = (last - first) / 320;
    expect(scale).toBeGreaterThan(0.5);
    [0, 30, 140, 170, 290, 320].forEach((z, index) => {
      expect(places[index]).toBeCloseTo(first + z * scale, 1);
    });
  });

  test("the chain of dimensions has a link for each length, and their unit is said", () => {
    const said = textOf(drawn(THREE, "line capstan"));
    expect(said).toContain("30 110 30 120 30");
    expect(said).toContain("Lengths in mm");
  });

  test("a journal in a blind bore ends where it reaches to", () => {
    // mouth at 1.25 in, the journal goes 1.150 in deep: its end is at 0.10 in; the rear bore is 5.50 to 6.75
    const svg = drawn(WINCH, "line layshaft");
    const [from, to] = endsOf(svg, "bore front");
    const scale = (to - from) / 1.25;
    const rect = childOf(group(svg, /^journal front, measured/), "rect");
    expect(numberOf(rect, "x")).toBeCloseTo(from + 0.1 * scale, 1);
    expect(numberOf(rect, "x") + numberOf(rect, "width")).toBeCloseTo(to, 1);
    expect(endsOf(svg, "bore rear")[0]).toBeCloseTo(from + 5.5 * scale, 1);
  });
});

test("the clearance is drawn as many times larger as the picture says", () => {
  const svg = drawn(THREE, "line capstan", 700);
  const times = Number(/clearance drawn (\d+) times/.exec(textOf(svg))?.[1]);
  expect(textOf(svg)).toContain("Lengths and diameters to one scale");
  const [from, to] = endsOf(svg, "bore top");
  const scale = (to - from) / 30;
  const [upper, lower] = group(svg, /^bore top, measured/).children.filter(
    (each) => each.name === "line",
  );
  if (upper === undefined || lower === undefined) throw new Error("no edges");
  const bore = numberOf(lower, "y1") - numberOf(upper, "y1");
  const journal = numberOf(
    childOf(group(svg, /^journal top, measured/), "rect"),
    "height",
  );
  // by hand: bore 25.009, journal 24.9605 in the mean: 0.0485 mm
  expect(bore - journal).toBeCloseTo(0.0485 * scale * times, 1);
  // the journal itself is the mean of the bore, to the same scale
  expect(journal).toBeCloseTo(25.009 * scale, 1);
});

test("a ledge is drawn where the reamer can't reach, and said", () => {
  // hole 1.350 deep, chamfer 0.2, point 0.05, gap 0.010: cut to 1.090 of the bush's 1.250 in, so 0.160 is left
  const job = changedIn("shop/winch.thou", "shop/crib.thou", (text) =>
    text
      .replaceAll("chamfer 0.060", "chamfer 0.200")
      .replaceAll("point 0.020", "point 0.050"),
  );
  const svg = drawn(job, "line layshaft");
  const [from, to] = endsOf(svg, "bore front");
  const scale = (to - from) / 1.25;
  const ledge = childOf(
    group(svg, /^ledge that the reamer leaves in bore front: 0\.1600 in long/),
    "rect",
  );
  expect(numberOf(ledge, "width")).toBeCloseTo(0.16 * scale, 1);
  expect(numberOf(ledge, "x")).toBeCloseTo(from, 1);
  expect(textOf(svg)).toMatch(/leaves a\s+ledge of 0\.1600 in at the bottom/);
  expect(titled(drawn(WINCH, "line layshaft"), /^ledge that/)).toEqual([]);
});

describe("what is not known", () => {
  const said = (text: string, line = "line l"): string => {
    const svg = drawn(textShop(text), line);
    return [textOf(svg), ...all(svg).map(titleOf)].join(" ");
  };
  const HEAD =
    "job j\n  units mm\npart g\nbore a in g\n  limits 25.02 to 25.04\n";

  test("no bores", () => {
    expect(said("job j\n  units mm\nline l\n")).toContain(
      "write its bores in the order of cutting",
    );
  });
  test("no reamer, no fit", () => {
    const text = said(`${HEAD}line l\n  bore a from 0 to 30\n`);
    expect(text).toContain("not known: write the reamer of line l");
    expect(text).toContain("not known: write the fit that runs in bore a");
  });
  test("no boss", () => {
    const text = said(
      `${HEAD}hole a in g\n  depth through\nline l\n  bore a from 0 to 30\n`,
    );
    expect(text).toContain("write the boss of hole a");
  });
  test("a line that can't be read", () => {
    expect(said(`${HEAD}line l\n  bore a from 0 to\n`)).toContain(
      "waits for a line with an error: mend it first",
    );
  });
  test("which end of a lone bore is blind", () => {
    const text = said(
      `job j\n  units mm\npart g\nhole a in g\n  depth 40 blind\nbore a in g\n  limits 25.02 to 25.04\nline l\n  bore a from 0 to 30\n  cut to 25.02 to 25.04\n`,
    );
    expect(text.replace(/\s+/g, " ")).toContain(
      "which end is blind is not recorded",
    );
  });
});

test("a bore that is read is past its cut", () => {
  expect(textOf(drawn(THREE, "line capstan"))).toContain(
    "already cut: 25.008 to 25.010 mm, measured",
  );
});

test("a cut is full once it is made, and dashed and hatched while it is foretold", () => {
  const cutOf = (shop: typeof THREE, line: string, bore: string) => {
    const cut = group(drawn(shop, line), new RegExp(`^the cut of ${bore}$`));
    return {
      dashes: childOf(cut, "rect").attributes["stroke-dasharray"],
      isHatched: cut.children.some(({ name }) => name === "path"),
    };
  };
  expect(cutOf(THREE, "line capstan", "bore top")).toEqual({
    dashes: undefined,
    isHatched: false,
  });
  expect(cutOf(WINCH, "line layshaft", "bore front")).toEqual({
    dashes: "4 2",
    isHatched: true,
  });
});

describe("the ranking", () => {
  // by hand: r-8755 reads 0.87538 and 0.87540 and cuts up to 0.0002 over; the front journal reads 0.87428 to 0.87435
  test("the winch's best is the one that its line names", () => {
    const { tools } = rankingTable(WINCH, "line layshaft");
    const [best] = tools;
    expect(best?.name).toBe("reamer r-8755");
    expect(best?.named).toBe(true);
    expect(best?.left.map(({ ref }) => ref)).toEqual(["fit rear", "fit front"]);
    const front = best?.left[1];
    expect(front?.words).toBe("as wanted");
    expect((front?.low ?? 0) / 0.0254).toBeCloseTo(0.87534 - 0.87435, 4);
    expect((front?.high ?? 0) / 0.0254).toBeCloseTo(0.87564 - 0.87428, 4);
    expect(
      tools.find(({ name }) => name === "reamer r-876")?.left[1]?.words,
    ).toBe("too loose");
  });

  test("a conflict is said, with both that conflict", () => {
    const shop = changed("shop/winch.thou", (text) =>
      text.replace(
        /(fit rear of[^\n]*\n {2}want )0\.0008 to 0\.0016/,
        "$10.0030 to 0.0036",
      ),
    );
    expect(rankingTable(shop, "line layshaft").notes.join(" ")).toContain(
      "fit rear needs a larger bore than fit front bears",
    );
  });

  test("with nothing wanted it says what to write", () => {
    const { tools, notes } = rankingTable(
      textShop(
        "job j\n  units mm\npart g\nbore a in g\nline l\n  bore a from 0 to 30\n",
      ),
      "line l",
    );
    expect(tools).toEqual([]);
    expect(notes[0]).toContain(
      "not known: write a fit with `want`, or limits, of bore a",
    );
  });
});

test.each([1, 250, 300, 400])(
  "each bore is named in full at a width of %d",
  (width) => {
    const words = all(drawn(THREE, "line capstan", width))
      .filter(
        ({ name, attributes }) =>
          name === "text" && attributes["font-weight"] === "bold",
      )
      .map(({ text }) => text)
      .join(" ");
    for (const name of ["top", "middle", "bottom"])
      expect(words.split(" ")).toContain(name);
  },
);

const BLIND = `job w
  units inch
part layshaft
part case
  material iron-grey
journal front on layshaft
  reaches 1.300
  read 0.8742 0.8742
hole front in case
  depth 1.350 blind
bore front in case
  read 0.8716 0.8717 as roughed
fit front of journal front in bore front
  want 0.0008 to 0.0018
reamer r-8755
  size 0.8755
  chamfer 0.060
  point 0.020
line layshaft
  bore front from 0 to 1.35
  ream with r-8755
`;

test("a ledge is named in words where it is drawn, and a journal that runs onto it", () => {
  const said = (text: string, width = 700): string =>
    textOf(drawn(textShop(text), "line layshaft", width)).replaceAll(
      /\s+/gu,
      " ",
    );
  // 1.350 deep less 0.010 kept, 0.060 and 0.020: cut to size to 1.260, and the journal goes 0.040 further
  expect(said(BLIND)).toContain(
    "journal front runs onto the ledge by 0.0400 in",
  );
  expect(said(BLIND)).toContain("filled: the ledge that the reamer leaves");
  const shorter = said(BLIND.replace("reaches 1.300", "reaches 1.250"));
  expect(shorter).toContain("leaves a ledge of 0.0900 in");
  expect(shorter).not.toContain("runs onto");
  const through = said(BLIND.replace("1.350 blind", "through"));
  expect(through).not.toContain("ledge");
  // a scale that is nearly one is not told as "1 times"
  for (const width of [250, 260, 300, 420, 700])
    expect(said(BLIND, width)).not.toMatch(/ 1 times/u);
});

test.each([320, 466, 700])(
  "no leader runs through the words that it begins at, in a width of %d",
  (width) => {
    const named = changed("shop/winch.thou", (text) =>
      text.replaceAll(
        /\bbore rear\b/gu,
        "bore rear-of-the-layshaft-next-to-the-brake-drum",
      ),
    );
    const headings = all(drawn(named, "line layshaft", width)).filter(
      ({ children }) =>
        children.some(({ name }) => name === "line") &&
        children.some(({ name }) => name === "text") &&
        children.some(
          ({ name, text }) => name === "title" && text.includes(": clearance "),
        ),
    );
    expect(headings).toHaveLength(2);
    for (const heading of headings) {
      const texts = heading.children.filter(({ name }) => name === "text");
      const lowest = Math.max(...texts.map((each) => numberOf(each, "y")));
      expect(numberOf(childOf(heading, "line"), "y1")).toBeGreaterThan(lowest);
    }
    expect(textOf(drawn(named, "line layshaft", width))).toContain(
      "brake-drum",
    );
  },
);

test.each([360, 700])(
  "the words of a cut's bars stand clear of every edge, hatch and other word at a width of %d",
  (width) => {
    for (const svg of [
      drawn(WINCH, "line layshaft", width),
      drawn(THREE, "line capstan", width),
    ]) {
      const words = all(svg).filter(
        ({ name, text }) => name === "text" && /^(?:pilot|cut)$/.test(text),
      );
      expect(words.length).toBeGreaterThan(2);
      for (const word of words) {
        const [x, y] = [numberOf(word, "x"), numberOf(word, "y")];
        // a letter of 11 px, with its tail
        const [top, bottom] = [y - 9, y + 3];
        const isClear = (from: number, to: number): boolean =>
          to < top || bottom < from;
        for (const each of all(svg)) {
          if (each === word) continue;
          if (each.name === "rect" && Number(each.attributes.height) < 20) {
            const at = numberOf(each, "y");
            const within = numberOf(each, "x");
            if (within - 12 < x && x < within + numberOf(each, "width") + 12)
              expect(isClear(at, at + numberOf(each, "height"))).toBe(true);
          }
          if (each.name === "text" && !words.includes(each)) {
            const at = numberOf(each, "y");
            expect(isClear(at - 9, at + 3), each.text).toBe(true);
          }
        }
      }
    }
  },
);

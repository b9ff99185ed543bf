// The tolerance picture against figures worked out beside: heights are linear in the values, and what is drawn is what the record says.
import { describe, expect, test } from "vitest";
import { nominalOf } from "../../server/pictures/nominal.ts";
import { fitPicture } from "../../server/pictures/pictures.ts";
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
import { changed, sampleShop, textShop } from "./shop.ts";

const OPTIONS = { theme: "paper", width: 480 } as const;

function drawn(path: string, fit: string): SvgElement {
  return readSvg(fitPicture(sampleShop(path), fit, OPTIONS));
}

/** Every block with a range in its title, and every reading, as [value, height on the page]. */
function points(svg: SvgElement): readonly (readonly [number, number])[] {
  const blocks = titled(
    svg,
    /^(?:limits of )?(?:journal|bore) [\w-]+ [\d.]+(?: to [\d.]+)? (?:in|mm)$/,
  ).flatMap((group): readonly (readonly [number, number])[] => {
    const rect = childOf(group, "rect");
    const values = [...titleOf(group).matchAll(/\d*\.\d+/g)].map(Number);
    const [low, high = low] = values;
    const top = numberOf(rect, "y");
    return [
      [Number(high), top],
      [Number(low), top + numberOf(rect, "height")],
    ] as const;
  });
  const readings = titled(svg, /: [\d.]+ (?:in|mm), /).flatMap(
    (group): readonly (readonly [number, number])[] => {
      const circle = group.children.find((each) => each.name === "circle");
      return circle === undefined
        ? []
        : [
            [
              Number(/: ([\d.]+)/.exec(titleOf(group))?.[1]),
              numberOf(circle, "cy"),
            ] as const,
          ];
    },
  );
  return [...blocks, ...readings];
}

describe("heights", () => {
  test.each([
    ["shop/winch.thou", "fit front", 0.00001],
    ["shop/winch.thou", "fit rear", 0.00001],
    ["shop/pump.thou", "fit drive", 0.001],
    ["shop/three-bores.thou", "fit middle", 0.001],
  ])("%s, %s: one straight line through all of them", (path, fit, digit) => {
    const all = points(drawn(path, fit));
    expect(all.length).toBeGreaterThan(3);
    const sorted = [...all].sort(([one], [other]) => one - other);
    const [low, high] = [sorted[0], sorted.at(-1)];
    if (low === undefined || high === undefined)
      throw new Error("nothing drawn");
    const slope = (high[1] - low[1]) / (high[0] - low[0]);
    // up the page is larger
    expect(slope).toBeLessThan(0);
    for (const [value, y] of all) {
      const expected = low[1] + slope * (value - low[0]);
      // titles are rounded to the last digit that is known
      expect(Math.abs(y - expected)).toBeLessThan(
        0.1 + 1.5 * Math.abs(slope) * digit * 0.5,
      );
    }
  });

  test("the bar of the scale is as long as it says", () => {
    const svg = drawn("shop/winch.thou", "fit front");
    const scale = group(svg, /^bar: /);
    const says = Number(/[\d.]+/.exec(titleOf(scale))?.[0]);
    const bar = childOf(scale, "line");
    const long = Math.abs(numberOf(bar, "y1") - numberOf(bar, "y2"));
    const limits = childOf(
      group(svg, /^limits of journal front 0\.8740 to 0\.8745 in$/),
      "rect",
    );
    // the limits are 0.0005 in apart
    expect(long / says / (numberOf(limits, "height") / 0.0005)).toBeCloseTo(
      1,
      2,
    );
  });
});

// by hand: journal front reads 0.87428 to 0.87435, wants 0.0008 to 0.0016: 0.87435 + 0.0008 and 0.87428 + 0.0016
test("bore sizes wanted", () => {
  expect(
    titled(
      drawn("shop/winch.thou", "fit front"),
      /^bore sizes wanted 0\.87515 to 0\.87588 in$/,
    ),
  ).toHaveLength(1);
});

test("every reading is a point with a bar of its uncertainty", () => {
  const svg = drawn("shop/winch.thou", "fit front");
  const readings = titled(svg, /^journal front, (?:near|far): /);
  expect(readings.map((each) => /0\.\d+/.exec(titleOf(each))?.[0])).toEqual([
    "0.87432",
    "0.87428",
    "0.87430",
    "0.87435",
    "0.87431",
    "0.87432",
  ]);
  for (const each of readings) {
    expect(titleOf(each)).toContain("U 0.000040 in (95 %)");
    expect(each.children.filter((child) => child.name === "line")).toHaveLength(
      3,
    );
  }
});

test("measured and predicted differ in word and in line", () => {
  const svg = drawn("shop/pump.thou", "fit drive");
  const journal = group(svg, /^journal drive, measured: /);
  const bore = group(svg, /^bore drive, predicted from the cut: /);
  expect(textOf(journal)).toContain("measured");
  expect(textOf(bore)).toContain("predicted");
  const dashesOf = (side: SvgElement, title: RegExp) =>
    childOf(group(side, title), "rect").attributes["stroke-dasharray"];
  expect(dashesOf(journal, /^journal drive 24/)).toBeUndefined();
  expect(dashesOf(bore, /^bore drive 25/)).toBeTruthy();
});

test("a size that is one figure is a line at its height, in its column's manner", () => {
  const shop = textShop(
    "job j\n  units inch\npart p\npart q\njournal a on p\n  read 0.8746\nbore a in q\nfit a of journal a in bore a\n  want 0.0007 to 0.0011\nreamer r\n  size 0.8755\nline l\n  bore a from 0 to 1\n  ream with r\n",
  );
  const svg = readSvg(fitPicture(shop, "fit a", OPTIONS));
  const [journal, bore] = [/^journal a 0\.8746 in$/, /^bore a 0\.8755 in$/].map(
    (title) => childOf(group(svg, title), "line"),
  );
  for (const each of [journal, bore]) {
    expect(numberOf(each, "y1")).toBe(numberOf(each, "y2"));
    expect(numberOf(each, "x2") - numberOf(each, "x1")).toBeGreaterThan(20);
    expect(numberOf(each, "stroke-width")).toBeGreaterThan(1);
  }
  expect(journal?.attributes["stroke-dasharray"]).toBeUndefined();
  expect(bore?.attributes["stroke-dasharray"]).toBeTruthy();
});

test("what is not known says what to write, and nothing is drawn for it", () => {
  const shop = changed("shop/winch.thou", (text) =>
    text.replace(
      /(journal rear on layshaft\n {2}length 1\.250\n) {2}limits.*\n/,
      "$1",
    ),
  );
  const svg = readSvg(fitPicture(shop, "fit rear", OPTIONS));
  expect(textOf(svg)).toMatch(/not known: write a reading of\s+journal rear/);
  expect(titled(svg, /^journal rear 0/)).toEqual([]);
  const damaged = changed("shop/winch.thou", (text) =>
    text.replace("want 0.0008 to 0.0016", "want 0.0008 to 0,0016"),
  );
  const said = textOf(readSvg(fitPicture(damaged, "fit front", OPTIONS)));
  expect(said).toContain("waits for a line with an error");
});

test("nothing runs through what is said of a column that is not known", () => {
  const shop = textShop(
    "job j\n  units inch\npart p\npart q\njournal a on p\n  read 0.9993 0.9996\nbore a in q\nfit a of journal a in bore a\n  want 0.0008 to 0.0013\n",
  );
  const svg = readSvg(fitPicture(shop, "fit a", OPTIONS));
  const bore = group(svg, /^bore a: not known/);
  expect(childOf(bore, "rect").attributes.fill).toBe("#fff");
  // the lines of the axis and of the wanted sizes come before it, so it lies over them
  const inOrder = all(svg);
  const crossing = inOrder.findLastIndex(
    (each) =>
      each.name === "line" && each.attributes["stroke-dasharray"] === "2 3",
  );
  expect(0 < crossing && crossing < inOrder.indexOf(bore)).toBe(true);
});

test.each([250, 300, 480])(
  "at %i wide, headings are whole and clear of each other",
  (width) => {
    const svg = readSvg(
      fitPicture(sampleShop("shop/winch.thou"), "fit front", {
        theme: "paper",
        width,
      }),
    );
    const heads = all(svg).filter(
      (each) =>
        each.name === "text" &&
        each.attributes["text-anchor"] === "middle" &&
        numberOf(each, "y") < 120 &&
        !/^[\d.]+$/.test(each.text),
    );
    const room = (width - 66 - 6) / 3;
    for (const side of ["journal front", "bore wanted", "bore front"])
      expect(textOf(svg).replaceAll(/\s+/g, " ")).toContain(side);
    for (const each of heads) {
      expect(each.text).not.toContain("…");
      // about as wide as its letters come to
      const size = Number(each.attributes["font-size"] ?? 12);
      expect(each.text.length * size * 0.55, each.text).toBeLessThan(room + 4);
    }
  },
);

test("hot and cold stand below, each with what is wanted then", () => {
  const hot = group(drawn("shop/hot-case.thou", "fit idler"), /^hot 2 /);
  expect(titleOf(hot)).toContain("shaft 70 °C, case 25 °C");
  expect(titleOf(hot)).toContain("measured, not as wanted");
  expect(all(hot).filter((each) => each.name === "rect")).toHaveLength(2);
});

test("each entry leads to its line", () => {
  const svg = drawn("shop/winch.thou", "fit front");
  const refs = new Set(all(svg).map((each) => each.attributes["data-ref"]));
  for (const ref of ["fit front", "journal front", "bore front"])
    expect(refs).toContain(ref);
});

describe("the nominal size", () => {
  // from memory of ISO 286-1, a cross-check only (the tables have their own checks): 25 f7 is 24.980 to 24.959 (upper deviation −20 µm), 25 H7 25.000 to 25.021, 25 p6 25.022 to 25.035
  test.each([
    ["f7", "shaft", 24.959e-3, 24.98e-3, 25e-3],
    ["H7", "hole", 25e-3, 25.021e-3, 25e-3],
    ["p6", "shaft", 25.022e-3, 25.035e-3, 25e-3],
  ] as const)("%s of a %s", (className, feature, low, high, size) => {
    expect(
      nominalOf({ className, low, high, step: undefined }, feature),
    ).toBeCloseTo(size, 9);
  });

  test("is not guessed where the limits are no class's", () => {
    expect(
      nominalOf(
        { className: "H7", low: 25e-3, high: 25.02e-3, step: undefined },
        "hole",
      ),
    ).toBeUndefined();
    expect(
      nominalOf(
        { className: undefined, low: 25e-3, high: 25.021e-3, step: undefined },
        "hole",
      ),
    ).toBeUndefined();
  });

  test("is drawn at its height", () => {
    const svg = drawn("shop/pump.thou", "fit drive");
    const line = childOf(group(svg, /^nominal size 25\.000 mm$/), "line");
    const limits = childOf(
      group(svg, /^limits of bore drive 25\.000 to 25\.021 mm$/),
      "rect",
    );
    expect(numberOf(line, "y1")).toBeCloseTo(
      numberOf(limits, "y") + numberOf(limits, "height"),
      1,
    );
  });
});

test("nothing written at all still gives a picture that says what to write", () => {
  const shop = textShop(
    "job j\n  units mm\npart p\npart q\njournal a on p\nbore a in q\nfit a of journal a in bore a\n",
  );
  const svg = readSvg(fitPicture(shop, "fit a", OPTIONS));
  const said = textOf(svg);
  expect(said).toContain("not known: write");
  expect(said).toContain("none is wanted yet");
});

test("the bore sizes that are wanted begin higher by what the journal's lobes take", () => {
  const wantedOf = (swing: string): readonly string[] => {
    const shop = textShop(
      `job j\n  units mm\npart p\npart c\njournal a on p\n  read 29.972\n${swing}bore a in c\nfit a of journal a in bore a\n  want 0.03 to 0.06\n`,
    );
    return titled(
      readSvg(fitPicture(shop, "fit a", OPTIONS)),
      /^bore sizes wanted/,
    ).map(titleOf);
  };
  // 29.972 + 0.03 and 29.972 + 0.06; three lobes show three times in a vee of 60°, so 0.030 is 0.010 more
  expect(wantedOf("")).toEqual(["bore sizes wanted 30.002 to 30.032 mm"]);
  expect(wantedOf("  swing 0.030 on vee 60 deg, 3 lobes\n")).toEqual([
    "bore sizes wanted 30.012 to 30.032 mm",
  ]);
});

describe("no word is cut, however narrow the picture", () => {
  const NARROW = textShop(`job w
  units inch
part layshaft
part case
journal drive-end-bearing on layshaft
bore drive-end-bearing in case
  read 0.8751 0.8752
fit drive-end-bearing of journal drive-end-bearing in bore drive-end-bearing
`);
  const textAt = (width: number): string =>
    all(
      readSvg(
        fitPicture(NARROW, "fit drive-end-bearing", { theme: "paper", width }),
      ),
    )
      .filter(({ name }) => name === "text")
      .map((each) => each.text)
      .join(" ");

  test.each([1, 250, 265, 280, 300, 320, 360, 420, 600])("%d px", (width) => {
    const text = textAt(width);
    expect(text).not.toContain("…");
    // a name goes on after its hyphen
    expect(text.replaceAll("- ", "-")).toContain("journal drive-end-bearing");
    expect(text.replaceAll("- ", "-")).toContain(
      "not known: write a reading of journal drive-end-bearing",
    );
    expect(text.replaceAll("- ", "-")).toContain(
      "not known: write the clearance that fit drive-end-bearing wants",
    );
  });

  test("where a column has no room for why it is empty, that stands below, by its name", () => {
    expect(textAt(250)).toContain("see below");
    expect(textAt(250).replaceAll("- ", "-")).toContain(
      "bore wanted: not known: write the clearance",
    );
    expect(textAt(600)).not.toContain("see below");
  });

  test("the figures of limits and of a size beside them stay apart", () => {
    // pump.thou: the bore is H7, 25.000 to 25.021, and is foretold at 25.009 to 25.021
    const svg = readSvg(
      fitPicture(sampleShop("shop/pump.thou"), "fit drive", {
        theme: "paper",
        width: 250,
      }),
    );
    const figures = all(svg)
      .filter(
        ({ name, text, attributes }) =>
          name === "text" &&
          /^25\.02\d$/.test(text) &&
          attributes["text-anchor"] === "middle",
      )
      .map((each) => numberOf(each, "y"));
    expect(figures).toHaveLength(2);
    const [one = 0, other = 0] = figures;
    expect(Math.abs(one - other)).toBeGreaterThanOrEqual(11);
  });
});

test("a name of many letters is broken where it has no hyphen, and ends in a sign where it would never end", () => {
  const job = (name: string): string =>
    `job w\n  units inch\npart p\njournal ${name} on p\nbore b in p\nfit f of journal ${name} in bore b\n`;
  const said = (name: string): string =>
    textOf(
      readSvg(
        fitPicture(textShop(job(name)), "fit f", {
          theme: "paper",
          width: 250,
        }),
      ),
    );
  expect(said("abcdefghijklmnop")).not.toContain("…");
  expect(said("x".repeat(60))).toContain("…");
});

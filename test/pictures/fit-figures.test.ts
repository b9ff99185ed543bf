// The figures of a fit's chart, however its sizes lie to each other: none on a line, none on another, all within the picture.
import fc from "fast-check";
import { expect, test } from "vitest";
import { fitPicture } from "../../server/pictures/pictures.ts";
import {
  all,
  childOf,
  numberOf,
  readSvg,
  titled,
  type SvgElement,
} from "./read-svg.ts";
import { sampleShop, textShop } from "./shop.ts";

interface Box {
  readonly what: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Figures of eleven are as high as 8 px, and each sign about as wide as 6. */
const HEIGHT = 8;
const SIGN = 6;

function figures(svg: SvgElement, chart: Box): readonly Box[] {
  return (
    all(svg)
      .filter(
        ({ name, text, attributes }) =>
          name === "text" &&
          attributes["text-anchor"] === "middle" &&
          /^(?:\d*\.\d+|limits)$/u.test(text),
      )
      .map((each) => {
        const half = (each.text.length * SIGN) / 2;
        const [x, foot] = [numberOf(each, "x"), numberOf(each, "y")];
        return {
          what: each.text,
          left: x - half,
          right: x + half,
          top: foot - HEIGHT,
          bottom: foot,
        };
      })
      // over them stand the headings, under them other words
      .filter(
        ({ top, bottom }) => chart.top - 16 < bottom && top < chart.bottom + 20,
      )
  );
}

/** Lines from side to side: those of round diameters, of the nominal size, of the sizes that are wanted. */
function lines(svg: SvgElement): readonly Box[] {
  return all(svg)
    .filter(
      (each) =>
        each.name === "line" &&
        numberOf(each, "y1") === numberOf(each, "y2") &&
        60 < Math.abs(numberOf(each, "x2") - numberOf(each, "x1")),
    )
    .map((each) => ({
      what: `the line at ${String(numberOf(each, "y1"))}`,
      left: numberOf(each, "x1"),
      right: numberOf(each, "x2"),
      top: numberOf(each, "y1"),
      bottom: numberOf(each, "y1"),
    }));
}

/** The columns, by their widest lines: those of round diameters. */
function chartOf(svg: SvgElement): Box {
  const across = lines(svg).filter(({ right }) => right < Infinity);
  const bars = all(svg).filter(
    ({ name, text }) => name === "text" && text.startsWith("bar: "),
  );
  const bottom = numberOf(bars[0] ?? svg, "y") - 16;
  return {
    what: "the chart",
    left: Math.min(...across.map(({ left }) => left)),
    right: Math.max(...across.map(({ right }) => right)),
    top: bottom - 190,
    bottom,
  };
}

const meet = (one: Box, other: Box): boolean =>
  one.left < other.right &&
  other.left < one.right &&
  one.top <= other.bottom &&
  other.top <= one.bottom;

function clashes(svg: SvgElement): readonly string[] {
  const chart = chartOf(svg);
  const shown = figures(svg, chart);
  const across = lines(svg).filter(
    ({ top }) => chart.top <= top && top <= chart.bottom,
  );
  return shown.flatMap((each, index) => [
    ...across
      .filter((line) => meet(each, line))
      .map(({ what }) => `${each.what} on ${what}`),
    ...shown
      .slice(index + 1)
      .filter((other) => meet(each, other))
      .map(({ what }) => `${each.what} on ${what}`),
    ...(each.top < chart.top - 10 || chart.bottom + 6 < each.bottom
      ? [`${each.what} out of the chart`]
      : []),
  ]);
}

test.each([320, 330, 340, 345, 350, 360, 380])(
  "the figures of limits and of a size beside them don't run together at %d px",
  (width) => {
    const svg = readSvg(
      fitPicture(sampleShop("shop/winch.thou"), "fit front", {
        theme: "paper",
        width,
      }),
    );
    const shown = figures(svg, chartOf(svg));
    const [limit, size] = ["0.8745", "0.87435"].map((wanted) =>
      shown.find(({ what }) => what === wanted),
    );
    if (limit === undefined || size === undefined) throw new Error("not drawn");
    // side by side with a blank between them, or one over the other
    const apart = size.left - limit.right;
    const over = Math.abs(size.bottom - limit.bottom);
    // where there is room for both, each stays at its own block
    if (345 <= width) expect(over).toBeLessThan(HEIGHT);
    expect(3 < apart || HEIGHT < over, String([apart, over])).toBe(true);
  },
);

test("a bore's figure that would lie on the line of a size that is wanted stands clear of it", () => {
  // the bore's lower figure would stand where the least that is wanted is drawn
  const shop = textShop(
    "job j\n  units mm\npart p\npart q\njournal a on p\n  read 29.980\nbore a in q\n  read 30.022 30.030\nfit a of journal a in bore a\n  want 0.037 to 0.060\n",
  );
  const svg = readSvg(
    fitPicture(shop, "fit a", { theme: "paper", width: 420 }),
  );
  expect(figures(svg, chartOf(svg)).map(({ what }) => what)).toContain(
    "30.022",
  );
  expect(clashes(svg)).toEqual([]);
});

test("a figure that has room between its block and the next line is not moved beyond that line", () => {
  const svg = readSvg(
    fitPicture(sampleShop("shop/winch.thou"), "fit front", {
      theme: "editor",
      width: 420,
    }),
  );
  const footOf = (text: string): number =>
    figures(svg, chartOf(svg)).find(({ what }) => what === text)?.bottom ?? NaN;
  // what is wanted ends at 0.87515, its figure under its line; the bore at 0.87534, over it
  expect(footOf("0.87534")).toBeLessThan(footOf("0.87515") - 12);
});

const micrometres = (least: number, most: number) =>
  fc.integer({ min: least, max: most });

const record = fc
  .record({
    size: fc.constantFrom(8, 25, 40, 120),
    journal: fc.array(micrometres(-60, 0), { minLength: 1, maxLength: 4 }),
    bore: fc.option(
      fc.array(micrometres(-20, 80), { minLength: 1, maxLength: 4 }),
    ),
    limits: fc.option(fc.tuple(micrometres(-10, 20), micrometres(1, 50))),
    shaft: fc.option(fc.tuple(micrometres(-60, -20), micrometres(1, 50))),
    want: fc.tuple(micrometres(5, 60), micrometres(1, 60)),
    uncertainty: fc.constantFrom("", "  uncertainty 0.004\n"),
    width: fc.constantFrom(250, 300, 330, 420, 600),
  })
  .map(({ size, journal, bore, limits, shaft, want, uncertainty, width }) => {
    const mm = (deviation: number): string =>
      (size + deviation / 1000).toFixed(3);
    const range = (from: readonly [number, number] | null): string =>
      from === null
        ? ""
        : `  limits ${mm(from[0])} to ${mm(from[0] + from[1])}\n`;
    const read = (of: readonly number[] | null): string =>
      of === null ? "" : `  read ${of.map(mm).join(" ")} with g\n`;
    return {
      width,
      text: `job j\n  units mm\ngauge g\n  kind micrometer\n  resolution 0.001\n${uncertainty}part p\npart q\njournal a on p\n${range(shaft)}${read(journal)}bore a in q\n${range(limits)}${read(bore)}fit a of journal a in bore a\n  want ${(want[0] / 1000).toFixed(3)} to ${((want[0] + want[1]) / 1000).toFixed(3)}\n`,
    };
  });

test("however sizes, limits and what is wanted lie to each other, no figure is on a line or on another figure", () => {
  fc.assert(
    fc.property(record, ({ text, width }) => {
      const svg = readSvg(
        fitPicture(textShop(text), "fit a", { theme: "paper", width }),
      );
      expect(clashes(svg)).toEqual([]);
    }),
    { numRuns: 300 },
  );
});

test.each([
  ["shop/winch.thou", "fit front"],
  ["shop/winch.thou", "fit rear"],
  ["shop/pump.thou", "fit drive"],
  ["shop/hot-case.thou", "fit idler"],
  ["shop/three-bores.thou", "fit middle"],
])("%s, %s", (path, fit) => {
  for (const width of [250, 330, 420, 480, 600])
    expect(
      clashes(
        readSvg(fitPicture(sampleShop(path), fit, { theme: "paper", width })),
      ),
      `${String(width)} px`,
    ).toEqual([]);
});

/** Of a figure in 11 px letters, a digit 0.556 of them wide and a point half of that (Helvetica's and Arial's own widths). */
const wide = (text: string): number =>
  Array.from(text).reduce(
    (sum, sign) => sum + (sign === "." ? 0.278 : 0.556),
    0,
  ) * 11;

test.each([
  ["shop/pump.thou", "fit drive", "journal drive"],
  ["shop/pump.thou", "fit drive", "bore drive"],
  ["shop/winch.thou", "fit front", "journal front"],
  ["shop/three-bores.thou", "fit top", "bore top"],
])(
  "%s, %s: in a narrow picture no size of %s is on the block of its limits, or cut",
  (path, fit, ref) => {
    const svg = readSvg(
      fitPicture(sampleShop(path), fit, { theme: "paper", width: 250 }),
    );
    const [limits] = titled(svg, new RegExp(`^limits of ${ref} `));
    const [own] = titled(svg, new RegExp(`^${ref} [\\d.]+ to [\\d.]+ `));
    if (limits === undefined || own === undefined) throw new Error("not drawn");
    const block = childOf(limits, "rect");
    const right = numberOf(block, "x") + numberOf(block, "width");
    const texts = own.children.filter(
      ({ name, text }) => name === "text" && /^[\d.]+$/.test(text),
    );
    expect(texts).toHaveLength(2);
    for (const each of texts) {
      expect(numberOf(each, "x") - wide(each.text) / 2).toBeGreaterThan(right);
      expect(numberOf(each, "x") + wide(each.text) / 2).toBeLessThan(250);
    }
  },
);

// How a size stands in a column of a fit's chart: a block from its low to its high end with both in figures, and its readings as points.
import type { Band } from "../core/quantity/band.ts";
import {
  lengthDigits,
  showLength,
  showRange,
  showUncertainty,
} from "../core/quantity/show.ts";
import type { Size } from "../model/evaluate/size.ts";
import type { Chart } from "./fit-chart.ts";
import type { Ink } from "./ink.ts";
import { bar, block, hatch, label, SMALL, type Box } from "./shapes.ts";
import { element, NOTHING, together, type Markup } from "./svg.ts";

/** How the figures at the ends of a block are written. */
export function figureIn(ink: Ink) {
  return {
    fill: ink.text,
    size: SMALL,
    anchor: "middle",
    rim: ink.paper,
  } as const;
}

/** A block from its low to its high size, with both written at its ends: dashed and hatched unless it was measured. */
export function zone(
  { low, high }: Band,
  { x, width }: Box,
  name: string,
  word: string,
  step: number | undefined,
  {
    chart,
    colour,
    kind,
    full,
    clear = 0,
    aside = 0,
  }: {
    readonly chart: Chart;
    readonly colour: string;
    readonly kind: "journal" | "bore";
    readonly full: boolean;
    /** Room over and under it that its bars of uncertainty take, m. */
    readonly clear?: number;
    /** How far to the right of its middle its sizes stand, px. */
    readonly aside?: number;
  },
): Markup {
  const { ink, system, down, figures } = chart;
  const box = { x, width, y: down(high), height: down(low) - down(high) };
  const middle = x + width / 2;
  const sizesAt = middle + aside;
  const figure = figureIn(ink);
  const [upper, lower] = [
    lengthDigits(high, system, step),
    lengthDigits(low, system, step),
  ];
  const top = figures.place(
    sizesAt,
    Math.min(box.y, down(high + clear)) - 5,
    upper,
    "up",
  );
  const under = Math.max(box.y + box.height, down(low - clear)) + 12;
  const bottom =
    lower === upper ? under - 13 : figures.place(sizesAt, under, lower, "down");
  const wordFoot =
    word === "" ? undefined : wordAt(box, middle, word, [top, bottom], chart);
  return element(
    "g",
    {},
    element("title", {}, `${name} ${showRange(low, high, system, step)}`),
    block(
      box,
      full
        ? { fill: colour, opacity: 0.3, stroke: colour, width: 1.5 }
        : { stroke: colour, width: 1.5, dashes: "4 2" },
    ),
    full
      ? NOTHING
      : hatch(box, {
          stroke: colour,
          spacing: kind === "bore" ? 7 : 5,
          lean: kind === "bore" ? "left" : "right",
        }),
    label(sizesAt, top, upper, figure),
    lower === upper ? NOTHING : label(sizesAt, bottom, lower, figure),
    wordFoot === undefined
      ? NOTHING
      : label(
          middle,
          figures.place(middle, wordFoot, word, "down"),
          word,
          figure,
        ),
  );
}

/** A word stands within its block where there is room clear of all lines, as near its middle as may be, else under or over its figures; nowhere where it would leave the chart. */
function wordAt(
  { y, height }: Box,
  middle: number,
  word: string,
  [top, bottom]: readonly [number, number],
  { box, figures }: Chart,
): number | undefined {
  const centre = y + height / 2 + 4;
  const within = upTo(height / 2 - 8).flatMap((off) => [
    centre + off,
    centre - off,
  ]);
  const under = upTo(box.y + box.height + 4 - bottom - 13);
  const over = upTo(top - 13 - box.y);
  return [
    ...within,
    ...under.map((off) => bottom + 13 + off),
    ...over.map((off) => top - 13 - off),
  ].find((foot) => figures.isFree(middle, foot, word));
}

/** 0, 1, 2 … px. */
function upTo(most: number): readonly number[] {
  return Array.from(
    { length: Math.max(0, Math.floor(most) + 1) },
    (_, at) => at,
  );
}

/** Each value as a point with a bar of its uncertainty, in the order that it was read. */
export function readings(
  size: Size,
  { x, width }: Box,
  name: string,
  { ink, system, down }: Chart,
): Markup {
  const all = size.places.flatMap((place) =>
    place.readings.flatMap((reading) =>
      reading.values.map((value) => ({ value, place: place.place })),
    ),
  );
  const u = size.budget?.expanded;
  const gap = width / (all.length + 1);
  return together(
    all.map(({ value, place }, index) => {
      const at = { x: x + gap * (index + 1), y: down(value) };
      const told =
        u === undefined
          ? "uncertainty not known"
          : `U ${showUncertainty(u, system)} (95 %)`;
      return element(
        "g",
        {},
        element(
          "title",
          {},
          `${name}${place === undefined ? "" : `, ${place}`}: ${showLength(value, system, size.step)}, ${told}`,
        ),
        u === undefined
          ? NOTHING
          : bar(
              { x: at.x, y: down(value - u) },
              { x: at.x, y: down(value + u) },
              Math.min(3, gap / 2.5),
              { stroke: ink.text },
            ),
        element("circle", {
          cx: at.x,
          cy: at.y,
          r: Math.min(2.6, Math.max(1.4, gap / 2.5)),
          fill: ink.text,
        }),
      );
    }),
  );
}

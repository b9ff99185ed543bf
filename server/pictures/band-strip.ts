// Bands on one axis: each row what is, over what is wanted. A fit's clearances cold and hot, the reamers of a line and the float of a stack
// are all drawn so.
import { UNIT_OF_SYSTEM, fixed, type System } from "../core/quantity/show.ts";
import type { Ink } from "./ink.ts";
import { scale, spanOf, ticks, type Scale } from "./scale.ts";
import {
  about,
  arrowHead,
  bar,
  block,
  dots,
  hatch,
  label,
  lettering,
  line,
  SMALL,
  wrapped,
} from "./shapes.ts";
import { NOTHING, together, type Markup } from "./svg.ts";

interface Ends {
  readonly low: number;
  readonly high: number;
}

export interface BandRow {
  /** The entry that a click leads to. */
  readonly ref: string;
  /** Stands before the words, in bold. */
  readonly name: string;
  /** What is said of the band, or why there is none. */
  readonly words: string;
  /** m; undefined where it is not known. */
  readonly band: Ends | undefined;
  readonly wanted: Ends | undefined;
  readonly measured: boolean;
  readonly wrong: boolean;
  /** Expanded, m. */
  readonly uncertainty?: number | undefined;
}

export interface StripOptions {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly system: System;
  readonly ink: Ink;
  /** "no clearance": what stands at zero. */
  readonly zero: string;
  /** Bands far outside what is wanted are cut at so many widths of it. */
  readonly reach?: number;
}

export interface Drawn {
  readonly markup: Markup;
  readonly height: number;
}

const BAR = 13;
const METRES: Readonly<Record<System, number>> = { inch: 0.0254, mm: 0.001 };

export function bandStrip(
  rows: readonly BandRow[],
  options: StripOptions,
): Drawn {
  const { x, y, width, ink } = options;
  const across = axisOf(rows, options);
  let below = y;
  const drawn = rows.map((row) => {
    const said = rowOf(row, below, across, options);
    below += said.height;
    return said.markup;
  });
  if (across === undefined)
    return { markup: together(drawn), height: below - y };
  const axis = axisLine(across, below, options);
  return {
    markup: together(
      drawn,
      axis.markup,
      line(x, below, x + width, below, { stroke: ink.rule }),
    ),
    height: below + axis.height - y,
  };
}

/** From zero to the furthest end, both ways. */
function axisOf(
  rows: readonly BandRow[],
  { x, width, reach }: StripOptions,
): Scale | undefined {
  const ends = (each: Ends | undefined): readonly number[] =>
    each === undefined ? [] : [each.low, each.high];
  const wanted = rows.flatMap((row) => ends(row.wanted));
  const bands = rows.flatMap((row) => ends(row.band));
  if (wanted.length + bands.length === 0) return undefined;
  const [low, high] =
    reach === undefined || wanted.length === 0
      ? [-Infinity, Infinity]
      : [
          Math.min(...wanted) -
            reach * (Math.max(...wanted) - Math.min(...wanted)),
          Math.max(...wanted) +
            reach * (Math.max(...wanted) - Math.min(...wanted)),
        ];
  const shown = [
    0,
    ...wanted,
    ...bands.map((value) => Math.min(high, Math.max(low, value))),
  ];
  return scale(spanOf(shown, 0.04, 1e-6), [x + 4, x + width - 4]);
}

function rowOf(
  row: BandRow,
  y: number,
  across: Scale | undefined,
  { x, width, ink }: StripOptions,
): Drawn {
  const said = `${row.name}: ${row.words}`;
  // bold letters are a little wider
  const lines = wrapped(said, row.wrong ? width / 1.05 : width, SMALL);
  const fill = row.wrong ? ink.wrong : ink.text;
  const words = lettering(
    x,
    y + 12,
    lines,
    { fill, size: SMALL, bold: row.wrong },
    14,
  );
  const under = y + lines.length * 14 + 7;
  const height = under - y + BAR + 9;
  if (
    across === undefined ||
    (row.band === undefined && row.wanted === undefined)
  )
    return { markup: about(row.ref, said, words), height: under - y + 4 };
  return {
    markup: about(
      row.ref,
      said,
      words,
      line(across(0), under - 3, across(0), under + BAR + 3, {
        stroke: ink.text,
      }),
      wantedBand(row.wanted, under, across, ink),
      row.band === undefined
        ? NOTHING
        : ownBand(row.band, row, under, across, { x, width, ink }),
    ),
    height,
  };
}

function wantedBand(
  wanted: Ends | undefined,
  y: number,
  across: Scale,
  ink: Ink,
): Markup {
  if (wanted === undefined) return NOTHING;
  const from = across(wanted.low);
  const box = {
    x: from,
    y: y - 2,
    width: across(wanted.high) - from,
    height: BAR + 4,
  };
  return together(
    dots(box, ink.wanted),
    block(box, { stroke: ink.wanted, width: 1.2, dashes: "2 2" }),
  );
}

/** Full for what is measured, hatched and dashed for what is foretold. */
function ownBand(
  band: Ends,
  row: BandRow,
  y: number,
  across: Scale,
  {
    x,
    width,
    ink,
  }: { readonly x: number; readonly width: number; readonly ink: Ink },
): Markup {
  const at = (value: number): number =>
    Math.min(x + width - 2, Math.max(x + 2, across(value)));
  const stroke = row.wrong ? ink.wrong : ink.bore;
  const from = at(band.low);
  const box = {
    x: from - 1,
    y: y + 3,
    width: at(band.high) - from + 2,
    height: BAR - 6,
  };
  const beyond = [
    ...(across(band.high) < x
      ? [arrowHead(x, y + BAR / 2, "left", stroke)]
      : []),
    ...(x + width < across(band.low)
      ? [arrowHead(x + width, y + BAR / 2, "right", stroke)]
      : []),
  ];
  const u = row.uncertainty;
  const middle = y + BAR / 2;
  return together(
    block(box, {
      fill: row.measured ? stroke : ink.paper,
      stroke,
      width: 1.5,
      ...(row.measured ? {} : { dashes: "4 2" }),
    }),
    row.measured ? NOTHING : hatch(box, { stroke, spacing: 5 }),
    u === undefined
      ? NOTHING
      : bar(
          { x: at(band.low - u), y: middle },
          { x: at(band.high + u), y: middle },
          4,
          { stroke: ink.text },
        ),
    beyond,
  );
}

function axisLine(
  across: Scale,
  y: number,
  { x, width, system, ink, zero }: StripOptions,
): Drawn {
  const unit = METRES[system];
  const marks = ticks([across.low, across.high], width < 420 ? 3 : 6, unit);
  return {
    markup: together(
      marks.values.map((value) =>
        together(
          line(across(value), y, across(value), y + 4, { stroke: ink.text }),
          label(across(value), y + 16, axisDigits(value, marks.step, system), {
            fill: ink.muted,
            size: SMALL,
            anchor:
              across(value) < x + 16
                ? "start"
                : x + width - 16 < across(value)
                  ? "end"
                  : "middle",
          }),
        ),
      ),
      label(x + width, y + 30, `${UNIT_OF_SYSTEM[system]}; 0: ${zero}`, {
        fill: ink.muted,
        size: SMALL,
        anchor: "end",
      }),
    ),
    height: 36,
  };
}

/** Digits enough for the step of the axis, and no more. */
export function axisDigits(
  metres: number,
  step: number,
  system: System,
): string {
  const decimals = Math.ceil(-Math.log10(step / METRES[system]) - 1e-9);
  return fixed(metres / METRES[system], Math.max(0, decimals));
}

// How large a line is drawn: one scale along its axis, one for diameters, and how many times larger than those the clearances.
import { roundDown } from "./scale.ts";
import type { SectionBore } from "./line-section.ts";

export interface LineScales {
  /** Place along the page of a place along the axis, m. */
  readonly along: (z: number) => number;
  /** Pixels of a length of the axis, m. */
  readonly alongBy: number;
  /** Pixels of a diameter's or a wall's length, m. */
  readonly acrossBy: number;
  /** How many times as large as diameters a clearance is drawn; undefined where none is known. */
  readonly times: number | undefined;
  /** Half of what is drawn above and below the axis, pixels. */
  readonly half: number;
}

export const BOTTOM_WALL = 10;
const STUB = 16;
const HALF = 84;
/** Bores shorter than the page is wide are not drawn longer than so many times their proportion. */
const STRETCH = 2;
/** Thinner walls, and gaps wider than this, could not be seen or would burst the picture; pixels. */
const LEAST_WALL = 7;
const OPEN_WALL = 16;
const LARGEST_GAP = 12;

/** The ends of all that is drawn of a bore along the axis, m: with the bottom of its hole. */
function extentOf({ from, to, depth, mouth }: SectionBore): {
  readonly low: number;
  readonly high: number;
} {
  if (depth === undefined || mouth === undefined)
    return { low: from, high: to };
  return mouth === "to"
    ? { low: Math.min(from, to - depth), high: to }
    : { low: from, high: Math.max(to, from + depth) };
}

export function lineScales(
  bores: readonly SectionBore[],
  left: number,
  width: number,
): LineScales {
  const ends = bores.map(extentOf);
  const low = Math.min(...ends.map((each) => each.low));
  const high = Math.max(...ends.map((each) => each.high));
  const length = Math.max(high - low, 1e-6);
  const room = width - 2 * (STUB + BOTTOM_WALL);
  const widest = Math.max(
    ...bores.map((bore) => bore.boss ?? (bore.od ?? diameterOf(bore)) * 1.4),
    1e-6,
  );
  const fitting = room / length;
  const acrossBy = Math.min(fitting, (2 * HALF) / widest);
  const alongBy = Math.min(fitting, acrossBy * STRETCH);
  const start = left + (width - alongBy * length) / 2;
  // a long thin line would be a hair: its diameters are drawn larger
  const seen = Math.max(
    acrossBy,
    32 / Math.max(...bores.map(diameterOf), 1e-6),
  );
  const gaps = bores.flatMap(gapsOf);
  const largest = Math.max(0, ...gaps.map(Math.abs));
  const times =
    largest === 0
      ? undefined
      : Math.max(1, roundDown(LARGEST_GAP / ((largest / 2) * seen)));
  const scales = {
    along: (z: number) => start + (z - low) * alongBy,
    alongBy,
    acrossBy: seen,
    times,
  };
  return {
    ...scales,
    half: Math.max(...bores.map((bore) => radiiOf(bore, scales).outer)),
  };
}

/** Nominal diameter to draw a bore by, m. */
function diameterOf({ size, journalSize, nominal, od }: SectionBore): number {
  if (size.known) return size.value.nominal;
  if (journalSize?.known === true) return journalSize.value.nominal;
  if (nominal !== undefined) return nominal;
  return od === undefined ? 0.02 : od * 0.85;
}

function gapsOf({ clearance }: SectionBore): readonly number[] {
  return clearance?.known === true ? [clearance.value.nominal] : [];
}

export interface Radii {
  readonly journal: number;
  readonly bore: number;
  /** Of the bush; that of the bore where there is none. */
  readonly od: number;
  readonly outer: number;
  /** Radius of the ledge that is left in the bore; undefined where there is none. */
  readonly ledge: number | undefined;
}

/** Radii on the page, pixels: each wall by its own thickness, outside the clearance that is drawn larger. */
export function radiiOf(
  bore: SectionBore,
  { acrossBy, times }: Pick<LineScales, "acrossBy" | "times">,
): Radii {
  const diameter = diameterOf(bore);
  const journal = (diameter / 2) * acrossBy;
  const gap =
    bore.clearance?.known === true
      ? (bore.clearance.value.nominal / 2) * acrossBy * (times ?? 1)
      : LARGEST_GAP / 2;
  const inner = Math.max(2, journal + gap);
  const wall = (thick: number): number =>
    Math.max(LEAST_WALL, thick * acrossBy);
  const od =
    bore.bush === undefined
      ? inner
      : inner + wall(((bore.od ?? diameter) - diameter) / 2);
  const body =
    bore.boss === undefined
      ? OPEN_WALL
      : wall((bore.boss - (bore.od ?? diameter)) / 2);
  const left = bore.ledge?.known === true ? bore.ledge.value : undefined;
  return {
    journal,
    bore: inner,
    od,
    outer: od + body,
    ledge:
      left !== undefined && 0 < left.nominal
        ? Math.max(
            journal - LARGEST_GAP,
            inner -
              ((left.bore.cut - left.bore.before) / 2) *
                acrossBy *
                (times ?? 1),
          )
        : undefined,
  };
}

// Where the figures of a fit's chart stand: as near as may be to what they are of, and on no line and on no other figure.
import { lengthOf, SMALL } from "./shapes.ts";

/** A line from side to side, such as that of a wanted size or of a round diameter. */
export interface Across {
  readonly y: number;
  readonly from: number;
  readonly to: number;
}

/** Gives the height of a text's foot that is nearest to the one wished for, upwards or downwards, and keeps its place. */
export type Place = (
  middle: number,
  wished: number,
  text: string,
  way: "up" | "down",
) => number;

interface Taken {
  readonly from: number;
  readonly to: number;
  readonly top: number;
  readonly bottom: number;
}

/** Of a small text, from its foot: what its letters and their rim take. */
const OVER = 10;
const UNDER = 2;
/** How much nearer to what it is of a figure may stand, px. */
const NEARER = [0, 1, 2, 3];
/** So that what was moved off another is off it for certain, whatever a sum of fractions leaves. */
const APART = 0.1;

export interface Figures {
  readonly place: Place;
  /** Whether a text whose foot stands so is on nothing. */
  readonly isFree: (middle: number, foot: number, text: string) => boolean;
}

/** @param lines what nothing may stand on; then the highest and the lowest height that a text's foot may have */
export function placesClearOf(
  lines: readonly Across[],
  [top, bottom]: readonly [number, number],
): Figures {
  const taken: Taken[] = lines.map(({ y, from, to }) => ({
    from,
    to,
    top: y,
    bottom: y,
  }));
  const inTheWay = (
    middle: number,
    foot: number,
    text: string,
  ): Taken | undefined => {
    const half = lengthOf(text, SMALL) / 2;
    return taken.find(
      ({ from, to, top, bottom }) =>
        from < middle + half &&
        middle - half < to &&
        top < foot + UNDER &&
        foot - OVER < bottom,
    );
  };
  return {
    isFree: (...text) => inTheWay(...text) === undefined,
    place(middle, wished, text, way) {
      const moved = (to: typeof way): number => {
        let foot = wished;
        for (;;) {
          const other = inTheWay(middle, foot, text);
          if (other === undefined) return foot;
          foot =
            to === "up"
              ? other.top - UNDER - APART
              : other.bottom + OVER + APART;
        }
      };
      // a little nearer before it is moved beyond what is in the way
      const nearer = NEARER.map((by) =>
        way === "up" ? wished + by : wished - by,
      ).filter((each) => inTheWay(middle, each, text) === undefined);
      const foot =
        [...nearer, moved(way), moved(way === "up" ? "down" : "up")].find(
          (each) => top <= each && each <= bottom,
        ) ?? wished;
      const half = lengthOf(text, SMALL) / 2;
      taken.push({
        from: middle - half,
        to: middle + half,
        top: foot - OVER + 1,
        bottom: foot + UNDER - 1,
      });
      return foot;
    },
  };
}

// Owns the rows of ISO 286 whose tabulated value lies more than a rounding step from the formula, each with why. The shipped answer
// follows the table. The reasons are read off the numbers, and from memory of the standard's remarks; no text gave them.

export interface Exception {
  /** The letters or grade, and the sizes up to which the steps run. */
  readonly rows: readonly string[];
  readonly reason: string;
}

/** Of IT5 to IT11. */
export const toleranceExceptions: readonly Exception[] = [
  {
    rows: ["IT7 3", "IT9 3", "IT10 3", "IT11 3"],
    reason:
      "the smallest step has rounder and wider tolerances than the unit i gives",
  },
  {
    rows: ["IT10 6", "IT11 6"],
    reason:
      "48 and 75 µm stand for 46.9 and 73.3: taken up to the next preferred number",
  },
  {
    rows: ["IT6 500", "IT11 500"],
    reason: "40 and 400 µm stand for 38.9 and 389: preferred numbers",
  },
  {
    rows: ["IT5 630", "IT5 800", "IT5 3150"],
    reason: "IT5 over 500 mm is taken up, so that it follows on from 27 µm",
  },
];

/** Of IT11 to IT18 as ten times the grade five finer. */
export const timesTenExceptions: readonly Exception[] = [
  {
    rows: ["IT11 6"],
    reason:
      "75 µm and not ten times the 8 µm of IT6, which is itself taken up from 7.3",
  },
];

/** Of the letters. */
export const deviationExceptions: readonly Exception[] = [
  {
    rows: ["g 3", "m 3", "n 3", "p 3"],
    reason:
      "up to 3 mm the letters near the nominal size lie closer to it than the formula, so as to stay apart",
  },
  {
    rows: ["c 14", "c 24", "c 40"],
    reason:
      "c runs 95, 110, 120 µm over the main steps 10 to 18, 18 to 30 and 30 to 40 mm, where the formula gives 88, 98, 106",
  },
  {
    rows: ["b 160"],
    reason:
      "280 µm, where the formula for sizes to 160 mm (267) meets the one beyond it",
  },
  {
    rows: "u 3, u 6, u 10, u 14, v 18, x 3, x 6, x 10, x 14, x 18, z 3, z 6, z 10, z 14, z 18, za 3, za 6, za 10, zb 3, zb 6, zc 3, zc 6".split(
      ", ",
    ),
    reason:
      "in small sizes the tight letters are taken up, so that they keep apart from s and from each other",
  },
  {
    rows: ["t 30", "t 40"],
    reason: "the first steps of t are taken up, between s and u",
  },
  { rows: ["r 200"], reason: "77 µm, where p and s give 78.1: truncated" },
  {
    rows: "m 1600, m 2000, m 2500, m 3150, p 1000, p 2000, p 2500, r 560, r 710, r 800, r 900, r 1000, r 1250, r 1600, s 710, s 1120, s 1400, t 630, t 800".split(
      ", ",
    ),
    reason:
      "over 500 mm the values are rounded more coarsely, to preferred numbers",
  },
];

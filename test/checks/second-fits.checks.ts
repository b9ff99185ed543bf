// The second look at limits and fits: every limit derived anew, from printed shafts and from what the system is for (second/fits.ts).
import type { Check } from "./check.ts";
import * as fits from "./second/fits.ts";
import { differing, secondLook, type Side } from "./second/sides.ts";

const kinds: readonly string[] = [];
const { shafts, holes } = fits.isoSides();

/** Places where the printed inch tables part from their own grades and letters; the tables stand, as the printed ones beside this show. */
const inchAsPrinted = {
  grades:
    "0 to 0.12 in: RC 1, RC 2, LC 1, LT 1, LN 1; LN 1 shafts over 0.40 to 1.97 in; LT 1 over 1.97 to 4.73 in; LT 2 over 12.41 in",
  letters:
    "LN 1 beside LT 5 over 0.40 to 1.97 in; LC 5 to LC 8 beside RC over 9.85 in",
};

function inch(
  what: string,
  sides: readonly Side[],
  parted: number,
  where: string,
): Check {
  return {
    kinds,
    what,
    method: "table lookup",
    against: "independent",
    source: `second look: the tables against their own symbols, values that agree; ${String(parted)} part as the tables are printed (${where})`,
    unit: "1",
    points: sides.length,
    ours: () => sides.length - differing(sides, 1e-9).length,
    theirs: () => sides.length - parted,
    within: { absolute: 0 },
  };
}

const checks: readonly Check[] = [
  secondLook({
    kinds,
    what: "second look: shafts a to zc up to 225 mm, IT1 to IT14",
    method: "table lookup and the rules of the standard",
    source:
      "whole numbers of 0.1 nm from printed deviations (Machine Drawing p. 215 f.; cobanengineering.com; usefastener.com) and tolerances (engineersvault.blogspot.com), at the ends of steps, just past them, and at seeded sizes",
    unit: "m",
    allowed: 0,
    sides: shafts,
  }),
  secondLook({
    kinds,
    what: "second look: holes A to ZC up to 225 mm, IT1 to IT14",
    method: "table lookup and the rules of the standard",
    source:
      "hole deviations derived from printed shafts so that both bases give the same fit; whole numbers of 0.1 nm, same sizes",
    unit: "m",
    allowed: 0,
    sides: holes,
  }),
  secondLook({
    kinds,
    what: "second look: the same fit on both bases, to 3150 mm",
    method: "limits of hole and shaft, their clearance",
    source: "Hn/x against Xn/h, one grade finer where the Δ rule holds",
    unit: "m",
    allowed: 1e-12,
    sides: fits.equalFits(),
  }),
  secondLook({
    kinds,
    what: "second look: ten times the tolerance five grades on",
    method: "table lookup",
    source: "IT12 to IT18 as ten times IT7 to IT13, all steps to 3150 mm",
    unit: "m",
    allowed: 1e-15,
    sides: fits.decades(),
  }),
  inch(
    "second look: inch classes against the grades of their symbols",
    fits.inchGrades(),
    13,
    inchAsPrinted.grades,
  ),
  inch(
    "second look: inch classes of one letter against each other",
    fits.inchLetters(),
    15,
    inchAsPrinted.letters,
  ),
];

export default checks;

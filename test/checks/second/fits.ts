// Owns the second look at ISO 286 and ANSI B4.1. Every limit is derived anew in whole tenths of a nanometre, from deviations of shafts and
// tolerances as printed in texts that were seen, and from what the system is for: the same fit on the hole basis and on the shaft basis.
// Nothing here reads a table or a rule of server/core/fits.
//
// What makes a hole's deviation, derived: a fit Hn/x of letter x means the same as Xn/h. With clearance C = hole − shaft, H over x gives
// −es(x) least, and X over h gives EI(X) least; so EI(X) = −es(x) for A to H. For letters beyond H the tighter fits pair a hole one grade
// coarser than the shaft, Hn/x(n−1) and Xn/h(n−1). The most clearance is IT(n) − ei(x) with the first, ES(X) + IT(n−1) with the
// second; so ES(X) = −ei(x) + IT(n) − IT(n−1): the rule's Δ. It is asked from over 3 to 500 mm, K, M, N to IT8 and P to ZC to IT7;
// elsewhere ES(X) = −ei(x), with M6 over 250 to 315 mm (−9 µm for −11) and N over IT8 (0) as the table has them (all four from memory
// of ISO 286-1, held against printed holes in the checks beside this).
import {
  isoLimits,
  isoTolerance,
  type IsoGrade,
} from "../../../server/core/fits/iso-286.ts";
import { fitOf } from "../../../server/core/fits/fit.ts";
import {
  inchFitLimits,
  inchTolerance,
  inchSeries,
} from "../../../server/core/fits/b4-1.ts";
import { between, type Side } from "./sides.ts";

const n = (text: string): number[] => text.trim().split(/\s+/).map(Number);

const perMicrometre = 10_000n;
const perMillimetre = 10_000_000n;

/** IT1 to IT14 up to 315 mm in µm: an index of ISO hole and shaft tolerances at engineersvault.blogspot.com (2007), a column a grade. */
const gradesSeen = {
  upTo: n("3 6 10 18 30 50 80 120 180 250 315"),
  rows: [
    "0.8 1 1 1.2 1.5 1.5 2 2.5 3.5 4.5 6",
    "1.2 1.5 1.5 2 2.5 2.5 3 4 5 7 8",
    "2 2.5 2.5 3 4 4 5 6 8 10 12",
    "3 4 4 5 6 7 8 10 12 14 16",
    "4 5 6 8 9 11 13 15 18 20 23",
    "6 8 9 11 13 16 19 22 25 29 32",
    "10 12 15 18 21 25 30 35 40 46 52",
    "14 18 22 27 33 39 46 54 63 72 81",
    "25 30 36 43 52 62 74 87 100 115 130",
    "40 48 58 70 84 100 120 140 160 185 210",
    "60 75 90 110 130 160 190 220 250 290 320",
    "100 120 150 180 210 250 300 350 400 460 520",
    "140 180 220 270 330 390 460 540 630 720 810",
    "250 300 360 430 520 620 740 870 1000 1150 1300",
  ].map(n),
};

/** es of a to g in µm: "Upper and lower deviations, shafts" at cobanengineering.com to 180 mm, Machine Drawing p. 215 from there to 500. */
const esSeen: readonly (readonly [string, string, string])[] = [
  // steps up to (mm), letters, a row a step with "." where the table has none
  ["3", "a b c cd d e ef f fg g", "270 140 60 34 20 14 10 6 4 2"],
  ["6", "a b c cd d e ef f fg g", "270 140 70 46 30 20 14 10 6 4"],
  ["10", "a b c cd d e ef f fg g", "280 150 80 56 40 25 18 13 8 5"],
  ["14", "a b c d e f g", "290 150 95 50 32 16 6"],
  ["18", "a b c d e f g", "290 150 95 50 32 16 6"],
  ["24", "a b c d e f g", "300 160 110 65 40 20 7"],
  ["30", "a b c d e f g", "300 160 110 65 40 20 7"],
  ["40", "a b c d e f g", "310 170 120 80 50 25 9"],
  ["50", "a b c d e f g", "320 180 130 80 50 25 9"],
  ["65", "a b c d e f g", "340 190 140 100 60 30 10"],
  ["80", "a b c d e f g", "360 200 150 100 60 30 10"],
  ["100", "a b c d e f g", "380 220 170 120 72 36 12"],
  ["120", "a b c d e f g", "410 240 180 120 72 36 12"],
  ["140", "a b c d e f g", "460 260 200 145 85 43 14"],
  ["160", "a b c d e f g", "520 280 210 145 85 43 14"],
  ["180", "a b c d e f g", "580 310 230 145 85 43 14"],
  ["200", "a b c d e f g", "660 340 240 170 100 50 15"],
  ["225", "a b c d e f g", "740 380 260 170 100 50 15"],
  ["250", "a b c d e f g", "820 420 280 170 100 50 15"],
  ["280", "a b c d e f g", "920 480 300 190 110 56 17"],
  ["315", "a b c d e f g", "1050 540 330 190 110 56 17"],
];

/** ei of m to zc in µm to 180 mm: Machine Drawing, Table 15.2, p. 216. k is given there by grade and stands below. */
const eiSeen: readonly (readonly [string, string, string])[] = [
  ["3", "m n p r s u x z za zb zc", "2 4 6 10 14 18 20 26 32 40 60"],
  ["6", "m n p r s u x z za zb zc", "4 8 12 15 19 23 28 35 42 50 80"],
  ["10", "m n p r s u x z za zb zc", "6 10 15 19 23 28 34 42 52 67 97"],
  ["14", "m n p r s u x z za zb zc", "7 12 18 23 28 33 40 50 64 90 130"],
  ["18", "m n p r s u v x z za zb zc", "7 12 18 23 28 33 39 45 60 77 108 150"],
  [
    "24",
    "m n p r s u v x y z za zb zc",
    "8 15 22 28 35 41 47 54 63 73 98 136 188",
  ],
  [
    "30",
    "m n p r s t u v x y z za zb zc",
    "8 15 22 28 35 41 48 55 64 75 88 118 160 218",
  ],
  [
    "40",
    "m n p r s t u v x y z za zb zc",
    "9 17 26 34 43 48 60 68 80 94 112 148 200 274",
  ],
  [
    "50",
    "m n p r s t u v x y z za zb zc",
    "9 17 26 34 43 54 70 81 97 114 136 180 242 325",
  ],
  [
    "65",
    "m n p r s t u v x y z za zb zc",
    "11 20 32 41 53 66 87 102 122 144 172 226 300 405",
  ],
  [
    "80",
    "m n p r s t u v x y z za zb zc",
    "11 20 32 43 59 75 102 120 146 174 210 274 360 480",
  ],
  [
    "100",
    "m n p r s t u v x y z za zb zc",
    "13 23 37 51 71 91 124 146 178 214 258 335 445 585",
  ],
  [
    "120",
    "m n p r s t u v x y z za zb zc",
    "13 23 37 54 79 104 144 172 210 254 310 400 525 690",
  ],
  [
    "140",
    "m n p r s t u v x y z za zb zc",
    "15 27 43 63 92 122 170 202 248 300 365 470 620 800",
  ],
  [
    "160",
    "m n p r s t u v x y z za zb zc",
    "15 27 43 65 100 134 190 228 280 340 415 535 700 900",
  ],
  [
    "180",
    "m n p r s t u v x y z za zb zc",
    "15 27 43 68 108 146 210 252 310 380 465 600 780 1000",
  ],
  // From here the holes N to ZC of EN ISO 286-1 at usefastener.com, their signs turned.
  [
    "200",
    "m n p r s t u v x y z za zb zc",
    "17 31 50 77 122 166 236 284 350 425 520 670 880 1150",
  ],
  [
    "225",
    "m n p r s t u v x y z za zb zc",
    "17 31 50 80 130 180 258 310 385 470 575 740 960 1250",
  ],
];

/** ei of k for IT4 to IT7, µm: 0.6 times the cube root of D as Machine Drawing's Table 15.4 prints it, to the nearest, none up to 3 mm. */
function kOf(upTo: number): number {
  const step = gradesSeen.upTo.findIndex((end) => upTo <= end);
  const from = gradesSeen.upTo[step - 1];
  const end = gradesSeen.upTo[step];
  if (from === undefined || end === undefined) return 0;
  return Math.round(0.6 * Math.cbrt(Math.sqrt(from * end)));
}

function seen(
  table: readonly (readonly [string, string, string])[],
  letters: string,
  size: bigint,
): number | undefined {
  const row = table.find(
    ([upTo]) => size <= BigInt(Number(upTo)) * perMillimetre,
  );
  if (row === undefined) return undefined;
  return n(row[2])[row[1].split(" ").indexOf(letters)];
}

const exactMicrometres = (micrometres: number): bigint =>
  BigInt(Math.round(micrometres * 10)) * (perMicrometre / 10n);

function toleranceOf(size: bigint, grade: number): bigint | undefined {
  const step = gradesSeen.upTo.findIndex(
    (upTo) => size <= BigInt(upTo) * perMillimetre,
  );
  const it = gradesSeen.rows[grade - 1]?.[step];
  return it === undefined ? undefined : exactMicrometres(it);
}

interface Deviations {
  readonly low: bigint;
  readonly high: bigint;
}

/** Deviations of a shaft in tenths of a nanometre, from the printed tables alone; undefined where these say nothing. */
function shaftOf(
  size: bigint,
  letters: string,
  grade: number,
): Deviations | undefined {
  const it = toleranceOf(size, grade);
  if (it === undefined) return undefined;
  if (letters === "h") return { low: -it, high: 0n };
  if (letters === "js") return { low: -it / 2n, high: it / 2n };
  const es = seen(esSeen, letters, size);
  if (es !== undefined) {
    const high = -exactMicrometres(es);
    return { low: high - it, high };
  }
  const ei =
    letters === "k"
      ? 4 <= grade && grade <= 7
        ? kOf(Number(size) / Number(perMillimetre))
        : 0
      : seen(eiSeen, letters, size);
  if (ei === undefined) return undefined;
  const low = exactMicrometres(ei);
  return { low, high: low + it };
}

/** Deviations of a hole by the fit that it must give, as derived on top. */
function holeOf(
  size: bigint,
  letters: string,
  grade: number,
): Deviations | undefined {
  const it = toleranceOf(size, grade);
  const small = letters.toLowerCase();
  if (it === undefined) return undefined;
  if (small === "h") return { low: 0n, high: it };
  if (small === "js") return { low: -it / 2n, high: it / 2n };
  if (small < "h") {
    const shaft = shaftOf(size, small, grade);
    return shaft && { low: -shaft.high, high: -shaft.high + it };
  }
  const over3 = 3n * perMillimetre < size;
  const hasDelta =
    over3 && grade <= (["k", "m", "n"].includes(small) ? 8 : 7) && 3 <= grade;
  if (small === "n" && over3 && 8 < grade) return { low: -it, high: 0n };
  const finer = hasDelta ? toleranceOf(size, grade - 1) : it;
  // k pairs as k4 to k7 do (its ei by the cube root) in every grade that has Δ.
  const shaft = shaftOf(size, small, small === "k" && hasDelta ? 5 : grade);
  if (finer === undefined || shaft === undefined) return undefined;
  const isM6 =
    letters === "M" &&
    grade === 6 &&
    250n * perMillimetre < size &&
    size <= 315n * perMillimetre;
  const high = isM6 ? -9n * perMicrometre : -shaft.low + it - finer;
  return { low: high - it, high };
}

/** Sizes in tenths of a nanometre: every end of a step and the next size beyond it, and sizes between, seeded. */
function sizes(upTo: number): readonly bigint[] {
  const ends = [...esSeen.map(([end]) => Number(end)), 2, 1.0000001].filter(
    (end) => end <= upTo,
  );
  return [
    ...ends
      .map((end) => BigInt(Math.round(end * 1e7)))
      .flatMap((end) =>
        end < BigInt(upTo) * perMillimetre ? [end, end + 1n] : [end],
      ),
    ...between(286, 12, 1.1, upTo, true).map((size) =>
      BigInt(Math.round(size * 1e7)),
    ),
  ];
}

/** Metres: the double nearest to a whole number of tenths of a nanometre, by reading it as a decimal. */
const metresOf = (tenths: bigint): number => Number(`${tenths}e-10`);

function sidesOf(
  size: bigint,
  letters: string,
  grade: number,
  theirs: Deviations,
): readonly Side[] {
  const zone = isoLimits(metresOf(size), letters, grade);
  const at = `${letters}${grade} at ${Number(size) / 1e7} mm`;
  const of = (tenths: bigint, ours: number | undefined): Side => ({
    at: zone.valid ? at : `${at}: ${zone.because}`,
    ours,
    theirs: metresOf(tenths),
  });
  const ours = zone.valid ? zone.value : undefined;
  return [
    of(size + theirs.low, ours?.lower),
    of(size + theirs.high, ours?.upper),
    of(theirs.low, ours?.lowerDeviation),
    of(theirs.high, ours?.upperDeviation),
  ];
}

const clearanceLetters = "a b c cd d e ef f fg g h js".split(" ");
const tightLetters = "k m n p r s t u v x y z za zb zc".split(" ");
const gradesAsked = gradesSeen.rows.map((_, index) => index + 1);

/** Whether the standard has the class at all, as its tables leave them out (from memory): K, M, N and P to ZC below IT3 have no Δ. */
function isAsked(size: bigint, letters: string, grade: number): boolean {
  const small = letters.toLowerCase();
  const isHole = small !== letters;
  if (size <= perMillimetre)
    return (
      !["a", "b"].includes(small) &&
      grade < 14 &&
      !(letters === "N" && 8 < grade)
    );
  if (!isHole || !tightLetters.includes(small)) return true;
  if (3n * perMillimetre < size && grade < 3) return false;
  return !(small === "k" && 8 < grade && 3n * perMillimetre < size);
}

/** Every class of the printed letters in IT1 to IT14, at every end of a step, just past it, and at sizes between. */
export function isoSides(): {
  readonly shafts: readonly Side[];
  readonly holes: readonly Side[];
} {
  const shafts: Side[] = [];
  const holes: Side[] = [];
  for (const size of sizes(315))
    for (const small of [...clearanceLetters, ...tightLetters])
      for (const grade of gradesAsked)
        for (const letters of [
          small,
          small === "js" ? "JS" : small.toUpperCase(),
        ]) {
          if (!isAsked(size, letters, grade)) continue;
          const isHole = letters !== small;
          const theirs = (isHole ? holeOf : shaftOf)(size, letters, grade);
          if (theirs === undefined) continue;
          (isHole ? holes : shafts).push(
            ...sidesOf(size, letters, grade, theirs),
          );
        }
  return { shafts, holes };
}

/** Steps to 3150 mm, for what follows from the system whatever its numbers are. */
const allEnds = n(
  "3 6 10 14 18 24 30 40 50 65 80 100 120 140 160 180 200 225 250 280 315 355 400 450 500 560 630 710 800 900 1000 1120 1250 1400 1600 1800 2000 2240 2500 2800 3150",
);

/** Hn/x(n−1) against Xn/h(n−1) (with Δ), Hn/xn against Xn/hn (without): least and most clearance, m. */
export function equalFits(): readonly Side[] {
  const sides: Side[] = [];
  for (const upTo of allEnds)
    for (const small of [...clearanceLetters, ...tightLetters])
      for (const grade of [5, 6, 7, 8, 9, 10]) {
        if (small === "js") continue;
        const isTight = tightLetters.includes(small);
        const hasDelta =
          isTight &&
          3 < upTo &&
          upTo <= 500 &&
          grade <= (["k", "m", "n"].includes(small) ? 8 : 7);
        if (small === "n" && 8 < grade && 3 < upTo && upTo <= 500) continue;
        if (small === "m" && grade === 6 && 250 < upTo && upTo <= 315) continue;
        // k8 and coarser have ei 0, k4 to k7 the cube root: over IT8 K and k part, and no K is given.
        if (small === "k" && 8 <= grade) continue;
        const size = metresOf(BigInt(upTo) * perMillimetre);
        const limits = (letters: string, each: number) =>
          isoLimits(size, letters, each);
        const finer = hasDelta ? grade - 1 : grade;
        const onHole = [limits("H", grade), limits(small, finer)] as const;
        const onShaft = [
          limits(small.toUpperCase(), grade),
          limits("h", finer),
        ] as const;
        const clearance = ([hole, shaft]: typeof onHole) =>
          hole.valid && shaft.valid
            ? fitOf(hole.value, shaft.value)
            : undefined;
        const [left, right] = [clearance(onHole), clearance(onShaft)];
        if (left === undefined && right === undefined) continue;
        const at = `${small}/${small.toUpperCase()}${grade} to ${upTo} mm`;
        sides.push(
          { at, ours: right?.least, theirs: left?.least },
          { at, ours: right?.most, theirs: left?.most },
        );
      }
  return sides;
}

/** IT(n + 5) = 10·IT(n) from IT7 on: the preferred numbers' decade (from memory of ISO 286-1:1988, annex A), all steps to 3150 mm. */
export function decades(): readonly Side[] {
  return allEnds.flatMap((upTo) =>
    [7, 8, 9, 10, 11, 12, 13].map((grade) => {
      const size = metresOf(BigInt(upTo) * perMillimetre);
      const [fine, coarse] = [grade, grade + 5].map((each) =>
        isoTolerance(size, each as IsoGrade),
      );
      return {
        at: `IT${grade + 5} at ${upTo} mm`,
        ours: coarse?.valid ? coarse.value : undefined,
        theirs: fine?.valid ? 10 * fine.value : undefined,
      };
    }),
  );
}

/** Grade of hole and shaft and the shaft's letter in each inch class, by the symbols that its tables print over the columns (RC 1 to
 * RC 8 seen in Machinery's Handbook, 31st edition, p. 718 and 720; the others from memory; RC 9, LC 10, LC 11 and FN 1 have none). */
const inchSymbols: ReadonlyMap<string, readonly [number, string, number]> =
  new Map([
    ["RC1", [5, "g", 4]],
    ["RC2", [6, "g", 5]],
    ["RC3", [7, "f", 6]],
    ["RC4", [8, "f", 7]],
    ["RC5", [8, "e", 7]],
    ["RC6", [9, "e", 8]],
    ["RC7", [9, "d", 8]],
    ["RC8", [10, "c", 9]],
    ["LC1", [6, "h", 5]],
    ["LC2", [7, "h", 6]],
    ["LC3", [8, "h", 7]],
    ["LC4", [10, "h", 9]],
    ["LC5", [7, "g", 6]],
    ["LC6", [9, "f", 8]],
    ["LC7", [10, "e", 9]],
    ["LC8", [10, "d", 9]],
    ["LC9", [11, "c", 10]],
    ["LT1", [7, "js", 6]],
    ["LT2", [8, "js", 7]],
    ["LT3", [7, "k", 6]],
    ["LT4", [8, "k", 7]],
    ["LT5", [7, "n", 6]],
    ["LT6", [7, "n", 7]],
    ["LN1", [6, "n", 5]],
    ["LN2", [7, "p", 6]],
    ["LN3", [7, "r", 6]],
    ["FN2", [7, "s", 6]],
    ["FN3", [7, "t", 6]],
    ["FN4", [7, "u", 6]],
    ["FN5", [8, "x", 7]],
  ]);

const inchSteps = n(
  "0.12 0.24 0.40 0.71 1.19 1.97 3.15 4.73 7.09 9.85 12.41 15.75 19.69",
);

/** The tolerances of hole and shaft of each inch class against those of its grades in Table 1, thousandths of an inch. */
export function inchGrades(): readonly Side[] {
  const sides: Side[] = [];
  for (const upTo of inchSteps)
    for (const [word, [hole, , shaft]] of inchSymbols) {
      const size = (upTo * 254) / 1e4;
      const series = word.slice(0, 2);
      const fit = [...inchSeries.keys()]
        .map((each) =>
          each === series
            ? inchFitLimits(size, each, Number(word.slice(2)))
            : undefined,
        )
        .find((each) => each !== undefined);
      if (fit?.valid !== true) continue;
      const thou = (metres: number) => metres / 25.4e-6;
      for (const [zone, grade] of [
        [fit.value.hole, hole],
        [fit.value.shaft, shaft],
      ] as const) {
        const tolerance = inchTolerance(size, grade);
        sides.push({
          at: `${word} ${zone.feature} at ${upTo} in`,
          ours: thou(zone.upper - zone.lower),
          theirs: tolerance.valid ? thou(tolerance.value) : undefined,
        });
      }
    }
  return sides;
}

/** The shaft's deviation nearer to nominal, thousandths: classes of one letter must have the same. */
export function inchLetters(): readonly Side[] {
  const sides: Side[] = [];
  for (const upTo of inchSteps) {
    const first = new Map<string, { word: string; value: number }>();
    for (const [word, [, letters]] of inchSymbols) {
      if (letters === "js") continue;
      const series = [...inchSeries.keys()].find((each) =>
        word.startsWith(each),
      );
      if (series === undefined) continue;
      const fit = inchFitLimits(
        (upTo * 254) / 1e4,
        series,
        Number(word.slice(2)),
      );
      if (!fit.valid) continue;
      const { upperDeviation, lowerDeviation } = fit.value.shaft;
      const value =
        (letters <= "h" ? upperDeviation : lowerDeviation) / 25.4e-6;
      const other = first.get(letters);
      if (other === undefined) first.set(letters, { word, value });
      else
        sides.push({
          at: `${word} and ${other.word} at ${upTo} in`,
          ours: value,
          theirs: other.value,
        });
    }
  }
  return sides;
}

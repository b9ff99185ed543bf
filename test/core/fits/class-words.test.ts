// Class words: what reads, what does not and why, and what is then offered.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  classClearance,
  classWord,
  classZones,
  parseClass,
  type FitClass,
} from "../../../server/core/fits/class-words.ts";
import { isoGrades } from "../../../server/core/fits/iso-286.ts";
import { shaftLetters } from "../../../server/core/fits/iso-286-tables.ts";

function read(word: string): FitClass {
  const answer = parseClass(word);
  if (!answer.valid) throw new Error(`${word}: ${answer.because}`);
  return answer.value;
}

describe("reads", () => {
  test("holes and shafts by their case", () => {
    expect(read("H7")).toEqual({
      system: "iso",
      feature: "hole",
      letters: "H",
      grade: 7,
    });
    expect(read("f7")).toEqual({
      system: "iso",
      feature: "shaft",
      letters: "f",
      grade: 7,
    });
    expect(read("JS01")).toEqual({
      system: "iso",
      feature: "hole",
      letters: "JS",
      grade: "01",
    });
    expect(read("zc18")).toMatchObject({ letters: "zc", grade: 18 });
  });

  test("fits and inch classes", () => {
    expect(read("H7/f7")).toMatchObject({
      system: "iso",
      feature: "fit",
      hole: { letters: "H" },
      shaft: { letters: "f" },
    });
    expect(read("RC4")).toEqual({
      system: "inch",
      feature: "fit",
      series: "RC",
      number: 4,
    });
    expect(read("LC11")).toMatchObject({ series: "LC", number: 11 });
  });

  test("every class of ISO 286, and writes it back", () => {
    const letters = [
      ...shaftLetters,
      ...shaftLetters.map((each) => each.toUpperCase()),
    ];
    const words = letters.flatMap((each) =>
      isoGrades.map((grade) => `${each}${grade}`),
    );
    const found = words.filter((word) => parseClass(word).valid);
    // all but j and J, which have four and three of the twenty grades
    expect(words.length - found.length).toBe(2 * 20 - 4 - 3);
    for (const word of found) expect(classWord(read(word))).toBe(word);
    expect(classWord(read("H11/c11"))).toBe("H11/c11");
    expect(classWord(read("FN5"))).toBe("FN5");
  });
});

test.each([
  ["Q7", ["P7", "R7"]],
  ["q6", ["p6", "r6"]],
  ["H19", ["H18"]],
  ["h 7", ["h7"]],
])(
  "of %s the near classes are %j and no grade that nobody wrote",
  (word, near) => {
    const read = parseClass(word);
    expect(read.valid ? [] : read.near).toEqual(near);
  },
);

describe("refuses, with what was perhaps meant", () => {
  test.each([
    ["H07", "no 07", "H7"],
    ["H19", "no 19", "H18"],
    ["Js7", "“Js”", "JS7"],
    ["rc4", "capitals, RC", "RC4"],
    ["RC10", "RC1 to RC9, and no RC10", "RC9"],
    ["RC04", "no RC04", "RC4"],
    ["FN0", "no FN0", "FN1"],
    ["RC 4", "no class", "RC4"],
    ["H 7", "no class", "H7"],
    ["7H", "no class", "H7"],
    ["H7f7", "no class", "H7/f7"],
    ["H7 f7", "no class", "H7/f7"],
    ["H7-f7", "no class", "H7/f7"],
    ["f7/H7", "a hole class in capitals", "H7/f7"],
    ["H7/F7", "a hole class in capitals", "H7/f7"],
    ["h7/f7", "a hole class in capitals", "H7/f7"],
    ["RC4/f7", "stands alone", "RC4"],
    ["H7/f07", "no 07", "H7/f7"],
    ["I7", "“I”", "H7"],
    ["w6", "“w”", "v6"],
    ["j9", "j in the grades 5, 6, 7, 8 only", "js9"],
    ["J5", "J in the grades 6, 7, 8 only", "JS5"],
    ["H", "no class", "H7"],
    ["LN", "no class", "LN1"],
  ])("%s", (word, because, near) => {
    const answer = parseClass(word);
    expect(answer).toMatchObject({
      valid: false,
      because: expect.stringContaining(because) as string,
    });
    expect(!answer.valid && answer.near[0]).toBe(near);
  });

  test.each([
    "",
    "/",
    "H7/",
    "H7/f7/g6",
    "7",
    "½",
    "H7\n",
    "AB7",
    "H999999999999999999999",
  ])("%j without a guess or with one that reads", (word) => {
    expect(parseClass(word).valid).toBe(false);
  });

  test("for a fit, whole fits are meant and never a half of one", () => {
    const words = fc.stringMatching(
      /^[A-Za-z]{1,2}\d{1,2}\/[A-Za-z]{1,2}\d{1,2}$/,
    );
    fc.assert(
      fc.property(words, (word) => {
        const answer = parseClass(word);
        for (const near of answer.valid ? [] : answer.near)
          expect(read(near).feature).toBe("fit");
      }),
      { numRuns: 1000 },
    );
    // one side wrong, each in turn
    for (const word of ["H7/f77", "H77/f7"])
      expect(parseClass(word)).toMatchObject({
        near: [word.replace("77", "18")],
      });
  });

  test("no text throws, reasons are sentences without an end, and every guess reads and differs", () => {
    const shaped = fc.stringMatching(
      /^[A-Za-z]{0,3} ?\d{0,3}[/ -]?[A-Za-z]{0,2}\d{0,2}$/,
    );
    fc.assert(
      fc.property(fc.oneof(shaped, fc.string()), (word) => {
        const answer = parseClass(word);
        if (answer.valid) {
          expect(classWord(answer.value)).toBe(word);
          return;
        }
        expect(answer.because).not.toMatch(/\.$|undefined|NaN/);
        expect(answer.near.length).toBeLessThanOrEqual(11);
        expect(new Set(answer.near).size).toBe(answer.near.length);
        for (const near of answer.near) {
          expect(near).not.toBe(word);
          expect(parseClass(near).valid).toBe(true);
        }
      }),
      { numRuns: 2000 },
    );
  });
});

describe("zones and clearance of a class", () => {
  test("one zone for an ISO class, hole then shaft for a fit", () => {
    const features = (word: string): unknown => {
      const zones = classZones(0.025, read(word));
      return zones.valid && zones.value.map(({ feature }) => feature);
    };
    expect(features("H7")).toEqual(["hole"]);
    expect(features("f7")).toEqual(["shaft"]);
    expect(features("H7/f7")).toEqual(["hole", "shaft"]);
    expect(features("RC4")).toEqual(["hole", "shaft"]);
  });

  test("clearance of fits only", () => {
    expect(classClearance(0.025, read("H7/f7"))).toEqual({
      valid: true,
      value: { least: 20e-6, most: 62e-6, kind: "clearance" },
    });
    expect(classClearance(0.025, read("H7/p6"))).toMatchObject({
      value: { least: -35e-6, most: -1e-6, kind: "interference" },
    });
    expect(classClearance(0.025, read("H7"))).toMatchObject({
      valid: false,
      because: "H7 is one part of a fit only",
    });
    expect(classClearance(0.02, read("H7/t6"))).toMatchObject({
      valid: false,
      because: expect.stringContaining("t up to 24 mm") as string,
    });
    expect(classZones(0.6, read("RC4"))).toMatchObject({ valid: false });
    expect(classZones(0.02, read("T7/h6"))).toMatchObject({ valid: false });
  });
});

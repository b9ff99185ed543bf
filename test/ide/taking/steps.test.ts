// Readings as steps: what is taken, what is asked about, and that a step can be undone.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { linesOf } from "../../../server/ide/taking/lines.ts";
import { isOver, standAfter } from "../../../server/ide/taking/steps.ts";
import type { TakingPlan } from "../../../server/protocol/guide.ts";
import { PLAN, REPEATS } from "./plans.ts";

const digitsAfter = (plan: TakingPlan, ...inputs: readonly string[]) =>
  standAfter(plan, inputs).state.taken.map((place) =>
    place.map(({ digits, unit }) => `${digits} ${unit}`),
  );
const doubtAfter = (plan: TakingPlan, ...inputs: readonly string[]) =>
  standAfter(plan, inputs).state.doubt;

describe("the walk", () => {
  test("goes from place to place and ends", () => {
    const six = ["0.8743", "0.8742", "0.8744", "0.8743", "0.8741", "0.8743"];
    const { state } = standAfter(PLAN, six);
    expect(isOver(state)).toBe(true);
    expect(linesOf(PLAN, state)).toEqual([
      "read near 0.8743 0.8742 0.8744 with mic-1 at 68 F on 2026-11-05",
      "read far 0.8743 0.8741 0.8743 with mic-1 at 68 F on 2026-11-05",
    ]);
    expect(standAfter(PLAN, [...six, "0.8743"]).note).toBe(
      "All has been taken.",
    );
  });

  test("a place is left with s, and an empty Enter is nothing", () => {
    const { state, steps } = standAfter(PLAN, [
      "0.8743",
      "",
      " ",
      "s",
      "0.8742",
    ]);
    expect(steps).toBe(3);
    expect(linesOf(PLAN, state)).toEqual([
      "read near 0.8743 with mic-1 at 68 F on 2026-11-05",
      "read far 0.8742 with mic-1 at 68 F on 2026-11-05",
    ]);
  });

  test("what can't be read is said, and changes nothing", () => {
    const before = standAfter(PLAN, ["0.8743"]);
    const after = standAfter(PLAN, ["0.8743", "ERR"]);
    expect(after.state).toEqual(before.state);
    expect(after.note).toContain("ERR");
    expect(standAfter(PLAN, ["u"]).note).toContain("nothing to take back");
  });
});

describe("a reading far from what is expected", () => {
  test.each([
    ["22.21", "show millimetres"],
    ["8.743", "10 times too large"],
    ["0.08743", "10 times too small"],
    ["874.3", "1000 times too large"],
    ["0.00087", "1000 times too small"],
    ["8743", "10000 times too large"],
    ["0.8900", "is far from the 0.8740 to 0.8745 in"],
  ])("%s is asked about, not refused and not changed", (text, words) => {
    const doubt = doubtAfter(PLAN, text);
    expect(doubt?.sentence).toContain(words);
    expect(digitsAfter(PLAN, text)).toEqual([[], []]);
    // the same once more is taken as it is, and k takes it at once
    expect(digitsAfter(PLAN, text, text)[0]).toEqual([`${text} in`]);
    expect(digitsAfter(PLAN, text, "k")[0]).toEqual([`${text} in`]);
    // a better one takes its place
    expect(digitsAfter(PLAN, text, "0.8743")[0]).toEqual(["0.8743 in"]);
    expect(doubtAfter(PLAN, text, "0.8743")).toBeUndefined();
  });

  test("in the other unit is taken so once that is said, and so are those after it", () => {
    expect(digitsAfter(PLAN, "22.207", "mm", "22.205", "0.8742 in")[0]).toEqual(
      ["22.207 mm", "22.205 mm", "0.8742 in"],
    );
    const { state } = standAfter(PLAN, ["22.207", "mm", "22.205", "0.8742 in"]);
    // one unit ends a line, so that two need two
    expect(linesOf(PLAN, state)).toEqual([
      "read near 22.207 22.205 mm with mic-1 at 68 F on 2026-11-05",
      "read near 0.8742 with mic-1 at 68 F on 2026-11-05",
    ]);
  });

  test("is told by those before it where nothing else says what to expect", () => {
    const plan = { ...PLAN, expected: null };
    expect(doubtAfter(plan, "0.8743")).toBeUndefined();
    expect(doubtAfter(plan, "0.8743", "0.0874")?.sentence).toContain(
      "10 times too small",
    );
  });

  test("a comma before three digits is asked about only where either could be", () => {
    const plan = { ...PLAN, expected: null, system: "mm" as const };
    expect(doubtAfter(plan, "22,211")?.sentence).toContain("decimal mark");
    expect(digitsAfter(plan, "22,211", "22,211")[0]).toEqual(["22.211 mm"]);
    const known = { ...plan, expected: { low: 0.0222, high: 0.02222 } };
    expect(doubtAfter(known, "22,211")).toBeUndefined();
  });
});

describe("repeats", () => {
  // the first four agree and the fifth is ten counts off
  const four = ["0.87430", "0.87431", "0.87430", "0.87431"];

  test("a stray is asked to be read again, and what comes takes its place", () => {
    const doubt = doubtAfter(REPEATS, ...four, "0.87480");
    expect(doubt?.replaces).toBe(4);
    expect(doubt?.sentence).toContain("Grubbs");
    expect(isOver(standAfter(REPEATS, [...four, "0.87480"]).state)).toBe(false);
    const { state } = standAfter(REPEATS, [...four, "0.87480", "0.87430"]);
    expect(isOver(state)).toBe(true);
    expect(state.taken[0]?.map(({ digits }) => digits)).toEqual([
      ...four,
      "0.87430",
    ]);
  });

  test("the same again, or k, keeps it", () => {
    for (const answer of ["0.87480", "0.87481", "k"]) {
      const { state } = standAfter(REPEATS, [...four, "0.87480", answer]);
      expect(isOver(state)).toBe(true);
      expect(state.taken[0]).toHaveLength(5);
    }
    expect(doubtAfter(REPEATS, ...four, "0.87480", "0.87380")).toBeDefined();
  });

  test("readings round an oval are form, and none is a stray", () => {
    const plan = { ...PLAN, each: 5 };
    expect(doubtAfter(plan, ...four, "0.87480")).toBeUndefined();
  });
});

const input = fc.oneof(
  {
    weight: 6,
    arbitrary: fc
      .integer({ min: 87_380, max: 87_470 })
      .map((n) => `0.${String(n)}`),
  },
  fc.constantFrom(
    "s",
    "k",
    "mm",
    "in",
    "",
    "ERR",
    "22.21",
    "8.743",
    "0,8743",
    "0.8743 in",
    "7/8",
    "U",
  ),
  fc.string({ maxLength: 8 }),
);

test("undoing any step gives the state before it", () => {
  fc.assert(
    fc.property(
      fc.constantFrom(PLAN, REPEATS, { ...PLAN, expected: null }),
      fc.array(input, { maxLength: 14 }),
      input,
      (plan, inputs, last) => {
        const before = standAfter(plan, inputs);
        const after = standAfter(plan, [...inputs, last]);
        if (last.trim().toLowerCase() === "u") return;
        if (after.steps === before.steps) {
          expect(after.state).toEqual(before.state);
          return;
        }
        expect(after.steps).toBe(before.steps + 1);
        const undone = standAfter(plan, [...inputs, last, "u"]);
        expect(undone.state).toEqual(before.state);
        expect(undone.steps).toBe(before.steps);
      },
    ),
  );
});

test("undoing all steps gives the beginning, whatever was typed", () => {
  fc.assert(
    fc.property(fc.array(input, { maxLength: 20 }), (inputs) => {
      const { steps } = standAfter(PLAN, inputs);
      const undone = standAfter(PLAN, [
        ...inputs,
        ...Array.from({ length: steps }, () => "u"),
      ]);
      expect(undone.state).toEqual(standAfter(PLAN, []).state);
      expect(undone.steps).toBe(0);
    }),
  );
});

describe("a reading apart from those before it", () => {
  const two = ["0.8743", "0.8742"];

  test("is asked about, though what is expected leaves room for it", () => {
    const { doubt, taken } = standAfter(PLAN, [...two, "0.8783"]).state;
    // 0.8783 less 0.8743; a fifth of a hundredth of the size is 0.0017 in
    expect(doubt?.sentence).toContain(
      "0.8783 in is 0.0040 in from the nearest of the 2 readings before it.",
    );
    expect(taken.flat()).toHaveLength(2);
    expect(doubtAfter(PLAN, ...two, "0.8758")).toBeUndefined();
    expect(doubtAfter(PLAN, ...two, "0.8703")?.sentence).toContain("0.0039 in");
  });

  test("is taken when it is read again, and so is what lies near it", () => {
    const worn = [...two, "0.8743", "0.8703", "0.8704", "0.8703"];
    expect(digitsAfter(PLAN, ...worn)[1]).toEqual(["0.8704 in", "0.8703 in"]);
  });

  test("is not asked about where the first two are as far apart, of repeats, or of a coarse gauge", () => {
    expect(doubtAfter(PLAN, "0.8743", "0.8753", "0.8772")).toBeUndefined();
    // a stray among repeats has a sentence of its own
    const repeats = doubtAfter(REPEATS, ...two, "0.8783")?.sentence;
    expect(repeats ?? "").not.toContain("readings before it");
    expect(doubtAfter(PLAN, "0.874", "0.874", "0.876")).toBeUndefined();
  });
});

// Stacks from text to results and findings, against sums written out here.
import { describe, expect, test } from "vitest";
import { checkText, resultOf } from "./check-text.ts";

const STACK = "stack output";

function job(facts: string, units = "mm"): string {
  return `
job winch-9
  units ${units}
part shaft
  material own-steel
part case
  material own-alloy
material own-steel
  expansion 12 um/m-K
material own-alloy
  expansion 22 um/m-K
stack output
${facts}`;
}

const CHAIN = `  plus case 100.2 to 100.4 of case
  minus left 20.0 to 20.1 of shaft
  minus right 79.9 to 80.0 of shaft
`;

describe("end float", () => {
  /** With each member read. */
  const floatOf = (ofCase: string, left: string, right: string) =>
    resultOf(
      checkText(
        job(
          `${CHAIN}  read case ${ofCase} at 20 C\n  read left ${left} at 20 C\n  read right ${right} at 20 C\n`,
        ),
      ),
      STACK,
      "end-float",
    );

  test("at worst and by root-sum-square", () => {
    const float = resultOf(checkText(job(CHAIN)), STACK, "end-float");
    // 100.2 − 20.1 − 80.0 and 100.4 − 20.0 − 79.9; middle 0.3; halves 0.1, 0.05, 0.05
    expect(Number(float?.low)).toBeCloseTo(0.1e-3, 10);
    expect(Number(float?.nominal)).toBeCloseTo(0.3e-3, 10);
    expect(Number(float?.high)).toBeCloseTo(0.5e-3, 10);
    const rss = Math.sqrt(0.1 ** 2 + 2 * 0.05 ** 2);
    expect(float?.text).toBe(
      `0.100 to 0.500 mm, by root-sum-square ${(0.3 - rss).toFixed(3)} to ${(0.3 + rss).toFixed(3)} mm`,
    );
    expect(float?.status).toBe("predicted");
    expect(float?.verdict).toBe("none");
  });

  test("drawn at random it is as the root-sum-square has it, and the same every time", () => {
    const drawn = (): string =>
      resultOf(
        checkText(job(`${CHAIN}  want 0.2 to 0.4\n`)),
        STACK,
        "end-float",
      )?.working.find((each) => each.formula.includes("10,000"))?.with ?? "";
    expect(drawn()).toBe(drawn());
    const [low = 0, high = 0, chance = 0] =
      /^([\d.]+) to ([\d.]+) mm, ([\d.]+) %/
        .exec(drawn())
        ?.slice(1)
        .map(Number) ?? [];
    expect(low).toBeCloseTo(0.3 - 0.1225, 1);
    expect(high).toBeCloseTo(0.3 + 0.1225, 1);
    // 0.1 of the middle is 2.449 deviations of 0.1225/3: 98.6 % of a normal
    expect(chance).toBeGreaterThan(97.5);
    expect(chance).toBeLessThan(99.5);
  });

  test("the float of members that are read finer is said with as many digits", () => {
    const float = floatOf("100.3125 100.31", "20.0501", "79.9502");
    // 100.3100 and 100.3125, less 20.0501 and 79.9502
    expect(float?.text).toMatch(/^0\.3097 to 0\.3122 mm/u);
  });

  test("a member that is read counts as read", () => {
    const read = floatOf("100.31 100.32", "20.05", "79.95");
    expect(Number(read?.low)).toBeCloseTo(0.31e-3, 10);
    expect(Number(read?.high)).toBeCloseTo(0.32e-3, 10);
    expect(read?.status).toBe("measured");
  });

  test("a reading taken warm is brought to 20 °C by its part's expansion less that of the gauge beside it", () => {
    const read = resultOf(
      checkText(
        job(
          "  plus case 100.31 to 100.40 of case\n  minus shaft 100 of shaft\n  read case 100.32 at 30 C\n",
        ),
      ),
      STACK,
      "end-float",
    );
    expect(Number(read?.nominal)).toBeCloseTo(
      ((100.32 * (1 + 11.5e-6 * 10)) / (1 + 22e-6 * 10) - 100) / 1000,
      8,
    );
  });

  test("inch and metric twins are one", () => {
    const inch = resultOf(
      checkText(
        job(
          "  plus case 4.000 to 4.004 of case\n  minus shaft 3.990 to 3.992 of shaft\n  hot shaft 140 F, case 104 F\n",
          "inch",
        ),
      ),
      STACK,
      "end-float",
      { case: 1 },
    );
    const mm = resultOf(
      checkText(
        job(
          "  plus case 101.6 to 101.7016 of case\n  minus shaft 101.346 to 101.3968 of shaft\n  hot shaft 60 C, case 40 C\n",
        ),
      ),
      STACK,
      "end-float",
      { case: 1 },
    );
    expect(Number(inch?.low)).toBeCloseTo(Number(mm?.low), 12);
    expect(Number(inch?.high)).toBeCloseTo(Number(mm?.high), 12);
  });
});

describe("hot and cold", () => {
  const found = checkText(
    job(
      `${CHAIN}  hot shaft 60 C, case 50 C\n  hot shaft 80 C, case 80 C\n  cold shaft -10 C, case -10 C\n`,
    ),
  );
  const nominal = (number: number): number =>
    Number(resultOf(found, STACK, "end-float", { case: number })?.nominal);

  test("each member grows with its own part", () => {
    const case100 = 100.3;
    const shaft100 = 20.05 + 79.95;
    const at = (shaft: number, casing: number): number =>
      (case100 * (1 + 22e-6 * (casing - 20)) -
        shaft100 * (1 + 12e-6 * (shaft - 20))) /
      1000;
    expect(nominal(1)).toBeCloseTo(at(60, 50), 10);
    expect(nominal(2)).toBeCloseTo(at(80, 80), 10);
    expect(nominal(3)).toBeCloseTo(at(-10, -10), 10);
  });

  test("hot lines come first, numbered as written, then the cold ones", () => {
    expect(
      found.results
        .filter((each) => each.entry === STACK)
        .map((each) => [each.of, each.case]),
    ).toEqual([
      [null, null],
      ["hot", 1],
      ["hot", 2],
      ["cold", 3],
    ]);
  });

  test("what it can't tell it names", () => {
    const needs = (facts: string): readonly string[] | undefined =>
      resultOf(checkText(job(facts)), STACK, "end-float", {
        case: 1,
      })?.needs.map((each) => `${each.ref} ${each.fact}`);
    expect(
      needs(
        "  plus case 100.3\n  minus shaft 100 of shaft\n  hot shaft 60 C, case 60 C\n",
      ),
    ).toEqual(["stack output plus"]);
    expect(
      needs(
        "  plus case 100.3 of case\n  minus shaft 100 of shaft\n  hot shaft 60 C\n",
      ),
    ).toEqual(["stack output hot"]);
  });
});

describe("shims", () => {
  const READ =
    "  plus case 100.372\n  minus shaft 100.000\n  want 0.10 to 0.20\n";

  test("fewest that do, with their list and sum", () => {
    const shim = resultOf(
      checkText(job(`${READ}  shims 0.05, 0.1, 0.2, 0.3 mm\n`)),
      STACK,
      "shim",
    );
    // 0.372 − 0.2 = 0.172 is the one single shim that does
    expect([shim?.low, shim?.nominal, shim?.high]).toEqual([
      0.0002, 0.0002, 0.0002,
    ]);
    expect(shim?.text).toBe("0.200 mm");
    const two = resultOf(
      checkText(job(`${READ}  shims 0.05, 0.1, 0.15 mm\n`)),
      STACK,
      "shim",
    );
    // 0.222 is to be brought to the middle 0.15: 0.15 + 0.05 leaves 0.172, 0.15 + 0.1 leaves 0.122
    expect(two?.text).toBe("0.150 + 0.050 = 0.200 mm");
  });

  test("none needed is a sum of nothing", () => {
    const shim = resultOf(
      checkText(
        job(
          "  plus case 100.15\n  minus shaft 100\n  want 0.1 to 0.2\n  shims 0.1 mm\n",
        ),
      ),
      STACK,
      "shim",
    );
    expect(shim).toMatchObject({ low: 0, high: 0, text: "none needed" });
  });

  test("those that do are no fault; none that does is a warning", () => {
    const codes = (facts: string): readonly string[] =>
      checkText(job(facts)).findings.map(
        (each) => `${each.level} ${each.code}`,
      );
    expect(codes(`${READ}  shims 0.2 mm\n`)).toEqual([]);
    expect(codes(READ)).toEqual(["error float-off"]);
    expect(codes(`${READ}  shims 0.3 mm\n`)).toEqual([
      "error float-off",
      "warning shim-none",
    ]);
    // 0.1 at least to 0.5 at most, 0.2 to 0.4 wanted: it may be off
    expect(codes(`${CHAIN}  want 0.2 to 0.4\n`)).toEqual(["warning float-off"]);
    expect(codes(`${CHAIN}  want 0.1 to 0.5\n`)).toEqual([]);
  });

  test("without a want nothing is chosen, and the want is what it needs", () => {
    const shim = resultOf(
      checkText(job("  plus case 100.15\n  minus shaft 100\n  shims 0.1 mm\n")),
      STACK,
      "shim",
    );
    expect(shim?.needs.map((each) => each.fact)).toEqual(["want"]);
  });
});

test("a float that is gone when cold is a fault, with the shims in", () => {
  const facts =
    "  plus case 300.372 of case\n  minus shaft 300.000 of shaft\n  want 0.05 to 0.10\n  shims 0.3 mm\n";
  // 300 · 10e-6 · 40 = 0.12 lost at −20 °C, of the 0.072 that the shims leave
  const found = checkText(
    job(`${facts}  cold shaft -20 C, case -20 C\n`),
  ).findings;
  expect(found.map((each) => `${each.level} ${each.code}`)).toEqual([
    "error float-off",
  ]);
  expect(found[0]?.message).toContain("with 0.300 mm of shims");
  expect(
    checkText(job(`${facts}  cold shaft 0 C, case 0 C\n`)).findings,
  ).toEqual([]);
});

test("a damaged member silences the stack", () => {
  const found = checkText(
    job(CHAIN.replace("100.2 to 100.4", "100.4 to 100.2")),
  );
  expect(resultOf(found, STACK, "end-float")).toMatchObject({
    status: "unknown",
    needs: [],
  });
  expect(found.findings.map((each) => each.code)).toEqual(["range-reversed"]);
});

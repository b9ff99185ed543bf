// What repeats of a reading say of its uncertainty: their scatter is one part of it, and one repeat alone has none.
import { expect, test } from "vitest";
import type { Result } from "../../server/model/result.ts";
import { checkText, resultOf } from "./check-text.ts";

const uncertainty = (more: string): Result | undefined =>
  resultOf(
    checkText(`job a
  units mm
gauge mic
  kind micrometer
  resolution 0.001
  uncertainty 0.0015
part shaft
journal a on shaft
  read 25.001 with mic
${more}`),
    "journal a",
    "uncertainty",
  );

/** The scatter as the budget tells it; undefined where it has none. */
const scatter = (more: string): string | undefined =>
  uncertainty(more)?.working.find(({ formula }) =>
    formula.startsWith("repeatability"),
  )?.with;

// of 25.000 and 25.010 the sample standard deviation is 0.010/√2 = 0.0071
const APART = "  repeat 25.000 25.010 with mic\n";

test("repeats bring their scatter into the budget, and make the reading less sure", () => {
  expect(scatter(APART)).toBe("0.007 mm");
  expect(uncertainty(APART)?.nominal).toBeGreaterThan(
    uncertainty("")?.nominal ?? 1,
  );
});

test("without repeats, and of one alone, there is no scatter", () => {
  expect(scatter("")).toBeUndefined();
  expect(scatter("  repeat 25.000 with mic\n")).toBeUndefined();
  expect(uncertainty("  repeat 25.000 with mic\n")?.nominal).toBe(
    uncertainty("")?.nominal,
  );
});

test("repeats at two places are pooled, and one alone beside them counts for nothing", () => {
  const near = "  repeat near 25.000 25.010 with mic\n";
  // with as many that don't differ at all: √((0.0071² + 0²)/2) = 0.0050
  expect(scatter(`${near}  repeat far 25.000 25.000 with mic\n`)).toBe(
    "0.005 mm",
  );
  expect(scatter(`${near}  repeat far 25.000 with mic\n`)).toBe("0.007 mm");
});

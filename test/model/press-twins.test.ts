// A press in inches and in millimetres gives the same results; what is taken of it for smoothing and warmth, and that it is said.
import { describe, expect, test } from "vitest";
import { checkText, resultOf } from "./check-text.ts";
import { INCH, METRIC } from "./press-job.ts";

describe("inch and metric twins", () => {
  const [inch, metric] = [checkText(INCH), checkText(METRIC)];

  test("give the same results", () => {
    const kinds = inch.results.filter(({ entry }) =>
      /^(?:press|bore|fit)/.test(entry),
    );
    expect(kinds.length).toBeGreaterThan(14);
    for (const one of kinds) {
      const other = resultOf(metric, one.entry, one.kind, { case: one.case });
      for (const end of ["low", "nominal", "high"] as const) {
        const [a, b] = [one[end], other?.[end]];
        if (a === null) expect(b).toBeNull();
        else if (one.unit === "m")
          expect(Math.abs(a - Number(b)), one.kind).toBeLessThan(1e-10);
        else
          expect(Math.abs(a - Number(b)), one.kind).toBeLessThanOrEqual(
            1e-9 * Math.abs(a),
          );
      }
    }
  });

  test("smoothing is 0.4 of both Rz, off both ends of the interference", () => {
    const loss = 0.4 * (1.6002e-6 + 0.8128e-6);
    const found = resultOf(metric, "press front", "interference");
    expect(found?.low).toBeCloseTo(25.42794e-3 - 25.40762e-3 - loss, 11);
    expect(found?.high).toBeCloseTo(25.43048e-3 - 25.40508e-3 - loss, 11);
    // read on both sides: measured, though the bore that follows is not
    expect(found?.status).toBe("measured");
    expect(resultOf(metric, "bore front", "size")?.status).toBe("predicted");
  });

  test("a smoothing that is written goes before that of the finishes", () => {
    const written = checkText(
      METRIC.replace(
        /^press front .*\n/mu,
        (line) => `${line}  smoothing 0.004\n`,
      ),
    );
    const found = resultOf(written, "press front", "interference");
    expect(found?.low).toBeCloseTo(25.42794e-3 - 25.40762e-3 - 4e-6, 11);
    expect(found?.high).toBeCloseTo(25.43048e-3 - 25.40508e-3 - 4e-6, 11);
    expect(found?.working).toContainEqual({
      formula: "smoothing = as written",
      with: "0.004 mm",
      source: "",
    });
  });

  test("a bush as warm as its case says that it is taken so", () => {
    const [first, second] = [1, 2].map((number) =>
      JSON.stringify(
        resultOf(inch, "fit front", "hot-clearance", { case: number })?.working,
      ),
    );
    expect(first).not.toContain("assumed as its case");
    expect(second).toContain("assumed as its case");
  });
});

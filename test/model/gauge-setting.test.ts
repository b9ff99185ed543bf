// A gauge that was set with another takes over its correction and shares its error: by arithmetic written out here.
import { describe, expect, test } from "vitest";
import { checkText, resultOf } from "./check-text.ts";

interface Written {
  readonly gauges: string;
  readonly want?: string;
  readonly mic?: string;
}

// the micrometer shows a tenth of a thou too much: the journal is 0.9989
function job({ gauges, want = "0.0015 to 0.0025", mic = "" }: Written): string {
  return `
job winch-9
  units inch
  verdict guarded
part layshaft
part case
gauge mic
  kind micrometer
  adds -0.0001
${mic}
${gauges}
journal front on layshaft
  read 0.9990 with mic at 68 F
bore front in case
  read 1.0010 with bg at 68 F
fit front of journal front in bore front
  want ${want}
`;
}

const inch = 0.0254;
const clearance = (written: Written) =>
  resultOf(checkText(job(written)), "fit front", "clearance");

describe("the correction of the gauge that set it", () => {
  test("passes on: set by a micrometer that shows too much, it shows too much", () => {
    const found = clearance({ gauges: "gauge bg\n  set with mic\n" });
    // 1.0010 − 0.0001 less 0.9990 − 0.0001
    expect(Number(found?.nominal) / inch).toBeCloseTo(0.002, 9);
    expect(found?.text).toMatch(/^0\.0020 in/);
    expect(found?.working.map((step) => step.with)).toContain(
      "gauge bg was set with gauge mic, which adds -0.0001 in; -0.0001 in in all",
    );
    expect(found?.working.map((step) => step.with)).toContain(
      "gauge mic adds -0.0001 in",
    );
  });

  test("with its own, along a chain", () => {
    const found = clearance({
      gauges:
        "gauge bg\n  set with bg-2\n  adds 0.0002\ngauge bg-2\n  adds 0.00005\n  set with mic\n",
    });
    // 1.0010 + 0.0002 + 0.00005 − 0.0001 = 1.00115, less 0.9989
    expect(Number(found?.nominal) / inch).toBeCloseTo(0.00225, 9);
    expect(found?.working.map((step) => step.with)).toContain(
      "gauge bg adds 0.0002 in; gauge bg was set with gauge bg-2, which adds 0.00005 in; gauge bg-2 was set with gauge mic, which adds -0.0001 in; 0.00015 in in all",
    );
  });

  test("not from a ring, whose size is its own; nor past one", () => {
    const ring = clearance({ gauges: "gauge bg\n  set on ring 1.0000\n" });
    expect(Number(ring?.nominal) / inch).toBeCloseTo(0.0021, 9);
    const past = clearance({
      gauges:
        "gauge bg\n  set with bg-2\ngauge bg-2\n  adds 0.0003\n  set on ring 1.0000\n",
    });
    // 1.0010 + 0.0003 less 0.9989
    expect(Number(past?.nominal) / inch).toBeCloseTo(0.0024, 9);
  });

  test.each([
    ["itself", "gauge bg\n  set with bg\n"],
    [
      "another that is set with it",
      "gauge bg\n  set with bg-2\ngauge bg-2\n  set with bg\n",
    ],
    [
      "a ring of others",
      "gauge bg\n  set with bg-2\ngauge bg-2\n  set with bg-3\ngauge bg-3\n  set with bg-2\n",
    ],
  ])("refuses a gauge set with %s", (_, gauges) => {
    const found = checkText(job({ gauges }));
    expect(resultOf(found, "bore front", "size")).toMatchObject({
      status: "unknown",
      nominal: null,
    });
    expect(
      found.findings
        .filter((each) => each.code === "not-valid-here")
        .map((each) => each.message)
        .join("\n"),
    ).toMatch(/set with each other were never set/);
    expect(resultOf(found, "journal front", "size")?.text).toBe("0.9989 in");
  });

  test("says nothing where the gauge that set it can't be read", () => {
    const found = checkText(
      job({ gauges: "gauge bg\n  set with mic\n", mic: "  adds 0.0001 inhc" }),
    );
    expect(resultOf(found, "fit front", "clearance")?.nominal ?? null).toBe(
      null,
    );
    const unnamed = checkText(job({ gauges: "gauge bg\n  set with nobody\n" }));
    expect(resultOf(unnamed, "bore front", "size")?.nominal ?? null).toBe(null);
  });
});

describe("the error in common", () => {
  // uB² = 3² + 5², uJ² = 5² in hundred-thousandths; the 5² of the micrometer is in both: 3 is left
  const mic = "  uncertainty 0.0001";
  const own = "  kind bore-gauge\n  uncertainty 0.00006\n";

  test("cancels in the clearance's verdict", () => {
    // guard 1.645 · 0.00003 = 0.0000494: 0.0020494 is below 0.00205, not below 0.00204
    const set = `gauge bg\n${own}  set with mic\n`;
    expect(
      clearance({ gauges: set, mic, want: "0.0015 to 0.00205" })?.verdict,
    ).toBe("in");
    expect(
      clearance({ gauges: set, mic, want: "0.0015 to 0.00204" })?.verdict,
    ).toBe("unsure");
    // r = 25 / (√34 · 5) = 0.857
    expect(
      clearance({ gauges: set, mic })?.working.find((step) =>
        step.formula.startsWith("u² ="),
      )?.with,
    ).toBe("r = 0.86: the error of gauge mic is in both sizes, and cancels");
  });

  test("does not where another micrometer set it", () => {
    const set = `gauge bg\n${own}  set with mic-2\ngauge mic-2\n  kind micrometer\n  adds -0.0001\n  uncertainty 0.0001\n`;
    // guard 1.645 · √(9 + 25 + 25) = 12.6
    expect(
      clearance({ gauges: set, mic, want: "0.0015 to 0.00205" })?.verdict,
    ).toBe("unsure");
    expect(
      clearance({ gauges: set, mic, want: "0.0015 to 0.00212" })?.verdict,
    ).toBe("unsure");
    expect(
      clearance({ gauges: set, mic, want: "0.0015 to 0.00213" })?.verdict,
    ).toBe("in");
    expect(
      clearance({ gauges: set, mic })?.working.some((step) =>
        step.formula.startsWith("u² ="),
      ),
    ).toBe(false);
  });

  test("in a chain, what stands between stays", () => {
    const set = `gauge bg\n${own}  set with bg-2\ngauge bg-2\n  uncertainty 0.00008\n  set with mic\n`;
    // 3² + 4² = 5²: guard 1.645 · 5 = 8.2
    expect(
      clearance({ gauges: set, mic, want: "0.0015 to 0.00208" })?.verdict,
    ).toBe("unsure");
    expect(
      clearance({ gauges: set, mic, want: "0.0015 to 0.00209" })?.verdict,
    ).toBe("in");
  });
});

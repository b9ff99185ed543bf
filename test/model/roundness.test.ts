// Roundness from the swing of a pointer, and what an odd number of lobes takes of a clearance: records written from outlines of points that
// are turned between their contacts, held against the ring that goes over the outline and the pin that goes into it.
import { describe, expect, test } from "vitest";
import type { FileCheck, Result } from "../../server/model/result.ts";
import {
  threeContactSwing,
  twoPointDiameter,
  veeSwing,
  type Outline,
} from "../core/readings/turned.ts";
import { checkText, resultOf } from "./check-text.ts";

const mm = (metres: number): string => (metres * 1e3).toFixed(6);

/** A micrometer's readings at six angles. */
const readings = (outline: Outline): string =>
  [0, 1, 2, 3, 4, 5]
    .map((sixth) => mm(twoPointDiameter(outline, (sixth * Math.PI) / 6)))
    .join(" ");

interface Written {
  readonly journal: string;
  readonly bore: string;
  readonly more?: string;
}

function job({ journal, bore, more = "" }: Written): string {
  return `
job winch-9
  units mm
part layshaft
  material steel-4140
part case
  material steel-4140
${more}
journal front on layshaft
${journal}
bore front in case
${bore}
fit front of journal front in bore front
  want 0.02 to 0.06
`;
}

function found(written: Written): FileCheck {
  return checkText(job(written));
}

const clearance = (written: Written): Result | undefined =>
  resultOf(found(written), "fit front", "clearance");

describe("an outline that is turned and read", () => {
  test.each([
    [3, 60],
    [3, 90],
    [5, 90],
    [5, 108],
    [7, 120],
    [9, 60],
    [11, 90],
  ])(
    "%i lobes in a vee of %i°: the ring that goes over it has what is left",
    (lobes, degrees) => {
      const outline = { radius: 0.01, amplitude: 5e-7, lobes };
      const swing = veeSwing(outline, (degrees * Math.PI) / 180, "opposite");
      const written = {
        journal: `  read ${readings(outline)}\n  swing ${mm(swing)} on vee ${degrees} deg, ${lobes} lobes`,
        bore: "  read 20.030",
      };
      // low against the radius, so that what the factors leave out (n²a²/R) is beyond the tolerance; its largest radius, and the ring's, is R + a
      const ring = 2 * (outline.radius + outline.amplitude);
      const left = clearance(written);
      expect(Number(left?.low)).toBeCloseTo(0.02003 - ring, 8);
      // where a low of the outline faces the bore there is as much as ever
      expect(Number(left?.high)).toBeCloseTo(0.02003 - 0.02, 8);
      const roundness = resultOf(found(written), "journal front", "roundness");
      expect(Number(roundness?.nominal)).toBeCloseTo(2 * outline.amplitude, 8);
      expect(roundness).toMatchObject({ unit: "m", status: "measured" });
    },
  );

  test("a bore of three lobes on three points: the pin that goes into it", () => {
    const outline = { radius: 0.01, amplitude: 2e-6, lobes: 3 };
    const left = clearance({
      journal: "  read 19.970",
      bore: `  read ${readings(outline)}\n  swing ${mm(threeContactSwing(outline))} on three points, 3 lobes`,
    });
    const pin = 2 * (outline.radius - outline.amplitude);
    expect(Number(left?.low)).toBeCloseTo(pin - 0.01997, 8);
  });

  test("read between the faces of the vee it swings otherwise, and comes to the same", () => {
    const outline = { radius: 0.01, amplitude: 2e-6, lobes: 3 };
    const swing = veeSwing(outline, Math.PI / 2, "between");
    const { results } = found({
      journal: `  read ${readings(outline)}\n  swing ${mm(swing)} on vee 90 deg between, 3 lobes`,
      bore: "  read 20.030",
    });
    const roundness = results.find(({ kind }) => kind === "roundness");
    expect(Number(roundness?.nominal)).toBeCloseTo(2 * outline.amplitude, 8);
  });

  test("even lobes take nothing more: two points have seen them", () => {
    const outline = { radius: 0.01, amplitude: 2e-6, lobes: 4 };
    const swing = veeSwing(outline, Math.PI / 2, "opposite");
    const journal = `  read ${readings(outline)}`;
    const bore = "  read 20.030";
    const with4 = clearance({
      journal: `${journal}\n  swing ${mm(swing)} on vee 90 deg, 4 lobes`,
      bore,
    });
    expect(with4?.low).toBe(clearance({ journal, bore })?.low);
  });
});

const bore = "  read 20.030 with bg";
const GAUGES = `gauge mic
  uncertainty 0.002
  resolution 0.001
gauge bg
  kind bore-gauge
  set with mic
  uncertainty 0.002
  resolution 0.001
gauge dti
  kind indicator
  uncertainty 0.003
  resolution 0.001
`;

describe("which swings count", () => {
  const low = (swings: readonly string[]): number => {
    const left = clearance({
      journal: ["  read 20.000", ...swings.map((each) => `  ${each}`)].join(
        "\n",
      ),
      bore: "  read 20.030",
    });
    return Math.round(Number(left?.low) * 1e7) / 10;
  };

  test("the least round of all places", () => {
    expect(
      low([
        "swing near 0.006 on vee 60 deg, 3 lobes",
        "swing far 0.009 on vee 60 deg, 3 lobes",
      ]),
    ).toBe(27);
  });

  test("the latest of a place", () => {
    expect(
      low([
        "swing near 0.009 on vee 60 deg, 3 lobes on 2026-11-02",
        "swing near 0.003 on vee 60 deg, 3 lobes on 2026-11-05",
      ]),
    ).toBe(29);
  });

  test("as run before as finished", () => {
    expect(
      low([
        "swing near 0.009 on vee 60 deg, 3 lobes",
        "swing near 0.003 on vee 60 deg, 3 lobes as run",
      ]),
    ).toBe(29);
  });

  test("one that its vee is blind to takes nothing, and says what would show it", () => {
    expect(low(["swing 0.009 on vee 60 deg, 5 lobes"])).toBe(30);
    const { results, findings } = found({
      journal: "  read 20.000\n  swing 0.000 on vee 60 deg, 5 lobes",
      bore: "  read 20.030",
    });
    expect(results.find(({ kind }) => kind === "roundness")).toMatchObject({
      status: "unknown",
      nominal: null,
      needs: [
        {
          ref: "journal front",
          fact: "swing",
          text: "the swing of journal front in a vee of 108°, which shows 5 lobes",
        },
      ],
    });
    expect(findings.map(({ code }) => code)).toContain("swing-blind");
    expect(findings.map(({ code }) => code)).not.toContain("not-valid-here");
  });

  test("a line that can't be read leaves the clearance unsaid", () => {
    const left = clearance({
      journal: "  read 20.000\n  swing 0.009 on vee 60 deg, 3",
      bore: "  read 20.030",
    });
    expect(left?.status).toBe("unknown");
  });

  test("nor is it said where the gauge of a swing can't be read", () => {
    const left = clearance({
      journal: "  read 20.000\n  swing 0.009 on vee 60 deg, 3 lobes with dti",
      bore: "  read 20.030",
      more: "gauge dti\n  uncertainty O.003",
    });
    expect(left?.status).toBe("unknown");
  });

  test("a bore that a line still cuts is not of the form that it had", () => {
    const text = job({
      journal: "  read 20.000",
      bore: "  swing 0.010 on three points, 3 lobes",
      more: "line all\n  bore front from 0 to 20\n  cut to 20.02 to 20.03",
    });
    const left = resultOf(checkText(text), "fit front", "clearance");
    expect(Math.round(Number(left?.low) * 1e7) / 10).toBe(20);
  });
});

describe("what rests on the clearance", () => {
  const swing = "  swing 0.018 on vee 60 deg, 3 lobes";
  const text = (swings: string): string => `
job winch-9
  units mm
part layshaft
  material steel-4140
part case
  material steel-4140
reamer r-20
  size 20.03
journal front on layshaft
  read 20.000
${swings}
bore front in case
fit front of journal front in bore front
  want 0.02 to 0.06
  hot shaft 60 C, case 60 C
line all
  bore front from 0 to 20
  ream with r-20
`;

  test.each([
    ["line all", "reamer-window", 6, "low"],
    ["fit front", "hot-clearance", -6, "low"],
    ["fit front", "clearance", -6, "low"],
    ["fit front", "clearance", 0, "high"],
    ["line all", "reamer-window", 0, "high"],
  ] as const)("%s: %s moves by %i µm at its %s end", (ref, kind, by, end) => {
    const without = resultOf(checkText(text("")), ref, kind);
    const withLobes = resultOf(checkText(text(swing)), ref, kind);
    const moved = Number(withLobes?.[end]) - Number(without?.[end]);
    expect(Math.round(moved * 1e7) / 10 + 0).toBe(by);
  });

  test("a straight shaft through checked bores has as much less", () => {
    const checked = (swings: string): Result | undefined =>
      resultOf(
        checkText(
          text(swings).replace("from 0 to 20", "from 0 to 20 centre 0, 0"),
        ),
        "line all",
        "effective-clearance",
      );
    const moved = Number(checked(swing)?.low) - Number(checked("")?.low);
    expect(Math.round(moved * 1e7) / 10).toBe(-6);
    expect(checked(swing)?.high).toBe(checked("")?.high);
  });
});

describe("how sure it is", () => {
  const journal = (gauge: string): string =>
    `  read 20.000 with mic\n  swing 0.006 on vee 60 deg, 3 lobes${gauge}`;

  test("the swing's uncertainty over the factor, by hand", () => {
    const check = found({ journal: journal(" with dti"), bore, more: GAUGES });
    const U = resultOf(check, "journal front", "uncertainty", {
      of: "roundness",
    });
    // two roundings of a micrometre and a calibration of 3 µm at k = 2, over 3.00; 1.96 for 95 %
    const u = Math.hypot(Math.SQRT2 * (1e-6 / Math.sqrt(12)), 1.5e-6) / 3;
    expect(Number(U?.nominal)).toBeCloseTo(1.959964 * u, 12);
  });

  test("it widens that of the clearance", () => {
    const guardOf = (gauge: string): FileCheck =>
      checkText(
        job({ journal: journal(gauge), bore, more: GAUGES }).replace(
          "units mm",
          "units mm\n  verdict guarded",
        ),
      );
    const sure = resultOf(guardOf(" with dti"), "fit front", "clearance");
    expect(sure?.verdict).toBe("in");
    // of a pointer that nobody named nothing is sure, and the fit needs it
    const check = guardOf("");
    expect(resultOf(check, "fit front", "clearance")?.verdict).toBe("unsure");
    expect(
      resultOf(check, "journal front", "uncertainty", { of: "roundness" }),
    ).toMatchObject({
      status: "unknown",
      needs: [{ text: "the gauge that showed the swing of journal front" }],
    });
  });

  test("by as much as squares add, by hand", () => {
    const judged = (gauges: string): string | undefined =>
      resultOf(
        checkText(
          job({ journal: journal(" with dti"), bore, more: gauges })
            .replace("units mm", "units mm\n  verdict guarded")
            .replace("want 0.02 ", "want 0.0261 "),
        ),
        "fit front",
        "clearance",
      )?.verdict;
    // least 30 − 2 µm, so 1.9 µm over what is wanted. Both gauges 1 µm and 1/√12, the micrometer's micrometre in common: u² = 1 + 2/12,
    // held back by 1.645·1.08 = 1.78 µm; with the pointer's hypot(1.5, √2/√12)/3 = 0.52 it is 1.645·1.20 = 1.97 µm
    expect(judged(GAUGES)).toBe("unsure");
    expect(judged(GAUGES.replace("0.003", "0.0001"))).toBe("in");
  });

  test("what a pointer was set on is in no swing", () => {
    const { findings } = found({
      journal: journal(" with dti"),
      bore,
      more: GAUGES,
    });
    expect(findings.map(({ code }) => code)).not.toContain("gauge-unset");
  });

  test("a pointer overdue, and a swing finer than it shows, are told", () => {
    const { findings } = found({
      journal:
        "  read 20.000 with mic\n  swing 0.0061 on vee 60 deg, 3 lobes with dti on 2026-11-05",
      bore,
      more: `${GAUGES}  due 2026-10-01\n`,
    });
    const codes = findings.map(({ code }) => code);
    expect(codes).toContain("gauge-overdue");
    expect(codes).toContain("reading-finer-than-gauge");
  });
});

test("the sizes under a finding of the fit say what the lobes take", () => {
  const { findings } = found({
    journal: "  read 20.000\n  swing 0.045 on vee 60 deg, 3 lobes",
    bore: "  read 20.030",
  });
  const tight = findings.find(({ code }) => code === "fit-tight");
  expect(tight?.related.map(({ message }) => message)).toContain(
    "journal front: 20.000 mm, measured; its 3 lobes take 0.0150 mm",
  );
});

test("lobes of both halves come off one after the other, and the working says each", () => {
  const { results } = checkText(
    [
      "job winch-9",
      "  units inch",
      "part layshaft",
      "part case",
      "journal front on layshaft",
      "  read 0.8742",
      "  swing 0.0006 on vee 60 deg, 3 lobes",
      "bore front in case",
      "  read 0.8755",
      "  swing 0.0006 on three points, 3 lobes",
      "fit front of journal front in bore front",
      "  want 0.0005 to 0.0016",
      "",
    ].join("\n"),
  );
  const found = results.find(
    ({ entry, kind }) => entry === "fit front" && kind === "clearance",
  );
  // a third of 0.0006 off the journal, a half of it off the bore
  expect(found?.working).toContainEqual({
    formula:
      "least clearance = smallest bore − largest journal − what lobes take",
    with: "0.8755 − 0.8742 − 0.00030 − 0.00020 = 0.0008 in",
    source: "",
  });
});

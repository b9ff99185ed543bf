// How a fit runs, from text to results and findings: speed, load and PV, and what the bush bears, held against arithmetic written out here;
// what is missing, and what is silent.
import { describe, expect, test } from "vitest";
import type { FileCheck, Result } from "../../server/model/result.ts";
import { checkText, resultOf } from "./check-text.ts";
import { FIT, fitWith, INCH, LBF, nominal } from "./film-job.ts";

describe("speed, load and PV", () => {
  const d = 0.874 * 0.0254;
  test("of a turning journal", () => {
    const found = checkText(INCH);
    expect(nominal(found, "surface-speed")).toBeCloseTo(Math.PI * d * 10, 12);
    // on 1.000 in, the lesser of the two lengths
    expect(
      nominal(found, "specific-load") / ((150 * LBF) / (d * 0.0254)),
    ).toBeCloseTo(1, 12);
    expect(nominal(found, "pv")).toBeCloseTo(
      ((150 * LBF) / (d * 0.0254)) * Math.PI * d * 10,
      3,
    );
  });

  test("of an oscillating one: there and back through the whole angle each cycle", () => {
    const found = checkText(
      fitWith(INCH, "oscillates 30 deg, 20 per min", "load 150 lbf reversing"),
    );
    // arc of 30° of the circumference, twice a cycle, 20 cycles in 60 s
    const arc = (Math.PI * d * 30) / 360;
    expect(nominal(found, "surface-speed")).toBeCloseTo(
      (2 * arc * 20) / 60,
      12,
    );
  });
});

describe("needs", () => {
  const needsOf = (text: string, kind: string): readonly string[] =>
    (resultOf(checkText(text), FIT, kind)?.needs ?? []).map(
      (need: Result["needs"][number]) => `${need.ref} ${need.fact}`,
    );

  test("each fact that is missing is named where it would be written", () => {
    expect(
      needsOf(fitWith(INCH, "load 150 lbf steady"), "surface-speed"),
    ).toEqual(["fit front runs"]);
    expect(needsOf(fitWith(INCH, "runs 600 rpm"), "specific-load")).toEqual([
      "fit front load",
    ]);
    expect(
      needsOf(
        fitWith(INCH, "runs 600 rpm", "load 150 lbf steady", "feed splash"),
        "film",
      ),
    ).toEqual(["fit front oil"]);
    expect(
      needsOf(
        fitWith(INCH, "runs 600 rpm", "load 150 lbf", "oil own at 40 C"),
        "film",
      ),
    ).toEqual(["fit front load", "fit front feed"]);
    expect(
      needsOf(INCH.replace(/ {2}length .*\n/g, ""), "specific-load"),
    ).toEqual(["bore front length"]);
    expect(
      needsOf(INCH.replace("  finish 16 uin Ra\n", ""), "film-ratio"),
    ).toEqual(["bore front finish"]);
    expect(
      needsOf(
        INCH.replace("finish 16 uin Ra", "finish 63 uin Rz"),
        "film-ratio",
      ),
    ).toEqual([]);
    expect(needsOf(INCH.replace("  density 880 kg/m3\n", ""), "film")).toEqual([
      "oil own density",
    ]);
    expect(needsOf(INCH.replace(", 11 cSt at 100 C", ""), "film")).toEqual([
      "oil own viscosity",
    ]);
  });

  test("nothing is said of how a fit runs where nothing is written of it", () => {
    const found = checkText(fitWith(INCH, 'note "as found"'));
    expect(
      found.results
        .filter((each) => each.entry === FIT)
        .map((each) => each.kind),
    ).toEqual(["clearance"]);
  });

  test("a damaged line is silent", () => {
    const found = checkText(
      INCH.replace("load 150 lbf steady", "load 150 lbs steady"),
    );
    expect(resultOf(found, FIT, "film")).toMatchObject({
      status: "unknown",
      needs: [],
    });
    expect(found.findings.map((each) => each.code)).toEqual(["unit-wrong"]);
  });
});

test("a job's own threshold is a thickness, or a film ratio in per cent", () => {
  const ratio = nominal(checkText(INCH), "film-ratio");
  const warned = (at: string): readonly string[] =>
    checkText(
      INCH.replace("units inch\n", `units inch\n  warn film-thin at ${at}\n`),
    ).findings.map((each) => each.code);
  expect(warned(`${(100 * ratio + 1).toFixed(1)} %`)).toContain("film-thin");
  expect(warned(`${(100 * ratio - 1).toFixed(1)} %`)).not.toContain(
    "film-thin",
  );
  expect(warned("0.0007 in")).toContain("film-thin");
  expect(warned("0.0001")).not.toContain("film-thin");
});

describe("against the bush's material", () => {
  const material = (facts: string): FileCheck =>
    checkText(
      INCH.replace(
        "part case\n",
        `part case\n  material soft\nmaterial soft\n${facts}`,
      ),
    );

  test("on the limit is in, a hair over is out", () => {
    const asked = nominal(checkText(INCH), "specific-load");
    expect(
      resultOf(
        material(`  specific-load ${asked + 1} psi\n`),
        FIT,
        "specific-load",
      )?.verdict,
    ).toBe("in");
    const out = material(
      "  specific-load 171 psi\n  speed 100 ft/min\n  pv 10000 psi-ft/min\n",
    );
    expect(out.findings.map((each) => each.code)).toEqual(
      expect.arrayContaining(["load-over", "speed-over", "pv-over"]),
    );
    // 150 / (0.874 · 1) = 171.6 psi; π · 0.874 / 12 · 600 = 137.3 ft/min
    expect(
      out.findings.find((each) => each.code === "load-over")?.message,
    ).toContain("172 psi");
    expect(
      out.findings.find((each) => each.code === "speed-over")?.message,
    ).toContain("137 ft/min");
  });

  test("what the result says of a limit is what the finding says, the job's own too", () => {
    const codes = {
      "specific-load": "load-over",
      "surface-speed": "speed-over",
      pv: "pv-over",
    } as const;
    // 171.6 psi, 137.3 ft/min and 23 560 psi-ft/min are asked
    for (const [load, speed, pv, verdict] of [
      [200, 150, 30000, "in"],
      [100, 100, 10000, "out"],
    ] as const) {
      const found = checkText(
        INCH.replace(
          "units inch\n",
          `units inch\n  warn load-over at ${load} psi\n  warn speed-over at ${speed} ft/min\n  warn pv-over at ${pv} psi-ft/min\n`,
        ).replace(
          "part case\n",
          "part case\n  material soft\nmaterial soft\n  specific-load 150 psi\n  speed 120 ft/min\n  pv 20000 psi-ft/min\n",
        ),
      );
      for (const [kind, code] of Object.entries(codes)) {
        expect(resultOf(found, FIT, kind)?.verdict, kind).toBe(verdict);
        expect(
          found.findings.some((each) => each.code === code),
          code,
        ).toBe(verdict === "out");
      }
    }
  });

  test("a job's own limit stands before the material's", () => {
    const own = checkText(
      INCH.replace(
        "units inch\n",
        "units inch\n  warn pv-over at 20000 psi-ft/min\n",
      ),
    );
    expect(own.findings.map((each) => each.code)).toContain("pv-over");
  });
});

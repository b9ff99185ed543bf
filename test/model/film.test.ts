// The oil film of a fit from text to results and findings: held against arithmetic written out here, and against a film found another way
// (trial of eccentricities in the solver's own equation, not its table), with inch and metric twins.
import { describe, expect, test } from "vitest";
import { solveReynolds } from "../../server/core/film/reynolds.ts";
import type { FileCheck } from "../../server/model/result.ts";
import { checkText, resultOf } from "./check-text.ts";
import { FIT, fitWith, INCH, LBF, METRIC, nominal } from "./film-job.ts";

/** The results that rest on the film. */
const OF_FILM = [
  "film",
  "film-ratio",
  "relative-eccentricity",
  "sommerfeld",
  "friction-power",
  "oil-rise",
] as const;

describe("a film whose heat the case gives off", () => {
  const cooled = (fact: string) =>
    checkText(INCH.replace("  feed splash\n", `  feed splash\n  ${fact}\n`));
  const area = 20 * 0.0254 ** 2;

  test("is as warm over the air as its power over area and transfer, 15 W/(m²·K)", () => {
    const found = cooled("cooled case 20 sq-in, air 68 F");
    expect(nominal(found, "oil-rise")).toBeCloseTo(
      nominal(found, "friction-power") / (15 * area),
      6,
    );
    // the viscosity that the Sommerfeld number was reckoned with is that of the oil at air and rise: Walther's line through the written pair
    const walther = (cSt: number) => Math.log10(Math.log10(cSt + 0.7));
    const kelvin = (celsius: number) => Math.log10(celsius + 273.15);
    const [at40, at100] = [walther(100), walther(11)];
    const slope = (at40 - at100) / (kelvin(100) - kelvin(40));
    const warm = 20 + nominal(found, "oil-rise");
    const cSt =
      10 ** (10 ** (at40 - slope * (kelvin(warm) - kelvin(40)))) - 0.7;
    const density = 880 * (1 - 0.00065 * (warm - 15));
    const d = 0.874 * 0.0254;
    const pressure = (150 * LBF) / (d * 0.0254);
    const s =
      ((cSt * 1e-6 * density * 10) / pressure) * (d / (0.0015 * 0.0254)) ** 2;
    expect(nominal(found, "sommerfeld") / s).toBeCloseTo(1, 2);
  });

  test("says so in its working, with the area that is taken where none is written", () => {
    const said = (found: FileCheck) =>
      resultOf(found, FIT, "film")
        ?.working.map((each) => `${each.formula} ${each.with}`)
        .join("\n") ?? "";
    const written = said(cooled("cooled case 20 sq-in, air 68 F"));
    expect(written).toContain("given off by the case to the air");
    expect(written).toContain("20.0 sq-in");
    expect(written).not.toContain("assumed");
    expect(said(cooled("cooled case, air 68 F"))).toContain(
      "assumed: 15 · d · length",
    );
  });

  test("more case, cooler oil; a damaged line leaves the film unsaid", () => {
    const rise = (size: number) =>
      nominal(
        cooled(`cooled case ${String(size)} sq-in, air 68 F`),
        "oil-rise",
      );
    expect(rise(40)).toBeLessThan(rise(20));
    expect(
      resultOf(cooled("cooled case 20 lbf, air 68 F"), FIT, "film")?.status,
    ).toBe("unknown");
  });
});

describe("the film", () => {
  const found = checkText(INCH);

  test("hangs together: eccentricity, Sommerfeld number, film, power and rise", () => {
    const e = nominal(found, "relative-eccentricity");
    const c = 0.0015 * 0.0254;
    expect(nominal(found, "film")).toBeCloseTo((c / 2) * (1 - e), 12);
    // Rq = 1.25 Ra of 8 and 16 µin
    const roughness = 1.25 * Math.hypot(8e-6, 16e-6) * 0.0254;
    expect(nominal(found, "film-ratio")).toBeCloseTo(
      nominal(found, "film") / roughness,
      8,
    );
  });

  test("its eccentricity is the one that the solver gives for its Sommerfeld number", () => {
    const e = nominal(found, "relative-eccentricity");
    const solved = solveReynolds(1 / 0.874, e);
    expect(solved.valid).toBe(true);
    if (!solved.valid) return;
    expect(
      Math.abs(solved.value.sommerfeld / nominal(found, "sommerfeld") - 1),
    ).toBeLessThan(0.01);
  });

  test("the viscosity behind its Sommerfeld number is the oil's at the mean of inlet and outlet", () => {
    const S = nominal(found, "sommerfeld");
    const P = nominal(found, "specific-load");
    const mean = 40 + nominal(found, "oil-rise") / 2;
    // Walther's line through 100 cSt at 40 °C and 11 cSt at 100 °C, by hand
    const w = (cSt: number): number => Math.log10(Math.log10(cSt + 0.7));
    const k = (celsius: number): number => Math.log10(celsius + 273.15);
    const slope = (w(11) - w(100)) / (k(100) - k(40));
    const cSt = 10 ** (10 ** (w(100) + slope * (k(mean) - k(40)))) - 0.7;
    // oil loses some 0.065 % of its density a kelvin
    const viscosity = cSt * 1e-6 * 880 * (1 - 0.00065 * (mean - 15));
    expect(S / (((viscosity * 10) / P) * (0.874 / 0.0015) ** 2)).toBeCloseTo(
      1,
      2,
    );
  });

  test("friction is near Petroff's, which takes the journal as centred, and over it", () => {
    const S = nominal(found, "sommerfeld");
    // f·R/c = 2π²S for a centred journal: power = f·W·U
    const petroff =
      2 *
      Math.PI ** 2 *
      S *
      (0.0015 / 0.874) *
      150 *
      LBF *
      nominal(found, "surface-speed");
    const ratio = nominal(found, "friction-power") / petroff;
    expect(ratio).toBeGreaterThan(1);
    expect(ratio).toBeLessThan(2);
  });

  test("says what it rests on", () => {
    const working = resultOf(found, FIT, "film")?.working ?? [];
    const all = working
      .map((each) => `${each.formula} ${each.with} ${each.source}`)
      .join("\n");
    expect(all).toMatch(/ISO 7902-1, side flow/);
    expect(all).toMatch(/104 °F/);
    expect(all).toMatch(/viscosities written for oil own/);
    expect(all).toMatch(/US form/);
    expect(all).toMatch(/DIN and ISO form/);
  });

  test("inch and metric twins are one", () => {
    const twin = checkText(METRIC);
    for (const kind of ["surface-speed", "specific-load", "pv", ...OF_FILM])
      expect(nominal(found, kind) / nominal(twin, kind), kind).toBeCloseTo(
        1,
        7,
      );
  });

  test("over a range of clearance and the band of a grade the mean lies between the ends", () => {
    const wide = checkText(
      INCH.replace(
        "limits 0.8755 to 0.8755",
        "limits 0.8752 to 0.8758",
      ).replace("oil own at", "oil iso-vg-100 at"),
    );
    for (const kind of [
      "film",
      "sommerfeld",
      "relative-eccentricity",
      "friction-power",
      "oil-rise",
    ]) {
      const { low, nominal: middle, high } = resultOf(wide, FIT, kind) ?? {};
      expect(Number(low)).toBeLessThan(Number(middle));
      expect(Number(middle)).toBeLessThan(Number(high));
    }
    expect(resultOf(wide, FIT, "film")?.status).toBe("predicted");
  });

  test("what is measured out of round comes off it, by half", () => {
    const at = (readings: string): FileCheck =>
      checkText(
        INCH.replace("limits 0.8740 to 0.8740", `read ${readings} at 20 C`),
      );
    const oval = at("0.8740 0.8738");
    const e = Number(resultOf(oval, FIT, "relative-eccentricity")?.nominal);
    // the mean clearance is 0.8755 − 0.8739
    expect(nominal(oval, "film") / 0.0254).toBeCloseTo(
      0.0008 * (1 - e) - 0.0001,
      9,
    );
  });

  test("a groove round makes two short bearings", () => {
    const bush = INCH.replace(
      "bore front in case",
      "hole front in case\n  limits 1 to 1\nbush front in hole front\n  groove round\nbore front in bush front",
    );
    const two = checkText(bush);
    const solved = solveReynolds(
      0.5 / 0.874,
      nominal(two, "relative-eccentricity"),
    );
    expect(solved.valid).toBe(true);
    if (solved.valid)
      expect(
        Math.abs(solved.value.sommerfeld / nominal(two, "sommerfeld") - 1),
      ).toBeLessThan(0.01);
    expect(nominal(two, "film")).toBeLessThan(nominal(found, "film"));
  });
});

describe("where no full film may be claimed", () => {
  test.each([
    [
      "oscillates 30 deg, 20 per min",
      "load 150 lbf steady",
      "feed splash",
      "oscillating",
    ],
    ["runs 600 rpm", "load 150 lbf reversing", "feed splash", "reversing"],
    ["runs 600 rpm", "load 150 lbf shock", "feed splash", "shock"],
    ["runs 600 rpm", "load 150 lbf steady", "feed drip", "drip"],
    ["runs 600 rpm", "load 150 lbf steady", "feed grease", "grease"],
  ])("%s, %s, %s", (motion, load, feed, why) => {
    const found = checkText(fitWith(INCH, motion, load, feed));
    for (const kind of OF_FILM) {
      const result = resultOf(found, FIT, kind);
      expect(result?.status).toBe("unknown");
      expect(result?.text).toMatch(/^not valid here, because /);
      expect(result?.text).toContain(why);
      expect(result?.text).toContain("PV decides");
    }
    expect(resultOf(found, FIT, "pv")?.status).toBe("predicted");
    expect(found.findings.map((each) => each.code)).not.toContain(
      "not-valid-here",
    );
    expect(found.findings.map((each) => each.code)).not.toContain("film-thin");
  });

  test.each(["construction porous", "groove lengthwise"])(
    "a bush with %s",
    (fact) => {
      const found = checkText(
        INCH.replace(
          "bore front in case",
          `hole front in case\n  limits 1 to 1\nbush front in hole front\n  ${fact}\nbore front in bush front`,
        ),
      );
      expect(resultOf(found, FIT, "film")?.text).toContain(
        "no full film is claimed, PV decides",
      );
    },
  );

  test("a bush whose oil hole lies within 45 degrees of the load, to either side, and no other", () => {
    const film = (degrees: number): string | undefined =>
      resultOf(
        checkText(
          INCH.replace(
            "bore front in case",
            `hole front in case\n  limits 1 to 1\nbush front in hole front\n  oil-hole at ${degrees} deg\nbore front in bush front`,
          ),
        ),
        FIT,
        "film",
      )?.text;
    for (const degrees of [0, 44, 316, 360])
      expect(film(degrees)).toContain(
        "the oil hole lies where the load presses",
      );
    for (const degrees of [45, 90, 180, 315])
      expect(film(degrees)).toMatch(/^0\.\d+ to 0\.\d+ in$|^0\.\d+ in$/);
  });
});

test("dynamic viscosities give the same oil as the kinematic ones that they are", () => {
  // density at 40 and 100 °C from 880 kg/m³ at 15 °C, some 0.065 % a kelvin less
  const dynamic = INCH.replace(
    "100 cSt at 40 C, 11 cSt at 100 C",
    "86.57 cP at 40 C, 9.13 cP at 100 C",
  );
  expect(
    nominal(checkText(dynamic), "film") / nominal(checkText(INCH), "film"),
  ).toBeCloseTo(1, 2);
});

test("that none is claimed, as of grease, is not that none carries", () => {
  const found = checkText(INCH.replace("feed splash", "feed grease"));
  expect(resultOf(found, "fit front", "film")?.text).toContain(
    "no full film is claimed",
  );
  expect(found.findings.map(({ code }) => code)).not.toContain("film-thin");
});

test("too heavy a load leaves no film, and that is a finding", () => {
  const found = checkText(INCH.replace("150 lbf", "15000 lbf"));
  expect(
    found.findings.find((each) => each.code === "film-thin")?.message,
  ).toMatch(/^No oil film carries/);
});

describe("a film thick enough is held against Trumpler's other limits", () => {
  const fast = (load: number, oil: string, warn = ""): FileCheck =>
    checkText(
      INCH.replace("units inch\n", `units inch\n${warn}`)
        .replace("runs 600 rpm", "runs 1800 rpm")
        .replace("load 150 lbf", `load ${load} lbf`)
        .replace("oil own at 104 F", oil),
    );
  const said = (found: FileCheck): readonly string[] =>
    found.findings
      .filter((each) => each.code === "film-thin")
      .map((each) => each.message);

  test("a start on more than 300 psi of 0.874 in by 1 in, which is 262.2 lbf", () => {
    expect(said(fast(262, "oil own at 104 F"))).toEqual([]);
    expect(said(fast(263, "oil own at 104 F"))).toEqual([
      expect.stringContaining("each start is on 301 psi"),
    ]);
    expect(
      said(fast(263, "oil own at 104 F", "  warn film-thin at 0.0001\n")),
    ).toEqual([]);
  });

  test("an outlet over 250 °F", () => {
    const found = fast(20, "oil own at 245 F");
    const rise = resultOf(found, FIT, "oil-rise")?.high ?? 0;
    expect(rise).toBeGreaterThan((250 - 245) / 1.8);
    expect(said(found)).toEqual([
      expect.stringMatching(/^The oil leaves the film at up to 2\d\d °F/),
    ]);
  });
});

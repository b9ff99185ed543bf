// The winch's presses from text to results and findings, against arithmetic written out here: Lamé's constants of each ring, not the closed
// formula of the core.
import { describe, expect, test } from "vitest";
import { readLines } from "../../grammar/lines.ts";
import type { FileCheck, Result } from "../../server/model/result.ts";
import { createProject } from "../../server/rules/check.ts";
import { soundSamples } from "../samples.ts";
import { checkText, resultOf } from "./check-text.ts";

const IN = 0.0254;

/** Radial movement at r of a ring from a to b under a pressure inside and one outside: plane stress, from Lamé's two constants. */
function movement(
  { a, b, E, nu }: Ring,
  inside: number,
  outside: number,
  r: number,
): number {
  const A = (inside * a * a - outside * b * b) / (b * b - a * a);
  const B = ((inside - outside) * a * a * b * b) / (b * b - a * a);
  return (r / E) * ((1 - nu) * A + ((1 + nu) * B) / (r * r));
}

interface Ring {
  readonly a: number;
  readonly b: number;
  readonly E: number;
  readonly nu: number;
}

/** Per Pa of contact pressure: diametral interference, closure of the bore; and von Mises over pressure. */
function perPascal(bush: Ring, boss: Ring | undefined) {
  const gives =
    -movement(bush, 0, 1, bush.b) +
    (boss === undefined ? 0 : movement(boss, 1, 0, boss.a));
  return {
    interference: 2 * gives,
    closure: -2 * movement(bush, 0, 1, bush.a),
  };
}

function vonMises(hoop: number, radial: number): number {
  return Math.sqrt(hoop ** 2 - hoop * radial + radial ** 2);
}

function close(found: Result | undefined, want: Band, within: number): void {
  expect(found?.status).not.toBe("unknown");
  for (const end of ["low", "nominal", "high"] as const)
    expect(
      Math.abs(Number(found?.[end]) - want[end]),
      `${String(found?.kind)} ${end}: ${String(found?.[end])} for ${String(want[end])}`,
    ).toBeLessThan(within);
}

interface Band {
  readonly low: number;
  readonly nominal: number;
  readonly high: number;
}

function band(low: number, nominal: number, high: number): Band {
  return { low, nominal, high };
}

function scaled({ low, nominal, high }: Band, by: number): Band {
  return band(low * by, nominal * by, high * by);
}

function winch(edit: (text: string) => string = (text) => text): FileCheck {
  const project = createProject({ root: "/" });
  for (const { path: file, text } of soundSamples)
    project.setFile(
      `/${file}`,
      readLines(file === "shop/winch.thou" ? edit(text) : text),
    );
  return project.check("/shop/winch.thou");
}

describe("the winch's presses by hand", () => {
  const check = winch();
  // rear hole 1.00015 to 1.00018, mean of 16 18 17 15; both bushes 1.0010 to 1.0011, bored 0.8715 to 0.8720
  const hole = { low: 1.00015 * IN, mean: 1.000165 * IN, high: 1.00018 * IN };
  const interference = band(
    (1.001 - 1.00018) * IN,
    (1.00105 - 1.000165) * IN,
    (1.0011 - 1.00015) * IN,
  );
  // shipped: bronze C932 100 GPa, 0.35; aluminium 356-T6 72.4 GPa, 0.33
  const bush = { a: (0.87175 * IN) / 2, b: hole.mean / 2, E: 100e9, nu: 0.35 };
  const boss = { a: hole.mean / 2, b: (1.75 * IN) / 2, E: 72.4e9, nu: 0.33 };
  const unit = perPascal(bush, boss);
  const pressure = scaled(interference, 1 / unit.interference);
  const of = (kind: string): Result | undefined =>
    resultOf(check, "press rear", kind);

  test("interference, pressure and stresses of the through hole", () => {
    close(of("interference"), interference, 1e-12);
    close(of("contact-pressure"), pressure, 1);
    const ratio = (bush.a / bush.b) ** 2;
    close(of("bush-stress"), scaled(pressure, 2 / (1 - ratio)), 10);
    const open = (boss.a / boss.b) ** 2;
    close(
      of("hole-stress"),
      scaled(pressure, vonMises((1 + open) / (1 - open), -1)),
      10,
    );
  });

  test("closure and the bore that it leaves", () => {
    const closed = scaled(pressure, unit.closure);
    close(of("bore-closure"), closed, 1e-11);
    close(
      of("bore-after-press"),
      band(
        0.8715 * IN - closed.high,
        0.87175 * IN - closed.nominal,
        0.872 * IN - closed.low,
      ),
      1e-11,
    );
    const C = unit.closure / unit.interference;
    const spread = Math.sqrt(
      (0.00025 * IN) ** 2 + (C * 0.00005 * IN) ** 2 + (C * 0.000015 * IN) ** 2,
    );
    const middle = 0.87175 * IN - closed.nominal;
    const inches = (metres: number): string => (metres / IN).toFixed(5);
    expect(of("bore-after-press")?.text).toContain(
      `root-sum-square ${inches(middle - spread)} to ${inches(middle + spread)} in`,
    );
  });

  test("force, with the friction that is assumed where none is written", () => {
    const area = Math.PI * hole.mean * 1.25 * IN;
    close(
      of("press-force"),
      band(
        0.05 * pressure.low * area,
        0.1 * pressure.nominal * area,
        0.15 * pressure.high * area,
      ),
      1e-3,
    );
    expect(JSON.stringify(of("press-force")?.working)).toContain(
      "0.05 to 0.15, assumed",
    );
  });

  test("temperatures and the bush to make", () => {
    // shipped: 21.5e-6 and 18e-6 per K
    const heat = (od: number, wide: number): number =>
      20 + (od / wide - 1) / 21.5e-6;
    const freeze = (od: number, wide: number): number =>
      20 + (wide / od - 1) / 18e-6;
    close(
      of("heat-to"),
      band(
        heat(1.001, 1.00018),
        heat(1.00105, 1.000165),
        heat(1.0011, 1.00015),
      ),
      1e-6,
    );
    close(
      of("freeze-to"),
      band(
        freeze(1.0011, 1.00015),
        freeze(1.00105, 1.000165),
        freeze(1.001, 1.00018),
      ),
      1e-6,
    );
    close(
      of("release-temperature"),
      band(
        20 + interference.low / (hole.mean * 3.5e-6),
        20 + interference.nominal / (hole.mean * 3.5e-6),
        20 + interference.high / (hole.mean * 3.5e-6),
      ),
      1e-6,
    );
    close(
      of("bush-od-to-make"),
      band(1.00078 * IN, 1.001065 * IN, 1.00135 * IN),
      1e-12,
    );
  });

  test("the bush to make where no interference is wanted: as a bush of bronze is held to", () => {
    const text = (material: string, warn = ""): FileCheck =>
      checkText(`
job winch-9
  units mm
${warn}
part case
  material steel-4140
hole front in case
  boss 60
  read 40.000 40.004 at 20 C
bush front in hole front
  material ${material}
press front of bush front in hole front
`);
    const made = (found: FileCheck): Result | undefined =>
      resultOf(found, "press front", "bush-od-to-make");
    const usual = made(text("bronze-c932"));
    // over the largest hole by 0.5 ‰ of itself: 40.004/0.9995 = 40.024012; over the smallest by 1.5 ‰: 40.000/0.9985 = 40.060090
    expect(Number(usual?.low) * 1000).toBeCloseTo(40.024012, 6);
    expect(Number(usual?.high) * 1000).toBeCloseTo(40.06009, 6);
    expect(JSON.stringify(usual?.working)).toContain(
      "no `want` is written: 0.5 ‰ of the od (usual for bronze) to 1.5 ‰ of the od (usual for bronze)",
    );
    expect(usual?.needs).toEqual([]);
    const own = made(
      text(
        "bronze-c932",
        "  warn press-light at 0.030\n  warn press-heavy at 0.1 %",
      ),
    );
    // 40.004 + 0.030, and 40.000/0.999 = 40.040040
    expect(Number(own?.low) * 1000).toBeCloseTo(40.034, 9);
    expect(Number(own?.high) * 1000).toBeCloseTo(40.04004, 6);
    // of plastic nothing is usual
    expect(made(text("acetal"))?.needs.map((need) => need.text)).toEqual([
      "the wanted interference of press front",
    ]);
    // a hole that no usual bush fits needs a want, and is no fault of the record
    const wide = checkText(`
job winch-9
  units mm
part case
hole front in case
  limits 40.000 to 40.100
bush front in hole front
  material bronze-c932
press front of bush front in hole front
`);
    expect(made(wide)?.needs.map((need) => need.fact)).toEqual(["want"]);
    expect(wide.findings.map((each) => each.code)).not.toContain(
      "not-valid-here",
    );
  });

  test("the blind hole lies between the plain ring and a rigid boss", () => {
    // front hole: 1.00021 1.00018 1.00020 1.00019
    const wide = 1.000195 * IN;
    const front = { ...bush, b: wide / 2 };
    const plain = perPascal(front, { ...boss, a: wide / 2 });
    const rigid = perPascal(front, undefined);
    const least = (1.001 - 1.00021) * IN;
    const most = (1.0011 - 1.00018) * IN;
    const found = resultOf(check, "press front", "bore-closure");
    expect(found?.low).toBeCloseTo(
      (least * plain.closure) / plain.interference,
      11,
    );
    expect(found?.high).toBeCloseTo(
      (most * rigid.closure) / rigid.interference,
      11,
    );
    expect(JSON.stringify(found?.working)).toContain("is blind");
    // each pressure with the stress that goes with it: the hole opens by what is left of the interference, swept from bare to rigid
    const stresses = (interference: number): readonly number[] => {
      const from = interference / plain.interference;
      const to = interference / rigid.interference;
      return Array.from({ length: 20001 }, (_, k) => {
        const p = from + ((to - from) * k) / 20000;
        const opens = interference / 2 + movement(front, 0, p, front.b);
        return vonMises((boss.E * opens) / front.b - boss.nu * p, -p);
      });
    };
    const stress = resultOf(check, "press front", "hole-stress");
    expect(Number(stress?.low) / Math.min(...stresses(least))).toBeCloseTo(
      1,
      6,
    );
    expect(Number(stress?.high) / Math.max(...stresses(most))).toBeCloseTo(
      1,
      6,
    );
  });

  test("the clearance when hot: bush and case grow apart, the shaft grows too", () => {
    const shaft = 60 - 20;
    const [bushRise, caseRise] = [
      ((135 - 32) * 5) / 9 - 20,
      ((130 - 32) * 5) / 9 - 20,
    ];
    const bore = resultOf(check, "bore rear", "size");
    if (bore?.nominal == null || bore.low == null || bore.high == null)
      throw new Error("no bore");
    // the bush as it will be reamed closes by more than the one as bought
    const reamed = perPascal({ ...bush, a: bore.nominal / 2 }, boss);
    const C = reamed.closure / reamed.interference;
    const let_ = -hole.mean * (18e-6 * bushRise - 21.5e-6 * caseRise);
    const warm = (size: number): number =>
      size * (1 + 18e-6 * bushRise) + C * let_;
    // shipped: steel 4140 12.3e-6 per K; journal rear by its limits
    const journal = (size: number): number => size * (1 + 12.3e-6 * shaft);
    close(
      resultOf(check, "fit rear", "hot-clearance", { case: 1 }),
      band(
        warm(bore.low) - journal(0.8745 * IN),
        warm(bore.nominal) - journal(0.87425 * IN),
        warm(bore.high) - journal(0.874 * IN),
      ),
      1e-11,
    );
  });

  test("it raises nothing but what is still to measure", () => {
    const codes = new Set(
      check.findings
        .filter(({ level }) => level === "error" || level === "warning")
        .map(({ code }) => code),
    );
    for (const code of codes)
      expect(code).not.toMatch(/^(?:press|closure|bush|heat|hot|cold)/);
  });
});

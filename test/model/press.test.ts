// Presses from text to results and findings: the winch against arithmetic written out here (Lamé's constants of each ring, not the closed
// formula of the core), inch and metric twins, what is missing, what is damaged, and a bore that only its press foretells.
import { readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, test } from "vitest";
import { readLines } from "../../grammar/lines.ts";
import { boreBeforeCut } from "../../server/model/evaluate/before-cut.ts";
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

const INCH = `
job winch-9
  units inch
part layshaft
  material steel-4140
part case
  material aluminium-356-t6
journal front on layshaft
  read 0.8699 0.8700 at 68 F
hole front in case
  boss 1.750
  finish 63 uin Rz
  read 1.0002 1.0003 at 68 F
bush front in hole front
  material bronze-c932
  read od 1.0011 1.0012 at 68 F
  read id 0.8720 0.8721 at 68 F
  finish 32 uin Rz
  length 1.250
bore front in bush front
press front of bush front in hole front
  want 0.6 to 1.2 thou
  friction 0.08 to 0.12
fit front of journal front in bore front
  load 180 lbf
  hot shaft 140 F, bush 131 F, case 122 F
  hot shaft 212 F, case 176 F
  cold shaft -4 F, case -4 F
`;

const METRIC = `
job winch-9
  units mm
part layshaft
  material steel-4140
part case
  material aluminium-356-t6
journal front on layshaft
  read 22.09546 22.098 at 20 C
hole front in case
  boss 44.45
  finish 1.6002 um Rz
  read 25.40508 25.40762 at 20 C
bush front in hole front
  material bronze-c932
  read od 25.42794 25.43048 at 20 C
  read id 22.1488 22.15134 at 20 C
  finish 0.8128 um Rz
  length 31.75
bore front in bush front
press front of bush front in hole front
  want 0.01524 to 0.03048
  friction 0.08 to 0.12
fit front of journal front in bore front
  load 800.679890722449 N
  hot shaft 60 C, bush 55 C, case 50 C
  hot shaft 100 C, case 80 C
  cold shaft -20 C, case -20 C
`;

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

describe("the bore that no line cuts", () => {
  test("is foretold from its press, and its limits stand back", () => {
    for (const text of [
      INCH,
      INCH.replace(
        "bore front in bush front\n",
        "bore front in bush front\n  limits 0.8750 to 0.8760\n",
      ),
    ]) {
      const check = checkText(text);
      const bore = resultOf(check, "bore front", "size");
      const pressed = resultOf(check, "press front", "bore-after-press");
      expect([bore?.low, bore?.nominal, bore?.high]).toEqual([
        pressed?.low,
        pressed?.nominal,
        pressed?.high,
      ]);
    }
  });

  test("counts as read once it is read as pressed", () => {
    const check = checkText(
      INCH.replace(
        "bore front in bush front\n",
        "bore front in bush front\n  read 0.8712 0.8713 as pressed\n",
      ),
    );
    const bore = resultOf(check, "bore front", "size");
    expect(bore?.status).toBe("measured");
    expect(bore?.low).toBeCloseTo(0.8712 * IN, 12);
  });

  test("before a cut: roughed, else pressed, else foretold; a bore in a part by its hole", () => {
    const of = (text: string, bore: string): unknown => {
      const project = createProject({ root: "" });
      project.setFile("job.thou", readLines(text));
      project.check("job.thou");
      const open = project.open("job.thou");
      if (open === undefined) throw new Error("no job");
      const found = boreBeforeCut(open.shop, bore);
      return found.known
        ? [found.value.from, Math.round((found.value.nominal / IN) * 1e6)]
        : found.needs.map((need) => need.text);
    };
    const reads = (...lines: readonly string[]): string =>
      INCH.replace(
        "bore front in bush front\n",
        `bore front in bush front\n${lines.map((line) => `  read ${line}\n`).join("")}`,
      );
    expect(
      of(reads("0.8710 as pressed", "0.8740 as roughed"), "bore front"),
    ).toEqual(["readings", 874000]);
    expect(of(reads("0.8710 as pressed"), "bore front")).toEqual([
      "readings",
      871000,
    ]);
    expect(of(INCH, "bore front")).toEqual(["press", expect.any(Number)]);
    const plain =
      "job winch-9\n  units inch\npart case\nhole rear in case\n  read 0.8600\nbore rear in case\n";
    expect(of(plain, "bore rear")).toEqual(["readings", 860000]);
    expect(of(plain.replace("  read 0.8600\n", ""), "bore rear")).toEqual([
      "a reading of bore rear as roughed",
    ]);
  });
});

describe("what is missing is named", () => {
  const without = (line: string): FileCheck => {
    expect(INCH).toContain(line);
    return checkText(INCH.replace(line, ""));
  };
  test.each([
    ["  boss 1.750\n", "contact-pressure", "the boss of hole front"],
    [
      "  material bronze-c932\n",
      "contact-pressure",
      "the material of bush front",
    ],
    [
      "  material aluminium-356-t6\n",
      "bore-closure",
      "the material of part case",
    ],
    [
      "  read od 1.0011 1.0012 at 68 F\n",
      "interference",
      "the od of bush front",
    ],
    [
      "  read id 0.8720 0.8721 at 68 F\n",
      "bore-after-press",
      "the id of bush front",
    ],
    ["  length 1.250\n", "press-force", "the length of bush front"],
    [
      "  read 1.0002 1.0003 at 68 F\n",
      "interference",
      "a reading of hole front",
    ],
  ])("%s", (line, kind, text) => {
    const found = resultOf(without(line), "press front", kind);
    expect(found?.status).toBe("unknown");
    expect(found?.needs.map((need) => need.text).join()).toContain(text);
  });

  test("a temperature that a hot line leaves out", () => {
    const check = checkText(
      INCH.replace("hot shaft 212 F, case 176 F", "hot case 176 F"),
    );
    const found = resultOf(check, "fit front", "hot-clearance", { case: 2 });
    expect(found?.needs.map((need) => need.text).join()).toContain(
      "the temperature of the shaft",
    );
    expect(
      resultOf(check, "fit front", "hot-clearance", { case: 1 })?.status,
    ).not.toBe("unknown");
  });

  test("a finish on one side only gives no smoothing, and says so", () => {
    const found = resultOf(
      without("  finish 32 uin Rz\n"),
      "press front",
      "interference",
    );
    expect(found?.low).toBeCloseTo((1.0011 - 1.0003) * IN, 12);
    expect(JSON.stringify(found?.working)).toContain("are not both written");
  });
});

describe("a damaged line is not spoken of twice", () => {
  test.each([
    ["  boss 1.750", "  boss 1.7.50"],
    ["  read od 1.0011 1.0012", "  read od 1.0011 1.00.12"],
    ["  length 1.250", "  length 1.2.50"],
    ["  friction 0.08 to 0.12", "  friction 0.08 to"],
    ["  want 0.6 to 1.2 thou", "  want 0.6 to thou"],
    ["  hot shaft 212 F, case 176 F", "  hot shaft 212 F, case"],
  ])("%s", (sound, damaged) => {
    expect(INCH).toContain(sound);
    const check = checkText(INCH.replace(sound, damaged));
    const found = check.findings.filter(
      ({ level }) => level === "error" || level === "warning",
    );
    expect(found).toHaveLength(1);
    // what rests on it is unknown, and asks for nothing that is there already
    const waits = check.results.filter(
      ({ status, entry }) =>
        status === "unknown" && /^(?:press|fit)/.test(entry),
    );
    for (const { kind, text } of waits)
      if (!/^(?:film|relative|somm|fric|oil|speci|surf|pv)/.test(kind))
        expect(text, kind).toMatch(/^(?:waits|none)/);
  });
});

describe("where the rings do not hold", () => {
  test("a boss split along its axis is refused by name, one split across is not", () => {
    const split = (how: string): FileCheck =>
      checkText(INCH.replace("part case\n", `part case\n  split ${how}\n`));
    const along = split("along");
    for (const kind of ["contact-pressure", "bore-closure", "press-force"])
      expect(resultOf(along, "press front", kind)?.text).toBe(
        "not valid here, because the boss is split along its axis and is no closed ring",
      );
    expect(resultOf(along, "press front", "interference")?.status).toBe(
      "measured",
    );
    expect(
      along.findings.filter(({ code }) => code === "not-valid-here"),
    ).toHaveLength(1);
    expect(resultOf(along, "bore front", "size")?.text).toContain(
      "a reading of bore front as pressed",
    );
    const [across, whole] = [split("across"), checkText(INCH)];
    expect(resultOf(across, "press front", "contact-pressure")).toEqual(
      resultOf(whole, "press front", "contact-pressure"),
    );
  });

  test("a bush that stands out of its hole: from no closure on", () => {
    const check = checkText(
      INCH.replace("  boss 1.750\n", "  boss 1.750\n  depth 1.000 through\n"),
    );
    expect(resultOf(check, "press front", "bore-closure")?.low).toBe(0);
    const [whole, short] = [checkText(INCH), check].map((each) =>
      Number(resultOf(each, "press front", "press-force")?.low),
    );
    expect(Number(short) / Number(whole)).toBeCloseTo(1 / 1.25, 12);
  });

  test("past yield the bore waits for a reading", () => {
    const check = checkText(INCH.replace("1.0011 1.0012", "1.0025 1.0026"));
    expect(resultOf(check, "press front", "bore-after-press")?.text).toBe(
      "needs a reading of bore front as pressed",
    );
    expect(check.findings.map(({ code }) => code)).toContain(
      "closure-not-valid",
    );
  });
});

test("the case that runs hot raises its one finding, where its file says so", () => {
  const text = readFileSync(
    path.join(import.meta.dirname, "../../samples/shop/hot-case.thou"),
    "utf8",
  );
  const project = createProject({ root: "/" });
  for (const sample of soundSamples)
    project.setFile(`/${sample.path}`, readLines(sample.text));
  const check = project.check("/shop/hot-case.thou");
  const found = check.findings.filter(
    ({ level }) => level === "error" || level === "warning",
  );
  expect(found.map(({ code }) => code)).toEqual(["hot-tight"]);
  expect(text.split("\n")[found[0]?.place.line ?? 0]).toContain("shaft 70 C");
  // by hand: bore 19.996 at 25 °C in aluminium 21.5e-6, journal 19.978 at 70 °C in steel 1045, 11.3e-6
  expect(found[0]?.message).toContain("0.009");
  const hot = resultOf(check, "fit idler", "hot-clearance", { case: 2 });
  expect(hot?.low).toBeCloseTo(
    19.996e-3 * (1 + 5 * 21.5e-6) - 19.978e-3 * (1 + 50 * 11.3e-6),
    11,
  );
});

test("no case is heated for a bush of plastic or with a lining; a bronze one of the same size has its temperature", () => {
  const heat = (material: string): Result | undefined =>
    resultOf(
      checkText(`
job winch-9
  units mm
part case
  material aluminium-356-t6
hole front in case
  boss 45
  read 26.000 at 20 C
bush front in hole front
  material ${material}
  read od 26.100 at 20 C
  read id 20.02 at 20 C
  length 25
press front of bush front in hole front
`),
      "press front",
      "heat-to",
    );
  for (const material of ["acetal", "ptfe-lined"]) {
    expect(heat(material)).toMatchObject({ status: "unknown", nominal: null });
    expect(heat(material)?.text).toContain("press it in cold");
  }
  // 20 + (26.1/26 − 1)/21.5e-6
  expect(heat("bronze-c932")?.nominal).toBeCloseTo(198.89, 2);
});

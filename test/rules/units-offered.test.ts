// Which units are offered, in which order, and which of them is sure.
import { describe, expect, test } from "vitest";
import { UNITS, unitOf } from "../../server/core/quantity/units.ts";
import { unitMeant, usualUnits } from "../../server/rules/text/unit-names.ts";
import { check, codes, FIT, withFix } from "./check-job.ts";

describe("units", () => {
  test("every unit in other capitals is told from the rest, or asked about", () => {
    for (const { symbol, dimension } of UNITS) {
      const { words } = unitMeant(symbol.toUpperCase(), [dimension]);
      if (unitOf(symbol.toUpperCase())?.dimension !== dimension)
        expect(words, symbol).toContain(symbol);
    }
  });

  test("units that are offered can be written", () => {
    for (const { dimension } of UNITS) {
      for (const system of ["inch", "mm"]) {
        const units = usualUnits([dimension], system);
        expect(units.length).toBeGreaterThan(0);
        for (const unit of units)
          expect(unitOf(unit)?.dimension).toBe(dimension);
      }
    }
  });

  test.each([
    ["mils", "length", ["thou", "mm"], false],
    ["inches", "length", ["in"], true],
    ["microns", "length", ["um"], true],
    ["ft-lb", "torque", ["lbf-ft"], true],
    ["Nm", "torque", ["N-m"], true],
    ["RPM", "rotation", ["rpm"], true],
    ["rev/min", "rotation", ["rpm"], true],
    ["degF", "temperature", ["F"], true],
    ["sfm", "speed", ["ft/min"], true],
    ["mpa", "pressure", ["MPa"], true],
    ["kg", "force", [], false],
  ] as const)("%s as %s", (word, dimension, words, same) => {
    const meant = unitMeant(word, [dimension]);
    expect(meant.words).toEqual(words);
    expect(meant.same).toBe(same);
  });

  test("the job's own unit comes first, and one unit alone is sure", () => {
    const fixes = (units: string, fact: string): readonly string[] =>
      check(`job j\n  units ${units}\n  ${fact}\n`).flatMap((finding) =>
        finding.fixes.map((fix) => `${fix.title}${fix.safe ? "!" : ""}`),
      );
    expect(fixes("inch", "temperature 68")[0]).toBe("Write `68 F`");
    expect(fixes("mm", "temperature 20")[0]).toBe("Write `20 C`");
    const [runs] = check(`job j\n  units inch\n${FIT}  runs 240\n`).filter(
      (finding) => finding.code === "unit-missing",
    );
    expect(runs?.fixes.map((fix) => [fix.edits[0]?.text, fix.safe])).toEqual([
      [" rpm", true],
    ]);
  });

  test("the deviation that has no unit is named, not the one that has", () => {
    const [finding] = check(
      "job j\n  units inch\npart a\njournal a on a\n  limits 25 mm +0.021 mm -0.007\n",
    );
    expect(finding?.code).toBe("unit-missing");
    expect(finding?.message).toContain("-0.007");
    expect(finding?.message).not.toContain("+0.021");
  });

  test("a record that says no unit of its own is offered none but the one that is written", () => {
    const [finding] = check(
      "job j\nstack e\n  plus a 1 mm\n  shims 0.1 mm, 0.2\n",
    );
    expect(finding?.fixes.map(({ title }) => title)).toEqual([
      "Write `0.2 mm`",
    ]);
  });

  test("each bare number of a list gets its unit", () => {
    const text =
      "job j\n  units inch\nstack e\n  plus a 1\n  shims 0.1 mm, 0.2, 0.5\n";
    const [finding] = check(text);
    expect(finding?.code).toBe("unit-missing");
    const whole = withFix(text, finding?.fixes[0]);
    expect(whole).toContain("shims 0.1 mm, 0.2 mm, 0.5 mm");
    expect(codes(check(whole))).toEqual([]);
  });
});

// What a press is in want of is named, a damaged line is spoken of once, and where the rings do not hold it says so.
import { describe, expect, test } from "vitest";
import type { FileCheck } from "../../server/model/result.ts";
import { checkText, resultOf } from "./check-text.ts";
import { INCH } from "./press-job.ts";

const IN = 0.0254;

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

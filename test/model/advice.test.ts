// What clearance to want: against class tables as published, the rules worked out here, and the film of the fit itself.
import { describe, expect, test } from "vitest";
import { readLines } from "../../grammar/lines.ts";
import {
  adviceFor,
  type AdviceRow,
} from "../../server/model/evaluate/advice.ts";
import { createProject } from "../../server/rules/check.ts";
import { checkText, resultOf } from "./check-text.ts";

const JOB = (want: string, running = true): string => `
job winch-9
  units mm
part shaft
part case
journal one on shaft
  length 25
  limits 24.98 to 24.98
  finish 0.2 um Ra
bore one in case
  length 25
  limits ${want}
  finish 0.4 um Ra
fit one of journal one in bore one
${running ? "  runs 600 rpm\n  load 600 N steady\n  oil iso-vg-68 at 40 C\n  feed pressure 0.2 MPa\n" : '  note "still"\n'}`;

function advice(text: string): readonly AdviceRow[] {
  const project = createProject({ root: "" });
  project.setFile("job.thou", readLines(text));
  const open = project.open("job.thou");
  if (open === undefined) throw new Error("no job");
  return adviceFor(open.shop, "fit one");
}

const rows = advice(JOB("25.01 to 25.01"));
const row = (name: string): AdviceRow | undefined =>
  rows.find((each) => each.name === name);

describe("side by side", () => {
  test("H7/f7 at 25: +21 and 0 over -20 and -41 µm, so 20 to 62", () => {
    expect(Number(row("H7/f7")?.low) * 1e6).toBeCloseTo(20, 4);
    expect(Number(row("H7/f7")?.high) * 1e6).toBeCloseTo(62, 4);
  });

  test("inch running fits are there, the job's own system first", () => {
    expect(rows.filter((each) => each.name.startsWith("RC")).length).toBe(9);
    expect(rows[0]?.name.startsWith("H")).toBe(true);
  });

  test("only fits that run: no press and no transition", () => {
    for (const each of rows.filter(({ kind }) => kind === "class"))
      expect(each.low, each.name).toBeGreaterThanOrEqual(0);
  });

  test("the rules, by hand", () => {
    const d = 24.98e-3;
    const v = Math.PI * d * 10;
    expect(rows.find(({ kind }) => kind === "shop-rule")?.low).toBeCloseTo(
      d / 1000,
      12,
    );
    expect(rows.find(({ kind }) => kind === "speed-rule")?.low).toBeCloseTo(
      0.8e-3 * v ** 0.25 * d,
      12,
    );
  });

  test("where nothing is said of how it runs, only what the size tells", () => {
    expect(
      new Set(advice(JOB("25.01 to 25.01", false)).map(({ kind }) => kind)),
    ).toEqual(new Set(["class", "shop-rule"]));
  });
});

test("inside the film's range the fit's own film carries, outside it does not", () => {
  const film = rows.find(({ kind }) => kind === "film");
  expect(film).toBeDefined();
  const thickness = (clearance: number): number => {
    const bore = (24.98 + clearance * 1000).toFixed(6);
    return Number(
      resultOf(checkText(JOB(`${bore} to ${bore}`)), "fit one", "film")
        ?.nominal,
    );
  };
  // 0.0002 in + 0.00004 d, as the page of film-thin has it
  const least = 0.0002 * 0.0254 + 0.00004 * 24.98e-3;
  const { low = 0, high = 0 } = film ?? {};
  expect(thickness(Math.sqrt(low * high))).toBeGreaterThan(least);
  expect(thickness(high * 1.05)).toBeLessThan(least);
});

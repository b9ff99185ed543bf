// What clearance to want: against class tables as published, the rules worked out here, and the film of the fit itself.
import { describe, expect, test } from "vitest";
import { readLines } from "../../grammar/lines.ts";
import {
  adviceFor,
  type AdviceRow,
} from "../../server/model/evaluate/advice.ts";
import { createProject } from "../../server/rules/check.ts";
import { columns, grades } from "../core/fits/printed-inch.ts";
import { table151 } from "../core/fits/printed-iso.ts";
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

/** The advice for a still fit of a journal of one size. */
const still = (size: string): readonly AdviceRow[] =>
  advice(
    JOB("25.01 to 25.01", false).replace(
      "24.98 to 24.98",
      `${size} to ${size}`,
    ),
  );

describe("beside printed tables", () => {
  // each column as printed, with its source, in test/core/fits/printed-inch.ts
  const clearances = columns.filter(
    ({ word, what }) => what === "clearance" && word.startsWith("RC"),
  );

  test("there are such columns, of four classes at least", () => {
    expect(
      new Set(clearances.map(({ word }) => word)).size,
    ).toBeGreaterThanOrEqual(4);
  });

  test.each(clearances.map((each) => [each.word, each.source, each] as const))(
    "%s at every step: %s",
    (word, _, { values, from }) => {
      for (let at = 0; at < values.length; at += 2) {
        const row = grades[from + at / 2];
        const before = grades[from + at / 2 - 1]?.upTo ?? 0;
        // a class is written on a sixteenth: one inside the step
        const size = Math.floor((row?.upTo ?? 0) * 16 - 1e-9) / 16;
        if (size <= before) continue;
        const found = still(`${String(size)} in`).find(
          ({ name }) => name === word,
        );
        expect(Number(found?.low) / 25.4e-6).toBeCloseTo(values[at] ?? NaN, 6);
        expect(Number(found?.high) / 25.4e-6).toBeCloseTo(
          values[at + 1] ?? NaN,
          6,
        );
      }
    },
  );

  test("H7/h6 at every step to 500 mm: nothing, to IT7 and IT6 together (Machine Drawing, Table 15.1)", () => {
    for (const { upTo, values } of table151) {
      // the table begins at IT01: IT6 and IT7 are its eighth and ninth
      const [it6 = NaN, it7 = NaN] = values.slice(7, 9);
      const found = still(`${String(upTo)} mm`).find(
        ({ name }) => name === "H7/h6",
      );
      expect(Number(found?.low) * 1e6, String(upTo)).toBeCloseTo(0, 6);
      expect(Number(found?.high) * 1e6, String(upTo)).toBeCloseTo(it6 + it7, 6);
    }
  });

  test("one thou an inch: 1.0000 in asks for 0.0010 in, whatever the job's unit", () => {
    const found = still("1.0000 in").find(({ kind }) => kind === "shop-rule");
    expect(Number(found?.low) / 25.4e-6).toBeCloseTo(1, 9);
  });
});

test("under the film's range one of the three things that are asked of it is wanting", () => {
  const low = rows.find(({ kind }) => kind === "film")?.low ?? 0;
  const bore = (24.98 + low * 0.9 * 1000).toFixed(6);
  const found = checkText(JOB(`${bore} to ${bore}`));
  const of = (kind: string): number =>
    Number(resultOf(found, "fit one", kind)?.nominal);
  const isThin = of("film") < 0.0002 * 0.0254 + 0.00004 * 24.98e-3;
  const isMixed = of("film-ratio") < 5;
  // oil enters at 40 °C, and 250 °F is 121.1 °C
  const isHot = 121.1 < 40 + of("oil-rise");
  expect(isThin || isMixed || isHot).toBe(true);
});

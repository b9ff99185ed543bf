// The film at the clearance that a fit runs with: hot lines, the tilt of the line, finishes in Rz. Held against the film of a record that has
// that very clearance at 20 °C, and against arithmetic written out here.
import { describe, expect, test } from "vitest";
import type { FileCheck } from "../../server/model/result.ts";
import { checkText, resultOf } from "./check-text.ts";
import { filmJob, FIT } from "./film-job.ts";

interface Written {
  readonly bore?: string;
  readonly finish?: string;
  readonly fit?: string;
  readonly job?: string;
  readonly more?: string;
}

function job({
  bore = "22.2377",
  finish = "0.4 um Ra",
  fit = "",
  job: of = "",
  more = "",
}: Written): string {
  return filmJob({
    job: `${of}
material steel-own
  expansion 11.5 um/m-K
material case-own
  expansion 22 um/m-K
`,
    shaft: "  material steel-own\n",
    case: "  material case-own\n",
    journal: { length: "20", size: "22.1996", finish: "0.2 um Ra" },
    bore: { length: "20", size: bore, finish },
    load: "600 N",
    fit: `${fit}\n${more}`,
  });
}

const check = (written: Written): FileCheck => checkText(job(written));
const film = (found: FileCheck) => resultOf(found, FIT, "film");
const working = (found: FileCheck): string =>
  (film(found)?.working ?? []).map((step) => step.with).join("\n");

describe("hot", () => {
  const bore = "22.2777";
  const cold = check({ bore });
  const hot = check({ bore, fit: "  hot shaft 60 C, case 60 C" });
  // 22.1996 · (1 + 11.5e-6 · 40) = 22.209811816 in 22.2777 · (1 + 22e-6 · 40) = 22.297304376: 0.08749256 of clearance
  const twin = check({ bore: "22.28709256" });

  test("the film is reckoned at 20 °C and at each hot line: the least of both, and which", () => {
    const [at20, at60] = [cold, twin].map((each) =>
      Number(film(each)?.nominal),
    );
    expect(at60).toBeLessThan(at20 ?? 0);
    expect(film(hot)?.nominal).toBe(at20);
    expect(Number(film(hot)?.low) / Number(at60)).toBeCloseTo(1, 6);
    expect(Number(film(hot)?.high) / Number(at20)).toBeCloseTo(1, 9);
    expect(film(hot)?.case).toBe(null);
    expect(film(hot)?.text).toMatch(
      /^0\.0\d+ to 0\.0\d+ mm, the least at hot 1$/,
    );
    expect(working(hot)).toMatch(
      /20 °C: clearance 0\.078 mm, film .*; hot 1: clearance 0\.087 mm, film /,
    );
    // a size of the twin is held to 0.1 nm, a millionth of the clearance
    for (const kind of [
      "relative-eccentricity",
      "sommerfeld",
      "oil-rise",
      "friction-power",
      "film-ratio",
    ]) {
      const [a, b] = [cold, twin].map((each) =>
        Number(resultOf(each, FIT, kind)?.nominal),
      );
      const found = resultOf(hot, FIT, kind);
      expect(Number(found?.low) / Math.min(a ?? 0, b ?? 0)).toBeCloseTo(1, 5);
      expect(Number(found?.high) / Math.max(a ?? 0, b ?? 0)).toBeCloseTo(1, 5);
    }
  });

  test("without a hot line nothing is said of one", () => {
    expect(film(cold)?.text).not.toContain("least");
    expect(working(cold)).not.toContain("hot");
  });

  test("film-thin judges the worst", () => {
    const between = (Number(film(hot)?.low) + Number(film(hot)?.high)) / 2;
    const warn = `  warn film-thin at ${(between * 1000).toFixed(7)} mm`;
    const thin = (found: FileCheck) =>
      found.findings.find((each) => each.code === "film-thin");
    expect(thin(check({ bore, job: warn }))).toBeUndefined();
    expect(
      thin(check({ bore, job: warn, fit: "  hot shaft 60 C, case 60 C" }))
        ?.message,
    ).toMatch(/^The least oil film is .* mm, the least at hot 1, and /);
  });

  test("a hot line that lacks a temperature is left out, and said to be", () => {
    const found = check({
      bore,
      fit: "  hot shaft 60 C, case 60 C\n  hot shaft 80 C",
    });
    expect(film(found)?.low).toBe(film(hot)?.low);
    expect(working(found)).toMatch(
      /hot 2 left out: needs the temperature of the case/,
    );
  });

  test("no clearance left hot is no film, and no word of a load too high", () => {
    // 22.1996 · (1 + 11.5e-6 · 180) = 22.24555 is more than the bore
    const found = check({ fit: "  hot shaft 200 C, case 20 C" });
    expect(film(found)).toMatchObject({ status: "unknown", low: null });
    expect(film(found)?.text).toContain(
      "hot 1 leaves no clearance for an oil film",
    );
    expect(found.findings.map((each) => each.code)).toContain("hot-tight");
    expect(found.findings.map((each) => each.code)).not.toContain("film-thin");
  });

  test("a hot line that can't be read says nothing", () => {
    const found = check({ fit: "  hot shaft 60 CC, case 60 C" });
    expect(film(found)?.low ?? null).toBe(null);
    expect(found.findings.map((each) => each.code)).not.toContain("film-thin");
  });
});

describe("tilt", () => {
  // both bores lean by 4 µm in 20 mm and their middles lie on the datum: whichever way a straight shaft turns, it comes nearer to an end
  // of each, so it lies along the datum and leans 0.2 per mille against them
  const line = (lean: string): string => `journal rear on layshaft
  limits 22.1996 to 22.1996
bore rear in case
  limits 22.2377 to 22.2377
fit rear of journal rear in bore rear
line layshaft
  bore front from 0 to 20${lean}
  bore rear from 100 to 120${lean}
`;

  test("of the straightest shaft comes off at the bearing's end", () => {
    const found = check({ more: line(" centre 0, -0.002 to 0, 0.002") });
    const e = Number(resultOf(found, FIT, "relative-eccentricity")?.nominal);
    // 0.0002 over half of 20 mm is 2 µm
    expect(Number(film(found)?.nominal) * 1000).toBeCloseTo(
      (0.0381 / 2) * (1 - e) - 0.002,
      8,
    );
    expect(working(found)).toContain(
      "less tilt 0.20 per mille (of the straightest shaft through line layshaft against bore front), 0.0020 mm",
    );
    const straight = check({ more: line(" centre 0, 0 to 0, 0") });
    expect(Number(film(straight)?.nominal)).toBeCloseTo(
      Number(film(check({}))?.nominal),
      15,
    );
  });

  test("not known, it takes nothing, and the working says why", () => {
    expect(working(check({}))).toContain(
      "no tilt, which is not known (bore front is on no line)",
    );
    const unchecked = check({ more: line("") });
    expect(working(unchecked)).toContain(
      "no tilt, which is not known (the centres of line layshaft are not all checked)",
    );
    expect(film(unchecked)?.nominal).toBe(film(check({}))?.nominal);
  });
});

test("a finish in Rz gives a range of film ratios: Ra a seventh to a quarter of it", () => {
  const found = check({ finish: "4.2 um Rz" });
  const ratio = resultOf(found, FIT, "film-ratio");
  const h = Number(film(found)?.nominal) * 1e6;
  // Ra 0.2 of the journal with 4.2/4, 4.2/6 and 4.2/7 of the bore; Rq is 1.25 of it
  expect(ratio?.low).toBeCloseTo(h / (1.25 * Math.hypot(0.2, 1.05)), 9);
  expect(ratio?.nominal).toBeCloseTo(h / (1.25 * Math.hypot(0.2, 0.7)), 9);
  expect(ratio?.high).toBeCloseTo(h / (1.25 * Math.hypot(0.2, 0.6)), 9);
  expect(ratio?.needs).toEqual([]);
  expect(ratio?.working.map((step) => step.with).join()).toMatch(
    /Ra 0\.00060 to 0\.00105 mm \(Rz 0\.00420 mm is 4 to 7 times Ra: common practice, no source/,
  );
});

// What an oil is worked with: a shipped grade by its name or by a `grade` line, or viscosities that the record writes.
import { expect, test } from "vitest";
import { kinematicViscosity } from "../../server/core/film/viscosity.ts";
import { oilValue, type OilValue } from "../../server/model/evaluate/oil.ts";
import type { Known } from "../../server/model/known.ts";
import { opened } from "../ide/opened.ts";

const oil = (text: string, ref = "oil own"): Known<OilValue> =>
  oilValue(opened(`job a\n  units mm\n${text}`).shop, ref);

/** Kinematic viscosities at a temperature in cSt: the least, the middle and the most. */
function centistokes(
  found: Known<OilValue>,
  celsius: number,
): readonly (number | undefined)[] {
  if (!found.known) return [];
  const { low, nominal, high } = found.value.band;
  return [low, nominal, high].map(({ line }) => {
    const at = kinematicViscosity(line, celsius);
    return at.valid ? Math.round(at.value * 1e8) / 100 : undefined;
  });
}
const needsOf = (found: Known<OilValue>): readonly string[] =>
  found.known ? [] : found.needs.map(({ ref, fact }) => `${ref}: ${fact}`);

// ISO 3448: 46 at 40 °C, within 10 % (from memory)
test("a grade has its band, by its name as by its line, with the density that is written", () => {
  const shipped = oil("", "oil iso-vg-46");
  expect(centistokes(shipped, 40)).toEqual([41.4, 46, 50.6]);
  const graded = oil("oil own\n  grade ISO VG 46\n");
  expect(centistokes(graded, 40)).toEqual([41.4, 46, 50.6]);
  expect(graded.known && graded.value.source).toBe(
    shipped.known && shipped.value.source,
  );
  const dense = oil("oil own\n  grade ISO VG 46\n  density 900 kg/m3\n");
  expect(dense.known && dense.value.band.nominal.density).toBe(900);
  expect(dense.known && dense.value.band.low.density).toBe(900);
  expect(graded.known && graded.value.band.nominal.density).not.toBe(900);
});

test("viscosities that are written count, in whichever order, and have no band", () => {
  for (const points of [
    "viscosity 68 cSt at 40 C, 8.5 cSt at 100 C",
    "viscosity 8.5 cSt at 100 C, 68 cSt at 40 C",
  ]) {
    const found = oil(`oil own\n  ${points}\n  density 880 kg/m3\n`);
    expect(centistokes(found, 40)).toEqual([68, 68, 68]);
    expect(centistokes(found, 100)).toEqual([8.5, 8.5, 8.5]);
    expect(found.known && found.value.source).toBe(
      "viscosities written for oil own",
    );
    expect(found.known && found.value.band.high.density).toBe(880);
  }
});

test("they go before the grade, which then gives the density alone", () => {
  const found = oil(
    "oil own\n  grade ISO VG 46\n  viscosity 68 cSt at 40 C, 8.5 cSt at 100 C\n",
  );
  expect(centistokes(found, 40)).toEqual([68, 68, 68]);
});

test("what is missing is asked for, one thing at a time", () => {
  expect(needsOf(oil("oil own\n  density 880 kg/m3\n"))).toEqual([
    "oil own: viscosity",
  ]);
  const single = oil("oil own\n  viscosity 68 cSt at 40 C\n");
  expect(needsOf(single)).toEqual(["oil own: viscosity"]);
  expect(single.known ? "" : single.needs[0]?.text).toContain(
    "at a second temperature",
  );
  expect(
    needsOf(oil("oil own\n  viscosity 68 cSt at 40 C, 8.5 cSt at 100 C\n")),
  ).toEqual(["oil own: density"]);
  expect(needsOf(oil("oil own\n  grade ISO VG 47\n"))).toEqual([
    "oil own: viscosity",
  ]);
});

test("a line that can't be read makes it silent, and no grade stands in for it", () => {
  const GRADE = "  grade ISO VG 46\n";
  for (const damaged of [
    `${GRADE}  viscosity 68 mm at 40 C, 8.5 cSt at 100 C\n`,
    `${GRADE}  density 880 mm\n`,
  ])
    expect(oil(`oil own\n${damaged}`)).toMatchObject({
      known: false,
      silent: true,
    });
  expect(oil("", "oil of-nobody")).toMatchObject({
    known: false,
    silent: true,
  });
});

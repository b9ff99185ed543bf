import { describe, expect, test } from "vitest";
import {
  filmAtClearance,
  sweepClearance,
  type ClearanceQuestion,
} from "../../../server/core/film/clearance-sweep.ts";
import {
  trumpler,
  trumplerLeastFilm,
} from "../../../server/core/film/film-ratio.ts";
import { got } from "./got.ts";
import { grade } from "./grade.ts";

const question: ClearanceQuestion = {
  bearing: {
    diameter: 0.022225,
    length: 0.03175,
    load: 800,
    turnsPerSecond: 4,
  },
  oil: grade("sae-30").nominal,
  cooling: { by: "side-flow", inlet: 49, volumetricHeat: 1.8e6 },
  loss: {},
  journalRa: 0.4e-6,
  boreRa: 0.8e-6,
  needs: {
    film: trumplerLeastFilm(0.022225),
    filmRatio: 5,
    hottest: trumpler.hottestOil,
  },
};

describe("the clearances in which the film carries", () => {
  const sweep = got(sweepClearance(question, 4e-6, 120e-6));

  test("lie in one range, whose ends are where it stops", () => {
    expect(sweep.carries).toHaveLength(1);
    const [range] = sweep.carries;
    if (range === undefined) throw new Error("no range");
    const carries = (clearance: number) =>
      got(filmAtClearance(question, clearance)).carries;
    expect(carries(range.least)).toBe(true);
    expect(carries(range.most)).toBe(true);
    expect(carries(range.least * 0.998)).toBe(false);
    expect(carries(range.most * 1.002)).toBe(false);
    for (const { diametralClearance, at } of sweep.points)
      expect(at.valid && at.value.carries).toBe(
        range.least <= diametralClearance && diametralClearance <= range.most,
      );
  });

  test("the best leaves more film than any point swept and than its neighbours", () => {
    const { best } = sweep;
    for (const { at } of sweep.points)
      if (at.valid)
        expect(at.value.filmLeft).toBeLessThanOrEqual(best.filmLeft);
    for (const factor of [0.97, 1.03])
      expect(
        got(filmAtClearance(question, factor * best.diametralClearance))
          .filmLeft,
      ).toBeLessThan(best.filmLeft);
    expect(best.carries).toBe(true);
  });

  test("too small a clearance runs hot, too large a one thin", () => {
    const [tight, wide] = [8e-6, 100e-6].map((clearance) =>
      got(filmAtClearance(question, clearance)),
    );
    expect(tight?.hottest).toBeGreaterThan(sweep.best.hottest);
    expect(wide?.film.relativeEccentricity).toBeGreaterThan(
      sweep.best.film.relativeEccentricity,
    );
  });

  test("where none carries says so, and still the best there is", () => {
    const none = got(
      sweepClearance(
        { ...question, needs: { ...question.needs, film: 1e-3 } },
        4e-6,
        120e-6,
      ),
    );
    expect(none.carries).toEqual([]);
    expect(none.best.carries).toBe(false);
    expect(none.best.filmLeft).toBeCloseTo(sweep.best.filmLeft, 8);
  });

  test("tilt narrows it", () => {
    const tilted = got(
      sweepClearance(
        { ...question, loss: { tilt: 4e-6 / 0.03175 / 20 } },
        4e-6,
        120e-6,
      ),
    );
    const [plain, other] = [sweep.carries[0], tilted.carries[0]];
    if (plain === undefined || other === undefined) throw new Error("no range");
    expect(other.least).toBeGreaterThan(plain.least);
    expect(other.most).toBeLessThan(plain.most);
    expect(tilted.best.filmLeft).toBeLessThan(sweep.best.filmLeft);
  });

  test("refuses a range that is none and a bearing without a film", () => {
    expect(sweepClearance(question, 1e-5, 1e-6).valid).toBe(false);
    expect(sweepClearance(question, 0, 1e-6).valid).toBe(false);
    expect(sweepClearance(question, 1e-6, 1e-5, 2).valid).toBe(false);
    const heavy = { ...question, bearing: { ...question.bearing, load: 1e6 } };
    expect(sweepClearance(heavy, 4e-6, 120e-6).valid).toBe(false);
    const smooth = { ...question, journalRa: 0, boreRa: 0 };
    expect(filmAtClearance(smooth, 3e-5).valid).toBe(false);
  });
});

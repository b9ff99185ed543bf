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
  const ranges = got(sweepClearance(question, 4e-6, 120e-6));

  test("lie in one range, whose ends are where it stops", () => {
    expect(ranges).toHaveLength(1);
    const [range] = ranges;
    if (range === undefined) throw new Error("no range");
    const carries = (clearance: number) =>
      got(filmAtClearance(question, clearance)).carries;
    expect(carries(range.least)).toBe(true);
    expect(carries(range.most)).toBe(true);
    expect(carries(range.least * 0.998)).toBe(false);
    expect(carries(range.most * 1.002)).toBe(false);
    for (let micrometres = 4; micrometres <= 120; micrometres++) {
      const clearance = micrometres * 1e-6;
      const at = filmAtClearance(question, clearance);
      expect(at.valid && at.value.carries).toBe(
        range.least <= clearance && clearance <= range.most,
      );
    }
  });

  test("too small a clearance runs hot, too large a one thin", () => {
    const [tight, between, wide] = [8e-6, 30e-6, 100e-6].map((clearance) =>
      got(filmAtClearance(question, clearance)),
    );
    if (between === undefined) throw new Error("no film");
    expect(tight?.hottest).toBeGreaterThan(between.hottest);
    expect(wide?.film.relativeEccentricity).toBeGreaterThan(
      between.film.relativeEccentricity,
    );
  });

  test("are none where none carries, and where there is no film", () => {
    const none = got(
      sweepClearance(
        { ...question, needs: { ...question.needs, film: 1e-3 } },
        4e-6,
        120e-6,
      ),
    );
    expect(none).toEqual([]);
    const heavy = { ...question, bearing: { ...question.bearing, load: 1e6 } };
    expect(got(sweepClearance(heavy, 4e-6, 120e-6))).toEqual([]);
  });

  test("tilt narrows it", () => {
    const tilted = got(
      sweepClearance(
        { ...question, loss: { tilt: 4e-6 / 0.03175 / 20 } },
        4e-6,
        120e-6,
      ),
    );
    const [plain, other] = [ranges[0], tilted[0]];
    if (plain === undefined || other === undefined) throw new Error("no range");
    expect(other.least).toBeGreaterThan(plain.least);
    expect(other.most).toBeLessThan(plain.most);
  });

  test("refuse a range that is none, and a film ratio over no roughness", () => {
    expect(sweepClearance(question, 1e-5, 1e-6).valid).toBe(false);
    expect(sweepClearance(question, 0, 1e-6).valid).toBe(false);
    const smooth = { ...question, journalRa: 0, boreRa: 0 };
    expect(filmAtClearance(smooth, 3e-5).valid).toBe(false);
  });
});

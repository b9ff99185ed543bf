import { describe, expect, test } from "vitest";
import {
  filmLeft,
  filmRatio,
  regimeOf,
  trumpler,
  trumplerLeastFilm,
} from "../../../server/core/film/film-ratio.ts";
import {
  oscillatingSpeed,
  pressureTimesSpeed,
  specificLoad,
  turningSpeed,
} from "../../../server/core/film/running.ts";
import {
  clearanceByShopRule,
  clearanceBySpeed,
} from "../../../server/core/film/wanted-clearance.ts";
import { got } from "./got.ts";

const inch = 0.0254;

describe("surface speed, load and PV", () => {
  test("a journal that turns: 1 in at 3.8197 rpm is 1 ft/min", () => {
    expect(got(turningSpeed(inch, 12 / Math.PI / 60))).toBeCloseTo(
      0.3048 / 60,
      12,
    );
    expect(got(turningSpeed(inch, -4))).toBe(got(turningSpeed(inch, 4)));
    expect(got(turningSpeed(inch, 0))).toBe(0);
  });
  test("one that swings a whole turn there and back runs two turns a cycle", () => {
    expect(got(oscillatingSpeed(0.02, 2 * Math.PI, 0.5))).toBeCloseTo(
      got(turningSpeed(0.02, 1)),
      12,
    );
    // 30° in all, 20 a minute, on 25 mm: 2 × 6.545 mm each 3 s
    expect(got(oscillatingSpeed(0.025, Math.PI / 6, 20 / 60))).toBeCloseTo(
      0.004363,
      6,
    );
  });
  test("load on projected area, and its product with the speed", () => {
    expect(got(specificLoad(1000, 0.02, 0.025))).toBeCloseTo(2e6, 6);
    expect(got(pressureTimesSpeed(2e6, 0.5))).toBe(1e6);
  });
  test("refuses what is no size, load or speed", () => {
    expect(turningSpeed(0, 1).valid).toBe(false);
    expect(turningSpeed(0.02, NaN).valid).toBe(false);
    expect(oscillatingSpeed(0.02, 0, 1).valid).toBe(false);
    expect(oscillatingSpeed(-0.02, 1, 1).valid).toBe(false);
    expect(specificLoad(-1, 0.02, 0.02).valid).toBe(false);
    expect(specificLoad(1, 0.02, NaN).valid).toBe(false);
    expect(pressureTimesSpeed(NaN, 1).valid).toBe(false);
  });
});

describe("what a film is worth", () => {
  test("tilt takes its slope times half the length, form its own", () => {
    expect(got(filmLeft(10e-6, 0.03, { tilt: 2e-4, form: 1e-6 }))).toBeCloseTo(
      6e-6,
      12,
    );
    expect(got(filmLeft(10e-6, 0.03, {}))).toBe(10e-6);
    expect(got(filmLeft(10e-6, 0.03, { tilt: 1e-2 }))).toBe(0);
    expect(filmLeft(10e-6, 0.03, { tilt: -1 }).valid).toBe(false);
    expect(filmLeft(NaN, 0.03, {}).valid).toBe(false);
  });
  test("its ratio to the roughness of both surfaces", () => {
    expect(got(filmRatio(5e-6, 0.3e-6, 0.4e-6))).toBeCloseTo(5 / 0.625, 12);
    expect(filmRatio(5e-6, 0, 0).valid).toBe(false);
    expect(filmRatio(-1, 1e-6, 0).valid).toBe(false);
  });
  test("the regimes meet at 1 and at 5", () => {
    expect([0, 0.99, 1, 4.99, 5, 60].map(regimeOf)).toEqual([
      "boundary",
      "boundary",
      "mixed",
      "mixed",
      "full",
      "full",
    ]);
  });
  test("Trumpler's least film of a 1 in journal is 0.24 thou; the rest in inch units", () => {
    expect(trumplerLeastFilm(inch)).toBeCloseTo(0.00024 * inch, 12);
    expect(trumpler.hottestOil).toBeCloseTo(121.1, 1);
    expect(trumpler.startLoad).toBeCloseTo(2.068e6, -3);
  });
});

describe("rules for a clearance to want", () => {
  test("0.8 thousandths at 1 m/s, twice that at 16", () => {
    expect(got(clearanceBySpeed(0.05, 1))).toBeCloseTo(40e-6, 12);
    expect(got(clearanceBySpeed(0.05, 16))).toBeCloseTo(80e-6, 12);
    expect(clearanceBySpeed(0.05, 0).valid).toBe(false);
    expect(clearanceBySpeed(0.05, 200).valid).toBe(false);
    expect(clearanceBySpeed(0, 1).valid).toBe(false);
  });
  test("a thou an inch", () => {
    expect(got(clearanceByShopRule(0.875 * inch))).toBeCloseTo(
      0.875e-3 * inch,
      12,
    );
    expect(clearanceByShopRule(NaN).valid).toBe(false);
  });
});

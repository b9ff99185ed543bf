import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  bearingFilm,
  fullFilmClaim,
  type Bearing,
} from "../../../server/core/film/bearing-film.ts";
import { got } from "./got.ts";

const bearing: Bearing = {
  diameter: 0.05,
  length: 0.05,
  diametralClearance: 0.1e-3,
  load: 3200,
  turnsPerSecond: 1490 / 60,
};
const oil = { viscosity: 0.025, density: 860 };

describe("whether a full film may be claimed", () => {
  const fit = {
    motion: "turning",
    loading: "steady",
    feed: "splash",
    groove: "none",
  } as const;
  test("of a journal that turns under a steady load in oil", () => {
    expect(fullFilmClaim(fit).valid).toBe(true);
    expect(
      fullFilmClaim({ ...fit, feed: "pressure", groove: "round" }).valid,
    ).toBe(true);
    expect(fullFilmClaim({ ...fit, groove: "lengthwise-unloaded" }).valid).toBe(
      true,
    );
  });
  test.each([
    [{ ...fit, motion: "oscillating" }, /stops twice a cycle/],
    [{ ...fit, loading: "reversing" }, /reversing/],
    [{ ...fit, loading: "shock" }, /shock/],
    [{ ...fit, feed: "drip" }, /drip/],
    [{ ...fit, feed: "grease" }, /grease/],
    [{ ...fit, groove: "lengthwise-loaded" }, /lengthwise groove/],
  ] as const)("not otherwise, and PV decides (%#)", (service, reason) => {
    const answer = fullFilmClaim(service);
    expect(answer.valid ? "" : answer.because).toMatch(reason);
    expect(answer.valid ? "" : answer.because).toMatch(/PV decides/);
  });
});

describe("the film of a bearing", () => {
  test("is the table's in metres: least film, drag, power, flow", () => {
    const film = got(bearingFilm(bearing, oil));
    expect(film.specificLoad).toBeCloseTo(1.28e6, 3);
    expect(film.leastFilm).toBeCloseTo(
      50e-6 * (1 - film.relativeEccentricity),
      12,
    );
    expect(film.frictionPower).toBeCloseTo(
      film.frictionCoefficient * 3200 * Math.PI * 0.05 * (1490 / 60),
      9,
    );
    expect(film.frictionTorque).toBeCloseTo(
      film.frictionCoefficient * 3200 * 0.025,
      12,
    );
    expect(film.sideFlow).toBeLessThan(film.flow);
    expect(film.peakPressure).toBeGreaterThan(film.specificLoad);
    expect(film.lands).toBe(1);
  });

  test("grows with the bearing: all lengths k times, load k² times, the same ratios", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.2, max: 5, noNaN: true }), (k) => {
        const one = got(bearingFilm(bearing, oil));
        const other = got(
          bearingFilm(
            {
              ...bearing,
              diameter: k * bearing.diameter,
              length: k * bearing.length,
              diametralClearance: k * bearing.diametralClearance,
              load: k * k * bearing.load,
            },
            oil,
          ),
        );
        expect(other.relativeEccentricity).toBeCloseTo(
          one.relativeEccentricity,
          9,
        );
        expect(other.leastFilm / one.leastFilm).toBeCloseTo(k, 9);
        expect(other.frictionPower / one.frictionPower).toBeCloseTo(k ** 3, 6);
        expect(other.flow / one.flow).toBeCloseTo(k ** 3, 6);
      }),
    );
  });

  test("more load, thinner film; more speed or thicker oil, thicker film; which way it turns is the same", () => {
    const film = (change: Partial<Bearing>, viscosity = 0.025) =>
      got(bearingFilm({ ...bearing, ...change }, { ...oil, viscosity }))
        .leastFilm;
    expect(film({ load: 4000 })).toBeLessThan(film({}));
    expect(film({ turnsPerSecond: 30 })).toBeGreaterThan(film({}));
    expect(film({}, 0.03)).toBeGreaterThan(film({}));
    expect(film({ turnsPerSecond: -1490 / 60 })).toBe(film({}));
  });

  test("a groove round makes two short bearings, each with half of the load", () => {
    const grooved = got(
      bearingFilm({ ...bearing, roundGrooveWidth: 0.006 }, oil),
    );
    const half = got(
      bearingFilm({ ...bearing, length: 0.022, load: 1600 }, oil),
    );
    const whole = got(bearingFilm(bearing, oil));
    expect(grooved.lands).toBe(2);
    expect(grooved.lengthOverDiameter).toBeCloseTo(0.44, 12);
    expect(grooved.relativeEccentricity).toBeCloseTo(
      half.relativeEccentricity,
      12,
    );
    expect(grooved.leastFilm).toBeCloseTo(half.leastFilm, 15);
    expect(grooved.frictionPower).toBeCloseTo(2 * half.frictionPower, 9);
    expect(grooved.flow).toBeCloseTo(2 * half.flow, 15);
    expect(grooved.leastFilm).toBeLessThan(whole.leastFilm);
  });

  test.each([
    [{ length: 0.11 }, /too long/],
    [{ load: 1e6 }, /no film is left/],
    [{ load: 1e-3 }, /nearly centred/],
    [{ load: 0 }, /load above zero/],
    [{ turnsPerSecond: 0 }, /turns/],
    [{ diametralClearance: 0 }, /clearance above zero/],
    [{ diametralClearance: 1.1e-3 }, /2 %/],
    [{ roundGrooveWidth: 0.05 }, /no land/],
    [{ diameter: NaN }, /diameter/],
  ] as const)("is refused, with the reason: %o", (change, reason) => {
    const answer = bearingFilm({ ...bearing, ...change }, oil);
    expect(answer.valid ? "" : answer.because).toMatch(reason);
  });

  test("is refused where vortices would stir it", () => {
    // a water-thin oil at 40,000 rpm: Re = 860·105·50e-6/0.001, over 41.3·√500
    const answer = bearingFilm(
      { ...bearing, load: 10_000, turnsPerSecond: 666 },
      { viscosity: 0.001, density: 860 },
    );
    expect(answer.valid ? "" : answer.because).toMatch(/laminar/);
    expect(bearingFilm(bearing, { ...oil, viscosity: 0 }).valid).toBe(false);
  });
});

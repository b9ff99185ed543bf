import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Bearing } from "../../../server/core/film/bearing-film.ts";
import {
  type Cooling,
  typicalCaseArea,
  warmFilm,
} from "../../../server/core/film/heat-balance.ts";
import { dynamicViscosity } from "../../../server/core/film/viscosity.ts";
import { got } from "./got.ts";
import { grade } from "./grade.ts";

/** The winch's layshaft: 7/8 in, 240 rpm, 180 lbf. */
const bearing: Bearing = {
  diameter: 0.022225,
  length: 0.03175,
  diametralClearance: 30.5e-6,
  load: 800,
  turnsPerSecond: 4,
};
const oils = grade("sae-30");
const oil = oils.nominal;
const bySideFlow = {
  by: "side-flow",
  inlet: 49,
  volumetricHeat: 1.8e6,
} as const;
const byWholeFlow = { ...bySideFlow, by: "whole-flow" } as const;
const byCase = { by: "case", ambient: 25, area: 0.01, transfer: 15 } as const;

describe("the oil's temperature", () => {
  test("balances: what friction heats, the oil that leaves carries", () => {
    const film = got(warmFilm(bearing, oil, bySideFlow));
    expect(film.cooledBy).toBe("side-flow");
    expect(1.8e6 * film.sideFlow * film.oilRise).toBeCloseTo(
      film.frictionPower,
      7,
    );
    expect(film.effectiveTemperature).toBeCloseTo(49 + film.oilRise / 2, 7);
    expect(film.viscosity).toBeCloseTo(
      got(dynamicViscosity(oil, film.effectiveTemperature)),
      12,
    );
  });

  test("with the whole flow fresh it stays cooler", () => {
    const film = got(warmFilm(bearing, oil, byWholeFlow));
    expect(1.8e6 * (film.flow - film.sideFlow / 2) * film.oilRise).toBeCloseTo(
      film.frictionPower,
      7,
    );
    expect(film.oilRise).toBeLessThan(
      got(warmFilm(bearing, oil, bySideFlow)).oilRise,
    );
  });

  test("through the case: power over area and transfer above the air", () => {
    const film = got(warmFilm(bearing, oil, byCase));
    expect(film.effectiveTemperature - 25).toBeCloseTo(
      film.frictionPower / 0.15,
      7,
    );
    expect(film.oilRise).toBeCloseTo(film.effectiveTemperature - 25, 7);
    const more = got(warmFilm(bearing, oil, { ...byCase, area: 0.02 }));
    expect(more.effectiveTemperature).toBeLessThan(film.effectiveTemperature);
    const { low, high } = typicalCaseArea(0.1, 0.1);
    expect(low).toBeCloseTo(0.15, 12);
    expect(high).toBeCloseTo(0.2, 12);
  });

  test("held: no balance, no rise", () => {
    const film = got(warmFilm(bearing, oil, { by: "held", temperature: 55 }));
    expect([film.effectiveTemperature, film.oilRise, film.cooledBy]).toEqual([
      55,
      0,
      "held",
    ]);
  });

  test("is found by plain substitution too", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 300, max: 2000, noNaN: true }),
        fc.double({ min: 2, max: 10, noNaN: true }),
        fc.double({ min: 20, max: 60, noNaN: true }),
        (load, turnsPerSecond, inlet) => {
          const one = { ...bearing, load, turnsPerSecond };
          const found = warmFilm(one, oil, { ...bySideFlow, inlet });
          fc.pre(found.valid);
          let temperature = inlet + 5;
          for (let round = 0; round < 400; round++) {
            const film = got(warmFilm(one, oil, { by: "held", temperature }));
            const wanted =
              inlet + film.frictionPower / (2 * 1.8e6 * film.sideFlow);
            temperature += 0.2 * (wanted - temperature);
          }
          expect(got(found).effectiveTemperature).toBeCloseTo(temperature, 5);
        },
      ),
      { numRuns: 12, seed: 5 },
    );
  });

  test("warmer oil in, thinner film", () => {
    const films = [20, 35, 50, 65, 80].map(
      (inlet) =>
        got(warmFilm(bearing, oil, { ...bySideFlow, inlet })).leastFilm,
    );
    expect(films).toEqual([...films].sort((a, b) => b - a));
  });

  test("carries a grade's band through: the thinner oil runs cooler, with less film", () => {
    const [low, nominal, high] = (["low", "nominal", "high"] as const).map(
      (end) => warmFilm(bearing, oils[end], bySideFlow),
    );
    if (low === undefined || nominal === undefined || high === undefined)
      throw new Error("three oils, three films");
    expect(got(low).leastFilm).toBeLessThan(got(nominal).leastFilm);
    expect(got(nominal).leastFilm).toBeLessThan(got(high).leastFilm);
    expect(got(low).effectiveTemperature).toBeLessThan(
      got(high).effectiveTemperature,
    );
  });

  const because = (change: Partial<Bearing>, cooling: Cooling) => {
    const answer = warmFilm({ ...bearing, ...change }, oil, cooling);
    return answer.valid ? "" : answer.because;
  };
  test("a refusal says of itself that no film carries, and no other does", () => {
    const sortOf = (change: Partial<Bearing>, cooling: Cooling) => {
      const answer = warmFilm({ ...bearing, ...change }, oil, cooling);
      return answer.valid ? "film" : answer.sort;
    };
    expect(sortOf({ load: 40_000 }, bySideFlow)).toBe("no-film");
    expect(sortOf({ load: 1e6 }, { by: "held", temperature: 60 })).toBe(
      "no-film",
    );
    expect(sortOf({ load: 9000 }, { ...byCase, area: 1e-4 })).toBe("no-film");
    expect(sortOf({ load: 0.5 }, bySideFlow)).toBeUndefined();
    expect(sortOf({ length: 0.05 }, bySideFlow)).toBeUndefined();
    expect(
      sortOf({ turnsPerSecond: 60, load: 400 }, { ...byCase, area: 2e-3 }),
    ).toBeUndefined();
  });
  test("is refused where the bearing is none, whatever carries its heat", () => {
    for (const cooling of [bySideFlow, byWholeFlow, byCase])
      expect(because({ diametralClearance: 0 }, cooling)).toMatch(/clearance/);
  });
  test("is refused where nothing balances", () => {
    expect(because({}, { ...byCase, area: 0 })).toMatch(/nothing carries/);
    expect(because({}, { ...bySideFlow, volumetricHeat: NaN })).toMatch(
      /nothing carries/,
    );
    expect(because({}, { ...bySideFlow, inlet: 160 })).toMatch(/outside/);
    expect(because({}, { by: "held", temperature: 200 })).toMatch(/trusted/);
    expect(because({ load: 40_000 }, bySideFlow)).toMatch(
      /no film carries even/,
    );
    expect(because({ load: 0.5 }, bySideFlow)).toMatch(/nearly centred/);
    expect(because({ length: 0.05 }, bySideFlow)).toMatch(/too long/);
    expect(because({ load: 9000 }, { ...byCase, area: 1e-4 })).toMatch(
      /until no film carries/,
    );
    expect(
      because({ turnsPerSecond: 60, load: 400 }, { ...byCase, area: 2e-3 }),
    ).toMatch(/would pass 150/);
  });
});

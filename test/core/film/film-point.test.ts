import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  filmAtEccentricity,
  filmAtSommerfeld,
  filmRange,
  sommerfeldNumber,
} from "../../../server/core/film/film-point.ts";
import { filmTable } from "../../../server/core/film/film-table.data.ts";
import { solveReynolds } from "../../../server/core/film/reynolds.ts";
import { got } from "./got.ts";

const ratios = [
  "sommerfeld",
  "attitude",
  "frictionVariable",
  "flowVariable",
  "sideFlowRatio",
  "meanToPeakPressure",
  "peakAngle",
  "filmEndAngle",
] as const;

const lengths = fc.double({ min: 1 / 16, max: 2, noNaN: true });
const eccentricities = fc.double({ min: 0.02, max: 0.95, noNaN: true });

describe("the table of films", () => {
  /** Seeded points off its nodes, spread over the range that must answer. */
  const seeded = fc.sample(
    fc.tuple(
      fc.double({ min: 0.25, max: 2, noNaN: true }),
      fc.double({ min: 0.1, max: 0.95, noNaN: true }),
    ),
    { seed: 20261102, numRuns: 7 },
  );
  test.each([...seeded, [0.09, 0.55], [1.7, 0.94]])(
    "is within 1 % of the solver between its nodes: L/D %d, eccentricity %d",
    (length, eccentricity) => {
      const table = got(filmAtEccentricity(length, eccentricity));
      const solved = got(
        solveReynolds(length, eccentricity, { around: 256, along: 32 }),
      );
      for (const ratio of ratios)
        expect(Math.abs(table[ratio] / solved[ratio] - 1), ratio).toBeLessThan(
          0.01,
        );
    },
  );

  test.each([
    [4, 10],
    [8, 17],
  ])("is what the solver makes today: row %d, %d", (length, eccentricity) => {
    const row =
      filmTable.rows[length * filmTable.eccentricities.length + eccentricity] ??
      [];
    const solved = got(
      solveReynolds(
        filmTable.lengthsOverDiameter[length] ?? NaN,
        filmTable.eccentricities[eccentricity] ?? NaN,
        filmTable.grid,
      ),
    );
    const again = ratios
      .filter((ratio) => ratio !== "frictionVariable")
      .map((ratio) => solved[ratio]);
    expect(row).toHaveLength(again.length);
    again.forEach((value, k) => {
      expect(Math.abs((row[k] ?? NaN) / value - 1)).toBeLessThan(1e-6);
    });
  });

  test("holds every row of its nodes", () => {
    expect(filmTable.rows).toHaveLength(
      filmTable.lengthsOverDiameter.length * filmTable.eccentricities.length,
    );
    expect(got(filmAtEccentricity(1, 0.6)).sommerfeld).toBeCloseTo(
      filmTable.rows[8 * filmTable.eccentricities.length + 12]?.[0] ?? NaN,
      8,
    );
  });
});

describe("a point of film", () => {
  test("answers everywhere from a quarter to two diameters and from 0.1 to 0.95", () => {
    for (const length of [0.25, 0.4, 0.7, 1, 1.5, 2])
      for (const eccentricity of [0.1, 0.11, 0.5, 0.9499, 0.95]) {
        const there = got(filmAtEccentricity(length, eccentricity));
        for (const ratio of ratios) expect(there[ratio]).toBeGreaterThan(0);
        const back = filmAtSommerfeld(
          length,
          there.sommerfeld * (eccentricity === 0.95 ? 1 + 1e-12 : 1),
        );
        expect(got(back).relativeEccentricity).toBeCloseTo(eccentricity, 9);
      }
  });

  test("is found again from its Sommerfeld number", () => {
    fc.assert(
      fc.property(lengths, eccentricities, (length, eccentricity) => {
        const there = got(filmAtEccentricity(length, eccentricity));
        const back = filmAtSommerfeld(length, there.sommerfeld);
        // on the very ends rounding may step off the table
        if (!back.valid)
          return eccentricity < 0.0200001 || 0.9499999 < eccentricity;
        return Math.abs(back.value.relativeEccentricity - eccentricity) < 1e-9;
      }),
    );
  });

  test("the nearer to the bore the journal runs, the smaller S and attitude, the more leaves at the ends", () => {
    fc.assert(
      fc.property(lengths, eccentricities, eccentricities, (length, a, b) => {
        fc.pre(1e-6 < Math.abs(a - b));
        const [near, far] = [Math.min(a, b), Math.max(a, b)].map((each) =>
          got(filmAtEccentricity(length, each)),
        );
        return (
          near !== undefined &&
          far !== undefined &&
          far.sommerfeld < near.sommerfeld &&
          far.attitude < near.attitude &&
          near.sideFlowRatio < far.sideFlowRatio &&
          near.peakAngle < far.peakAngle &&
          // flat where the journal is nearly centred: only a real step shows
          (Math.abs(a - b) < 0.02 ||
            far.meanToPeakPressure < near.meanToPeakPressure)
        );
      }),
    );
  });

  test("a longer bearing carries more at the same eccentricity", () => {
    fc.assert(
      fc.property(lengths, lengths, eccentricities, (a, b, eccentricity) => {
        fc.pre(1e-6 < Math.abs(a - b));
        const [short, long] = [Math.min(a, b), Math.max(a, b)].map((each) =>
          got(filmAtEccentricity(each, eccentricity)),
        );
        return (
          short !== undefined &&
          long !== undefined &&
          long.sommerfeld < short.sommerfeld
        );
      }),
    );
  });

  test("keeps within what geometry allows", () => {
    fc.assert(
      fc.property(lengths, eccentricities, (length, eccentricity) => {
        const film = got(filmAtEccentricity(length, eccentricity));
        expect(film.sommerfeldDin * film.sommerfeld * 2 * Math.PI).toBeCloseTo(
          1,
          12,
        );
        // Petroff's drag of the centred journal is the least there is
        expect(film.frictionVariable).toBeGreaterThan(
          2 * Math.PI ** 2 * film.sommerfeld,
        );
        // what comes in is at most what the widest gap drags along, and the narrowest lets some through
        expect(film.flowVariable).toBeLessThan(
          Math.PI * (1 + eccentricity) * 1.001,
        );
        expect(film.sideFlowRatio).toBeGreaterThan(0);
        expect(film.sideFlowRatio).toBeLessThan(1);
        expect(film.meanToPeakPressure).toBeLessThan(1);
        expect(film.attitude).toBeGreaterThan(0);
        expect(film.attitude).toBeLessThan(Math.PI / 2);
        expect(film.peakAngle).toBeGreaterThan(Math.PI / 2);
        expect(film.peakAngle).toBeLessThan(Math.PI);
        expect(film.filmEndAngle).toBeGreaterThan(Math.PI);
        expect(film.filmEndAngle).toBeLessThan(1.5 * Math.PI);
      }),
    );
  });

  test("is refused outside, with the reason", () => {
    const because = (answer: ReturnType<typeof filmAtSommerfeld>) =>
      answer.valid ? "" : answer.because;
    expect(because(filmAtEccentricity(0.05, 0.5))).toMatch(/too short/);
    expect(because(filmAtEccentricity(2.01, 0.5))).toMatch(/too long/);
    expect(because(filmAtEccentricity(1, 0.951))).toMatch(
      /up to a relative eccentricity of 0.95/,
    );
    expect(because(filmAtEccentricity(1, 0.01))).toMatch(/nearly centred/);
    expect(because(filmAtSommerfeld(1, 1e-4))).toMatch(/no film is left/);
    expect(because(filmAtSommerfeld(1, 1e4))).toMatch(/nearly centred/);
    expect(because(filmAtSommerfeld(2.5, 0.1))).toMatch(/too long/);
    for (const wrong of [NaN, -1, 0]) {
      expect(filmAtSommerfeld(1, wrong).valid).toBe(false);
      expect(filmAtEccentricity(1, wrong).valid).toBe(false);
      expect(filmAtEccentricity(wrong, 0.5).valid).toBe(false);
    }
    expect(filmRange.relativeEccentricity.greatest).toBe(0.95);
  });

  test("S takes the diametral clearance over the diameter, which is the radial over the radius", () => {
    // 25 mPa·s, 24.83 turns a second, 1.28 MPa, R/c = 500: 0.12125 by hand
    expect(sommerfeldNumber(0.025, 1490 / 60, 1.28e6, 0.1 / 50)).toBeCloseTo(
      0.12126,
      4,
    );
  });
});

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  offsetAt,
  straightestAxis,
  type Ring,
} from "../../../server/core/line/straightest-axis.ts";
import { mostRoomBySearch, mostRoomInPlane } from "./straight-by-other-ways.ts";

const micrometre = 1e-6;
const place = fc.integer({ min: -60, max: 60 }).map((um) => um * micrometre);
const ring = fc.record({
  z: fc.integer({ min: 0, max: 20 }).map((cm) => cm / 100),
  x: place,
  y: place,
  room: fc.integer({ min: -20, max: 90 }).map((um) => um * micrometre),
});
const rings = fc
  .array(ring, { minLength: 2, maxLength: 12 })
  .filter((all) => 1 < new Set(all.map(({ z }) => z)).size);

function at(z: number, x: number, y: number, room: number): Ring {
  return { z, x: x * micrometre, y: y * micrometre, room: room * micrometre };
}

describe("straightest axis", () => {
  test("three rings in a plane, the middle one out: half the sag to each (Chebyshev)", () => {
    const { least, pushes } = straightestAxis([
      at(0, 0, 0, 50),
      at(1, 30, 0, 50),
      at(3, 0, 0, 50),
    ]);
    // the middle stands 30 from the chord and the best line halves that
    expect(least / micrometre).toBeCloseTo(50 - 30, 6);
    // and it is pushed as hard as both ends, which share by their lever arms
    expect(pushes[0]).toBeCloseTo(1 / 3, 3);
    expect(pushes[1]).toBeCloseTo(1 / 2, 3);
    expect(pushes[2]).toBeCloseTo(1 / 6, 3);
  });

  test("three directions at one end: the centre of the circle round them", () => {
    const triangle = [0, 1, 2].map((corner) =>
      at(
        0,
        30 * Math.cos((2 * Math.PI * corner) / 3),
        30 * Math.sin((2 * Math.PI * corner) / 3),
        100,
      ),
    );
    const { least, axis } = straightestAxis([...triangle, at(1, 0, 0, 500)]);
    expect(least / micrometre).toBeCloseTo(100 - 60, 6);
    expect(offsetAt({ z: 0, x: 0, y: 0 }, axis)).toBeCloseTo(0, 11);
  });

  test("degenerate: two rings, rings in line, the same ring often, rooms far apart", () => {
    expect(
      straightestAxis([at(0, 0, 0, 20), at(1, 40, 10, 33)]).least / micrometre,
    ).toBeCloseTo(20, 7);
    const inLine = straightestAxis(
      [0, 1, 2, 5].map((z) => at(z, 7 + 3 * z, -2 * z, 25)),
    );
    expect(inLine.least / micrometre).toBeCloseTo(25, 7);
    expect(inLine.axis.slopeX / micrometre).toBeCloseTo(3, 6);
    const same = [
      at(0, 5, 5, 10),
      at(0, 5, 5, 10),
      at(0, 5, 5, 10),
      at(1, 5, 5, 10),
    ];
    expect(straightestAxis(same).least / micrometre).toBeCloseTo(10, 7);
    const apart = straightestAxis([
      at(0, 0, 0, 9),
      at(1, 20, 0, 5000),
      at(2, 0, 0, 9),
    ]);
    expect(apart.least / micrometre).toBeCloseTo(9, 5);
  });

  test("in a plane it is what trying every three rings finds", () => {
    fc.assert(
      fc.property(rings, (all) => {
        const flat = all.map((one) => ({ ...one, y: 0 }));
        expect(straightestAxis(flat).least).toBeCloseTo(
          mostRoomInPlane(flat),
          12,
        );
      }),
      { numRuns: 60 },
    );
  });

  test("in space no search finds better, and it finds as good", () => {
    fc.assert(
      fc.property(rings, (all) => {
        const [ours, found] = [
          straightestAxis(all).least,
          mostRoomBySearch(all),
        ];
        expect(found - 1e-12 <= ours).toBe(true);
        expect(ours - found < 0.5e-6).toBe(true); // the search itself stops short where the ridge is sharp
      }),
      { numRuns: 15 },
    );
  });

  test("no step away from it, large or small, leaves more: for a convex problem that proves it", () => {
    const direction = fc.array(fc.double({ min: -1, max: 1, noNaN: true }), {
      minLength: 4,
      maxLength: 4,
    });
    fc.assert(
      fc.property(
        rings,
        fc.array(direction, { minLength: 40, maxLength: 40 }),
        (all, directions) => {
          const { axis, least, bound, pushes } = straightestAxis(all);
          expect(pushes.reduce((sum, push) => sum + push, 0)).toBeCloseTo(1, 9);
          expect(least - 1e-13 <= bound && bound - least < 1e-12).toBe(true);
          for (const [x = 0, slopeX = 0, y = 0, slopeY = 0] of directions) {
            for (const step of [1e-4, 1e-5, 1e-6, 1e-8, 1e-10]) {
              const stepped = {
                atX: axis.atX + step * x,
                atY: axis.atY + step * y,
                slopeX: axis.slopeX + 10 * step * slopeX,
                slopeY: axis.slopeY + 10 * step * slopeY,
              };
              const left = Math.min(
                ...all.map((one) => one.room - 2 * offsetAt(one, stepped)),
              );
              expect(left).toBeLessThan(bound + 1e-13);
            }
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  test("turning, mirroring, moving or tilting the datum changes nothing; one more ring never helps", () => {
    fc.assert(
      fc.property(rings, ring, place, place, (all, more, byX, tilt) => {
        const { least } = straightestAxis(all);
        const moved = all.map((one) => ({
          ...one,
          x: one.y + byX + (tilt * one.z) / 0.2,
          y: -one.x,
          z: 1.3 - one.z,
        }));
        expect(straightestAxis(moved).least).toBeCloseTo(least, 12);
        expect(straightestAxis([...all, more]).least).toBeLessThan(
          least + 1e-13,
        );
      }),
      { numRuns: 60 },
    );
  });

  test("is the same in inches as in metres", () => {
    fc.assert(
      fc.property(rings, (all) => {
        const inches = all.map(({ z, x, y, room }) => ({
          z: z / 0.0254,
          x: x / 0.0254,
          y: y / 0.0254,
          room: room / 0.0254,
        }));
        expect(straightestAxis(inches).least * 0.0254).toBeCloseTo(
          straightestAxis(all).least,
          13,
        );
      }),
      { numRuns: 30 },
    );
  });
});

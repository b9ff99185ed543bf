import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  largestOutOfRound,
  outOfRound,
  taper,
} from "../../../server/core/readings/form.ts";
import { got } from "./got.ts";

const diameter = fc.double({ min: 1e-3, max: 1, noNaN: true });
const diameters = fc.array(diameter, { minLength: 2, maxLength: 12 });

describe("out-of-round", () => {
  test("is the difference of the extremes, whatever the order", () => {
    expect(got(outOfRound([0.02002, 0.02, 0.02001]))).toBeCloseTo(2e-5, 15);
    fc.assert(
      fc.property(diameters, (values) => {
        expect(got(outOfRound(values.toReversed()))).toBe(
          got(outOfRound(values)),
        );
        expect(got(outOfRound(values))).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  test("over stations is the largest of one station, not of the taper between them", () => {
    const stations = [
      { diameters: [0.02, 0.020004] },
      { diameters: [0.03] },
      { diameters: [0.021, 0.021001] },
    ];
    expect(got(largestOutOfRound(stations))).toBeCloseTo(4e-6, 15);
  });

  test("needs two diameters at one station", () => {
    expect(outOfRound([0.02]).valid).toBe(false);
    expect(
      largestOutOfRound([{ diameters: [0.02] }, { diameters: [0.03] }]).valid,
    ).toBe(false);
    expect(largestOutOfRound([]).valid).toBe(false);
    expect(largestOutOfRound([{ diameters: [0.02, NaN] }]).valid).toBe(false);
    expect(outOfRound([0.02, 0]).valid).toBe(false);
    expect(outOfRound([0.02, -0.02]).valid).toBe(false);
  });
});

describe("taper", () => {
  const near = { diameters: [0.02001, 0.02003], position: 0.01 };
  const far = { diameters: [0.02, 0.02], position: 0.05 };

  test("is the difference of the means, and over the length between the stations", () => {
    const found = got(taper([near, far]));
    expect(found.difference).toBeCloseTo(2e-5, 15);
    expect(found.perLength).toBeCloseTo(5e-4, 12);
    expect([found.largestAt, found.smallestAt]).toEqual([0, 1]);
  });

  test("is the same from the other end, and when the datum moves", () => {
    const turned = got(taper([far, near]));
    expect(turned.difference).toBe(got(taper([near, far])).difference);
    expect([turned.largestAt, turned.smallestAt]).toEqual([1, 0]);
    const moved = got(
      taper([
        { ...near, position: 1.01 },
        { ...far, position: 1.05 },
      ]),
    );
    expect(moved.perLength).toBeCloseTo(5e-4, 12);
  });

  test("shows a barrel: the ends alike, the middle larger", () => {
    const end = { diameters: [0.02], position: 0 };
    const middle = { diameters: [0.02004], position: 0.02 };
    const found = got(taper([end, middle, { ...end, position: 0.04 }]));
    expect(found.difference).toBeCloseTo(4e-5, 15);
    expect(found.perLength).toBeCloseTo(2e-3, 12);
  });

  test("has no slope where a station has no position, and none where the means agree", () => {
    expect(
      got(taper([near, { diameters: far.diameters }])).perLength,
    ).toBeUndefined();
    expect(got(taper([far, { ...far, position: 0.05 }]))).toMatchObject({
      difference: 0,
      perLength: 0,
    });
    expect(
      got(taper([far, { diameters: far.diameters }])).perLength,
    ).toBeUndefined();
  });

  test.each([
    [[near]],
    [[near, { ...far, position: 0.01 }]],
    [[near, { diameters: [] }]],
    [[near, { diameters: [NaN] }]],
    [[near, { ...far, position: NaN }]],
  ])("refuses %j", (stations) => {
    expect(taper(stations).valid).toBe(false);
  });
});

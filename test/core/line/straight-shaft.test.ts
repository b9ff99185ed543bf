import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  straightShaft,
  type CheckedBore,
} from "../../../server/core/line/straight-shaft.ts";
import { known, refusal } from "./answers.ts";

const micrometre = 1e-6;
const place = fc.integer({ min: -60, max: 60 }).map((um) => um * micrometre);

/** A bore of 1.25 in from z, its centre at x, y (µm) and, at its far end, further by dx; clearance in µm over 22 mm. */
function bore(
  z: number,
  x: number,
  y: number,
  clearance: number,
  dx = 0,
): CheckedBore {
  return {
    from: z,
    to: z + 0.03,
    centreFrom: { x: x * micrometre, y: y * micrometre },
    centreTo: { x: (x + dx) * micrometre, y: y * micrometre },
    bore: 0.022 + clearance * micrometre,
    journal: 0.022,
  };
}

describe("straight shaft", () => {
  test("in a true line each bore keeps its clearance", () => {
    const shaft = known(
      straightShaft([
        bore(0, 0, 0, 30),
        bore(0.1, 0, 0, 25),
        bore(0.2, 0, 0, 40),
      ]),
    );
    expect(shaft.stoppedBy).toBeUndefined();
    expect(
      shaft.bores.map((one) => Math.round(one.effectiveClearance / 1e-9)),
    ).toEqual([30000, 25000, 40000]);
    expect(shaft.leastClearance / micrometre).toBeCloseTo(25, 6);
    expect(shaft.bores.map(({ holds }) => holds)).toEqual([false, true, false]);
  });

  test("run-out takes from the clearance", () => {
    const first = { ...bore(0, 0, 0, 30), runout: 10 * micrometre };
    const shaft = known(straightShaft([first, bore(0.1, 0, 0, 25)]));
    expect(shaft.leastClearance / micrometre).toBeCloseTo(20, 6);
  });

  test("a crooked bore loses length × slope, shared between its ends by a shaft that others hold", () => {
    const shaft = known(
      straightShaft([
        bore(0, 0, 0, 10),
        bore(0.1, -5, 0, 30, 10),
        bore(0.2, 0, 0, 10),
      ]),
    );
    const [, middle] = shaft.bores;
    expect((middle?.lostToSlope ?? NaN) / micrometre).toBeCloseTo(10, 5);
    expect((middle?.effectiveClearance ?? NaN) / micrometre).toBeCloseTo(20, 5);
    expect((middle?.slope ?? NaN) * 0.03).toBeCloseTo(10 * micrometre, 10);
  });

  test("will not go through: names the bore that needs least to let it, and by how much", () => {
    const shaft = known(
      straightShaft([
        bore(0, 0, 0, 30),
        bore(0.1, 200, 0, 30),
        bore(0.2, 0, 0, 30),
      ]),
    );
    expect(shaft.leastClearance / micrometre).toBeCloseTo(30 - 200, 4);
    expect(shaft.stoppedBy?.bore).toBe(1);
    expect(shaft.stoppedBy?.alone).toBe(true);
    expect((shaft.stoppedBy?.by ?? NaN) / micrometre).toBeCloseTo(
      2 * 200 - 30,
      4,
    );
  });

  test("where no bore alone stops it, one of those that hold it is named, and none with room to spare", () => {
    const shaft = known(
      straightShaft([
        bore(0, 0, 0, 30),
        bore(0.1, 200, 0, 30),
        bore(0.15, 0, 0, 900),
        bore(0.2, -200, 0, 30),
        bore(0.3, 200, 0, 30),
        bore(0.4, 0, 0, 30),
      ]),
    );
    expect(shaft.stoppedBy?.alone).toBe(false);
    expect(shaft.bores[2]?.holds).toBe(false);
    expect(shaft.bores[shaft.stoppedBy?.bore ?? NaN]?.holds).toBe(true);
    expect(shaft.stoppedBy?.by).toBeGreaterThan(0);
  });

  test("the bore that stops it lets it through once opened by that much", () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(place, place, fc.integer({ min: -20, max: 20 })), {
          minLength: 1,
          maxLength: 5,
        }),
        fc.integer({ min: 1, max: 60 }),
        (centres, clearance) => {
          const bores = centres.map(([x, y, dx], index) =>
            bore(index * 0.08, x / micrometre, y / micrometre, clearance, dx),
          );
          const {
            stoppedBy,
            leastClearance,
            bores: inLine,
          } = known(straightShaft(bores));
          expect(leastClearance < 0).toBe(stoppedBy !== undefined);
          if (!stoppedBy) return;
          expect(inLine[stoppedBy.bore]?.holds).toBe(true);
          // with the shaft where the others have it, it can't have more room than at the best place of all
          expect(-leastClearance - 1e-12 <= stoppedBy.by).toBe(true);
          const opened = bores.map((one, index) =>
            index === stoppedBy.bore
              ? { ...one, bore: one.bore + stoppedBy.by }
              : one,
          );
          const after = known(straightShaft(opened));
          expect(after.stoppedBy && stoppedBy.alone).toBeFalsy();
          expect(leastClearance - 1e-12 <= after.leastClearance).toBe(true);
        },
      ),
      { numRuns: 40 },
    );
  });

  test("a single bore is no line to be out of; below zero clearance stops it", () => {
    expect(
      known(straightShaft([bore(0, 30, 40, 25)])).leastClearance / micrometre,
    ).toBeCloseTo(25, 6);
    // wherever its centre is, it would have to be larger by what it lacks
    const tight = known(straightShaft([bore(0, 30, 40, -5)]));
    expect(tight.stoppedBy).toMatchObject({ bore: 0, alone: true });
    expect((tight.stoppedBy?.by ?? NaN) / micrometre).toBeCloseTo(5, 4);
  });

  test("refuses what can't be laid out", () => {
    const good = bore(0, 0, 0, 20);
    expect(refusal(straightShaft([]))).toContain("no bore");
    expect(refusal(straightShaft([{ ...good, to: 0 }]))).toContain("no length");
    expect(refusal(straightShaft([{ ...good, from: NaN }]))).toContain(
      "not a number",
    );
    expect(refusal(straightShaft([{ ...good, journal: 0 }]))).toContain(
      "diameter",
    );
    expect(refusal(straightShaft([{ ...good, runout: -1e-6 }]))).toContain(
      "run-out",
    );
    expect(refusal(straightShaft([good, bore(0.1, 5000, 0, 20)]))).toContain(
      "1 in 100",
    );
  });
});

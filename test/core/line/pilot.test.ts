import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  isPilotSlack,
  pilotGuide,
  pilotReach,
} from "../../../server/core/line/pilot.ts";
import { known, refusal } from "./answers.ts";

const inch = 0.0254;
const range = (low: number, high: number) => ({
  low: low * inch,
  high: high * inch,
});

describe("reach", () => {
  test("from the near end of the pilot's bore to the far end of the cut, either way", () => {
    const forward = known(pilotReach(range(0, 1.25), range(5.5, 6.75)));
    expect(forward.engagedLength / inch).toBeCloseTo(1.25, 9);
    expect(forward.overhang / inch).toBeCloseTo(5.5, 9);
    const back = known(pilotReach(range(5.5, 6.75), range(0, 1.25)));
    expect(back.overhang / inch).toBeCloseTo(5.5, 9);
  });

  test("a pilot shorter than its bore is engaged over its own length", () => {
    expect(
      known(pilotReach(range(0, 1.25), range(5.5, 6.75), 0.5 * inch))
        .engagedLength / inch,
    ).toBeCloseTo(0.5, 9);
    expect(
      known(pilotReach(range(0, 1.25), range(1.25, 2), 9)).engagedLength / inch,
    ).toBeCloseTo(1.25, 9);
  });

  test("refuses a pilot in the bore that it guides the cut of", () => {
    expect(refusal(pilotReach(range(0, 1.25), range(1, 2)))).toContain(
      "guides the cut of",
    );
    expect(refusal(pilotReach(range(0, 1.25), range(0, 1.25)))).toContain(
      "guides the cut of",
    );
    expect(refusal(pilotReach(range(1, 1), range(2, 3)))).toContain(
      "no length",
    );
    expect(refusal(pilotReach(range(0, 1), range(3, 3)))).toContain(
      "no length",
    );
    expect(refusal(pilotReach(range(0, 1), range(2, 3), 0))).toContain(
      "no length",
    );
    expect(refusal(pilotReach(range(1, 0), range(2, 3)))).toContain(
      "larger to the smaller",
    );
  });
});

describe("guide", () => {
  const reach = { engagedLength: 1.25 * inch, overhang: 5.5 * inch };

  test("slack/2 + slack/length · overhang, of the most slack", () => {
    const guide = known(
      pilotGuide(range(0.87, 0.8702), range(0.8705, 0.8708), reach),
    );
    expect(guide.slack.low / inch).toBeCloseTo(0.0003, 9);
    expect(guide.slack.high / inch).toBeCloseTo(0.0008, 9);
    expect(guide.entry).toBe("goes");
    expect(guide.offset / inch).toBeCloseTo(0.0004 + (0.0008 / 1.25) * 5.5, 9);
  });

  test("tight where the slack may be below zero", () => {
    expect(
      known(pilotGuide(range(0.87, 0.8706), range(0.8705, 0.8708), reach))
        .entry,
    ).toBe("may-not-go");
    const tight = known(
      pilotGuide(range(0.871, 0.872), range(0.8705, 0.8708), reach),
    );
    expect(tight.entry).toBe("will-not-go");
    expect(tight.offset).toBe(0);
    expect(
      known(pilotGuide(range(0.87, 0.8705), range(0.8705, 0.8708), reach))
        .entry,
    ).toBe("goes");
  });

  test("no bar that fits in the bore strays further, and one strays as far", () => {
    const length = fc.double({ min: 0.01, max: 0.1, noNaN: true });
    fc.assert(
      fc.property(
        length,
        length,
        fc.double({ min: 0, max: 1e-4, noNaN: true }),
        (engagedLength, overhang, slack) => {
          const { offset } = known(
            pilotGuide(
              { low: 0.02, high: 0.02 },
              { low: 0.02 + slack, high: 0.02 + slack },
              { engagedLength, overhang },
            ),
          );
          // every place of both ends of the bar on a polar grid within half the slack
          let worst = 0;
          for (let near = 0; near < 12; near++) {
            for (let far = 0; far < 12; far++) {
              const at = (step: number) => [
                (slack / 2) * Math.cos((step * Math.PI) / 6),
                (slack / 2) * Math.sin((step * Math.PI) / 6),
              ];
              const [[nearX = 0, nearY = 0], [farX = 0, farY = 0]] = [
                at(near),
                at(far),
              ];
              const ratio = overhang / engagedLength;
              worst = Math.max(
                worst,
                Math.hypot(
                  nearX + (nearX - farX) * ratio,
                  nearY + (nearY - farY) * ratio,
                ),
              );
            }
          }
          expect(worst).toBeCloseTo(offset, 9);
        },
      ),
    );
  });

  test("refuses what is no pilot", () => {
    const bore = range(0.8705, 0.8708);
    expect(refusal(pilotGuide(range(1, 0.9), bore, reach))).toContain("pilot");
    expect(refusal(pilotGuide(bore, range(0, 1), reach))).toContain("bore");
    expect(
      refusal(pilotGuide(bore, bore, { ...reach, engagedLength: 0 })),
    ).toContain("no length");
    expect(
      refusal(pilotGuide(bore, bore, { ...reach, overhang: -1 })),
    ).toContain("overhang");
  });
});

describe("in a bore of an odd number of lobes", () => {
  /** The outline as points: how large a bar may be whose axis stands at (x, y), by the nearest of them. No formula of server/core. */
  const boreOf = (lobes: number, roundness: number) => {
    const points = Array.from({ length: 3600 }, (_, at) => {
      const angle = (at * Math.PI) / 1800;
      const radius = 0.01 + (roundness / 2) * Math.cos(lobes * angle);
      return [radius * Math.cos(angle), radius * Math.sin(angle)] as const;
    });
    return (x: number, y: number) =>
      2 * Math.min(...points.map(([px, py]) => Math.hypot(px - x, py - y)));
  };
  const size = (diameter: number) => ({ low: diameter, high: diameter });
  const reach = { engagedLength: 0.03, overhang: 0.06 };
  /** m: what rounding to first order leaves out, n²a²/R, and the grid. */
  const near = 2e-7;

  test.each([3, 5, 7])(
    "%i lobes: the largest bar that goes in is smaller by the roundness than two points say",
    (count) => {
      const roundness = 6e-6;
      const room = boreOf(count, roundness);
      let largest = 0;
      for (let x = -4; x <= 4; x++)
        for (let y = -4; y <= 4; y++)
          largest = Math.max(largest, room(x * 1e-6, y * 1e-6));
      const entry = (bar: number) =>
        known(pilotGuide(size(bar), size(0.02), reach, { count, roundness }))
          .entry;
      expect(entry(largest - near)).toBe("goes");
      expect(entry(largest + near)).toBe("will-not-go");
    },
  );

  test.each([
    [3, 7],
    [3, 10],
    [3, 60],
    [5, 8],
    [5, 20],
    [7, 9],
  ])(
    "%i lobes of 6 µm, %i µm of slack: no axis is farther off, and no two are farther apart, nor much nearer",
    (count, slack) => {
      const roundness = 6e-6;
      const bar = 0.02 - slack * 1e-6;
      const room = boreOf(count, roundness);
      const { off, lean, offset } = known(
        pilotGuide(size(bar), size(0.02), reach, { count, roundness }),
      );
      const places: (readonly [number, number])[] = [];
      const grid = off / 12;
      for (let x = -14; x <= 14; x++)
        for (let y = -14; y <= 14; y++)
          if (bar <= room(x * grid, y * grid))
            places.push([x * grid, y * grid]);
      const farthest = Math.max(...places.map(([x, y]) => Math.hypot(x, y)));
      let apart = 0;
      for (const [x, y] of places)
        for (const [a, b] of places)
          apart = Math.max(apart, Math.hypot(x - a, y - b));
      expect(farthest).toBeLessThan(off + near);
      expect(apart).toBeLessThan(lean + near);
      // a bound that says something: the grid, and the curve between the low spots, cost this much
      expect(farthest).toBeGreaterThan(0.7 * off);
      expect(apart).toBeGreaterThan(0.7 * lean);
      expect(offset).toBeCloseTo(off + 2 * lean, 12);
    },
  );

  test("without lobes it is as in a ring, and a bar that just goes can't move", () => {
    const bare = known(pilotGuide(size(0.01999), size(0.02), reach));
    const round = { count: 3, roundness: 0 };
    expect(known(pilotGuide(size(0.01999), size(0.02), reach, round))).toEqual(
      bare,
    );
    const just = { count: 3, roundness: 1e-5 };
    const guide = known(pilotGuide(size(0.01999), size(0.02), reach, just));
    expect(guide.entry).toBe("goes");
    expect(guide.offset).toBeCloseTo(0, 12);
  });

  test("where some sizes go in and some don't", () => {
    const bore = { low: 0.02, high: 0.020004 };
    const bar = { low: 0.01999, high: 0.019997 };
    const entry = (roundness: number) =>
      known(pilotGuide(bar, bore, reach, { count: 3, roundness })).entry;
    expect(entry(3e-6)).toBe("goes");
    expect(entry(3.1e-6)).toBe("may-not-go");
    expect(entry(14e-6)).toBe("may-not-go");
    expect(entry(14.1e-6)).toBe("will-not-go");
  });

  test("refuses lobes that two points see, and a roundness below zero", () => {
    const said = (count: number, roundness: number) =>
      refusal(pilotGuide(size(0.01), size(0.02), reach, { count, roundness }));
    expect(said(4, 1e-6)).toContain("odd number");
    expect(said(1, 1e-6)).toContain("odd number");
    expect(said(3, -1e-6)).toContain("roundness");
    expect(said(3, NaN)).toContain("roundness");
  });
});

test("warns past a quarter of the wanted band", () => {
  const wanted = { low: 20e-6, high: 40e-6 };
  expect(isPilotSlack(5e-6, wanted)).toBe(false);
  expect(isPilotSlack(5.1e-6, wanted)).toBe(true);
  expect(isPilotSlack(5.1e-6, wanted, 0.5)).toBe(false);
});

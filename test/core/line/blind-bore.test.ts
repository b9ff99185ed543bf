import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  filletFoul,
  ledgeFoul,
  ledgeOf,
  type BlindBore,
} from "../../../server/core/line/blind-bore.ts";
import { known, refusal } from "./answers.ts";

const inch = 0.0254;
/** A bush 1.25 long in a hole 1.35 deep, bored 0.8708, reamed 0.8755. */
const bore: BlindBore = {
  depth: 1.35 * inch,
  boreEnd: 1.25 * inch,
  before: 0.8708 * inch,
  cut: 0.8755 * inch,
};
const reamer = (chamfer: number, point: number, endClearance: number) => ({
  chamfer: chamfer * inch,
  point: point * inch,
  endClearance: endClearance * inch,
});

describe("ledge", () => {
  test("is what chamfer, point and end clearance keep the reamer from", () => {
    const ledge = known(ledgeOf(bore, reamer(0.06, 0.1, 0.02)));
    expect(ledge.cutDepth / inch).toBeCloseTo(1.17, 9);
    expect(ledge.length / inch).toBeCloseTo(0.08, 9);
    expect(ledge.diameter / inch).toBeCloseTo(0.8708, 9);
  });

  test("none where the hole is deep enough below the bush, or nothing is cut", () => {
    expect(known(ledgeOf(bore, reamer(0.06, 0.02, 0.02))).length).toBe(0);
    expect(
      known(ledgeOf({ ...bore, before: bore.cut }, reamer(0.06, 0.1, 0.02)))
        .length,
    ).toBe(0);
  });

  test("the whole bore where the reamer is longer ahead than the hole is deep", () => {
    const ledge = known(ledgeOf(bore, reamer(1, 0.5, 0)));
    expect(ledge.cutDepth).toBe(0);
    expect(ledge.length).toBeCloseTo(bore.boreEnd, 12);
  });

  test("refuses what is no blind bore", () => {
    expect(
      refusal(ledgeOf({ ...bore, boreEnd: 1.4 * inch }, reamer(0, 0, 0))),
    ).toContain("deeper than its hole");
    expect(refusal(ledgeOf({ ...bore, depth: 0 }, reamer(0, 0, 0)))).toContain(
      "above zero",
    );
    expect(refusal(ledgeOf(bore, reamer(-0.1, 0, 0)))).toContain(
      "not below zero",
    );
  });
});

describe("what reaches it", () => {
  const long = reamer(0.06, 0.1, 0.02); // cuts to 1.170
  const end = (reach: number, diameter = 0.8743) => ({
    reach: reach * inch,
    diameter: diameter * inch,
  });

  test("a journal's end that goes deeper than the cut fouls by the difference, and the ways out are numbers", () => {
    const { fouls, by, waysOut } = known(ledgeFoul(bore, long, end(1.2)));
    expect(fouls).toBe(true);
    expect(by / inch).toBeCloseTo(0.03, 9);
    expect((waysOut?.shorten ?? NaN) / inch).toBeCloseTo(0.03, 9);
    expect((waysOut?.deepen ?? NaN) / inch).toBeCloseTo(0.03, 9);
    expect((waysOut?.leadAtMost ?? NaN) / inch).toBeCloseTo(0.13, 9);
    expect((waysOut?.relieve.length ?? NaN) / inch).toBeCloseTo(0.08, 9);
  });

  test("touching is not fouling, nor is a spigot that the ledge lets through", () => {
    expect(known(ledgeFoul(bore, long, end(1.17))).fouls).toBe(false);
    expect(known(ledgeFoul(bore, long, end(1.2, 0.87))).fouls).toBe(false);
    expect(known(ledgeFoul(bore, long, end(1.2, 0.8708))).fouls).toBe(false);
  });

  test("each way out by itself ends the foul", () => {
    const length = (max: number) =>
      fc
        .integer({ min: 1, max })
        .map((thousandths) => thousandths * 1e-3 * inch);
    fc.assert(
      fc.property(
        length(1350),
        length(1350),
        length(300),
        length(300),
        length(100),
        length(1500),
        (one, other, chamfer, point, endClearance, reach) => {
          const hole = {
            ...bore,
            depth: Math.max(one, other),
            boreEnd: Math.min(one, other),
          };
          const tool = { chamfer, point, endClearance };
          const turning = { reach, diameter: 0.8743 * inch };
          const { fouls, waysOut } = known(ledgeFoul(hole, tool, turning));
          expect(fouls).toBe(waysOut !== undefined);
          if (!waysOut) return;
          const still = [
            known(
              ledgeFoul(hole, tool, {
                ...turning,
                reach: reach - waysOut.shorten,
              }),
            ),
            known(
              ledgeFoul(
                { ...hole, before: waysOut.relieve.diameter },
                tool,
                turning,
              ),
            ),
            known(
              ledgeFoul(
                { ...hole, depth: hole.depth + waysOut.deepen },
                tool,
                turning,
              ),
            ),
          ];
          if (waysOut.leadAtMost !== undefined) {
            still.push(
              known(
                ledgeFoul(
                  hole,
                  { chamfer: waysOut.leadAtMost, point: 0, endClearance },
                  turning,
                ),
              ),
            );
          }
          expect(still.map((after) => after.fouls)).toEqual(
            still.map(() => false),
          );
        },
      ),
    );
  });

  test("refuses what has no size", () => {
    expect(refusal(ledgeFoul(bore, long, end(1.2, 0)))).toContain(
      "reach or diameter",
    );
    expect(refusal(ledgeFoul(bore, long, end(NaN)))).toContain(
      "reach or diameter",
    );
    expect(refusal(ledgeFoul({ ...bore, cut: -1 }, long, end(1)))).toContain(
      "above zero",
    );
  });
});

describe("fillet", () => {
  test("needs gap and chamfer together", () => {
    expect(known(filletFoul(1.5e-3, 0.5e-3, 0.4e-3))).toBeCloseTo(0.6e-3, 12);
    expect(known(filletFoul(1e-3, 0, 1e-3))).toBe(0);
    // the gap and the chamfer clear it together, and neither alone
    expect(known(filletFoul(1.5e-3, 0.9e-3, 0.8e-3))).toBe(0);
    expect(refusal(filletFoul(-1e-3, 0, 0))).toContain("not below zero");
  });

  test("a fillet that the rule passes touches neither the chamfer's face nor its edges", () => {
    // in the plane: shoulder at x = 0, shaft's surface y = 0, fillet's centre (R, R); chamfer from (g, m) to (g + m, 0)
    const length = fc.double({ min: 0.01, max: 3, noNaN: true });
    fc.assert(
      fc.property(length, length, length, (radius, gap, chamfer) => {
        if (0 < known(filletFoul(radius, gap, chamfer))) return;
        for (let step = 0; step <= 20; step++) {
          const [x, y] = [
            gap + (chamfer * step) / 20,
            chamfer * (1 - step / 20),
          ];
          const inFillet =
            x < radius &&
            y < radius &&
            radius < Math.hypot(radius - x, radius - y) - 1e-9;
          expect(inFillet).toBe(false);
        }
      }),
    );
  });
});

// Friction at the contact: force and torque by summing small patches, and refusals.
import fc from "fast-check";
import { expect, test } from "vitest";
import {
  pressForce,
  torqueCapacity,
  usualFriction,
} from "../../../server/core/press/force.ts";
import { got } from "../readings/got.ts";

test("force and torque are the friction of every patch of the contact", () => {
  const [pressure, od, length, friction] = [2e7, 0.0254, 0.03175, 0.1];
  let force = 0;
  let torque = 0;
  const [round, along] = [360, 50];
  for (let i = 0; i < round; i++)
    for (let j = 0; j < along; j++) {
      const patch =
        friction *
        pressure *
        ((od / 2) * ((2 * Math.PI) / round)) *
        (length / along);
      force += patch;
      torque += patch * (od / 2);
    }
  const sure = (value: number) => ({ low: value, high: value });
  const f = sure(friction);
  expect(got(pressForce(sure(pressure), od, length, f)).low).toBeCloseTo(
    force,
    6,
  );
  expect(got(torqueCapacity(sure(pressure), od, length, f)).low).toBeCloseTo(
    torque,
    8,
  );
});

test("both ends: least pressure with least friction, most with most", () => {
  const { low, high } = got(
    pressForce({ low: 1e7, high: 3e7 }, 0.0254, 0.03, usualFriction),
  );
  expect(high / low).toBeCloseTo(9, 9);
});

test("the torque arm is half the od, whatever the pressure", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 1e9, noNaN: true }),
      fc.double({ min: 0.005, max: 1, noNaN: true }),
      (pressure, od) => {
        const p = { low: pressure, high: pressure };
        const force = got(pressForce(p, od, 0.02, usualFriction)).high;
        const torque = got(torqueCapacity(p, od, 0.02, usualFriction)).high;
        expect(Math.abs(torque - (force * od) / 2)).toBeLessThanOrEqual(
          1e-12 * torque,
        );
      },
    ),
  );
});

test("what is no pressure, size or friction is refused", () => {
  const p = { low: 1e7, high: 2e7 };
  expect(pressForce({ low: 2, high: 1 }, 1, 1, usualFriction).valid).toBe(
    false,
  );
  expect(pressForce({ low: -1, high: 1 }, 1, 1, usualFriction).valid).toBe(
    false,
  );
  expect(pressForce(p, 0, 1, usualFriction).valid).toBe(false);
  expect(pressForce(p, 0.02, NaN, usualFriction).valid).toBe(false);
  expect(pressForce(p, 0.02, 0.02, { low: 0.1, high: 1.5 }).valid).toBe(false);
  expect(torqueCapacity(p, 0.02, -1, usualFriction).valid).toBe(false);
});

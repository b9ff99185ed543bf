import fc from "fast-check";
import { expect, test } from "vitest";
import { sizeAtReference } from "../../../server/core/readings/temperature.ts";
import { got } from "./got.ts";

const size = fc.double({ min: 1e-3, max: 3, noNaN: true });
const temperature = fc.double({ min: -20, max: 120, noNaN: true });
const expansion = fc.double({ min: 0, max: 30e-6, noNaN: true });

test("at 20 °C the size is the reading with its correction", () => {
  const part = { temperature: 20, expansion: 23.1e-6 };
  expect(got(sizeAtReference({ reading: 0.025, part }))).toBe(0.025);
  expect(
    got(sizeAtReference({ reading: 0.025, correction: -2e-6, part })),
  ).toBeCloseTo(0.024998, 15);
});

test("a part and a gauge alike at one temperature cancel", () => {
  fc.assert(
    fc.property(size, temperature, expansion, (reading, t, a) => {
      const body = { temperature: t, expansion: a };
      const found = got(sizeAtReference({ reading, part: body, gauge: body }));
      expect(Math.abs(found / reading - 1)).toBeLessThan(3e-16);
    }),
  );
});

test("undoes the growth of a part, exactly, whichever the temperature", () => {
  fc.assert(
    fc.property(size, temperature, expansion, (reference, t, a) => {
      const grown = reference * (1 + a * (t - 20));
      const found = got(
        sizeAtReference({
          reading: grown,
          part: { temperature: t, expansion: a },
        }),
      );
      expect(Math.abs(found / reference - 1)).toBeLessThan(5e-16);
    }),
  );
});

test("agrees with the first-order shop formula to the second order", () => {
  fc.assert(
    fc.property(size, temperature, expansion, (reading, t, a) => {
      const shop = reading * (1 - a * (t - 20));
      const found = got(
        sizeAtReference({ reading, part: { temperature: t, expansion: a } }),
      );
      expect(Math.abs(found - shop)).toBeLessThanOrEqual(
        1.01 * reading * (a * (t - 20)) ** 2 + 1e-15,
      );
    }),
  );
});

test("a warm part reads too large, a warm gauge too small", () => {
  const cold = { temperature: 20, expansion: 11.5e-6 };
  const warm = { temperature: 30, expansion: 11.5e-6 };
  expect(
    got(sizeAtReference({ reading: 0.1, part: warm, gauge: cold })),
  ).toBeLessThan(0.1);
  expect(
    got(sizeAtReference({ reading: 0.1, part: cold, gauge: warm })),
  ).toBeGreaterThan(0.1);
});

test.each([
  { reading: 0, part: { temperature: 20, expansion: 0 } },
  { reading: NaN, part: { temperature: 20, expansion: 0 } },
  { reading: 0.02, correction: -0.02, part: { temperature: 20, expansion: 0 } },
  { reading: 0.02, correction: NaN, part: { temperature: 20, expansion: 0 } },
  { reading: 0.02, part: { temperature: 201, expansion: 1e-5 } },
  { reading: 0.02, part: { temperature: NaN, expansion: 1e-5 } },
  { reading: 0.02, part: { temperature: 20, expansion: 0.0116 } },
  {
    reading: 0.02,
    part: { temperature: 20, expansion: 1e-5 },
    gauge: { temperature: -60, expansion: 1e-5 },
  },
])("refuses %j", (indication) => {
  expect(sizeAtReference(indication).valid).toBe(false);
});

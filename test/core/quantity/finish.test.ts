// Ra of a finish written as Rz: a seventh to a quarter, by division.
import { expect, test } from "vitest";
import { asRa } from "../../../server/core/quantity/finish.ts";

test("Ra stays what it is; of Rz it is a range with a sixth within", () => {
  expect(asRa({ parameter: "Ra", value: 4e-7 })).toEqual({
    valid: true,
    value: { low: 4e-7, nominal: 4e-7, high: 4e-7 },
  });
  const found = asRa({ parameter: "Rz", value: 8.4e-6 });
  expect(found.valid).toBe(true);
  if (!found.valid) return;
  expect(found.value.low).toBeCloseTo(1.2e-6, 15);
  expect(found.value.nominal).toBeCloseTo(1.4e-6, 15);
  expect(found.value.high).toBeCloseTo(2.1e-6, 15);
});

test("refuses a finish below zero", () => {
  expect(asRa({ parameter: "Rz", value: -1e-6 }).valid).toBe(false);
  expect(asRa({ parameter: "Ra", value: NaN }).valid).toBe(false);
});

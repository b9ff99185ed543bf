// What is kept of lines is never more than may be.
import { expect, test } from "vitest";
import { keepIn } from "../../grammar/kept.ts";

test("as many as may be kept are, and with one more the others go", () => {
  const kept = new Map<string, number>();
  for (const [value, key] of ["a", "b", "c"].entries())
    keepIn(kept, 3, key, value);
  expect([...kept]).toEqual([
    ["a", 0],
    ["b", 1],
    ["c", 2],
  ]);
  keepIn(kept, 3, "d", 3);
  expect([...kept]).toEqual([["d", 3]]);
});

// The words of a line about a place in it.
import { expect, test } from "vitest";
import { wordAt, wordBefore, withMend } from "../../grammar/mend.ts";

const BODY = "read  near\t0.5";

test.each([
  [0, "read"],
  [2, "read"],
  // at its end, the next one
  [4, "near"],
  [5, "near"],
  [6, "near"],
  [10, "0.5"],
  [13, "0.5"],
  [14, ""],
])("the word at %i is %j", (offset, word) => {
  const { start, end } = wordAt(BODY, offset);
  expect(BODY.slice(start, end)).toBe(word);
});

test("past the last word both ends are the body's", () => {
  expect(wordAt(BODY, 14)).toEqual({ start: 14, end: 14 });
  expect(wordAt("read ", 4)).toEqual({ start: 5, end: 5 });
});

test.each([
  [14, "0.5"],
  [12, "0"],
  [11, "near"],
  [10, "near"],
  [6, "read"],
  [4, "read"],
  [1, "r"],
])("the word before %i is %j", (offset, word) => {
  const found = wordBefore(BODY, offset);
  expect(found && BODY.slice(found.start, found.end)).toBe(word);
});

test("before the first word there is none", () => {
  expect(wordBefore(BODY, 0)).toBeUndefined();
  expect(wordBefore("  read", 2)).toBeUndefined();
});

test("a mend takes the place of what stood there, and leaves the rest", () => {
  expect(withMend(BODY, { start: 6, end: 10, text: "far" })).toBe(
    "read  far\t0.5",
  );
  expect(withMend(BODY, { start: 14, end: 14, text: " mm" })).toBe(
    "read  near\t0.5 mm",
  );
});

// The words of a line about a place in it.
import { expect, test } from "vitest";
import {
  expectedIn,
  wordAt,
  wordBefore,
  withMend,
} from "../../grammar/asked.ts";

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

const NOTHING = { words: [], comma: false, end: false, described: [] };

test.each([
  // words as they are, and those of a closed choice, which is no description then
  ["UnitsFact", "units", { words: ["inch", "mm"] }],
  [
    "ConstructionFact",
    "construction",
    { words: ["solid", "wrapped", "porous", "lined"] },
  ],
  [
    "ReadFact",
    "read 0.5 as",
    { words: ["bought", "pressed", "roughed", "finished", "run"] },
  ],
  [
    "FeedFact",
    "feed",
    { words: ["pressure", "grease", "drip", "splash"], described: [] },
  ],
  ["DoneFact", "done", { words: ["on", "by"], described: ["a date"] }],
  ["FinishFact", "finish", { words: ["Ra", "Rz"], described: ["a number"] }],
  [
    "DepthFact",
    "depth 1.35",
    { words: ["blind", "through"], described: ["a unit of length"] },
  ],
  // an "or" between words is no choice where one of them is described
  ["BoreEntry", "bore front in", { described: ["a bush or a part"] }],
  ["SpeedFact", "speed 15", { described: [] }],
  [
    "SerialFact",
    "serial",
    { described: ["a serial or lot number", "a text in quotes"] },
  ],
  [
    "AllowsFact",
    "allows fit-loose on",
    { described: ["an entry, with its kind"] },
  ],
  // what is no word: a comma, the end
  ["AfterFact", "after a b", { comma: true, end: true }],
  ["VentedFact", "vented x", { end: true }],
  [
    "ShimsFact",
    "shims 0.1 0.2",
    { comma: true, end: true, described: ["a unit of length"] },
  ],
  [
    "SwingFact",
    "swing 0.1 mm on vee 60 deg",
    { words: ["between"], comma: true },
  ],
])("%s: where %j stops may stand %j", (rule, body, expected) => {
  expect(expectedIn(body, { rule })).toEqual({ ...NOTHING, ...expected });
});

test("lines of one shape are asked about once, by each rule", () => {
  const first = expectedIn("shims 0.1 0.2", { rule: "ShimsFact" });
  expect(expectedIn("shims 0.75 12.5", { rule: "ShimsFact" })).toBe(first);
  expect(expectedIn("shims 0.1 0.2", { rule: "LengthFact" })).not.toEqual(
    first,
  );
});

test("a mend takes the place of what stood there, and leaves the rest", () => {
  expect(withMend(BODY, { start: 6, end: 10, text: "far" })).toBe(
    "read  far\t0.5",
  );
  expect(withMend(BODY, { start: 14, end: 14, text: " mm" })).toBe(
    "read  near\t0.5 mm",
  );
});

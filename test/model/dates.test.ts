// Days as they are written: those that there are, and nothing else.
import { expect, test } from "vitest";
import { dateOf } from "../../server/model/dates.ts";

test.each([
  "2026-11-05",
  "2024-02-29",
  "2000-02-29",
  "0099-12-31",
  "0004-02-29",
])("%s is a day", (text) => {
  expect(dateOf(text)).toBe(text);
});

test.each([
  ...["2026-02-29", "1900-02-29", "2026-13-01", "2026-00-10", "2026-11-31"],
  ...["2026-11-00", "2026-1-5", "26-11-05", "2026-11-5", "2026-11-055"],
  ...["12026-11-05", "2026-11-05 ", "2026/11/05", "20 6-11-05", "2026-xx-05"],
  ...["2026-11-x5", "xxxx-11-05", ""],
])("%j is none", (text) => {
  expect(dateOf(text)).toBeUndefined();
});

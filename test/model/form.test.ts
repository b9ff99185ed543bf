// Out-of-round and taper of a journal, from readings with the places that are named and without. The differences are worked out beside each.
import { expect, test } from "vitest";
import { checkText, resultOf } from "./check-text.ts";

function found(...reads: readonly string[]) {
  const { results } = checkText(
    `job a\n  units mm\npart p\njournal j on p\n${reads.map((each) => `  read ${each}\n`).join("")}`,
  );
  const textOf = (kind: string): string | undefined =>
    resultOf({ findings: [], results }, "journal j", kind)?.text;
  return { round: textOf("out-of-round"), taper: textOf("taper") };
}

test("two named places differ by the means of their readings", () => {
  // (20.010 + 20.012)/2 less (20.004 + 20.004)/2
  expect(found("near 20.010 20.012", "far 20.004 20.004")).toEqual({
    round: "0.002 mm",
    taper: "0.007 mm",
  });
});

test("readings without a place are none along the length", () => {
  expect(found("near 20.010", "20.004").taper).toBeUndefined();
  expect(found("20.010", "20.004").taper).toBeUndefined();
  expect(found("near 20.010", "20.004", "far 20.009").taper).toBe("0.001 mm");
});

test("one reading of each place says nothing of how round it is", () => {
  expect(found("near 20.010", "far 20.004").round).toBeUndefined();
});

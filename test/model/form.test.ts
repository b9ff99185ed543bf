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

test("places that say where they lie have a taper per length as well", () => {
  // (20.010 − 20.004) / (35 − 5) = 0.006 / 30
  expect(found("near 20.010 station 5", "far 20.004 station 35").taper).toBe(
    "0.006 mm, 0.20 per mille",
  );
  // the line of a place that says so counts for all of its lines
  expect(
    found("near 20.010", "near 20.010 station 5", "far 20.004 station 35")
      .taper,
  ).toBe("0.006 mm, 0.20 per mille");
  // of one alone the distance is not known, and what is level has none
  expect(found("near 20.010 station 5", "far 20.004").taper).toBe("0.006 mm");
  expect(found("near 20.010 station 5", "far 20.010 station 35").taper).toBe(
    "0.000 mm",
  );
});

test("the working of a taper per length has the distance", () => {
  const { results } = checkText(
    "job a\n  units mm\npart p\njournal j on p\n  read near 20.010 station 5\n  read far 20.004 station 35\n",
  );
  const taper = results.find(({ kind }) => kind === "taper");
  expect(taper?.working).toContainEqual({
    formula: "taper per length = taper / distance of the two places",
    with: "0.006 mm / 30.000 mm = 0.20 per mille",
    source: "",
  });
});

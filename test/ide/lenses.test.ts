// The line above a fit, a press, a line: which there are, what each says, and what a click leads to.
import { describe, expect, test } from "vitest";
import { lensesIn, lensSays } from "../../server/ide/lenses.ts";
import { CRIB, JOB, opened, slice } from "./caret.ts";

function says(record: string, ref: string, levels = {}) {
  const open = opened({ "crib.thou": CRIB, "job.thou": record }, "job.thou");
  const found = lensSays(open, ref, levels);
  return (
    found && {
      title: found.title,
      at: found.finding && slice(record, found.finding),
    }
  );
}

test("one above each fit, press and line", () => {
  const open = opened({ "job.thou": JOB }, "job.thou");
  expect(lensesIn(open.file.lines).map(({ ref }) => ref)).toEqual([
    "press front",
    "press rear",
    "fit front",
    "line layshaft",
  ]);
});

// journal 0.8740 to 0.8745 by its limits; bore as read
const FIT = `job j
  units inch
part s
part c
journal a on s
  read 0.8742 0.8742
bore a in c
  read 0.8752 0.8754
fit a of journal a in bore a
  want 0.0008 to 0.0016
`;

describe("what it says", () => {
  test("a fit within what is wanted: 0.8752 less 0.8742, and 0.8754 less 0.8742", () => {
    expect(says(FIT, "fit a")).toEqual({
      title:
        "clearance (diametral) 0.0010 to 0.0012 in, measured: within what is wanted",
      at: undefined,
    });
  });

  test("one outside, with what is found, and where", () => {
    const loose = FIT.replace("0.0008 to 0.0016", "0.0004 to 0.0008");
    expect(says(loose, "fit a")).toEqual({
      title:
        "clearance (diametral) 0.0010 to 0.0012 in, measured: outside what is wanted \u{B7} 1 error",
      at: "a",
    });
  });

  test("a finding as loud as the user wants it, or not at all", () => {
    const loose = FIT.replace("0.0008 to 0.0016", "0.0004 to 0.0008");
    expect(says(loose, "fit a", { "fit-loose": "hint" })?.title).toMatch(
      / \u{B7} 1 hint$/u,
    );
    expect(says(loose, "fit a", { "fit-loose": "off" })).toEqual({
      title:
        "clearance (diametral) 0.0010 to 0.0012 in, measured: outside what is wanted",
      at: undefined,
    });
  });

  test("what is unknown says what it needs", () => {
    const record = FIT.replace("  read 0.8742 0.8742\n", "");
    expect(says(record, "fit a")?.title).toMatch(
      /^clearance \(diametral\) unknown: needs a reading of journal a$/,
    );
  });

  test("a line says its window and the reamer that serves best", () => {
    const record = JOB.replace("  bore rear from 5.50 to 6.75\n", "");
    expect(says(record, "line layshaft")?.title).toMatch(
      /^bore to be 0\.\d+ to 0\.\d+ in, by measured journals: reamer r-8755$/,
    );
  });

  test("nothing of an entry that is gone, damaged, or second of its name", () => {
    expect(says(FIT, "fit b")).toBeUndefined();
    expect(
      says(FIT.replace("fit a of journal a in", "fit a of 5"), "fit a"),
    ).toBeUndefined();
  });
});

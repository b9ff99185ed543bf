// Files after `use`: cursor fixtures. That a path leads where it should is checked by resolving it as the record would.
import { describe, expect, test } from "vitest";
import {
  fileOffers,
  usedFileAt,
  type UsableFile,
} from "../../server/ide/completion-files.ts";
import { atCaret, edited, slice } from "./caret.ts";

const HOME = "jobs/winch/job.thou";
const FILES: readonly UsableFile[] = [
  { path: HOME, opens: "job a" },
  { path: "jobs/winch/old.thou", opens: "job old" },
  { path: "jobs/winch/tools/own.thou", opens: "shop own" },
  { path: "crib.thou", opens: "shop harbour" },
  { path: "jobs/pump.thou", opens: "job pump" },
  { path: 'jobs/12" pipe.thou', opens: "job pipe" },
];

function offers(marked: string, others: Readonly<Record<string, string>> = {}) {
  const { open, position, text } = atCaret(marked, others, HOME);
  const range = usedFileAt(open, position);
  const found = range === undefined ? [] : fileOffers(open, range, FILES, "");
  return { found, text, labels: found.map(({ label }) => label) };
}

describe("where a file is named", () => {
  test.each([
    ["nothing yet", 'job a\n  use "|"\n', ""],
    ["no end yet", 'job a\n  use "cr|\n', "cr"],
    ["a path", 'job a\n  use "../cr|ib.thou"\n', "../crib.thou"],
    ["the second of two", 'job a\n  use "a.thou", "b|"\n', "b"],
    ["a comment after it", 'job a\n  use "a| # b\n', "a "],
  ])("%s", (_, marked, expected) => {
    const { open, position, text } = atCaret(marked);
    const range = usedFileAt(open, position);
    expect(range && slice(text, range)).toBe(expected);
  });

  test.each([
    ["before it", 'job a\n  use |"crib.thou"\n'],
    ["after it", 'job a\n  use "crib.thou"|\n'],
    ["between two", 'job a\n  use "a.thou",| "b.thou"\n'],
    ["in a comment", 'job a\n  use "a.thou" # "b|\n'],
    ["in another text", 'job a\n  title "cr|ib"\n'],
    ["in another entry", 'part a\n  use "cr|ib"\n'],
  ])("not %s", (_, marked) => {
    const { open, position } = atCaret(marked);
    expect(usedFileAt(open, position)).toBeUndefined();
  });
});

test("cribs first, the nearest before the far; not the file itself, none that can't be written", () => {
  const { labels, found } = offers('job a\n  use "|"\n');
  expect(labels).toEqual([
    "tools/own.thou",
    "../../crib.thou",
    "old.thou",
    "../pump.thou",
  ]);
  expect(found[1]?.detail).toBe("shop harbour");
});

test("none that is used already, but the one at the caret may be named again", () => {
  const others = { "crib.thou": "shop harbour\n" };
  expect(
    offers('job a\n  use "../../crib.thou", "|"\n', others).labels,
  ).not.toContain("../../crib.thou");
  expect(offers('job a\n  use "../../cr|ib.thou"\n', others).labels).toContain(
    "../../crib.thou",
  );
});

test("what is taken stands between the quotes", () => {
  const { found, text } = offers('job a\n  use "cr|"\n');
  const crib = found.find(({ label }) => label === "../../crib.thou");
  expect(
    crib && edited(text, [{ range: crib.replaceRange, text: crib.insertText }]),
  ).toBe('job a\n  use "../../crib.thou"\n');
});

// What can be folded. In the texts `[` marks a line that a fold begins on and `]` one that it ends on.
import { expect, test } from "vitest";
import { readLines } from "../../grammar/lines.ts";
import { foldsIn } from "../../server/ide/folding.ts";

/** Compares the folds of a text with its marks, which are at the lines' ends. */
function check(marked: string): void {
  const lines = marked.split("\n");
  const text = lines.map((line) => line.replace(/ *[[\]]+$/, "")).join("\n");
  const folds = foldsIn(readLines(text));
  const marks = lines.map((line) => /[[\]]+$/.exec(line)?.[0] ?? "");
  const count = (mark: string): readonly number[] =>
    marks.map((each) => each.split(mark).length - 1);
  const times = (which: "first" | "last"): readonly number[] =>
    lines.map((_, line) => folds.filter((fold) => fold[which] === line).length);
  expect(times("first")).toEqual(count("["));
  expect(times("last")).toEqual(count("]"));
}

test("an entry with its facts", () => {
  check(
    "part a [\n  serial 1\n  material x ]\npart b\n\npart c [\n  serial 2 ]\n",
  );
});

test("empty lines at its end and a remark on the next entry are left out, a remark of its own is not", () => {
  check(
    "part a [\n  serial 1\n\n  # its own ]\n\n# of the next\npart b [\n  serial 2 ]\n\n\n",
  );
});

test("a run of comment lines, and no single one", () => {
  check("# one [\n# two\n# three ]\n\n# alone\npart a [\n  serial 1 ]\n");
  check("part a [\n  # one [\n  # two ]\n  serial 1 ]\n");
});

test("an unknown word folds like an entry, lines before the first entry don't", () => {
  check("  serial 1\n  serial 2\nprat a [\n  serial 3 ]\n");
});

test("nothing to fold", () => {
  check("");
  check("part a");
  check("part a\n\n\n");
});

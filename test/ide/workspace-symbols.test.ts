// The entries of a file by name, and how well a name answers what was typed.
import { expect, test } from "vitest";
import { editLines, readLines } from "../../grammar/lines.ts";
import {
  entriesNamedIn,
  likeness,
} from "../../server/ide/workspace-symbols.ts";
import { CRIB, JOB, slice } from "./caret.ts";

test("every entry with the place of its name, as its opening line has it", () => {
  const entries = entriesNamedIn(readLines(JOB));
  const heads = JOB.split("\n").filter((line) => /^[a-z]/u.test(line));
  expect(entries.map(({ ref }) => ref)).toEqual(
    heads.map((line) => line.split(" ").slice(0, 2).join(" ")),
  );
  for (const { ref, range } of entries)
    expect(slice(JOB, range)).toBe(ref.split(" ")[1]);
});

test("a damaged opening line keeps its name, one without a name has none", () => {
  const text = "fit front of 5 7\njournal\njurnal a on b\n  read 0.87\npart c";
  expect(entriesNamedIn(readLines(text)).map(({ ref }) => ref)).toEqual([
    "fit front",
    "part c",
  ]);
});

test("a block that an edit leaves alone is not read again, and moves with its lines", () => {
  const before = readLines(CRIB);
  entriesNamedIn(before);
  const start = { line: 0, character: 0 };
  const after = editLines(before, { start, end: start, text: "# a\n\n" });
  expect(entriesNamedIn(after).map(({ range }) => range.start.line)).toEqual(
    entriesNamedIn(before).map(({ range }) => range.start.line + 2),
  );
});

test("the whole name before its beginning, that before the kind's, those before letters in their order", () => {
  const refs = [
    "line rear",
    "reamer r-875",
    "fit rear",
    "part frame",
    "journal rear-2",
  ];
  const found = (query: string): readonly string[] =>
    refs
      .flatMap((ref) => {
        const like = likeness(query, ref);
        return like === undefined ? [] : [{ ref, like }];
      })
      .sort((a, b) => b.like - a.like)
      .map(({ ref }) => ref);
  expect(found("rear")).toEqual([
    "line rear",
    "fit rear",
    "journal rear-2",
    "reamer r-875",
  ]);
  expect(found("rea")[0]).toBe("line rear");
  expect(found("FIT REAR")).toEqual(["fit rear"]);
  expect(found("r875")).toEqual(["reamer r-875"]);
  expect(found("lnr")).toEqual(["line rear"]);
  // letters in their order: ReAmER r-875, and jouRnAl rEaR-2 over both words
  expect(found("raer")).toEqual(["reamer r-875", "journal rear-2"]);
  expect(found("zz")).toEqual([]);
  expect(found("")).toEqual(refs);
});

// An entry in which one line changed is read from what it was: it is then what it would be, read afresh.
import fc from "fast-check";
import { expect, test } from "vitest";
import { editLines, lineCount, readLines } from "../../grammar/lines.ts";
import { changedEntries, readFile } from "../../server/model/file-entries.ts";
import { samples } from "../samples.ts";

const PIECES = [
  "9",
  "",
  " ",
  "x",
  "#",
  "with mic-9",
  "0.8",
  "\n",
  "\n  note n",
];

/** One or two edits of any lines of any sample; most change one line of one entry each. */
const edited = fc
  .record({
    sample: fc.constantFrom(...samples),
    edits: fc.array(
      fc.record({
        line: fc.nat(),
        character: fc.nat(40),
        length: fc.nat(3),
        text: fc.constantFrom(...PIECES),
      }),
      { minLength: 1, maxLength: 2 },
    ),
  })
  .map(({ sample, edits }) => {
    const before = readLines(sample.text);
    let after = before;
    for (const { line: at, character, length, text } of edits) {
      const line = at % lineCount(after);
      const end = { line, character: character + length };
      after = editLines(after, { start: { line, character }, end, text });
    }
    return { before, after };
  });

test("the entries of a file that follows an edit are those of the file read afresh", () => {
  let kept = 0;
  fc.assert(
    fc.property(edited, ({ before, after }) => {
      const old = readFile("/a.thou", before, undefined);
      const now = readFile("/a.thou", after, old);
      const text = after.lines.map((line) => line.text + line.eol).join("");
      const afresh = readFile("/a.thou", readLines(text), undefined);
      expect(now.entries).toEqual(afresh.entries);
      const facts = new Set(old.entries.flatMap((entry) => entry.facts));
      for (const entry of now.entries)
        if (!old.entries.includes(entry))
          kept += entry.facts.filter((fact) => facts.has(fact)).length;
      // what changed is told without a look at each, and is what a look at each tells
      expect(changedEntries(old, now)).toEqual(
        changedEntries(old, { ...now, since: undefined }),
      );
    }),
    { numRuns: 400 },
  );
  expect(kept).toBeGreaterThan(100);
});

test("of a file that is given anew as it was every entry is kept, and none changed", () => {
  const lines = readLines("job a\n  units inch\npart b\npart c\n");
  const old = readFile("/a.thou", lines, undefined);
  const now = readFile("/a.thou", { ...lines }, old);
  expect(now.entries).toHaveLength(3);
  now.entries.forEach((entry, index) => {
    expect(entry).toBe(old.entries[index]);
  });
  expect(changedEntries(old, now)).toEqual([]);
});

test("of two files of the same lines, read each from nothing, every entry is another", () => {
  const read = () =>
    readFile("/a.thou", readLines("job a\npart b\n"), undefined);
  expect(changedEntries(read(), read())).toEqual([0, 1]);
});

test.each([
  ["one more at the end", 0, 1],
  ["one fewer at the end", 1, 0],
])(
  "of a file with %s no number tells what changed: what is gone has none",
  (_, before, after) => {
    const lines = (more: number): string =>
      `job a\n  units inch\npart b\n${"part c\n".repeat(more)}`;
    const old = readFile("/a.thou", readLines(lines(before)), undefined);
    const now = readFile("/a.thou", readLines(lines(after)), undefined);
    expect(old.entries.length - now.entries.length).toBe(before - after);
    // those that stand in both are the same, so that only how many there are tells
    const most = old.entries.length < now.entries.length ? now : old;
    const one = { ...old, entries: most.entries.slice(0, old.entries.length) };
    const other = {
      ...now,
      entries: most.entries.slice(0, now.entries.length),
    };
    expect(changedEntries(one, other)).toBeUndefined();
  },
);

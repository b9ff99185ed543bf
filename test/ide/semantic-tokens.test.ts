// What each word of a line is said to be.
import { readFileSync } from "node:fs";
import fc from "fast-check";
import { expect, test } from "vitest";
import { editLines, readLines } from "../../grammar/lines.ts";
import { ENTRIES } from "../../grammar/vocabulary.ts";
import { tokensIn } from "../../server/ide/semantic-tokens.ts";
import { JOB } from "../lsp/winch.ts";

/** Each word with what it is: "front:variable!" where it is declared. */
function words(text: string): readonly string[] {
  const file = readLines(text);
  return [...tokensIn(file)].flatMap(({ line, tokens }) =>
    tokens.map(({ start, end, type, declares }) => {
      const word = file.lines[line]?.text.slice(start, end) ?? "";
      return `${word}:${type}${declares ? "!" : ""}`;
    }),
  );
}

test("an entry, its kind, its name and what it is of", () => {
  expect(words("fit front of journal front in front  # the tight one")).toEqual(
    [
      "fit:keyword",
      "front:variable!",
      "of:operator",
      "journal:namespace",
      "front:variable",
      "in:operator",
      "front:variable",
      "# the tight one:comment",
    ],
  );
});

test("a reading with all its clauses", () => {
  expect(
    words(
      "journal a on b\n  read near 0.87432 -.5 in station 12 mm with mic-1 at 68 F as pressed by AK on 2026-11-05",
    ).slice(4),
  ).toEqual([
    "read:property",
    "near:parameter",
    "0.87432:number",
    "-.5:number",
    "in:type",
    "station:operator",
    "12:number",
    "mm:type",
    "with:operator",
    "mic-1:variable",
    "at:operator",
    "68:number",
    "F:type",
    "as:operator",
    "pressed:enumMember",
    "by:operator",
    "AK:string",
    "on:operator",
    "2026-11-05:number",
  ]);
});

test("materials and oils, texts, classes and choices", () => {
  expect(
    words(
      'material bronze-local\n  yield 18 ksi\npart a\n  material steel-4140\n  joint gasket 0.004\nhole a in a\n  limits 25 mm H7 from "L-204"\nfit a of a in a\n  oil sae-30 at 50 C\n  load 180 lbf steady\n  oscillates 30 deg, 20 per min',
    ),
  ).toEqual([
    ..."material:keyword bronze-local:class! yield:property 18:number ksi:type".split(
      " ",
    ),
    ..."part:keyword a:variable! material:property steel-4140:class joint:property gasket:enumMember 0.004:number".split(
      " ",
    ),
    ...'hole:keyword a:variable! in:operator a:variable limits:property 25:number mm:type H7:enumMember from:operator "L-204":string'.split(
      " ",
    ),
    ..."fit:keyword a:variable! of:operator a:variable in:operator a:variable".split(
      " ",
    ),
    ..."oil:property sae-30:class at:operator 50:number C:type".split(" "),
    ..."load:property 180:number lbf:type steady:enumMember".split(" "),
    ..."oscillates:property 30:number deg:type 20:number".split(" "),
    "per min:type",
  ]);
});

test("a damaged line keeps its first word, its numbers and its texts; an unknown word is nothing", () => {
  expect(
    words('fit a of b\n  want 0.0008 too 0.0016\n  wnat 1 "x" # y'),
  ).toEqual([
    "fit:keyword",
    "a:variable!",
    "of:operator",
    "want:property",
    "0.0008:number",
    "0.0016:number",
    "1:number",
    '"x":string',
    "# y:comment",
  ]);
});

/** The examples of thou.ohm, each as a line of an entry that takes it. */
function examples(): readonly string[] {
  const source = readFileSync(
    new URL("../../grammar/thou.ohm", import.meta.url),
    "utf8",
  );
  return [
    ...source.matchAll(
      /^\s*(\w+(?:Fact|Entry)) =[^/]*?\n((?:\s*\/\/=.*\n)+)/gm,
    ),
  ].flatMap(([, rule = "", lines = ""]) => {
    const owner = ENTRIES.find(({ facts }) =>
      facts.some((fact) => fact.rule === rule),
    );
    const texts = [...lines.matchAll(/\/\/= (.*)/g)].map(
      ([, text = ""]) => text,
    );
    return rule.endsWith("Entry")
      ? texts
      : texts.map((text) => `${owner?.kind ?? "?"} x\n  ${text}`);
  });
}

test("every word of every example of the grammar is something, and none is two things", () => {
  const all = examples();
  expect(all.length).toBeGreaterThan(100);
  for (const text of all) {
    const file = readLines(text);
    for (const { line, tokens } of tokensIn(file)) {
      const { text: written = "" } = file.lines[line] ?? {};
      let rest = "";
      let reached = 0;
      for (const { start, end } of tokens) {
        expect(reached, text).toBeLessThanOrEqual(start);
        expect(start, text).toBeLessThan(end);
        rest += written.slice(reached, start);
        reached = end;
      }
      // what is left over is blanks, commas and the signs of ranges; the head made up for a fact is damaged
      rest += written.slice(reached);
      if (line === 1 || !text.includes("\n"))
        expect(rest, text).toMatch(/^[\s,/+±-]*$/);
    }
  }
});

test("some lines are those lines of the whole", () => {
  const file = readLines(JOB);
  const whole = [...tokensIn(file)];
  expect([...tokensIn(file, 12, 20)]).toEqual(whole.slice(12, 21));
  expect([...tokensIn(file, 0, 0)]).toEqual(whole.slice(0, 1));
});

test("after an edit the words are those of the text, though kept lines are not read again", () => {
  const piece = fc.constantFrom(
    "part ",
    "fit x\n",
    "  want ",
    "#",
    '"',
    "1",
    "\n",
  );
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.nat(35), fc.nat(30), piece), { maxLength: 8 }),
      (edits) => {
        let file = readLines(JOB);
        for (const [line, character, text] of edits) {
          const at = { line, character };
          file = editLines(file, { start: at, end: at, text });
          expect([...tokensIn(file)]).toEqual([
            ...tokensIn(
              readLines(
                file.lines.map((each) => each.text + each.eol).join(""),
              ),
            ),
          ]);
        }
      },
    ),
    { numRuns: 60 },
  );
});

// What is made of plain data for the protocol: rows of numbers for words, snippets for editors that know none.
import fc from "fast-check";
import { expect, test } from "vitest";
import {
  SemanticTokenModifiers,
  SemanticTokenTypes,
} from "vscode-languageserver";
import { readLines } from "../../grammar/lines.ts";
import { tokensIn } from "../../server/ide/semantic-tokens.ts";
import { LEGEND } from "../../server/lsp/legend.ts";
import { withoutStops } from "../../server/lsp/offers.ts";
import {
  createTokenAnswers,
  difference,
  encoded,
} from "../../server/lsp/token-answers.ts";
import { JOB } from "./winch.ts";

test("the legend has only types and modifiers of the protocol", () => {
  const types: readonly string[] = Object.values(SemanticTokenTypes);
  const modifiers: readonly string[] = Object.values(SemanticTokenModifiers);
  for (const type of LEGEND.tokenTypes) expect(types).toContain(type);
  for (const modifier of LEGEND.tokenModifiers)
    expect(modifiers).toContain(modifier);
});

test("the row of numbers, read as the protocol says, gives the words", () => {
  const file = readLines(JOB);
  const read: unknown[] = [];
  const data = encoded(file);
  let [line, start] = [0, 0];
  for (let at = 0; at < data.length; at += 5) {
    const [down = 0, right = 0, length = 0, type = 0, modifiers = 0] =
      data.slice(at, at + 5);
    line += down;
    start = down === 0 ? start + right : right;
    read.push([
      line,
      start,
      start + length,
      LEGEND.tokenTypes[type],
      modifiers === 1,
    ]);
  }
  const words = [...tokensIn(file)].flatMap(({ line: at, tokens }) =>
    tokens.map((token) => [
      at,
      token.start,
      token.end,
      token.type,
      token.declares,
    ]),
  );
  expect(read).toEqual(words);
});

test("a difference makes the one row of the other", () => {
  const row = fc.array(fc.nat(3), { maxLength: 12 });
  fc.assert(
    fc.property(row, row, (before, after) => {
      const made = [...before];
      for (const { start, deleteCount, data } of difference(before, after))
        made.splice(start, deleteCount, ...(data ?? []));
      expect(made).toEqual(after);
    }),
  );
});

test("one changed word is a small difference; an id that is not the last gets the whole", () => {
  const answers = createTokenAnswers();
  const first = answers.whole("x", readLines(JOB));
  const changed = readLines(JOB.replace("want 0.0008", "want 0.00080"));
  const second = answers.since("x", changed, first.resultId ?? "");
  expect(second).toEqual({
    resultId: expect.any(String) as string,
    edits: [expect.anything()],
  });
  const edits = "edits" in second ? second.edits : [];
  expect((edits[0]?.data ?? []).length).toBeLessThan(10);
  expect(answers.since("x", changed, first.resultId ?? "")).toHaveProperty(
    "data",
  );
});

test.each([
  ["fit ${1:NAME} of ${2:JOURNAL}$0", "fit NAME of JOURNAL"],
  ["units ${1|inch,mm|}", "units inch"],
  ["read $1 with ${2|mic-1|}", "read  with mic-1"],
  ["a\\$b ${1:c\\}d}", "a$b c}d"],
])("%s without its stops", (snippet, plain) => {
  expect(withoutStops(snippet)).toBe(plain);
});

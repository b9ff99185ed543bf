// The outline of a record.
import { expect, test } from "vitest";
import { symbolsIn } from "../../server/ide/symbols.ts";
import { CRIB, JOB } from "../lsp/winch.ts";
import { opened } from "./opened.ts";

test("every entry is a symbol, with what it comes to or else what it is of", () => {
  const symbols = symbolsIn(opened(JOB, { "crib.thou": CRIB }));
  expect(
    symbols.map(({ name, detail }) =>
      detail === "" ? name : `${name}: ${detail}`,
    ),
  ).toEqual([
    "job winch-layshaft",
    "part layshaft",
    "part case",
    "journal front: 0.87428 to 0.87432 in, measured, in tolerance",
    "hole front: 1.00018 to 1.00021 in, measured, in tolerance",
    "bush front: in hole front",
    "bore front: 0.8756 to 0.8757 in, predicted",
    "fit front: 0.00128 to 0.00142 in, predicted, in tolerance",
    "line layshaft: bore to be 0.87512 to 0.87588 in, by measured journals: reamer r-8755",
    "step ream: next",
  ]);
});

test("a symbol reaches from its opening line to its last fact, and a remark on the next entry is not its own", () => {
  const text = "part a\n  serial 1\n  # of it\n\n# on the next\npart b\n";
  const [a, b] = symbolsIn(opened(text));
  expect(a?.range).toEqual({
    start: { line: 0, character: 0 },
    end: { line: 2, character: 9 },
  });
  expect(a?.nameRange).toEqual({
    start: { line: 0, character: 5 },
    end: { line: 0, character: 6 },
  });
  expect(b?.range.start.line).toBe(5);
});

test("the name lies within the symbol, whatever is damaged", () => {
  const text =
    '  note "lost"\n\njob 3rd\nwhatever is this\n  read 1\njurnal a on b\nfit\n  part x\n';
  const symbols = symbolsIn(opened(text));
  expect(symbols.map(({ name, kind }) => `${name} ${kind ?? "-"}`)).toEqual([
    "job 3rd job",
    "whatever is this -",
    "jurnal a on b -",
    "fit fit",
    "part x part",
  ]);
  for (const { range, nameRange } of symbols) {
    expect(range.start.line).toBeLessThanOrEqual(nameRange.start.line);
    expect(nameRange.end.line).toBeLessThanOrEqual(range.end.line);
    expect(nameRange.end.character).toBeLessThanOrEqual(
      range.end.line === nameRange.end.line ? range.end.character : Infinity,
    );
  }
});

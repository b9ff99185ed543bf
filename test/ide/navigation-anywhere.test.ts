// Whatever a file holds and wherever the caret stands: no question throws, and every range of an answer lies in the file and where it should.
import fc from "fast-check";
import { expect, test } from "vitest";
import { completionAt } from "../../server/ide/completion.ts";
import { hoverAt } from "../../server/ide/hover.ts";
import {
  definitionAt,
  highlightsAt,
  linksIn,
  referencesAt,
} from "../../server/ide/navigation.ts";
import type { Position, Range } from "../../server/ide/position.ts";
import { prepareRenameAt, renameAt } from "../../server/ide/rename.ts";
import type { OpenFile } from "../../server/model/project.ts";
import { samples } from "../samples.ts";
import { opened, slice } from "./caret.ts";

const texts = Object.fromEntries(
  samples.map((sample) => [sample.path, sample.text]),
);

/** Words that make sense somewhere, and marks that make none. */
const PIECES = [
  "fit ",
  "bore ",
  "front",
  " in ",
  " of ",
  "read ",
  "0.87",
  " 25 mm H7",
  "with ",
  "\n",
  "\n  ",
  '"',
  "#",
  ",",
  "|",
  "µm",
  "\u{1F529}",
  "\u{0}",
  "\r\n",
  "step ",
  "material ",
  "caution ",
  "done ",
  "-",
  "/",
  "\t",
  "per ",
  "+/-",
  "1e999",
  "’",
];

interface Wound {
  readonly at: number;
  readonly cut: number;
  readonly put: string;
}

const wounds = fc.array(
  fc.record({
    at: fc.nat(),
    cut: fc.nat({ max: 12 }),
    put: fc.oneof(
      fc.constantFrom(...PIECES),
      fc.string({ unit: "binary", maxLength: 6 }),
    ),
  }),
  { minLength: 1, maxLength: 4 },
);

function wounded(text: string, all: readonly Wound[]): string {
  return all.reduce((now, { at, cut, put }) => {
    const start = at % (now.length + 1);
    return now.slice(0, start) + put + now.slice(start + cut);
  }, text);
}

function ask(open: OpenFile, position: Position, text: string): void {
  const lines = text.split(/\r\n|\n|\r/);
  const isIn = ({ start, end }: Range): void => {
    expect(start.line).toBeLessThan(lines.length);
    expect(end.line).toBeLessThan(lines.length);
    expect(end.character).toBeLessThanOrEqual(lines[end.line]?.length ?? 0);
    expect(start.line === end.line ? start.character : 0).toBeLessThanOrEqual(
      end.character,
    );
  };
  const holds = (range: Range): void => {
    isIn(range);
    expect(range.start.line).toBe(position.line);
    expect(range.end.line).toBe(position.line);
    expect(range.start.character).toBeLessThanOrEqual(position.character);
    expect(position.character).toBeLessThanOrEqual(range.end.character);
  };
  const hover = hoverAt(open, position);
  if (hover !== undefined) holds(hover.range);
  const offers = completionAt(open, position, "2026-11-25");
  for (const offer of offers) holds(offer.replaceRange);
  expect(new Set(offers.map((offer) => offer.label)).size).toBe(offers.length);
  for (const { origin, path, range } of definitionAt(open, position)) {
    holds(origin);
    if (path === open.path) isIn(range);
  }
  for (const { range } of highlightsAt(open, position)) isIn(range);
  const start = prepareRenameAt(open, position);
  if (start !== undefined && "range" in start) {
    isIn(start.range);
    expect(start.range.start.line).toBe(position.line);
    const renamed = renameAt(open, position, "zz-new");
    if (renamed !== undefined && "edits" in renamed)
      for (const { path, range } of renamed.edits)
        if (path === open.path) {
          isIn(range);
          // a name, or a short reference that gets its kind
          expect(slice(text.replaceAll(/\r\n|\r/g, "\n"), range)).toBe(
            start.placeholder,
          );
        }
  }
  referencesAt(open, position, { declaration: true });
  linksIn(open);
}

test("of any file that was damaged anyhow", () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...samples),
      wounds,
      fc.array(fc.tuple(fc.nat(), fc.nat()), { minLength: 20, maxLength: 20 }),
      (sample, all, places) => {
        const text = wounded(sample.text, all);
        const open = opened({ ...texts, [sample.path]: text }, sample.path);
        const lines = text.split(/\r\n|\n|\r/);
        for (const [line, character] of places) {
          const at = line % lines.length;
          ask(
            open,
            { line: at, character: character % ((lines[at]?.length ?? 0) + 1) },
            text,
          );
        }
      },
    ),
    { numRuns: 40 },
  );
});

test("of a sound file, at every character", () => {
  const sample = samples.find((each) => each.path.endsWith("winch.thou"));
  if (sample === undefined) throw new Error("the winch is a sample");
  const open = opened(texts, sample.path);
  sample.text.split("\n").forEach((line, at) => {
    for (let character = 0; character <= line.length; character++)
      ask(open, { line: at, character }, sample.text);
  });
});

// The shapes that are shipped: usual lines are read without Ohm, which costs a millisecond for the first of each shape.
import { expect, test, vi } from "vitest";
import { readLines } from "../../grammar/lines.ts";
import { widerKeys } from "../../grammar/shape.ts";
import { packed, unpacked } from "../../grammar/template.ts";
import { usualShapes } from "../../grammar/usual-shapes.ts";
import { lineSpec } from "../../grammar/vocabulary.ts";
import { soundSamples } from "../samples.ts";

vi.mock("ohm-js", () => ({
  makeRecipe: () => {
    throw new Error("Ohm was asked");
  },
}));

const { parseBody } = await import("../../grammar/parse.ts");

const lines = soundSamples.flatMap(({ text }) =>
  readLines(text).blocks.flatMap((block) =>
    block.lines.flatMap(({ word, body }, index) => {
      const spec = lineSpec(block.kind, word, index === 0);
      return spec === undefined ? [] : [{ body, rule: spec.rule }];
    }),
  ),
);

test("no line of the samples needs Ohm", () => {
  expect(lines.length).toBeGreaterThan(300);
  for (const { body, rule } of lines)
    expect(parseBody(body, rule).damagedAt, body).toBeUndefined();
});

test.each([
  ["journal p1 on layshaft", "JournalEntry"],
  ["bore ab2c in bush x", "BoreEntry"],
  ["fit p1 of journal b in bore front-2", "FitEntry"],
  ["cuts line rear", "CutsFact"],
  ["read n1 0.8743 0.8742 with mic", "ReadFact"],
  ["done 2026-11-02 by K7", "DoneFact"],
])("nor does one with names of other letters: %s", (body, rule) => {
  expect(parseBody(body, rule).damagedAt).toBeUndefined();
});

test("a key is looked for with its words left open: all of them first, and none where they are many", () => {
  expect(widerKeys("`cuts` <c>, <w>")).toEqual([
    "`cuts` <a>, <a>",
    "`cuts` <c>, <a>",
    "`cuts` <a>, <w>",
  ]);
  expect(widerKeys("`units` `mm`")).toEqual([]);
  expect(widerKeys("<l> <l> <n> <l> <l>")).toHaveLength(31);
  expect(widerKeys("<l> <l> <n> <l> <l> <l>")).toEqual([]);
});

test("a line of another shape needs it", () => {
  expect(() =>
    parseBody("read near 0.5 1.5 2.5 3.5 4.5 5.5 6.5", "ReadFact"),
  ).toThrow("Ohm was asked");
});

test("a template comes back as it was packed", () => {
  const all = Object.values(usualShapes);
  expect(all.map((each) => packed(unpacked(each)))).toEqual(all);
});

// Every kind of hint that the sample records show: its tooltip is there when it is asked for, and whatever can be clicked leads to a name.
import { readdirSync, readFileSync } from "node:fs";
import { beforeAll, expect, test } from "vitest";
import { readLines } from "../../grammar/lines.ts";
import { hintsIn, hintWorking, type Hint } from "../../server/ide/hints.ts";
import { createFiles, type OpenFile } from "../../server/model/project.ts";
import { slice } from "./caret.ts";

const ROOT = "samples/shop";
const texts = new Map(
  readdirSync(ROOT).map((name) => {
    const path = `${ROOT}/${name}`;
    return [path, readFileSync(path, "utf8")] as const;
  }),
);

const all: { readonly open: OpenFile; readonly hint: Hint }[] = [];
beforeAll(() => {
  const files = createFiles({ root: ROOT });
  for (const [path, text] of texts) files.setFile(path, readLines(text));
  for (const path of texts.keys()) {
    const open = files.open(path);
    if (open === undefined) throw new Error(`${path} is not there`);
    for (const hint of hintsIn(open, 0, Infinity)) all.push({ open, hint });
  }
});

test("each kind that stands for a result is among them", () => {
  expect(
    [...new Set(all.flatMap(({ hint }) => hint.source?.kind ?? []))].sort(),
  ).toEqual([
    "clearance",
    "cold-clearance",
    "end-float",
    "hot-clearance",
    "interference",
    "ready",
    "reamer-window",
    "size",
  ]);
});

test("each has a tooltip that names its entry, in the words of the hint where they are numbers", () => {
  for (const { open, hint } of all) {
    if (hint.source === undefined) continue;
    const tooltip = hintWorking(open, hint.source);
    expect(tooltip).toContain(`**${hint.source.ref}**`);
    const numbers = /^[\d.]+(?: to [\d.]+)? (?:in|mm)(?=,)/.exec(
      hint.parts[0]?.text ?? "",
    );
    if (numbers !== null) expect(tooltip).toContain(numbers[0]);
  }
});

test("what can be clicked leads to the name of an entry", () => {
  const clicked = all.flatMap(({ hint }) =>
    hint.parts.flatMap(({ text, target }) =>
      target === undefined ? [] : [{ text, target }],
    ),
  );
  expect(clicked.length).toBeGreaterThan(3);
  for (const { target } of clicked) {
    const name = slice(texts.get(target.path) ?? "", target.range);
    expect(name).toMatch(/^\p{L}[\p{L}\d-]*$/u);
    const line = texts.get(target.path)?.split("\n")[target.range.start.line];
    expect(line).toMatch(new RegExp(`^[a-z]+ ${name}\\b`, "u"));
  }
});

// What is offered about findings. `|` marks the caret in the texts.
import { expect, test } from "vitest";
import { fixAll, quickFixes } from "../../server/ide/code-actions.ts";
import type { Range } from "../../server/ide/position.ts";
import type { Finding, Fix, Place } from "../../server/model/result.ts";
import { findingsIn } from "../../server/rules/check.ts";
import { JOB_PATH, opened } from "./opened.ts";

/** The text without its caret, and where that was. */
function withCaret(marked: string): {
  readonly text: string;
  readonly caret: Range;
} {
  const before = marked.slice(0, marked.indexOf("|")).split("\n");
  const at = { line: before.length - 1, character: before.at(-1)?.length ?? 0 };
  return { text: marked.replace("|", ""), caret: { start: at, end: at } };
}

function offered(marked: string): readonly string[] {
  const { text, caret } = withCaret(marked);
  return quickFixes(findingsIn(opened(text)), caret).map(
    ({ fix, preferred, finding }) =>
      `${finding.code}: ${fix.title}${preferred ? " *" : ""}`,
  );
}

const JOB = "job j\n  units inch\npart p\njournal a on p\n";

test("the fixes of the finding at the caret, the one safe one first choice", () => {
  expect(offered(`${JOB}  limits 0,87|40 to 0.8745\n`)).toEqual([
    "number-comma: Write a point: 0.8740 *",
  ]);
  expect(offered(`${JOB}  limits |0,8740 to 0.8745\n`)).toHaveLength(1);
  expect(offered(`${JOB}  limits 0,8740| to 0.8745\n`)).toHaveLength(1);
});

test("two readings of one number are a choice, and neither is preferred", () => {
  expect(offered(`${JOB}  limits 1,2|50 to 1.500\n`)).toEqual([
    "number-comma: Write a point: 1.250",
    "number-comma: Take the comma out: 1250",
  ]);
});

test("a digit for the letter that was typed is offered, and is no first choice", () => {
  expect(offered(`${JOB}  read O.87|430 in\n`)).toEqual([
    "line-damaged: Write `0.87430`",
  ]);
  expect(offered(`${JOB}  read 0.8743l| 0.8742\n`)).toEqual([
    "line-damaged: Write `0.87431`",
  ]);
  expect(offered(`${JOB}  read O| 0.87430 in\n`)).toEqual([]);
});

test("nothing is offered where the caret is elsewhere", () => {
  expect(offered(`${JOB}  limits 0,8740 to 0.8|745\n`)).toEqual([]);
  expect(offered(`${JOB}|  limits 0,8740 to 0.8745\n`)).toEqual([]);
});

const place = (
  line: number,
  start: number,
  end: number,
  file = JOB_PATH,
): Place => ({ file, line, start, end });
const fix = (safe: boolean, ...edits: Fix["edits"]): Fix => ({
  title: "mend",
  safe,
  edits,
});
const finding = (...fixes: readonly Fix[]): Finding => ({
  code: "x",
  level: "error",
  place: place(0, 0, 1),
  message: "",
  entry: null,
  related: [],
  fixes,
  accepted: null,
});

test("all at once takes the safe ones that stay in the file and out of each other's way", () => {
  const first = { place: place(1, 0, 4), text: "a" };
  const overlapping = { place: place(1, 3, 6), text: "b" };
  const touching = { place: place(1, 4, 8), text: "c" };
  const apart = { place: place(1, 5, 8), text: "d" };
  const below = { place: place(2, 0, 4), text: "e" };
  const elsewhere = { place: place(9, 0, 1, "/shop/crib.thou"), text: "f" };
  const all = [
    finding(fix(true, first)),
    finding(fix(true, overlapping)),
    finding(fix(true, touching)),
    finding(fix(true, apart)),
    finding(fix(false, below)),
    finding(fix(true, elsewhere)),
    finding(fix(true, elsewhere, below)),
    finding(
      fix(true, { ...below, text: "1" }),
      fix(true, { ...below, text: "2" }),
    ),
    finding(fix(true)),
    finding(fix(false, below), fix(true, { place: place(3, 0, 0), text: "g" })),
  ];
  expect(fixAll(all, JOB_PATH).map(({ text }) => text)).toEqual([
    "a",
    "d",
    "g",
  ]);
});

test("a fix of several edits is taken whole or not at all", () => {
  const two = fix(
    true,
    { place: place(1, 0, 1), text: "a" },
    { place: place(5, 0, 1), text: "b" },
  );
  const other = fix(true, { place: place(5, 0, 2), text: "c" });
  expect(
    fixAll([finding(other), finding(two)], JOB_PATH).map(({ text }) => text),
  ).toEqual(["c"]);
});

test("all at once mends a record as one by one does", () => {
  const text = `${JOB}  limits 0,8740 to 0,8745\n  length 1,2500\n`;
  const edits = fixAll(findingsIn(opened(text)), JOB_PATH);
  const lines = text.split("\n");
  for (const { place: at, text: by } of [...edits].reverse())
    lines[at.line] =
      (lines[at.line] ?? "").slice(0, at.start) +
      by +
      (lines[at.line] ?? "").slice(at.end);
  expect(lines.join("\n")).toBe(
    `${JOB}  limits 0.8740 to 0.8745\n  length 1.2500\n`,
  );
});

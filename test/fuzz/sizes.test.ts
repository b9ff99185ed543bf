// Records far larger than any shop's: a sentence in bounded time. No clock is read: what grew with the square of a line's length, or with the cube of
// a chain's, took minutes to hours for these sizes, and the test's own time would run out. docs/language.md says the limits.
import { expect, test } from "vitest";
import { readLines } from "../../grammar/lines.ts";
import { formatText } from "../../grammar/print.ts";
import { completionAt } from "../../server/ide/completion.ts";
import { hintsIn } from "../../server/ide/hints.ts";
import { hoverAt } from "../../server/ide/hover.ts";
import { tokensIn } from "../../server/ide/semantic-tokens.ts";
import { symbolsIn } from "../../server/ide/symbols.ts";
import { MOST_LINES } from "../../server/model/file-entries.ts";
import { giveUses } from "../../server/model/give-uses.ts";
import { MOST_FILES } from "../../server/model/uses.ts";
import { createProject } from "../../server/rules/check.ts";
import { folderWith, thou } from "../cli/in-process.ts";

/** Characters of a line; a megabyte was tried by hand. */
const LONG = 100_000;

/** Beginnings of lines, each read by another rule, and what is repeated after them. */
const HEADS = ["  note ", "journal ", "", "  limits "];
const PIECES = ['"a ', ",", "9", "0.8742 ", "x,", "± "];

test.each(HEADS)("long lines after %j", (head) => {
  for (const piece of PIECES) {
    const line = head + piece.repeat(LONG / piece.length);
    const text = `job a\n  units mm\npart x\njournal j on x\n${line}\n`;
    const file = readLines(text);
    expect(formatText(file).length).toBeLessThanOrEqual(text.length + 2);
    const project = createProject({ root: "/" });
    project.setFile("/a.thou", file);
    for (const missing of project.missingUses("/a.thou"))
      project.setFile(missing, null);
    const { findings } = project.check("/a.thou");
    for (const { message } of findings)
      expect(message.length).toBeLessThan(500);
    const open = project.open("/a.thou");
    if (open === undefined) throw new Error("it is not there");
    const last = { line: 4, character: line.length };
    completionAt(open, last, "2026-11-05");
    hoverAt(open, last);
    symbolsIn(open);
    hintsIn(open, 0, 5);
    expect([...tokensIn(file)].length).toBeGreaterThan(0);
  }
});

test("a line that is too long says how long it is, and the others are read", () => {
  const project = createProject({ root: "/" });
  const text = `job a\n  units mm\npart x\n  note "${"x".repeat(3000)}"\njournal j on x\n  limits 10 to 9\n`;
  project.setFile("/a.thou", readLines(text));
  const { findings } = project.check("/a.thou");
  expect(findings.map(({ code }) => code)).toEqual([
    "line-damaged",
    "range-reversed",
  ]);
  expect(findings[0]?.message).toBe(
    "This line has 3,007 characters, and a line is read up to 2,000: shorten it, or make several of it.",
  );
  expect(findings[0]?.place).toMatchObject({ line: 3, start: 2002, end: 3009 });
});

/** A crib that uses the next, so many of them; the last uses what `end` says. */
function chain(length: number, end: string): ReadonlyMap<string, string> {
  return new Map(
    Array.from({ length }, (_, at) => [
      `/c${at}.thou`,
      `shop c${at}\n  units mm\n  use "${at + 1 === length ? end : `c${at + 1}.thou`}"\nreamer r${at}\n  size 10\n`,
    ]),
  );
}

test.each([
  ["that ends in nothing", "gone.thou", "file-missing"],
  ["that ends where it began", "c0.thou", "use-loop"],
])(
  "as many cribs as are read, each using the next, %s",
  async (_, end, code) => {
    const cribs = MOST_FILES - 2; // with the job, and the one that is gone
    const texts = chain(cribs, end);
    const project = createProject({ root: "/" });
    project.setFile(
      "/job.thou",
      readLines('job a\n  units mm\n  use "c0.thou"\npart x\n'),
    );
    let given = 0;
    await giveUses(project, "/job.thou", (path) => {
      const text = texts.get(path);
      project.setFile(path, text === undefined ? null : readLines(text));
      given += text === undefined ? 0 : 1;
    });
    expect(given).toBe(cribs);
    expect(project.check("/job.thou").findings).toEqual([]);
    expect(
      project
        .check(`/c${cribs - 1}.thou`)
        .findings.map((finding) => finding.code),
    ).toContain(code);
  },
);

test("ten thousand entries, by the command line", async () => {
  const entries = Array.from(
    { length: 10_000 },
    (_, at) => `part p${at}\n  serial ${at}\n`,
  ).join("");
  const cwd = await folderWith({
    "a.thou": `job a\n  units mm\n${entries}part p9\n`,
  });
  const { code, out } = await thou(["check", "a.thou", "--format", "json"], {
    cwd,
    parts: { createProject: () => createProject({ root: "" }) },
  });
  expect(code).toBe(1);
  expect(out).toContain('"name-twice"');
});

const HEAD = "job a\n  units mm\npart x\n";

/** A record of so many lines, each of them one that `write` makes of its number. */
function linesOf(lines: number, write: (at: number) => string): string {
  return (
    HEAD +
    Array.from({ length: lines - 4 }, (_, at) => `${write(at)}\n`).join("")
  );
}

function checked(text: string) {
  const project = createProject({ root: "/" });
  project.setFile("/a.thou", readLines(text));
  for (const missing of project.missingUses("/a.thou"))
    project.setFile(missing, null);
  const open = project.open("/a.thou");
  if (open === undefined) throw new Error("it is not there");
  return { project, open, findings: project.check("/a.thou").findings };
}

test("a file of more lines than are read says so once, at the entry that passes the limit, and guesses nothing of the rest", () => {
  const name = (at: number): string => `part p${at}`;
  const last = linesOf(MOST_LINES, name);
  expect(checked(last).findings).toEqual([]);
  // it refers to what stands past the limit, and to what stands nowhere that is read
  const over = linesOf(100_000, (at) =>
    at === 0 ? "journal j on p90000\n  limits 10 to 9" : name(at),
  );
  const { project, open, findings } = checked(over);
  expect(findings.map(({ code, place }) => [code, place.line])).toEqual([
    ["range-reversed", 4],
    ["line-damaged", MOST_LINES],
  ]);
  expect(findings[1]?.message).toBe(
    "This file has 100,001 lines, and a file is read up to its line 50,000: nothing is known from this entry on. Take what stands from here into files of its own; a \u2018use\u2019 under the job brings them together.".replace(
      /[\u2018\u2019]/gu,
      "`",
    ),
  );
  expect(open.file.entries.length).toBe(MOST_LINES - 2 + 1); // and the one that stands for the rest
  // past it every question has an answer
  const there = { line: 90_000, character: 6 };
  completionAt(open, there, "2026-11-05");
  hoverAt(open, there);
  symbolsIn(open);
  hintsIn(open, 89_000, 90_000);
  // and what was cut down to the limit is read afresh
  project.setFile("/a.thou", readLines(last));
  expect(project.check("/a.thou").findings).toEqual([]);
});

test("one entry of more lines than are read is not read", () => {
  const { findings } = checked(linesOf(60_000, () => '  note "x"'));
  expect(findings.map(({ code, place }) => [code, place.line])).toEqual([
    ["line-damaged", 2],
  ]);
});

// as long as may be; each made one lookup of all for each line, or nothing, before the limit stood
test.each([
  ["parts of one name", () => "part y", "name-twice"],
  ["facts of one sort", () => "  serial 5", "fact-twice"],
  ["words that are none", (at: number) => `zzz${at}`, "word-unknown"],
  ["bad names", () => "journal 5", "line-damaged"],
] as const)("fifty thousand lines: %s", (_, write, code) => {
  const { findings } = checked(linesOf(MOST_LINES, write));
  expect(findings.length).toBeGreaterThan(MOST_LINES - 10);
  expect(findings.at(-1)?.code).toBe(code);
});

test("signs that no record holds, and ends of lines of every sort: nothing throws, and every character is kept", () => {
  const text = `job a\r  units mm\n\rpart x\r\n  note "\u{0}\u{D800}"\u{2028}\n\u{0}\n\u{DC00}\r\r\n`;
  const file = readLines(text.repeat(2000));
  expect(file.lines.map(({ text: line, eol }) => line + eol).join("")).toBe(
    text.repeat(2000),
  );
  const { findings } = checked(text.repeat(2000));
  expect(findings.length).toBeGreaterThan(2000);
});

// Grammar and model: a damaged text is split, read, laid out and checked; what follows edits must be what is read afresh.
import { isDeepStrictEqual } from "node:util";
import { TextDocument } from "vscode-languageserver-textdocument";
import { editLines, readLines, type FileLines } from "../../grammar/lines.ts";
import { formatText } from "../../grammar/print.ts";
import { tokenize } from "../../grammar/tokens.ts";
import type { FileCheck } from "../../server/model/result.ts";
import { createProject } from "../../server/rules/check.ts";
import { damaged } from "./damage.ts";
import type { Random } from "./random.ts";

const PATH = "/shop/job.thou";

function textOf(file: FileLines): string {
  return file.lines.map(({ text, eol }) => text + eol).join("");
}

/** The words of each line that has any, and its comment. */
function wordsOf(file: FileLines): readonly string[] {
  return file.lines
    .map(({ body, text, comment }) =>
      [
        ...tokenize(body)
          .filter(({ kind }) => kind !== "blank")
          .map(({ start, end }) => body.slice(start, end)),
        text.slice(comment).trimEnd(),
      ].join("\u{1}"),
    )
    .filter((line) => line !== "");
}

function projectOf(files: ReadonlyMap<string, FileLines>) {
  const project = createProject({ root: "/" });
  for (const [path, lines] of files) project.setFile(path, lines);
  return project;
}

function assertSound(check: FileCheck, text: string): void {
  const document = TextDocument.create("file:///x", "thou", 1, text);
  for (const finding of check.findings) {
    const { place, message, fixes, related } = finding;
    for (const each of [
      place,
      ...related.map((other) => other.place),
      ...fixes.flatMap(({ edits }) => edits.map((edit) => edit.place)),
    ]) {
      if (each.file !== PATH) continue;
      for (const character of [each.start, each.end]) {
        const at = document.positionAt(
          document.offsetAt({ line: each.line, character }),
        );
        if (at.line !== each.line || at.character !== character)
          throw new Error(
            `a place outside of the text: ${JSON.stringify(each)} ${JSON.stringify(finding)}`,
          );
      }
    }
    if (message === "" || 1000 < message.length || /\p{Cs}/u.test(message))
      throw new Error(`no sentence: ${message.slice(0, 2000)}`);
  }
  for (const { low, high, nominal } of check.results)
    for (const each of [low, nominal, high])
      if (each !== null && !Number.isFinite(each))
        throw new Error("a result that is no number");
}

/** @returns how many texts were read. @throws Error for what can't be true of them */
export function tryReading(
  text: string,
  random: Random,
  others: readonly string[],
): number {
  let file = readLines(text);
  if (textOf(file) !== text) throw new Error("a character is lost");
  const laid = formatText(file);
  const again = readLines(laid);
  if (formatText(again) !== laid)
    throw new Error("laid out twice is not as once");
  if (!isDeepStrictEqual(wordsOf(file), wordsOf(again)))
    throw new Error("the layout changed a word");

  const crib = readLines(random.pick(others));
  const files = new Map([
    [PATH, file],
    ["/shop/crib.thou", crib],
  ]);
  const project = projectOf(files);
  for (const missing of project.missingUses(PATH))
    project.setFile(missing, null);
  assertSound(project.check(PATH), text);

  let read = 1;
  const mirror = TextDocument.create("file:///x", "thou", 1, text);
  for (let left = 2 + random.below(8); 0 < left; left--) {
    const length = mirror.getText().length;
    const start = random.below(length + 1);
    const end = random.chance(0.5) ? start : start + random.below(60);
    const other = random.pick(others);
    const from = random.below(other.length);
    const piece = random.chance(0.6)
      ? random.pick([
          "",
          "x",
          "0",
          "\n",
          "\r",
          "\n\n",
          "  ",
          '"',
          "#",
          "\u{FEFF}",
          "\u{2028}",
        ])
      : damaged(other.slice(from, from + 120), random, others).slice(0, 500);
    const range = {
      start: mirror.positionAt(start),
      end: mirror.positionAt(end),
    };
    TextDocument.update(mirror, [{ range, text: piece }], mirror.version + 1);
    file = editLines(file, { ...range, text: piece });
    project.setFile(PATH, file);
    if (random.chance(0.6)) project.check(PATH);
    read++;
  }
  const now = mirror.getText();
  if (textOf(file) !== now)
    throw new Error("lines that follow edits are another text");
  if (!isDeepStrictEqual(file, readLines(now)))
    throw new Error("lines that follow edits are not those read afresh");
  for (const missing of project.missingUses(PATH))
    project.setFile(missing, null);
  const check = project.check(PATH);
  assertSound(check, now);
  const afresh = projectOf(
    new Map([
      [PATH, readLines(now)],
      ["/shop/crib.thou", crib],
    ]),
  );
  for (const missing of afresh.missingUses(PATH)) afresh.setFile(missing, null);
  if (!isDeepStrictEqual(check, afresh.check(PATH)))
    throw new Error("a check after edits is not what it is afresh");
  return read;
}

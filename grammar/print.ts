// Writes lines in the canonical layout: facts two blanks in, one blank between words, an empty line before an entry kept as one.
// Numbers, units and texts stay as written; damaged lines and line ends stay as they are. It aligns nothing, so that a change of one
// line is a change of one line.
import { isIndented, type FileLines, type Line } from "./lines.ts";
import { parseBody } from "./parse.ts";
import { tokenize } from "./tokens.ts";
import { type EntryKind, lineSpec } from "./vocabulary.ts";

/** A line that the layout changes, by its number from 0; undefined takes the line away. */
export interface LineChange {
  readonly line: number;
  readonly text: string | undefined;
}

/** The whole text in canonical layout. */
export function formatText(file: FileLines): string {
  const changes = new Map(
    formatChanges(file).map((change) => [change.line, change.text]),
  );
  let text = "";
  file.lines.forEach((line, number) => {
    const changed = changes.has(number) ? changes.get(number) : line.text;
    if (changed !== undefined) text += changed + line.eol;
  });
  return text;
}

/** Only the lines that differ from the canonical layout. */
export function formatChanges(file: FileLines): readonly LineChange[] {
  const changes: LineChange[] = [];
  let number = 0;
  let blanksAbove = 0;
  for (const block of file.blocks) {
    for (const line of block.lines) {
      const text = formatLine(
        line,
        block.kind,
        line === block.lines[0] && block.opens,
      );
      const isBlank = text === "";
      // of several empty lines one stays; those that end the file stay, since whoever types there put them in
      const extra =
        isBlank && 0 < blanksAbove && !onlyBlanksFollow(file, number);
      blanksAbove = isBlank ? blanksAbove + 1 : 0;
      if (extra) changes.push({ line: number, text: undefined });
      else if (text !== line.text) changes.push({ line: number, text });
      number++;
    }
  }
  return changes;
}

function onlyBlanksFollow(file: FileLines, number: number): boolean {
  for (let at = number; at < file.lines.length; at++)
    if (file.lines[at]?.text.trim() !== "") return false;
  return true;
}

function formatLine(
  line: Line,
  kind: EntryKind | undefined,
  opens: boolean,
): string {
  const mark = line.text.startsWith("\u{FEFF}") ? "\u{FEFF}" : "";
  const comment = line.text.slice(line.comment).replace(/[ \t\u{A0}]+$/u, "");
  if (line.body === "") {
    if (comment === "") return mark;
    return mark + (isIndented(line) ? "  " : "") + comment;
  }
  const rule = lineSpec(kind, line.word, opens)?.rule;
  if (rule === undefined || opens === isIndented(line)) return line.text;
  const body = formatBody(line.body);
  const text =
    mark + (opens ? "" : "  ") + body + (comment === "" ? "" : `  ${comment}`);
  // spares a look: most lines stand as they should
  return text === line.text ||
    parseBody(line.body, rule).damagedAt === undefined
    ? text
    : line.text;
}

/** One blank between words, none before a comma, one after it unless it stands in a number. */
export function formatBody(body: string): string {
  let out = "";
  let glued = true;
  for (const token of tokenize(body)) {
    const text = body.slice(token.start, token.end);
    if (token.kind === "blank") {
      glued = false;
      continue;
    }
    if (!glued && text !== ",") out += " ";
    out += text;
    glued = true;
  }
  return out;
}

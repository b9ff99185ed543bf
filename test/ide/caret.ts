// Opens texts in which `|` marks the caret, as the editor would have them. `¦` stands for an upright stroke of the text itself.
import { readLines } from "../../grammar/lines.ts";
import type { Position, Range } from "../../server/ide/position.ts";
import { createFiles, type OpenFile } from "../../server/model/project.ts";

export interface AtCaret {
  readonly open: OpenFile;
  readonly position: Position;
  /** Without the mark. */
  readonly text: string;
}

/** A job with the caret, and the files beside it by name. */
export function atCaret(
  marked: string,
  others: Readonly<Record<string, string>> = {},
  path = "job.thou",
): AtCaret {
  const at = marked.indexOf("|");
  if (at === -1 || marked.includes("|", at + 1))
    throw new Error("one | marks the caret");
  const before = marked.slice(0, at).replaceAll("¦", "|");
  const text = (marked.slice(0, at) + marked.slice(at + 1)).replaceAll(
    "¦",
    "|",
  );
  const lines = before.split("\n");
  return {
    open: opened({ ...others, [path]: text }, path),
    position: {
      line: lines.length - 1,
      character: lines.at(-1)?.length ?? 0,
    },
    text,
  };
}

export function opened(
  texts: Readonly<Record<string, string>>,
  path: string,
): OpenFile {
  const files = createFiles({ root: "" });
  for (const [each, text] of Object.entries(texts))
    files.setFile(each, readLines(text));
  const open = files.open(path);
  if (open === undefined) throw new Error(`${path} is not there`);
  return open;
}

/** Several files opened each as a record of its own, over one set of files. */
export function openedEach(
  texts: Readonly<Record<string, string>>,
): Readonly<Record<string, OpenFile>> {
  const files = createFiles({ root: "" });
  for (const [each, text] of Object.entries(texts))
    files.setFile(each, readLines(text));
  return Object.fromEntries(
    Object.keys(texts).flatMap((path) => {
      const open = files.open(path);
      return open === undefined ? [] : [[path, open]];
    }),
  );
}

export function slice(text: string, { start, end }: Range): string {
  const lines = text.split("\n");
  if (start.line === end.line)
    return lines[start.line]?.slice(start.character, end.character) ?? "";
  return [
    lines[start.line]?.slice(start.character),
    ...lines.slice(start.line + 1, end.line),
    lines[end.line]?.slice(0, end.character),
  ].join("\n");
}

/** The text with edits made, each of one line. */
export function edited(
  text: string,
  edits: readonly { readonly range: Range; readonly text: string }[],
): string {
  const lines = text.split("\n");
  const fromTheEnd = [...edits].sort(
    (a, b) =>
      b.range.start.line - a.range.start.line ||
      b.range.start.character - a.range.start.character,
  );
  for (const { range, text: by } of fromTheEnd) {
    const line = lines[range.start.line] ?? "";
    lines[range.start.line] =
      line.slice(0, range.start.character) +
      by +
      line.slice(range.end.character);
  }
  return lines.join("\n");
}

/** A crib and a job that the tests of the ide share. Invented. */
export const CRIB = `shop harbour
  units inch

gauge mic-1
  kind micrometer
  resolution 0.00001
  uncertainty 0.00004
  due 2027-05-14
gauge bore-1
  kind bore-gauge
  resolution 0.00001
  uncertainty 0.00006
  set with mic-1

reamer r-875
  size 0.8750
  read 0.87503 0.87502 with mic-1
  oversize bronze-c932 +0.0000 to +0.0002
  drive hand
reamer r-8755
  size 0.8755
  read 0.87538 0.87540 with mic-1
  oversize bronze-c932 +0.0000 to +0.0002
  drive hand

pilot p-870
  od 0.8697 to 0.8699
  length 4.5

material bronze-local
  expansion 18.0 um/m-K

route line-ream
  step mark
  step ream
  step dry-fit

step mark
  do "Mark which way round every part sits"
step ream
  do "Ream from the pilot, forward turns only"
`;

export const JOB = `job winch-layshaft
  units inch
  use "crib.thou"
  opened 2026-11-02 by AK
  verdict guarded
  follow line-ream

part layshaft
  material steel-4140
part case
  material aluminium-356-t6

journal front on layshaft
  limits 0.8740 to 0.8745 from "yard drawing L-204"
  read near 0.87432 0.87428 0.87430 with mic-1 at 72 F
  read far 0.87435 0.87431 0.87432 with mic-1 at 68 F
journal rear on layshaft
  limits 0.8740 to 0.8745

hole front in case
  limits 1.0000 to 1.0005
  depth 1.350 blind
hole rear in case
  limits 1.0000 to 1.0005
  depth through

bush front in hole front
  material bronze-c932
  od 1.0011 to 1.0012
bush rear in hole rear
  material bronze-c932
  od 1.0011 to 1.0012

bore front in bush front
bore rear in bush rear

press front of bush front in hole front
  want 0.6 to 1.2 thou
press rear of bush rear in hole rear
  want 0.6 to 1.2 thou

fit front of journal front in bore front
  want 0.0008 to 0.0016
  runs 240 rpm
  load 180 lbf steady

line layshaft
  bore rear from 5.50 to 6.75
  bore front from 0 to 1.25
  ream with r-8755
  pilot p-870 in bore front for bore rear

step press-in
  presses press front
  done 2026-11-04 by "Bench 2"
step ream
  cuts line layshaft
step dry-fit
  checks fit front
`;

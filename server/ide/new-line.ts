// What a line that was just begun needs: the indent of a fact below an opening line or another fact. Nothing else moves, and a line that
// opens an entry keeps the margin.
import {
  blockAt,
  isIndented,
  type Edit,
  type FileLines,
  type Line,
  lineAt,
} from "../../grammar/lines.ts";
import {
  entrySpec,
  factSpec,
  type EntryKind,
} from "../../grammar/vocabulary.ts";
import type { Position } from "./position.ts";

/** Facts stand so in the canonical layout. */
const INDENT = "  ";

/** The edits of a line begun at a position; none where it stands right, or where nobody can tell. */
export function newLineEdits(
  file: FileLines,
  { line: at }: Position,
): readonly Edit[] {
  const line = lineAt(file, at);
  const before = lineAt(file, at - 1);
  if (line === undefined || before === undefined || before.body === "")
    return [];
  const above = file.blocks[blockAt(file, at - 1)];
  if (above?.opens !== true || above.kind === undefined) return [];
  // an opening line that is set in by mistake says nothing of where its facts should stand
  if (isIndented(before) && before === above.lines[0]) return [];
  if (!mayBeFact(above.kind, line)) return [];
  const blanks = line.text.slice(0, line.body === "" ? undefined : line.indent);
  return blanks === INDENT
    ? []
    : [
        {
          start: { line: at, character: 0 },
          end: { line: at, character: blanks.length },
          text: INDENT,
        },
      ];
}

/** An empty line, or a fact of the entry; a remark, and a word that may open the next entry, stay where they were put. */
function mayBeFact(kind: EntryKind, line: Line): boolean {
  const { body, comment, text, word } = line;
  if (body === "") return comment === text.length;
  if (factSpec(kind, word) === undefined) return false;
  return entrySpec(word) === undefined || isIndented(line);
}

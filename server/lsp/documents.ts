// The open documents, kept as lines that follow each change: positions are lines and characters on both sides, so no text is kept beside
// them and none is split twice.
import {
  TextDocuments,
  type TextDocumentContentChangeEvent,
  type TextDocumentsConfiguration,
} from "vscode-languageserver";
import {
  editLines,
  lineCount,
  readLines,
  type Edit,
  type FileLines,
} from "../../grammar/lines.ts";

export interface Document {
  readonly uri: string;
  readonly version: number;
  readonly lines: FileLines;
  /** The line that the last change typed on; undefined where that change was no typing. */
  readonly typedOn: number | undefined;
}

/** What one keystroke puts in: a character, or a pair where the editor closes a quote by itself. */
const MOST_TYPED = 2;

export const documentsConfiguration: TextDocumentsConfiguration<Document> = {
  create: (uri, _language, version, text) => ({
    uri,
    version,
    lines: readLines(text),
    typedOn: undefined,
  }),
  update: ({ uri, lines }, changes, version) => ({
    uri,
    version,
    lines: changes.reduce(applyChange, lines),
    typedOn: typedLine(changes, lines),
  }),
};

export function createDocuments(): TextDocuments<Document> {
  return new TextDocuments(documentsConfiguration);
}

function applyChange(
  lines: FileLines,
  change: TextDocumentContentChangeEvent,
): FileLines {
  return "range" in change
    ? editLines(lines, editOf(change))
    : readLines(change.text);
}

function editOf({
  range,
  text,
}: Extract<TextDocumentContentChangeEvent, { range: unknown }>): Edit {
  return { start: range.start, end: range.end, text };
}

/** A keystroke changes a character or two of one line; whatever changes more was put there whole. */
function typedLine(
  changes: readonly TextDocumentContentChangeEvent[],
  file: FileLines,
): number | undefined {
  const [change, another] = changes;
  if (change === undefined || another !== undefined || !("range" in change))
    return undefined;
  const { start, end } = change.range;
  const isTyped =
    start.line === end.line &&
    end.character - start.character <= 1 &&
    change.text.length <= MOST_TYPED &&
    !/[\r\n]/u.test(change.text);
  return isTyped && start.line < lineCount(file) ? start.line : undefined;
}

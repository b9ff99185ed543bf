// What is answered from the lines of an open document alone, without waiting for any other file: folds, words, layout, selections, the indent
// of a new line. Of a document that is not open there is nothing to say.
import type {
  DocumentFormattingParams,
  DocumentOnTypeFormattingParams,
  DocumentRangeFormattingParams,
  FoldingRange,
  FoldingRangeParams,
  SelectionRange,
  SelectionRangeParams,
  SemanticTokens,
  SemanticTokensDelta,
  SemanticTokensDeltaParams,
  SemanticTokensParams,
  SemanticTokensRangeParams,
  TextEdit,
} from "vscode-languageserver";
import type { FileLines } from "../../grammar/lines.ts";
import { foldsIn } from "../ide/folding.ts";
import { formatEdits } from "../ide/formatting.ts";
import { newLineEdits } from "../ide/new-line.ts";
import type { Range } from "../ide/position.ts";
import { selectionsAt } from "../ide/selection.ts";
import { foldOf, rangeOf, textEditOf } from "./convert.ts";
import { createTokenAnswers, encoded } from "./token-answers.ts";
import type { Workspace } from "./workspace.ts";

export function createLineAnswers(workspace: Pick<Workspace, "document">) {
  const tokens = createTokenAnswers();
  const linesOf = ({ uri }: { readonly uri: string }): FileLines | undefined =>
    workspace.document(uri)?.lines;

  return {
    folds({ textDocument }: FoldingRangeParams): FoldingRange[] {
      const lines = linesOf(textDocument);
      return lines === undefined ? [] : foldsIn(lines).map(foldOf);
    },
    tokens({ textDocument }: SemanticTokensParams): SemanticTokens {
      const lines = linesOf(textDocument);
      return lines === undefined
        ? { data: [] }
        : tokens.whole(textDocument.uri, lines);
    },
    tokensSince({
      textDocument,
      previousResultId,
    }: SemanticTokensDeltaParams): SemanticTokens | SemanticTokensDelta {
      const lines = linesOf(textDocument);
      return lines === undefined
        ? { data: [] }
        : tokens.since(textDocument.uri, lines, previousResultId);
    },
    tokensOn({
      textDocument,
      range,
    }: SemanticTokensRangeParams): SemanticTokens {
      const lines = linesOf(textDocument);
      return {
        data:
          lines === undefined
            ? []
            : encoded(lines, range.start.line, range.end.line),
      };
    },
    format({ textDocument }: DocumentFormattingParams): TextEdit[] {
      const lines = linesOf(textDocument);
      return lines === undefined ? [] : formatEdits(lines).map(textEditOf);
    },
    formatLines({
      textDocument,
      range,
    }: DocumentRangeFormattingParams): TextEdit[] {
      const lines = linesOf(textDocument);
      return lines === undefined
        ? []
        : formatEdits(lines, range.start.line, lastLine(range)).map(textEditOf);
    },
    newLine({
      textDocument,
      position,
      ch,
    }: DocumentOnTypeFormattingParams): TextEdit[] {
      const lines = linesOf(textDocument);
      return lines === undefined || ch !== "\n"
        ? []
        : newLineEdits(lines, position).map(textEditOf);
    },
    selections({
      textDocument,
      positions,
    }: SelectionRangeParams): SelectionRange[] | null {
      const lines = linesOf(textDocument);
      return lines === undefined
        ? null
        : positions.map((position) => nested(selectionsAt(lines, position)));
    },
    forget(uri: string): void {
      tokens.forget(uri);
    },
  };
}

/** A range that ends before a line's first character does not hold that line. */
function lastLine({
  start,
  end,
}: DocumentRangeFormattingParams["range"]): number {
  return end.character === 0 && start.line < end.line ? end.line - 1 : end.line;
}

/** The innermost range first, as the protocol nests them. */
function nested(ranges: readonly Range[]): SelectionRange {
  const whole = ranges.at(-1);
  const none = { line: 0, character: 0 };
  return ranges
    .slice(0, -1)
    .reduceRight<SelectionRange>(
      (parent, range) => ({ range: rangeOf(range), parent }),
      { range: rangeOf(whole ?? { start: none, end: none }) },
    );
}

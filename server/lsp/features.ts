// What the editor asks of one record, answered from the plain data of the ide: each question is one function. Which question comes by which
// request is server.ts's.
import type {
  CodeAction,
  CodeActionParams,
  CompletionList,
  CompletionParams,
  DocumentFormattingParams,
  DocumentRangeFormattingParams,
  DocumentSymbol,
  DocumentSymbolParams,
  FoldingRange,
  FoldingRangeParams,
  Hover,
  HoverParams,
  InlayHint,
  InlayHintParams,
  SemanticTokens,
  SemanticTokensDelta,
  SemanticTokensDeltaParams,
  SemanticTokensParams,
  SemanticTokensRangeParams,
  SymbolInformation,
  TextEdit,
} from "vscode-languageserver";
import { CompletionTriggerKind, MarkupKind } from "vscode-languageserver";
import type { FileLines } from "../../grammar/lines.ts";
import { completionAt } from "../ide/completion.ts";
import { foldsIn } from "../ide/folding.ts";
import { formatEdits } from "../ide/formatting.ts";
import { hintsIn, hintWorking, type HintSource } from "../ide/hints.ts";
import { hoverAt } from "../ide/hover.ts";
import { symbolsIn } from "../ide/symbols.ts";
import type { OpenFile } from "../model/project.ts";
import { actionsFor } from "./actions.ts";
import type { Clock } from "./clock.ts";
import {
  flatSymbolOf,
  foldOf,
  hintOf,
  rangeOf,
  symbolOf,
  textEditOf,
  type Conversion,
} from "./convert.ts";
import { offersOf } from "./offers.ts";
import { member, type Settings } from "./settings.ts";
import { createTokenAnswers, encoded } from "./token-answers.ts";
import type { Workspace } from "./workspace.ts";

export function createFeatures(
  workspace: Workspace,
  clock: Clock,
  conversion: Conversion,
  settings: () => Settings,
) {
  const tokens = createTokenAnswers();

  /** Asks a record; nothing where it is not there. */
  async function of<R>(
    { uri }: { readonly uri: string },
    ask: (open: OpenFile) => R,
    nothing: R,
  ): Promise<R> {
    const open = await workspace.open(uri);
    return open === undefined ? nothing : ask(open);
  }

  /** Asks the lines of an open document, which wait for no other file. */
  function ofLines<R>(
    { uri }: { readonly uri: string },
    ask: (lines: FileLines) => R,
    nothing: R,
  ): R {
    const document = workspace.document(uri);
    return document === undefined ? nothing : ask(document.lines);
  }

  return {
    hints: ({ textDocument, range }: InlayHintParams): Promise<InlayHint[]> =>
      settings().hints
        ? of(
            textDocument,
            (open) =>
              hintsIn(open, range.start.line, range.end.line).map((hint) =>
                hintOf(hint, open.path, conversion),
              ),
            [],
          )
        : Promise.resolve([]),
    async workingOf(hint: InlayHint): Promise<InlayHint> {
      const about = aboutHint(hint.data);
      if (about === undefined) return hint;
      const value = await of(
        about,
        (open) => hintWorking(open, about.source),
        undefined,
      );
      return value === undefined
        ? hint
        : { ...hint, tooltip: { kind: MarkupKind.Markdown, value } };
    },
    offers: ({
      textDocument,
      position,
      context,
    }: CompletionParams): Promise<CompletionList> =>
      of<CompletionList>(
        textDocument,
        (open) => {
          const isUnasked =
            context?.triggerKind === CompletionTriggerKind.TriggerCharacter;
          // quotes and slashes open files alone
          const offered =
            isUnasked && context.triggerCharacter !== " "
              ? []
              : completionAt(open, position, clock.today());
          return offersOf(offered, isUnasked, conversion.client);
        },
        { isIncomplete: false, items: [] },
      ),
    hover: ({ textDocument, position }: HoverParams): Promise<Hover | null> =>
      of<Hover | null>(
        textDocument,
        (open) => {
          const found = hoverAt(open, position);
          if (found === undefined) return null;
          const { markdown: value, range } = found;
          return {
            contents: { kind: MarkupKind.Markdown, value },
            range: rangeOf(range),
          };
        },
        null,
      ),
    symbols: ({
      textDocument,
    }: DocumentSymbolParams): Promise<DocumentSymbol[] | SymbolInformation[]> =>
      of<DocumentSymbol[] | SymbolInformation[]>(
        textDocument,
        (open) => {
          const all = symbolsIn(open);
          return conversion.client.nestedSymbols
            ? all.map(symbolOf)
            : all.map((each) => flatSymbolOf(each, textDocument.uri));
        },
        [],
      ),
    folds: ({ textDocument }: FoldingRangeParams): FoldingRange[] =>
      ofLines(textDocument, (lines) => foldsIn(lines).map(foldOf), []),
    tokens: ({ textDocument }: SemanticTokensParams): SemanticTokens =>
      ofLines(textDocument, (lines) => tokens.whole(textDocument.uri, lines), {
        data: [],
      }),
    tokensSince: ({
      textDocument,
      previousResultId,
    }: SemanticTokensDeltaParams): SemanticTokens | SemanticTokensDelta =>
      ofLines<SemanticTokens | SemanticTokensDelta>(
        textDocument,
        (lines) => tokens.since(textDocument.uri, lines, previousResultId),
        { data: [] },
      ),
    tokensOn: ({
      textDocument,
      range,
    }: SemanticTokensRangeParams): SemanticTokens =>
      ofLines(
        textDocument,
        (lines) => ({
          data: encoded(lines, range.start.line, range.end.line),
        }),
        { data: [] },
      ),
    format: ({ textDocument }: DocumentFormattingParams): TextEdit[] =>
      ofLines(textDocument, (lines) => formatEdits(lines).map(textEditOf), []),
    formatLines: ({
      textDocument,
      range,
    }: DocumentRangeFormattingParams): TextEdit[] =>
      ofLines(
        textDocument,
        (lines) =>
          formatEdits(lines, range.start.line, lastLine(range)).map(textEditOf),
        [],
      ),
    actions: ({
      textDocument,
      range,
      context,
    }: CodeActionParams): Promise<CodeAction[]> =>
      of(
        textDocument,
        (open) =>
          actionsFor(
            open,
            range,
            context,
            conversion,
            settings().levels,
            clock.today(),
          ),
        [],
      ),
    forget(uri: string): void {
      tokens.forget(uri);
    },
  };
}

export type Features = ReturnType<typeof createFeatures>;

/** A range that ends before a line's first character does not hold that line. */
function lastLine({ start, end }: InlayHintParams["range"]): number {
  return end.character === 0 && start.line < end.line ? end.line - 1 : end.line;
}

/** What a hint's own data says of it; it has been to the editor and back. */
function aboutHint(
  data: unknown,
): { readonly uri: string; readonly source: HintSource } | undefined {
  const uri = member(data, "uri");
  const source = member(data, "source");
  const ref = member(source, "ref");
  const kind = member(source, "kind");
  const number = member(source, "case");
  if (
    typeof uri !== "string" ||
    typeof ref !== "string" ||
    typeof kind !== "string"
  )
    return undefined;
  return {
    uri,
    source: { ref, kind, case: typeof number === "number" ? number : null },
  };
}

// What the editor asks of one record, answered from the plain data of the ide: each question is one function. Which question comes by which
// request is requests.ts's.
import {
  CompletionTriggerKind,
  MarkupKind,
  type CodeAction,
  type CodeActionParams,
  type CompletionList,
  type CompletionParams,
  type DocumentSymbol,
  type DocumentSymbolParams,
  type Hover,
  type HoverParams,
  type SignatureHelp,
  type SignatureHelpParams,
  type SymbolInformation,
} from "vscode-languageserver";
import { completionAt } from "../ide/completion.ts";
import { hoverAt } from "../ide/hover.ts";
import { signatureAt, type Signature } from "../ide/signature.ts";
import { symbolsIn } from "../ide/symbols.ts";
import { actionsFor } from "./actions.ts";
import type { Clock } from "./clock.ts";
import { flatSymbolOf, rangeOf, symbolOf, type Conversion } from "./convert.ts";
import { offersOf } from "./offers.ts";
import type { Settings } from "./settings.ts";
import type { Workspace } from "./workspace.ts";

/** Of a record that is not there, nothing is said. */
export function createFeatures(
  workspace: Pick<Workspace, "open">,
  clock: Pick<Clock, "today">,
  conversion: Conversion,
  settings: () => Pick<Settings, "levels">,
) {
  const { client } = conversion;
  return {
    async offers({
      textDocument,
      position,
      context,
    }: CompletionParams): Promise<CompletionList> {
      const open = await workspace.open(textDocument.uri);
      if (open === undefined) return { isIncomplete: false, items: [] };
      const isUnasked =
        context?.triggerKind === CompletionTriggerKind.TriggerCharacter;
      // quotes and slashes open files alone
      const offered =
        isUnasked && context.triggerCharacter !== " "
          ? []
          : completionAt(open, position, clock.today());
      return offersOf(offered, isUnasked, client);
    },
    async hover({
      textDocument,
      position,
    }: HoverParams): Promise<Hover | null> {
      const open = await workspace.open(textDocument.uri);
      const found = open === undefined ? undefined : hoverAt(open, position);
      return found === undefined
        ? null
        : {
            contents: { kind: MarkupKind.Markdown, value: found.markdown },
            range: rangeOf(found.range),
          };
    },
    async signature({
      textDocument,
      position,
    }: SignatureHelpParams): Promise<SignatureHelp | null> {
      const open = await workspace.open(textDocument.uri);
      const help = open === undefined ? undefined : signatureAt(open, position);
      return help === undefined
        ? null
        : {
            signatures: help.signatures.map((each) =>
              signatureOf(each, client.parameterRanges),
            ),
            activeSignature: help.active,
            activeParameter: help.parameter,
          };
    },
    async symbols({
      textDocument: { uri },
    }: DocumentSymbolParams): Promise<DocumentSymbol[] | SymbolInformation[]> {
      const open = await workspace.open(uri);
      const all = open === undefined ? [] : symbolsIn(open);
      return client.nestedSymbols
        ? all.map(symbolOf)
        : all.map((each) => flatSymbolOf(each, uri));
    },
    async actions({
      textDocument,
      range,
      context,
    }: CodeActionParams): Promise<CodeAction[]> {
      const open = await workspace.open(textDocument.uri);
      if (open === undefined) return [];
      const { levels } = settings();
      const today = clock.today();
      return actionsFor(open, range, context, conversion, levels, today);
    },
  };
}

function signatureOf(
  { label, markdown, parameters }: Signature,
  asRanges: boolean,
): SignatureHelp["signatures"][number] {
  return {
    label,
    documentation: { kind: MarkupKind.Markdown, value: markdown },
    parameters: parameters.map(({ start, end, markdown: value }) => ({
      label: asRanges ? [start, end] : label.slice(start, end),
      ...(value === ""
        ? {}
        : { documentation: { kind: MarkupKind.Markdown, value } }),
    })),
  };
}

// What may be written at the caret, as the protocol's completion items.
import {
  CompletionItemKind,
  InsertTextFormat,
  MarkupKind,
  type CompletionItem,
  type CompletionList,
} from "vscode-languageserver";
import type { Completion, CompletionKind } from "../ide/completion.ts";
import type { Client } from "./client.ts";
import { rangeOf } from "./convert.ts";

const KINDS: Readonly<Record<CompletionKind, CompletionItemKind>> = {
  entry: CompletionItemKind.Keyword,
  template: CompletionItemKind.Snippet,
  fact: CompletionItemKind.Property,
  word: CompletionItemKind.Keyword,
  reference: CompletionItemKind.Reference,
  material: CompletionItemKind.Class,
  unit: CompletionItemKind.Unit,
  class: CompletionItemKind.EnumMember,
  code: CompletionItemKind.EnumMember,
  caution: CompletionItemKind.EnumMember,
  date: CompletionItemKind.Value,
  file: CompletionItemKind.File,
  name: CompletionItemKind.Text,
  value: CompletionItemKind.Value,
};

/** What is worth a list by itself once a blank is typed; words and units wait for a letter, so that numbers are typed in peace. */
const AFTER_BLANK: ReadonlySet<CompletionKind> = new Set<CompletionKind>([
  "reference",
  "material",
  "caution",
  "code",
]);

/** @param afterBlank nobody asked: a blank was typed */
export function offersOf(
  completions: readonly Completion[],
  afterBlank: boolean,
  client: Client,
): CompletionList {
  const items = completions
    .filter(({ kind }) => !afterBlank || AFTER_BLANK.has(kind))
    .map((each) => itemOf(each, client));
  return { isIncomplete: false, items };
}

function itemOf(
  {
    label,
    kind,
    insertText,
    isSnippet,
    detail,
    documentation: value,
    sortText,
    filterText,
    replaceRange,
  }: Completion,
  client: Client,
): CompletionItem {
  const withStops = isSnippet && client.snippets;
  return {
    label,
    kind: KINDS[kind],
    sortText,
    filterText,
    textEdit: {
      range: rangeOf(replaceRange),
      newText: isSnippet && !withStops ? withoutStops(insertText) : insertText,
    },
    insertTextFormat: withStops
      ? InsertTextFormat.Snippet
      : InsertTextFormat.PlainText,
    ...(detail === "" ? {} : { detail }),
    ...(value === ""
      ? {}
      : { documentation: { kind: MarkupKind.Markdown, value } }),
  };
}

/** What a snippet reads with its tab stops taken as they are: the first of a choice, the text of a placeholder. */
export function withoutStops(snippet: string): string {
  return snippet
    .replace(/\$\{\d+\|((?:[^,|\\]|\\.)*)(?:,(?:[^|\\]|\\.)*)?\|\}/gu, "$1")
    .replace(/\$\{\d+(?::((?:[^}\\]|\\.)*))?\}/gu, "$1")
    .replace(/(?<!\\)\$\d+/gu, "")
    .replace(/\\([$}|,\\])/gu, "$1");
}

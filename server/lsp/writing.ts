// What helps while a record is written and looked through, besides completion and hover: the form of the line, its indent, what a
// selection grows to, files to use, names of the whole workspace, the lines above fits. Each question is one function.
import type {
  CancellationToken,
  CodeLens,
  CodeLensParams,
  CompletionList,
  DocumentOnTypeFormattingParams,
  SelectionRange,
  SelectionRangeParams,
  SignatureHelp,
  SignatureHelpParams,
  SymbolInformation,
  TextDocumentPositionParams,
  TextEdit,
  WorkspaceSymbolParams,
} from "vscode-languageserver";
import { MarkupKind } from "vscode-languageserver";
import { fileOffers, usedFileAt } from "../ide/completion-files.ts";
import { LENS_COMMANDS } from "../protocol.ts";
import { lensesIn, lensSays } from "../ide/lenses.ts";
import { newLineEdits } from "../ide/new-line.ts";
import type { Range } from "../ide/position.ts";
import { selectionsAt } from "../ide/selection.ts";
import { signatureAt, type Signature } from "../ide/signature.ts";
import { likeness } from "../ide/workspace-symbols.ts";
import {
  rangeOf,
  symbolKindOf,
  textEditOf,
  type Conversion,
} from "./convert.ts";
import { offersOf } from "./offers.ts";
import type { RecordList } from "./record-list.ts";
import { member, type Settings } from "./settings.ts";
import type { Workspace } from "./workspace.ts";

/** More names than anyone reads; the editor asks again with every letter. */
const MOST_SYMBOLS = 400;

export function createWriting(
  workspace: Workspace,
  records: RecordList,
  conversion: Conversion,
  settings: () => Settings,
) {
  const { client } = conversion;

  return {
    async signature({
      textDocument: { uri },
      position,
    }: SignatureHelpParams): Promise<SignatureHelp | null> {
      const open = await workspace.open(uri);
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
    newLine({
      textDocument: { uri },
      position,
      ch,
    }: DocumentOnTypeFormattingParams): TextEdit[] {
      const lines = workspace.document(uri)?.lines;
      return lines === undefined || ch !== "\n"
        ? []
        : newLineEdits(lines, position).map(textEditOf);
    },
    selections({
      textDocument: { uri },
      positions,
    }: SelectionRangeParams): SelectionRange[] | null {
      const lines = workspace.document(uri)?.lines;
      return lines === undefined
        ? null
        : positions.map((position) => nested(selectionsAt(lines, position)));
    },
    /** Files after `use`; undefined where the caret is not there. */
    async usableFiles(
      { textDocument: { uri }, position }: TextDocumentPositionParams,
      token: CancellationToken,
    ): Promise<CompletionList | undefined> {
      const open = await workspace.open(uri);
      const range = open === undefined ? undefined : usedFileAt(open, position);
      if (open === undefined || range === undefined) return undefined;
      const root = workspace.folderOf(open.path);
      const files = (await records.all(token)).map(({ path, entries }) => ({
        path,
        opens:
          entries.find(({ kind }) => kind === "shop" || kind === "job")?.ref ??
          "",
      }));
      return offersOf(fileOffers(open, range, files, root), false, client);
    },
    async symbols(
      { query }: WorkspaceSymbolParams,
      token: CancellationToken,
    ): Promise<SymbolInformation[]> {
      const found = (await records.all(token)).flatMap(({ path, entries }) =>
        entries.flatMap((entry) => {
          const like = likeness(query, entry.ref);
          return like === undefined ? [] : [{ path, entries, entry, like }];
        }),
      );
      return found
        .sort((a, b) => b.like - a.like)
        .slice(0, MOST_SYMBOLS)
        .map(({ path, entries, entry }) => {
          const [whole] = entries;
          return {
            name: entry.ref,
            kind: symbolKindOf(entry.kind),
            location: {
              uri: conversion.uriOf(path),
              range: rangeOf(entry.range),
            },
            ...(whole === undefined || whole === entry
              ? {}
              : { containerName: whole.ref }),
          };
        });
    },
    lenses({ textDocument: { uri } }: CodeLensParams): CodeLens[] {
      const lines = workspace.document(uri)?.lines;
      return lines === undefined || !settings().lenses
        ? []
        : lensesIn(lines).map(({ ref, range }) => ({
            range: rangeOf(range),
            data: { uri, ref },
          }));
    },
    async lensSays(lens: CodeLens): Promise<CodeLens> {
      const uri = member(lens.data, "uri");
      const ref = member(lens.data, "ref");
      if (typeof uri !== "string" || typeof ref !== "string") return lens;
      const open = await workspace.open(uri);
      const says =
        open === undefined ? undefined : lensSays(open, ref, settings().levels);
      // an editor shows no lens without a command, and an empty one is its sign for words alone
      if (says === undefined)
        return { ...lens, command: { title: "", command: "" } };
      const { title, finding } = says;
      const command =
        finding === undefined ? LENS_COMMANDS.uses : LENS_COMMANDS.finding;
      const range = finding === undefined ? lens.range : rangeOf(finding);
      return {
        ...lens,
        command: client.lensCommands
          ? { title, command, arguments: [uri, range.start] }
          : { title, command: "" },
      };
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

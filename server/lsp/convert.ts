// From plain data in editor words to the protocol's shapes. It decides nothing.
import { plain } from "../markup/markdown.ts";
import {
  DiagnosticSeverity,
  FoldingRangeKind,
  SymbolKind,
  type CreateFile,
  type Diagnostic,
  type DocumentSymbol,
  type FoldingRange,
  type InlayHint,
  type Location as ProtocolLocation,
  type Range as ProtocolRange,
  type SnippetTextEdit,
  type SymbolInformation,
  type TextDocumentEdit,
  type TextEdit,
  type WorkspaceEdit,
} from "vscode-languageserver";
import type { Edit } from "../../grammar/lines.ts";
import type { EntryKind } from "../../grammar/vocabulary.ts";
import type { ShownFinding } from "../ide/diagnostics.ts";
import type { Fold } from "../ide/folding.ts";
import type { Hint } from "../ide/hints.ts";
import type { Location, Range } from "../ide/position.ts";
import type { EntrySymbol } from "../ide/symbols.ts";
import { groupedBy } from "../model/groups.ts";
import type { Level, Place } from "../model/result.ts";
import type { Client } from "./client.ts";

/** What a conversion has to know of the editor and of the files. */
export interface Conversion {
  readonly client: Client;
  readonly uriOf: (path: string) => string;
  /** The version of an open document; null for a file that is not open. */
  readonly versionOf: (path: string) => number | null;
}

const SOURCE = "thou";

const SEVERITIES: Readonly<Record<Level, DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  information: DiagnosticSeverity.Information,
  hint: DiagnosticSeverity.Hint,
};

export function rangeOfPlace({ line, start, end }: Place): ProtocolRange {
  return { start: { line, character: start }, end: { line, character: end } };
}

export function rangeOf({ start, end }: Range): ProtocolRange {
  return { start: { ...start }, end: { ...end } };
}

export function locationOf(
  { path, range }: Location,
  { uriOf }: Conversion,
): ProtocolLocation {
  return { uri: uriOf(path), range: rangeOf(range) };
}

export function diagnosticOf(
  { code, level, place, message, related }: ShownFinding,
  { client, uriOf }: Conversion,
): Diagnostic {
  return {
    range: rangeOfPlace(place),
    severity: SEVERITIES[level],
    code,
    source: SOURCE,
    // the protocol's message is text, not Markdown
    message: plain(message),
    ...(client.codeDescription
      ? { codeDescription: { href: pageAddress(code) } }
      : {}),
    ...(client.relatedInformation && 0 < related.length
      ? {
          relatedInformation: related.map(({ place: at, message: said }) => ({
            location: { uri: uriOf(at.file), range: rangeOfPlace(at) },
            message: plain(said),
          })),
        }
      : {}),
  };
}

/** Where a finding's page is; the editor asks for what it says by `thou/page`. */
function pageAddress(code: string): string {
  return `thou-page:/${code}.md`;
}

export function hintOf(
  { position, parts, source }: Hint,
  path: string,
  conversion: Conversion,
): InlayHint {
  return {
    position: { ...position },
    label: parts.map(({ text, target }) => ({
      value: plain(text),
      ...(target === undefined
        ? {}
        : { location: locationOf(target, conversion) }),
    })),
    paddingLeft: true,
    ...(source === undefined
      ? {}
      : { data: { uri: conversion.uriOf(path), source } }),
  };
}

const SYMBOLS: Readonly<Record<EntryKind, SymbolKind>> = {
  job: SymbolKind.Package,
  shop: SymbolKind.Package,
  part: SymbolKind.Class,
  journal: SymbolKind.Field,
  hole: SymbolKind.Field,
  bush: SymbolKind.Field,
  bore: SymbolKind.Field,
  press: SymbolKind.Interface,
  fit: SymbolKind.Interface,
  line: SymbolKind.Array,
  stack: SymbolKind.Array,
  step: SymbolKind.Event,
  concession: SymbolKind.Key,
  reamer: SymbolKind.Object,
  pilot: SymbolKind.Object,
  gauge: SymbolKind.Object,
  material: SymbolKind.Constant,
  oil: SymbolKind.Constant,
  route: SymbolKind.Enum,
  lesson: SymbolKind.Constant,
};

export function symbolKindOf(kind: EntryKind): SymbolKind {
  return SYMBOLS[kind];
}

export function symbolOf({
  name,
  detail,
  kind,
  range,
  nameRange,
}: EntrySymbol): DocumentSymbol {
  return {
    name,
    kind: kind === undefined ? SymbolKind.Null : SYMBOLS[kind],
    // thousands of them: not copied
    range,
    selectionRange: nameRange,
    ...(detail === "" ? {} : { detail }),
  };
}

/** For editors that want a flat list. */
export function flatSymbolOf(
  symbol: EntrySymbol,
  uri: string,
): SymbolInformation {
  const { name, kind, range } = symbolOf(symbol);
  return { name, kind, location: { uri, range } };
}

export function foldOf({ first, last, kind }: Fold): FoldingRange {
  return {
    startLine: first,
    endLine: last,
    ...(kind === "comment" ? { kind: FoldingRangeKind.Comment } : {}),
  };
}

export function textEditOf({ start, end, text }: Edit): TextEdit {
  return { range: rangeOf({ start, end }), newText: text };
}

/** A change of one file; with tab stops only for an editor that takes them. */
export interface FileEdit {
  readonly path: string;
  readonly edit: TextEdit | SnippetTextEdit;
}

/** An edit that makes files before it changes any: only for an editor that can. */
export function creatingEditOf(
  creates: readonly { readonly file: string; readonly text: string }[],
  edits: readonly FileEdit[],
  conversion: Conversion,
): WorkspaceEdit {
  const { uriOf } = conversion;
  const start = { line: 0, character: 0 };
  const made = creates.flatMap(
    ({ file, text }): (CreateFile | TextDocumentEdit)[] => [
      // never over one that is there after all
      { kind: "create", uri: uriOf(file), options: { overwrite: false } },
      {
        textDocument: { uri: uriOf(file), version: null },
        edits: [{ range: { start, end: start }, newText: text }],
      },
    ],
  );
  const { documentChanges = [] } = workspaceEditOf(edits, conversion);
  return { documentChanges: [...made, ...documentChanges] };
}

/** An edit of any files, with the versions it is for where the editor can check them. */
export function workspaceEditOf(
  edits: readonly FileEdit[],
  { client, uriOf, versionOf }: Conversion,
): WorkspaceEdit {
  const byPath = [...groupedBy(edits, ({ path }) => path)].map(
    ([path, all]) => [path, all.map(({ edit }) => edit)] as const,
  );
  if (client.versionedEdits) {
    const documentChanges = byPath.map(([path, all]): TextDocumentEdit => ({
      textDocument: { uri: uriOf(path), version: versionOf(path) },
      edits: all,
    }));
    return { documentChanges };
  }
  return {
    changes: Object.fromEntries(
      byPath.map(([path, all]) => [
        uriOf(path),
        all.filter((each) => "newText" in each),
      ]),
    ),
  };
}

// What is looked for in all the records of the folders, open or not: files to use, and names.
import type {
  CancellationToken,
  CompletionList,
  SymbolInformation,
  TextDocumentPositionParams,
  WorkspaceSymbolParams,
} from "vscode-languageserver";
import { fileOffers, usedFileAt } from "../ide/completion-files.ts";
import { likeness } from "../ide/workspace-symbols.ts";
import { rangeOf, symbolKindOf, type Conversion } from "./convert.ts";
import { offersOf } from "./offers.ts";
import type { RecordList } from "./record-list.ts";
import type { Workspace } from "./workspace.ts";

/** More names than anyone reads; the editor asks again with every letter. */
const MOST_SYMBOLS = 400;

export function createSearchAnswers(
  workspace: Pick<Workspace, "open" | "folderOf">,
  records: Pick<RecordList, "all">,
  conversion: Conversion,
) {
  return {
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
      return offersOf(
        fileOffers(open, range, files, root),
        false,
        conversion.client,
      );
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
  };
}

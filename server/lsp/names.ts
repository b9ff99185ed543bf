// What the editor asks about names: where one is defined, where it is used, another name for it. A name of a crib is looked for in every
// record of the folders that uses the crib, open or not.
import type {
  CancellationToken,
  DefinitionParams,
  DocumentHighlight,
  DocumentHighlightParams,
  DocumentLink,
  DocumentLinkParams,
  Location,
  LocationLink,
  Position,
  PrepareRenameParams,
  PrepareRenameResult,
  ReferenceParams,
  RenameParams,
  WorkspaceEdit,
} from "vscode-languageserver";
import { DocumentHighlightKind } from "vscode-languageserver";
import {
  definitionAt,
  highlightsAt,
  linksIn,
  referencesAt,
} from "../ide/navigation.ts";
import { prepareRenameAt, renameAt } from "../ide/rename.ts";
import type { OpenFile } from "../model/project.ts";
import { paceOf, type Clock } from "./clock.ts";
import {
  locationOf,
  rangeOf,
  textEditOf,
  workspaceEditOf,
  type Conversion,
} from "./convert.ts";
import { Refused } from "./guard.ts";
import type { RecordPaths } from "./record-paths.ts";
import type { Workspace } from "./workspace.ts";

interface At {
  readonly textDocument: { readonly uri: string };
  readonly position: Position;
}

export function createNames(
  workspace: Workspace,
  records: RecordPaths,
  clock: Clock,
  conversion: Conversion,
) {
  /** The paths of other records that may use what stands at a position; those that are not open are to be released. */
  async function sharers(
    { textDocument: { uri }, position }: At,
    token: CancellationToken,
  ): Promise<readonly string[]> {
    const open = await workspace.open(uri);
    if (open === undefined) return [];
    const homes = new Set(definitionAt(open, position).map(({ path }) => path));
    const isCribs = open.shop.files.some(
      ({ path, context }) => homes.has(path) && !context.isJob,
    );
    const paths = new Set(
      workspace.documents().map((each) => workspace.pathOf(each.uri)),
    );
    // a job's own names end with the job: no other record can use them unless it is open and says so
    if (isCribs) for (const path of await records.all(token)) paths.add(path);
    paths.delete(open.path);
    const pace = paceOf(clock, token);
    const found: string[] = [];
    for (const path of paths) {
      await workspace.open(path);
      const needs = workspace.needsOf(path);
      if ([...homes].some((home) => needs.has(home))) found.push(path);
      else workspace.releaseIfClosed(path);
      await pace();
    }
    return found;
  }

  /** Asks a record together with those that share a name with it, all as they are at one moment. */
  async function withSharers<R>(
    at: At,
    token: CancellationToken,
    ask: (open: OpenFile, others: readonly OpenFile[]) => R,
  ): Promise<R | null> {
    const paths = await sharers(at, token);
    try {
      const open = await workspace.open(at.textDocument.uri);
      const others: OpenFile[] = [];
      for (const path of paths) {
        const other = await workspace.open(path);
        if (other !== undefined) others.push(other);
      }
      return open === undefined ? null : ask(open, others);
    } finally {
      for (const path of paths) workspace.releaseIfClosed(path);
    }
  }

  return {
    async definition({
      textDocument: { uri },
      position,
    }: DefinitionParams): Promise<Location[] | LocationLink[]> {
      const open = await workspace.open(uri);
      const found = open === undefined ? [] : definitionAt(open, position);
      return conversion.client.definitionLinks
        ? found.map(({ path, range, whole, origin }) => ({
            originSelectionRange: rangeOf(origin),
            targetUri: conversion.uriOf(path),
            targetRange: rangeOf(whole),
            targetSelectionRange: rangeOf(range),
          }))
        : found.map((each) => locationOf(each, conversion));
    },
    references: (
      params: ReferenceParams,
      token: CancellationToken,
    ): Promise<Location[] | null> =>
      withSharers(params, token, (open, others) =>
        referencesAt(open, params.position, {
          declaration: params.context.includeDeclaration,
          others,
        }).map((each) => locationOf(each, conversion)),
      ),
    async highlights({
      textDocument: { uri },
      position,
    }: DocumentHighlightParams): Promise<DocumentHighlight[]> {
      const open = await workspace.open(uri);
      const found = open === undefined ? [] : highlightsAt(open, position);
      return found.map(({ range, kind }) => ({
        range: rangeOf(range),
        kind:
          kind === "write"
            ? DocumentHighlightKind.Write
            : DocumentHighlightKind.Read,
      }));
    },
    async links({
      textDocument: { uri },
    }: DocumentLinkParams): Promise<DocumentLink[]> {
      const open = await workspace.open(uri);
      return (open === undefined ? [] : linksIn(open)).map(
        ({ range, path }) => ({
          range: rangeOf(range),
          target: conversion.uriOf(path),
        }),
      );
    },
    async prepareRename({
      textDocument: { uri },
      position,
    }: PrepareRenameParams): Promise<PrepareRenameResult | null> {
      const open = await workspace.open(uri);
      const found =
        open === undefined ? undefined : prepareRenameAt(open, position);
      if (found === undefined) return null;
      if ("refused" in found) throw new Refused(found.refused);
      return { range: rangeOf(found.range), placeholder: found.placeholder };
    },
    rename: (
      params: RenameParams,
      token: CancellationToken,
    ): Promise<WorkspaceEdit | null> =>
      withSharers(params, token, (open, others) => {
        const found = renameAt(open, params.position, params.newName, others);
        if (found === undefined) return null;
        if ("refused" in found) throw new Refused(found.refused);
        return workspaceEditOf(
          found.edits.map(({ path, range, text }) => ({
            path,
            edit: textEditOf({ ...range, text }),
          })),
          conversion,
        );
      }),
  };
}

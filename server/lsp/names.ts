// What the editor asks about names: where one is defined, where it is used, another name for it. In which other records it
// may stand is sharers.ts's.
import {
  DocumentHighlightKind,
  type CancellationToken,
  type DefinitionParams,
  type DocumentHighlight,
  type DocumentHighlightParams,
  type DocumentLink,
  type DocumentLinkParams,
  type Location,
  type LocationLink,
  type PrepareRenameParams,
  type PrepareRenameResult,
  type ReferenceParams,
  type RenameParams,
  type WorkspaceEdit,
} from "vscode-languageserver";
import {
  definitionAt,
  highlightsAt,
  linksIn,
  referencesAt,
} from "../ide/navigation.ts";
import { prepareRenameAt, renameAt } from "../ide/rename.ts";
import {
  locationOf,
  rangeOf,
  textEditOf,
  workspaceEditOf,
  type Conversion,
} from "./convert.ts";
import { Refused } from "./guard.ts";
import { withSharers, type Sharing } from "./sharers.ts";

export function createNames(sharing: Sharing, conversion: Conversion) {
  const { workspace } = sharing;
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
      withSharers(params, token, sharing, (open, others) =>
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
      withSharers(params, token, sharing, (open, others) => {
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

// What the editor at the other end can do, said once at the start.
import type { ClientCapabilities } from "vscode-languageserver";
import { COMMANDS_OFFERED, FILES_OFFERED } from "../protocol.ts";
import { member } from "./settings.ts";

export interface Client {
  /** It asks for findings; else they are sent to it. */
  readonly pulls: boolean;
  readonly refreshesFindings: boolean;
  readonly refreshesHints: boolean;
  readonly relatedInformation: boolean;
  readonly codeDescription: boolean;
  /** It tells of changed files where it is asked to. */
  readonly watches: boolean;
  /** It reads files for us: those of its own that lie on no disk, or all where we have none. */
  readonly readsFiles: boolean;
  /** It answers what the user has set. */
  readonly configuration: boolean;
  readonly configurationChanges: boolean;
  readonly folders: boolean;
  /** It takes edits that say the version they are for. */
  readonly versionedEdits: boolean;
  readonly codeActions: boolean;
  /** An edit may make a file. */
  readonly createsFiles: boolean;
  /** An edit may have tab stops. */
  readonly snippetEdits: boolean;
  /** Completions may have tab stops. */
  readonly snippets: boolean;
  readonly nestedSymbols: boolean;
  readonly definitionLinks: boolean;
  readonly renamePreparation: boolean;
  readonly signatures: boolean;
  /** A parameter may be a range of the form; else it is a piece of it. */
  readonly parameterRanges: boolean;
  readonly workspaceSymbols: boolean;
  readonly selectionRanges: boolean;
  readonly formatsAsTyped: boolean;
  readonly lenses: boolean;
  readonly refreshesLenses: boolean;
  /** It has the commands that a click on a lens runs. */
  readonly lensCommands: boolean;
}

export function clientOf(capabilities: ClientCapabilities): Client {
  const { textDocument, workspace } = capabilities;
  const { publishDiagnostics: pushed, diagnostic: pulled } = textDocument ?? {};
  return {
    pulls: pulled !== undefined,
    refreshesFindings: workspace?.diagnostics?.refreshSupport === true,
    refreshesHints: workspace?.inlayHint?.refreshSupport === true,
    relatedInformation:
      pushed?.relatedInformation === true ||
      pulled?.relatedInformation === true,
    codeDescription:
      pushed?.codeDescriptionSupport === true ||
      pulled?.codeDescriptionSupport === true,
    watches: workspace?.didChangeWatchedFiles?.dynamicRegistration === true,
    readsFiles: member(capabilities.experimental, FILES_OFFERED) === true,
    configuration: workspace?.configuration === true,
    configurationChanges:
      workspace?.didChangeConfiguration?.dynamicRegistration === true,
    folders: workspace?.workspaceFolders === true,
    versionedEdits: workspace?.workspaceEdit?.documentChanges === true,
    codeActions:
      textDocument?.codeAction?.codeActionLiteralSupport !== undefined,
    createsFiles:
      workspace?.workspaceEdit?.documentChanges === true &&
      workspace.workspaceEdit.resourceOperations?.includes("create") === true,
    snippetEdits:
      workspace?.workspaceEdit?.documentChanges === true &&
      workspace.workspaceEdit.snippetEditSupport === true,
    snippets: textDocument?.completion?.completionItem?.snippetSupport === true,
    nestedSymbols:
      textDocument?.documentSymbol?.hierarchicalDocumentSymbolSupport === true,
    definitionLinks: textDocument?.definition?.linkSupport === true,
    renamePreparation: textDocument?.rename?.prepareSupport === true,
    signatures: textDocument?.signatureHelp !== undefined,
    parameterRanges:
      textDocument?.signatureHelp?.signatureInformation?.parameterInformation
        ?.labelOffsetSupport === true,
    workspaceSymbols: workspace?.symbol !== undefined,
    selectionRanges: textDocument?.selectionRange !== undefined,
    formatsAsTyped: textDocument?.onTypeFormatting !== undefined,
    lenses: textDocument?.codeLens !== undefined,
    refreshesLenses: workspace?.codeLens?.refreshSupport === true,
    lensCommands: member(capabilities.experimental, COMMANDS_OFFERED) === true,
  };
}

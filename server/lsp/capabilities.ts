// What the server offers, said in answer to the editor's first message.
import {
  CodeActionKind,
  TextDocumentSyncKind,
  type ServerCapabilities,
} from "vscode-languageserver";
import type { Client } from "./client.ts";
import { LEGEND } from "./legend.ts";

/** The kind of the action that takes all safe fixes at once. */
export const FIX_ALL = `${CodeActionKind.SourceFixAll}.thou`;

export function capabilitiesFor(client: Client): ServerCapabilities {
  return {
    positionEncoding: "utf-16",
    textDocumentSync: {
      openClose: true,
      change: TextDocumentSyncKind.Incremental,
      save: { includeText: false },
    },
    workspace: {
      workspaceFolders: { supported: true, changeNotifications: true },
    },
    // never both: an editor that can't ask is sent its findings
    ...(client.pulls
      ? {
          diagnosticProvider: {
            interFileDependencies: true,
            workspaceDiagnostics: true,
            workDoneProgress: true,
          },
        }
      : {}),
    inlayHintProvider: { resolveProvider: true },
    completionProvider: { triggerCharacters: [" ", '"', "/"] },
    hoverProvider: true,
    definitionProvider: true,
    referencesProvider: true,
    documentHighlightProvider: true,
    documentLinkProvider: {},
    renameProvider: client.renamePreparation ? { prepareProvider: true } : true,
    documentSymbolProvider: true,
    foldingRangeProvider: true,
    semanticTokensProvider: {
      legend: LEGEND,
      full: { delta: true },
      range: true,
    },
    documentFormattingProvider: true,
    documentRangeFormattingProvider: true,
    ...(client.signatures
      ? {
          signatureHelpProvider: {
            triggerCharacters: [" "],
            retriggerCharacters: [","],
          },
        }
      : {}),
    ...(client.workspaceSymbols ? { workspaceSymbolProvider: true } : {}),
    ...(client.selectionRanges ? { selectionRangeProvider: true } : {}),
    ...(client.formatsAsTyped
      ? { documentOnTypeFormattingProvider: { firstTriggerCharacter: "\n" } }
      : {}),
    ...(client.lenses ? { codeLensProvider: { resolveProvider: true } } : {}),
    ...(client.codeActions
      ? {
          codeActionProvider: {
            codeActionKinds: [
              CodeActionKind.QuickFix,
              CodeActionKind.SourceFixAll,
              FIX_ALL,
              CodeActionKind.RefactorRewrite,
              CodeActionKind.RefactorExtract,
            ],
          },
        }
      : {}),
  };
}

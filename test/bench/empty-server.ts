// The least that a language server can be: it keeps the text and answers nothing. What ours takes more than this is ours.
import {
  createConnection,
  ProposedFeatures,
  TextDocuments,
  TextDocumentSyncKind,
} from "vscode-languageserver/node";
import { TextDocument } from "vscode-languageserver-textdocument";

const connection = createConnection(ProposedFeatures.all);
const documents = new TextDocuments(TextDocument);
connection.onInitialize(() => ({
  capabilities: {
    textDocumentSync: TextDocumentSyncKind.Incremental,
    diagnosticProvider: {
      interFileDependencies: false,
      workspaceDiagnostics: false,
    },
    hoverProvider: true,
    completionProvider: {},
    inlayHintProvider: true,
    documentSymbolProvider: true,
    documentFormattingProvider: true,
  },
}));
connection.languages.diagnostics.on(() => ({ kind: "full", items: [] }));
connection.onHover(() => null);
connection.onCompletion(() => []);
connection.languages.inlayHint.on(() => []);
connection.onDocumentSymbol(() => []);
connection.onDocumentFormatting(() => []);
documents.listen(connection);
connection.listen();

// Which request of an editor goes to which answer of the session.
import type {
  CancellationToken,
  Connection,
  ResponseError,
} from "vscode-languageserver";
import { OWN_REQUESTS } from "../protocol.ts";
import type { Session } from "./session.ts";

/** Makes the answer to one sort of request, by the session; the name is for the log. */
export type Answer = <P, R, Rest extends readonly unknown[]>(
  name: string,
  handle: (
    to: Session,
    params: P,
    token: CancellationToken,
    ...rest: Rest
  ) => R | Promise<R>,
) => (
  params: P,
  token: CancellationToken,
  ...rest: Rest
) => Promise<R | ResponseError<never>>;

export function answerRequests(connection: Connection, answer: Answer): void {
  const { languages } = connection;
  languages.diagnostics.on(
    answer("findings", ({ findings }, params, token) =>
      findings.of(params, token),
    ),
  );
  languages.diagnostics.onWorkspace(
    answer("all findings", ({ findings }, params, token, progress, partial) =>
      findings.ofClosed(params, token, progress, partial),
    ),
  );
  languages.inlayHint.on(
    answer("hints", ({ features }, params) => features.hints(params)),
  );
  languages.inlayHint.resolve(
    answer("the working of a hint", ({ features }, hint) =>
      features.workingOf(hint),
    ),
  );
  languages.semanticTokens.on(
    answer("tokens", ({ features }, params) => features.tokens(params)),
  );
  languages.semanticTokens.onDelta(
    answer("changed tokens", ({ features }, params) =>
      features.tokensSince(params),
    ),
  );
  languages.semanticTokens.onRange(
    answer("tokens of a range", ({ features }, params) =>
      features.tokensOn(params),
    ),
  );
  connection.onCompletion(
    answer(
      "completion",
      async ({ features, writing }, params, token) =>
        (await writing.usableFiles(params, token)) ?? features.offers(params),
    ),
  );
  connection.onHover(
    answer("hover", ({ features }, params) => features.hover(params)),
  );
  connection.onDefinition(
    answer("definition", ({ names }, params) => names.definition(params)),
  );
  connection.onReferences(
    answer("references", ({ names }, params, token) =>
      names.references(params, token),
    ),
  );
  connection.onDocumentHighlight(
    answer("highlights", ({ names }, params) => names.highlights(params)),
  );
  connection.onDocumentLinks(
    answer("links", ({ names }, params) => names.links(params)),
  );
  connection.onPrepareRename(
    answer("preparing a new name", ({ names }, params) =>
      names.prepareRename(params),
    ),
  );
  connection.onRenameRequest(
    answer("a new name", ({ names }, params, token) =>
      names.rename(params, token),
    ),
  );
  connection.onDocumentSymbol(
    answer("symbols", ({ features }, params) => features.symbols(params)),
  );
  connection.onFoldingRanges(
    answer("folds", ({ features }, params) => features.folds(params)),
  );
  connection.onDocumentFormatting(
    answer("formatting", ({ features }, params) => features.format(params)),
  );
  connection.onDocumentRangeFormatting(
    answer("formatting of lines", ({ features }, params) =>
      features.formatLines(params),
    ),
  );
  connection.onCodeAction(
    answer("actions", ({ features }, params) => features.actions(params)),
  );
  connection.onSignatureHelp(
    answer("the form", ({ writing }, params) => writing.signature(params)),
  );
  connection.onDocumentOnTypeFormatting(
    answer("a new line", ({ writing }, params) => writing.newLine(params)),
  );
  connection.onSelectionRanges(
    answer("selections", ({ writing }, params) => writing.selections(params)),
  );
  connection.onWorkspaceSymbol(
    answer("names", ({ writing }, params, token) =>
      writing.symbols(params, token),
    ),
  );
  connection.onCodeLens(
    answer("lenses", ({ writing }, params) => writing.lenses(params)),
  );
  connection.onCodeLensResolve(
    answer("a lens", ({ writing }, lens) => writing.lensSays(lens)),
  );
  for (const name of OWN_REQUESTS)
    connection.onRequest(
      name,
      answer(name, ({ own }, params: unknown, token) =>
        own[name](params, token),
      ),
    );
}

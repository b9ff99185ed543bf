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
    answer("hints", ({ hints }, params) => hints.hints(params)),
  );
  languages.inlayHint.resolve(
    answer("the working of a hint", ({ hints }, hint) => hints.workingOf(hint)),
  );
  languages.semanticTokens.on(
    answer("tokens", ({ lines }, params) => lines.tokens(params)),
  );
  languages.semanticTokens.onDelta(
    answer("changed tokens", ({ lines }, params) => lines.tokensSince(params)),
  );
  languages.semanticTokens.onRange(
    answer("tokens of a range", ({ lines }, params) => lines.tokensOn(params)),
  );
  connection.onCompletion(
    answer(
      "completion",
      async ({ features, search }, params, token) =>
        (await search.usableFiles(params, token)) ?? features.offers(params),
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
    answer("folds", ({ lines }, params) => lines.folds(params)),
  );
  connection.onDocumentFormatting(
    answer("formatting", ({ lines }, params) => lines.format(params)),
  );
  connection.onDocumentRangeFormatting(
    answer("formatting of lines", ({ lines }, params) =>
      lines.formatLines(params),
    ),
  );
  connection.onCodeAction(
    answer("actions", ({ features }, params) => features.actions(params)),
  );
  connection.onSignatureHelp(
    answer("the form", ({ features }, params) => features.signature(params)),
  );
  connection.onDocumentOnTypeFormatting(
    answer("a new line", ({ lines }, params) => lines.newLine(params)),
  );
  connection.onSelectionRanges(
    answer("selections", ({ lines }, params) => lines.selections(params)),
  );
  connection.onWorkspaceSymbol(
    answer("names", ({ search }, params, token) =>
      search.symbols(params, token),
    ),
  );
  connection.onCodeLens(
    answer("lenses", ({ lenses }, params) => lenses.lenses(params)),
  );
  connection.onCodeLensResolve(
    answer("a lens", ({ lenses }, lens) => lenses.says(lens)),
  );
  for (const name of OWN_REQUESTS)
    connection.onRequest(
      name,
      answer(name, ({ own }, params: unknown, token) =>
        own[name](params, token),
      ),
    );
}

// Host tests of writing and reading a record: completion, definitions, symbols, layout.
import { deepEqual, equal, match, notEqual, ok } from "node:assert/strict";
import * as vscode from "vscode";
import {
  firstFit,
  lineWith,
  openRecord,
  until,
  withEdit,
  wordOn,
  type HostTest,
} from "./record.ts";

export const text: readonly HostTest[] = [
  {
    name: "an empty fact line under a fit is completed with the words of a fit and no others",
    async test() {
      const document = await openRecord();
      const fit = firstFit(document);
      const edit = (text: string) =>
        text.replace(`${fit.text}\n`, `${fit.text}\n  \n`);
      await withEdit(edit, async () => {
        const list =
          await vscode.commands.executeCommand<vscode.CompletionList>(
            "vscode.executeCompletionItemProvider",
            document.uri,
            new vscode.Position(fit.line + 1, 2),
          );
        const labels = list.items.map(({ label }) =>
          typeof label === "string" ? label : label.label,
        );
        const words = new Set(
          labels.map((label) => /^[\w-]+/.exec(label)?.[0]),
        );
        // These may repeat, so that they are offered whatever the record has written already.
        for (const word of ["hot", "cold", "note"])
          ok(words.has(word), `${word} is offered: ${labels.join(", ")}`);
        for (const word of ["units", "boss", "journal"])
          ok(!words.has(word), `${word} is not a fact of a fit`);
      });
    },
  },
  {
    name: "the definition of a reference is its entry",
    async test() {
      const document = await openRecord();
      const fit = firstFit(document);
      const at = new vscode.Position(fit.line, fit.journalAt);
      const [target, ...others] = await definitionsAt(document, at);
      ok(target && others.length === 0, "there is one definition");
      equal(target.uri.toString(), document.uri.toString());
      equal(
        target.range.start.line,
        lineWith(document, new RegExp(`^journal ${fit.journal}\\b`)),
      );
    },
  },
  {
    name: "the definition of a gauge is its entry in the crib",
    async test() {
      const document = await openRecord();
      const line = lineWith(document, /^\s+read\s.*\swith [\w-]+/);
      const gauge =
        /\swith ([\w-]+)/.exec(document.lineAt(line).text)?.[1] ?? "";
      const [target] = await definitionsAt(
        document,
        wordOn(document, line, gauge).start,
      );
      ok(target, "there is a definition");
      notEqual(
        target.uri.toString(),
        document.uri.toString(),
        "the crib is a file of its own",
      );
      const crib = await vscode.workspace.openTextDocument(target.uri);
      match(
        crib.lineAt(target.range.start.line).text,
        new RegExp(`^gauge ${gauge}\\b`),
      );
    },
  },
  {
    name: "every entry is a symbol of the document",
    async test() {
      const document = await openRecord();
      const symbols = await until("symbols", async () => {
        const found = await vscode.commands.executeCommand<
          vscode.DocumentSymbol[] | undefined
        >("vscode.executeDocumentSymbolProvider", document.uri);
        return found?.length === 0 ? undefined : found;
      });
      const flat = (
        list: readonly vscode.DocumentSymbol[],
      ): vscode.DocumentSymbol[] =>
        list.flatMap((symbol) => [symbol, ...flat(symbol.children)]);
      const lines = new Set(
        flat(symbols).map((symbol) => symbol.selectionRange.start.line),
      );
      const entries = document
        .getText()
        .split(/\r?\n/)
        .flatMap((text, line) => (/^[a-z]/.test(text) ? [line] : []));
      deepEqual(
        entries.filter((line) => !lines.has(line)),
        [],
        "lines of entries without a symbol",
      );
    },
  },
  {
    name: "formatting leaves the record as it is, and brings a spread line back",
    async test() {
      const document = await openRecord();
      equal(await formatted(document), document.getText());
      const fit = firstFit(document);
      await withEdit(
        (text) => text.replace(fit.text, fit.text.replace(" of ", "   of  ")),
        async (_, before) => {
          equal(await formatted(document), before);
        },
      );
    },
  },
];

async function definitionsAt(
  document: vscode.TextDocument,
  position: vscode.Position,
): Promise<readonly vscode.Location[]> {
  return until("a definition", async () => {
    const found = await vscode.commands.executeCommand<
      (vscode.Location | vscode.LocationLink)[]
    >("vscode.executeDefinitionProvider", document.uri, position);
    if (found.length === 0) return undefined;
    return found.map((each) =>
      "targetUri" in each
        ? new vscode.Location(
            each.targetUri,
            each.targetSelectionRange ?? each.targetRange,
          )
        : each,
    );
  });
}

/** The text that formatting the document would give. */
async function formatted(document: vscode.TextDocument): Promise<string> {
  const edits = await vscode.commands.executeCommand<
    vscode.TextEdit[] | undefined
  >("vscode.executeFormatDocumentProvider", document.uri, {
    tabSize: 2,
    insertSpaces: true,
  });
  let text = document.getText();
  const fromTheEnd = [...(edits ?? [])].sort((a, b) =>
    b.range.start.compareTo(a.range.start),
  );
  for (const { range, newText } of fromTheEnd) {
    text =
      text.slice(0, document.offsetAt(range.start)) +
      newText +
      text.slice(document.offsetAt(range.end));
  }
  return text;
}

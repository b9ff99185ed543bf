// Host tests of findings: that they come, go and say where they belong; their fixes; their pages.
import { equal, match, notEqual, ok } from "node:assert/strict";
import { readFile, writeFile } from "node:fs/promises";
import * as vscode from "vscode";
import {
  codeOf,
  findingWith,
  findingsOf,
  misspell,
  openRecord,
  until,
  withEdit,
  type HostTest,
} from "./record.ts";

export const findings: readonly HostTest[] = [
  {
    name: "a misspelt word is found, with the source thou and the code word-unknown, and goes when it is mended",
    async test() {
      await withEdit(misspell, async (document) => {
        const finding = await findingWith(document, "word-unknown");
        equal(document.getText(finding.range), "wnat");
        equal(finding.severity, vscode.DiagnosticSeverity.Error);
        equal(finding.source, "thou");
        match(finding.message, /\bwant\b/, "it says what is meant");
      });
      const document = await openRecord();
      const isMisspelt = (finding: vscode.Diagnostic) =>
        codeOf(finding) === "word-unknown";
      await until(
        "the finding is gone",
        () => !findingsOf(document).some(isMisspelt) || undefined,
      );
    },
  },
  {
    name: "every finding has the source thou and a kebab code",
    async test() {
      await withEdit(misspell, async (document) => {
        await findingWith(document, "word-unknown");
        for (const finding of findingsOf(document)) {
          equal(finding.source, "thou");
          match(codeOf(finding), /^[a-z]+(?:-[a-z]+)*$/);
        }
      });
    },
  },
  {
    name: "the quick fix of a misspelt word mends it",
    async test() {
      await withEdit(misspell, async (document, before) => {
        const finding = await findingWith(document, "word-unknown");
        // Asked straight after the finding an editor may have none yet.
        const fix = await until("a fix is offered", async () => {
          const actions = await vscode.commands.executeCommand<
            vscode.CodeAction[]
          >(
            "vscode.executeCodeActionProvider",
            document.uri,
            finding.range,
            vscode.CodeActionKind.QuickFix.value,
            10, // so many are resolved, so that they carry their edit
          );
          return actions.find(
            (action) => action.edit && /\bwant\b/.test(action.title),
          );
        });
        ok(fix.edit);
        ok(await vscode.workspace.applyEdit(fix.edit), "the fix is applied");
        equal(document.getText(), before);
      });
    },
  },
  {
    name: "the code of a finding leads to its page",
    async test() {
      await withEdit(misspell, async (document) => {
        const { code } = await findingWith(document, "word-unknown");
        ok(typeof code === "object", "the code has an address");
        const page = await vscode.workspace.openTextDocument(code.target);
        match(page.getText(), /\bword-unknown\b/);
      });
    },
  },
  {
    name: "a new file that was never saved is checked too",
    async test() {
      const content = "job new\n  units inhc\n";
      const document = await vscode.workspace.openTextDocument({
        language: "thou",
        content,
      });
      await vscode.window.showTextDocument(document);
      const [finding] = await until("a finding", () => {
        const found = findingsOf(document);
        return found.length === 0 ? undefined : found;
      });
      equal(finding?.source, "thou");
      await vscode.commands.executeCommand(
        "workbench.action.revertAndCloseActiveEditor",
      );
    },
  },
  {
    name: "a gauge that goes from the crib on the disk is missed in the record, until it is back",
    async test() {
      const document = await openRecord();
      const [, gauge = ""] =
        /^\s+read\s.*\swith ([\w-]+)/m.exec(document.getText()) ?? [];
      const [, crib = ""] = /^\s+use "([^"]+)"/m.exec(document.getText()) ?? [];
      const file = vscode.Uri.joinPath(document.uri, "..", crib).fsPath;
      const before = await readFile(file, "utf8");
      const after = before.replace(
        new RegExp(`^gauge ${gauge}\\b`, "m"),
        `gauge not-${gauge}`,
      );
      notEqual(after, before, `the crib has the gauge ${gauge}`);
      const isMissing = (finding: vscode.Diagnostic) =>
        codeOf(finding) === "name-unknown" &&
        document.getText(finding.range).includes(gauge);
      try {
        await writeFile(file, after);
        await until("the gauge is missed", () =>
          findingsOf(document).find(isMissing),
        );
      } finally {
        await writeFile(file, before);
      }
      await until(
        "the gauge is found again",
        () => !findingsOf(document).some(isMissing) || undefined,
      );
    },
  },
];

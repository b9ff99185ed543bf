// What is offered without a finding, as the protocol's code actions.
import {
  CodeActionKind,
  type CodeAction,
  type Range,
  type SnippetTextEdit,
  type TextEdit,
} from "vscode-languageserver";
import { plain } from "../markup/markdown.ts";
import type { OpenFile } from "../model/project.ts";
import { refactoringsAt } from "../ide/refactor.ts";
import type { Refactoring, RefactoringEdit } from "../ide/refactoring.ts";
import {
  creatingEditOf,
  rangeOf,
  workspaceEditOf,
  type Conversion,
} from "./convert.ts";

const KINDS: Readonly<Record<Refactoring["kind"], CodeActionKind>> = {
  mend: CodeActionKind.QuickFix,
  rewrite: CodeActionKind.RefactorRewrite,
  extract: CodeActionKind.RefactorExtract,
};

/** The kinds that they come in. */
export const REFACTORINGS: readonly CodeActionKind[] = Object.values(KINDS);

export function refactoringActions(
  open: OpenFile,
  range: Range,
  today: string,
  conversion: Conversion,
): CodeAction[] {
  const { client } = conversion;
  return refactoringsAt(open, range.start, today)
    .filter(({ creates }) => creates === undefined || client.createsFiles)
    .map(({ title, kind, edits, creates = [] }) => {
      const changes = edits.map((edit) => ({
        path: edit.file,
        edit: editOf(edit, client.snippetEdits),
      }));
      return {
        title: plain(title),
        kind: KINDS[kind],
        edit:
          creates.length === 0
            ? workspaceEditOf(changes, conversion)
            : creatingEditOf(creates, changes, conversion),
      };
    });
}

function editOf(
  { range, text, plain }: RefactoringEdit,
  withStops: boolean,
): TextEdit | SnippetTextEdit {
  const at = rangeOf(range);
  if (plain === undefined) return { range: at, newText: text };
  return withStops
    ? { range: at, snippet: { kind: "snippet", value: text } }
    : { range: at, newText: plain };
}

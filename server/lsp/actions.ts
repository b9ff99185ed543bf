// Findings' fixes as the protocol's code actions.
import { plain } from "../markup/markdown.ts";
import {
  CodeActionKind,
  type CodeAction,
  type CodeActionContext,
  type Diagnostic,
  type Range,
  type WorkspaceEdit,
} from "vscode-languageserver";
import { fixAll, quickFixes } from "../ide/code-actions.ts";
import { shown } from "../ide/diagnostics.ts";
import { isOff, type Levels } from "../ide/levels.ts";
import type { OpenFile } from "../model/project.ts";
import type { Finding, Fix } from "../model/result.ts";
import { findingsIn } from "../rules/check.ts";
import { FIX_ALL } from "./capabilities.ts";
import { REFACTORINGS, refactoringActions } from "./refactorings.ts";
import {
  creatingEditOf,
  diagnosticOf,
  rangeOfPlace,
  workspaceEditOf,
  type Conversion,
} from "./convert.ts";

export function actionsFor(
  open: OpenFile,
  range: Range,
  { diagnostics, only }: CodeActionContext,
  conversion: Conversion,
  levels: Levels,
  today: string,
): CodeAction[] {
  const wants = (kind: string): boolean =>
    only === undefined ||
    only.some(
      (each) => each === "" || kind === each || kind.startsWith(`${each}.`),
    );
  const wantsFixes = wants(CodeActionKind.QuickFix);
  const wantsAll = wants(FIX_ALL);
  const offered = REFACTORINGS.some(wants)
    ? refactoringActions(open, range, today, conversion).filter(
        ({ kind }) => kind !== undefined && wants(kind),
      )
    : [];
  if (!wantsFixes && !wantsAll) return offered;
  const findings = findingsIn(open).filter(
    (finding) => !isOff(finding, levels),
  );
  const actions: CodeAction[] = [];
  if (wantsFixes) {
    for (const { finding, fix, preferred } of quickFixes(findings, range)) {
      if (fix.creates !== undefined && !conversion.client.createsFiles)
        continue;
      actions.push({
        title: plain(fix.title),
        kind: CodeActionKind.QuickFix,
        diagnostics: [matching(finding, diagnostics, conversion)],
        ...(preferred ? { isPreferred: true } : {}),
        edit: editOf(fix, conversion),
      });
    }
  }
  if (wantsAll) {
    const edits = fixAll(findings, open.path);
    if (0 < edits.length)
      actions.push({
        title: "Mend all that needs no look",
        kind: FIX_ALL,
        edit: editOf({ edits }, conversion),
      });
  }
  return [...actions, ...offered];
}

/** The editor's own copy of a finding, by which it knows that the action is about it. */
function matching(
  finding: Finding,
  diagnostics: readonly Diagnostic[],
  conversion: Conversion,
): Diagnostic {
  const { line, start, end } = finding.place;
  return (
    diagnostics.find(
      ({ code, range }) =>
        code === finding.code &&
        range.start.line === line &&
        range.start.character === start &&
        range.end.character === end,
    ) ?? diagnosticOf(shown(finding), conversion)
  );
}

function editOf(
  { edits, creates }: Pick<Fix, "edits" | "creates">,
  conversion: Conversion,
): WorkspaceEdit {
  const changes = edits.map(({ place, text }) => ({
    path: place.file,
    edit: { range: rangeOfPlace(place), newText: text },
  }));
  return creates === undefined
    ? workspaceEditOf(changes, conversion)
    : creatingEditOf(creates, changes, conversion);
}

// The record that the host tests read and edit, and what the editor says of it: places in its text, edits, hints and
// findings. It asserts nothing that a test is about.
import { ok } from "node:assert/strict";
import * as vscode from "vscode";

const file = "winch.thou";

export interface HostTest {
  readonly name: string;
  readonly test: () => Promise<void>;
}

/** A fit of the record: where it stands, and the names that it refers to. */
export interface Fit {
  readonly line: number;
  readonly text: string;
  readonly name: string;
  readonly journal: string;
  /** The column, from 0, at which the journal's name stands. */
  readonly journalAt: number;
}

/** Asks `probe` until it gives something other than undefined. */
export async function until<T>(
  what: string,
  probe: () => T | undefined | Promise<T | undefined>,
): Promise<T> {
  const end = Date.now() + 30_000;
  for (;;) {
    const value = await probe();
    if (value !== undefined) return value;
    if (end < Date.now()) throw new Error(`timed out: ${what}`);
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
}

/** The record, shown in an editor. */
export async function openRecord(): Promise<vscode.TextDocument> {
  const folder = vscode.workspace.workspaceFolders?.[0];
  ok(folder, "a folder is open");
  const document = await vscode.workspace.openTextDocument(
    vscode.Uri.joinPath(folder.uri, file),
  );
  await vscode.window.showTextDocument(document);
  return document;
}

/** Runs `test` on the record changed by `edit` and puts the record back afterwards, whatever happened. */
export async function withEdit(
  edit: (text: string) => string,
  test: (document: vscode.TextDocument, before: string) => Promise<void>,
): Promise<void> {
  const document = await openRecord();
  const before = document.getText();
  const after = edit(before);
  ok(after !== before, "the edit changes the record");
  try {
    await replaceText(document, after);
    await test(document, before);
  } finally {
    await replaceText(document, before);
  }
}

/** Misspells the fact `want` of the first fit that has one. */
export const misspell = (text: string): string =>
  text.replace(/^(fit .*\n(?:[ \t].*\n|\n)*?[ \t]+)want\b/m, "$1wnat");

async function replaceText(
  document: vscode.TextDocument,
  text: string,
): Promise<void> {
  if (document.getText() === text) return;
  const edit = new vscode.WorkspaceEdit();
  edit.replace(document.uri, wholeOf(document), text);
  ok(await vscode.workspace.applyEdit(edit), "the edit is applied");
}

function wholeOf(document: vscode.TextDocument): vscode.Range {
  return new vscode.Range(0, 0, document.lineCount, 0);
}

/** The first line, from `from`, that the pattern is found in; counted from 0. */
export function lineWith(
  document: vscode.TextDocument,
  pattern: RegExp,
  from = 0,
): number {
  for (let line = from; line < document.lineCount; line++) {
    if (pattern.test(document.lineAt(line).text)) return line;
  }
  throw new Error(`no line with ${String(pattern)} from line ${from + 1}`);
}

/** The range of a word where it first stands on a line. */
export function wordOn(
  document: vscode.TextDocument,
  line: number,
  word: string,
): vscode.Range {
  const text = document.lineAt(line).text;
  const index = text.search(new RegExp(`(?<![\\w-])${word}(?![\\w-])`));
  ok(0 <= index, `line ${line + 1} has the word ${word}: ${text}`);
  return new vscode.Range(line, index, line, index + word.length);
}

/** The fits of the record, in its order. */
export function fitsOf(document: vscode.TextDocument): readonly Fit[] {
  const fits: Fit[] = [];
  for (let line = 0; line < document.lineCount; line++) {
    const text = document.lineAt(line).text;
    const found =
      /^fit (?<name>\S+) of (?:journal )?(?<journal>[\w-]+) in /d.exec(text);
    const { name, journal } = found?.groups ?? {};
    const [journalAt] = found?.indices?.groups?.journal ?? [];
    if (
      name !== undefined &&
      journal !== undefined &&
      journalAt !== undefined
    ) {
      fits.push({ line, text, name, journal, journalAt });
    }
  }
  return fits;
}

export function firstFit(document: vscode.TextDocument): Fit {
  const [fit] = fitsOf(document);
  ok(fit, "the record has a fit");
  return fit;
}

/** The texts of the hints on a line, in order. */
export async function hintsOn(
  document: vscode.TextDocument,
  line: number,
): Promise<readonly string[]> {
  const hints = await vscode.commands.executeCommand<vscode.InlayHint[]>(
    "vscode.executeInlayHintProvider",
    document.uri,
    wholeOf(document),
  );
  return hints
    .filter((hint) => hint.position.line === line)
    .map(({ label }) =>
      typeof label === "string"
        ? label
        : label.map((part) => part.value).join(""),
    );
}

/** The hint with a clearance beside a fit, as soon as there is one other than `differentFrom`. */
export function clearanceBeside(
  document: vscode.TextDocument,
  fit: Fit,
  differentFrom?: string,
): Promise<string> {
  return until(`a hint with a clearance beside fit ${fit.name}`, async () => {
    const hints = await hintsOn(document, fit.line);
    return hints.find((hint) => length.test(hint) && hint !== differentFrom);
  });
}

/** A number with a unit of length, as a hint or a hover shows one. */
export const length = /\d[\d.]*\s?(?:thou|tenths?|in|"|µm|um|mm)(?![a-z])/;

/** The findings of a document that the editor holds just now. */
export function findingsOf(
  document: vscode.TextDocument,
): readonly vscode.Diagnostic[] {
  return vscode.languages.getDiagnostics(document.uri);
}

/** A finding's code, whether or not it comes with the address of its page. */
export function codeOf({ code }: vscode.Diagnostic): string {
  return String(typeof code === "object" ? code.value : code);
}

/** The finding with a code, as soon as it has arrived. */
export function findingWith(
  document: vscode.TextDocument,
  code: string,
): Promise<vscode.Diagnostic> {
  return until(`a finding ${code}`, () =>
    findingsOf(document).find((finding) => codeOf(finding) === code),
  );
}

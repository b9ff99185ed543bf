// What every form of report of a check shares: the file that was checked, the level that a finding is shown at, the count. The forms
// themselves are report-text.ts, report-json.ts and report-sarif.ts.
import type { FileCheck, Finding, Level } from "../model/result.ts";

export interface CheckedFile {
  /** Absolute, with forward slashes. */
  readonly path: string;
  /** From the working folder, with forward slashes. */
  readonly name: string;
  /** The text of each line that a finding stands on, by its number from 0: a report shows no other. */
  readonly lineTexts: Readonly<Record<number, string>>;
  readonly check: FileCheck;
}

/** The keys and their order are the contract's. */
export interface Summary {
  readonly files: number;
  readonly errors: number;
  readonly warnings: number;
  readonly information: number;
  readonly hints: number;
  readonly accepted: number;
}

export interface Outcome {
  readonly summary: Summary;
  /** Sentences about what could not be read or checked. */
  readonly problems: readonly string[];
  /** Files that others use, that were not asked for, and how many errors each has of its own. */
  readonly usedWithErrors: readonly {
    readonly name: string;
    readonly errors: number;
  }[];
}

/** A form of report: it is given each file as it is checked, and the count at the end. */
export interface Report {
  add(file: CheckedFile): void;
  end(outcome: Outcome): void;
}

/** An accepted finding is shown as information, whatever it was. */
export function levelOf(finding: Finding): Level {
  return finding.accepted === null ? finding.level : "information";
}

/** Findings in the order in which they stand in the file. */
export function inOrder(findings: readonly Finding[]): readonly Finding[] {
  return [...findings].sort(
    (a, b) =>
      a.place.line - b.place.line ||
      a.place.start - b.place.start ||
      a.place.end - b.place.end ||
      compare(a.code, b.code),
  );
}

function compare(a: string, b: string): number {
  if (a === b) return 0;
  return a < b ? -1 : 1;
}

export interface Counter {
  add(check: FileCheck): void;
  summary(): Summary;
}

export function createCounter(): Counter {
  const count = { error: 0, warning: 0, information: 0, hint: 0 };
  let files = 0;
  let accepted = 0;
  return {
    add(check) {
      files++;
      for (const finding of check.findings) {
        if (finding.accepted === null) count[finding.level]++;
        else accepted++;
      }
    },
    summary: () => ({
      files,
      errors: count.error,
      warnings: count.warning,
      information: count.information,
      hints: count.hint,
      accepted,
    }),
  };
}

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
  /** Nothing stands in it, or nothing but comments. */
  readonly isEmpty: boolean;
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

/**
 * What a report takes of one file. It is made where the file is checked and goes from that thread to the one that reports: it is plain, and
 * has no more in it than is shown.
 */
export interface ReportPart {
  readonly count: Count;
  /** As it stands in the report, or as the form wants it back at its end. */
  readonly text: string;
  /** For a form that lists them: those of the file's findings, each once. */
  readonly codes?: readonly string[];
  readonly waits?: Waits | undefined;
}

/** What a file waits for, as the end of a report for a person says it. */
export interface Waits {
  readonly name: string;
  /** Its first error: where it stands, and its code. */
  readonly error:
    | { readonly code: string; readonly line: number; readonly column: number }
    | undefined;
  readonly steps: readonly string[];
  /** Those that would settle most, and how many there are. */
  readonly needs: readonly string[];
  readonly needed: number;
}

/** A form of report: it is given the part of each file in the order of the files, and the count at the end. */
export interface Report {
  add(part: ReportPart): void;
  end(outcome: Outcome): Promise<void>;
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

/** Findings of one file: those that nothing accepts by their level, and those that a concession does. */
export type Count = Readonly<Record<Level | "accepted", number>>;

export function countOf({ findings }: FileCheck): Count {
  const count = { error: 0, warning: 0, information: 0, hint: 0, accepted: 0 };
  for (const { accepted, level } of findings)
    count[accepted === null ? level : "accepted"]++;
  return count;
}

export interface Counter {
  add(count: Count): void;
  summary(): Summary;
}

export function createCounter(): Counter {
  const sum = { error: 0, warning: 0, information: 0, hint: 0, accepted: 0 };
  let files = 0;
  return {
    add(count) {
      files++;
      for (const each of Object.keys(sum) as (keyof Count)[])
        sum[each] += count[each];
    },
    summary: () => ({
      files,
      errors: sum.error,
      warnings: sum.warning,
      information: sum.information,
      hints: sum.hint,
      accepted: sum.accepted,
    }),
  };
}

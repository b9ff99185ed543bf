// The findings of records as reports, each with an id: one that says what the last one said is not said again.
import type {
  CancellationToken,
  Diagnostic,
  DocumentDiagnosticReport,
} from "vscode-languageserver";
import { dequal as equal } from "dequal/lite";
import type { FileAlone, OpenFile } from "../model/project.ts";
import { findingsIn, lineFindingsIn } from "../rules/check.ts";
import type { Show } from "./shown-findings.ts";
import type { Stillness } from "./stillness.ts";
import type { WorkingOut } from "./working-out.ts";

export interface Report {
  readonly id: string;
  readonly items: Diagnostic[];
}

export interface Reports {
  /**
   * What a record shows now; nothing where it is not there.
   * @param open gives the record as it is at the moment
   */
  reportOf(
    uri: string,
    open: () => Promise<OpenFile | undefined>,
    token: CancellationToken,
  ): Promise<Report>;
  /**
   * What the lines of a long record show by themselves, the first time that it is asked for: the rest takes a while, and its findings
   * are a second report. Undefined for all others.
   */
  firstReportOf(uri: string, alone: FileAlone | undefined): Report | undefined;
  /** The codes that a line showed in the last report. */
  codesOn(uri: string, line: number): ReadonlySet<string>;
  forget(uri: string): void;
}

/**
 * @param session sets the ids of this run of the server apart from those of another
 * @param stillness undefined while faults are shown on the line being typed, too
 */
export function createReports(
  session: string,
  { workedOut, takesLong }: WorkingOut,
  show: Show,
  stillness: () => Stillness | undefined,
): Reports {
  const last = new Map<string, Report>();
  /** Those whose first report was given. */
  const begun = new Set<string>();
  let count = 0;

  function reportWith(uri: string, items: Diagnostic[]): Report {
    const report = { id: `${session}-${(count++).toString(36)}`, items };
    last.set(uri, report);
    return report;
  }

  return {
    firstReportOf(uri, alone) {
      if (alone === undefined || !takesLong(alone) || begun.has(uri))
        return undefined;
      begun.add(uri);
      const items = lineFindingsIn(alone.file).flatMap(
        (finding) => show(finding)?.diagnostic ?? [],
      );
      return reportWith(uri, items);
    },
    async reportOf(uri, open, token) {
      const now = await workedOut(open, token);
      const typing = stillness()?.typing(uri);
      let isHeld = false;
      const items: Diagnostic[] = [];
      for (const finding of now === undefined ? [] : findingsIn(now)) {
        const item = show(finding);
        if (item === undefined) continue;
        if (
          item.isFault &&
          finding.place.line === typing?.line &&
          !typing.codes.has(finding.code)
        )
          isHeld = true;
        else items.push(item.diagnostic);
      }
      stillness()?.held(uri, isHeld);
      const before = last.get(uri);
      if (before !== undefined && equal(before.items, items)) return before;
      return reportWith(uri, items);
    },
    codesOn: (uri, line) =>
      new Set(
        (last.get(uri)?.items ?? [])
          .filter(({ range }) => range.start.line === line)
          .map(({ code }) => String(code)),
      ),
    forget(uri) {
      last.delete(uri);
      begun.delete(uri);
    },
  };
}

/** The protocol's answer: the report, or that the editor has it. */
export function answerTo(
  { id, items }: Report,
  previous: string | undefined,
): DocumentDiagnosticReport {
  return previous === id
    ? { kind: "unchanged", resultId: id }
    : { kind: "full", resultId: id, items };
}

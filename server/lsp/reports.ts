// The findings of records for the editor: asked for, or sent where it can't ask. A report that says what the last one said is not said
// again.
import type {
  CancellationToken,
  Diagnostic,
  DocumentDiagnosticReport,
} from "vscode-languageserver";
import { dequal as equal } from "dequal/lite";
import { isFault } from "../ide/diagnostics.ts";
import { levelled, type Levels } from "../ide/levels.ts";
import type { FileAlone, OpenFile } from "../model/project.ts";
import type { Finding } from "../model/result.ts";
import type { Shop } from "../model/shop.ts";
import { findingsIn, lineFindingsIn } from "../rules/check.ts";
import { findingsOfEntry } from "../rules/entry-findings.ts";
import { paceOf, type Clock } from "./clock.ts";
import { diagnosticOf, type Conversion } from "./convert.ts";
import type { Stillness } from "./stillness.ts";

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
  /** A record with its findings worked out, piece by piece where it is long; nothing where it is not there. */
  workedOut(
    open: () => Promise<OpenFile | undefined>,
    token: CancellationToken,
  ): Promise<OpenFile | undefined>;
  /** The codes that a line showed in the last report. */
  codesOn(uri: string, line: number): ReadonlySet<string>;
  forget(uri: string): void;
}

/** What a finding was shown as, with the levels that were set then. */
interface Kept {
  readonly levels: Levels;
  readonly item:
    { readonly diagnostic: Diagnostic; readonly isFault: boolean } | undefined;
}

/** Records of fewer entries are worked out without a pause. */
const LONG = 100;

/**
 * @param revision another number whenever any record may have changed
 * @param session sets the ids of this run of the server apart from those of another
 * @param stillness undefined while faults are shown on the line being typed, too
 */
export function createReports(
  session: string,
  revision: () => number,
  clock: Clock,
  conversion: Conversion,
  stillness: () => Stillness | undefined,
  levels: () => Levels,
): Reports {
  const last = new Map<string, Report>();
  const kept = new WeakMap<Finding, Kept>();
  const seen = new WeakSet<Shop>();
  /** Those whose first report was given. */
  const begun = new Set<string>();
  let count = 0;

  /** Works a long record out piece by piece, so that others are served meanwhile and the work can be called off. */
  async function workedOut(
    open: () => Promise<OpenFile | undefined>,
    token: CancellationToken,
  ): Promise<OpenFile | undefined> {
    let now = await open();
    if (
      now === undefined ||
      now.file.entries.length < LONG ||
      seen.has(now.shop)
    )
      return now;
    const pace = paceOf(clock, token);
    let seenAt = revision();
    for (let index = 0; index < (now?.file.entries.length ?? 0); index++) {
      if (now !== undefined) findingsOfEntry(now, index);
      const pause = pace();
      if (pause === undefined) continue;
      await pause;
      if (revision() === seenAt) continue;
      seenAt = revision();
      now = await open();
      // whoever else waits for it has it worked out
      if (now !== undefined && seen.has(now.shop)) return now;
    }
    if (now !== undefined) seen.add(now.shop);
    return now;
  }

  /** A finding as the editor shows it; undefined where its code is off. Most findings of a report are those of the one before. */
  function itemOf(finding: Finding): Kept["item"] {
    const set = levels();
    const before = kept.get(finding);
    if (before?.levels === set) return before.item;
    const shown = levelled(finding, set);
    const item =
      shown === undefined
        ? undefined
        : {
            diagnostic: diagnosticOf(shown, conversion),
            isFault: isFault(shown),
          };
    // where another file is open the editor may know it by another address the next time
    if (finding.related.every(({ place }) => place.file === finding.place.file))
      kept.set(finding, { levels: set, item });
    return item;
  }

  function reportWith(uri: string, items: Diagnostic[]): Report {
    const report = { id: `${session}-${(count++).toString(36)}`, items };
    last.set(uri, report);
    return report;
  }

  return {
    workedOut,
    firstReportOf(uri, alone) {
      if (
        alone === undefined ||
        alone.file.entries.length < LONG ||
        begun.has(uri) ||
        (alone.shop !== undefined && seen.has(alone.shop))
      )
        return undefined;
      begun.add(uri);
      const items = lineFindingsIn(alone.file).flatMap(
        (finding) => itemOf(finding)?.diagnostic ?? [],
      );
      return reportWith(uri, items);
    },
    async reportOf(uri, open, token) {
      const now = await workedOut(open, token);
      const typing = stillness()?.typing(uri);
      let isHeld = false;
      const items: Diagnostic[] = [];
      for (const finding of now === undefined ? [] : findingsIn(now)) {
        const item = itemOf(finding);
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

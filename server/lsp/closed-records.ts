// The findings of records that are not open, for the editor's list of problems. Each is checked once and let go, until it or what it uses
// changes.
import type {
  CancellationToken,
  WorkspaceDocumentDiagnosticReport,
  WorkDoneProgressReporter,
} from "vscode-languageserver";
import { Cancelled, paceOf, type Clock } from "./clock.ts";
import type { RecordPaths } from "./record-paths.ts";
import { answerTo, type Report, type Reports } from "./reports.ts";
import type { Workspace } from "./workspace.ts";

export interface ClosedRecords {
  /**
   * Reports on every record of the workspace's folders that is not open.
   * @param previous the ids that the editor has, by address
   * @param tell told each report as it is ready
   */
  check(
    previous: ReadonlyMap<string, string>,
    token: CancellationToken,
    progress: WorkDoneProgressReporter,
    tell: (report: WorkspaceDocumentDiagnosticReport) => void,
  ): Promise<void>;
  /** Files changed, came or went: what rests on them is to be checked again. */
  changed(paths: readonly string[]): void;
  /** All is to be checked again. */
  changedAll(): void;
}

interface Kept {
  readonly report: Report;
  readonly needs: ReadonlySet<string>;
}

/** Fewer are checked before anyone could read how far it is. */
const WORTH_PROGRESS = 20;

export function createClosedRecords(
  paths: RecordPaths,
  workspace: Workspace,
  reports: Reports,
  clock: Clock,
): ClosedRecords {
  const kept = new Map<string, Kept>();

  async function checked(
    path: string,
    token: CancellationToken,
  ): Promise<Kept> {
    const before = kept.get(path);
    if (before !== undefined) return before;
    const report = await reports.reportOf(
      path,
      () => workspace.open(path),
      token,
    );
    const now = { report, needs: new Set(workspace.needsOf(path)) };
    kept.set(path, now);
    workspace.releaseIfClosed(path);
    return now;
  }

  return {
    async check(previous, token, progress, tell) {
      const all = await paths.all(token);
      const waiting = all.filter((path) => !kept.has(path)).length;
      const shows = WORTH_PROGRESS < waiting;
      if (shows) progress.begin("Checking records", 0, "", true);
      try {
        const pace = paceOf(clock, token);
        let done = 0;
        for (const path of all) {
          if (workspace.document(path) !== undefined) continue;
          const isNew = !kept.has(path);
          const { report } = await checked(path, token);
          tell({
            ...answerTo(report, previous.get(path)),
            uri: path,
            version: null,
          });
          if (isNew && shows)
            progress.report((100 * ++done) / waiting, `${done} of ${waiting}`);
          await pace();
          if (token.isCancellationRequested) throw new Cancelled();
        }
        // what the editor still shows of records that are gone
        const there = new Set(all);
        for (const uri of previous.keys()) {
          const path = workspace.pathOf(uri);
          if (there.has(path) || workspace.document(uri) !== undefined)
            continue;
          kept.delete(path);
          reports.forget(path);
          tell({ kind: "full", uri, version: null, items: [] });
        }
      } finally {
        if (shows) progress.done();
      }
    },
    changed(changed) {
      if (changed.length === 0) return;
      for (const [path, { needs }] of kept) {
        if (changed.some((each) => each === path || needs.has(each)))
          kept.delete(path);
      }
    },
    changedAll() {
      kept.clear();
    },
  };
}

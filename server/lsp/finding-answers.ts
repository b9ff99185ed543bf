// The answers to an editor that asks for findings: those of one record, and those of every record of the workspace that is not open.
import type {
  CancellationToken,
  DocumentDiagnosticParams,
  DocumentDiagnosticReport,
  ResultProgressReporter,
  WorkDoneProgressReporter,
  WorkspaceDiagnosticParams,
  WorkspaceDiagnosticReport,
  WorkspaceDiagnosticReportPartialResult,
  WorkspaceDocumentDiagnosticReport,
} from "vscode-languageserver";
import type { Client } from "./client.ts";
import { NEVER, type Clock } from "./clock.ts";
import type { ClosedRecords } from "./closed-records.ts";
import { quietly, type Log } from "./guard.ts";
import { answerTo, type Reports } from "./reports.ts";
import type { Settings } from "./settings.ts";
import type { WorkingOut } from "./working-out.ts";
import type { Workspace } from "./workspace.ts";

export interface FindingSources {
  readonly client: Pick<Client, "refreshesFindings">;
  readonly workspace: Workspace;
  readonly reports: Reports;
  readonly working: WorkingOut;
  readonly closed: ClosedRecords;
  readonly clock: Clock;
  readonly log: Log;
  readonly settings: () => Settings;
  /** Asks the editor to ask for findings again. */
  readonly refresh: (subject: "findings") => void;
}

export function createFindingAnswers(sources: FindingSources) {
  const { client, workspace, reports, closed, settings } = sources;
  return {
    async of(
      { textDocument: { uri }, previousResultId }: DocumentDiagnosticParams,
      token: CancellationToken,
    ): Promise<DocumentDiagnosticReport> {
      const open = () => workspace.open(uri);
      // an editor that can't be asked to ask again is told all at once
      const first = client.refreshesFindings
        ? reports.firstReportOf(uri, workspace.look(uri))
        : undefined;
      if (first !== undefined) theRestSoon(uri, sources);
      const report = first ?? (await reports.reportOf(uri, open, token));
      workspace.releaseIfClosed(uri);
      return answerTo(report, previousResultId);
    },
    async ofClosed(
      { previousResultIds }: WorkspaceDiagnosticParams,
      token: CancellationToken,
      progress: WorkDoneProgressReporter,
      partial:
        | ResultProgressReporter<WorkspaceDiagnosticReportPartialResult>
        | undefined,
    ): Promise<WorkspaceDiagnosticReport> {
      if (!settings().wholeWorkspace) {
        // what an editor was told before the setting was changed
        const told = previousResultIds.filter(
          ({ uri }) => workspace.document(uri) === undefined,
        );
        return {
          items: told.map(({ uri }) => ({
            kind: "full",
            uri,
            version: null,
            items: [],
          })),
        };
      }
      const items: WorkspaceDocumentDiagnosticReport[] = [];
      const previous = new Map(
        previousResultIds.map(({ uri, value }) => [uri, value]),
      );
      await closed.check(previous, token, progress, (report) => {
        if (partial === undefined) items.push(report);
        else partial.report({ items: [report] });
      });
      return { items };
    },
  };
}

/** Works out what the first report of a long record left for the second, and asks the editor to ask for it. */
function theRestSoon(
  uri: string,
  { workspace, working, clock, log, refresh }: FindingSources,
): void {
  const open = async () =>
    workspace.document(uri) === undefined ? undefined : workspace.open(uri);
  clock.after(0, () => {
    quietly("working out a long record", log, async () => {
      const now = await working.workedOut(open, NEVER);
      if (now !== undefined) refresh("findings");
    });
  });
}

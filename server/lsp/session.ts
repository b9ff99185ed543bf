// The part of the server that knows records. It is loaded after the first answer, so that starting waits for none of it.
import type {
  CancellationToken,
  DocumentDiagnosticParams,
  DocumentDiagnosticReport,
  PublishDiagnosticsParams,
  ResultProgressReporter,
  WorkDoneProgressReporter,
  WorkspaceDiagnosticParams,
  WorkspaceDiagnosticReport,
  WorkspaceDiagnosticReportPartialResult,
  WorkspaceDocumentDiagnosticReport,
} from "vscode-languageserver";
import type { Client } from "./client.ts";
import type { Clock } from "./clock.ts";
import {
  isRecord,
  recordsCome,
  recordsGone,
  type Change,
} from "./changed-folders.ts";
import { createClosedRecords } from "./closed-records.ts";
import type { OpenLastCommit } from "./compare-answer.ts";
import type { Conversion } from "./convert.ts";
import type { Document } from "./documents.ts";
import { createFeatures } from "./features.ts";
import type { FileAccess } from "./files.ts";
import { createGuideAnswers } from "./guide-answers.ts";
import { quietly, type Log } from "./guard.ts";
import { createNames } from "./names.ts";
import { otherRecords } from "./other-records.ts";
import { createOwnAnswers } from "./own-answers.ts";
import { createRecordList } from "./record-list.ts";
import { createRecordPaths } from "./record-paths.ts";
import { createRefresh, type Subject } from "./refresh.ts";
import { answerTo, createReports } from "./reports.ts";
import type { Settings } from "./settings.ts";
import type { OpenPastStates } from "./trend-answer.ts";
import { createStillness } from "./stillness.ts";
import { createWorkspace } from "./workspace.ts";
import { createWriting } from "./writing.ts";

/** What the session needs of the server. */
export interface Host {
  readonly client: Client;
  readonly files: FileAccess;
  readonly clock: Clock;
  readonly log: Log;
  readonly settings: () => Settings;
  /** Of the tool. */
  readonly version: string;
  /** Undefined where there is no git to run. */
  readonly lastCommit: OpenLastCommit | undefined;
  readonly pastStates: OpenPastStates | undefined;
  /** The folders of the workspace at the start. */
  readonly folders: readonly string[];
  /** Asks the editor to ask again. */
  readonly refresh: (subject: Subject) => void;
  /** Sends findings to an editor that can't ask. */
  readonly publish: (params: PublishDiagnosticsParams) => void;
}

export type Session = ReturnType<typeof createSession>;

export function createSession(host: Host) {
  const { client, files, clock, log, settings } = host;
  const workspace = createWorkspace(files);
  workspace.setFolders(host.folders);
  const conversion: Conversion = {
    client,
    uriOf: (path) => workspace.uriOf(path),
    versionOf: (path) =>
      workspace.document(workspace.uriOf(path))?.version ?? null,
  };
  const refresh = createRefresh(clock, host.refresh);
  const stillness = createStillness(clock, (uri) => {
    if (client.pulls) host.refresh("findings");
    else publishSoon(uri);
  });
  // an editor that pulls and can't be asked to pull again would never see what was held back
  const canHold = !client.pulls || client.refreshesFindings;
  const reports = createReports(
    Math.trunc(clock.now()).toString(36) +
      Math.trunc(Math.random() * 1e9).toString(36),
    () => workspace.revision(),
    clock,
    conversion,
    () => (canHold && settings().waitWhileTyping ? stillness : undefined),
    () => settings().levels,
  );
  const recordPaths = createRecordPaths(
    client.watches,
    workspace,
    files,
    clock,
  );
  const closed = createClosedRecords(recordPaths, workspace, reports, clock);
  const features = createFeatures(workspace, clock, conversion, settings);
  const names = createNames(workspace, recordPaths, clock, conversion);
  const records = createRecordList(
    client.watches,
    recordPaths,
    workspace,
    files,
    clock,
  );
  const writing = createWriting(workspace, records, conversion, settings);
  const due = new Set<string>();

  /** The open documents that rest on any of these paths, without those of the paths themselves. */
  function usersOf(paths: readonly string[]): readonly Document[] {
    return workspace.documents().filter(({ uri }) => {
      const path = workspace.pathOf(uri);
      const needs = workspace.needsOf(path);
      return !paths.includes(path) && paths.some((each) => needs.has(each));
    });
  }

  /** These documents may say something else now. */
  function changedIn(documents: readonly Document[]): void {
    if (client.pulls) refresh.soon("findings", "hints", "lenses");
    else {
      refresh.soon("hints", "lenses");
      for (const { uri } of documents) publishSoon(uri);
    }
  }

  function usersChanged(paths: readonly string[]): void {
    const users = usersOf(paths);
    if (0 < users.length) changedIn(users);
  }

  function everythingChanged(): void {
    changedIn(workspace.documents());
  }

  function recordsChanged(uris: readonly string[]): void {
    const paths = workspace.changed(uris);
    if (paths.length === 0) return;
    recordPaths.changed();
    records.changed(paths);
    closed.changed(paths);
    usersChanged(paths);
  }

  /** Once for all changes that have come in by then. */
  function publishSoon(uri: string): void {
    if (due.has(uri)) return;
    due.add(uri);
    clock.after(0, () => {
      due.delete(uri);
      quietly("sending findings", log, () => publish(uri));
    });
  }

  /** Works out what the first report of a long record left for the second, and asks the editor to ask for it. */
  function theRestSoon(uri: string): void {
    const open = async () =>
      workspace.document(uri) === undefined ? undefined : workspace.open(uri);
    clock.after(0, () => {
      quietly("working out a long record", log, async () => {
        const now = await reports.workedOut(open, NEVER);
        if (now !== undefined) host.refresh("findings");
      });
    });
  }

  async function publish(uri: string): Promise<void> {
    const report = await reports.reportOf(
      uri,
      () => workspace.open(uri),
      NEVER,
    );
    const document = workspace.document(uri);
    // closed meanwhile
    if (document === undefined) return;
    host.publish({ uri, version: document.version, diagnostics: report.items });
  }

  return {
    features,
    names,
    writing,
    own: createOwnAnswers({
      open: async (uri, token) => {
        const open = await reports.workedOut(() => workspace.open(uri), token);
        workspace.releaseIfClosed(uri);
        return open;
      },
      settings,
      uriOf: conversion.uriOf,
      guide: createGuideAnswers(workspace, clock),
      today: () => clock.today(),
      isThere: async (uri) => (await files.read(uri)) !== undefined,
      others: (path, token) =>
        otherRecords(path, token, recordPaths, workspace, clock),
      lastCommit: host.lastCommit,
      pastStates: host.pastStates,
      version: host.version,
    }),
    documentChanged(document: Document): void {
      const { uri } = document;
      stillness.changed(document, (line) => reports.codesOn(uri, line));
      workspace.setDocument(document);
      usersChanged([workspace.pathOf(uri)]);
      if (!client.pulls) publishSoon(uri);
    },
    /** Records that are not open follow an open one when it is saved: they are too many to follow its typing. */
    documentSaved(uri: string): void {
      closed.changed([workspace.pathOf(uri)]);
    },
    documentClosed(uri: string): void {
      const path = workspace.pathOf(uri);
      stillness.forget(uri);
      reports.forget(uri);
      features.forget(uri);
      if (!client.pulls) host.publish({ uri, diagnostics: [] });
      workspace.closeDocument(uri);
      recordPaths.changed();
      records.changed([path]);
      closed.changed([path]);
      usersChanged([path]);
    },
    filesChanged(changes: readonly Change[]): void {
      const others = changes.filter((each) => !isRecord(each));
      recordsChanged([
        ...changes.filter(isRecord).map(({ uri }) => uri),
        ...recordsGone(others, () => [
          ...workspace.known(),
          ...recordPaths.known(),
        ]),
      ]);
      if (0 < others.length)
        quietly("looking into new folders", log, async () => {
          recordsChanged(await recordsCome(others, workspace.folders(), files));
        });
    },
    /** For editors that don't tell of changed files. */
    diskUnsure(): void {
      workspace.changedAll();
      recordPaths.changed();
      records.changedAll();
      closed.changedAll();
      everythingChanged();
    },
    foldersChanged(uris: readonly string[]): void {
      workspace.setFolders(uris);
      recordPaths.changed();
      records.changedAll();
      closed.changedAll();
      everythingChanged();
    },
    settingsChanged(): void {
      closed.changedAll();
      everythingChanged();
    },
    async findings(
      { textDocument: { uri }, previousResultId }: DocumentDiagnosticParams,
      token: CancellationToken,
    ): Promise<DocumentDiagnosticReport> {
      const open = () => workspace.open(uri);
      // an editor that can't be asked to ask again is told all at once
      const isTwofold =
        client.refreshesFindings && workspace.document(uri) !== undefined;
      const first = isTwofold
        ? await reports.firstReportOf(uri, open)
        : undefined;
      if (first !== undefined) theRestSoon(uri);
      const report = first ?? (await reports.reportOf(uri, open, token));
      workspace.releaseIfClosed(uri);
      return answerTo(report, previousResultId);
    },
    async allFindings(
      { previousResultIds }: WorkspaceDiagnosticParams,
      token: CancellationToken,
      progress: WorkDoneProgressReporter,
      partial:
        | ResultProgressReporter<WorkspaceDiagnosticReportPartialResult>
        | undefined,
    ): Promise<WorkspaceDiagnosticReport> {
      const items: WorkspaceDocumentDiagnosticReport[] = [];
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

/** The token of work that is never called off. */
const NEVER: CancellationToken = {
  isCancellationRequested: false,
  onCancellationRequested: () => ({ dispose: () => undefined }),
};

// The part of the server that knows records. It is loaded after the first answer, so that starting waits for none of it. Here it is put
// together; what the parts do is theirs.
import type { PublishDiagnosticsParams } from "vscode-languageserver";
import { createChanges } from "./changes.ts";
import type { Client } from "./client.ts";
import { NEVER, type Clock } from "./clock.ts";
import { createClosedRecords } from "./closed-records.ts";
import type { OpenLastCommit } from "./compare-answer.ts";
import type { Conversion } from "./convert.ts";
import { createFeatures } from "./features.ts";
import type { FileAccess } from "./files.ts";
import { createFindingAnswers } from "./finding-answers.ts";
import { createGuideAnswers } from "./guide-answers.ts";
import type { Log } from "./guard.ts";
import { createHintAnswers } from "./hint-answers.ts";
import { createLensAnswers } from "./lens-answers.ts";
import { createLineAnswers } from "./line-answers.ts";
import { createNames } from "./names.ts";
import { createNotices } from "./notices.ts";
import { otherRecords } from "./other-records.ts";
import { createOwnAnswers } from "./own-answers.ts";
import { createRecordList } from "./record-list.ts";
import { createRecordPaths } from "./record-paths.ts";
import type { Subject } from "./refresh.ts";
import { createReports, type Reports } from "./reports.ts";
import { createSearchAnswers } from "./search-answers.ts";
import type { Settings } from "./settings.ts";
import { createShow } from "./shown-findings.ts";
import { createStillness } from "./stillness.ts";
import type { OpenPastStates } from "./trend-answer.ts";
import { createWorkingOut } from "./working-out.ts";
import { createWorkspace, type Workspace } from "./workspace.ts";

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
  const { client, files, clock, log, settings, refresh } = host;
  const workspace = createWorkspace(files);
  workspace.setFolders(host.folders);
  const conversion: Conversion = {
    client,
    uriOf: (path) => workspace.uriOf(path),
    versionOf: (path) =>
      workspace.document(workspace.uriOf(path))?.version ?? null,
  };
  const stillness = createStillness(clock, (uri) => {
    notices.due(uri);
  });
  // an editor that pulls and can't be asked to pull again would never see what was held back
  const canHold = !client.pulls || client.refreshesFindings;
  const working = createWorkingOut(workspace.revision, clock);
  const reports = createReports(
    Math.trunc(clock.now()).toString(36) +
      Math.trunc(Math.random() * 1e9).toString(36),
    working,
    createShow(conversion, () => settings().levels),
    () => (canHold && settings().waitWhileTyping ? stillness : undefined),
  );
  const notices = createNotices({
    client,
    clock,
    log,
    refresh,
    publish: host.publish,
    findingsOf: (uri) => openFindings(uri, workspace, reports),
  });
  const { watches } = client;
  const recordPaths = createRecordPaths(watches, workspace, files, clock);
  const records = createRecordList(
    watches,
    recordPaths,
    workspace,
    files,
    clock,
  );
  const closed = createClosedRecords(recordPaths, workspace, reports, clock);
  const lines = createLineAnswers(workspace);
  return {
    lines,
    features: createFeatures(workspace, clock, conversion, settings),
    hints: createHintAnswers(workspace, conversion, settings),
    lenses: createLensAnswers(workspace, client, settings),
    search: createSearchAnswers(workspace, records, conversion),
    names: createNames({ workspace, records: recordPaths, clock }, conversion),
    own: createOwnAnswers({
      open: async (uri, token) => {
        const open = await working.workedOut(() => workspace.open(uri), token);
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
    findings: createFindingAnswers({
      client,
      workspace,
      reports,
      working,
      closed,
      clock,
      log,
      settings,
      refresh,
    }),
    changes: createChanges({
      workspace,
      files,
      log,
      notices,
      stillness,
      reports,
      lines,
      recordPaths,
      records,
      closed,
    }),
  };
}

/** What an editor that can't ask is sent of an open document; undefined where it was closed meanwhile. */
async function openFindings(
  uri: string,
  workspace: Workspace,
  reports: Reports,
): Promise<PublishDiagnosticsParams | undefined> {
  const open = () => workspace.open(uri);
  const { items } = await reports.reportOf(uri, open, NEVER);
  const document = workspace.document(uri);
  return document === undefined
    ? undefined
    : { uri, version: document.version, diagnostics: items };
}

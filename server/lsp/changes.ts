// What each change that the editor tells of touches: which of the things that are kept no longer hold, and which open records may say
// something else now.
import {
  isRecord,
  recordsCome,
  recordsGone,
  type Change,
} from "./changed-folders.ts";
import type { ClosedRecords } from "./closed-records.ts";
import type { Document } from "./documents.ts";
import type { FileAccess } from "./files.ts";
import { quietly, type Log } from "./guard.ts";
import type { Notices } from "./notices.ts";
import type { RecordList } from "./record-list.ts";
import type { RecordPaths } from "./record-paths.ts";
import type { Reports } from "./reports.ts";
import type { Stillness } from "./stillness.ts";
import type { Workspace } from "./workspace.ts";

export interface ChangeSources {
  readonly workspace: Workspace;
  readonly files: FileAccess;
  readonly log: Log;
  readonly notices: Notices;
  /** What is kept of open documents. */
  readonly stillness: Stillness;
  readonly reports: Pick<Reports, "codesOn" | "forget">;
  readonly lines: { forget(uri: string): void };
  /** What is kept of the records of the folders. */
  readonly recordPaths: RecordPaths;
  readonly records: RecordList;
  readonly closed: ClosedRecords;
}

export function createChanges(sources: ChangeSources) {
  const { workspace, notices, stillness, reports, recordPaths, closed } =
    sources;

  function usersChanged(paths: readonly string[]): void {
    const users = usersOf(paths, workspace);
    if (0 < users.length) notices.mayDiffer(users);
  }

  function everythingChanged(): void {
    notices.mayDiffer(workspace.documents().map(({ uri }) => uri));
  }

  /** On the disk files came, went or have another text. */
  function filesChanged(paths: readonly string[]): void {
    if (paths.length === 0) return;
    recordPaths.changed();
    sources.records.changed(paths);
    closed.changed(paths);
    usersChanged(paths);
  }

  function allFilesChanged(): void {
    recordPaths.changed();
    sources.records.changedAll();
    closed.changedAll();
    everythingChanged();
  }

  return {
    documentChanged(document: Document): void {
      const { uri } = document;
      stillness.changed(document, (line) => reports.codesOn(uri, line));
      workspace.setDocument(document);
      usersChanged([workspace.pathOf(uri)]);
      notices.edited(uri);
    },
    /** Records that are not open follow an open one when it is saved: they are too many to follow its typing. */
    documentSaved(uri: string): void {
      closed.changed([workspace.pathOf(uri)]);
    },
    documentClosed(uri: string): void {
      const path = workspace.pathOf(uri);
      stillness.forget(uri);
      reports.forget(uri);
      sources.lines.forget(uri);
      notices.closed(uri);
      workspace.closeDocument(uri);
      filesChanged([path]);
    },
    filesChanged(changes: readonly Change[]): void {
      const others = changes.filter((each) => !isRecord(each));
      const gone = recordsGone(others, () => [
        ...workspace.known(),
        ...recordPaths.known(),
      ]);
      const uris = changes.filter(isRecord).map(({ uri }) => uri);
      filesChanged(workspace.changed([...uris, ...gone]));
      if (0 < others.length)
        quietly("looking into new folders", sources.log, async () => {
          const come = await recordsCome(
            others,
            workspace.folders(),
            sources.files,
          );
          filesChanged(workspace.changed(come));
        });
    },
    /** For editors that don't tell of changed files. */
    diskUnsure(): void {
      workspace.changedAll();
      allFilesChanged();
    },
    foldersChanged(uris: readonly string[]): void {
      workspace.setFolders(uris);
      allFilesChanged();
    },
    settingsChanged(): void {
      closed.changedAll();
      everythingChanged();
    },
  };
}

/** The open documents that rest on any of these paths, without those of the paths themselves. */
function usersOf(
  paths: readonly string[],
  workspace: Workspace,
): readonly string[] {
  return workspace
    .documents()
    .map(({ uri }) => uri)
    .filter((uri) => {
      const path = workspace.pathOf(uri);
      const needs = workspace.needsOf(path);
      return !paths.includes(path) && paths.some((each) => needs.has(each));
    });
}

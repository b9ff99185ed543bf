// Which records lie in the folders of the workspace. The folders are walked once for all who ask, and again once files may have come or gone.
import type { CancellationToken } from "vscode-languageserver";
import { paceOf, type Clock } from "./clock.ts";
import type { FileAccess } from "./files.ts";
import type { Workspace } from "./workspace.ts";

export interface RecordPaths {
  /** Every record of the folders, by path, sorted. */
  all(token: CancellationToken): Promise<readonly string[]>;
  /** Those of the last walk. */
  known(): readonly string[];
  /** Files came or went, or the folders are others. */
  changed(): void;
}

/** @param watched the editor tells of files that come and go: the folders need no second look */
export function createRecordPaths(
  watched: boolean,
  workspace: Workspace,
  files: FileAccess,
  clock: Clock,
): RecordPaths {
  let listed: readonly string[] | undefined;
  return {
    async all(token) {
      if (watched && listed !== undefined) return listed;
      const found = new Set<string>();
      const pace = paceOf(clock, token);
      for (const folder of workspace.folders()) {
        for await (const uri of files.records(folder)) {
          found.add(workspace.pathOf(uri));
          await pace();
        }
      }
      listed = [...found].sort();
      return listed;
    },
    known: () => listed ?? [],
    changed() {
      listed = undefined;
    },
  };
}

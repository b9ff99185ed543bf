// Which records the folders of the workspace hold, and the entries that each opens, for whoever looks for a name or a file. A file is read
// once until it changes; nothing is worked out.
import type { CancellationToken } from "vscode-languageserver";
import { readLines } from "../../grammar/lines.ts";
import { entriesNamedIn, type NamedEntry } from "../ide/workspace-symbols.ts";
import { paceOf, type Clock } from "./clock.ts";
import type { FileAccess } from "./files.ts";
import type { RecordPaths } from "./record-paths.ts";
import type { Workspace } from "./workspace.ts";

export interface RecordList {
  /** Every record of the folders and every open one, by path, with the entries it opens. */
  all(token: CancellationToken): Promise<readonly RecordNames[]>;
  /** Files changed on the disk, came or went. */
  changed(paths: readonly string[]): void;
  changedAll(): void;
}

export interface RecordNames {
  readonly path: string;
  readonly entries: readonly NamedEntry[];
}

/** @param watched the editor tells of files that change: one that was read needs no second look */
export function createRecordList(
  watched: boolean,
  paths: RecordPaths,
  workspace: Workspace,
  files: FileAccess,
  clock: Clock,
): RecordList {
  const read = new Map<string, readonly NamedEntry[]>();

  async function namesIn(path: string): Promise<readonly NamedEntry[]> {
    const before = read.get(path);
    if (before !== undefined) return before;
    const text = await files.read(path);
    const names = text === undefined ? [] : entriesNamedIn(readLines(text));
    read.set(path, names);
    return names;
  }

  return {
    async all(token) {
      const open = new Map(
        workspace
          .documents()
          .map((each) => [workspace.pathOf(each.uri), each] as const),
      );
      if (!watched) read.clear();
      const wanted = new Set([...open.keys(), ...(await paths.all(token))]);
      const pace = paceOf(clock, token);
      const found: RecordNames[] = [];
      for (const path of wanted) {
        const lines = workspace.document(path)?.lines ?? open.get(path)?.lines;
        const entries =
          lines === undefined ? await namesIn(path) : entriesNamedIn(lines);
        found.push({ path, entries });
        await pace();
      }
      return found;
    },
    changed(changed) {
      for (const path of changed) read.delete(path);
    },
    changedAll() {
      read.clear();
    },
  };
}

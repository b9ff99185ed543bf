// Which records the folders of the workspace hold, and the entries that each opens, for whoever looks for a name or a file. A file is read
// once until it changes; nothing is worked out.
import type { CancellationToken } from "vscode-languageserver";
import { readLines } from "../../grammar/lines.ts";
import { entriesNamedIn, type NamedEntry } from "../ide/workspace-symbols.ts";
import { paceOf, type Clock } from "./clock.ts";
import type { FileAccess } from "./files.ts";
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

/** @param watched the editor tells of files that come and go: the folders need no second look */
export function createRecordList(
  watched: boolean,
  workspace: Workspace,
  files: FileAccess,
  clock: Clock,
): RecordList {
  const read = new Map<string, readonly NamedEntry[]>();
  let listed: readonly string[] | undefined;

  async function list(token: CancellationToken): Promise<readonly string[]> {
    if (watched && listed !== undefined) return listed;
    const found = new Set<string>();
    const pace = paceOf(clock, token);
    for (const folder of workspace.folders()) {
      for await (const uri of files.records(folder)) {
        found.add(workspace.pathOf(uri));
        await pace();
      }
    }
    if (!watched) read.clear();
    listed = [...found].sort();
    return listed;
  }

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
      const paths = new Set([...open.keys(), ...(await list(token))]);
      const pace = paceOf(clock, token);
      const found: RecordNames[] = [];
      for (const path of paths) {
        const lines = workspace.document(path)?.lines ?? open.get(path)?.lines;
        const entries =
          lines === undefined ? await namesIn(path) : entriesNamedIn(lines);
        found.push({ path, entries });
        await pace();
      }
      return found;
    },
    changed(paths) {
      if (paths.length === 0) return;
      listed = undefined;
      for (const path of paths) read.delete(path);
    },
    changedAll() {
      listed = undefined;
      read.clear();
    },
  };
}

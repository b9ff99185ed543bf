// The records of the workspace's folders one after another, for an answer that takes more than the record in front: each is opened, given,
// and let go again where no document is open on it.
import type { CancellationToken } from "vscode-languageserver";
import type { OpenFile } from "../model/project.ts";
import { paceOf, type Clock } from "./clock.ts";
import type { RecordPaths } from "./record-paths.ts";
import type { Workspace } from "./workspace.ts";

/** @param than the path of the one that is left out */
export async function* otherRecords(
  than: string,
  token: CancellationToken,
  paths: RecordPaths,
  workspace: Workspace,
  clock: Clock,
): AsyncGenerator<OpenFile> {
  const pace = paceOf(clock, token);
  for (const path of await paths.all(token)) {
    if (path === than) continue;
    const open = await workspace.open(path);
    if (open !== undefined) yield open;
    workspace.releaseIfClosed(path);
    await pace();
  }
}

// The records that share a name: that of a crib is looked for in every record of the folders that uses the crib, open or not; that of a job in
// open records alone, since it ends with the job.
import type { CancellationToken, Position } from "vscode-languageserver";
import { definitionAt } from "../ide/navigation.ts";
import type { OpenFile } from "../model/project.ts";
import { paceOf, type Clock } from "./clock.ts";
import type { RecordPaths } from "./record-paths.ts";
import type { Workspace } from "./workspace.ts";

export interface At {
  readonly textDocument: { readonly uri: string };
  readonly position: Position;
}

/** Where records are looked for. */
export interface Sharing {
  readonly workspace: Workspace;
  readonly records: Pick<RecordPaths, "all">;
  readonly clock: Clock;
}

/**
 * Asks a record together with those that share the name at a position with it, all as they are at one moment; null where the record is not
 * there.
 */
export async function withSharers<R>(
  at: At,
  token: CancellationToken,
  sharing: Sharing,
  ask: (open: OpenFile, others: readonly OpenFile[]) => R,
): Promise<R | null> {
  const { workspace } = sharing;
  const paths = await sharers(at, token, sharing);
  try {
    const open = await workspace.open(at.textDocument.uri);
    const others: OpenFile[] = [];
    for (const path of paths) {
      const other = await workspace.open(path);
      if (other !== undefined) others.push(other);
    }
    return open === undefined ? null : ask(open, others);
  } finally {
    for (const path of paths) workspace.releaseIfClosed(path);
  }
}

/** The paths of other records that may use what stands at a position; those that are not open are to be released. */
async function sharers(
  { textDocument: { uri }, position }: At,
  token: CancellationToken,
  { workspace, records, clock }: Sharing,
): Promise<readonly string[]> {
  const open = await workspace.open(uri);
  if (open === undefined) return [];
  const homes = new Set(definitionAt(open, position).map(({ path }) => path));
  const isCribs = open.shop.files.some(
    ({ path, context }) => homes.has(path) && !context.isJob,
  );
  const paths = new Set(
    workspace.documents().map((each) => workspace.pathOf(each.uri)),
  );
  // a job's own names end with the job: no other record can use them unless it is open and says so
  if (isCribs) for (const path of await records.all(token)) paths.add(path);
  paths.delete(open.path);
  const pace = paceOf(clock, token);
  const found: string[] = [];
  for (const path of paths) {
    await workspace.open(path);
    const needs = workspace.needsOf(path);
    if ([...homes].some((home) => needs.has(home))) found.push(path);
    else workspace.releaseIfClosed(path);
    await pace();
  }
  return found;
}

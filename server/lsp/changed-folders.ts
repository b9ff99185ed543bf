// Folders that come or go with what is in them. An editor tells of the folder then, and of what lies in it not at all or in part: what was
// written before it watched the new folder, what was moved in, and what went with a folder is for us to find.
import { isLeftOut, isRecordName } from "../record-names.ts";
import { isIn, pathOf } from "./paths.ts";
import type { FileAccess } from "./files.ts";

/** A file or a folder that changed, as the protocol tells it. */
export interface Change {
  readonly uri: string;
  readonly type: number;
}

const CREATED = 1;
const DELETED = 3;

/** Records are told of by themselves, whatever happens to them. */
export function isRecord({ uri }: Change): boolean {
  return isRecordName(uri);
}

/** The records in those of the changed places that are new folders. */
export async function recordsCome(
  changes: readonly Change[],
  folders: readonly string[],
  files: FileAccess,
): Promise<readonly string[]> {
  const found: string[] = [];
  for (const { uri, type } of changes) {
    const path = pathOf(uri);
    if (type !== CREATED || isHidden(path, folders)) continue;
    for await (const record of files.records(path)) found.push(record);
  }
  return found;
}

/** Of the records that are known, those in places that are gone; they are asked for only where a place is. */
export function recordsGone(
  changes: readonly Change[],
  known: () => readonly string[],
): readonly string[] {
  const gone = changes
    .filter(({ type }) => type === DELETED)
    .map(({ uri }) => pathOf(uri));
  return gone.length === 0
    ? []
    : [...new Set(known())].filter((path) =>
        gone.some((folder) => isIn(path, folder)),
      );
}

/** In a folder whose records are no one's: builds and packages come and go by the thousand. */
function isHidden(path: string, folders: readonly string[]): boolean {
  const folder = folders.find((each) => isIn(path, each)) ?? "";
  return path.slice(folder.length).split("/").some(isLeftOut);
}

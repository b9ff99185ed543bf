// The states that a record stood in, as the language server reads them: commits with the files of each by their addresses.
import path from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { withoutRepository, type Env } from "./git.ts";
import { FETCH_THE_REST } from "./revision.ts";
import { versionsOf } from "./versions.ts";

export interface PastState {
  /** The day of the commit, ISO 8601. */
  readonly date: string;
  readonly commit: string;
  /** Address that the record had then. */
  readonly uri: string;
  /** Undefined where the file is not in it, or is no text; a HistoryFault where it can't be read. */
  readonly read: (uri: string) => Promise<string | undefined>;
}

export interface PastStates {
  /** The oldest first. */
  readonly states: readonly PastState[];
  /** Whole sentences. */
  readonly notes: readonly string[];
}

/** @param uri of a file that lies on the disk */
export async function pastStatesOf(
  uri: string,
  surroundings: Env,
): Promise<PastStates> {
  const file = fileURLToPath(uri);
  const name = path.basename(file);
  const found = await versionsOf(file, withoutRepository(surroundings));
  if (!found.ok)
    return {
      states: [],
      notes: [`${name} is read as it lies: ${found.because}.`],
    };
  return {
    states: found.versions.map((version) => {
      const opening = found.openAt;
      return {
        date: version.date,
        commit: version.commit.slice(0, 12),
        uri: pathToFileURL(version.file).href,
        async read(each) {
          const revision = await opening(version);
          const bytes = await revision.read(fileURLToPath(each));
          try {
            return bytes === undefined
              ? undefined
              : new TextDecoder("utf-8", { fatal: true }).decode(bytes);
          } catch {
            return undefined;
          }
        },
      };
    }),
    notes: [
      ...(found.versions.length === 0
        ? [`${name} is read as it lies: it was never committed.`]
        : []),
      ...(found.isShallow
        ? [
            `The history of ${name} ends where this clone does, which holds only the newest commits: ${FETCH_THE_REST}.`,
          ]
        : []),
    ],
  };
}

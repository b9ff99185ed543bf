// How the server reaches files that are not open: by the disk that it was given, and by asking an editor that offers it, since a browser has
// no disk and not every folder lies on one. Addresses are URIs.
import type { FileRequests } from "../protocol.ts";

export interface FileAccess {
  /** The text of a file; undefined where there is none, or none that can be read. */
  read(uri: string): Promise<string | undefined>;
  /** The records below a folder, in any order. @param here those that lie in it alone will do */
  records(folder: string, here?: boolean): AsyncIterable<string>;
}

/** Whoever can be asked: the connection to an editor. */
export interface Asked {
  sendRequest<R>(method: string, params: unknown): Promise<R>;
}

/**
 * The files that there are: those of the disk by the disk, all others by the editor.
 * @param disk undefined where there is none: the editor then has all
 * @param editor undefined where it offers no files: the disk then has all
 */
export function filesOf(
  disk: FileAccess | undefined,
  editor: Asked | undefined,
): FileAccess {
  if (editor === undefined) return disk ?? NONE;
  const asked = filesBy(editor);
  const whose = (uri: string): FileAccess =>
    disk !== undefined && uri.startsWith("file:") ? disk : asked;
  return {
    read: (uri) => whose(uri).read(uri),
    records: (folder, here) => whose(folder).records(folder, here),
  };
}

function filesBy(editor: Asked): FileAccess {
  const ask = <N extends keyof FileRequests>(
    name: N,
    params: FileRequests[N]["params"],
  ): Promise<FileRequests[N]["result"] | undefined> =>
    editor
      .sendRequest<FileRequests[N]["result"]>(name, params)
      // an editor that can't say has none
      .catch(() => undefined);
  return {
    read: async (uri) => (await ask("thou/readFile", { uri }))?.text,
    async *records(folder, here = false) {
      yield* (await ask("thou/findRecords", { folder, here }))?.uris ?? [];
    },
  };
}

const NONE: FileAccess = {
  read: () => Promise.resolve(undefined),
  // eslint-disable-next-line @typescript-eslint/require-await -- nothing to wait for
  async *records() {
    yield* [];
  },
};

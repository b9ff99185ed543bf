// The lines of files: of the open document where there is one, else of the disk, which is read once until the file changes.
import { readLines, type FileLines } from "../../grammar/lines.ts";
import type { Document } from "./documents.ts";
import type { FileAccess } from "./files.ts";
import { decoded, parentOf, pathOf } from "./paths.ts";

export interface Texts {
  /** The open documents by their paths. */
  readonly open: Map<string, Document>;
  /** The open documents lie elsewhere now: as `pathOf` says. */
  moveOpen(pathOf: (uri: string) => string): void;
  /** Null where there is no such file. */
  readonly linesOf: (path: string) => Promise<FileLines | null>;
  /** The names of the records in the folder of a file, sorted; asked of one that is not there. */
  besideOf(path: string): Promise<readonly string[]>;
  /** The disk is to be read again. */
  forget(path: string): void;
  /** The paths that were read or looked for on the disk. */
  read(): readonly string[];
}

export function createTexts(files: FileAccess): Texts {
  const open = new Map<string, Document>();
  const disk = new Map<string, Promise<FileLines | null>>();
  return {
    open,
    moveOpen(pathOf) {
      const documents = [...open.values()];
      open.clear();
      for (const each of documents) open.set(pathOf(each.uri), each);
    },
    async linesOf(path) {
      const document = open.get(path);
      if (document !== undefined) return document.lines;
      let reading = disk.get(path);
      if (reading === undefined) {
        reading = files
          .read(path)
          .then((text) => (text === undefined ? null : readLines(text)));
        disk.set(path, reading);
      }
      const lines = await reading;
      // opened meanwhile: the document holds
      return open.get(path)?.lines ?? lines;
    },
    async besideOf(path) {
      const folder = parentOf(path);
      const beside = new Set(open.keys());
      for await (const uri of files.records(folder, true))
        beside.add(pathOf(uri));
      return [...beside]
        .filter((each) => parentOf(each) === folder)
        .map((each) => decoded(each.slice(folder.length + 1)))
        .sort();
    },
    forget(path) {
      disk.delete(path);
    },
    read: () => [...disk.keys()],
  };
}

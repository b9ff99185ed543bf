// The projects: one for each folder of the workspace, and one for each folder in which a lone file lies. Each is given the lines of the files
// that are asked for and of all that they use, and given them again where they may have changed. Where lines come from is texts.ts's.
import type { FileLines } from "../../grammar/lines.ts";
import type { FileAlone, OpenFile } from "../model/project.ts";
import { createProject, type Project } from "../rules/check.ts";

interface Root {
  readonly project: Project;
  /** The paths that the project was given, missing ones among them. */
  readonly given: Set<string>;
  /** Those that have to be read again before anything is said. */
  readonly stale: Set<string>;
}

export interface Roots {
  /**
   * A record of a folder with all that it uses; undefined where it is not there.
   * @param wants told of paths that it rests on, before they are read
   */
  open(
    folder: string,
    path: string,
    linesOf: (path: string) => Promise<FileLines | null>,
    wants: (paths: readonly string[]) => void,
  ): Promise<OpenFile | undefined>;
  /** A file of a folder by itself; `lines` are its own, should it have to be given. */
  look(folder: string, path: string, lines: FileLines): FileAlone | undefined;
  /** These are its lines now, for whoever was given others. */
  changed(path: string, lines: FileLines): void;
  /** Its lines may be others now. */
  stale(path: string): void;
  /** Lets a file go, and with it each folder that it was the last to be kept in: see `keeps`. */
  drop(
    path: string,
    keeps: (folder: string, given: ReadonlySet<string>) => boolean,
  ): void;
  /** The paths that were given, missing ones among them. */
  given(): readonly string[];
  clear(): void;
}

export function createRoots(): Roots {
  const roots = new Map<string, Root>();

  function rootOf(folder: string): Root {
    let root = roots.get(folder);
    if (root === undefined) {
      root = {
        project: createProject({ root: folder }),
        given: new Set(),
        stale: new Set(),
      };
      roots.set(folder, root);
    }
    return root;
  }

  return {
    async open(folder, path, linesOf, wants) {
      const root = rootOf(folder);
      if (!root.given.has(path)) root.stale.add(path);
      for (const each of root.stale) give(root, each, await linesOf(each));
      for (;;) {
        const missing = root.project.missingUses(path);
        if (missing.length === 0) break;
        wants(missing);
        for (const each of missing) give(root, each, await linesOf(each));
      }
      return root.project.open(path);
    },
    look(folder, path, lines) {
      const root = rootOf(folder);
      if (!root.given.has(path)) give(root, path, lines);
      return root.project.look(path);
    },
    changed(path, lines) {
      for (const root of roots.values())
        if (root.given.has(path)) give(root, path, lines);
    },
    stale(path) {
      for (const { given, stale } of roots.values())
        if (given.has(path)) stale.add(path);
    },
    drop(path, keeps) {
      for (const [folder, root] of roots) {
        root.stale.delete(path);
        if (root.given.delete(path)) root.project.dropFile(path);
        if (!keeps(folder, root.given)) roots.delete(folder);
      }
    },
    given: () => [...roots.values()].flatMap(({ given }) => [...given]),
    clear() {
      roots.clear();
    },
  };
}

function give(root: Root, path: string, lines: FileLines | null): void {
  root.given.add(path);
  root.stale.delete(path);
  root.project.setFile(path, lines);
}

// The projects: one for each folder of the workspace, and one for each folder in which a lone file lies. Each is given the lines of the files
// that are asked for and of all that they use, and given them again where they may have changed. Where lines come from is texts.ts's.
import type { FileLines } from "../../grammar/lines.ts";
import type { FileAlone, OpenFile } from "../model/project.ts";
import { parentOf } from "./paths.ts";
import type { Texts } from "./texts.ts";
import { createProject, type Project } from "../rules/check.ts";

interface Root {
  readonly project: Project;
  /** The paths that the project was given, missing ones among them. */
  readonly given: Set<string>;
  /** Those that have to be read again before anything is said. */
  readonly stale: Set<string>;
  /** Those that are not there: what is said of them rests on what lies beside them. */
  readonly gone: Set<string>;
}

export interface Roots {
  /**
   * A record of a folder with all that it uses; undefined where it is not there.
   * @param wants told of paths that it rests on, before they are read
   */
  open(
    folder: string,
    path: string,
    texts: Pick<Texts, "linesOf" | "besideOf">,
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
        gone: new Set(),
      };
      roots.set(folder, root);
    }
    return root;
  }

  return {
    async open(folder, path, texts, wants) {
      const root = rootOf(folder);
      if (!root.given.has(path)) root.stale.add(path);
      for (const each of root.stale) await giveRead(root, each, texts);
      for (;;) {
        const missing = root.project.missingUses(path);
        if (missing.length === 0) break;
        wants(missing);
        for (const each of missing) await giveRead(root, each, texts);
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
      for (const { given, stale, gone } of roots.values()) {
        if (given.has(path)) stale.add(path);
        for (const each of gone)
          if (parentOf(each) === parentOf(path)) stale.add(each);
      }
    },
    drop(path, keeps) {
      for (const [folder, root] of roots) {
        root.stale.delete(path);
        root.gone.delete(path);
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

async function giveRead(
  root: Root,
  path: string,
  { linesOf, besideOf }: Parameters<Roots["open"]>[2],
): Promise<void> {
  const lines = await linesOf(path);
  give(root, path, lines, lines === null ? await besideOf(path) : []);
}

function give(
  root: Root,
  path: string,
  lines: FileLines | null,
  beside: readonly string[] = [],
): void {
  root.given.add(path);
  root.stale.delete(path);
  if (lines === null) root.gone.add(path);
  else root.gone.delete(path);
  root.project.setFile(path, lines, beside);
}

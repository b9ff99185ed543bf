// The records and all that they use, as files that come, change and go: which of them are kept, and for whom. It gives open files to whoever
// asks; what they say is the model's and the rules'.
import type { FileAlone, OpenFile } from "../model/project.ts";
import type { Document } from "./documents.ts";
import type { FileAccess } from "./files.ts";
import { pathOf } from "./paths.ts";
import { createPlaces } from "./places.ts";
import { createRoots } from "./roots.ts";
import { createTexts } from "./texts.ts";

export interface Workspace {
  /** A record with all that it uses, read from the disk where need be; undefined where it is not there. */
  open(uri: string): Promise<OpenFile | undefined>;
  /** An open document by itself, without anything of the disk; undefined where it is not open. */
  look(uri: string): FileAlone | undefined;
  /** Forgets a record that is not open, unless an open one uses it. */
  releaseIfClosed(uri: string): void;
  setDocument(document: Document): void;
  closeDocument(uri: string): void;
  document(uri: string): Document | undefined;
  documents(): readonly Document[];
  /** The paths of files that were read or looked for. */
  known(): readonly string[];
  /** These files have changed on the disk; gives the paths of those that are not open. */
  changed(uris: readonly string[]): readonly string[];
  /** Any file may have changed: for editors that don't tell. */
  changedAll(): void;
  setFolders(uris: readonly string[]): void;
  folders(): readonly string[];
  /** The folder that a record belongs to: one of the workspace's, else the one it lies in. */
  folderOf(path: string): string;
  /** Another number whenever anything may have changed. */
  readonly revision: () => number;
  pathOf(uri: string): string;
  /** The address by which the editor knows a path. */
  uriOf(path: string): string;
  /** The paths that a record rests on, its own among them, as far as is known. */
  readonly needsOf: (path: string) => ReadonlySet<string>;
}

export function createWorkspace(files: FileAccess): Workspace {
  const places = createPlaces();
  const texts = createTexts(files);
  const roots = createRoots();
  const documents = texts.open;
  const needs = createNeeds();
  let revision = 0;

  function forget(path: string): void {
    revision++;
    texts.forget(path);
    roots.stale(path);
  }

  /** Lets a file go that no open document is or rests on. */
  function releaseIfIdle(path: string): void {
    const open = [...documents.keys()];
    if (open.some((each) => each === path || needs.of(each).has(path))) return;
    needs.forget(path);
    texts.forget(path);
    roots.drop(
      path,
      (folder, given) =>
        places.folders().includes(folder) ||
        open.some((each) => given.has(each)),
    );
  }

  return {
    async open(uri) {
      const path = places.pathOf(uri);
      const open = await roots.open(
        places.homeOf(path),
        path,
        texts,
        (paths) => {
          needs.add(path, paths);
        },
      );
      const used = open?.shop.files ?? [];
      needs.add(
        path,
        used.map((file) => file.path),
      );
      return open;
    },
    look(uri) {
      const path = places.pathOf(uri);
      const lines = documents.get(path)?.lines;
      return lines === undefined
        ? undefined
        : roots.look(places.homeOf(path), path, lines);
    },
    releaseIfClosed(uri) {
      releaseIfIdle(places.pathOf(uri));
    },
    setDocument(document) {
      revision++;
      const path = places.pathOf(document.uri);
      documents.set(path, document);
      roots.changed(path, document.lines);
    },
    closeDocument(uri) {
      const path = places.pathOf(uri);
      documents.delete(path);
      forget(path);
      releaseIfIdle(path);
    },
    known: () => [...texts.read(), ...roots.given()],
    document: (uri) => documents.get(places.pathOf(uri)),
    documents: () => [...documents.values()],
    changed(uris) {
      const paths = [...new Set(uris.map(pathOf))].filter(
        (path) => !documents.has(path),
      );
      paths.forEach(forget);
      return paths;
    },
    changedAll() {
      for (const path of texts.read()) {
        if (!documents.has(path)) forget(path);
      }
    },
    setFolders(uris) {
      revision++;
      places.setFolders(uris);
      texts.moveOpen(places.pathOf);
      roots.clear();
      needs.clear();
    },
    folders: places.folders,
    folderOf: places.homeOf,
    revision: () => revision,
    pathOf: places.pathOf,
    uriOf: (path) => documents.get(path)?.uri ?? path,
    needsOf: needs.of,
  };
}

/** The paths that each record rests on, its own among them, as far as is known. */
function createNeeds() {
  const needs = new Map<string, Set<string>>();
  return {
    of: (path: string): ReadonlySet<string> => needs.get(path) ?? new Set(),
    add(path: string, more: readonly string[]): void {
      const before = needs.get(path) ?? new Set();
      for (const each of more) before.add(each);
      needs.set(path, before);
    },
    forget(path: string): void {
      needs.delete(path);
    },
    clear(): void {
      needs.clear();
    },
  };
}

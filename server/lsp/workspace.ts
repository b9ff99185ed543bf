// The records and all that they use: which folder each belongs to, open documents before the disk, files of the disk read once until they
// change. It gives open files to whoever asks; what they say is the model's and the rules'.
import type { FileLines } from "../../grammar/lines.ts";
import { readLines } from "../../grammar/lines.ts";
import { inAddress } from "../model/address.ts";
import type { FileAlone, OpenFile } from "../model/project.ts";
import { createProject, type Project } from "../rules/check.ts";
import type { Document } from "./documents.ts";
import type { FileAccess } from "./files.ts";
import { folderOf, isIn, parentOf, pathOf } from "./paths.ts";

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
  revision(): number;
  pathOf(uri: string): string;
  /** The address by which the editor knows a path. */
  uriOf(path: string): string;
  /** The paths that a record rests on, its own among them, as far as is known. */
  needsOf(path: string): ReadonlySet<string>;
}

/** The records of one folder of the workspace, or of one folder that holds a lone file. */
interface Root {
  readonly project: Project;
  /** The paths that the project was given, missing ones among them. */
  readonly given: Set<string>;
  /** Those that have to be read again before anything is said. */
  readonly stale: Set<string>;
}

export function createWorkspace(files: FileAccess): Workspace {
  let folders: readonly string[] = [];
  const roots = new Map<string, Root>();
  const documents = new Map<string, Document>();
  const disk = new Map<string, Promise<FileLines | null>>();
  const needs = new Map<string, Set<string>>();
  const places = new Map<string, string>();
  let revision = 0;

  /** Editors ask by the same few addresses again and again. */
  function placeOf(uri: string): string {
    let place = places.get(uri);
    if (place === undefined) {
      place = newPlaceOf(uri);
      places.set(uri, place);
    }
    return place;
  }

  function newPlaceOf(uri: string): string {
    const unsaved = /^untitled:(\/?)(.*)$/su.exec(uri);
    if (unsaved === null) return pathOf(uri);
    const [, slash = "", name = ""] = unsaved;
    // a new file lies where it will be saved, if the editor says where; else in the first folder, so that it may use the crib there
    return slash === ""
      ? `${folders[0] ?? "untitled://"}/${inAddress(name)}`
      : pathOf(`file:///${name}`);
  }

  function homeOf(path: string): string {
    const folder = folders
      .filter((each) => isIn(path, each))
      .reduce((a, b) => (a.length < b.length ? b : a), "");
    return folder === "" ? parentOf(path) : folder;
  }

  function rootOf(path: string): Root {
    const name = homeOf(path);
    let root = roots.get(name);
    if (root === undefined) {
      root = {
        project: createProject({ root: name }),
        given: new Set(),
        stale: new Set(),
      };
      roots.set(name, root);
    }
    return root;
  }

  function give(root: Root, path: string, lines: FileLines | null): void {
    root.given.add(path);
    root.stale.delete(path);
    root.project.setFile(path, lines);
  }

  async function linesOf(path: string): Promise<FileLines | null> {
    const open = documents.get(path);
    if (open !== undefined) return open.lines;
    let reading = disk.get(path);
    if (reading === undefined) {
      reading = files
        .read(path)
        .then((text) => (text === undefined ? null : readLines(text)));
      disk.set(path, reading);
    }
    const lines = await reading;
    // opened meanwhile: the document holds
    return documents.get(path)?.lines ?? lines;
  }

  function forget(path: string): void {
    revision++;
    disk.delete(path);
    for (const { given, stale } of roots.values()) {
      if (given.has(path)) stale.add(path);
    }
  }

  function isNeeded(path: string): boolean {
    for (const each of documents.keys()) {
      if (each === path || needs.get(each)?.has(path) === true) return true;
    }
    return false;
  }

  function drop(path: string): void {
    for (const [name, root] of roots) {
      root.stale.delete(path);
      if (root.given.delete(path)) root.project.dropFile(path);
      const isIdle = ![...documents.keys()].some((each) =>
        root.given.has(each),
      );
      if (isIdle && !folders.includes(name)) roots.delete(name);
    }
  }

  return {
    async open(uri) {
      const path = placeOf(uri);
      const root = rootOf(path);
      if (!root.given.has(path)) root.stale.add(path);
      for (const each of root.stale) give(root, each, await linesOf(each));
      for (;;) {
        const missing = root.project.missingUses(path);
        if (missing.length === 0) break;
        needs.set(path, new Set([...(needs.get(path) ?? []), ...missing]));
        for (const each of missing) give(root, each, await linesOf(each));
      }
      const open = root.project.open(path);
      const found = needs.get(path) ?? new Set<string>();
      for (const file of open?.shop.files ?? []) found.add(file.path);
      needs.set(path, found);
      return open;
    },
    look(uri) {
      const path = placeOf(uri);
      const document = documents.get(path);
      if (document === undefined) return undefined;
      const root = rootOf(path);
      if (!root.given.has(path)) give(root, path, document.lines);
      return root.project.look(path);
    },
    releaseIfClosed(uri) {
      const path = placeOf(uri);
      if (isNeeded(path)) return;
      needs.delete(path);
      disk.delete(path);
      drop(path);
    },
    setDocument(document) {
      revision++;
      const path = placeOf(document.uri);
      documents.set(path, document);
      for (const root of roots.values()) {
        if (root.given.has(path)) give(root, path, document.lines);
      }
    },
    closeDocument(uri) {
      const path = placeOf(uri);
      documents.delete(path);
      forget(path);
      if (isNeeded(path)) return;
      needs.delete(path);
      drop(path);
    },
    known: () => [
      ...disk.keys(),
      ...[...roots.values()].flatMap(({ given }) => [...given]),
    ],
    document: (uri) => documents.get(placeOf(uri)),
    documents: () => [...documents.values()],
    changed(uris) {
      const paths = [...new Set(uris.map(pathOf))].filter(
        (path) => !documents.has(path),
      );
      paths.forEach(forget);
      return paths;
    },
    changedAll() {
      for (const path of [...disk.keys()]) {
        if (!documents.has(path)) forget(path);
      }
    },
    setFolders(uris) {
      revision++;
      places.clear();
      const open = [...documents.values()];
      folders = uris.map(folderOf);
      roots.clear();
      documents.clear();
      needs.clear();
      for (const document of open)
        documents.set(placeOf(document.uri), document);
    },
    folders: () => folders,
    folderOf: homeOf,
    revision: () => revision,
    pathOf: placeOf,
    uriOf: (path) => documents.get(path)?.uri ?? path,
    needsOf: (path) => needs.get(path) ?? new Set(),
  };
}

// Where each address that an editor uses lies: its path, of which every file has one, and the folder of the workspace that it belongs to.
import { inAddress } from "../model/address.ts";
import { folderOf, isIn, parentOf, pathOf } from "./paths.ts";

export interface Places {
  readonly pathOf: (uri: string) => string;
  /** The folder that a record belongs to: one of the workspace's, else the one it lies in. */
  readonly homeOf: (path: string) => string;
  readonly folders: () => readonly string[];
  setFolders(uris: readonly string[]): void;
}

export function createPlaces(): Places {
  let folders: readonly string[] = [];
  /** Editors ask by the same few addresses again and again. */
  const known = new Map<string, string>();

  return {
    pathOf(uri) {
      let path = known.get(uri);
      if (path === undefined) {
        path = placeOf(uri, folders);
        known.set(uri, path);
      }
      return path;
    },
    homeOf(path) {
      const folder = folders
        .filter((each) => isIn(path, each))
        .reduce((a, b) => (a.length < b.length ? b : a), "");
      return folder === "" ? parentOf(path) : folder;
    },
    folders: () => folders,
    setFolders(uris) {
      known.clear();
      folders = uris.map(folderOf);
    },
  };
}

/** A new file lies where it will be saved, if the editor says where; else in the first folder, so that it may use the crib there. */
function placeOf(uri: string, folders: readonly string[]): string {
  const unsaved = /^untitled:(\/?)(.*)$/su.exec(uri);
  if (unsaved === null) return pathOf(uri);
  const [, slash = "", name = ""] = unsaved;
  return slash === ""
    ? `${folders[0] ?? "untitled://"}/${inAddress(name)}`
    : pathOf(`file:///${name}`);
}

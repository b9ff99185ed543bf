// Addresses of files as the project wants them: one address, one file. Editors write the same file in several ways (`c%3A` and `C:`,
// brackets escaped or not); here each has one form.
import { inAddress } from "../model/address.ts";

/** The one form of an address that means a place in a folder. */
export function pathOf(uri: string): string {
  const scheme = /^[a-z][a-z\d+.-]*:/iu.exec(uri)?.[0] ?? "";
  const [path = ""] = uri.slice(scheme.length).split(/[?#]/u, 1);
  const parts = path.split("/").map((part) => inAddress(decoded(part)));
  const drive = parts[3];
  // a drive has no case
  if (scheme === "file:" && drive !== undefined && /^[a-z]%3A$/iu.test(drive))
    parts[3] = drive.toLowerCase().replace("%3a", "%3A");
  return scheme.toLowerCase() + parts.join("/");
}

export function decoded(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    // a percent sign that escapes nothing stands for itself
    return part;
  }
}

/** A folder without the slash at its end. */
export function folderOf(uri: string): string {
  return pathOf(uri).replace(/\/+$/u, "");
}

/** The folder that a path lies in. */
export function parentOf(path: string): string {
  return path.slice(0, Math.max(0, path.lastIndexOf("/")));
}

export function isIn(path: string, folder: string): boolean {
  return path.startsWith(`${folder}/`);
}

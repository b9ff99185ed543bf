// Which records are served, by the scheme of their address.
import * as vscode from "vscode";

/** Records on the disk, records never saved, and records of a repository that is browsed without being cloned. */
const usualSchemes = ["file", "untitled", "vscode-vfs"];

/** The records that are served: besides the usual ones those of the folders, wherever these lie; none of old versions and the like. */
export function schemesServed(): ReadonlySet<string> {
  const folders = vscode.workspace.workspaceFolders ?? [];
  return new Set([...usualSchemes, ...folders.map(({ uri }) => uri.scheme)]);
}

export function recordsOf(schemes: ReadonlySet<string>) {
  return [...schemes].map((scheme) => ({ language: "thou", scheme }));
}

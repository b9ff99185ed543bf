// Reads files for the server: in a browser it has none, and a folder may lie where no disk reaches.
import * as vscode from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import { FILES_OFFERED, type FileRequests } from "../server/protocol.ts";
import { isLeftOut, isRecordName } from "../server/record-names.ts";

/** Has a client answer the server's requests for files, and say that it does. It has not started yet. */
export function offerFiles(client: BaseLanguageClient): void {
  client.registerFeature({
    fillClientCapabilities(capabilities) {
      const others: unknown = capabilities.experimental; // typed any
      capabilities.experimental = {
        ...(typeof others === "object" ? others : {}),
        [FILES_OFFERED]: true,
      };
    },
    initialize: () => undefined,
    getState: () => ({ kind: "static" }),
    clear: () => undefined,
  });
  const answer = <N extends keyof FileRequests>(
    name: N,
    handle: (
      params: FileRequests[N]["params"],
    ) => Promise<FileRequests[N]["result"]>,
  ): void => {
    client.onRequest(name, handle);
  };
  answer("thou/readFile", async ({ uri }) => {
    const text = await read(vscode.Uri.parse(uri));
    return text === undefined ? null : { text };
  });
  answer("thou/findRecords", async ({ folder, here }) => {
    const found = await recordsBelow(vscode.Uri.parse(folder), here);
    return { uris: found.map(String) };
  });
}

async function read(file: vscode.Uri): Promise<string | undefined> {
  try {
    const { type } = await vscode.workspace.fs.stat(file);
    if ((type & vscode.FileType.File) === 0) return undefined;
    const bytes = await vscode.workspace.fs.readFile(file);
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

/** Looked for folder by folder: not every file system can be searched. Links are not followed, since they may lead back. */
async function recordsBelow(
  folder: vscode.Uri,
  here: boolean,
): Promise<vscode.Uri[]> {
  const entries = await Promise.resolve(
    vscode.workspace.fs.readDirectory(folder),
  ).catch(() => []);
  const found = await Promise.all(
    entries.map(async ([name, type]) => {
      const entry = vscode.Uri.joinPath(folder, name);
      if (type === vscode.FileType.File)
        return isRecordName(name) ? [entry] : [];
      return type === vscode.FileType.Directory && !here && !isLeftOut(name)
        ? recordsBelow(entry, here)
        : [];
    }),
  );
  return found.flat();
}

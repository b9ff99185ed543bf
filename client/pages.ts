// The pages of findings as read-only files of a scheme of their own, `thou-page:/fit-tight.md`, so that a link of a finding, a
// link between pages and a window that is opened again all find them. The server writes the pages.
import * as vscode from "vscode";

const scheme = "thou-page";

/** The address of a finding's page; the server gives the same one with each finding. */
export function pageAddress(code: string): vscode.Uri {
  return vscode.Uri.from({ scheme, path: `/${code}.md` });
}

export function isFindingCode(value: unknown): value is string {
  return typeof value === "string" && /^[a-z]+(?:-[a-z]+)*$/.test(value);
}

/** @param fetch gives the page of a code as Markdown, undefined where there is none, and rejects when it cannot say */
export function registerPages(
  fetch: (code: string) => Promise<string | undefined>,
): vscode.Disposable {
  const nothingChanges = new vscode.EventEmitter<vscode.FileChangeEvent[]>();
  const refuse = (address: vscode.Uri): never => {
    throw vscode.FileSystemError.NoPermissions(address);
  };

  async function read(address: vscode.Uri): Promise<Uint8Array> {
    const code = /^\/(.+)\.md$/.exec(address.path)?.[1];
    if (!isFindingCode(code))
      throw vscode.FileSystemError.FileNotFound(address);
    let markdown: string | undefined;
    try {
      markdown = await fetch(code);
    } catch (reason) {
      throw vscode.FileSystemError.Unavailable(
        reason instanceof Error ? reason.message : String(reason),
      );
    }
    if (markdown === undefined)
      throw vscode.FileSystemError.FileNotFound(address);
    return new TextEncoder().encode(markdown);
  }

  const provider: vscode.FileSystemProvider = {
    onDidChangeFile: nothingChanges.event,
    watch: () => new vscode.Disposable(() => undefined),
    async stat(address) {
      const { length } = await read(address);
      return { type: vscode.FileType.File, ctime: 0, mtime: 0, size: length };
    },
    readFile: read,
    readDirectory: () => [],
    createDirectory: refuse,
    writeFile: refuse,
    delete: refuse,
    rename: refuse,
  };
  return vscode.Disposable.from(
    nothingChanges,
    vscode.workspace.registerFileSystemProvider(scheme, provider, {
      isCaseSensitive: true,
      isReadonly: true,
    }),
  );
}

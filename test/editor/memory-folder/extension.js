// A folder that lies on no disk, for the tests in the browser: the files of records.json beside this one, in memory. A name that ends in a
// stroke is an empty folder. What is written is told to the address `written`, so that a test can read it.
/* global exports, require, fetch, TextDecoder, TextEncoder */
const vscode = require("vscode");

exports.activate = async (context) => {
  const address = vscode.Uri.joinPath(context.extensionUri, "records.json");
  const told = vscode.Uri.joinPath(context.extensionUri, "written");
  const files = new Map();
  const answer = await fetch(address.toString(true));
  for (const [path, text] of Object.entries(await answer.json()))
    files.set(path, new TextEncoder().encode(text));
  const changed = new vscode.EventEmitter();
  const isFolder = (path) =>
    path === "/" ||
    files.has(`${path}/`) ||
    [...files.keys()].some((each) => each.startsWith(`${path}/`));
  const refused = () => {
    throw vscode.FileSystemError.NoPermissions("only files are written here");
  };
  context.subscriptions.push(
    vscode.workspace.registerFileSystemProvider("thou-memory", {
      onDidChangeFile: changed.event,
      watch: () => ({ dispose() {} }),
      stat(uri) {
        const bytes = files.get(uri.path);
        if (bytes === undefined && !isFolder(uri.path))
          throw vscode.FileSystemError.FileNotFound(uri);
        const type =
          bytes === undefined
            ? vscode.FileType.Directory
            : vscode.FileType.File;
        return { type, ctime: 0, mtime: 0, size: bytes?.length ?? 0 };
      },
      readDirectory(uri) {
        const start = uri.path === "/" ? "/" : `${uri.path}/`;
        const found = new Map();
        for (const path of files.keys()) {
          if (!path.startsWith(start)) continue;
          const [name, ...below] = path.slice(start.length).split("/");
          if (name === "") continue;
          found.set(
            name,
            below.length === 0
              ? vscode.FileType.File
              : vscode.FileType.Directory,
          );
        }
        return [...found];
      },
      readFile(uri) {
        const bytes = files.get(uri.path);
        if (bytes === undefined) throw vscode.FileSystemError.FileNotFound(uri);
        return bytes;
      },
      async writeFile(uri, bytes) {
        const type = files.has(uri.path)
          ? vscode.FileChangeType.Changed
          : vscode.FileChangeType.Created;
        files.set(uri.path, bytes);
        changed.fire([{ type, uri }]);
        await fetch(told.toString(true), {
          method: "POST",
          body: JSON.stringify([uri.path, new TextDecoder().decode(bytes)]),
        });
      },
      createDirectory: refused,
      delete: refused,
      rename: refused,
    }),
  );
};

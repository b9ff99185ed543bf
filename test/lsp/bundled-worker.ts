// The server as it ships for a browser, in a worker: of Node here (worker-shim.mjs). An editor is at the other end of its messages, and reads
// the files that it asks for.
import { mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { Worker } from "node:worker_threads";
import { build } from "esbuild";
import {
  AbstractMessageReader,
  AbstractMessageWriter,
  type DataCallback,
  type Disposable,
  type Message,
} from "vscode-jsonrpc/node";
import { serverInBrowser, session } from "../../.config/bundles.mjs";
import { FILES_OFFERED, type FileRequests } from "../../server/protocol.ts";
import { createEditorOver, FULL, type Editor } from "./editor.ts";

/** A full editor that reads files, too. */
export const READING = { ...FULL, experimental: { [FILES_OFFERED]: true } };

/** Whatever carries messages both ways. */
export interface Port {
  post(message: Message): void;
  receive(callback: (message: Message) => void): void;
}

/** Bundles the server of a browser and its session into a folder of their own. */
export async function bundleForBrowser(): Promise<{
  readonly folder: string;
  /** What each file of it still imports when it runs. */
  readonly imports: Readonly<Record<string, readonly string[]>>;
  remove(): Promise<void>;
}> {
  const folder = await mkdtemp(join(tmpdir(), "thou-browser-"));
  // as the package's own says
  await writeFile(join(folder, "package.json"), '{"type":"module"}');
  const built = await Promise.all(
    [serverInBrowser(folder), session(folder)].map((options) =>
      build({ ...options, metafile: true }),
    ),
  );
  const imports = Object.fromEntries(
    built.flatMap(({ metafile }) =>
      Object.entries(metafile.outputs).map(([file, output]) => [
        basename(file),
        output.imports.map(({ path }) => path),
      ]),
    ),
  );
  return { folder, imports, remove: () => rm(folder, { recursive: true }) };
}

export function startWorker(folder: string) {
  const worker = new Worker(new URL("worker-shim.mjs", import.meta.url), {
    workerData: join(folder, "server.browser.js"),
  });
  const ended = new Promise<number>((resolve, reject) => {
    worker.on("exit", resolve);
    worker.on("error", reject);
  });
  const editor = editorOn({
    // copied as a browser copies it; the type of a message says no more than that it is one
    post: (message) => {
      worker.postMessage(message);
    },
    receive: (callback) => {
      worker.on("message", callback);
    },
  });
  return { editor, ended };
}

/** An editor over a port, with the disk for the files that it is asked for. */
function editorOn(port: Port): Editor {
  const editor = createEditorOver(new PortReader(port), new PortWriter(port));
  const answer = <N extends keyof FileRequests>(
    name: N,
    handle: (
      params: FileRequests[N]["params"],
    ) => Promise<FileRequests[N]["result"]>,
  ): void => {
    editor.connection.onRequest(name, handle);
  };
  answer("thou/readFile", async ({ uri }) => {
    const text = await readFile(fileURLToPath(uri), "utf8").catch(() => null);
    return text === null ? null : { text };
  });
  answer("thou/findRecords", async ({ folder, here }) => {
    const path = fileURLToPath(folder);
    const names = await readdir(path, { recursive: !here });
    return {
      uris: names
        .filter((name) => name.endsWith(".thou"))
        .map((name) => pathToFileURL(join(path, name)).href),
    };
  });
  return editor;
}

class PortReader extends AbstractMessageReader {
  readonly port: Port;
  constructor(port: Port) {
    super();
    this.port = port;
  }
  listen(callback: DataCallback): Disposable {
    this.port.receive(callback);
    return { dispose: () => undefined };
  }
}

class PortWriter extends AbstractMessageWriter {
  readonly port: Port;
  constructor(port: Port) {
    super();
    this.port = port;
  }
  write(message: Message): Promise<void> {
    this.port.post(message);
    return Promise.resolve();
  }
  end(): void {
    // a port has no end
  }
}

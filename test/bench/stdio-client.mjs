// For the benches that measure over standard streams: bundles a server of ours as it ships, starts any server, asks it and tells it. It
// measures nothing.
import { spawn } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { build } from "esbuild";
import { serverOnNode, session } from "../../.config/bundles.mjs";

/** Bundles a server as it ships, in a folder of its own; gives its file. */
export async function bundle(folder, entry) {
  for (const options of [
    serverOnNode(folder, path.resolve(import.meta.dirname, entry)),
    session(folder),
  ])
    await build({ ...options, minify: true });
  writeFileSync(path.join(folder, "package.json"), '{"type":"module"}');
  return path.join(folder, "server.cjs");
}

/**
 * Starts a server; gives what asks it and what tells it.
 * @param settings what it is answered when it asks for a section of the settings
 * @param told hears its notifications
 */
export function start(file, settings = () => null, told = () => undefined) {
  const child = spawn(process.execPath, [file, "--stdio"], {
    stdio: ["pipe", "pipe", "inherit"],
  });
  const waiting = new Map();
  let chunks = [];
  let size = 0;
  let wanted = 0;
  child.stdout.on("data", (chunk) => {
    chunks.push(chunk);
    size += chunk.length;
    while (wanted <= size) {
      const buffer = chunks.length === 1 ? chunks[0] : Buffer.concat(chunks);
      chunks = [buffer];
      const head = buffer.indexOf("\r\n\r\n");
      if (head === -1) return;
      const length = Number(
        /Content-Length: (\d+)/i.exec(buffer.toString("latin1", 0, head))?.[1],
      );
      const end = head + 4 + length;
      if (buffer.length < end) {
        wanted = end;
        return;
      }
      const rest = buffer.subarray(end);
      chunks = [rest];
      size = rest.length;
      wanted = 1;
      take(JSON.parse(buffer.toString("utf8", head + 4, end)));
    }
  });
  function take(message) {
    if (message.method === undefined) waiting.get(message.id)?.(message);
    else if (message.id === undefined) told(message);
    else
      send({
        id: message.id,
        result:
          message.method === "workspace/configuration"
            ? message.params.items.map(({ section }) => settings(section))
            : null,
      });
  }
  function send(message) {
    const body = JSON.stringify({ jsonrpc: "2.0", ...message });
    child.stdin.write(
      `Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`,
    );
  }
  let id = 0;
  return {
    child,
    tell: (method, params) => send({ method, params }),
    ask: (method, params) =>
      new Promise((resolve, reject) => {
        const mine = ++id;
        waiting.set(mine, ({ result, error }) => {
          waiting.delete(mine);
          if (error === undefined) resolve(result);
          else reject(new Error(`${method}: ${error.message}`));
        });
        send({ id: mine, method, params });
      }),
    /** Resident memory of the server, MB. */
    memory: () =>
      Number(
        /VmRSS:\s+(\d+)/.exec(
          readFileSync(`/proc/${child.pid}/status`, "utf8"),
        )?.[1] ?? 0,
      ) / 1024,
  };
}

export const median = (times) =>
  [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)];
export const late = (times) =>
  [...times].sort((a, b) => a - b)[Math.ceil(times.length * 0.95) - 1];
export const pause = (ms) => new Promise((resolve) => setTimeout(resolve, ms));

// A running editor: starts the server of the editor that install-editor.sh installed, on a loopback port and with
// throw-away user data; closing it ends and removes all that it started. It knows nothing of the extension beyond the
// package that it is given, and nothing of the browser that shows the workbench (window.mjs).
import { execFile, spawn } from "node:child_process";
import { randomBytes } from "node:crypto";
import { existsSync } from "node:fs";
import {
  cp,
  mkdir,
  mkdtemp,
  readFile,
  readdir,
  realpath,
  rm,
  writeFile,
} from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { promisify } from "node:util";

/** Quiet user settings: nothing that greets, suggests or looks for news. What the extension shows stays at its default. */
const quiet = {
  "telemetry.telemetryLevel": "off",
  "workbench.startupEditor": "none",
  "workbench.enableExperiments": false,
  "workbench.secondarySideBar.defaultVisibility": "hidden",
  "workbench.tips.enabled": false,
  "chat.commandCenter.enabled": false,
  "chat.disableAIFeatures": true,
  "extensions.ignoreRecommendations": true,
  "extensions.autoUpdate": false,
  "extensions.autoCheckUpdates": false,
  "update.mode": "none",
  "git.enabled": false,
  "files.hotExit": "off",
  "files.simpleDialog.enable": true,
  "security.workspace.trust.startupPrompt": "never",
};

/** Rejects with `what` when the promise has not settled after so many seconds. */
export function within(seconds, what, promise) {
  let timer;
  const limit = new Promise((_, reject) => {
    timer = setTimeout(
      () => reject(new Error(`timed out after ${seconds} s: ${what}`)),
      seconds * 1000,
    );
  });
  return Promise.race([promise, limit]).finally(() => clearTimeout(timer));
}

/**
 * Starts the server.
 *
 * @param {object} o
 * @param {string} o.editor      folder that install-editor.sh was given
 * @param {string} o.folder      folder to open
 * @param {boolean} [o.inPlace]  open the folder itself; otherwise a copy, so that tests may edit it
 * @param {(folder: string) => Promise<void>} [o.before]  changes the copy before anything opens it
 * @param {string} [o.vsix]      package to install first
 * @param {boolean} [o.testing]  let the page name a development folder and tests; newer releases want to be told
 * @param {boolean} [o.restricted]  open the folder as one that nobody has said to trust, and ask nobody
 * @param {Record<string, unknown>} [o.settings]  of the user, in place of the quiet ones of the same name; undefined leaves one out
 * @param {number} [o.port]      default: any free one
 * @param {Record<string, string>} [o.env]  more environment for the server, which extension hosts inherit
 */
export async function startServer(o) {
  const node = path.join(o.editor, "node");
  const main = path.join(
    o.editor,
    "node_modules/code-server/lib/vscode/out/server-main.js",
  );
  if (!existsSync(main)) {
    const remedy = "run test/editor/install-editor.sh";
    throw new Error(`no editor in ${o.editor}: ${remedy}`);
  }
  const { alsoClose, close } = keepUntilTheEnd();
  try {
    const temporary = await mkdtemp(path.join(tmpdir(), "thou-editor-"));
    const scratch = await realpath(temporary);
    alsoClose(() =>
      rm(scratch, { recursive: true, force: true, maxRetries: 5 }),
    );
    const folder = o.inPlace
      ? await realpath(o.folder)
      : path.join(scratch, path.basename(o.folder));
    if (!o.inPlace) {
      await cp(o.folder, folder, { recursive: true });
      await o.before?.(folder);
    }
    const data = path.join(scratch, "data");
    const extensions = path.join(scratch, "extensions");
    await mkdir(path.join(data, "User"), { recursive: true });
    await mkdir(extensions);
    const settings = path.join(data, "User/settings.json");
    const chosen = { ...quiet, ...o.settings };
    await writeFile(settings, JSON.stringify(chosen, null, 2));

    const places = [
      `--user-data-dir=${data}`,
      `--server-data-dir=${data}`,
      `--extensions-dir=${extensions}`,
    ];
    // Without the address of a gallery none is looked up.
    const gallery = { EXTENSIONS_GALLERY: '{"serviceUrl":""}' };
    const env = { ...process.env, ...o.env, ...gallery };
    if (o.vsix) {
      const install = ["--install-extension", o.vsix, "--force"];
      const args = [main, ...places, ...install];
      await promisify(execFile)(node, args, { timeout: 120_000, env });
    }

    // Another site open in the same browser must not be able to talk to this server: hence a token.
    const token = randomBytes(16).toString("hex");
    const options = [
      "--host=127.0.0.1",
      `--port=${o.port ?? 0}`,
      `--connection-token=${token}`,
      "--accept-server-license-terms",
      "--telemetry-level=off",
      ...(o.restricted ? [] : ["--disable-workspace-trust"]),
    ];
    if (o.testing) options.push("--enable-smoke-test-driver");
    const args = [main, ...places, ...options];
    const { port, ended } = await listen(node, args, scratch, env, alsoClose);

    const authority = `127.0.0.1:${port}`;
    return {
      folder,
      authority,
      /** The address that shows the folder; `payload` as the workbench reads it: a list of key and value. */
      address(payload = []) {
        const all = JSON.stringify([["skipWelcome", "true"], ...payload]);
        const query = new URLSearchParams({ tkn: token, folder, payload: all });
        return `http://${authority}/?${query}`;
      },
      /** A file of this machine as the workbench names it. */
      remote: (file) =>
        `vscode-remote://${authority}${encodeURI(path.resolve(file))}`,
      /** Resolves, with the reason, when the server has ended. */
      ended,
      logs: () => readLogs(path.join(data, "logs")),
      alsoClose,
      close,
    };
  } catch (error) {
    await close();
    throw error;
  }
}

/** Keeps what has to be closed, last things first, when `close` is called or this process is told to end. */
function keepUntilTheEnd() {
  const closers = [];
  const signals = ["SIGINT", "SIGTERM", "SIGHUP"];
  const onSignal = (_, number) =>
    void close().finally(() => process.exit(128 + number));
  let closing;
  const close = () =>
    (closing ??= (async () => {
      for (const closer of closers.reverse()) {
        // what does not close must not keep the rest open
        await within(20, "closing", Promise.resolve(closer())).catch(() => {});
      }
      for (const signal of signals) process.off(signal, onSignal);
    })());
  for (const signal of signals) process.on(signal, onSignal);
  return { alsoClose: (closer) => closers.push(closer), close };
}

/** Starts the server's process and waits for the port that it listens on. */
async function listen(node, args, cwd, env, alsoClose) {
  // It leads its own process group, so that its extension hosts and their language servers end with it.
  const stdio = ["ignore", "pipe", "pipe"];
  const server = spawn(node, args, { cwd, env, stdio, detached: true });
  const signalGroup = (signal) => {
    try {
      if (server.pid) process.kill(-server.pid, signal);
    } catch {
      // it has ended already
    }
  };
  const kill = () => signalGroup("SIGKILL");
  process.on("exit", kill);

  let output = "";
  let tellPort;
  const listening = new Promise((resolve) => (tellPort = resolve));
  for (const stream of [server.stdout, server.stderr]) {
    stream.on("data", (chunk) => {
      output += chunk;
      const sentence = /Extension host agent listening on (\d+)/.exec(output);
      if (sentence) tellPort(Number(sentence[1]));
    });
  }
  const ended = new Promise((resolve) => {
    server.once("error", resolve);
    server.once("exit", (code, signal) => {
      const what = `the server ended with ${signal ?? code}`;
      resolve(new Error(`${what}\n${output}`));
    });
  });
  alsoClose(async () => {
    signalGroup("SIGTERM");
    await within(3, "the server's end", ended).catch(() => {});
    kill();
    process.off("exit", kill);
  });
  const first = Promise.race([listening, ended]);
  const port = await within(60, "the server's start", first);
  if (port instanceof Error) throw port;
  return { port, ended };
}

/** The logs of the server and its extension hosts, for the report of a failure. */
async function readLogs(folder) {
  let all = "";
  for (const entry of await readdir(folder, { recursive: true }).catch(
    () => [],
  )) {
    if (!/(remoteagent|exthost|Thou)[^/]*\.log$/.test(entry)) continue;
    const text = await readFile(path.join(folder, entry), "utf8").catch(
      () => "",
    );
    if (text.trim()) all += `--- ${entry}\n${text}`;
  }
  return all;
}

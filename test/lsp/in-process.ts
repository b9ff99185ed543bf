// The server in the test's own process, with a clock that only the test moves and files that only the test has.
import { PassThrough } from "node:stream";
import { StreamMessageReader, StreamMessageWriter } from "vscode-jsonrpc/node";
import { createConnection, ProposedFeatures } from "vscode-languageserver/node";
import type { Clock } from "../../server/lsp/clock.ts";
import type { FileAccess } from "../../server/lsp/files.ts";
import { serve, type Parts } from "../../server/lsp/server.ts";
import * as session from "../../server/lsp/session.ts";
import { createEditor } from "./editor.ts";

export interface SetClock extends Clock {
  /** Lets so many milliseconds pass: what is due by then is called, in order. */
  pass(milliseconds: number): void;
}

export function createClock(): SetClock {
  let time = 0;
  const calls = new Set<{ readonly at: number; readonly call: () => void }>();
  return {
    now: () => time,
    today: () => "2026-11-05",
    after(milliseconds, call) {
      const due = { at: time + milliseconds, call };
      calls.add(due);
      return () => {
        calls.delete(due);
      };
    },
    pass(milliseconds) {
      const end = time + milliseconds;
      for (;;) {
        const [next] = [...calls]
          .filter(({ at }) => at <= end)
          .sort((a, b) => a.at - b.at);
        if (next === undefined) break;
        calls.delete(next);
        time = Math.max(time, next.at);
        next.call();
      }
      time = end;
    },
  };
}

/** Files by address; the test may change them as it goes. */
export function filesIn(texts: Map<string, string>): FileAccess {
  return {
    read: (uri) => Promise.resolve(texts.get(uri)),
    async *records(folder) {
      for (const uri of texts.keys()) {
        await Promise.resolve();
        if (uri.startsWith(`${folder}/`)) yield uri;
      }
    },
  };
}

export function serveHere(
  texts = new Map<string, string>(),
  parts: Partial<Parts> = {},
) {
  const toServer = new PassThrough();
  const fromServer = new PassThrough();
  const clock = createClock();
  const connection = createConnection(
    ProposedFeatures.all,
    new StreamMessageReader(toServer),
    new StreamMessageWriter(fromServer),
  );
  serve(connection, {
    files: filesIn(texts),
    clock,
    load: () => Promise.resolve(session),
    version: "0",
    ...parts,
  });
  return { editor: createEditor(fromServer, toServer), clock, texts };
}

// How the editor comes to know that findings, hints and lenses may be others than it shows: an editor that asks for findings is asked to ask
// again, one that can't is sent them. Hints and lenses are always asked for.
import type { PublishDiagnosticsParams } from "vscode-languageserver";
import type { Client } from "./client.ts";
import type { Clock } from "./clock.ts";
import { quietly, type Log } from "./guard.ts";
import { createRefresh, type Subject } from "./refresh.ts";

export interface Notices {
  /** The editor itself changed this document: it asks again unasked, if it asks at all. */
  edited(uri: string): void;
  /** What these documents rest on has changed. */
  mayDiffer(uris: readonly string[]): void;
  /** Findings of this document that were held back are due. */
  due(uri: string): void;
  closed(uri: string): void;
}

export interface NoticeSources {
  readonly client: Pick<Client, "pulls">;
  readonly clock: Clock;
  readonly log: Log;
  /** Asks the editor to ask again. */
  readonly refresh: (subject: Subject) => void;
  /** Sends findings to an editor that can't ask. */
  readonly publish: (params: PublishDiagnosticsParams) => void;
  /** The findings of an open document; undefined where it was closed meanwhile. */
  readonly findingsOf: (
    uri: string,
  ) => Promise<PublishDiagnosticsParams | undefined>;
}

export function createNotices(sources: NoticeSources): Notices {
  const { client, clock, log, publish, findingsOf } = sources;
  const refresh = createRefresh(clock, sources.refresh);
  const waiting = new Set<string>();

  /** Once for all changes that have come in by then. */
  function publishSoon(uri: string): void {
    if (waiting.has(uri)) return;
    waiting.add(uri);
    clock.after(0, () => {
      waiting.delete(uri);
      quietly("sending findings", log, async () => {
        const found = await findingsOf(uri);
        if (found !== undefined) publish(found);
      });
    });
  }

  return {
    edited(uri) {
      if (!client.pulls) publishSoon(uri);
    },
    mayDiffer(uris) {
      if (client.pulls) refresh.soon("findings", "hints", "lenses");
      else {
        refresh.soon("hints", "lenses");
        uris.forEach(publishSoon);
      }
    },
    due(uri) {
      if (client.pulls) sources.refresh("findings");
      else publishSoon(uri);
    },
    closed(uri) {
      if (!client.pulls) publish({ uri, diagnostics: [] });
    },
  };
}

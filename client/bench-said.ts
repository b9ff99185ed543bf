// What the bench view's page was told: what was drawn last is kept, so that it stands again at once when the page comes back, and so that what
// is there can be said to be old.
import type { BenchView } from "../server/protocol/bench.ts";
import type { ToPage } from "./bench-page/messages.ts";

export interface Said {
  view(uri: string, file: string, view: BenchView): void;
  /** There is no record to show. */
  nothing(): void;
  /** There is no answer; @param restart whether the server can be started again */
  old(reason: string, restart: boolean): void;
  /** To a page that knows nothing yet. */
  again(): void;
  /** Where an entry of what was drawn last stands. */
  placeOf(ref: string): BenchView["places"][string] | undefined;
}

export function createSaid(post: (message: ToPage) => void): Said {
  let last: Extract<ToPage, { type: "view" }> | undefined;
  return {
    view(uri, file, view) {
      last = { type: "view", uri, file, view };
      post(last);
    },
    nothing() {
      post({
        type: "nothing",
        notice:
          "Open a record (a file that ends in .thou) to see its job here.",
      });
    },
    old(reason, restart) {
      post({
        type: "old",
        notice:
          last === undefined
            ? reason
            : `${reason} What you see is old: the last that was drawn.`,
        restart,
      });
    },
    again() {
      if (last !== undefined) post(last);
    },
    placeOf: (ref) => last?.view.places[ref],
  };
}

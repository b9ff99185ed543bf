// What the bench view's page and the extension say to each other.
import type { BenchView } from "../../server/protocol/bench.ts";

export type ToPage =
  | {
      readonly type: "view";
      readonly uri: string;
      readonly file: string;
      readonly view: BenchView;
    }
  /** What is shown stays, and is said to be old. */
  | {
      readonly type: "old";
      readonly notice: string;
      /** The server can be started again. */
      readonly restart: boolean;
    }
  | { readonly type: "nothing"; readonly notice: string };

export type FromPage =
  /** The width that pictures may have; `fresh` from a page that has just begun. */
  | { readonly type: "width"; readonly width: number; readonly fresh: boolean }
  | { readonly type: "go"; readonly ref: string }
  | { readonly type: "restart" };

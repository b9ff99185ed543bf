// Works the findings of records out: long ones piece by piece, so that others are served meanwhile and the work can be called off.
import type { CancellationToken } from "vscode-languageserver";
import type { FileAlone, OpenFile } from "../model/project.ts";
import type { Shop } from "../model/shop.ts";
import { findingsOfEntry } from "../rules/entry-findings.ts";
import { paceOf, type Clock } from "./clock.ts";

export interface WorkingOut {
  /**
   * A record with its findings worked out; nothing where it is not there.
   * @param open gives the record as it is at the moment
   */
  readonly workedOut: (
    open: () => Promise<OpenFile | undefined>,
    token: CancellationToken,
  ) => Promise<OpenFile | undefined>;
  /** Whether it is long, and not worked out yet. */
  readonly takesLong: (record: FileAlone) => boolean;
}

/** Records of fewer entries are worked out without a pause. */
const LONG = 100;

/** @param revision another number whenever any record may have changed */
export function createWorkingOut(
  revision: () => number,
  clock: Clock,
): WorkingOut {
  /** Those of long records that were worked out once: after an edit the rest of the work is short. */
  const done = new WeakSet<Shop>();

  function takesLong({ file, shop }: FileAlone): boolean {
    const isDone = shop !== undefined && done.has(shop);
    return LONG <= file.entries.length && !isDone;
  }

  return {
    takesLong,
    async workedOut(open, token) {
      let now = await open();
      if (now === undefined || !takesLong(now)) return now;
      const pace = paceOf(clock, token);
      let seenAt = revision();
      for (let index = 0; index < (now?.file.entries.length ?? 0); index++) {
        if (now !== undefined) findingsOfEntry(now, index);
        const pause = pace();
        if (pause === undefined) continue;
        await pause;
        if (revision() === seenAt) continue;
        seenAt = revision();
        now = await open();
        // whoever else waits for it has it worked out
        if (now !== undefined && done.has(now.shop)) return now;
      }
      if (now !== undefined) done.add(now.shop);
      return now;
    },
  };
}

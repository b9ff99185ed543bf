// Asks the editor to ask again, once for many changes.
import type { Clock } from "./clock.ts";

export type Subject = "findings" | "hints" | "lenses";

export interface Refresh {
  /** Soon; put off while more is asked for. */
  soon(...subjects: readonly Subject[]): void;
}

/** Long enough for a few keystrokes, short enough for the other window to seem to follow; milliseconds. */
const SETTLED = 150;

/** @param ask asks the editor, and takes care of what goes wrong */
export function createRefresh(
  clock: Clock,
  ask: (subject: Subject) => void,
): Refresh {
  const due = new Set<Subject>();
  let stop: (() => void) | undefined;
  return {
    soon(...subjects) {
      for (const each of subjects) due.add(each);
      stop?.();
      stop = clock.after(SETTLED, () => {
        stop = undefined;
        const now = [...due];
        due.clear();
        now.forEach(ask);
      });
    },
  };
}

// Which line of each document is being typed: no fault is shown there until another line is changed or nothing was typed for a moment.
import type { Clock } from "./clock.ts";
import type { Document } from "./documents.ts";

export interface Stillness {
  /** A document changed; `codes` are those that its lines show just now. */
  changed(
    document: Document,
    codes: (line: number) => ReadonlySet<string>,
  ): void;
  /** The line being typed, with the codes that it showed before: a fault that was in sight stays in sight. */
  typing(uri: string): Typing | undefined;
  /** Whether something was held back when it was last asked for: if so, `still` is called when it is still. */
  held(uri: string, something: boolean): void;
  forget(uri: string): void;
}

export interface Typing {
  readonly line: number;
  readonly codes: ReadonlySet<string>;
}

/** How long nothing must be typed, in milliseconds. */
export const STILL = 600;

interface Wait extends Typing {
  readonly stop: () => void;
  held: boolean;
}

/** @param still what to do when findings that were held back are due */
export function createStillness(
  clock: Clock,
  still: (uri: string) => void,
): Stillness {
  const waits = new Map<string, Wait>();

  function forget(uri: string): void {
    waits.get(uri)?.stop();
    waits.delete(uri);
  }

  return {
    changed({ uri, typedOn: line }, codes) {
      const before = waits.get(uri);
      forget(uri);
      if (line === undefined) return;
      const stop = clock.after(STILL, () => {
        const { held } = waits.get(uri) ?? { held: false };
        waits.delete(uri);
        if (held) still(uri);
      });
      const same = before?.line === line ? before : undefined;
      waits.set(uri, {
        line,
        codes: same?.codes ?? codes(line),
        stop,
        held: same?.held ?? false,
      });
    },
    typing: (uri) => waits.get(uri),
    held(uri, something) {
      const wait = waits.get(uri);
      if (wait !== undefined) wait.held = something;
    },
    forget,
  };
}

// A part that is loaded when it is first needed, and told of changes only once it is there: when it begins it takes everything as it then is.
import { quietly, type Log } from "./guard.ts";

export interface Late<S> {
  /** Undefined before it has begun. */
  now(): S | undefined;
  /** Begins it where nobody has; what failed is tried again when it is next needed. */
  begun(): Promise<S>;
  /** Tells it something, if it has begun; the name is for the log. */
  tell(name: string, act: (to: S) => void): void;
}

/** @param make begins it as everything is at that moment: nothing comes between it and what is told later */
export function createLate<L, S>(
  load: () => Promise<L>,
  make: (loaded: L) => S,
  log: Log,
): Late<S> {
  let made: S | undefined;
  let beginning: Promise<S> | undefined;

  async function begin(): Promise<S> {
    const loaded = await load();
    made = make(loaded);
    return made;
  }

  return {
    now: () => made,
    begun() {
      beginning ??= begin().catch((error: unknown) => {
        beginning = undefined;
        throw error;
      });
      return beginning;
    },
    tell(name, act) {
      const to = made;
      if (to !== undefined)
        quietly(name, log, () => {
          act(to);
        });
    },
  };
}

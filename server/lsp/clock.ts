// Time, passed in so that tests can set it. Nothing else in this room asks what time it is or waits.
import type { CancellationToken } from "vscode-languageserver";

export interface Clock {
  /** Milliseconds since some moment. */
  now(): number;
  /** The day where the user is, ISO 8601. */
  today(): string;
  /** Calls back once, so many milliseconds from now; gives what takes the call back. */
  after(milliseconds: number, call: () => void): () => void;
}

export const systemClock: Clock = {
  now: () => performance.now(),
  today() {
    const day = new Date();
    const two = (number: number): string => String(number).padStart(2, "0");
    return `${day.getFullYear()}-${two(day.getMonth() + 1)}-${two(day.getDate())}`;
  },
  after(milliseconds, call) {
    const timer = setTimeout(call, milliseconds);
    return () => {
      clearTimeout(timer);
    };
  },
};

/** Work that nobody waits for any longer. It is known by its name, since two bundles have two classes. */
export class Cancelled extends Error {
  override readonly name = "Cancelled";
  constructor() {
    super("the request was cancelled");
  }
}

/** The token of work that is never called off. */
export const NEVER: CancellationToken = {
  isCancellationRequested: false,
  onCancellationRequested: () => ({ dispose: () => undefined }),
};

const BETWEEN_LOOKS = 10;

/** A function for long work to call often: about every 10 ms it lets others run, and it throws once the work is cancelled. */
export function paceOf(
  clock: Clock,
  token: CancellationToken,
): () => Promise<void> | undefined {
  let looked = clock.now();
  return () => {
    if (clock.now() - looked < BETWEEN_LOOKS) return undefined;
    return new Promise((resolve, reject) => {
      clock.after(0, () => {
        looked = clock.now();
        if (token.isCancellationRequested) reject(new Cancelled());
        else resolve();
      });
    });
  };
}

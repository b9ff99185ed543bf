// How far a long command is, on a terminal that shows nothing else: one line that is written over, and gone at the end.
import type { Io } from "./io.ts";

/** Milliseconds between two looks. */
const EVERY = 200;

export interface Progress {
  step(): void;
  end(): void;
}

/**
 * Nothing where standard error is no terminal, where standard output writes on the same one, or where there is little to do.
 * @param isBefore standard output says nothing until the end
 */
export function createProgress(
  { stdout, stderr }: Io,
  of: number,
  now: () => number,
  isBefore = false,
): Progress {
  const isShown =
    stderr.isTerminal && (isBefore || !stdout.isTerminal) && 100 < of;
  let at = 0;
  let last = -Infinity;
  return {
    step() {
      at++;
      if (!isShown || now() - last < EVERY) return;
      last = now();
      stderr.write(`\r${String(at)} of ${String(of)} files`);
    },
    end() {
      if (isShown) stderr.write(`\r${" ".repeat(40)}\r`);
    },
  };
}

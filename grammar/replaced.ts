// A fault that may stand in several places of a line, mended in all of them at once.
import { reads, type Asked } from "./asked.ts";
import type { Damage } from "./explain.ts";

/** Every piece that looks so, put as it should stand, where the line reads with that. */
export function replaced(
  body: string,
  asked: Asked,
  pattern: RegExp,
  by: (text: string) => string,
  { says, safe }: { says: (mended: string) => string; safe: boolean },
): Damage | undefined {
  const pieces = [...body.matchAll(pattern)];
  const [first, last] = [pieces[0], pieces.at(-1)];
  if (first === undefined || last === undefined) return undefined;
  const whole = body.replaceAll(pattern, by);
  if (!reads(whole, asked)) return undefined;
  const end = last.index + last[0].length;
  const mended = whole.slice(first.index, whole.length - (body.length - end));
  return { start: first.index, end, message: says(mended), mended, safe };
}

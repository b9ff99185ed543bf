// How tests ask the questions beside this one otherwise: another number in one place.
import type { Answer } from "../../server/core/answer.ts";

export type Question = readonly [
  call: (...words: never[]) => unknown,
  words: unknown[],
];

/** Where a number stands in the words of a question, as the names that lead to it. */
export type Way = readonly string[];

/** The numbers in a value, each with its place. */
export function* numbersIn(
  value: unknown,
  way: Way = [],
): Generator<readonly [Way, number]> {
  if (typeof value === "number") yield [way, value];
  else if (typeof value === "object" && value !== null)
    for (const [name, inner] of Object.entries(value))
      yield* numbersIn(inner, [...way, name]);
}

/** A copy with another number in one place. */
export function withNumber(
  value: unknown,
  [name, ...rest]: Way,
  number: number,
): unknown {
  if (name === undefined) return number;
  const copy = (
    Array.isArray(value) ? [...(value as unknown[])] : { ...(value as object) }
  ) as Record<string, unknown>; // only what numbersIn walked
  copy[name] = withNumber(copy[name], rest, number);
  return copy;
}

/** What a function that answers, or one that gives its value as it is, says to some words. */
export function ask([call]: Question, words: unknown): Answer<unknown> {
  const said = (call as (...words: unknown[]) => unknown)(
    ...(words as unknown[]),
  );
  const isAnswer = typeof said === "object" && said !== null && "valid" in said;
  return isAnswer ? (said as Answer<unknown>) : { valid: true, value: said };
}

// What each function of the engineering says of a number that can't be: in usual questions, each number in turn is none, without end, below zero,
// zero, or a thousand times itself. The sentences stand in a golden file (`npm test -- -u` writes it anew; read the difference before it is
// committed); that the bounds are those of the sources, the tests of each function hold.
import { expect, test } from "vitest";
import type { Answer } from "../../server/core/answer.ts";
import { QUESTIONS } from "./questions.ts";

/** Places of the numbers in a value, as the names that lead to each. */
function* numbersIn(
  value: unknown,
  way: readonly string[] = [],
): Generator<readonly [readonly string[], number]> {
  if (typeof value === "number") yield [way, value];
  else if (typeof value === "object" && value !== null)
    for (const [name, inner] of Object.entries(value))
      yield* numbersIn(inner, [...way, name]);
}

/** A copy with another number in one place. */
function withNumber(
  value: unknown,
  [name, ...rest]: readonly string[],
  number: number,
): unknown {
  if (name === undefined) return number;
  const copy = (
    Array.isArray(value) ? [...(value as unknown[])] : { ...(value as object) }
  ) as Record<string, unknown>; // only what numbersIn walked
  copy[name] = withNumber(copy[name], rest, number);
  return copy;
}

const CHANGES: readonly (readonly [string, (usual: number) => number])[] = [
  ["no number", () => Number.NaN],
  ["without end", () => Infinity],
  ["below zero", (usual) => -Math.abs(usual === 0 ? 1 : usual)],
  ["zero", () => 0],
  ["a thousand times", (usual) => 1000 * usual],
];

const ask = (name: string, words: unknown[]): Answer<unknown> => {
  const [call] = QUESTIONS[name] ?? [];
  if (call === undefined) throw new Error(name);
  return (call as (...words: unknown[]) => Answer<unknown>)(...words);
};

test.each(Object.entries(QUESTIONS))("%s", (name, [, words]) => {
  const usual = ask(name, words);
  expect(usual.valid ? "" : usual.because).toBe("");
});

test("what is no number is refused wherever it stands", () => {
  const taken = Object.entries(QUESTIONS).flatMap(([name, [, words]]) =>
    [...numbersIn(words)].flatMap(([way]) =>
      ask(name, withNumber(words, way, Number.NaN) as unknown[]).valid
        ? [`${name} ${way.join(".")}`]
        : [],
    ),
  );
  expect(taken).toEqual([]);
});

test("each number otherwise", async () => {
  const lines = Object.entries(QUESTIONS).flatMap(([name, [, words]]) =>
    [...numbersIn(words)].flatMap(([way, usual]) =>
      CHANGES.map(([how, change]) => {
        const answer = ask(
          name,
          withNumber(words, way, change(usual)) as unknown[],
        );
        return `${name} ${way.join(".")} ${how}: ${answer.valid ? "taken" : answer.because}`;
      }),
    ),
  );
  await expect(`${lines.join("\n")}\n`).toMatchFileSnapshot(
    "../fixtures/refusals.txt",
  );
});

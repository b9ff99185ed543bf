// What each function of the engineering says of a number that can't be: in usual questions, each number in turn is none, without end, below zero,
// zero, or a thousand times itself. The sentences stand in a golden file (`npm test -- -u` writes it anew; read the difference before it is
// committed); that the bounds are those of the sources, the tests of each function hold.
import { expect, test } from "vitest";
import { ask, numbersIn, withNumber } from "./asking.ts";
import { QUESTIONS } from "./questions.ts";

const CHANGES: readonly (readonly [string, (usual: number) => number])[] = [
  ["no number", () => Number.NaN],
  ["without end", () => Infinity],
  ["below zero", (usual) => -Math.abs(usual === 0 ? 1 : usual)],
  ["zero", () => 0],
  ["a thousand times", (usual) => 1000 * usual],
];

test.each(Object.entries(QUESTIONS))("%s", (_, question) => {
  const usual = ask(question, question[1]);
  expect(usual.valid ? "" : usual.because).toBe("");
});

test("what is no number is refused wherever it stands", () => {
  const taken = Object.entries(QUESTIONS).flatMap(([name, question]) =>
    [...numbersIn(question[1])].flatMap(([way]) =>
      ask(question, withNumber(question[1], way, Number.NaN)).valid
        ? [`${name} ${way.join(".")}`]
        : [],
    ),
  );
  expect(taken).toEqual([]);
});

test("each number otherwise", async () => {
  const lines = Object.entries(QUESTIONS).flatMap(([name, question]) =>
    [...numbersIn(question[1])].flatMap(([way, usual]) =>
      CHANGES.map(([how, change]) => {
        const answer = ask(
          question,
          withNumber(question[1], way, change(usual)),
        );
        return `${name} ${way.join(".")} ${how}: ${answer.valid ? "taken" : answer.because}`;
      }),
    ),
  );
  await expect(`${lines.join("\n")}\n`).toMatchFileSnapshot(
    "../fixtures/refusals.txt",
  );
});

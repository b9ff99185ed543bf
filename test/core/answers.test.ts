// What each function of the engineering answers, to seven digits: to a usual question, and with each of its numbers a little more and a little
// less. The golden file (`npm test -- -u` writes it anew) says nothing of what is right: the tests of each function hold that, by sources and
// other ways to work it out. It holds that no answer changes without anyone having meant it: read each difference before it is committed.
import { expect, test } from "vitest";
import type { Answer } from "../../server/core/answer.ts";
import { ask, numbersIn, withNumber, type Question } from "./asking.ts";
import { MORE } from "./more-questions.ts";
import { QUESTIONS } from "./questions.ts";

/** Each number and word of an answer, by the names that lead to it. */
function* leaves(
  value: unknown,
  way = "",
): Generator<readonly [string, string]> {
  if (typeof value === "number")
    yield [way, String(Number(value.toPrecision(7)))];
  else if (typeof value === "object" && value !== null) {
    const inner = Object.entries(value) as [string, unknown][];
    if (inner.length === 0) yield [way, "none"];
    for (const [name, each] of inner)
      yield* leaves(each, way === "" ? name : `${way}.${name}`);
  } else yield [way, String(value)];
}

function said(answer: Answer<unknown>): ReadonlyMap<string, string> {
  return new Map(
    answer.valid ? leaves(answer.value) : [["refused", answer.because]],
  );
}

const written = (leaf: readonly [string, string]): string =>
  leaf.filter((part) => part !== "").join(" ");

const CHANGES: readonly (readonly [string, (usual: number) => number])[] = [
  [
    "more",
    (usual) => (Number.isInteger(usual) ? usual + 1 : usual + usual / 32),
  ],
  [
    "less",
    (usual) => (Number.isInteger(usual) ? usual - 1 : usual - usual / 32),
  ],
];

function* pageOf(name: string, question: Question): Generator<string> {
  const usual = said(ask(question, question[1]));
  yield `${name}: ${[...usual].map(written).join("; ")}`;
  for (const [way, number] of numbersIn(question[1]))
    for (const [how, change] of CHANGES) {
      const other = said(
        ask(question, withNumber(question[1], way, change(number))),
      );
      const changed = [...other].filter(
        ([place, value]) => usual.get(place) !== value,
      );
      const gone = [...usual.keys()].filter((place) => !other.has(place));
      const news =
        other.has("refused") || gone.length === 0
          ? changed.map(written)
          : [...changed.map(written), ...gone.map((each) => `no ${each}`)];
      yield `  ${way.join(".")} ${how}: ${news.length === 0 ? "the same" : news.join("; ")}`;
    }
}

test("each function, its numbers a little otherwise", async () => {
  const lines = Object.entries({ ...QUESTIONS, ...MORE }).flatMap(
    ([name, question]) => [...pageOf(name, question)],
  );
  await expect(`${lines.join("\n")}\n`).toMatchFileSnapshot(
    "../fixtures/core-answers.txt",
  );
});

test.each(Object.entries(MORE))("%s has an answer", (_, question) => {
  const usual = ask(question, question[1]);
  expect(usual.valid ? "" : usual.because).toBe("");
});

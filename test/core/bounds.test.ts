// Where what each function of the engineering says changes its sort: from an answer to a refusal, from one word to another, as one number of a
// usual question runs from far below zero to far above it; and on which side the bound itself lies. The golden file (`npm test -- -u` writes
// it anew) is read before it is committed: that the bounds are those of the sources, the tests of each function hold.
import { expect, test } from "vitest";
import {
  ask,
  numbersIn,
  withNumber,
  type Question,
  type Way,
} from "./asking.ts";
import { MORE } from "./more-questions.ts";
import { QUESTIONS } from "./questions.ts";

/** Their answers take long, or change with every step of their numbers. */
const LEFT_OUT = new Set([
  ...["straightShaft", "sizeToGrind", "warmFilm, side flow"],
  ...["warmFilm, whole flow", "warmFilm, case", "drawEndFloats, normal"],
  ...["drawEndFloats, even", "sizesToBuy"],
]);

/** The words of an answer without its numbers, or why there is none. */
function sortOf(question: Question, words: unknown): string {
  const answer = ask(question, words);
  if (!answer.valid) return answer.because.replaceAll(/[\d.,]+/g, "#");
  return `taken${wordsIn(answer.value)}`;
}

function wordsIn(value: unknown): string {
  if (typeof value === "number")
    return Number.isFinite(value) ? "" : " endless";
  if (Array.isArray(value))
    return ` [${value.map((each) => wordsIn(each).trim()).join(",")}]`;
  if (typeof value === "object" && value !== null)
    return Object.entries(value)
      .map(([name, each]) =>
        wordsIn(each) === "" ? "" : ` ${name}${wordsIn(each)}`,
      )
      .join("");
  return ` ${String(value)}`;
}

/** Numbers on either side of a usual one, in order. */
function around(usual: number): readonly number[] {
  const size = usual === 0 ? 1 : Math.abs(usual);
  const sizes = Array.from(
    { length: 37 },
    (_, at) => size * 10 ** (at / 2 - 9),
  );
  return [...sizes.map((each) => -each).reverse(), 0, ...sizes];
}

/** Whole numbers, for what has to be one. */
const WHOLE: readonly number[] = [
  ...Array.from({ length: 60 }, (_, at) => at - 2),
  ...[1e2, 1e3, 1e4, 1e5, 1e6, 1e7].flatMap((each) => [each, each + 1]),
];

/** The last number of the first sort and the first of the other: next to each other as whole numbers, or as near as doubles come. */
function between(
  sort: (number: number) => string,
  low: number,
  high: number,
  isWhole: boolean,
): readonly [number, number] {
  const first = sort(low);
  for (let turn = 0; turn < 80; turn++) {
    const half = low + (high - low) / 2;
    const middle = isWhole ? Math.floor(half) : half;
    if (sort(middle) === first) low = middle;
    else high = middle;
  }
  return [low, high];
}

/** The bound in few digits, and whether it is the last of the first sort; only about where it is where no round number is the bound. */
function bound(
  sort: (number: number) => string,
  [low, high]: readonly [number, number],
  size: number,
): string {
  const noise = 1e-13 * Math.max(Math.abs(low), 1e-6 * size);
  for (let digits = 1; digits <= 9; digits++) {
    const round = Number(high.toPrecision(digits));
    const number = Math.abs(round) < 1e-14 * size ? 0 : round;
    if (low - noise <= number && number <= high + noise)
      return `${sort(number) === sort(low) ? "to" : "under"} ${String(number)}`;
  }
  return `to about ${String(Number(high.toPrecision(5)))}`;
}

function boundsOf(question: Question, way: Way, usual: number): string {
  const sort = (number: number): string =>
    sortOf(question, withNumber(question[1], way, number));
  const isWhole =
    Number.isInteger(usual) && sort(usual) !== sort(usual + 1 / 8);
  const numbers = isWhole ? WHOLE : around(usual);
  const sorts = numbers.map(sort);
  const parts: string[] = [];
  numbers.forEach((number, at) => {
    const before = numbers[at - 1];
    if (before === undefined || sorts[at] === sorts[at - 1]) return;
    const found = between(sort, before, number, isWhole);
    parts.push(
      `${isWhole ? `to ${String(found[0])}` : bound(sort, found, Math.abs(usual) || 1)} ${sorts[at - 1] ?? ""}`,
    );
  });
  return [...parts, `then ${sorts.at(-1) ?? ""}`].join("; ");
}

test("each number of each question", { timeout: 120_000 }, async () => {
  const lines = Object.entries({ ...QUESTIONS, ...MORE })
    .filter(([name]) => !LEFT_OUT.has(name))
    .flatMap(([name, question]) =>
      [...numbersIn(question[1])].map(
        ([way, usual]) =>
          `${name} ${way.join(".")}: ${boundsOf(question, way, usual)}`,
      ),
    );
  await expect(`${lines.join("\n")}\n`).toMatchFileSnapshot(
    "../fixtures/core-bounds.txt",
  );
});

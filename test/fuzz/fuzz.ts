// The fuzzer: takes sound texts, breaks them, and throws them at each aim in turn. What it does is told by its seed alone. run.mjs runs it by
// hand, fuzz.test.ts for a small budget in CI.
import { tryCli } from "./cli-aim.ts";
import { corpusOf } from "./corpus.ts";
import { damaged } from "./damage.ts";
import { randomFrom, type Random } from "./random.ts";
import { tryReading } from "./reading-aim.ts";
import { tryServer } from "./server-aim.ts";

export type Aim = (
  text: string,
  random: Random,
  others: readonly string[],
) => number | Promise<number>;

export const AIMS: Readonly<Record<string, Aim>> = {
  reading: tryReading,
  server: tryServer,
  cli: tryCli,
};

export interface Crash {
  /** With this seed `one` does it again. */
  readonly seed: number;
  readonly aim: string;
  readonly from: string;
  readonly why: string;
}

export interface Tried {
  readonly inputs: number;
  /** What was asked of them: texts read, requests, commands. */
  readonly asked: number;
  readonly slowest: {
    readonly milliseconds: number;
    readonly seed: number;
    readonly length: number;
  };
}

export interface Report {
  readonly tried: Readonly<Record<string, Tried>>;
  readonly crashes: readonly Crash[];
}

/** Breaks one text and throws it at an aim, as its seed says. */
export async function one(
  test: string,
  aim: string,
  seed: number,
): Promise<{
  readonly input: string;
  readonly asked: number;
  readonly crash: Crash | undefined;
}> {
  const corpus = corpusOf(test);
  return tryOne(corpus, aim, seed);
}

async function tryOne(
  corpus: ReturnType<typeof corpusOf>,
  aim: string,
  seed: number,
) {
  const random = randomFrom(seed);
  const others = corpus.map(({ text }) => text);
  const { name, text } = random.pick(corpus);
  const input = damaged(text, random, others);
  const tried = AIMS[aim];
  if (tried === undefined) throw new Error(`no aim ${aim}`);
  try {
    return {
      input,
      asked: await tried(input, random, others),
      crash: undefined,
    };
  } catch (error) {
    const why =
      error instanceof Error ? (error.stack ?? error.message) : String(error);
    return { input, asked: 0, crash: { seed, aim, from: name, why } };
  }
}

/** @param goesOn asked before each input, with how many there were */
export async function fuzz(o: {
  readonly test: string;
  readonly seed: number;
  readonly aims: readonly string[];
  readonly goesOn: (inputs: number) => boolean;
  readonly told?: (crash: Crash) => void;
}): Promise<Report> {
  const corpus = corpusOf(o.test);
  const tried: Record<string, Tried> = {};
  const crashes: Crash[] = [];
  let inputs = 0;
  while (o.goesOn(inputs))
    for (const aim of o.aims) {
      const seed = o.seed + inputs++;
      const start = performance.now();
      const { asked, input, crash } = await tryOne(corpus, aim, seed);
      const milliseconds = performance.now() - start;
      const before = tried[aim];
      tried[aim] = {
        inputs: (before?.inputs ?? 0) + 1,
        asked: (before?.asked ?? 0) + asked,
        slowest:
          before !== undefined && milliseconds < before.slowest.milliseconds
            ? before.slowest
            : { milliseconds, seed, length: input.length },
      };
      if (crash !== undefined) {
        crashes.push(crash);
        o.told?.(crash);
      }
    }
  return { tried, crashes };
}

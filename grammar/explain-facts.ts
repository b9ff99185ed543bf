// The trap of the first line: what an entry is and what is known of it, written in one line.
import type { Damage } from "./explain.ts";
import { reads, wordAt, wordBefore, type Asked } from "./asked.ts";
import { ENTRIES } from "./vocabulary.ts";

/** `reamer r-1 size 0.8755`: without this it would be called a remark, and the fact would be lost. */
export function factOnOpening(
  body: string,
  asked: Asked,
  stoppedAt: number,
): Damage | undefined {
  const entry = ENTRIES.find((each) => each.rule === asked.rule);
  if (entry === undefined) return undefined;
  const { start, end } = wordAt(body, stoppedAt);
  const before = wordBefore(body, start);
  const word = body.slice(start, end);
  const fact = entry.facts.find((each) => each.word === word);
  if (fact === undefined || before === undefined) return undefined;
  if (!reads(body.slice(0, before.end), asked)) return undefined;
  const below = body.slice(start);
  return {
    start,
    end: body.length,
    message: `\`${word}\` is a fact of this ${entry.kind}, and a fact stands on a line of its own, indented below.`,
    ...(reads(below, { ...asked, rule: fact.rule }) ? { below } : {}),
  };
}

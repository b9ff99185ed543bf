// What each example of a fact's line in the grammar is read as, and what is told of it with a number or a unit of it another, in a golden file
// (`npm test -- -u` writes it anew; read the difference before it is committed). That the figures are right is facts.test.ts's; that each form
// is taken or refused, the grammar's own.
import { expect, test } from "vitest";
import { examples } from "../../grammar/examples.ts";
import { readLines } from "../../grammar/lines.ts";
import { ENTRIES, type EntrySpec } from "../../grammar/vocabulary.ts";
import type { System } from "../../server/core/quantity/show.ts";
import { unitOf } from "../../server/core/quantity/units.ts";
import { readEntry } from "../../server/model/entry.ts";

/** Spans as "line:start-end", and numbers to the digits that every machine has. */
function shown(value: unknown): string {
  return JSON.stringify(value, (_, each: unknown) => {
    if (typeof each === "number") return Number(each.toPrecision(12));
    if (typeof each !== "object" || each === null) return each;
    const { line, start, end } = each as Readonly<Record<string, unknown>>;
    return typeof start === "number"
      ? `${String(line)}:${String(start)}-${String(end)}`
      : each;
  }).replaceAll('"', "");
}

function readAs(
  { kind, form }: EntrySpec,
  fact: string,
  system: System | undefined,
): string {
  const head = form.replace(/bush\|part/, "bush").replaceAll(/[A-Z]+/g, "x");
  const [block] = readLines(`${head}\n  ${fact}\n`).blocks;
  if (block === undefined) throw new Error(`no block of ${kind}`);
  const { facts, problems, refs } = readEntry(block, { system, isJob: false });
  const sites = refs.filter(({ span }) => span.line === 1);
  return [
    ...facts.map(({ value, span }) => shown(value ?? span)),
    ...sites.map((site) => `names ${shown(site)}`),
    ...problems.map((each) => `${each.code} ${shown([each.span, each.data])}`),
  ].join(" | ");
}

const NUMBER = /(?<![\w.,/-])[-+]?\d*[.,]?\d+(?![\d/.-])/gu;

/** The line with one number or one unit of it another, and with its first two numbers the other way round. */
function* spoilt(body: string): Iterable<string> {
  const numbers = [...body.matchAll(NUMBER)];
  for (const { 0: number, index } of numbers) {
    const [before, after] = [
      body.slice(0, index),
      body.slice(index + number.length),
    ];
    for (const other of [
      number.replace(/\.|$/u, ","),
      `${number.slice(0, -1)}O`,
      "0",
      `-${number.replace(/^[-+]/u, "")}`,
    ])
      yield before + other + after;
  }
  const [one, other] = numbers;
  if (one !== undefined && other !== undefined) {
    const between = body.slice(one.index + one[0].length, other.index);
    const after = body.slice(other.index + other[0].length);
    for (const [first, second] of [
      [other[0], one[0]],
      [one[0], one[0]],
    ])
      yield `${body.slice(0, one.index)}${first ?? ""}${between}${second ?? ""}${after}`;
  }
  for (const { 0: word, index } of body.matchAll(/(?<=[\d ])[A-Za-z/-]+\b"?/gu))
    if (unitOf(word) !== undefined)
      for (const instead of ["", "thuo", "K", "lbf"])
        yield body.slice(0, index) + instead + body.slice(index + word.length);
}

test("each example of each fact, and each with one thing of it another", async () => {
  const lines: string[] = [];
  const done = new Set<string>();
  for (const entry of ENTRIES)
    for (const { word, rule } of entry.facts)
      for (const body of examples[rule] ?? []) {
        if (!body.startsWith(word)) continue;
        const say = (fact: string, system: System | undefined): void => {
          lines.push(
            `${entry.kind}, ${system ?? "no unit"}: ${fact}: ${readAs(entry, fact, system)}`,
          );
        };
        say(body, "inch");
        if (done.has(body)) continue;
        done.add(body);
        say(body, "mm");
        say(body, undefined);
        for (const each of new Set(spoilt(body))) say(each, "inch");
      }
  await expect(`${lines.join("\n")}\n`).toMatchFileSnapshot(
    "../fixtures/lines-read.txt",
  );
});

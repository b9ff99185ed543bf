// What a record says or comes to at one time, item by item: results, the reamer of a line, steps, concessions. It compares nothing.
import { showRange } from "../core/quantity/show.ts";
import { given, valueIn, type Entry } from "../model/entry.ts";
import { concessionOf } from "../model/evaluate/concessions.ts";
import { reamerOfLine } from "../model/evaluate/line-bores.ts";
import { stepValue, type Step } from "../model/evaluate/order.ts";
import { settings } from "../model/evaluate/settings.ts";
import { numberResult } from "../model/make-result.ts";
import { resultsIn, type OpenFile } from "../model/project.ts";
import type { Result, Status, Verdict } from "../model/result.ts";
import { entryOf, type Shop } from "../model/shop.ts";
import { kindOf } from "../model/reference.ts";

/** How something stood at one of the two times, in words of that record. */
export interface Standing {
  readonly text: string;
  readonly status: Status;
  readonly verdict: Verdict;
}

/** One thing that a record says or comes to. */
export interface Item {
  readonly entry: string;
  readonly what: string;
  readonly of: string | null;
  readonly case: number | null;
  readonly standing: Standing;
  /** Undefined for what has no number. */
  readonly result?: Result;
  readonly rank?: number;
}

/**
 * All of them in one state of a record.
 * @param called what an entry is called in the state that it is compared with
 */
export function itemsOf(
  open: OpenFile,
  called: (ref: string) => string,
): readonly Item[] {
  const { shop, file } = open;
  const refs = [...new Set(file.entries.map(({ ref }) => ref))].filter(
    (ref) => shop.places.get(ref)?.file === 0,
  );
  return [
    // whether a step can be done is no change of the record: what it waits for is
    ...resultsIn(open)
      .filter(({ kind }) => kind !== "ready")
      .map((result) => resultItem(result, called)),
    ...refs.flatMap((ref) => [
      ...heldAgainst(shop, ref, called),
      ...reamerItem(shop, ref, called),
      ...stepItem(shop, ref, called),
      ...concessionItem(shop, ref, called),
    ]),
  ];
}

type Called = (ref: string) => string;

function resultItem(result: Result, called: Called): Item {
  const { entry, kind: what, of, text, status, verdict } = result;
  return {
    entry: called(entry),
    what,
    of: of === null ? null : called(of),
    case: result.case,
    standing: { text, status, verdict },
    result,
  };
}

function plainItem(
  entry: string,
  what: string,
  text: string,
  rank?: number,
): Item {
  return {
    entry,
    what,
    of: null,
    case: null,
    standing: { text, status: "measured", verdict: "none" },
    ...(rank === undefined ? {} : { rank }),
  };
}

/** What its sizes are held against: a verdict may be another because these are. */
const HELD_AGAINST = [
  "LimitsFact",
  "ServiceLimitFact",
  "WantFact",
  "WantHotFact",
] as const;

function heldAgainst(shop: Shop, ref: string, called: Called): readonly Item[] {
  const entry = entryOf(shop, ref);
  if (entry === undefined) return [];
  const { system } = settings(shop);
  return HELD_AGAINST.flatMap((rule) => {
    const value = valueIn(entry, rule);
    const word = entry.facts.find((fact) => fact.rule === rule)?.word;
    if (value === undefined || word === undefined) return [];
    const { low, high, step } = value;
    const text = showRange(low, high, system, step);
    const where = { entry: called(ref), kind: word };
    const result = numberResult(
      where,
      "m",
      { low, nominal: (low + high) / 2, high },
      { status: "measured", text, step },
    );
    return [{ ...plainItem(where.entry, word, text), result }];
  });
}

function reamerItem(shop: Shop, ref: string, called: Called): readonly Item[] {
  if (kindOf(ref) !== "line") return [];
  const reamer = reamerOfLine(shop, ref);
  return reamer.known && reamer.value !== undefined
    ? [plainItem(called(ref), "reamer", called(reamer.value))]
    : [];
}

function stepItem(shop: Shop, ref: string, called: Called): readonly Item[] {
  if (kindOf(ref) !== "step") return [];
  const step = stepValue(shop, ref);
  return step.unread
    ? []
    : [plainItem(called(ref), "step", stepWords(step), stepRank(step))];
}

function stepWords({ done, failed, date }: Step): string {
  if (failed) return "failed";
  if (!done) return "open";
  return date === undefined ? "done" : `done ${date}`;
}

/** The lower the better. */
function stepRank({ done, failed }: Step): number {
  if (failed) return 2;
  return done ? 0 : 1;
}

function concessionItem(
  shop: Shop,
  ref: string,
  called: Called,
): readonly Item[] {
  if (kindOf(ref) !== "concession") return [];
  const concession = concessionOf(shop, ref);
  if (concession === undefined) return [];
  const { code, on, who, date } = concession;
  const upTo = boundWords(entryOf(shop, ref));
  const signed =
    who === undefined || date === undefined
      ? "unsigned"
      : `signed by ${who} on ${date}`;
  return [
    plainItem(
      called(ref),
      "concession",
      `allows ${code} on ${called(on)}${upTo}, ${signed}`,
    ),
  ];
}

/** " up to 0.0020 in", as it is written. */
function boundWords(entry: Entry | undefined): string {
  const bound = entry === undefined ? undefined : given(entry, "UpToFact");
  if (entry === undefined || bound?.state !== "given") return "";
  const { line, start, end } = bound.span;
  const written = entry.block.lines[line]?.text.slice(start, end) ?? "";
  return ` ${written.trim().replaceAll(/\s+/gu, " ")}`;
}

/** The same in both states for the same thing. */
export function keyOf({ entry, what, of, case: number }: Item): string {
  return JSON.stringify([entry, what, of, number]);
}

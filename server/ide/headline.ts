// What an entry comes to, in the few words that stand beside its name. They are remembered with what they rest on: an outline asks for those
// of every entry after each edit.
import { missing } from "../model/known.ts";
import { boreSize } from "../model/evaluate/bore.ts";
import { stepValue } from "../model/evaluate/order.ts";
import { reasonsOf, waitsOfStep } from "../model/evaluate/step-waits.ts";
import type { OpenFile } from "../model/project.ts";
import { kindOf } from "../model/reference.ts";
import { HEADLINES, VERDICT_WORDS } from "../model/result-kinds.ts";
import type { Result } from "../model/result.ts";
import { resultsOfKind } from "../model/results.ts";
import { bestTool } from "../model/results/line.ts";
import { query, type Shop, isFirstOfName } from "../model/shop.ts";
import { standsAgainst } from "../rules/entry-findings.ts";
import { standName, type Stands } from "../rules/order/stands.ts";

/** A piece of the words, with the entry that a click on it leads to. */
export interface Words {
  readonly text: string;
  readonly about?: string;
}

const NONE: readonly Words[] = [];

/** What an entry of the file comes to, as it stands beside its name; empty where there is nothing to say. */
export function headline(open: OpenFile, index: number): readonly Words[] {
  const ref = standingAt(open, index);
  return ref === undefined ? NONE : wordsOf(open.shop, ref);
}

/** The same without its links. */
export function headlineText(open: OpenFile, index: number): string {
  const words = headline(open, index);
  return words.map(({ text }) => text).join("");
}

/** The result that an entry's headline shows; undefined where the entry has none. */
export function headlineResult(
  open: OpenFile,
  index: number,
): Result | undefined {
  const ref = standingAt(open, index);
  return ref === undefined ? undefined : resultOf(open.shop, ref);
}

/** What a line of one result says: "0.0010 to 0.0013 in, predicted, in tolerance", or what it needs. */
export function lengthWords(result: Result): readonly Words[] {
  const { status, verdict, text } = result;
  if (status === "unknown") return needWords(result);
  const words = [
    text,
    status,
    ...(verdict === "none" ? [] : [VERDICT_WORDS[verdict]]),
  ];
  return [{ text: words.join(", ") }];
}

/** The reference of an entry of the file that has results; none for the second of a name. */
function standingAt(
  { file, shop }: OpenFile,
  index: number,
): string | undefined {
  const entry = file.entries[index];
  if (entry === undefined || entry.damaged) return undefined;
  return isFirstOfName(shop, entry.ref, index) ? entry.ref : undefined;
}

function resultOf(shop: Shop, ref: string): Result | undefined {
  const kind = HEADLINES[kindOf(ref)];
  return kind === undefined
    ? undefined
    : resultsOfKind(shop, ref, kind).find((each) => each.case === null);
}

const wordsOf = query<readonly Words[]>("headline", (shop, ref) => {
  const result = resultOf(shop, ref);
  if (result === undefined) return NONE;
  switch (kindOf(ref)) {
    case "step":
      return stepWords(shop, result);
    case "line":
      return lineWords(shop, result);
    default:
      return result.kind !== "size" || isMoreThanLimits(shop, result)
        ? lengthWords(result)
        : NONE;
  }
});

/** A size that is only its limits stands on the line below already, and one that is unknown is no news on every feature. */
function isMoreThanLimits(shop: Shop, { entry, status }: Result): boolean {
  if (status !== "predicted") return status === "measured";
  if (kindOf(entry) !== "bore") return false;
  const size = boreSize(shop, entry);
  return size.known && size.value.from !== "limits";
}

/** The first of what is missing; a click leads to the entry that lacks it. */
function needWords({ needs }: Result): readonly Words[] {
  const [first, ...more] = missing(needs);
  if (first === undefined) return NONE;
  return [
    { text: "needs " },
    ...first.flatMap(({ text, ref }, index) => [
      ...(index === 0 ? [] : [{ text: " or " }]),
      { text, about: ref },
    ]),
    ...andMore(more),
  ];
}

function andMore(more: readonly unknown[]): readonly Words[] {
  return more.length === 0 ? NONE : [{ text: ` and ${more.length} more` }];
}

/** The window, and the best reamer for it. */
function lineWords(shop: Shop, window: Result): readonly Words[] {
  if (window.status === "unknown") return needWords(window);
  const tool = bestTool(shop, window.entry);
  return [
    { text: `bore to be ${window.text}, by ${window.status} journals: ` },
    ...(tool === undefined
      ? [{ text: "no reamer that serves" }]
      : [
          { text: tool.name, about: tool.name },
          ...(tool.doubt === "" ? [] : [{ text: tool.doubt }]),
        ]),
  ];
}

function stepWords(shop: Shop, ready: Result): readonly Words[] {
  if (ready.nominal === 1) return nextWords(standsAgainst(shop, ready.entry));
  const step = stepValue(shop, ready.entry);
  if (step.done || ready.status === "unknown") return [{ text: ready.text }];
  const [first, ...more] = reasonsOf(waitsOfStep(shop, step));
  return first === undefined
    ? [{ text: ready.text }]
    : [
        { text: "waits: " },
        { text: first.text, about: first.ref },
        ...andMore(more),
      ];
}

/** A click leads to where the first of what stands is. */
function nextWords(stands: readonly Stands[]): readonly Words[] {
  const [first, ...more] = stands;
  return first === undefined
    ? [{ text: "next" }]
    : [
        { text: "next, but look first: " },
        { text: standName(first), about: first.ref },
        ...andMore(more),
      ];
}

// How one entry of a record stands, as a state and in words: its verdict, what is to measure or to cut, what a step waits for. The numbers
// are the results', the errors the rules'.
import { parseBody } from "../../grammar/parse.ts";
import { nodesIn } from "../../grammar/tree.ts";
import { UNIT_OF_SYSTEM, type System } from "../core/quantity/show.ts";
import { missingTexts } from "../model/known.ts";
import { allOf, valueIn, type Entry } from "../model/entry.ts";
import { lineOfBore } from "../model/evaluate/index-of.ts";
import { orderOf } from "../model/evaluate/order.ts";
import { waitsOfStep } from "../model/evaluate/step-waits.ts";
import type { Finding, Result } from "../model/result.ts";
import { HEADLINES, resultName, VERDICT_WORDS } from "../model/result-kinds.ts";
import { resultsOf } from "../model/results.ts";
import { bestTool } from "../model/results/line.ts";
import { entryOf, openingEntry, type Shop } from "../model/shop.ts";
import type { FactRule } from "../model/values.ts";
import { standsAgainst } from "../rules/entry-findings.ts";
import { standWords } from "../rules/order/stands.ts";
import type { OverviewState } from "../protocol/overview.ts";
import { kindOf } from "../model/reference.ts";

export interface Standing {
  readonly state: OverviewState;
  readonly detail: string;
  /** Of a feature to measure, the size that it may be expected to have, where one is known. */
  readonly expected?: string;
}

/** How an entry that is no step stands. `findings` are its own. */
export function standingOf(
  shop: Shop,
  ref: string,
  findings: readonly Finding[],
): Standing {
  const entry = entryOf(shop, ref);
  if (entry === undefined) return { state: "plain", detail: "" };
  if (entry.damaged)
    return { state: "unread", detail: "its opening line can't be read" };
  const bare = isFeature(ref)
    ? featureStanding(shop, ref)
    : resultStanding(shop, ref, entry);
  const open = findings.filter(({ accepted }) => accepted === null);
  const errors = open.filter(({ level }) => level === "error").length;
  const isLoud = open.some(
    ({ level }) => level === "error" || level === "warning",
  );
  const accepted = findings.find((each) => each.accepted !== null)?.accepted;
  if (
    (bare.state === "out" || bare.state === "unsure") &&
    typeof accepted === "string" &&
    !isLoud
  )
    return {
      state: "accepted",
      detail: `accepted by concession ${accepted}; ${bare.detail}`,
    };
  if (errors === 0 || bare.state === "out") return bare;
  const counted = errors === 1 ? "1 error" : `${errors} errors`;
  // a verdict that stands beside an error is still a verdict
  return bare.state === "plain" || bare.state === "in"
    ? { state: "fault", detail: joined(counted, bare.detail) }
    : { ...bare, detail: joined(bare.detail, counted) };
}

export function isFeature(ref: string): boolean {
  return /^(?:journal|hole|bore) /u.test(ref);
}

function featureStanding(shop: Shop, ref: string): Standing {
  const size = firstOf(resultsOf(shop, ref), "size");
  if (size === undefined) return { state: "plain", detail: "" };
  if (size.status === "measured") return judged(resultsOf(shop, ref), size);
  const isKnown = size.status === "predicted";
  if (!isKnown && size.needs.length === 0)
    return { state: "unread", detail: size.text };
  const line = kindOf(ref) === "bore" ? lineOfBore(shop, ref) : undefined;
  if (line !== undefined && !isCut(shop, line)) {
    const worst = judged(resultsOf(shop, ref), size);
    return worst.state === "plain" || worst.state === "in"
      ? {
          state: "to-cut",
          detail: isKnown
            ? `to cut, ${size.text}, predicted`
            : joined("to cut", needText(size)),
        }
      : worst;
  }
  if (!isKnown) return { state: "to-measure", detail: "to measure" };
  const expected = `${size.text} expected`;
  return { state: "to-measure", detail: `to measure; ${expected}`, expected };
}

function isCut(shop: Shop, line: string): boolean {
  return orderOf(shop).steps.some(
    (step) => step.done && step.cuts.includes(line),
  );
}

function resultStanding(shop: Shop, ref: string, entry: Entry): Standing {
  const results = resultsOf(shop, ref);
  const kind = HEADLINES[entry.kind ?? ""];
  const first = kind === undefined ? undefined : firstOf(results, kind);
  if (first === undefined)
    return { state: "plain", detail: firstFact(shop, entry) };
  const best =
    entry.kind === "line" && first.status !== "unknown"
      ? bestTool(shop, ref)
      : undefined;
  if (best === undefined) return judged(results, first);
  const standing = judged(results, first, first.text);
  // its name without its kind: of a name that is cut off nobody knows which one to take
  const tool = best.name.replace(/^reamer /u, "");
  return {
    ...standing,
    detail: `${tool}${best.doubt}, by ${first.status} journals; window ${standing.detail}`,
  };
}

/** By the first result and by whichever is worse. How it is known stands before the figure: a narrow side bar cuts off the end, and what is predicted must never look measured. */
function judged(
  results: readonly Result[],
  first: Result,
  figure = `${first.status}, ${first.text}`,
): Standing {
  const worst = ["out", "unsure"].flatMap((verdict) =>
    results.filter((each) => each.verdict === verdict),
  )[0];
  const own = first.status === "unknown" ? needText(first) : figure;
  if (worst === undefined || worst === first)
    return first.verdict === "none"
      ? { state: "plain", detail: own }
      : { state: first.verdict, detail: `${first.verdict}, ${own}` };
  const { verdict, status, text, case: number } = worst;
  const which = number === null ? "" : `, case ${number}`;
  return {
    state: verdict === "none" ? "plain" : verdict,
    detail: `${verdict}, ${status}: ${resultName(worst.kind)}${which} ${text}; ${resultName(first.kind)} ${own}`,
  };
}

function needText({ entry, needs, text }: Result): string {
  const [need, ...others] = missingTexts(needs);
  if (need === undefined) return text === "" ? "not known" : text;
  return `needs ${withoutName(need, entry)}${others.length === 0 ? "" : ` and ${others.length} more`}`;
}

/** "a reading as roughed" of "a reading of bore front as roughed", where the name stands before it: a narrow side bar has no room for it. */
export function withoutName(text: string, ref: string): string {
  const [before = "", ...after] = text.split(` of ${ref}`);
  const rest = after.join(` of ${ref}`);
  // "of bore front-2" names another
  return /^[\p{L}\d-]/u.test(rest) ? text : before + rest;
}

/** How a step stands. */
export function stepStanding(shop: Shop, ref: string): Standing {
  const order = orderOf(shop);
  const step = order.steps.find((each) => each.ref === ref);
  const ready = firstOf(resultsOf(shop, ref), "ready");
  if (step === undefined || ready === undefined)
    return {
      state: "plain",
      detail: valueIn(entryOf(shop, ref), "DoFact") ?? "",
    };
  if (step.unread || ready.status === "unknown")
    return {
      state: "unread",
      detail:
        ready.status === "unknown"
          ? ready.text
          : "a line that it needs can't be read",
    };
  if (step.done)
    return {
      state: "done",
      detail: step.date === undefined ? "done" : `done ${step.date}`,
    };
  if (order.loops.some((loop) => loop.includes(ref)))
    return { state: "fault", detail: "waits for itself" };
  const isNext = order.next.includes(ref);
  if (step.failed)
    return { state: "failed", detail: "found failed: to be done again" };
  if (ready.nominal === 1) {
    const words = standWords(standsAgainst(shop, ref));
    return words === ""
      ? { state: "ready", detail: joined("next", step.text ?? "") }
      : { state: "look-first", detail: `look first: ${words}` };
  }
  const { before, wanting } = waitsOfStep(shop, step);
  const reason = [...before, ...wanting.map(({ text }) => text)].join("; ");
  return { state: isNext ? "blocked" : "waits", detail: `waits: ${reason}` };
}

/** The results of an entry, a line each, for a person. */
export function resultLines(shop: Shop, ref: string): readonly string[] {
  return resultsOf(shop, ref)
    .filter(({ kind }) => kind !== "ready")
    .map((result) => {
      const which = [
        result.of,
        result.case === null ? null : `case ${result.case}`,
      ].filter((part) => part !== null);
      const verdict =
        result.verdict === "none" ? "" : `, ${VERDICT_WORDS[result.verdict]}`;
      const said =
        result.status === "unknown"
          ? needText(result)
          : `${result.text}, ${result.status}${verdict}`;
      return `${[resultName(result.kind), ...which].join(", ")}: ${said}`;
    });
}

function firstOf(results: readonly Result[], kind: string): Result | undefined {
  return results.find((result) => result.kind === kind && result.case === null);
}

/** What an entry without results is known by: its first fact, as written. */
function firstFact(shop: Shop, entry: Entry): string {
  if (entry.kind === "route")
    return allOf(entry, "RouteStepFact")
      .flatMap(({ value }) => value?.name ?? [])
      .join(", ");
  const said =
    allOf(entry, "AllowsFact")[0] ??
    entry.facts.find((each) => each.rule !== "NoteFact");
  if (said === undefined) return "";
  const body = entry.block.lines[said.span.line]?.body ?? "";
  return withUnit(body, said.rule, valueIn(openingEntry(shop), "UnitsFact"));
}

/** "length 1 in" of "length 1": away from the head of its file a bare length may be anything. */
function withUnit(
  body: string,
  rule: FactRule,
  system: System | undefined,
): string {
  const all = nodesIn(parseBody(body, rule).tree);
  const last = all.findLast(({ type }) => /^(?:length|deviation)$/.test(type));
  return last === undefined ||
    system === undefined ||
    all.some(({ type }) => type === "unit")
    ? body
    : `${body.slice(0, last.end)} ${UNIT_OF_SYSTEM[system]}${body.slice(last.end)}`;
}

function joined(one: string, other: string): string {
  return other === "" ? one : `${one}; ${other}`;
}

// What an entry is and what follows from it: its results, how sure they are, the working, what is still needed, the cautions.
import { entrySpec, type EntryKind } from "../../grammar/vocabulary.ts";
import { allOf, valueIn, type Entry } from "../model/entry.ts";
import {
  cautionNamed,
  cautionsOfCut,
  cautionsOfPress,
  cautionsOfStep,
  LIMIT_OF_RECORD,
  CAUTIONS,
} from "../model/cautions.ts";
import { orderOf, stepValue } from "../model/evaluate/order.ts";
import { materialOfFeature } from "../model/evaluate/size.ts";
import type { Result } from "../model/result.ts";
import { fewResultsOf, resultsOf } from "../model/results.ts";
import { entryOf, type Shop } from "../model/shop.ts";
import { askedOf, guardOf } from "../model/asked.ts";
import { reamingAdvice, wantedAdvice } from "./hover-advice.ts";
import { assumptionsOf } from "../model/assumptions.ts";
import {
  factsAsWritten,
  gaugeBody,
  materialBody,
  oilBody,
  reamerBody,
  shippedWhat,
} from "./hover-crib.ts";
import { nearestFits } from "./hover-nearest.ts";
import { lineBody } from "./hover-line.ts";
import { standsAgainst } from "../rules/entry-findings.ts";
import {
  standCount,
  standName,
  standWords,
  type Stands,
} from "../rules/order/stands.ts";
import { blocks, escaped, list, sentence, table } from "../markup/markdown.ts";
import { kindOf, nameOf } from "../model/reference.ts";
import {
  resultName,
  statusWord,
  VERDICT_WORDS,
} from "../model/result-kinds.ts";

/** All that is known of an entry. `brief` leaves the working and the cautions out: for a reference to it. */
export function entryHover(shop: Shop, ref: string, brief: boolean): string {
  const kind = kindOf(ref);
  const entry = entryOf(shop, ref);
  const { results, more } = fewResultsOf(shop, ref);
  return blocks(
    titleOf(shop, ref, kind, entry),
    entry?.damaged === true ? "Its opening line can't be read." : "",
    bodyOf(shop, ref, kind, entry),
    resultsTable(results.filter((each) => !TOLD_IN_BODY.has(each.kind))),
    more === 0 ? "" : `and ${String(more)} more, none of a narrower tolerance.`,
    brief || entry === undefined ? "" : adviceBody(shop, kind, entry),
    brief ? "" : nearestFits(shop, ref, kind),
    brief
      ? ""
      : workingText(results.filter((each) => !WORKED_IN_BODY.has(each.kind))),
    assumptionsText(assumptionsOf(shop, ref, results)),
    brief ? "" : cautionsText(cautionsFor(shop, ref, kind)),
  );
}

/** What the body of a line or a step says in its own way. */
const WORKED_IN_BODY = new Set(["cut-size", "chance"]);
const TOLD_IN_BODY = new Set(["reamer-window", "ready", ...WORKED_IN_BODY]);

/** "**fit front** of journal front in bore front: a running fit" */
function titleOf(
  shop: Shop,
  ref: string,
  kind: EntryKind,
  entry: Entry | undefined,
): string {
  const clauses = (entry?.of ?? []).map((site, index) => {
    const written =
      site.kind === undefined && site.takes.length === 1
        ? `${site.takes[0] ?? ""} ${site.name}`
        : `${site.kind === undefined ? "" : `${site.kind} `}${site.name}`;
    return `${CLAUSE[kind]?.[index] ?? "in"} ${written}`;
  });
  const means =
    entry === undefined && shippedWhat(ref) !== undefined
      ? `${kind === "oil" ? "an oil" : "a material"} shipped with the tool`
      : (entrySpec(kind)?.means ?? "");
  const made = madeOf(shop, ref, kind);
  return `**${escaped(ref)}**${clauses.length === 0 ? "" : ` ${escaped(clauses.join(" "))}`}${made}: ${lowerFirst(means)}`;
}

const CLAUSE: Readonly<Partial<Record<EntryKind, readonly string[]>>> = {
  journal: ["on"],
  press: ["of", "in"],
  fit: ["of", "in"],
};

function madeOf(shop: Shop, ref: string, kind: EntryKind): string {
  if (!["journal", "hole", "bush", "bore"].includes(kind)) return "";
  const material = materialOfFeature(shop, ref);
  return material.known ? `, ${escaped(nameOf(material.value.ref))}` : "";
}

function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}

function bodyOf(
  shop: Shop,
  ref: string,
  kind: EntryKind,
  entry: Entry | undefined,
): string {
  switch (kind) {
    case "line":
      return blocks(lineBody(shop, ref), reamingAdvice(shop, ref));
    case "step":
      return stepBody(shop, ref);
    case "material":
      return materialBody(shop, ref);
    case "oil":
      return oilBody(shop, ref);
    case "reamer":
      return reamerBody(shop, ref);
    case "gauge":
      return gaugeBody(shop, ref);
    case "job":
      return entry === undefined ? "" : jobBody(shop, entry);
    case "journal":
    case "hole":
    case "bore":
    case "fit":
    case "press":
    case "stack":
      return demandBody(shop, ref);
    default:
      return entry === undefined ? "" : factsAsWritten(entry);
  }
}

/** What is asked of it, and how a guarded verdict was reached. */
function demandBody(shop: Shop, ref: string): string {
  return blocks(
    askedOf(shop, ref).map(escaped).join("  \n"),
    escaped(guardOf(shop, ref)),
  );
}

/** Before anything is wanted, what might be: below what is known. */
function adviceBody(shop: Shop, kind: EntryKind, entry: Entry): string {
  return kind === "fit" && allOf(entry, "WantFact").length === 0
    ? wantedAdvice(shop, entry.ref)
    : "";
}

function jobBody(shop: Shop, entry: Entry): string {
  const title = valueIn(entry, "TitleFact");
  const { next } = orderOf(shop);
  return blocks(
    title === undefined ? "" : escaped(title),
    next.length === 0
      ? ""
      : `Next: ${next.map((ref) => escaped(nextText(shop, ref))).join(", ")}.`,
  );
}

function nextText(shop: Shop, ref: string): string {
  const words = standWords(standsAgainst(shop, ref));
  return words === "" ? ref : `${ref} (look first: ${words})`;
}

function stepBody(shop: Shop, ref: string): string {
  const step = stepValue(shop, ref);
  const ready = resultsOf(shop, ref).find((each) => each.kind === "ready");
  return blocks(
    step.text === undefined ? "" : escaped(step.text),
    ready === undefined
      ? ""
      : `**${escaped(ready.text)}**${step.date === undefined ? "" : `, ${step.date}`}`,
    standsText(standsAgainst(shop, ref), step.done),
    step.after.length === 0 ? "" : `After ${escaped(step.after.join(", "))}.`,
  );
}

function standsText(stands: readonly Stands[], done: boolean): string {
  return done || stands.length === 0
    ? ""
    : `Look first: ${standCount(stands)}:\n\n${list(
        stands.map(
          (each) =>
            `**${escaped(standName(each))}** (${each.level}): ${sentence(each.message)}`,
        ),
      )}`;
}

/** What is known, one line each; what is unknown stands with what would settle it. */
function resultsTable(results: readonly Result[]): string {
  return table(
    ["", "value", "known how", "verdict", ""],
    results.map((result) => [
      escaped(labelOf(result)),
      escaped(result.status === "unknown" ? "unknown" : result.text),
      result.status === "unknown" ? "" : statusWord(result),
      result.verdict === "out" ? "**out**" : VERDICT_WORDS[result.verdict],
      result.status === "unknown" ? sentence(result.text) : "",
    ]),
  );
}

function labelOf({ kind, of, case: number }: Result): string {
  const which = number === null ? "" : ` ${String(number)}`;
  return `${resultName(kind)}${which}${of === null ? "" : `, ${of}`}`;
}

const MOST_STEPS = 30;

function workingText(results: readonly Result[]): string {
  const steps = results.flatMap((result) =>
    result.working.map(({ formula, with: numbers, source }) =>
      [
        sentence(formula),
        numbers === "" ? "" : `: ${sentence(numbers)}`,
        source === "" ? "" : ` (${escaped(source)})`,
      ].join(""),
    ),
  );
  const once = [...new Set(steps)];
  if (once.length === 0) return "";
  const shown =
    once.length <= MOST_STEPS
      ? once
      : [
          ...once.slice(0, MOST_STEPS),
          `and ${String(once.length - MOST_STEPS)} more`,
        ];
  return `Working:\n\n${list(shown)}`;
}

function assumptionsText(assumptions: readonly string[]): string {
  return assumptions.length === 0
    ? ""
    : `Taken as given:\n\n${list(assumptions.map(sentence))}`;
}

/** The names of the cautions that belong to an entry. */
function cautionsFor(
  shop: Shop,
  ref: string,
  kind: EntryKind,
): readonly string[] {
  if (kind === "step") return cautionsOfStep(shop, ref);
  const brought = new Set(
    kind === "line"
      ? cautionsOfCut(shop, ref)
      : kind === "press"
        ? cautionsOfPress(shop, ref)
        : kind === "bush"
          ? allOfBush(shop, ref)
          : [],
  );
  return CAUTIONS.filter((each) => brought.has(each.name)).map(
    (each) => each.name,
  );
}

function allOfBush(shop: Shop, ref: string): readonly string[] {
  const entry = entryOf(shop, ref);
  if (entry === undefined) return [];
  return allOf(entry, "ConstructionFact").some(
    (fact) => fact.value === "porous",
  )
    ? ["oil-filled-bush"]
    : [];
}

function cautionsText(names: readonly string[]): string {
  const found = names.flatMap((name) => cautionNamed(name) ?? []);
  if (found.length === 0) return "";
  return `Cautions:\n\n${list(
    found.map(({ title, text }) => `**${title}.** ${sentence(text)}`),
  )}\n\n*${LIMIT_OF_RECORD}*`;
}

export function cautionHover(name: string): string | undefined {
  const caution = cautionNamed(name);
  if (caution === undefined) return undefined;
  return blocks(
    `**${caution.title}**`,
    sentence(caution.text),
    caution.source === "" ? "" : `*${escaped(caution.source)}*`,
  );
}

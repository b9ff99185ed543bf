// Takes back a plan that has been to the editor and may be anything now: only one that this server could have made passes, so that nothing
// but readings is ever written by it.
import { parseBody } from "../../../grammar/parse.ts";
import { takesSwing } from "../../model/evaluate/roundness.ts";
import type { TakingPlan } from "../../protocol/guide.ts";
import { lineOf } from "./lines.ts";
import { kindOf } from "../../model/reference.ts";

const KINDS = /^(?:journal|hole|bush|bore|reamer|pilot) \p{L}[\p{L}\d-]*$/u;
const NAME = /^\p{L}[\p{L}\d-]*$/u;
const TURNED =
  /^(?:vee \d{1,3}(?:\.\d{1,3})? deg|three points), [1-9]\d{0,3} lobes$/u;
const MOST_PLACES = 20;
const MOST_READINGS = 50;

/** The plan; undefined for anything else. */
export function planFrom(given: unknown): TakingPlan | undefined {
  const of = (name: string): unknown =>
    typeof given === "object" && given !== null
      ? (Object.getOwnPropertyDescriptor(given, name)?.value as unknown) // typed any
      : undefined;
  const ref = of("ref");
  const side = of("side");
  const fact = of("fact");
  const places = placesFrom(of("places"));
  const each = of("each");
  const gauge = textOrNull(of("gauge"), NAME);
  const temperature = textOrNull(
    of("temperature"),
    /^-?\d{1,4}(?:\.\d{1,3})? [FCK]$/u,
  );
  const stage = textOrNull(
    of("stage"),
    /^(?:bought|pressed|roughed|finished|run)$/u,
  );
  const date = textOrNull(of("date"), /^\d{4}-\d\d-\d\d$/u);
  const system = of("system");
  // a plan of an earlier version says nothing of it
  const turned = textOrNull(of("turned") ?? null, TURNED);
  const expected = expectedFrom(of("expected"));
  const resolution = lengthOrNull(of("resolution"));
  if (
    typeof ref !== "string" ||
    !KINDS.test(ref) ||
    (side !== "od" && side !== "id" && side !== null) ||
    (fact !== "read" && fact !== "repeat" && fact !== "swing") ||
    turned === undefined ||
    (fact === "swing") !== (turned !== null) ||
    places === undefined ||
    typeof each !== "number" ||
    !Number.isInteger(each) ||
    each < 1 ||
    MOST_READINGS < each ||
    gauge === undefined ||
    temperature === undefined ||
    stage === undefined ||
    typeof date !== "string" ||
    (system !== "inch" && system !== "mm") ||
    expected === undefined ||
    resolution === undefined
  )
    return undefined;
  const plan: TakingPlan = {
    ref,
    side,
    fact,
    turned,
    places,
    each,
    gauge,
    temperature,
    stage,
    date,
    system,
    expected,
    resolution,
  };
  return isReadable(plan) ? plan : undefined;
}

/** A line written by it can be read: words that open clauses, for one, are no names. */
function isReadable(plan: TakingPlan): boolean {
  const { ref, side, fact, places } = plan;
  const isBush = side !== null;
  if (isBush && fact !== "read") return false;
  if (fact === "swing" && !takesSwing(ref)) return false;
  return places.every(
    (place) =>
      parseBody(lineOf(plan, place, ["1"]), ruleOf(fact, isBush, ref))
        .damagedAt === undefined,
  );
}

function ruleOf(
  fact: TakingPlan["fact"],
  isBush: boolean,
  ref: string,
): Parameters<typeof parseBody>[1] {
  switch (fact) {
    case "repeat":
      return "RepeatFact";
    case "swing":
      return kindOf(ref) === "journal" ? "SwingFact" : "BoreSwingFact";
    case "read":
      return isBush ? "BushReadFact" : "ReadFact";
  }
}

function placesFrom(given: unknown): TakingPlan["places"] | undefined {
  if (!Array.isArray(given) || given.length < 1 || MOST_PLACES < given.length)
    return undefined;
  const places: (string | null)[] = [];
  for (const each of given as readonly unknown[]) {
    const place = textOrNull(each, NAME);
    if (place === undefined) return undefined;
    places.push(place);
  }
  return new Set(places).size === places.length ? places : undefined;
}

function textOrNull(
  given: unknown,
  pattern: RegExp,
): string | null | undefined {
  if (given === null) return null;
  return typeof given === "string" && given.length <= 200 && pattern.test(given)
    ? given
    : undefined;
}

function lengthOrNull(given: unknown): number | null | undefined {
  if (given === null) return null;
  return typeof given === "number" && 0 < given && given < 1000
    ? given
    : undefined;
}

function expectedFrom(given: unknown): TakingPlan["expected"] | undefined {
  if (given === null) return null;
  if (typeof given !== "object" || !("low" in given) || !("high" in given))
    return undefined;
  const low = lengthOrNull(given.low);
  const high = lengthOrNull(given.high);
  return typeof low === "number" && typeof high === "number" && low <= high
    ? { low, high }
    : undefined;
}

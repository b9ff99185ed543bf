// The taking of readings as states and steps: which reading is next, which is asked about, what has been taken. A step is what was typed;
// a state follows from the steps before it and nothing else, and undoing a step is leaving it off.
import { metresToTenths } from "../../core/quantity/exact.ts";
import {
  UNIT_OF_SYSTEM,
  showLength,
  showRange,
} from "../../core/quantity/show.ts";
import { strayAmong } from "../../core/readings/stray.ts";
import type { Offer, TakingPlan } from "../../protocol/guide.ts";
import { factorOf, isExpected } from "../../core/readings/expected.ts";
import { metresOf, readTyped, stepOf, type ReadingUnit } from "./typed.ts";

export interface Taken {
  readonly digits: string;
  readonly unit: ReadingUnit;
  /** m, as read. */
  readonly metres: number;
  readonly step: number;
}

/** A reading that is asked about before it counts. */
export interface Doubt {
  readonly value: Taken;
  /** The number of the reading at its place that it would replace; undefined for a further one. */
  readonly replaces: number | undefined;
  readonly sentence: string;
  readonly offers: readonly Offer[];
}

export interface Taking {
  /** The readings of each place of the plan. */
  readonly taken: readonly (readonly Taken[])[];
  /** The place being read; as many as there are places once all is over. */
  readonly at: number;
  readonly doubt: Doubt | undefined;
  /** What a number without a unit is in. */
  readonly bare: ReadingUnit;
  /** Places whose repeats have been looked at, strays and all. */
  readonly settled: readonly number[];
}

/** Where the steps lead, and what is to be said of the last of them. */
export interface Stand {
  readonly state: Taking;
  /** Why the last thing typed was not taken. */
  readonly note: string | undefined;
  /** Steps that can be undone. */
  readonly steps: number;
}

export const UNDO = "u";
export const SKIP = "s";
const KEEP = "k";

function beginning(plan: TakingPlan): Taking {
  return {
    taken: plan.places.map(() => []),
    at: 0,
    doubt: undefined,
    bare: UNIT_OF_SYSTEM[plan.system],
    settled: [],
  };
}

/** The state after all that was typed, in order. */
export function standAfter(plan: TakingPlan, inputs: readonly string[]): Stand {
  const states = [beginning(plan)];
  let note: string | undefined;
  for (const input of inputs) {
    const word = input.trim().toLowerCase();
    const state = states.at(-1) ?? beginning(plan);
    note = undefined;
    if (word === UNDO) {
      if (states.length === 1) note = "There is nothing to take back.";
      else states.pop();
      continue;
    }
    const next = step(plan, state, input);
    if ("fault" in next) note = next.fault;
    else if (next !== state) states.push(next);
  }
  return {
    state: states.at(-1) ?? beginning(plan),
    note,
    steps: states.length - 1,
  };
}

/** One step; the same state where nothing was typed, a sentence where it can't be taken. */
function step(
  plan: TakingPlan,
  state: Taking,
  input: string,
): Taking | { readonly fault: string } {
  const word = input.trim().toLowerCase();
  if (word === "") return state;
  if (isOver(state)) return { fault: "All has been taken." };
  if (word === SKIP) return { ...state, doubt: undefined, at: state.at + 1 };
  const { doubt } = state;
  if (doubt?.offers.some((offer) => offer.word === word) === true) {
    if (word === KEEP)
      return accepted(plan, state, doubt.value, doubt.replaces, true);
    if (word === "mm" || word === "in") {
      const { digits } = doubt.value;
      const value = takenOf(digits, word);
      return accepted(
        plan,
        { ...state, bare: word },
        value,
        doubt.replaces,
        true,
      );
    }
  }
  const typed = readTyped(input, plan.fact === "swing");
  if ("fault" in typed) return typed;
  const value = takenOf(typed.digits, typed.unit ?? state.bare);
  const replaces = doubt?.replaces;
  // the same once more is the answer to a doubt
  if (doubt !== undefined && agree(value, doubt))
    return accepted(plan, state, value, replaces, true);
  const found = doubtOf(plan, state, value, typed.hasOpenComma);
  return found === undefined
    ? accepted(plan, state, value, replaces, false)
    : { ...state, doubt: { ...found, value, replaces } };
}

export function isOver({ taken, at }: Taking): boolean {
  return taken.length <= at;
}

function takenOf(digits: string, unit: ReadingUnit): Taken {
  return {
    digits,
    unit,
    metres: metresOf(digits, unit),
    step: stepOf(digits, unit),
  };
}

/** Takes a reading at the place, and goes on to the next place when this one has all of its own and none is a stray. */
function accepted(
  plan: TakingPlan,
  state: Taking,
  value: Taken,
  replaces: number | undefined,
  isSettled: boolean,
): Taking {
  const { at } = state;
  const before = state.taken[at] ?? [];
  const here =
    replaces === undefined
      ? [...before, value]
      : before.map((each, index) => (index === replaces ? value : each));
  const settled =
    isSettled && replaces !== undefined
      ? [...state.settled, at]
      : state.settled;
  const next: Taking = {
    ...state,
    taken: state.taken.map((each, index) => (index === at ? here : each)),
    settled,
    doubt: undefined,
  };
  const stray = settled.includes(at) ? undefined : strayDoubt(plan, here);
  if (stray !== undefined) return { ...next, doubt: stray };
  return plan.each <= here.length ? { ...next, at: at + 1 } : next;
}

/** The same again: as near as two readings of one diameter come, a thousandth of it; of a stray, to the last digit. */
function agree(again: Taken, { value, replaces }: Doubt): boolean {
  const within = replaces === undefined ? 1e-3 * value.metres : 0;
  return (
    Math.abs(metresToTenths(again.metres) - metresToTenths(value.metres)) <=
    metresToTenths(Math.max(within, again.step, value.step))
  );
}

/** What to ask of a reading far from what is expected: by the limits, else by what has been taken already. */
function doubtOf(
  plan: TakingPlan,
  state: Taking,
  value: Taken,
  hasOpenComma: boolean,
): Pick<Doubt, "sentence" | "offers"> | undefined {
  if (plan.fact === "swing") return swingDoubt(plan, value);
  const all = state.taken.flat().map(({ metres }) => metres);
  const expected =
    plan.expected ??
    (all.length === 0
      ? undefined
      : { low: Math.min(...all), high: Math.max(...all) });
  const keep = { word: KEEP, label: "Keep it" };
  const again = `Measure again: the same once more is taken as it is, or ${KEEP} takes it now.`;
  if (expected === undefined)
    return hasOpenComma
      ? {
          sentence: `Is the comma a decimal mark, so that this is ${shownTaken(value)}? ${again}`,
          offers: [keep],
        }
      : undefined;
  if (isExpected(value.metres, expected)) return apart(plan, state, value);
  const { system } = plan;
  const wanted = showRange(expected.low, expected.high, system);
  const factor = factorOf(value.metres, expected);
  const other = value.unit === "mm" ? "in" : "mm";
  const isOtherUnit =
    (value.unit === "mm" || value.unit === "in") &&
    isExpected(metresOf(value.digits, other), expected);
  if (isOtherUnit)
    return {
      sentence: `${shownTaken(value)} is far from the ${wanted} that is expected here; as ${value.digits} ${other} it is near. Does the gauge show ${other === "mm" ? "millimetres" : "inches"}? Type ${other} to take it so, and all that follow. ${again}`,
      offers: [{ word: other, label: `It is in ${other}` }, keep],
    };
  return {
    sentence: `${shownTaken(value)} is far from the ${wanted} that is expected here${factorText(factor)}. ${again}`,
    offers: [keep],
  };
}

/** More than such a share of the size, a pointer does not swing over a part that is to run. Common practice, no source. */
const MOST_SWING = 0.01;
/** The same where nothing says the size, m. */
const MOST_SWING_ALONE = 1e-3;

function swingDoubt(
  { expected }: TakingPlan,
  value: Taken,
): Pick<Doubt, "sentence" | "offers"> | undefined {
  const most =
    expected === null ? MOST_SWING_ALONE : MOST_SWING * expected.high;
  return value.metres <= most
    ? undefined
    : {
        sentence: `${shownTaken(value)} is far for a pointer to swing. Type how far it went from least to most, and not what it shows. The same once more is taken as it is, or ${KEEP} takes it now.`,
        offers: [{ word: KEEP, label: "Keep it" }],
      };
}

/** A reading is apart from all others by more than this share of the size: a digit was perhaps mistaken. Common practice, no source. */
const APART = 0.002;

/** Where what is expected leaves room for wear, the readings before tell more; an oval or a worn end is taken when it is read again. */
function apart(
  { fact, system }: TakingPlan,
  { taken }: Taking,
  { metres, step: count, ...value }: Taken,
): Pick<Doubt, "sentence" | "offers"> | undefined {
  const all = taken.flat();
  if (fact !== "read" || all.length < 2) return undefined;
  const sizes = all.map((each) => each.metres);
  const [least, most] = [Math.min(...sizes), Math.max(...sizes)];
  const gap = Math.max(least - metres, metres - most);
  const steps = Math.max(count, ...all.map((each) => each.step));
  const room = Math.max(APART * most, 3 * (most - least), 2 * steps);
  if (metresToTenths(gap) <= metresToTenths(room)) return undefined;
  return {
    sentence: `${shownTaken(value)} is ${showLength(gap, system, steps)} from the nearest of the ${String(all.length)} readings before it. Measure again: the same once more is taken as it is, or ${KEEP} takes it now.`,
    offers: [{ word: KEEP, label: "Keep it" }],
  };
}

function factorText(factor: number | undefined): string {
  if (factor === undefined) return "";
  const [times, word] = factor < 1 ? [1 / factor, "small"] : [factor, "large"];
  return `, ${String(Math.round(10 * times) / 10)} times too ${word}`;
}

/** Among repeats, the one that stands too far from the others. Readings round an oval are form, and none of them is a stray. */
function strayDoubt(
  plan: TakingPlan,
  here: readonly Taken[],
): Doubt | undefined {
  if (plan.fact !== "repeat") return undefined;
  const count = Math.max(
    plan.resolution ?? 0,
    ...here.map(({ step: each }) => each),
  );
  const stray = strayAmong(
    here.map(({ metres }) => metres),
    count,
  );
  const value = stray === undefined ? undefined : here[stray.index];
  if (stray === undefined || value === undefined) return undefined;
  return {
    value,
    replaces: stray.index,
    sentence: `${shownTaken(value)} stands ${stray.statistic.toFixed(2)} standard deviations from the mean of ${String(here.length)} repeats, and ${stray.critical.toFixed(2)} is the most that chance explains (Grubbs, 5 %). Wipe both faces and read it again: what comes takes its place. ${KEEP} keeps it.`,
    offers: [{ word: KEEP, label: "Keep it" }],
  };
}

function shownTaken({ digits, unit }: Pick<Taken, "digits" | "unit">): string {
  return `${digits} ${unit}`;
}

// What the box says while readings are taken: which comes next, what has been taken, what it comes to.
import { showCount } from "../../core/quantity/show.ts";
import type { OpenFile } from "../../model/project.ts";
import { plain } from "../../markup/markdown.ts";
import {
  OTHER_WORD,
  type TakingPlan,
  type TakingPrompt,
} from "../../protocol/guide.ts";
import { withLines } from "./figures.ts";
import { indexOf, insertion, linesOf } from "./lines.ts";
import { choicesAfter } from "./after.ts";
import { sentencesOf } from "./sentences.ts";
import { isOver, SKIP, standAfter, UNDO, type Taking } from "./steps.ts";

/**
 * The prompt after all that was typed. The lines stand in it whatever became of the record meanwhile; where they can't be written, a
 * sentence says why. `open` is undefined for a record that is not there.
 */
export function promptAfter(
  open: OpenFile | undefined,
  version: number | null,
  plan: TakingPlan,
  inputs: readonly string[],
): TakingPrompt {
  const { state, note, steps } = standAfter(plan, inputs);
  const lines = linesOf(plan, state);
  const index = open === undefined ? undefined : indexOf(open, plan.ref);
  const isHere = open !== undefined && index !== undefined;
  const said =
    !isHere || lines.length === 0
      ? []
      : sentencesOf(withLines(open, index, plan, lines), plan);
  const all = state.taken.flat().length;
  const place =
    isHere && 0 < lines.length
      ? insertion(open, index, plan, lines)
      : undefined;
  return {
    ...heading(plan, state),
    text: [
      ...withText(plan, all),
      ...hereText(state),
      ...said,
      ...waysOut(plan, state, steps),
    ].join(" "),
    placeholder: isOver(state)
      ? `Enter writes the ${plan.fact === "swing" ? "swings" : "readings"}`
      : plan.fact === "swing"
        ? `Turn it once, and type how far the pointer went (${state.bare})`
        : `Measure, or type the reading (${state.bare})`,
    doubt: saidOrNull(note ?? state.doubt?.sentence),
    offers: [
      ...(state.doubt?.offers ?? []),
      ...(0 < steps ? [{ word: UNDO, label: "Take the last one back" }] : []),
      ...(isOver(state) ? [] : [{ word: SKIP, label: skipLabel(plan, state) }]),
    ],
    taken: all,
    isDone: isOver(state),
    lines,
    summary: [
      `${plan.ref}${sideText(plan)}: ${showCount(all, plan.fact === "swing" ? "swing" : "reading")}.`,
      ...said,
    ].join(" "),
    after: open === undefined ? [] : choicesAfter(open, plan),
    edit:
      place === undefined ? null : { version, ...place.at, text: place.text },
    gone: isHere
      ? null
      : open === undefined
        ? "The record is no longer there"
        : `${plan.ref} is no longer in this record, or its opening line can't be read`,
  };
}

function saidOrNull(sentence: string | undefined): string | null {
  return sentence === undefined ? null : plain(sentence);
}

function heading(
  plan: TakingPlan,
  state: Taking,
): Pick<TakingPrompt, "title" | "step" | "of"> {
  const of = plan.places.length * plan.each;
  const what = `${plan.ref}${sideText(plan)}${plan.stage === null ? "" : `, ${plan.stage}`}`;
  if (isOver(state)) return { title: `${what}: all taken`, step: of, of };
  const here = state.taken[state.at]?.length ?? 0;
  const number = state.doubt?.replaces ?? here;
  return {
    title: `${what}: ${placeText(plan, state.at)}, ${
      plan.turned === null
        ? `${plan.fact === "repeat" ? "repeat" : "angle"} ${String(number + 1)} of ${String(plan.each)}`
        : `swing on ${plan.turned}`
    }${state.doubt === undefined ? "" : ", once more"}`,
    step: state.at * plan.each + Math.min(number, plan.each - 1) + 1,
    of,
  };
}

function sideText({ side }: TakingPlan): string {
  return side === null ? "" : side === "od" ? ", outside" : ", inside";
}

function placeText({ places }: TakingPlan, at: number): string {
  const name = places[at];
  return name === null || name === undefined ? "one place" : `place ${name}`;
}

/** What is answered for the rest of a sitting is not asked again: before the first reading it is told. */
function withText(
  { gauge, temperature }: TakingPlan,
  all: number,
): readonly string[] {
  const told = [
    ...(gauge === null ? [] : [`with ${gauge}`]),
    ...(temperature === null ? [] : [`at ${temperature}`]),
  ].join(" ");
  return 0 < all || told === ""
    ? []
    : [`Written ${told}; ${OTHER_WORD} changes that.`];
}

function hereText(state: Taking): readonly string[] {
  const here = state.taken[state.at] ?? [];
  if (here.length === 0) return [];
  const digits = here
    .map(({ digits: each, unit }) => `${each} ${unit}`)
    .join(", ");
  return [`Here so far: ${digits}.`];
}

function waysOut(
  plan: TakingPlan,
  state: Taking,
  steps: number,
): readonly string[] {
  const ways = [
    ...(0 < steps ? [`${UNDO} takes the last one back`] : []),
    ...(isOver(state)
      ? []
      : [
          `${SKIP} ${plan.places.length === state.at + 1 ? "ends it here" : "goes on to the next place"}`,
        ]),
  ];
  return [`${[...ways, "Escape stops and keeps what was taken"].join(", ")}.`];
}

function skipLabel({ places }: TakingPlan, { at }: Taking): string {
  return places.length === at + 1 ? "End it here" : "On to the next place";
}

// What the readings or swings come to as they are taken, in sentences: the size or how round it is, and the verdict or what it means for the
// mate. The figures themselves are figures.ts's and the model's.
import { showLength, showRange } from "../../core/quantity/show.ts";
import { standardDeviation } from "../../core/readings/statistics.ts";
import { roundnessOf, roundnessThen } from "../../model/evaluate/roundness.ts";
import type { Size } from "../../model/evaluate/size.ts";
import { missingText } from "../../model/known.ts";
import type { OpenFile } from "../../model/project.ts";
import type { Stage } from "../../model/values.ts";
import type { TakingPlan } from "../../protocol/guide.ts";
import { figuresOf, type Figures } from "./figures.ts";
import { kindOf } from "../../model/reference.ts";

/** @param open the record with the lines in it */
export function sentencesOf(
  open: OpenFile,
  plan: TakingPlan,
): readonly string[] {
  if (plan.fact === "swing") return swingSentences(open, plan);
  const figures = figuresOf(open, plan);
  return figures === undefined ? [] : sizeSentences(plan, figures);
}

function unreadSentence(ref: string): string {
  return `No figures: a line that ${ref} rests on can't be read.`;
}

function sizeSentences(
  { ref, system, fact }: TakingPlan,
  { size, verdict, limits, isCorrected }: Figures,
): readonly string[] {
  if (!size.known) {
    const needs = missingText(size.needs);
    return [
      needs === ""
        ? unreadSentence(ref)
        : `No figures yet: they need ${needs}.`,
    ];
  }
  const { nominal, outOfRound, taper, step } = size.value;
  if (fact === "repeat")
    return repeatSentences(system, size.value, isCorrected);
  const form = [
    `Mean ${showLength(nominal, system, step)}${isCorrected ? " at 20 °C" : ""}`,
    ...(outOfRound === undefined
      ? []
      : [`out-of-round ${showLength(outOfRound, system, step)}`]),
    ...(taper === undefined
      ? []
      : [`taper ${showLength(taper.difference, system, step)}`]),
  ];
  return [
    `${form.join(", ")}.`,
    verdictText(verdict, limits, size.value, system),
  ];
}

/** Repeats say how well one diameter reads, not what the size is. */
function repeatSentences(
  system: TakingPlan["system"],
  { nominal, low, high, step, places }: Size,
  isCorrected: boolean,
): readonly string[] {
  const spread = standardDeviation(
    places.flatMap(({ readings }) => readings.flatMap(({ values }) => values)),
  );
  return [
    `Mean ${showLength(nominal, system, step)}${isCorrected ? " at 20 °C" : ""}, largest less smallest ${showLength(high - low, system, step)}${spread.valid ? `, standard deviation ${showLength(spread.value, system, (step ?? 0) / 10)}` : ""}.`,
  ];
}

function verdictText(
  verdict: Figures["verdict"],
  limits: Figures["limits"],
  { budgetNeeds }: Size,
  system: TakingPlan["system"],
): string {
  if (verdict === undefined || limits === undefined)
    return "No limits to hold it against.";
  const shown = showRange(limits.low, limits.high, system, limits.step);
  if (verdict === "in") return `In: within ${shown}.`;
  if (verdict === "out") return `Out: not within ${shown}.`;
  const needs = missingText(budgetNeeds);
  return `Unsure whether within ${shown}: ${needs === "" ? "the readings are too near a limit for what their gauge is sure of" : `the verdict is guarded, and needs ${needs}`}.`;
}

/** The roundness that swings show, and what it means for the mate. */
function swingSentences(
  { shop }: OpenFile,
  { ref, stage, system }: TakingPlan,
): readonly string[] {
  const found =
    stage === null || stage === "finished" || stage === "run"
      ? roundnessOf(shop, ref)
      : roundnessThen(shop, ref, stage as Stage); // planFrom lets no other word through
  if (found === undefined) return [];
  if (!found.known) {
    const needs = missingText(found.needs);
    return [
      needs === ""
        ? unreadSentence(ref)
        : `Turned so, it shows nothing of these lobes: that takes ${needs}.`,
    ];
  }
  const { worst, odd } = found.value;
  const side = kindOf(ref) === "journal" ? "larger" : "smaller";
  return [
    `Radial roundness ${showLength(worst.roundness, system, worst.step)}.`,
    odd === undefined
      ? "Two points see an even number of lobes."
      : `Two points don't see an odd number of lobes: its mate meets it ${side} by ${showLength(odd.roundness, system, odd.step)}.`,
  ];
}

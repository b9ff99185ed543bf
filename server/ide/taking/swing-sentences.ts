// What swings come to as they are taken: the roundness that they show, and what it means for the mate.
import { missingTexts } from "../../model/known.ts";
import { showLength } from "../../core/quantity/show.ts";
import { roundnessOf, roundnessThen } from "../../model/evaluate/roundness.ts";
import type { OpenFile } from "../../model/project.ts";
import type { Stage } from "../../model/values.ts";
import type { TakingPlan } from "../../protocol/guide.ts";

/** @param open the record with the lines in it */
export function swingSentences(
  { shop }: OpenFile,
  { ref, stage, system }: TakingPlan,
): readonly string[] {
  const found =
    stage === null || stage === "finished" || stage === "run"
      ? roundnessOf(shop, ref)
      : roundnessThen(shop, ref, stage as Stage); // planFrom lets no other word through
  if (found === undefined) return [];
  if (!found.known) {
    const needs = missingTexts(found.needs).join(", ");
    return [
      needs === ""
        ? `No figures: a line that ${ref} rests on can't be read.`
        : `Turned so, it shows nothing of these lobes: that takes ${needs}.`,
    ];
  }
  const { worst, odd } = found.value;
  const side = ref.startsWith("journal ") ? "larger" : "smaller";
  return [
    `Radial roundness ${showLength(worst.roundness, system, worst.step)}.`,
    odd === undefined
      ? "Two points see an even number of lobes."
      : `Two points don't see an odd number of lobes: its mate meets it ${side} by ${showLength(odd.roundness, system, odd.step)}.`,
  ];
}

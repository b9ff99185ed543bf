// A part was turned in a way that shows nothing of the lobes that are written: the pointer stands still however lobed it is.
import {
  methodThatSees,
  swingsOf,
  turnedWords,
} from "../../model/evaluate/roundness.ts";
import { lobingFactor } from "../../core/readings/lobing.ts";
import type { Swing } from "../../model/values.ts";
import type { Draft, Rule } from "../rule.ts";
import { capitalised } from "../../model/sentences.ts";

export const swingBlind: Rule = {
  code: "swing-blind",
  level: "warning",
  about: ["journal", "hole", "bore"],
  check(_, ref, entry) {
    return swingsOf(entry).flatMap(({ value }): readonly Draft[] =>
      value === undefined || lobingFactor(value.method, value.lobes).valid
        ? []
        : [
            {
              span: value.methodSpan,
              message: `Turned ${turnedWords(value.method)}, ${value.lobes} lobes hardly move the pointer, so this says nothing of how round it is. ${insteadOf(ref, value)}`,
            },
          ],
    );
  },
};

function insteadOf(ref: string, { lobes }: Swing): string {
  const how = methodThatSees(ref, lobes);
  const even =
    lobes % 2 === 0
      ? "Two points see an even number of lobes: read it at more angles"
      : "";
  const turned =
    how === undefined
      ? "have it measured by an instrument that turns it about one axis"
      : `turn it ${how}`;
  return even === "" ? `${capitalised(turned)}.` : `${even}, or ${turned}.`;
}

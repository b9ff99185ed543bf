// A bush is more over its hole than is wanted: it may collapse, or split the case.
import { showLength, showRange } from "../../core/quantity/show.ts";
import { judgeAtBest } from "../../model/evaluate/at-best.ts";
import { interferenceOf } from "../../model/evaluate/press.ts";
import { settings } from "../../model/evaluate/settings.ts";
import type { Rule } from "../rule.ts";
import {
  allowedInterference,
  bushFixes,
  bushToMake,
  relatedPress,
} from "./allowed.ts";

export const pressHeavy: Rule = {
  code: "press-heavy",
  level: "error",
  about: ["press"],
  check(shop, ref, entry) {
    const found = interferenceOf(shop, ref);
    const allowed = allowedInterference(shop, ref, "press-heavy");
    if (!found.known || allowed?.high === undefined) return [];
    const { asMade, atBest, status, step, budget } = found.value;
    const limits = { high: allowed.high };
    const range = { ...asMade, status, atBest };
    if (judgeAtBest(shop, range, limits, budget).verdict !== "out") return [];
    const { system } = settings(shop);
    const { low, high } = asMade;
    const verb = status === "measured" ? "is" : "is foretold at";
    return [
      {
        span: entry.nameSpan,
        message: `The interference ${verb} ${showRange(low, high, system, step)}, and ${allowed.says}: ${showLength(high - allowed.high, system, step)} too much. Turn the bush down, or take a smaller one.${bushToMake(shop, ref)}`,
        related: relatedPress(shop, ref),
        fixes: bushFixes(shop, ref),
        value: high,
      },
    ];
  },
};

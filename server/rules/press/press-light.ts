// A bush is less over its hole than is wanted: it may turn, or come out.
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

export const pressLight: Rule = {
  code: "press-light",
  level: "error",
  about: ["press"],
  check(shop, ref, entry) {
    const found = interferenceOf(shop, ref);
    const allowed = allowedInterference(shop, ref, "press-light");
    if (!found.known || allowed?.low === undefined) return [];
    const { asMade, atBest, status, step, budget } = found.value;
    const limits = { low: allowed.low };
    const range = { ...asMade, status, atBest };
    if (judgeAtBest(shop, range, limits, budget).verdict !== "out") return [];
    const { system } = settings(shop);
    const { low, high } = asMade;
    const verb = status === "measured" ? "is" : "is foretold at";
    const what =
      high < 0
        ? `The bush ${verb} ${showRange(-high, -low, system, step)} smaller than its hole`
        : `The interference ${verb} ${showRange(low, high, system, step)}`;
    return [
      {
        span: entry.nameSpan,
        message: `${what}, and ${allowed.says}: it lacks ${showLength(allowed.low - low, system, step)}. Take a larger bush.${bushToMake(shop, ref)}`,
        related: relatedPress(shop, ref),
        fixes: bushFixes(shop, ref),
        value: low,
      },
    ];
  },
};

// Among repeats at one place, one stands too far from the others (Grubbs' test). Readings round an oval are form, not strays.
import { strayAmong } from "../../core/readings/stray.ts";
import { showLength } from "../../core/quantity/show.ts";
import { settings } from "../../model/evaluate/settings.ts";
import { repeatsOf } from "../../model/evaluate/size.ts";
import type { Rule } from "../rule.ts";

export const readingStray: Rule = {
  code: "reading-stray",
  level: "warning",
  about: ["journal", "hole", "bore"],
  check(shop, ref) {
    const { system } = settings(shop);
    return repeatsOf(shop, ref).flatMap(
      ({ values, valueSpans, step, gauge }) => {
        const stray = strayAmong(
          values,
          Math.max(step ?? 0, gauge?.resolution ?? 0),
        );
        const span = stray === undefined ? undefined : valueSpans[stray.index];
        const value = stray === undefined ? undefined : values[stray.index];
        if (stray === undefined || span === undefined || value === undefined)
          return [];
        const { statistic, critical } = stray;
        return [
          {
            span,
            message: `${showLength(value, system, step)} stands ${statistic.toFixed(2)} standard deviations from the mean of ${String(values.length)} repeats, and ${critical.toFixed(2)} is the most that chance explains (Grubbs, 5 %). Wipe both faces and read it again.`,
          },
        ];
      },
    );
  },
};

// Among repeats at one place, one stands too far from the others (Grubbs' test). Readings round an oval are form, not strays.
import { showLength } from "../../core/quantity/show.ts";
import { strayOf } from "../../model/evaluate/readings.ts";
import { settings } from "../../model/evaluate/settings.ts";
import { repeatsOf } from "../../model/evaluate/size.ts";
import type { Rule } from "../rule.ts";

export const readingStray: Rule = {
  code: "reading-stray",
  level: "warning",
  about: ["journal", "hole", "bore"],
  check(shop, ref) {
    const { system } = settings(shop);
    return repeatsOf(shop, ref).flatMap((repeats) => {
      const stray = strayOf(repeats);
      if (stray === undefined) return [];
      const { values, valueSpans, step } = repeats;
      const [span, value] = [valueSpans[stray.index], values[stray.index]];
      if (span === undefined || value === undefined) return [];
      const { statistic, critical } = stray;
      return [
        {
          span,
          message: `${showLength(value, system, step)} stands ${statistic.toFixed(2)} standard deviations from the mean of ${String(values.length)} repeats, and ${critical.toFixed(2)} is the most that chance explains (Grubbs, 5 %). Wipe both faces and read it again.`,
        },
      ];
    });
  },
};

// Among repeats at one place, one stands too far from the others (Grubbs' test). Readings round an oval are form, not strays.
import { metresToTenths } from "../../core/quantity/exact.ts";
import { grubbsTest } from "../../core/readings/stray.ts";
import { showLength } from "../../core/quantity/show.ts";
import { settings } from "../../model/evaluate/settings.ts";
import { repeatsOf } from "../../model/evaluate/size.ts";
import type { Rule } from "../rule.ts";

export const readingStray: Rule = {
  code: "reading-stray",
  level: "warning",
  about: ["journal", "hole", "bore"],
  check(shop, ref) {
    const { system } = settings(shop, "job");
    return repeatsOf(shop, ref).flatMap(
      ({ values, valueSpans, step, gauge }) => {
        const test = grubbsTest(values);
        const span = test.valid ? valueSpans[test.value.index] : undefined;
        const value = test.valid ? values[test.value.index] : undefined;
        if (
          !test.valid ||
          !test.value.stray ||
          span === undefined ||
          value === undefined
        )
          return [];
        // one count of the gauge is how it rounds, however well the others agree
        const others = values.filter((_, index) => index !== test.value.index);
        const nearest = Math.min(
          ...others.map((other) => Math.abs(other - value)),
        );
        const count = Math.max(step ?? 0, gauge?.resolution ?? 0);
        if (metresToTenths(nearest) <= metresToTenths(count)) return [];
        const { statistic, critical } = test.value;
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

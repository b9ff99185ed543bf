// A reading has more digits than its gauge shows.
import { showLength } from "../../core/quantity/show.ts";
import { settings } from "../../model/evaluate/settings.ts";
import { gaugeValue } from "../../model/evaluate/gauge.ts";
import { allOf } from "../../model/entry.ts";
import { refOf } from "../../model/shop.ts";
import type { Rule } from "../rule.ts";

export const readingFinerThanGauge: Rule = {
  code: "reading-finer-than-gauge",
  level: "warning",
  about: ["journal", "hole", "bore", "bush", "stack", "reamer", "pilot"],
  check(shop, _, entry) {
    const { system } = settings(shop, "job");
    const facts = [
      ...allOf(entry, "ReadFact"),
      ...allOf(entry, "RepeatFact"),
      ...allOf(entry, "BushReadFact"),
      ...allOf(entry, "StackReadFact"),
    ];
    return facts.flatMap(({ value }) => {
      const gaugeRef = refOf(shop, value?.gauge);
      const resolution =
        gaugeRef === undefined
          ? undefined
          : gaugeValue(shop, gaugeRef)?.resolution;
      if (
        value === undefined ||
        gaugeRef === undefined ||
        resolution === undefined
      )
        return [];
      // a gauge that steps by 0.00005 is read to five decimals, and so is one that steps by 0.00001
      const finest =
        10 ** Math.floor(Math.log10(resolution / unitOf(system)) + 1e-9) *
        unitOf(system);
      const index = value.values.findIndex(
        (each) => each.step !== undefined && each.step < finest * 0.999,
      );
      const span = value.valueSpans[index];
      if (span === undefined) return [];
      return [
        {
          span,
          message: `This has more digits than ${gaugeRef} shows: it steps by ${showLength(resolution, system, resolution)}. Write what the gauge said, or name the gauge that said it.`,
          related: [
            {
              ref: gaugeRef,
              message: `resolution ${showLength(resolution, system, resolution)}`,
            },
          ],
        },
      ];
    });
  },
};

function unitOf(system: "inch" | "mm"): number {
  return system === "inch" ? 0.0254 : 0.001;
}

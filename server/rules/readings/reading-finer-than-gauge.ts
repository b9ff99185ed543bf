// A reading has more digits than its gauge shows.
import { metresToTenths } from "../../core/quantity/exact.ts";
import {
  lengthDigits,
  showLength,
  stepTaken,
  type System,
} from "../../core/quantity/show.ts";
import { settings } from "../../model/evaluate/settings.ts";
import { gaugeValue } from "../../model/evaluate/gauge.ts";
import { refOf, refsOfKind, type Shop } from "../../model/shop.ts";
import type { Length, RefSite } from "../../model/values.ts";
import { MOST_OFFERED, nameInstead } from "../fixes.ts";
import type { DraftFix, Rule } from "../rule.ts";
import { readingsIn, swingsIn } from "./readings-in.ts";

export const readingFinerThanGauge: Rule = {
  code: "reading-finer-than-gauge",
  level: "warning",
  about: ["journal", "hole", "bore", "bush", "stack", "reamer", "pilot"],
  check(shop, _, entry) {
    const { system } = settings(shop);
    const swings = swingsIn(entry).map(({ gauge, swing, swingSpan }) => ({
      gauge,
      values: [swing],
      valueSpans: [swingSpan],
    }));
    const all = [...readingsIn(entry), ...swings];
    return all.flatMap(({ gauge, values, valueSpans }) => {
      const ref = refOf(shop, gauge);
      const resolution =
        ref === undefined ? undefined : gaugeValue(shop, ref)?.resolution;
      if (ref === undefined || resolution === undefined) return [];
      // one digit too many: a gauge that steps by 0.0005 is read to four decimals, and not to five
      const index = values.findIndex(({ step }) => isFiner(step, resolution));
      const span = valueSpans[index];
      if (span === undefined) return [];
      const steps = showLength(
        resolution,
        ownUnit(resolution, system),
        resolution,
      );
      return [
        {
          span,
          message: `This has more digits than ${ref} shows: it steps by ${steps}. Write what the gauge said, or name the gauge that said it.`,
          related: [{ ref, message: `resolution ${steps}` }],
          fixes:
            gauge === undefined ? [] : finerGauges(shop, gauge, ref, values),
        },
      ];
    });
  },
};

/** A digit more than the gauge shows; one that steps by 0.0025 shows four. */
function isFiner(step: number | undefined, resolution: number): boolean {
  if (step === undefined || resolution * (1 + 1e-9) < step * 10) return false;
  const shown = stepTaken([resolution]) ?? resolution;
  return step < shown * (1 - 1e-9);
}

/** The gauges that show as many digits, those of the same kind first: one of them may be what said it. */
function finerGauges(
  shop: Shop,
  site: RefSite,
  coarse: string,
  values: readonly Length[],
): readonly DraftFix[] {
  const kind = gaugeValue(shop, coarse)?.kind;
  return refsOfKind(shop, "gauge")
    .filter((ref) => {
      const resolution = gaugeValue(shop, ref)?.resolution;
      return (
        resolution !== undefined &&
        !values.some(({ step }) => isFiner(step, resolution))
      );
    })
    .sort(
      (a, b) =>
        Number(gaugeValue(shop, b)?.kind === kind) -
        Number(gaugeValue(shop, a)?.kind === kind),
    )
    .slice(0, MOST_OFFERED)
    .map((ref) => nameInstead(site, ref, `It was read with ${ref}`));
}

/** The unit that the gauge itself reads in: the one in which its step is round. */
function ownUnit(resolution: number, system: System): System {
  const isRound = (each: System): boolean => {
    const shown = Number(lengthDigits(resolution, each, resolution));
    const unit = each === "inch" ? 0.0254 : 0.001;
    return metresToTenths(shown * unit) === metresToTenths(resolution);
  };
  const other = system === "inch" ? "mm" : "inch";
  return !isRound(system) && isRound(other) ? other : system;
}

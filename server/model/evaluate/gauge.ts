// What a gauge's own entry says of its readings.
import { given, valueIn } from "../entry.ts";
import { entryOf, query, type Shop } from "../shop.ts";
import type { Signature } from "../values.ts";

export interface GaugeValue {
  readonly ref: string;
  readonly kind: string | undefined;
  /** m */
  readonly resolution: number | undefined;
  /** Expanded, k = 2, m. */
  readonly uncertainty: number | undefined;
  /** Its largest error, m. */
  readonly mpe: number | undefined;
  /** Correction added to its readings, m. */
  readonly adds: number;
  /** The last written digit of that, m. */
  readonly addsStep: number | undefined;
  readonly calibrated: Signature | undefined;
  readonly due: string | undefined;
  /** A line of it can't be read: then nothing that rests on it is said. */
  readonly damaged: boolean;
}

export const gaugeValue = query<GaugeValue | undefined>(
  "gauge",
  (shop, ref) => {
    const entry = entryOf(shop, ref);
    if (entry === undefined) return undefined;
    const rules = [
      "ResolutionFact",
      "UncertaintyFact",
      "MpeFact",
      "AddsFact",
    ] as const;
    return {
      ref,
      kind: valueIn(entry, "KindFact"),
      resolution: valueIn(entry, "ResolutionFact")?.value,
      uncertainty: valueIn(entry, "UncertaintyFact")?.value,
      mpe: valueIn(entry, "MpeFact")?.value,
      adds: valueIn(entry, "AddsFact")?.value ?? 0,
      addsStep: valueIn(entry, "AddsFact")?.step,
      calibrated: valueIn(entry, "CalibratedFact"),
      due: valueIn(entry, "DueFact")?.date,
      damaged:
        entry.damaged ||
        rules.some((rule) => given(entry, rule).state === "damaged"),
    };
  },
);

/** Whether a gauge was set on a ring, whose size is written, and not with another gauge. */
export function isSetOnRing(shop: Shop, gauge: string): boolean {
  const set = valueIn(entryOf(shop, gauge), "SetFact");
  return set !== undefined && "ring" in set;
}

/** Gauges that compare: they show nothing until they are set. */
export function isComparator(kind: string | undefined): boolean {
  return kind === "bore-gauge" || kind === "indicator" || kind === "air";
}

// A reading is far from the nominal size or, where none is written, from the others of its part: a slip of the pen or of the unit more likely
// than a part. Where there are limits, they judge the readings, and are held against the nominal size themselves.
import { isExpected } from "../../core/readings/expected.ts";
import { metresToTenths } from "../../core/quantity/exact.ts";
import {
  showLength,
  showRange,
  type System,
} from "../../core/quantity/show.ts";
import { given } from "../../model/entry.ts";
import type { PlaceReadings } from "../../model/evaluate/readings.ts";
import { settings } from "../../model/evaluate/settings.ts";
import { sizeOf } from "../../model/evaluate/size.ts";
import type { Length, LengthRange, Span } from "../../model/values.ts";
import type { Draft, Rule } from "../rule.ts";
import { ownThreshold } from "../threshold.ts";
import { slipWords } from "./slip.ts";

export const readingOffNominal: Rule = {
  code: "reading-off-nominal",
  level: "warning",
  about: ["journal", "hole", "bore"],
  check(shop, ref, entry) {
    const nominal = given(entry, "NominalFact");
    const limits = given(entry, "LimitsFact");
    if (limits.state === "given" && nominal.state === "given")
      return limitsFarFrom(nominal, limits, ref, settings(shop).system);
    if (limits.state !== "absent") return [];
    const size = sizeOf(shop, ref);
    if (!size.known) return [];
    const { system } = settings(shop);
    if (nominal.state === "absent")
      return farFromOthers(ref, size.value.places, system);
    if (nominal.state !== "given") return [];
    const { value: is } = nominal.value;
    const own = ownThreshold(shop, "reading-off-nominal");
    const isNear = (value: number): boolean => {
      if (own === undefined) return isExpected(value, { low: is, high: is });
      const reach = "share" in own ? own.share * is : own.length;
      return (
        Math.abs(metresToTenths(value) - metresToTenths(is)) <=
        metresToTenths(reach)
      );
    };
    const drafts: Draft[] = [];
    for (const { readings } of size.value.places) {
      for (const { values, valueSpans, step } of readings) {
        values.forEach((value, index) => {
          const span = valueSpans[index];
          if (span === undefined || isNear(value)) return;
          drafts.push({
            span,
            message: `${showLength(value, system, step)} is far from the nominal ${showLength(is, system, nominal.value.step)}${slipWords(value, { low: is, high: is })}. Read it again; if the part is so, correct nominal.`,
            related: [
              {
                ref,
                span: nominal.span,
                message: `the nominal size of ${ref}`,
              },
            ],
          });
        });
      }
    }
    return drafts;
  },
};

/** So far, as a share of the size, that no wear explains it. Common practice, no source. */
const FAR = 0.1;

/** Of limits that are as far from it nothing is known but that one of the two is a slip. */
function limitsFarFrom(
  nominal: { readonly value: Length; readonly span: Span },
  limits: { readonly value: LengthRange; readonly span: Span },
  ref: string,
  system: System,
): readonly Draft[] {
  const { value: is, step } = nominal.value;
  const { low, high } = limits.value;
  const mean = (low + high) / 2;
  if (metresToTenths(Math.abs(mean - is)) <= metresToTenths(FAR * is))
    return [];
  return [
    {
      span: limits.span,
      message: `The limits ${showRange(low, high, system, limits.value.step)} are far from the nominal ${showLength(is, system, step)}${slipWords(mean, { low: is, high: is })}. One of the two is not what the drawing has.`,
      related: [
        { ref, span: nominal.span, message: `the nominal size of ${ref}` },
      ],
    },
  ];
}

function farFromOthers(
  ref: string,
  places: readonly PlaceReadings[],
  system: System,
): readonly Draft[] {
  const all = places.flatMap(({ readings }) =>
    readings.flatMap(({ values, valueSpans, step }) =>
      values.flatMap((value, index) => {
        const span = valueSpans[index];
        return span === undefined ? [] : [{ value, span, step }];
      }),
    ),
  );
  // of two nobody can say which it is, so that the first is taken
  const usual =
    all.length < 3
      ? all[0]
      : [...all].sort((a, b) => a.value - b.value)[(all.length - 1) >> 1];
  if (usual === undefined) return [];
  const is = usual.value;
  return all
    .filter(({ value }) => FAR * is < Math.abs(value - is))
    .map(({ value, span, step }) => ({
      span,
      message: `${showLength(value, system, step)} is far from ${showLength(is, system, usual.step)}, which was read here, too${slipWords(value, { low: is, high: is })}. Read both again.`,
      related: [{ ref, span: usual.span, message: `read of ${ref}, too` }],
    }));
}

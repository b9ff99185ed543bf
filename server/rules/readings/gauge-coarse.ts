// A gauge is too coarse for what it reads: its uncertainty leaves too little of the tolerance, or its steps are too large.
import { showLength, significant } from "../../core/quantity/show.ts";
import { gaugeValue } from "../../model/evaluate/gauge.ts";
import {
  discriminationOf,
  gaugesOf,
  ratioOf,
  tolerancesOf,
  type Tolerance,
} from "../../model/evaluate/gauge-ratio.ts";
import { settings } from "../../model/evaluate/settings.ts";
import type { Entry } from "../../model/entry.ts";
import { refOf, type Shop } from "../../model/shop.ts";
import type { Span } from "../../model/values.ts";
import { ownFactor } from "../threshold.ts";
import type { Draft, Rule } from "../rule.ts";
import { capitalised } from "../../model/sentences.ts";
import { readingsIn } from "./readings-in.ts";
import { kindOf } from "../../model/reference.ts";

/** T/(2U) from which a gauge is good. Common practice, no source. */
const GOOD = 4;

export const gaugeCoarse: Rule = {
  code: "gauge-coarse",
  level: "warning",
  about: ["journal", "hole", "bore"],
  check(shop, ref, entry) {
    // the narrowest tolerance asks most of a gauge
    const [narrowest] = [...tolerancesOf(shop, ref)].sort(
      (a, b) => a.width - b.width,
    );
    if (narrowest === undefined) return [];
    return gaugesOf(shop, entry).flatMap((gauge) => {
      const span = spanOf(shop, entry, gauge);
      return span === undefined
        ? []
        : gaugeDrafts(shop, gauge, narrowest, span);
    });
  },
};

function gaugeDrafts(
  shop: Shop,
  gauge: string,
  { of, width }: Tolerance,
  span: Span,
): readonly Draft[] {
  const { system } = settings(shop);
  const good = ownFactor(shop, "gauge-coarse") ?? GOOD;
  const ratio = ratioOf(shop, gauge, width);
  const fine = discriminationOf(shop, gauge, width);
  const band = `the ${showLength(width, system)} ${kindOf(of) === "fit" ? `between the least and the most clearance that ${of} wants` : `tolerance of ${of}`}`;
  const related = [{ ref: gauge, message: gauge }];
  if (ratio.known && ratio.value.ratio * (1 + 1e-8) < good)
    return [
      {
        span,
        message: `${capitalised(band)} is ${significant(ratio.value.ratio, 2)} times 2U of ${gauge}, and from ${significant(good, 2)} a gauge is good${ratio.value.word === "no verdict" ? ": this one gives no verdict" : ""}. Read it with a surer one.`,
        related,
        value: ratio.value.ratio,
        dimension: "ratio",
      },
    ];
  const resolution = gaugeValue(shop, gauge)?.resolution;
  if (fine === undefined || fine.isFine || resolution === undefined) return [];
  return [
    {
      span,
      message: `${gauge} steps by ${showLength(resolution, system, resolution)}, over a tenth of ${band}. Read it with a finer one.`,
      related,
    },
  ];
}

/** Where a feature's readings first name the gauge. */
function spanOf(shop: Shop, entry: Entry, gauge: string): Span | undefined {
  return readingsIn(entry).find((each) => refOf(shop, each.gauge) === gauge)
    ?.gauge?.span;
}

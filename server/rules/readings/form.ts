// What out-of-round and taper are held against: what the entry allows, shares of the tolerance, and the least clearance.
import { metresToTenths } from "../../core/quantity/exact.ts";
import { showLength } from "../../core/quantity/show.ts";
import { clearance } from "../../model/evaluate/fit.ts";
import { fitsOfBore, fitsOfJournal } from "../../model/evaluate/index-of.ts";
import { settings } from "../../model/evaluate/settings.ts";
import { given, type Entry } from "../../model/entry.ts";
import type { Shop } from "../../model/shop.ts";
import { ownThreshold } from "../threshold.ts";
import type { Draft } from "../rule.ts";

/** Shares of the size tolerance, and of the least clearance: common practice, no source. */
const HINT = 0.25;
const WARNING = 0.5;
const OF_CLEARANCE = 0.25;

export function formDrafts(
  shop: Shop,
  ref: string,
  entry: Entry,
  what: "out-of-round" | "taper",
  value: number,
  step: number | undefined,
): readonly Draft[] {
  const { system } = settings(shop, "job");
  const is = `${what === "taper" ? "The taper" : "Out of round by"} ${what === "taper" ? "is " : ""}${showLength(value, system, step)}`;
  const allowed = given(entry, what === "taper" ? "TaperFact" : "RoundFact");
  if (allowed.state === "damaged") return [];
  if (allowed.state === "given") {
    if (metresToTenths(value) <= metresToTenths(allowed.value.value)) return [];
    return [
      {
        level: "warning",
        span: entry.nameSpan,
        message: `${is}, and ${showLength(allowed.value.value, system, allowed.value.step)} is allowed.`,
        related: [{ ref, span: allowed.span, message: "allowed here" }],
        value,
      },
    ];
  }
  const own = ownThreshold(shop, what);
  if (own !== undefined && "length" in own) {
    return metresToTenths(value) <= metresToTenths(own.length)
      ? []
      : [
          {
            level: "warning",
            span: entry.nameSpan,
            message: `${is}, over the job's ${showLength(own.length, system)}.`,
            value,
          },
        ];
  }
  const warning = own?.share ?? WARNING;
  const hint = own === undefined ? HINT : own.share / 2;
  const limits = given(entry, "LimitsFact");
  if (limits.state === "given") {
    const tolerance = limits.value.high - limits.value.low;
    const share = tolerance <= 0 ? 0 : value / tolerance;
    if (hint < share) {
      const level = warning < share ? "warning" : "hint";
      return [
        {
          level,
          span: entry.nameSpan,
          message: `${is}: ${percent(share)} of the tolerance ${showLength(tolerance, system, limits.value.step)}. Over ${percent(level === "warning" ? warning : hint)} is worth a second look at the surface.`,
          value,
        },
      ];
    }
  }
  const tightest = leastClearance(shop, ref);
  if (tightest === undefined || value <= OF_CLEARANCE * tightest.low) return [];
  return [
    {
      level: "warning",
      span: entry.nameSpan,
      message: `${is}: more than a quarter of the least clearance ${showLength(tightest.low, system, tightest.step)} of ${tightest.fit}.`,
      related: [{ ref: tightest.fit, message: tightest.fit }],
      value,
    },
  ];
}

function leastClearance(
  shop: Shop,
  ref: string,
):
  | {
      readonly fit: string;
      readonly low: number;
      readonly step: number | undefined;
    }
  | undefined {
  const fits = ref.startsWith("journal ")
    ? fitsOfJournal(shop, ref)
    : ref.startsWith("bore ")
      ? fitsOfBore(shop, ref)
      : [];
  let least:
    | {
        readonly fit: string;
        readonly low: number;
        readonly step: number | undefined;
      }
    | undefined;
  for (const fit of fits) {
    const found = clearance(shop, fit);
    if (!found.known || found.value.low <= 0) continue;
    if (least === undefined || found.value.low < least.low)
      least = { fit, low: found.value.low, step: found.value.step };
  }
  return least;
}

function percent(share: number): string {
  return `${(100 * share).toFixed(0)} %`;
}

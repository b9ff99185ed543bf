// What the interference of a press is held against: what it wants, else the job's own threshold, else shares of the outside diameter.
import { usualInterference } from "../../core/press/interference.ts";
import {
  UNIT_OF_SYSTEM,
  decimalsFor,
  showLength,
  showRange,
  type System,
} from "../../core/quantity/show.ts";
import { given } from "../../model/entry.ts";
import { odToMake } from "../../model/evaluate/bush-to-make.ts";
import type { Estimate } from "../../model/known.ts";
import { wanted } from "../../model/evaluate/wanted.ts";
import { interferenceOf, partsOf } from "../../model/evaluate/press.ts";
import { usualFamily } from "../../model/evaluate/press-usual.ts";
import { settings } from "../../model/evaluate/settings.ts";
import { entryOf, type Shop } from "../../model/shop.ts";
import { bushOd } from "../../model/evaluate/bush-size.ts";
import { sizeOf } from "../../model/evaluate/size.ts";
import type { DraftFix, DraftRelated } from "../rule.ts";
import { ownThreshold } from "../threshold.ts";

export interface Allowed {
  readonly low: number | undefined;
  readonly high: number | undefined;
  /** "0.0006 to 0.0012 in is wanted" */
  readonly says: string;
}

/** Undefined where nothing is known to hold it against. */
export function allowedInterference(
  shop: Shop,
  press: string,
  code: "press-light" | "press-heavy",
): Allowed | undefined {
  const found = interferenceOf(shop, press);
  const want = wanted(shop, press);
  if (!found.known || want?.known === false) return undefined;
  const { system } = settings(shop);
  if (want !== undefined) {
    const { low, high, step } = want.value;
    return {
      low,
      high,
      says: `${showRange(low, high, system, step)} is wanted`,
    };
  }
  const isLight = code === "press-light";
  const bound = (value: number, says: string): Allowed =>
    isLight
      ? { low: value, high: undefined, says }
      : { low: undefined, high: value, says };
  const end = isLight ? "least" : "most";
  const od = found.value.od.nominal;
  const own = ownThreshold(shop, code);
  if (own !== undefined) {
    const value = "length" in own ? own.length : own.share * od;
    return bound(
      value,
      `${showLength(value, system, found.value.step)} is the ${end} that this job takes`,
    );
  }
  const family = usualFamily(shop, press);
  if (family !== undefined) {
    const value = usualInterference[isLight ? "low" : "high"] * od;
    return bound(
      value,
      `${showLength(value, system, found.value.step)} is the usual ${end} for ${family} (${isLight ? "0.5" : "1.5"} ‰ of the outside diameter)`,
    );
  }
  // of another material only this is sure: a bush that is smaller than its hole is not held
  return isLight
    ? bound(0, "a bush that is smaller than its hole is not held")
    : undefined;
}

/** "Make the bush 1.0008 to 1.0014 in." where the wanted or the usual interference tells, else nothing. */
export function bushToMake(shop: Shop, press: string): string {
  const od = odToMake(shop, press);
  if (!od.known) return "";
  const { system } = settings(shop);
  return ` An od of ${showRange(od.value.low, od.value.high, system, od.value.step)} gives it.`;
}

/** The od that gives what is wanted, in place of the limits of a bush that nobody has read: one that is still to be made or bought. */
export function bushFixes(shop: Shop, press: string): readonly DraftFix[] {
  const parts = partsOf(shop, press);
  const od = odToMake(shop, press);
  if (parts === undefined || !od.known) return [];
  const bush = entryOf(shop, parts.bush);
  const now = bushOd(shop, parts.bush);
  const written = bush === undefined ? undefined : given(bush, "OdFact");
  if (written?.state !== "given" || !now.known || now.value.from !== "limits")
    return [];
  const { system } = settings(shop);
  const text = odWithin(od.value, system);
  return text === undefined
    ? []
    : [
        {
          title: `Have the bush made: \`${text}\``,
          safe: false,
          edits: [{ ref: parts.bush, span: written.span, text }],
        },
      ];
}

/** The limits of an od in whole last digits, each on the inner side; with its unit, since the bush may lie in a file of another. */
function odWithin(
  { low, high, step }: Estimate,
  system: System,
): string | undefined {
  const decimals = decimalsFor(step, system);
  const unit = (system === "inch" ? 0.0254 : 0.001) * 10 ** -decimals;
  const from = Math.ceil(low / unit - 1e-6);
  const to = Math.floor(high / unit + 1e-6);
  if (to < from) return undefined;
  const ends = [from, to].map((each) =>
    (each / 10 ** decimals).toFixed(decimals),
  );
  return `od ${ends.join(" to ")} ${UNIT_OF_SYSTEM[system]}`;
}

/** The bush and the hole with the sizes that were used. */
export function relatedPress(
  shop: Shop,
  press: string,
): readonly DraftRelated[] {
  const parts = partsOf(shop, press);
  if (parts === undefined) return [];
  const { system } = settings(shop);
  return [
    { ref: parts.bush, what: "od ", size: bushOd(shop, parts.bush) },
    { ref: parts.hole, what: "", size: sizeOf(shop, parts.hole) },
  ].flatMap(({ ref, what, size }) =>
    size.known
      ? [
          {
            ref,
            message: `${ref}: ${what}${showRange(size.value.low, size.value.high, system, size.value.step)}, ${size.value.status}`,
          },
        ]
      : [],
  );
}

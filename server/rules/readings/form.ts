// What out-of-round, taper and lobes are held against: what the entry allows, or else the job's own threshold, or else shares of the tolerance
// and of the least clearance. Out-of-round and taper themselves are size.ts's, lobes roundness.ts's.
import { metresToTenths } from "../../core/quantity/exact.ts";
import { showLength, showWritten } from "../../core/quantity/show.ts";
import { clearance } from "../../model/evaluate/fit.ts";
import { fitsOfBore, fitsOfJournal } from "../../model/evaluate/index-of.ts";
import { settings } from "../../model/evaluate/settings.ts";
import { given, valueIn, type Entry } from "../../model/entry.ts";
import type { Shop } from "../../model/shop.ts";
import type { Span } from "../../model/values.ts";
import { ownThreshold } from "../threshold.ts";
import type { Draft } from "../rule.ts";
import { kindOf } from "../../model/reference.ts";

/** Shares of the size tolerance, and of the least clearance: common practice, no source. */
const HINT = 0.25;
const WARNING = 0.5;
const OF_CLEARANCE = 0.25;

/** `round` is of two-point diameters, which don't see lobes. */
const ALLOWED = {
  "out-of-round": "RoundFact",
  taper: "TaperFact",
  lobed: undefined,
} as const;

const CURE = "True it up before its mate is fitted.";
const COARSE =
  "That is no more than one step of its readings: read it with a finer gauge before it is trued up.";

/** What was found of a form. */
export interface Found {
  readonly code: "out-of-round" | "taper" | "lobed";
  readonly span: Span;
  /** The sentence that the finding begins with, for where there is one: "Out of round by 0.0002 in at near". */
  readonly is: () => string;
  /** m */
  readonly value: number;
  /** The last digit of the readings that it is the difference of, m; a swing shows more than the form that it is of, and has none. */
  readonly step?: number | undefined;
  /** m that it has taken of the least clearance already; nothing where left off. */
  readonly taken?: number;
  /** How to look again where it is a hint: "at more angles". */
  readonly look: string;
}

export function formDrafts(
  shop: Shop,
  ref: string,
  entry: Entry,
  found: Found,
): readonly Draft[] {
  const { system } = settings(shop);
  const { span, is, value, taken = 0 } = found;
  const cure = cureOf(found);
  const rule = ALLOWED[found.code];
  const allowed = rule === undefined ? undefined : given(entry, rule);
  if (allowed?.state === "damaged") return [];
  if (allowed?.state === "given") {
    const { value: most, step } = allowed.value;
    if (!isOver(value, most)) return [];
    return [
      {
        level: "warning",
        span,
        message: `${is()}, and ${showLength(most, system, step)} is allowed. ${cure}`,
        related: [{ ref, span: allowed.span, message: "allowed here" }],
        value,
      },
    ];
  }
  const own = ownThreshold(shop, found.code);
  if (own !== undefined && "length" in own) {
    if (!isOver(value, own.length)) return [];
    return [
      {
        level: "warning",
        span,
        message: `${is()}, over the ${showWritten(own.length, system)} that \`warn\` sets. ${cure}`,
        value,
      },
    ];
  }
  const ofTolerance = shareOfTolerance(shop, entry, found, own?.share);
  if (ofTolerance?.level === "warning" || own !== undefined)
    return ofTolerance === undefined ? [] : [ofTolerance];
  const tightest = leastClearance(shop, ref, taken);
  if (tightest !== undefined && isOver(value, OF_CLEARANCE * tightest.low)) {
    const would = taken === 0 ? "" : " that it would have if this were round";
    return [
      {
        level: "warning",
        span,
        message: `${is()}: more than a quarter of the least clearance ${showLength(tightest.low, system, tightest.step)} of ${tightest.fit}${would}. ${cure}`,
        related: [{ ref: tightest.fit, message: tightest.fit }],
        value,
      },
    ];
  }
  return ofTolerance === undefined ? [] : [ofTolerance];
}

/** Against the size tolerance: a warning over the job's own share, else over a half; a hint over half of that. */
function shareOfTolerance(
  shop: Shop,
  entry: Entry,
  found: Found,
  own: number | undefined,
): Draft | undefined {
  const { span, is, value, look } = found;
  const limits = valueIn(entry, "LimitsFact");
  if (limits === undefined) return undefined;
  const tolerance = limits.high - limits.low;
  const warning = own ?? WARNING;
  const hint = own === undefined ? HINT : own / 2;
  if (tolerance <= 0 || !isOver(value, hint * tolerance)) return undefined;
  const isWarning = isOver(value, warning * tolerance);
  const { system } = settings(shop);
  const of = `${is()}: ${percent(value / tolerance)} of the tolerance ${showLength(tolerance, system, limits.step)}`;
  return isWarning
    ? {
        level: "warning",
        span,
        message: `${of}, and ${percent(warning)} is the most to let pass. ${cureOf(found)}`,
        value,
      }
    : {
        level: "hint",
        span,
        message: `${of}. From ${percent(hint)} on it is worth reading again, ${look}.`,
        value,
      };
}

/** Nothing is cut for what the last digit of a reading may be. */
function cureOf({ value, step }: Found): string {
  return step === undefined || isOver(value, step) ? CURE : COARSE;
}

/** Compared as verdicts are: a value on its bound is not over it. */
function isOver(value: number, bound: number): boolean {
  return metresToTenths(bound) < metresToTenths(value);
}

interface Tightest {
  readonly fit: string;
  readonly low: number;
  readonly step: number | undefined;
}

/** The fit of a journal or a bore that has least clearance, `taken` put back, of those that have any. */
function leastClearance(
  shop: Shop,
  ref: string,
  taken: number,
): Tightest | undefined {
  const fits =
    kindOf(ref) === "journal"
      ? fitsOfJournal(shop, ref)
      : kindOf(ref) === "bore"
        ? fitsOfBore(shop, ref)
        : [];
  let least: Tightest | undefined;
  for (const fit of fits) {
    const found = clearance(shop, fit);
    if (!found.known) continue;
    const { step } = found.value;
    const low = found.value.low + taken;
    if (low <= 0) continue;
    if (least === undefined || low < least.low) least = { fit, low, step };
  }
  return least;
}

function percent(share: number): string {
  return `${(100 * share).toFixed(0)} %`;
}

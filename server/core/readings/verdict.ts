// Owns the verdict on a size or a clearance against its limits: in, out or unsure, with or without a guard for the uncertainty.
// Does not own the limits, nor which uncertainty belongs to a value.
import { notValid, valid, type Answer } from "../answer.ts";
import { metresToTenths } from "../quantity/exact.ts";
import { studentQuantile } from "../quantity/student.ts";

export type Verdict = "in" | "out" | "unsure";

/** Limits in m; either may be absent. */
export interface Limits {
  readonly low?: number | undefined;
  readonly high?: number | undefined;
}

export type Rule =
  /** The value as it stands. */
  | { readonly kind: "simple" }
  /** Proof is asked: `guard` = k·u in m (guardFactor gives k), or undefined where the uncertainty is not known. */
  | { readonly kind: "guarded"; readonly guard: number | undefined };

/**
 * k of the guard k·u: one-sided, so that a value at the limit less its guard lies on the right side of it with probability
 * `conformance` (95 % gives 1.645). With few degrees of freedom of u, Student's t. One-sided holds while the other limit
 * is far, which it is from a tolerance of 4·U on; narrower, the gauge has no verdict anyway (gauge.ts).
 * Refuses a conformance not between 0.5 and 1 (exclusive), degrees of freedom below 1.
 * Source: ISO 14253-1:2017 (95 % the default; the text was not at hand, k = 1.65 from memory); k is the normal quantile.
 */
export function guardFactor(
  conformance = 0.95,
  degreesOfFreedom = Infinity,
): Answer<number> {
  if (!(0.5 < conformance && conformance < 1))
    return notValid("a probability of conformance lies between a half and 1");
  return studentQuantile(conformance, degreesOfFreedom);
}

/**
 * The verdict on one value (m). Simple: in, from limit to limit, both counted in; else out. Guarded: in where the value keeps the
 * guard from each limit, out where it is past a limit by more than the guard, else unsure; without a guard, unsure.
 * All are compared after rounding to 1e-10 m, so that a size on its limit is in. Refuses no limit at all, limits reversed, values not
 * finite or beyond 1 km, a guard below zero. Source: ISO 14253-1:2017, as guardFactor; the rounding is this tool's own.
 */
export function judge(
  value: number,
  limits: Limits,
  rule: Rule,
): Answer<Verdict> {
  return judgeRange({ low: value, high: value }, limits, rule, "every");
}

/**
 * The verdict on a range low to high (m). `meaning` "every": the part has all of these values (the readings round a bore, the clearance
 * over a length), so it is out as soon as one end is. "one": the one true value lies somewhere in the range (predicted from
 * limits), so it is out only where the whole range is. It is in, either way, only where the whole range is.
 * The rest as judge; refuses a range reversed.
 */
export function judgeRange(
  range: { readonly low: number; readonly high: number },
  limits: Limits,
  rule: Rule,
  meaning: "every" | "one",
): Answer<Verdict> {
  const { low = -Infinity, high = Infinity } = limits;
  if (low === -Infinity && high === Infinity)
    return notValid("there is no limit to judge by");
  if (
    ![range.low, range.high, limits.low ?? 0, limits.high ?? 0].every(isLength)
  )
    return notValid("a value or a limit is not a length within 1 km");
  if (high < low) return notValid("the limits are reversed");
  if (range.high < range.low) return notValid("the range is reversed");
  const guard = rule.kind === "simple" ? 0 : rule.guard;
  if (guard === undefined) return valid("unsure");
  if (!(0 <= guard && guard <= farthest))
    return notValid("a guard is not below zero");

  const isIn =
    isAtMost(low + guard, range.low) && isAtMost(range.high, high - guard);
  if (isIn) return valid("in");
  // the end that must be past a limit: any of many values, or the last of the candidates for one
  const [lowEnd, highEnd] =
    meaning === "every" ? [range.low, range.high] : [range.high, range.low];
  const isOut =
    !isAtMost(low - guard, lowEnd) || !isAtMost(highEnd, high + guard);
  return valid(isOut ? "out" : "unsure");
}

const farthest = 1000;

function isLength(value: number): boolean {
  return Math.abs(value) <= farthest;
}

function isAtMost(a: number, b: number): boolean {
  return metresToTenths(a) <= metresToTenths(b);
}

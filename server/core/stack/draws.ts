// The end float of many chains drawn at random within their members' limits, from a seed: the same seed gives the same
// answer on every machine. The chain and its closed forms are in chain.ts.
import { notValid, valid, type Answer } from "../answer.ts";
import { halfWidth, isBand, middle, type Band } from "../quantity/band.ts";
import { endFloat, type Member } from "./chain.ts";

export interface Drawing {
  /** A whole number from 1 to 2147483646. */
  readonly seed: number;
  /** How many chains, 100 to 1,000,000. */
  readonly draws: number;
  /** `normal`: limits at three deviations. `even`: any length within limits as likely as another. */
  readonly shape: "normal" | "even";
  /** The float that is wanted, for the chance of it. */
  readonly want?: Band | undefined;
}

/** Floats in m. */
export interface DrawnFloat {
  readonly mean: number;
  readonly deviation: number;
  /** The float between which 99.73 % of the chains lie, as three deviations would of a normal one. */
  readonly band: Band;
  /** Share of chains within `want`, ends included; undefined where none is wanted. */
  readonly chance: number | undefined;
}

/**
 * Draws end floats, m: each member's length at random within its limits, the chain's sum as often as is asked. Refuses a chain that `endFloat`
 * refuses, a seed or number of draws out of range, reversed wants. Source: Monte Carlo propagation of distributions (JCGM 101:2008, from memory).
 */
export function drawEndFloats(
  members: readonly Member[],
  drawing: Drawing,
): Answer<DrawnFloat> {
  const { seed, draws, shape, want } = drawing;
  const chain = endFloat(members);
  if (!chain.valid) return chain;
  if (!(Number.isInteger(seed) && 1 <= seed && seed < modulus))
    return notValid("the seed is out of range");
  if (!(Number.isInteger(draws) && 100 <= draws && draws <= 1e6))
    return notValid("the number of draws is out of range");
  if (want !== undefined && !isBand(want))
    return notValid("the wanted float's limits are reversed");
  const uniform = minimalStandard(seed);
  const draw =
    shape === "even"
      ? (length: Band) => length.low + (length.high - length.low) * uniform()
      : (length: Band) =>
          middle(length) + (halfWidth(length) / 3) * normalFrom(uniform);
  const floats = new Float64Array(draws);
  for (let i = 0; i < draws; i++) {
    let float = 0;
    for (const { sign, length } of members) float += sign * draw(length);
    floats[i] = float;
  }
  floats.sort();
  const mean = floats.reduce((sum, float) => sum + float, 0) / draws;
  const deviation = Math.sqrt(
    floats.reduce((sum, float) => sum + (float - mean) ** 2, 0) / (draws - 1),
  );
  const within =
    want &&
    floats.filter((float) => want.low <= float && float <= want.high).length /
      draws;
  return valid({
    mean,
    deviation,
    band: { low: quantile(floats, 0.00135), high: quantile(floats, 0.99865) },
    chance: within,
  });
}

const modulus = 2147483647;

/**
 * Even numbers between 0 and 1, neither included: the minimal standard generator with multiplier 48271. Its products stay
 * under 2⁵³, so doubles are exact. Source: ISO C++, [rand.predef], minstd_rand.
 */
export function minimalStandard(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % modulus;
    return state / modulus;
  };
}

/** Box and Muller's transform; only the cosine half, for plainness. */
function normalFrom(uniform: () => number): number {
  const radius = Math.sqrt(-2 * Math.log(uniform()));
  return radius * Math.cos(2 * Math.PI * uniform());
}

/** Of sorted values, between neighbours in proportion. */
function quantile(sorted: Float64Array, share: number): number {
  const place = share * (sorted.length - 1);
  const below = Math.floor(place);
  const low = sorted[below] ?? NaN;
  const high = sorted[Math.min(below + 1, sorted.length - 1)] ?? low;
  return low + (place - below) * (high - low);
}

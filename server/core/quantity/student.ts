// Owns quantiles of Student's t, as the uncertainty budget, Grubbs' test and the guard of a verdict need them.
// Does not own other distributions, nor what a quantile is used for.
import jstat from "jstat";
import { notValid, valid, type Answer } from "../answer.ts";

/**
 * The value that a share `probability` of Student's t distribution with `dof` degrees of freedom lies below
 * (one-sided). `dof` may be fractional, or Infinity: then the normal distribution.
 * Range: probability 1e-9 to 1 − 1e-9, dof from 1. Refuses anything else.
 * Source: the distribution's own definition, computed by jstat 1.9.6, within a twentieth of a half by the series of the area from
 * the middle, where jstat's incomplete beta has too few digits left; good to 6e-8 of the value for dof below a million
 * (above ten million it loses its way, so from a million on the normal quantile stands in, which at 95 % differs by less than 3e-6,
 * in the tail of 1e-9 by less than 1e-5).
 */
export function studentQuantile(
  probability: number,
  dof: number,
): Answer<number> {
  // written so that NaN fails too
  if (!(smallestShare <= probability && probability <= 1 - smallestShare))
    return notValid("a quantile needs a probability between 0 and 1");
  if (!(1 <= dof))
    return notValid("Student's t needs one degree of freedom at least");
  if (probability === 0.5) return valid(0);
  if (normalFrom <= dof) return valid(jstat.normal.inv(probability, 0, 1));
  const fromMiddle = probability - 0.5;
  return valid(
    Math.abs(fromMiddle) < middle
      ? nearMiddle(fromMiddle, dof)
      : jstat.studentt.inv(probability, dof),
  );
}

/**
 * The t with this area between it and 0, by Newton's method on the area's series: the density is d₀·(1 + z)^(−a) with z = t²/ν and
 * a = (ν + 1)/2; its binomial series, integrated, is d₀·t·Σ (a)ₖ·(−z)ᵏ/(k!·(2k + 1)). So near the middle ten terms are more than enough.
 */
function nearMiddle(area: number, dof: number): number {
  const a = (dof + 1) / 2;
  const atMiddle =
    Math.exp(jstat.gammaln(a) - jstat.gammaln(dof / 2)) /
    Math.sqrt(Math.PI * dof);
  let t = area / atMiddle;
  for (let turn = 0; turn < 4; turn++) {
    const z = (t * t) / dof;
    let [sum, term] = [0, 1];
    for (let k = 0; k < 10; k++) {
      sum += term / (2 * k + 1);
      term *= (-z * (a + k)) / (k + 1);
    }
    t -= (t * sum - area / atMiddle) * (1 + z) ** a;
  }
  return t;
}

/**
 * The coverage factor k: a share `coverage` of Student's t distribution lies between −k and +k (two-sided).
 * The same range and refusals as studentQuantile. Source: JCGM 100:2008, annex G (from memory; values of its table G.2 seen).
 */
export function studentCoverage(coverage: number, dof: number): Answer<number> {
  if (!(0 < coverage && coverage < 1))
    return notValid("a coverage probability lies between 0 and 1");
  return studentQuantile((1 + coverage) / 2, dof);
}

const smallestShare = 1e-9;
const normalFrom = 1e6;
const middle = 0.05;

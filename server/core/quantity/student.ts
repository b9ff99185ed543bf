// Owns quantiles of Student's t, as the uncertainty budget, Grubbs' test and the guard of a verdict need them.
// Does not own other distributions, nor what a quantile is used for.
import jstat from "jstat";
import { notValid, valid, type Answer } from "../answer.ts";

/**
 * The value that a share `probability` of Student's t distribution with `dof` degrees of freedom lies below
 * (one-sided). `dof` may be fractional, or Infinity: then the normal distribution.
 * Range: probability 1e-9 to 1 − 1e-9, dof from 1. Refuses anything else.
 * Source: the distribution's own definition, computed by jstat 1.9.6; good to 3e-8 of the value for dof below a million
 * (its incomplete beta loses its way above ten million, so from a million on the normal quantile stands in, which
 * at 95 % differs by less than 3e-6).
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
  return valid(
    normalFrom <= dof
      ? jstat.normal.inv(probability, 0, 1)
      : jstat.studentt.inv(probability, dof),
  );
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

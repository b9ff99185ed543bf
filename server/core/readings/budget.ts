// Owns the uncertainty budget: components combined, effective degrees of freedom, coverage, expanded uncertainty; and the budget of
// a clearance, which is a bore less a journal. Does not own where a component comes from (components.ts).
// Of JCGM 100:2008 (the GUM) 5.1.2 with eq. 10 was read and G.6.4 with eq. G.2b as quoted, its example H.1 as restated by others; other
// clauses are cited from memory.
import { notValid, valid, type Answer } from "../answer.ts";
import { studentCoverage } from "../quantity/student.ts";
import type { Component } from "./components.ts";

/** A component with what it adds to the result, as the user sees it. */
export interface BudgetRow extends Component {
  /** |sensitivity|·standard uncertainty, in the result's unit. */
  readonly contribution: number;
}

export interface Budget {
  readonly rows: readonly BudgetRow[];
  /** Combined standard uncertainty, in the result's unit. */
  readonly combined: number;
  /** By Welch and Satterthwaite, cut to a whole number; Infinity where no component has fewer. */
  readonly effectiveDegreesOfFreedom: number;
  /** Share of the distribution that ± expanded covers, 0.95 unless told. */
  readonly coverage: number;
  /** Coverage factor k: Student's t for that share and those degrees of freedom. */
  readonly coverageFactor: number;
  /** Expanded uncertainty U = k·u, in the result's unit. */
  readonly expanded: number;
}

/** The budget of a difference of two results; their correlation adds −2r·uB·uJ to the variance. */
export interface ClearanceBudget extends Budget {
  readonly correlation: number;
}

/**
 * Combines independent components: u² = Σ (c·u)², ν by Welch and Satterthwaite, U = t(coverage, ν)·u. The standard deviation of a
 * resolution is kept beside the repeatability, which is cautious where the repeats show the steps already.
 * Refuses an empty list, uncertainties below zero, sensitivities not finite, degrees of freedom below 1, a coverage not between 0 and 1.
 * Source: JCGM 100:2008, eq. 10 and 11a (combination), G.4.1 eq. G.2b and its note 1 (cut to a whole number), G.6.4 (the
 * procedure). Its example H.1 is a check of this function.
 */
export function budget(
  components: readonly Component[],
  coverage = 0.95,
): Answer<Budget> {
  if (components.length === 0)
    return notValid("no component of the uncertainty is known");
  const fault = components.map(faultIn).find((each) => each !== undefined);
  if (fault !== undefined) return notValid(fault);
  const rows = components.map(withContribution);
  return expand(rows, rootSumSquare(rows), coverage);
}

/**
 * Budget of the clearance of a bore and a journal, each with its own: u² = uB² + uJ² − 2r·uB·uJ. `correlation` r is 1 where both errors
 * are the same error, 0 where they have nothing in common; commonCorrelation gives it where they share a component.
 * The rows are both budgets', the journal's with the sign turned.
 * Degrees of freedom: Welch and Satterthwaite over all rows. That is exact for r = 0, and for r ≠ 0 where what is shared has
 * infinite degrees of freedom (a setting, a calibration); otherwise the smaller u of r and 0 is put in, which is cautious.
 * Refuses r outside −1 to 1, and what `budget` refuses. Source: JCGM 100:2008, eq. 16 (correlated inputs).
 */
export function clearanceBudget(
  bore: Budget,
  journal: Budget,
  correlation = 0,
): Answer<ClearanceBudget> {
  if (!(-1 <= correlation && correlation <= 1))
    return notValid("a correlation lies between −1 and 1");
  const rows = [
    ...bore.rows.map((row) => rowOf("bore", row, row.sensitivity)),
    ...journal.rows.map((row) => rowOf("journal", row, -row.sensitivity)),
  ];
  const cross = bore.combined * journal.combined;
  // written as a sum of squares, so that alike and fully correlated gives exactly nothing
  const variance =
    (bore.combined - journal.combined) ** 2 + 2 * (1 - correlation) * cross;
  const expanded = expand(rows, Math.sqrt(variance), 0.95);
  return expanded.valid ? valid({ ...expanded.value, correlation }) : expanded;
}

/**
 * The budget of a result from which more is taken that has nothing in common with it: u² = u₀² + Σ uᵢ². The rows of what is taken come after
 * its own, named by it. Refuses what `budget` refuses. Source: JCGM 100:2008, eq. 10.
 */
export function lessOthers(
  result: ClearanceBudget,
  taken: readonly { readonly name: string; readonly budget: Budget }[],
): Answer<ClearanceBudget> {
  const rows = [
    ...result.rows,
    ...taken.flatMap(({ name, budget: { rows: own } }) =>
      own.map((row) => rowOf(name, row, -row.sensitivity)),
    ),
  ];
  const combined = Math.hypot(
    result.combined,
    ...taken.map((each) => each.budget.combined),
  );
  const expanded = expand(rows, combined, result.coverage);
  return expanded.valid
    ? valid({ ...expanded.value, correlation: result.correlation })
    : expanded;
}

/**
 * Correlation of a bore's and a journal's size that share a source of error, each with this contribution to its own budget
 * (m): r = cB·cJ/(uB·uJ). So a bore gauge set in the very micrometer that reads the journal shares that micrometer's calibration,
 * which then cancels in the clearance. Refuses a contribution below zero or above its budget's combined uncertainty.
 * Source: JCGM 100:2008, F.1.2.3 (covariance of two quantities that depend on the same input).
 */
export function commonCorrelation(
  bore: Budget,
  journal: Budget,
  shared: { readonly bore: number; readonly journal: number },
): Answer<number> {
  if (
    !within(shared.bore, bore.combined) ||
    !within(shared.journal, journal.combined)
  )
    return notValid(
      "a shared contribution lies between nothing and the whole uncertainty",
    );
  const product = bore.combined * journal.combined;
  return valid(
    product === 0 ? 0 : Math.min(1, (shared.bore * shared.journal) / product),
  );
}

function expand(
  rows: readonly BudgetRow[],
  combined: number,
  coverage: number,
): Answer<Budget> {
  const effectiveDegreesOfFreedom = welchSatterthwaite(
    rows,
    Math.min(combined, rootSumSquare(rows)),
  );
  const factor = studentCoverage(coverage, effectiveDegreesOfFreedom);
  if (!factor.valid) return factor;
  const coverageFactor = factor.value;
  return valid({
    rows,
    combined,
    effectiveDegreesOfFreedom,
    coverage,
    coverageFactor,
    expanded: coverageFactor * combined,
  });
}

function welchSatterthwaite(
  rows: readonly BudgetRow[],
  combined: number,
): number {
  // as shares of the largest, since the fourth power of a nanometre is near the smallest double
  const unit = rows.reduce((most, row) => Math.max(most, row.contribution), 0);
  if (unit === 0) return Infinity;
  const spent = rows.reduce(
    (total, row) =>
      total + (row.contribution / unit) ** 4 / row.degreesOfFreedom,
    0,
  );
  if (spent === 0) return Infinity;
  const degrees = (combined / unit) ** 4 / spent;
  // a whole number that rounding took just below itself is still that number
  return Math.max(1, Math.floor(degrees * (1 + 1e-9)));
}

// rows are written out: they are many, and the engine gives each copy of an object that is spread a shape of its own

function withContribution({
  name,
  sensitivity,
  standardUncertainty,
  distribution,
  degreesOfFreedom,
}: Component): BudgetRow {
  return {
    name,
    sensitivity,
    standardUncertainty,
    distribution,
    degreesOfFreedom,
    contribution: Math.abs(sensitivity) * standardUncertainty,
  };
}

/** A row of one of two sizes in the budget of both. */
function rowOf(
  size: string,
  {
    name,
    standardUncertainty,
    distribution,
    degreesOfFreedom,
    contribution,
  }: BudgetRow,
  sensitivity: number,
): BudgetRow {
  return {
    name: `${size} ${name}`,
    sensitivity,
    standardUncertainty,
    distribution,
    degreesOfFreedom,
    contribution,
  };
}

function rootSumSquare(rows: readonly BudgetRow[]): number {
  return Math.hypot(...rows.map((row) => row.contribution));
}

function faultIn({
  sensitivity,
  standardUncertainty,
  degreesOfFreedom,
}: Component): string | undefined {
  if (!(0 <= standardUncertainty && standardUncertainty < Infinity))
    return "a standard uncertainty is not below zero";
  if (!Number.isFinite(sensitivity))
    return "a sensitivity is not a finite number";
  return 1 <= degreesOfFreedom
    ? undefined
    : "an uncertainty has one degree of freedom at least";
}

function within(share: number, whole: number): boolean {
  return 0 <= share && share <= whole * (1 + 1e-12);
}

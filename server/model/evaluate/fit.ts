// The clearance of a running fit, measured or predicted. All clearances are diametral.
import { wanted } from "./wanted.ts";
import type { Budget } from "../../core/readings/budget.ts";
import { clearance as clearanceOf } from "../../core/line/clearance.ts";
import { metresToTenths } from "../../core/quantity/exact.ts";
import { lengthDigits, showRange } from "../../core/quantity/show.ts";
import { finer } from "../ranges.ts";
import {
  known,
  outside,
  SILENT,
  statusOf,
  type Estimate,
  type Known,
} from "../known.ts";
import type { Need } from "../result.ts";
import { query } from "../shop.ts";
import { boreSize } from "./bore.ts";
import { namedIn } from "./index-of.ts";
import { differenceOf } from "./setting.ts";
import { settings } from "./settings.ts";
import { judgeEstimate, sizeOf, type Judged, type Size } from "./size.ts";

export interface Clearance extends Estimate {
  /**
   * The most that the least clearance can be, and the least that the most can be: a part that is read has all of its sizes, one that is
   * foretold has one of them.
   */
  readonly atBest: { readonly least: number; readonly most: number };
  readonly journal: Size;
  readonly bore: Size;
  readonly budget: Budget | undefined;
  readonly budgetNeeds: readonly Need[];
}

export const clearance = query<Known<Clearance>>("clearance", (shop, ref) => {
  const [journalRef, boreRef] = namedIn(shop, ref);
  if (journalRef === undefined || boreRef === undefined) return SILENT;
  const journal = sizeOf(shop, journalRef);
  const bore = boreSize(shop, boreRef);
  if (!journal.known || !bore.known) {
    const missing = [journal, bore].flatMap((each) =>
      each.known ? [] : [each],
    );
    const because = missing.find((each) => each.because !== undefined)?.because;
    return {
      known: false,
      needs: missing.flatMap((each) => each.needs),
      silent: missing.some((each) => each.silent),
      ...(because === undefined ? {} : { because }),
    };
  }
  const found = clearanceOf(
    {
      smallest: bore.value.low,
      mean: bore.value.nominal,
      largest: bore.value.high,
    },
    {
      smallest: journal.value.low,
      mean: journal.value.nominal,
      largest: journal.value.high,
    },
  );
  if (!found.valid) return outside(found.because);
  const { system } = settings(shop, "job");
  const step = finer(journal.value.step, bore.value.step);
  const difference = differenceOf(bore.value, journal.value);
  const digits = (size: Size): string =>
    showRange(size.low, size.high, system, size.step);
  return known({
    low: found.value.least,
    nominal: found.value.mean,
    high: found.value.most,
    atBest: atBest(journal.value, bore.value),
    status: statusOf(journal.value, bore.value),
    step,
    journal: journal.value,
    bore: bore.value,
    budget: difference?.budget,
    budgetNeeds: [...bore.value.budgetNeeds, ...journal.value.budgetNeeds],
    working: [
      ...bore.value.working,
      ...journal.value.working,
      {
        formula: "least clearance = smallest bore − largest journal",
        with: `${lengthDigits(bore.value.low, system, step)} − ${lengthDigits(journal.value.high, system, step)} = ${showRange(found.value.least, found.value.least, system, step)}`,
        source: "",
      },
      {
        formula: "most clearance = largest bore − smallest journal",
        with: `${lengthDigits(bore.value.high, system, step)} − ${lengthDigits(journal.value.low, system, step)} = ${showRange(found.value.most, found.value.most, system, step)}; bore ${digits(bore.value)}, journal ${digits(journal.value)}`,
        source: "",
      },
      ...(difference?.working === undefined ? [] : [difference.working]),
    ],
  });
});

function atBest(journal: Size, bore: Size): Clearance["atBest"] {
  const isRead = (size: Size): boolean => size.status === "measured";
  const smallestBore = isRead(bore) ? bore.low : bore.high;
  const largestBore = isRead(bore) ? bore.high : bore.low;
  const largestJournal = isRead(journal) ? journal.high : journal.low;
  const smallestJournal = isRead(journal) ? journal.low : journal.high;
  return {
    least: smallestBore - largestJournal,
    most: largestBore - smallestJournal,
  };
}

/** The clearance against what is wanted; undefined where either is not known. */
export const clearanceVerdict = query<Judged | undefined>(
  "clearance-verdict",
  (shop, ref) => {
    const found = clearance(shop, ref);
    const want = wanted(shop, ref);
    if (!found.known || want?.known !== true) return undefined;
    const judged = judgeEstimate(
      shop,
      found.value,
      want.value,
      found.value.budget,
    );
    // foretold, it is out where the best that can come of it is
    const { least, most } = found.value.atBest;
    const isOut =
      metresToTenths(least) < metresToTenths(want.value.low) ||
      metresToTenths(want.value.high) < metresToTenths(most);
    return found.value.status === "predicted" &&
      judged.verdict === "unsure" &&
      isOut
      ? { ...judged, verdict: "out" }
      : judged;
  },
);

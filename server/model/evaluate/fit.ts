// The clearance of a running fit, measured or predicted. All clearances are diametral.
import {
  lessOthers,
  type Budget,
  type ClearanceBudget,
} from "../../core/readings/budget.ts";
import {
  clearance as clearanceOf,
  type Clearance as ClearanceOf,
} from "../../core/line/clearance.ts";
import {
  lengthDigits,
  showLength,
  showRange,
  type System,
} from "../../core/quantity/show.ts";
import { finer } from "../ranges.ts";
import {
  known,
  lacking,
  outside,
  SILENT,
  statusOf,
  type Estimate,
  type Known,
} from "../known.ts";
import type { Need, Working } from "../result.ts";
import { query, type Shop } from "../shop.ts";
import {
  differenceAtBest,
  judgeAtBest,
  type AtBest,
  type Sized,
} from "./at-best.ts";
import { boreSize } from "./bore.ts";
import { namedIn } from "./index-of.ts";
import { lobesOfBoth, lobesWorking, type Lobes } from "./roundness.ts";
import { differenceOf } from "./setting.ts";
import { settings } from "./settings.ts";
import { sizeOf, type Judged, type Size } from "./size.ts";
import { wanted } from "./wanted.ts";

export interface Clearance extends Estimate {
  readonly atBest: AtBest;
  readonly journal: Size;
  readonly bore: Size;
  /** What lobes that two points don't see take of the least clearance. */
  readonly lobes: { readonly journal: Lobes; readonly bore: Lobes };
  readonly budget: Budget | undefined;
  readonly budgetNeeds: readonly Need[];
}

export const clearance = query<Known<Clearance>>("clearance", (shop, ref) => {
  const [journalRef, boreRef] = namedIn(shop, ref);
  if (journalRef === undefined || boreRef === undefined) return SILENT;
  const journal = sizeOf(shop, journalRef);
  const bore = boreSize(shop, boreRef);
  if (!journal.known || !bore.known) return lacking(journal, bore);
  const both = lobesOfBoth(
    shop,
    { ref: journalRef, size: journal.value },
    { ref: boreRef, size: bore.value },
  );
  if (!both.known) return both;
  const lobes = both.value;
  const found = clearanceOf(
    {
      smallest: bore.value.low,
      mean: bore.value.nominal,
      largest: bore.value.high,
      roundness: lobes.bore.taken,
    },
    {
      smallest: journal.value.low,
      mean: journal.value.nominal,
      largest: journal.value.high,
      roundness: lobes.journal.taken,
    },
  );
  if (!found.valid) return outside(found.because);
  const difference = differenceOf(bore.value, journal.value);
  const sure = withLobes(difference?.budget, lobes);
  return known({
    low: found.value.least,
    nominal: found.value.mean,
    high: found.value.most,
    atBest: atBest(journal.value, bore.value, lobes),
    status: statusOf(journal.value, bore.value),
    step: finer(journal.value.step, bore.value.step),
    journal: journal.value,
    bore: bore.value,
    lobes,
    budget: sure.budget,
    budgetNeeds: [
      ...bore.value.budgetNeeds,
      ...journal.value.budgetNeeds,
      ...sure.needs,
    ],
    working: [
      ...bore.value.working,
      ...journal.value.working,
      ...lobesWorking(boreRef, lobes.bore, settings(shop).system),
      ...lobesWorking(journalRef, lobes.journal, settings(shop).system),
      ...endsWorking(shop, journal.value, bore.value, lobes, found.value),
      ...(difference?.working === undefined ? [] : [difference.working]),
    ],
  });
});

/** How the two ends come of the sizes. */
function endsWorking(
  shop: Shop,
  journal: Size,
  bore: Size,
  lobes: Clearance["lobes"],
  { least, most }: ClearanceOf,
): readonly Working[] {
  const { system } = settings(shop);
  const step = finer(journal.step, bore.step);
  const show = (length: number): string => lengthDigits(length, system, step);
  const range = ({ low, high, step: own }: Size): string =>
    showRange(low, high, system, own);
  return [
    {
      formula:
        0 < lobes.bore.taken + lobes.journal.taken
          ? "least clearance = smallest bore − largest journal − what lobes take"
          : "least clearance = smallest bore − largest journal",
      with: `${show(bore.low)} − ${show(journal.high)}${takenWords(lobes, system, step)} = ${showLength(least, system, step)}`,
      source: "",
    },
    {
      formula: "most clearance = largest bore − smallest journal",
      with: `${show(bore.high)} − ${show(journal.low)} = ${showLength(most, system, step)}; bore ${range(bore)}, journal ${range(journal)}`,
      source: "",
    },
  ];
}

/** " − 0.0002", for each part that has lobes. */
function takenWords(
  { journal, bore }: Clearance["lobes"],
  system: System,
  step: number | undefined,
): string {
  return [bore, journal]
    .filter(({ taken }) => 0 < taken)
    .map(
      ({ taken, form }) =>
        ` − ${lengthDigits(taken, system, finer(step, form?.step))}`,
    )
    .join("");
}

/** The budget of the clearance with that of what the lobes take: none where either has none. */
function withLobes(
  budget: ClearanceBudget | undefined,
  { journal, bore }: Clearance["lobes"],
): {
  readonly budget: ClearanceBudget | undefined;
  readonly needs: readonly Need[];
} {
  const forms = [
    { name: "bore lobes", form: bore.form },
    { name: "journal lobes", form: journal.form },
  ].flatMap(({ name, form }) => (form === undefined ? [] : [{ name, form }]));
  const needs = forms.flatMap(({ form }) => form.needs);
  const taken = forms.flatMap(({ name, form }) =>
    form.budget === undefined ? [] : [{ name, budget: form.budget }],
  );
  if (budget === undefined || taken.length < forms.length)
    return { budget: undefined, needs };
  // spares a look: most fits have no lobes, and what nothing is taken from stays as it is
  if (taken.length === 0) return { budget, needs };
  const found = lessOthers(budget, taken);
  return { budget: found.valid ? found.value : undefined, needs };
}

/** The clearance at best: of the least of it lobes take their share. */
export function atBest(
  journal: Sized,
  bore: Sized,
  lobes: Clearance["lobes"],
): AtBest {
  const { least, most } = differenceAtBest(bore, journal);
  return { least: least - lobes.bore.taken - lobes.journal.taken, most };
}

/** The clearance against what is wanted; undefined where either is not known. */
export const clearanceVerdict = query<Judged | undefined>(
  "clearance-verdict",
  (shop, ref) => {
    const found = clearance(shop, ref);
    const want = wanted(shop, ref);
    if (!found.known || want?.known !== true) return undefined;
    return judgeAtBest(shop, found.value, want.value, found.value.budget);
  },
);

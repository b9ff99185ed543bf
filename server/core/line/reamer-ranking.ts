// Which reamer to take for a line: those of the crib and those to buy in order, the setting of an adjustable one, and
// the size to have ground. It doesn't own the window, what a reamer cuts, or which sizes are sold.
import { notValid, valid, type Answer } from "../answer.ts";
import { chanceOfLanding, GOOD_CHANCE, margin, type Margin } from "./chance.ts";
import {
  cutPerToolSize,
  cutSize,
  type CutHeat,
  type CutSize,
  type Oversize,
  type ToolSize,
} from "./cut-size.ts";
import { middle, type Band } from "../quantity/band.ts";
import { faultOfDiameters, isLess, orderedRange } from "./range.ts";
import {
  boreLimits,
  type BoreLimits,
  type WantingJournal,
} from "./wanting-journal.ts";

/** How one bore is cut. The same object given for several bores is worked out once. */
export interface CutConditions {
  readonly oversize: Oversize;
  readonly heat?: CutHeat;
}

export interface ReamerToRank {
  /** Undefined for an adjustable reamer that nobody has measured */
  readonly size: ToolSize | undefined;
  /** An adjustable reamer's range, m: the ranking then finds its setting, whatever its size now */
  readonly expands?: Band;
  /** One for each bore of the line in its order, or one for all */
  readonly cuts: readonly CutConditions[];
}

export interface RankedReamer {
  /** Its place in the list that was given */
  readonly index: number;
  /** The size to set an adjustable reamer to, m */
  readonly setting: number | undefined;
  /** The rest: one for each bore of the line, in its order */
  readonly cuts: readonly CutSize[];
  /** Least and most clearance at the journal over the predicted cut, m */
  readonly clearances: readonly Band[];
  readonly margin: Margin;
  /** Undefined where the cut has no spread */
  readonly chance: number | undefined;
  /** Whether its likeliest cut gives every journal its wanted clearance */
  readonly serves: boolean;
}

/**
 * Reamers in order for a line with a bore for each of these journals, the best first: those that serve before those that don't, then by chance of landing in, then by
 * margin in standard deviations, then by margin in metres. A reamer that serves and whose chance isn't known goes behind those of a good
 * chance and before the others: nothing is known of its cuts, and one cut in a scrap bush tells, where a reamer of 58 % is known to spoil
 * four bushes of ten, which no further cut makes better. Of those that don't serve, one whose chance is known goes first.
 * Reamers that can't be worked out (no size, an oversize that is no number) are left out. Chances
 * count to a millionth, so that the margin decides between two that are as good as sure.
 * Refuses a line without bores and what boreLimits refuses. Derived from the definitions.
 */
export function rankReamers(
  journals: readonly WantingJournal[],
  reamers: readonly ReamerToRank[],
): Answer<RankedReamer[]> {
  const windows = windowsOf(journals);
  if (!windows.valid) return windows;
  const ranked = reamers.flatMap(
    (reamer, index) =>
      rankedReamer(journals, windows.value, reamer, index) ?? [],
  );
  return valid(ranked.sort(better));
}

export interface SizeToGrind {
  /** The reamer's own diameter at 20 °C, m */
  readonly size: number;
  /** What it may be ground to and still cut in at every bore with all that its cuts spread, m; undefined: no size can */
  readonly limits: Band | undefined;
  readonly cuts: readonly CutSize[];
}

/**
 * The size to have a reamer ground to: the middle of the sizes whose whole predicted cut lies in every bore's window;
 * where no size does, the middle of those whose likeliest cut does. `cuts` as in ReamerToRank.
 * Refuses a line whose windows share no size, and what cutSize and boreLimits refuse. Derived from the definitions.
 */
export function sizeToGrind(
  journals: readonly WantingJournal[],
  cuts: readonly CutConditions[],
): Answer<SizeToGrind> {
  const windows = windowsOf(journals);
  if (!windows.valid) return windows;
  const first = windows.value[0]?.low;
  if (first === undefined) return notValid("the line has no bore");
  const trial = cutsOf(
    { kind: "written", low: first, high: first },
    cuts,
    journals.length,
  );
  if (!trial.valid) return trial;
  const limits = sizesReaching(windows.value, first, trial.value, cuts, 1);
  const sizes =
    limits ?? sizesReaching(windows.value, first, trial.value, cuts, 0);
  if (!sizes)
    return notValid(
      "no one size gives every journal of the line its wanted clearance",
    );
  const size = middle(sizes);
  const ground = cutsOf(
    { kind: "written", low: size, high: size },
    cuts,
    journals.length,
  );
  return ground.valid ? valid({ size, limits, cuts: ground.value }) : ground;
}

/**
 * The tool sizes whose cut lies in every window with that share of its reach to either side. A cut follows the tool's
 * size in a straight line, so the trial cuts of one size tell what every size cuts.
 */
function sizesReaching(
  windows: readonly BoreLimits[],
  trialSize: number,
  trialCuts: readonly CutSize[],
  cuts: readonly CutConditions[],
  share: 0 | 1,
): Band | undefined {
  let [low, high] = [-Infinity, Infinity];
  trialCuts.forEach((cut, index) => {
    const window = windows[index];
    if (!window) return;
    const perToolSize = cutPerToolSize(
      cuts[cuts.length === 1 ? 0 : index]?.heat,
    );
    const sizeFor = (bore: number): number =>
      trialSize + (bore - cut.nominal) / perToolSize;
    low = Math.max(low, sizeFor(window.low + share * (cut.nominal - cut.low)));
    high = Math.min(
      high,
      sizeFor(window.high - share * (cut.high - cut.nominal)),
    );
  });
  return orderedRange(low, high);
}

function rankedReamer(
  journals: readonly WantingJournal[],
  windows: readonly BoreLimits[],
  reamer: ReamerToRank,
  index: number,
): RankedReamer | undefined {
  const setting =
    reamer.expands && settingOf(journals, reamer.expands, reamer.cuts);
  const size: ToolSize | undefined =
    setting === undefined
      ? reamer.size
      : { kind: "written", low: setting, high: setting };
  const cuts = size && cutsOf(size, reamer.cuts, journals.length);
  if (!cuts?.valid) return undefined;
  const landings = journals.flatMap((journal, at) => {
    const [cut, window] = [cuts.value[at], windows[at]];
    return cut && window ? [{ journal, cut, window }] : [];
  });
  const least = margin(landings);
  if (!least.valid) return undefined;
  const chance = chanceOfLanding(landings);
  return {
    index,
    setting,
    cuts: cuts.value,
    clearances: landings.map(({ journal, cut }) => ({
      low: cut.low - journal.greatest,
      high: cut.high - journal.least,
    })),
    margin: least.value,
    chance: chance.valid ? chance.value : undefined,
    serves: landings.every(
      ({ cut, window }) =>
        !isLess(cut.nominal, window.low) && !isLess(window.high, cut.nominal),
    ),
  };
}

/** The best setting within what the reamer expands over; its nearest end where the best lies outside. */
function settingOf(
  journals: readonly WantingJournal[],
  expands: Band,
  cuts: readonly CutConditions[],
): number | undefined {
  if (faultOfDiameters("the range of the reamer", expands) !== undefined)
    return undefined;
  const best = sizeToGrind(journals, cuts);
  return best.valid
    ? Math.min(Math.max(best.value.size, expands.low), expands.high)
    : undefined;
}

function windowsOf(journals: readonly WantingJournal[]): Answer<BoreLimits[]> {
  const windows: BoreLimits[] = [];
  for (const journal of journals) {
    const window = boreLimits(journal);
    if (!window.valid) return window;
    windows.push(window.value);
  }
  return windows.length === 0
    ? notValid("the line has no bore")
    : valid(windows);
}

function cutsOf(
  size: ToolSize,
  cuts: readonly CutConditions[],
  bores: number,
): Answer<CutSize[]> {
  if (cuts.length !== 1 && cuts.length !== bores)
    return notValid("the cuts are neither one for all nor one for each bore");
  const known = new Map<CutConditions, CutSize>();
  const all: CutSize[] = [];
  for (let index = 0; index < bores; index++) {
    const conditions = cuts[cuts.length === 1 ? 0 : index];
    if (!conditions) return notValid("a bore has no cut");
    const before = known.get(conditions);
    const cut = before
      ? valid(before)
      : cutSize(size, conditions.oversize, conditions.heat);
    if (!cut.valid) return cut;
    known.set(conditions, cut.value);
    all.push(cut.value);
  }
  return valid(all);
}

function better(one: RankedReamer, other: RankedReamer): number {
  const byRank = rankOf(one) - rankOf(other);
  if (byRank !== 0) return byRank;
  const byChance = millionths(other.chance) - millionths(one.chance);
  if (byChance !== 0) return byChance;
  const byDeviations =
    (other.margin.deviations ?? 0) - (one.margin.deviations ?? 0);
  return (
    byDeviations ||
    other.margin.metres - one.margin.metres ||
    one.index - other.index
  );
}

function rankOf({ serves, chance }: RankedReamer): number {
  if (!serves) return chance === undefined ? 4 : 3;
  if (chance === undefined) return 1;
  return millionths(GOOD_CHANCE) <= millionths(chance) ? 0 : 2;
}

function millionths(chance = 0): number {
  return Math.round(1e6 * chance);
}

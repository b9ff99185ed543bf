// What happened in one job of a made-up shop: its dates, every true size, every reading, and what went wrong with its record. How it is
// written down is text.ts's.
import { drawsFor, type Draws } from "./random.ts";
import {
  machineOf,
  MACHINES,
  REAMERS,
  REPEATS,
  SIZES,
  truthsOf,
  type Machine,
  type Sizes,
  type TrueJournal,
  type Truths,
} from "./truths.ts";

/** What is wrong with the record, on purpose: a reading of the front bore, or of its press, that nothing may be learned from. */
const FLAWS = [
  "damaged",
  "unsigned",
  "undated",
  "stray",
  "only-roughed",
  "press-unsigned",
] as const;
export type Flaw = (typeof FLAWS)[number];

/** Two readings at each of two places, m, as the gauge shows them. */
export interface TwoPlaces {
  readonly near: readonly number[];
  readonly far: readonly number[];
}

export interface EndValues {
  readonly end: "front" | "rear";
  readonly hole: readonly number[];
  /** With the second bore gauge; undefined where it was not used. */
  readonly holeAgain: readonly number[] | undefined;
  readonly od: readonly number[];
  readonly id: readonly number[];
  readonly pressed: readonly number[];
  readonly cut: TwoPlaces;
  readonly journal: TwoPlaces;
  /** With the second micrometer; undefined where it was not used. */
  readonly journalAgain: TwoPlaces | undefined;
  readonly journalRun: TwoPlaces;
  /** The fit as made is looser than wanted, and someone signed for it. */
  readonly isConceded: boolean;
}

/** Dates of a job's states, ISO 8601. */
export interface JobDates {
  readonly opened: string;
  readonly pressed: string;
  readonly reamed: string;
  readonly run: string;
}

export interface JobValues {
  readonly machine: Machine;
  readonly visit: number;
  readonly lot: string;
  readonly reamer: keyof typeof REAMERS;
  readonly dates: JobDates;
  /** Hours that the machine had run at each date, since the shop's first day. */
  readonly hours: Readonly<Record<keyof JobDates, number>>;
  readonly ends: readonly [EndValues, EndValues];
  readonly flaw: Flaw | undefined;
  readonly system: Machine["units"];
}

const FIRST_DAY = Date.UTC(2017, 0, 9);
const DAY = 86_400_000;
/** Days from one job of the shop to the next. */
const PACE = 45;

/** The day of a job's state, counted from the shop's first. */
function daysOf(
  seed: number,
  shop: number,
  within: number,
): Record<keyof JobDates, number> {
  const draws = drawsFor(seed, "days", shop, within);
  const opened = within * PACE + Math.floor(draws.between(0, 20));
  const pressed = opened + 1 + Math.floor(draws.between(0, 4));
  const reamed = pressed + 1 + Math.floor(draws.between(0, 3));
  // looked at again before the next visit
  const run = reamed + 120 + Math.floor(draws.between(0, 200));
  return { opened, pressed, reamed, run };
}

/** The reamer of a job: those in inches share two between them, since the larger is for tin bronze alone. */
function reamerOf(
  seed: number,
  shop: number,
  within: number,
): keyof typeof REAMERS {
  const machine = machineOf(seed, shop, within % MACHINES);
  if (machine.units === "mm") return "r-25";
  if (machine.material === "aluminium-bronze") return "r-8755";
  return drawsFor(seed, "reamer", shop, within).oneOf(["r-8755", "r-8756"]);
}

/** How many cuts a reamer had made before this job: each job cuts two bores. */
function cutsBefore(
  seed: number,
  shop: number,
  within: number,
  reamer: string,
): number {
  let cuts = 0;
  for (let before = 0; before < within; before++)
    if (reamerOf(seed, shop, before) === reamer) cuts += 2;
  return cuts;
}

export function jobValues(
  seed: number,
  shop: number,
  within: number,
): JobValues {
  const number = within % MACHINES;
  const visit = Math.floor(within / MACHINES);
  const machine = machineOf(seed, shop, number);
  const truths = truthsOf(seed, shop);
  const reamer = reamerOf(seed, shop, within);
  const days = daysOf(seed, shop, within);
  const draws = drawsFor(seed, "job", shop, within);
  const flaw = draws.chance(0.12) ? draws.oneOf(FLAWS) : undefined;
  const lot = lotIn(truths, machine, visit);
  const hours = (day: number): number =>
    Math.round(day * machine.journals[0].hoursADay);
  const end = (journal: TrueJournal, cutsDone: number): EndValues =>
    endValues({
      draws: drawsFor(seed, "end", shop, within, journal.journal),
      machine,
      journal,
      truths,
      lot,
      reamer,
      days,
      cutsDone,
      flaw: journal.journal === "front" ? flaw : undefined,
    });
  const done = cutsBefore(seed, shop, within, reamer);
  const [front, rear] = machine.journals;
  return {
    machine,
    visit,
    lot,
    reamer,
    dates: {
      opened: isoDay(days.opened),
      pressed: isoDay(days.pressed),
      reamed: isoDay(days.reamed),
      run: isoDay(days.run),
    },
    hours: {
      opened: hours(days.opened),
      pressed: hours(days.pressed),
      reamed: hours(days.reamed),
      run: hours(days.run),
    },
    // the line's rear bore is cut first
    ends: [end(front, done + 1), end(rear, done)],
    flaw,
    system: machine.units,
  };
}

function lotIn(truths: Truths, machine: Machine, visit: number): string {
  const lots = truths.closures.filter(
    ({ material, od }) =>
      material === machine.material && od === SIZES[machine.units].od,
  );
  return lots[visit % lots.length]?.lot ?? "";
}

interface EndPlan {
  readonly draws: Draws;
  readonly machine: Machine;
  readonly journal: TrueJournal;
  readonly truths: Truths;
  readonly lot: string;
  readonly reamer: keyof typeof REAMERS;
  readonly days: Record<keyof JobDates, number>;
  readonly cutsDone: number;
  readonly flaw: Flaw | undefined;
}

function endValues(plan: EndPlan): EndValues {
  const { draws, machine, journal, truths, days, flaw } = plan;
  const sizes = SIZES[machine.units];
  const repeats = REPEATS[machine.units];
  const read = (size: number, count = 2): readonly number[] =>
    Array.from({ length: count }, () => draws.normal(size, repeats));
  const twoPlaces = (size: number, more = 0): TwoPlaces => ({
    near: read(size + more),
    far: read(size + more),
  });

  const hole = sizes.hole + draws.between(-2.5e-6, 2.5e-6);
  const od = sizes.od + draws.between(-1e-6, 1e-6);
  const id = sizes.id + draws.between(-5e-6, 5e-6);
  const pressed =
    id - (od - hole) * lame(sizes, machine) * closureRatio(plan, draws);
  const cut = REAMERS[plan.reamer] + oversize(plan, draws);
  const at = (day: number): number =>
    journal.diameter - journal.perHour * journal.hoursADay * day;
  const again = secondGauge(truths, machine);
  const isReadAgain = draws.chance(0.6);
  const wrong = flaw === "press-unsigned" ? 0 : isWrongBy[flaw ?? "none"];
  const clearance = cut - at(days.opened);
  return {
    end: journal.journal,
    hole: read(hole),
    holeAgain: draws.chance(0.4) ? read(hole) : undefined,
    od: read(od),
    id: read(id),
    pressed: read(pressed + (flaw === "press-unsigned" ? 40e-6 : 0), 3),
    cut: twoPlaces(cut, wrong),
    journal: twoPlaces(at(days.opened)),
    journalAgain: isReadAgain
      ? twoPlaces(
          at(days.opened),
          again.bias + (again.perYear * days.opened) / 365.25,
        )
      : undefined,
    journalRun: twoPlaces(at(days.run)),
    isConceded:
      WANTED[machine.units][1] + 2e-6 < clearance && draws.chance(0.5),
  };
}

/** How far off the planted readings are, m: enough to spoil whatever is learned from one. */
const isWrongBy: Readonly<Record<Flaw | "none", number>> = {
  none: 0,
  damaged: 75e-6,
  unsigned: 75e-6,
  undated: 75e-6,
  stray: 75e-6,
  "only-roughed": -50e-6,
  "press-unsigned": 0,
};

/** Clearance that the jobs want, m. */
export const WANTED: Readonly<
  Record<Machine["units"], readonly [number, number]>
> = {
  inch: [0.0008 * 0.0254, 0.0016 * 0.0254],
  mm: [25e-6, 50e-6],
};

function secondGauge(
  { gauges }: Truths,
  { units }: Machine,
): { readonly bias: number; readonly perYear: number } {
  const name = units === "inch" ? "mic-2" : "mic-mm-2";
  return gauges.find(({ gauge }) => gauge === name) ?? { bias: 0, perYear: 0 };
}

function closureRatio({ truths, lot }: EndPlan, draws: Draws): number {
  const found = truths.closures.find((each) => each.lot === lot);
  return draws.normal(found?.ratio ?? 1, found?.spread ?? 0);
}

function oversize(
  { truths, machine, reamer, cutsDone }: EndPlan,
  draws: Draws,
): number {
  const found = truths.reamers.find(
    (each) => each.reamer === reamer && each.material === machine.material,
  );
  return draws.normal(
    (found?.oversize ?? 0) - (found?.perCut ?? 0) * cutsDone,
    found?.spread ?? 0,
  );
}

/** Elastic figures that the crib writes for its materials, and Lamé's rings from them. Written here, and not taken from the tool. */
export const ELASTIC = {
  "tin-bronze": { modulus: 100e9, poisson: 0.35 },
  "aluminium-bronze": { modulus: 110e9, poisson: 0.32 },
  "case-aluminium": { modulus: 72e9, poisson: 0.33 },
} as const;

function lame({ hole: d2, id: d1, boss: d3 }: Sizes, machine: Machine): number {
  const bush = ELASTIC[machine.material];
  const box = ELASTIC["case-aluminium"];
  const [inner, outer, boss] = [d1 * d1, d2 * d2, d3 * d3];
  // radial give of each ring per unit of pressure and radius of contact
  const giveOfBush =
    ((outer + inner) / (outer - inner) - bush.poisson) / bush.modulus;
  const giveOfBoss =
    ((boss + outer) / (boss - outer) + box.poisson) / box.modulus;
  const boreByPressure = (2 * d2 * d1) / ((outer - inner) * bush.modulus);
  return boreByPressure / (giveOfBush + giveOfBoss);
}

function isoDay(day: number): string {
  return new Date(FIRST_DAY + day * DAY).toISOString().slice(0, 10);
}

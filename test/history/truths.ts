// What is true in a made-up shop: its machines, how fast their journals wear, what its reamers really cut, how its bushes close, how its
// gauges are off. The records are written from these (job.ts), and what is learned from the records is held against them. All in SI.
import { drawsFor } from "./random.ts";

export const MACHINES = 12;
const VISITS = 5;
/** Records of one shop; a longer history is of several shops, each with its crib. */
export const RECORDS_A_SHOP = MACHINES * VISITS;

const THOU = 25.4e-6;
const UM = 1e-6;

export interface TrueReamer {
  readonly reamer: string;
  readonly material: string;
  /** What it cuts over the size that its crib says it was read at, on its first cut, m. */
  readonly oversize: number;
  /** What each cut of any material takes of that, m; 0 for one that doesn't wear. */
  readonly perCut: number;
  /** Standard deviation of one cut, reading it left out, m. */
  readonly spread: number;
}

export interface TrueClosure {
  readonly material: string;
  readonly construction: "solid";
  /** Nominal, m. */
  readonly od: number;
  readonly id: number;
  readonly lot: string;
  /** Closure over that of Lamé's rings. */
  readonly ratio: number;
  /** Standard deviation from bush to bush, reading it left out. */
  readonly spread: number;
  /** This lot closes more than the others of its size. */
  readonly isOdd: boolean;
}

export interface TrueGauges {
  readonly gauge: string;
  readonly against: string;
  /** What the first reads over the second on the shop's first day, m. */
  readonly bias: number;
  /** How that grows, m a year; 0 for gauges that don't drift. */
  readonly perYear: number;
}

export interface TrueJournal {
  readonly serial: string;
  readonly journal: "front" | "rear";
  /** Diameter on the shop's first day, m. */
  readonly diameter: number;
  /** What wears off it, m an hour; 0 for one that doesn't wear. */
  readonly perHour: number;
  /** The machine runs this many hours a day. */
  readonly hoursADay: number;
}

export interface Truths {
  readonly shop: number;
  /** Path of its crib. */
  readonly crib: string;
  readonly reamers: readonly TrueReamer[];
  readonly closures: readonly TrueClosure[];
  readonly gauges: readonly TrueGauges[];
  readonly journals: readonly TrueJournal[];
}

export interface Machine {
  readonly name: string;
  readonly serial: string;
  readonly units: "inch" | "mm";
  readonly material: "tin-bronze" | "aluminium-bronze";
  readonly journals: readonly [TrueJournal, TrueJournal];
}

/** A size of bush with all that is drawn with it, m. */
export interface Sizes {
  readonly hole: number;
  readonly od: number;
  readonly id: number;
  readonly boss: number;
  readonly length: number;
  readonly journal: number;
}

export const SIZES: Readonly<Record<Machine["units"], Sizes>> = {
  inch: {
    hole: 1000.2 * THOU,
    od: 1001.1 * THOU,
    id: 871.7 * THOU,
    boss: 1750 * THOU,
    length: 1250 * THOU,
    journal: 874.4 * THOU,
  },
  mm: {
    hole: 28_008 * UM,
    od: 28_036 * UM,
    id: 24_930 * UM,
    boss: 48_000 * UM,
    length: 32_000 * UM,
    journal: 24_975 * UM,
  },
};

/** The reamers of every shop: the size that the crib says each was read at, m. */
export const REAMERS = {
  "r-8755": 875.5 * THOU,
  "r-8756": 875.6 * THOU,
  "r-25": 25_012 * UM,
} as const satisfies Readonly<Record<string, number>>;

/** One reading of a micrometer or bore gauge repeats to this, m. */
export const REPEATS: Readonly<Record<Machine["units"], number>> = {
  inch: 0.02 * THOU,
  mm: 0.6 * UM,
};

export function shopFolder(shop: number): string {
  return `shop-${String(shop + 1).padStart(4, "0")}`;
}

export function machineOf(seed: number, shop: number, number: number): Machine {
  const draws = drawsFor(seed, "machine", shop, number);
  const units = number % 3 === 2 ? "mm" : "inch";
  const serial = `H${String(shop + 1)}-W${String(number + 1).padStart(2, "0")}`;
  const hoursADay = draws.between(2, 8);
  const journal = (name: TrueJournal["journal"]): TrueJournal => ({
    serial,
    journal: name,
    diameter: SIZES[units].journal + draws.normal(0, 0.05 * THOU),
    // half of the machines run on clean oil, and don't wear
    perHour:
      number % 2 === 0 ? 0 : draws.between(0.02 * THOU, 0.08 * THOU) / 1000,
    hoursADay,
  });
  return {
    name: `w${String(number + 1).padStart(2, "0")}`,
    serial,
    units,
    material: number % 4 === 1 ? "aluminium-bronze" : "tin-bronze",
    journals: [journal("front"), journal("rear")],
  };
}

/** Bushes are bought for a round of the machines: a lot is of one size and material. */
function lotOf(
  { units, material }: Pick<Machine, "units" | "material">,
  visit: number,
): string {
  return `${material === "tin-bronze" ? "T" : "A"}${units === "inch" ? "875" : "25"}-${String(visit + 1)}`;
}

export function truthsOf(seed: number, shop: number): Truths {
  const draws = drawsFor(seed, "truths", shop);
  const machines = Array.from({ length: MACHINES }, (_, number) =>
    machineOf(seed, shop, number),
  );
  return {
    shop,
    crib: `${shopFolder(shop)}/crib.thou`,
    reamers: trueReamers(draws),
    closures: trueClosures(draws),
    gauges: [
      {
        gauge: "mic-2",
        against: "mic-1",
        bias: draws.between(-0.04, 0.04) * THOU,
        perYear: draws.between(0.03, 0.06) * THOU * draws.oneOf([-1, 1]),
      },
      { gauge: "bore-2", against: "bore-1", bias: 0, perYear: 0 },
      {
        gauge: "mic-mm-2",
        against: "mic-mm",
        bias: draws.between(1.5, 3) * UM * draws.oneOf([-1, 1]),
        perYear: 0,
      },
    ],
    journals: machines.flatMap(({ journals }) => journals),
  };
}

type Drawn = ReturnType<typeof drawsFor>;

function trueReamers(draws: Drawn): readonly TrueReamer[] {
  return [
    {
      reamer: "r-8755",
      material: "tin-bronze",
      oversize: draws.between(0.1, 0.2) * THOU,
      perCut: 0,
      spread: 0.05 * THOU,
    },
    {
      reamer: "r-8755",
      material: "aluminium-bronze",
      oversize: draws.between(0.25, 0.35) * THOU,
      perCut: 0,
      spread: 0.06 * THOU,
    },
    {
      reamer: "r-8756",
      material: "tin-bronze",
      oversize: draws.between(0.25, 0.35) * THOU,
      perCut: draws.between(0.006, 0.01) * THOU,
      spread: 0.05 * THOU,
    },
    {
      reamer: "r-25",
      material: "tin-bronze",
      oversize: draws.between(3, 6) * UM,
      perCut: 0,
      spread: 1.3 * UM,
    },
    {
      reamer: "r-25",
      material: "aluminium-bronze",
      oversize: draws.between(7, 10) * UM,
      perCut: 0,
      spread: 1.5 * UM,
    },
  ];
}

function trueClosures(draws: Drawn): readonly TrueClosure[] {
  const odd = draws.oneOf([1, 2, 3]);
  return (["inch", "mm"] as const).flatMap((units) =>
    (["tin-bronze", "aluminium-bronze"] as const).flatMap((material) => {
      const usual = draws.between(0.94, 1.03);
      const more = draws.between(1.22, 1.32);
      return Array.from({ length: VISITS }, (_, visit): TrueClosure => {
        const isOdd =
          units === "inch" && material === "tin-bronze" && visit === odd;
        return {
          material,
          construction: "solid",
          od: SIZES[units].od,
          id: SIZES[units].id,
          lot: lotOf({ units, material }, visit),
          ratio: isOdd ? usual * more : usual,
          spread: 0.02,
          isOdd,
        };
      });
    }),
  );
}

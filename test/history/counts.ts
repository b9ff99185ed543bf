// What was said of made-up shops, counted against what is true of them and what is stated: finds, false alarms, and intervals that miss.
import { dayOf, type Along } from "../../server/records/trend.ts";
import { gaugeLesson, truthsHeld } from "./held.ts";
import { cutIn } from "./misread.ts";
import type { JudgedShop } from "./planted.ts";

export interface Counted {
  readonly what: string;
  /** How often it came, of how many that it could. */
  readonly came: number;
  readonly of: number;
  /** The share that is stated; undefined of finds, of which none is. */
  readonly stated: number | undefined;
}

interface Interval {
  readonly low: number;
  readonly high: number;
}

interface Case {
  readonly what: string;
  readonly stated?: number;
  /** Of each that it could come of, whether it did. */
  readonly came: (shop: JudgedShop) => readonly boolean[];
}

export function countsOf(shops: readonly JudgedShop[]): readonly Counted[] {
  return CASES.map(({ what, stated, came }) => ({
    what,
    ...cameOf(shops.flatMap(came)),
    stated,
  }));
}

/** @param shops each with one bore misread, and what that reamer cuts */
export function misreadCountsOf(
  shops: readonly { readonly shop: JudgedShop; readonly within: number }[],
): readonly Counted[] {
  const found = shops.map(({ shop: { lessons, records }, within }) =>
    lessons.leftOut.some(
      ({ why, file, entry }) =>
        why === "wild" &&
        file === records[within]?.path &&
        entry === "bore rear",
    ),
  );
  const missed = shops.flatMap(({ shop, within }) =>
    truthsHeld(shop)
      .filter(({ what }) => what === cutIn(shop.records[within]))
      .flatMap(({ truth, interval }) => misses(interval, truth)),
  );
  return [
    {
      what: "bores that were misread by a thou and signed, found",
      ...cameOf(found),
      stated: undefined,
    },
    {
      what: "true means of what their reamers cut, outside of their intervals all the same",
      ...cameOf(missed),
      stated: 0.05,
    },
  ];
}

function cameOf(all: readonly boolean[]): Pick<Counted, "came" | "of"> {
  return { came: all.filter((each) => each).length, of: all.length };
}

const misses = (
  interval: Interval | undefined,
  truth: number,
): readonly boolean[] =>
  interval === undefined ? [] : [truth < interval.low || interval.high < truth];

const FIRST_DAY = dayOf("2017-01-09");

function trendCases(along: Along): readonly Case[] {
  const name = along === "date" ? "over the years" : "over running hours";
  const ways = (
    { journals }: JudgedShop,
    isWorn: boolean,
    way: string,
  ): readonly boolean[] =>
    journals[along]
      .filter(({ truth }) => 0 < truth.perHour === isWorn)
      .map(({ series }) => series.runs.at(-1)?.rate?.way === way);
  return [
    {
      what: `journals that wear, found ${name}`,
      came: (shop) => ways(shop, true, "wears"),
    },
    {
      what: `steady journals said to wear, ${name}`,
      stated: 0.025,
      came: (shop) => ways(shop, false, "wears"),
    },
    {
      what: `steady journals said to go the other way, ${name}`,
      stated: 0.025,
      came: (shop) => ways(shop, false, "other way"),
    },
    {
      what: `true rates of journals outside of their intervals, ${name}`,
      stated: 0.05,
      came: ({ journals }) =>
        journals[along].flatMap(({ truth, series }) =>
          misses(
            series.runs.at(-1)?.rate?.interval,
            -truth.perHour * (along === "date" ? truth.hoursADay : 1),
          ),
        ),
    },
    {
      what: `true days or hours of the service limit outside of their intervals, ${name}`,
      stated: 0.05,
      came: ({ journals }) =>
        journals[along].flatMap(({ truth, series: { limit, reaching } }) => {
          if (
            limit === undefined ||
            reaching === undefined ||
            truth.perHour === 0
          )
            return [];
          const hours = (truth.diameter - limit) / truth.perHour;
          return misses(
            {
              low: reaching.earliest ?? -Infinity,
              high: reaching.latest ?? Infinity,
            },
            along === "hours" ? hours : FIRST_DAY + hours / truth.hoursADay,
          );
        }),
    },
  ];
}

function wornReamer({ truths, lessons }: JudgedShop): {
  readonly rate: number;
  readonly drift: Interval | undefined;
} {
  const truth = truths.reamers.find(({ perCut }) => 0 < perCut);
  const lesson = lessons.reamers.find(
    ({ reamer }) => reamer === `reamer ${truth?.reamer ?? ""}`,
  );
  return {
    rate: -(truth?.perCut ?? NaN),
    drift: lesson?.learned.drift?.interval,
  };
}

function driftingGauge({ truths, lessons }: JudgedShop): {
  readonly rate: number;
  readonly drift: Interval | undefined;
} {
  const truth = truths.gauges.find(({ perYear }) => perYear !== 0);
  return {
    rate: truth?.perYear ?? NaN,
    drift: gaugeLesson(lessons, truth?.gauge ?? "")?.learned.drift?.interval,
  };
}

const LEARNED: readonly Case[] = [
  {
    what: "what reamers cut, bushes close and gauges differ by: true means outside of their intervals",
    stated: 0.05,
    came: (shop) =>
      truthsHeld(shop).flatMap(({ truth, interval }) =>
        misses(interval, truth),
      ),
  },
  {
    what: "reamers that wear, found",
    came: (shop) => [wornReamer(shop).drift !== undefined],
  },
  {
    what: "their true wear a cut outside of its interval",
    stated: 0.05,
    came: (shop) => {
      const { rate, drift } = wornReamer(shop);
      return misses(drift, rate);
    },
  },
  {
    what: "steady reamers said to change",
    stated: 0.01,
    came: ({ truths, lessons }) =>
      lessons.reamers
        .filter(({ reamer }) =>
          truths.reamers.some(
            (truth) =>
              truth.perCut === 0 && `reamer ${truth.reamer}` === reamer,
          ),
        )
        .map(({ learned }) => learned.drift !== undefined),
  },
  {
    what: "lots that close more, found",
    came: ({ truths, lessons }) =>
      truths.closures
        .filter(({ isOdd }) => isOdd)
        .map((truth) => lessons.bushes.some(({ lot }) => lot === truth.lot)),
  },
  {
    what: "sizes of bushes of which another lot is said to",
    stated: 0.01,
    came: ({ truths, lessons }) => {
      const odd = truths.closures.find(({ isOdd }) => isOdd)?.lot;
      return lessons.bushes
        .filter(({ lot }) => lot === undefined)
        .map(({ material, od }) =>
          lessons.bushes.some(
            (other) =>
              other.lot !== undefined &&
              other.lot !== odd &&
              other.material === material &&
              Math.abs(other.od - od) < 1e-3,
          ),
        );
    },
  },
  {
    what: "gauges that drift, found",
    came: (shop) => [driftingGauge(shop).drift !== undefined],
  },
  {
    what: "their true drift outside of its interval",
    stated: 0.05,
    came: (shop) => {
      const { rate, drift } = driftingGauge(shop);
      return misses(drift, rate);
    },
  },
  {
    what: "steady gauges said to drift",
    stated: 0.01,
    came: ({ lessons }) =>
      lessons.gauges
        .filter(({ gauge }) => gauge !== "gauge mic-2")
        .map(({ learned }) => learned.drift !== undefined),
  },
  {
    what: "gauges that agree, said to be off",
    stated: 0.01,
    came: ({ lessons }) =>
      lessons.gauges
        .filter(({ gauge }) => gauge.startsWith("gauge bore"))
        .map(({ isOff }) => isOff),
  },
  {
    what: "lessons that left a clean reading out as wild",
    stated: 0.01,
    came: ({ lessons: { reamers, bushes, gauges, leftOut } }) => {
      const wild = leftOut.filter(({ why }) => why === "wild");
      const all = reamers.length + bushes.length + gauges.length;
      return Array.from({ length: all }, (_, index) => index < wild.length);
    },
  },
];

const CASES: readonly Case[] = [
  ...trendCases("date"),
  ...trendCases("hours"),
  ...LEARNED,
];

// Series of sizes in words: how fast a feature wears and when it is at its limit, with no more than is known.
import {
  fixed,
  showLength,
  showUncertainty,
  type System,
} from "../core/quantity/show.ts";
import type { Reaching } from "../core/trend/reaching.ts";
import {
  dateOfDay,
  LEAST_POINTS,
  type Along,
  type Rate,
  type Run,
  type Series,
} from "./trend.ts";
import { capitalised } from "../model/sentences.ts";
import { kindOf } from "../model/reference.ts";

/** What a rate is said over: of days a year, of hours a thousand. */
export const RATE_OVER: Readonly<
  Record<
    Along,
    { readonly span: number; readonly words: string; readonly unit: string }
  >
> = {
  date: { span: 365.25, words: "a year", unit: "m/a" },
  hours: { span: 1000, words: "per 1000 h", unit: "m/(1000 h)" },
};
const SMALL: Readonly<
  Record<System, { readonly unit: string; readonly metres: number }>
> = {
  inch: { unit: "thou", metres: 25.4e-6 },
  mm: { unit: "um", metres: 1e-6 },
};

/** "part layshaft, serial W-17: journal front", or the file where there is no serial. */
export function titleOf({ of, part, entry }: Series): string {
  return "serial" in of
    ? `${part === "" ? "part" : part}, serial ${of.serial}: ${entry}`
    : `${of.file}: ${entry}`;
}

/** "it wears 0.31 thou a year (0.25 to 0.37, 95 %)", or why no rate is said. One or two sentences. */
export function rateWords(series: Series, run: Run): readonly string[] {
  const { rate, points } = run;
  const days = new Set(
    points.filter(({ counts }) => counts).map(({ at }) => at),
  ).size;
  const [day, several] =
    series.along === "date"
      ? ["day with a reading", "days with readings"]
      : ["hour-meter reading", "hour-meter readings"];
  if (rate === undefined)
    return [
      days === 1
        ? `One ${day}: no rate yet.`
        : `${String(days)} ${several}${gaugeWords(run)}: a rate with its interval takes ${String(LEAST_POINTS)}.`,
    ];
  const noun = kindOf(series.entry) === "fit" ? "the clearance" : "it";
  const numbers = rateNumbers(
    rate,
    series,
    rate.way === "wears" ? series.towards : 1,
  );
  const of = `of ${String(days)} ${several}${gaugeWords(run)}`;
  switch (rate.way) {
    case "wears":
      return [
        `${capitalised(noun)} ${series.towards === 1 ? "grows" : "wears"} ${numbers}, ${of}.`,
      ];
    case "other way":
      return [
        `${capitalised(noun)} goes the other way, ${numbers}, ${of}: look at the gauge, or at what was done between.`,
      ];
    case "not known":
      return [
        `Cannot say yet whether ${noun} changes: ${numbers}, ${of}, which may be nothing at all.`,
      ];
  }
}

/** Gauges differ, so it is said which one the rate is of, where there are several. */
function gaugeWords({ points, gauge }: Run): string {
  const all = new Set(points.map((point) => point.gauge));
  if (all.size < 2) return "";
  return gauge === undefined || gauge === ""
    ? " by no gauge that is named"
    : ` with ${gauge}`;
}

/** What the points that are drawn open are; "" where none is. */
export function openPointWords({ runs }: Series): string {
  return runs.some(({ points }) => points.some(({ counts }) => !counts))
    ? "An open point is of another gauge, and not in the rate."
    : "";
}

/** Why runs after the first begin where they do, a sentence for each reason. */
export function anewWords({ runs }: Series): readonly string[] {
  const reasons = new Set(runs.flatMap(({ because }) => because ?? []));
  return [...reasons].map(
    (because) => `It begins anew where a gap is drawn: ${because}.`,
  );
}

/** When the limit is reached: a sentence; "" where there is no limit to reach. */
export function reachWords(series: Series): string {
  const { limit, limitIs, reaching, towards, runs, system } = series;
  const last = runs.at(-1);
  if (limit === undefined || limitIs === undefined || last === undefined)
    return "";
  const name = `${limitIs === "wanted" ? "the most that is wanted" : `the ${limitIs}`}, ${showLength(limit, system, last.points.at(-1)?.step)}`;
  const newest = last.points.at(-1);
  if (newest !== undefined && 0 < (newest.value - limit) * towards)
    return `It is past ${name}.`;
  if (reaching === undefined || last.rate === undefined) return "";
  const today = newest?.at ?? 0;
  const month = (at: number | undefined): string | undefined =>
    at === undefined
      ? undefined
      : series.along === "date"
        ? dateOfDay(at)?.slice(0, 7)
        : hoursWords(at, reaching);
  const first = month(reaching.earliest);
  const likely = month(reaching.likeliest);
  const end = month(reaching.latest);
  const isPast = reaching.earliest !== undefined && reaching.earliest < today;
  if (last.rate.way !== "wears" || likely === undefined)
    return first === undefined || isPast
      ? `When it is at ${name}, cannot be said yet.`
      : `When it is at ${name}, cannot be said yet; not before ${first} (95 %).`;
  if ((reaching.likeliest ?? Infinity) < today)
    return `By its line it is at ${name}, now; the newest reading is just short of it.`;
  const from = first === undefined || isPast ? "any time now" : first;
  return end === undefined
    ? `It is at ${name}, about ${likely}: not before ${from}, and no latest can be said yet (95 %).`
    : `It is at ${name}, about ${likely} (${from} to ${end}, 95 %), if it wears on as it did.`;
}

/** "24800 h": no finer than a tenth of what is not known of it. */
function hoursWords(hours: number, { earliest, latest }: Reaching): string {
  const known =
    earliest === undefined || latest === undefined
      ? Math.abs(hours) / 10
      : (latest - earliest) / 2;
  const step =
    10 ** Math.max(0, Math.floor(Math.log10(Math.max(known, 10))) - 1);
  return `${String(Math.round(hours / step) * step)} h`;
}

/** "0.31 thou a year (0.25 to 0.37, 95 %)", or "per 1000 h": to the first digit of half the interval. What wears is said without its sign. */
function rateNumbers(
  rate: Rate,
  { system, along }: Pick<Series, "system" | "along">,
  sign: -1 | 1,
): string {
  const { unit, metres } = SMALL[system];
  const { span, words } = RATE_OVER[along];
  const scaled = (slope: number): number => (slope * span) / metres;
  const [value, one, other] = [
    rate.slope,
    rate.interval.low,
    rate.interval.high,
  ].map((each) => sign * scaled(each)) as [number, number, number];
  const [low, high] = [Math.min(one, other), Math.max(one, other)];
  const wide = Math.max(high - low, 1e-9);
  const decimals = Math.min(6, Math.max(0, Math.ceil(-Math.log10(wide / 2))));
  const show = (each: number): string => fixed(each, decimals);
  return `${show(value)} ${unit} ${words} (${show(low)} to ${show(high)}, 95 %)`;
}

/** How sure one reading is, ± at 95 %, in the unit of the size beside it. "" where no gauge says. */
export function surenessWords(
  uncertainty: number | undefined,
  system: System,
): string {
  if (uncertainty === undefined) return "";
  return `±${showUncertainty(2 * uncertainty, system)}`;
}

/** Where there is no size to make a trend of: what to write first. */
export function nothingWords(along: Along): string {
  return along === "date"
    ? "No size with a day of its own was found: a trend takes `read … on DATE`, or the versions in git of a file that is named; of those in a folder with `--history`."
    : `No size was read on a day whose hours are written: a trend against hours takes what the hour meter showed on the day of each reading, \`hours 12400 h on DATE\` in the job, on ${String(LEAST_POINTS)} days at least.`;
}

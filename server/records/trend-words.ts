// Series of sizes in words: how fast a feature wears and when it is at its limit, with no more than is known.
import { fixed, significant, type System } from "../core/quantity/show.ts";
import { showLength } from "../core/quantity/show.ts";
import {
  dateOfDay,
  LEAST_POINTS,
  type Rate,
  type Run,
  type Series,
} from "./trend.ts";

const YEAR = 365.25;
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
    points.filter(({ counts }) => counts).map(({ day }) => day),
  ).size;
  if (rate === undefined)
    return [
      days === 1
        ? "One day with a reading: no rate yet."
        : `${String(days)} days with readings${gaugeWords(run)}: a rate with its interval takes ${String(LEAST_POINTS)}.`,
    ];
  const noun = series.entry.startsWith("fit ") ? "the clearance" : "it";
  const numbers = perYear(
    rate,
    series.system,
    rate.way === "wears" ? series.towards : 1,
  );
  const of = `of ${String(days)} days with readings${gaugeWords(run)}`;
  switch (rate.way) {
    case "wears":
      return [
        `${capital(noun)} ${series.towards === 1 ? "grows" : "wears"} ${numbers}, ${of}.`,
      ];
    case "other way":
      return [
        `${capital(noun)} goes the other way, ${numbers}, ${of}: look at the gauge, or at what was done between.`,
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
  const today = newest?.day ?? 0;
  const month = (day: number | undefined): string | undefined =>
    day === undefined ? undefined : dateOfDay(day)?.slice(0, 7);
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
  const from = first === undefined || isPast ? "any day now" : first;
  return end === undefined
    ? `It is at ${name}, about ${likely}: not before ${from}, and no latest month can be said yet (95 %).`
    : `It is at ${name}, about ${likely} (${from} to ${end}, 95 %), if it wears on as it did.`;
}

/** "0.31 thou a year (0.25 to 0.37, 95 %)": to the first digit of half the interval. What wears is said without its sign. */
function perYear(rate: Rate, system: System, sign: -1 | 1): string {
  const { unit, metres } = SMALL[system];
  const scaled = (perDay: number): number => (perDay * YEAR) / metres;
  const [value, one, other] = [
    rate.perDay,
    rate.interval.low,
    rate.interval.high,
  ].map((each) => sign * scaled(each)) as [number, number, number];
  const [low, high] = [Math.min(one, other), Math.max(one, other)];
  const wide = Math.max(high - low, 1e-9);
  const decimals = Math.min(6, Math.max(0, Math.ceil(-Math.log10(wide / 2))));
  const show = (each: number): string => fixed(each, decimals);
  return `${show(value)} ${unit} a year (${show(low)} to ${show(high)}, 95 %)`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** Of all readings the share that is worth saying: how sure one of them is, ±. "" where no gauge says. */
export function surenessWords(
  uncertainty: number | undefined,
  system: System,
): string {
  if (uncertainty === undefined) return "";
  const { unit, metres } = SMALL[system];
  return `±${significant((2 * uncertainty) / metres, 2)} ${unit}`;
}

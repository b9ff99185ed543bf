// Sizes over the years: points with what each reading may be off by, the line through them with its band, the limit. One panel a series.
import { heightAt } from "../core/learning/line-fit.ts";
import { showLength } from "../core/quantity/show.ts";
import { studentCoverage } from "../core/quantity/student.ts";
import {
  anewWords,
  openPointWords,
  rateWords,
  reachWords,
  titleOf,
} from "../records/trend-words.ts";
import { COVERAGE, type Run, type Series } from "../records/trend.ts";
import { inkOf, widthOf, type Ink, type PictureOptions } from "./ink.ts";
import { scale, spanOf, ticks, type Scale } from "./scale.ts";
import { daysOf, hoursOf } from "./trend-axis.ts";
import { limitOf, nearEnough } from "./trend-limit.ts";
import { keyWords, sideWords } from "./trend-key.ts";
import {
  about,
  bar,
  label,
  lengthOf,
  lettering,
  line,
  picture,
  SMALL,
  wrapped,
} from "./shapes.ts";
import { digits, element, together, type Markup } from "./svg.ts";

const EDGE = 8;
const PLOT = 170;
const LEADING = 15;

export interface TrendChartOptions extends PictureOptions {
  /** Whether title and sentences are drawn as well, and told to those who don't see the picture, or stand beside it. */
  readonly words?: "drawn" | "beside";
}

/** The pictures as one SVG, a panel below the other; a sentence where there is no series. */
export function trendChart(
  series: readonly Series[],
  options: TrendChartOptions,
): string {
  const ink = inkOf(options.theme);
  const width = widthOf(options);
  const hasWords = options.words !== "beside";
  let y = EDGE;
  const panels: Markup[] = [];
  for (const each of series) {
    const panel = panelOf(each, y, width, ink, hasWords);
    panels.push(panel.markup);
    y += panel.height + 18;
  }
  if (hasWords && 0 < series.length) {
    const key = wrapped(keyWords(series), width - 2 * EDGE, SMALL);
    panels.push(
      lettering(EDGE, y + 6, key, { size: SMALL, fill: ink.muted }, LEADING),
    );
    y += key.length * LEADING + 2;
  }
  const says =
    series.length === 0
      ? "No size with a day of its own was found."
      : series.map(titleOf).join("; ");
  return picture(
    { width, height: Math.max(y, 40) },
    says,
    ink,
    undefined,
    hasWords && 0 < series.length
      ? element(
          "desc",
          {},
          series.map((each) => `${titleOf(each)}. ${wordsOf(each)}`).join(" "),
        )
      : together(),
    options.theme === "paper"
      ? element("rect", {
          x: 0,
          y: 0,
          width,
          height: Math.max(y, 40),
          fill: ink.paper,
        })
      : together(),
    ...(series.length === 0
      ? [label(EDGE, 24, says, { fill: ink.text })]
      : panels),
  );
}

/** What a series comes to, as far as it is known. */
function wordsOf(series: Series): string {
  const run = series.runs.at(-1);
  return [
    ...(run === undefined ? [] : rateWords(series, run)),
    reachWords(series),
    openPointWords(series),
    ...anewWords(series),
  ]
    .filter((words) => words !== "")
    .join(" ");
}

function panelOf(
  series: Series,
  top: number,
  width: number,
  ink: Ink,
  hasWords: boolean,
): { readonly markup: Markup; readonly height: number } {
  const title = hasWords ? wrapped(titleOf(series), width - 2 * EDGE) : [];
  const points = series.runs.flatMap((run) => run.points);
  const words = hasWords
    ? wrapped(wordsOf(series), width - 2 * EDGE, SMALL)
    : [];
  const side = hasWords ? [sideWords(series)] : [];
  const plotTop = top + (title.length + side.length) * LEADING + 6;
  const bottom = plotTop + PLOT;
  const values = points.flatMap(({ value, uncertainty = 0 }) => [
    value - 2 * uncertainty,
    value + 2 * uncertainty,
  ]);
  const isNear = nearEnough(series, values);
  const span = spanOf(
    [
      ...values,
      ...(isNear && series.limit !== undefined ? [series.limit] : []),
    ],
    0.08,
    2e-6,
  );
  const unit = series.system === "inch" ? 0.0254 : 0.001;
  const axis = ticks(span, 5, unit);
  const names = axis.values.map((value) =>
    showLength(value, series.system, axis.step),
  );
  const left =
    EDGE + Math.max(...names.map((name) => lengthOf(name, SMALL)), 40) + 6;
  const days = points.map(({ at }) => at);
  const across = scale(spanOf(days, 0.04, 30), [left, width - EDGE - 4]);
  const up = scale(span, [bottom, plotTop]);
  const markup = about(
    undefined,
    titleOf(series),
    lettering(EDGE, top + 12, title, { fill: ink.text, bold: true }, LEADING),
    lettering(EDGE, top + title.length * LEADING + 12, side, {
      fill: ink.muted,
      size: SMALL,
    }),
    rules(axis.values, names, up, left, width, ink),
    line(left, bottom, width - EDGE, bottom, { stroke: ink.rule }),
    together(
      ...(series.along === "hours"
        ? hoursOf(across, bottom, ink)
        : daysOf(across, bottom, ink)),
    ),
    limitOf(series, isNear, up, left, width - EDGE, plotTop, ink),
    together(...series.runs.map((run) => runOf(run, across, up, span, ink))),
    lettering(
      EDGE,
      bottom + 36,
      words,
      { size: SMALL, fill: ink.text },
      LEADING,
    ),
  );
  return {
    markup,
    height: bottom + (hasWords ? 36 : 22) + words.length * LEADING - top,
  };
}

/** Round sizes at the side, each with its line across. */
function rules(
  values: readonly number[],
  names: readonly string[],
  up: Scale,
  left: number,
  width: number,
  ink: Ink,
): Markup {
  return together(
    ...values.map((value, index) =>
      together(
        line(left, up(value), width - EDGE, up(value), {
          stroke: ink.rule,
          width: 0.5,
        }),
        label(left - 6, up(value) + 4, names[index] ?? "", {
          anchor: "end",
          size: SMALL,
          fill: ink.muted,
        }),
      ),
    ),
  );
}

function runOf(
  run: Run,
  across: Scale,
  up: Scale,
  [low, high]: readonly [number, number],
  ink: Ink,
): Markup {
  const kept = (value: number): number => Math.min(high, Math.max(low, value));
  const points = run.points.map(
    ({ at, value, uncertainty, counts, date, hours, gauge }) =>
      about(
        undefined,
        `${date}${hours === undefined ? "" : `, ${String(hours)} h`}${gauge === "" ? "" : `, ${gauge}`}${counts ? "" : ", not in the rate"}`,
        uncertainty === undefined
          ? together()
          : bar(
              { x: across(at), y: up(value - 2 * uncertainty) },
              { x: across(at), y: up(value + 2 * uncertainty) },
              3,
              { stroke: ink.muted },
            ),
        element("circle", {
          cx: across(at),
          cy: up(value),
          r: 3.5,
          stroke: ink.journal,
          "stroke-width": 1.5,
          fill: counts ? ink.journal : ink.paper,
        }),
      ),
  );
  const { line: fit } = run;
  if (fit === undefined) return together(...points);
  const days = run.points.map(({ at }) => at);
  const [from, to] = [Math.min(...days), Math.max(...days)];
  const factor = studentCoverage(COVERAGE, fit.degreesOfFreedom);
  const reach = factor.valid ? factor.value : 0;
  const along = Array.from(
    { length: 25 },
    (_, index) => from + ((to - from) * index) / 24,
  );
  const edge = (side: -1 | 1): readonly string[] =>
    along.map((day) => {
      const { value, deviation } = heightAt(fit, day);
      return `${digits(across(day))} ${digits(up(kept(value + side * reach * deviation)))}`;
    });
  const band = `M${edge(1).join("L")}L${[...edge(-1)].reverse().join("L")}Z`;
  return together(
    element("path", {
      d: band,
      fill: ink.journal,
      "fill-opacity": 0.12,
      stroke: ink.journal,
      "stroke-width": 0.6,
      "stroke-dasharray": "2 3",
    }),
    line(
      across(from),
      up(kept(heightAt(fit, from).value)),
      across(to),
      up(kept(heightAt(fit, to).value)),
      { stroke: ink.journal, width: 1.5 },
    ),
    ...points,
  );
}

// A series as a page to read beside the record: its chart, its sentences, and what was read as a table for those who see no chart.
import { showLength } from "../core/quantity/show.ts";
import { el, row, type Markup } from "../markup/html.ts";
import {
  rateWords,
  reachWords,
  surenessWords,
  titleOf,
} from "./trend-words.ts";
import type { Along, Series } from "./trend.ts";

export interface TrendPage {
  readonly title: string;
  readonly along: string;
  readonly says: string;
  readonly html: string;
}

const ALONG: Readonly<Record<Along, string>> = {
  date: "over the years",
  hours: "over running hours",
};

/** `chart` is drawn of the same series; `notes` are whole sentences. */
export function trendPage(
  series: Series,
  chart: Markup,
  notes: readonly string[],
): TrendPage {
  const { along } = series;
  const last = series.runs.at(-1);
  const says = [
    ...(last === undefined ? [] : rateWords(series, last)),
    reachWords(series),
  ].filter((words) => words !== "");
  const title = titleOf(series);
  return {
    title,
    along: ALONG[along],
    says: says.join(" "),
    html: row(
      el("h1", {}, `${title}, ${ALONG[along]}`),
      ...says.map((sentence) => el("p", { class: "says" }, sentence)),
      el("figure", {}, chart),
      tableOf(series),
      ...series.runs.flatMap(({ because }) =>
        because === undefined
          ? []
          : [el("p", {}, `It begins anew where a gap is drawn: ${because}.`)],
      ),
      ...notes.map((note) => el("p", { class: "note" }, note)),
    ).markup,
  };
}

/** The same numbers to read, for those who see no chart. */
function tableOf(series: Series): Markup {
  const points = series.runs.flatMap((run) => run.points);
  const hasHours = points.some(({ hours }) => hours !== undefined);
  return el(
    "table",
    {},
    el("caption", {}, "What was read"),
    el(
      "tr",
      {},
      ...[
        "Day",
        ...(hasHours ? ["Hour meter"] : []),
        "Size",
        "Known to",
        "Gauge",
        "In the rate",
      ].map((head) => el("th", { scope: "col" }, head)),
    ),
    ...points.map((point) =>
      el(
        "tr",
        {},
        el(
          "td",
          {},
          `${point.date}${point.datedBy === "commit" ? `, the day of commit ${point.commit ?? ""}` : ""}`,
        ),
        hasHours
          ? el(
              "td",
              {},
              point.hours === undefined ? "" : `${String(point.hours)} h`,
            )
          : undefined,
        el("td", {}, showLength(point.value, series.system, point.step)),
        el("td", {}, surenessWords(point.uncertainty, series.system)),
        el("td", {}, point.gauge),
        el("td", {}, point.counts ? "yes" : "no, another gauge"),
      ),
    ),
  );
}

// A series as a page to read beside the record: its chart, its sentences, and what was read as a table for those who see no chart.
import { showLength } from "../core/quantity/show.ts";
import { el, row, type Markup } from "../markup/html.ts";
import {
  anewWords,
  openPointWords,
  rateWords,
  reachWords,
  surenessWords,
  titleOf,
} from "./trend-words.ts";
import type { Along, Run, Series, TrendPoint } from "./trend.ts";

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
      openPointWords(series) === ""
        ? undefined
        : el("p", {}, openPointWords(series)),
      el("div", { class: "wide" }, tableOf(series)),
      ...anewWords(series).map((sentence) => el("p", {}, sentence)),
      ...notes.map((note) => el("p", { class: "note" }, note)),
    ).markup,
  };
}

/** The same numbers to read, for those who see no chart; a column where there is something to stand in it. */
function tableOf(series: Series): Markup {
  const points = series.runs.flatMap((run) =>
    run.points.map((point) => [point, run] as const),
  );
  const columns = columnsOf(series).filter(
    ({ always, of }) =>
      always === true || points.some((each) => of(...each) !== ""),
  );
  const rowOf = (each: readonly [TrendPoint, Run]): Markup =>
    el("tr", {}, ...columns.map(({ of }) => el("td", {}, of(...each))));
  return el(
    "table",
    {},
    el("caption", {}, "What was read"),
    el(
      "tr",
      {},
      ...columns.map(({ head }) => el("th", { scope: "col" }, head)),
    ),
    ...points.map(rowOf),
  );
}

interface Column {
  readonly head: string;
  readonly always?: true;
  readonly of: (point: TrendPoint, run: Run) => string;
}

function columnsOf({ system, runs }: Series): readonly Column[] {
  const files = new Set(
    runs.flatMap(({ points }) => points.map(({ file }) => file)),
  );
  return [
    {
      head: "Day",
      always: true,
      of: ({ date, datedBy, commit = "" }) =>
        `${date}${datedBy === "commit" ? `, the day of commit ${commit}` : ""}`,
    },
    {
      head: "Hour meter",
      of: ({ hours }) => (hours === undefined ? "" : `${String(hours)} h`),
    },
    {
      head: "Size",
      always: true,
      of: ({ value, step }) => showLength(value, system, step),
    },
    {
      head: "Known to",
      of: ({ uncertainty }) => surenessWords(uncertainty, system),
    },
    { head: "Gauge", of: ({ gauge }) => gauge },
    { head: "Record", of: ({ file }) => (1 < files.size ? file : "") },
    {
      head: "In the rate",
      // what is in a rate that is not there yet is no news
      of: ({ counts }, { rate }) =>
        !counts ? "no, another gauge" : rate === undefined ? "" : "yes",
    },
  ];
}

// The answer to `thou/trend`: the sizes of a record over its versions in git and as it stands in the editor, each series as a chart with its
// sentences. What is made of them is server/records/'s; what a commit holds, the host's.
import type { CancellationToken } from "vscode-languageserver";
import { drawn } from "../markup/html.ts";
import type { OpenFile } from "../model/project.ts";
import { trendChart } from "../pictures/trend-chart.ts";
import type { Trended } from "../protocol/trend.ts";
import { pointsOnce } from "../records/points-once.ts";
import { pointsIn } from "../records/trend-points.ts";
import type { StatePoint } from "../records/trend-state.ts";
import { trendPage } from "../records/trend-page.ts";
import { seriesOf } from "../records/trend.ts";
import type { Arrivals } from "../records/undated.ts";
import { pastRecord } from "./past-record.ts";
import { pathOf } from "./paths.ts";
import { member } from "./settings.ts";
import { nameBeside } from "./sheet-answer.ts";

/** The states that a record stood in, as the host reads them; addresses are URIs. */
export type OpenPastStates = (uri: string) => Promise<{
  readonly states: readonly {
    readonly date: string;
    readonly commit: string;
    readonly uri: string;
    readonly read: (uri: string) => Promise<string | undefined>;
  }[];
  readonly notes: readonly string[];
}>;

export interface TrendSources {
  readonly open: (
    uri: string,
    token: CancellationToken,
  ) => Promise<OpenFile | undefined>;
  /** Undefined where there is no git to run, as in a browser. */
  readonly pastStates: OpenPastStates | undefined;
}

export async function trendAnswer(
  params: unknown,
  token: CancellationToken,
  sources: TrendSources,
): Promise<Trended> {
  const uri = member(params, "uri");
  if (typeof uri !== "string") return not("No record was named.");
  if (member(params, "isTrusted") !== true)
    return not(
      "This folder is not trusted, so no trend is shown: it is read from the versions of the record by git, and the settings of a repository can name programs that git runs.",
    );
  const now = await sources.open(uri, token);
  if (now === undefined)
    return not("The record is not there any more, so it has no trend.");
  const name = nameBeside(now.path, now.path);
  const arrivals: Arrivals = new Map();
  const states: (readonly StatePoint[])[] = [];
  const notes: string[] = [];
  if (sources.pastStates === undefined || !uri.startsWith("file:"))
    notes.push(
      `${name} is read as it lies: there is no git here to read its versions.`,
    );
  else
    try {
      const past = await sources.pastStates(uri);
      notes.push(...past.notes);
      for (const state of past.states) {
        if (token.isCancellationRequested) break;
        const open = await pastRecord(pathOf(state.uri), state.read);
        if (open === undefined)
          notes.push(
            `${name} at ${state.commit} can't be read, and is left out.`,
          );
        else
          states.push(
            pointsIn({ open, file: name, committed: state, arrivals }).points,
          );
      }
    } catch (error) {
      // a repository that lacks what it should have says so in a whole sentence
      if (!(error instanceof Error) || error.name !== "HistoryFault")
        throw error;
      notes.push(error.message);
    }
  const here = pointsIn({
    open: now,
    file: name,
    committed: undefined,
    arrivals,
  });
  states.push(here.points);
  if (0 < here.undated)
    notes.push(
      `Readings without a day that are in no commit, left out: ${String(here.undated)}. Write "on DATE" after them.`,
    );
  const once = pointsOnce(states);
  const shown = (["date", "hours"] as const).flatMap((along) =>
    seriesOf(once, along).map((series) =>
      trendPage(
        series,
        drawn(trendChart([series], { theme: "editor", width: 760 })),
        notes,
      ),
    ),
  );
  return shown.length === 0
    ? not(
        `${name} has no trend yet: no size in it has a day. Write the day after each reading, as in "read 0.8743 as run by AK on 2026-11-05"; three days with readings make a rate.`,
      )
    : { state: "found", series: shown };
}

function not(because: string): Trended {
  return { state: "not", because };
}

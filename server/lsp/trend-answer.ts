// The answer to `thou/trend`: the sizes of a record over its versions in git and as it stands in the editor, and of its parts in the other
// records that name their serials, each series as a chart with its sentences. What is made of them is server/records/'s; what a commit holds, the host's.
import type { CancellationToken } from "vscode-languageserver";
import { drawn } from "../markup/html.ts";
import type { OpenFile } from "../model/project.ts";
import { trendChart } from "../pictures/trend-chart.ts";
import { refsOfKind } from "../model/shop.ts";
import type { Trended } from "../protocol/trend.ts";
import { createGathering } from "../records/trend-gather.ts";
import { serialOf } from "../records/trend-state.ts";
import { trendPage } from "../records/trend-page.ts";
import { seriesOf } from "../records/trend.ts";
import { pastRecord } from "./past-record.ts";
import { pathOf } from "./paths.ts";
import { member } from "./settings.ts";
import { nameBeside } from "./sheet-answer.ts";

/** Of the chart, px: of a panel beside the record, so that its letters are not made smaller with it. */
const WIDTH = 520;

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
  /** Each record of the workspace but one, by its path, as it stands in the editor or lies. */
  readonly others: (
    path: string,
    token: CancellationToken,
  ) => AsyncIterable<OpenFile>;
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
  const gathering = createGathering();
  const record = gathering.record(name);
  if (sources.pastStates === undefined || !uri.startsWith("file:"))
    gathering.note(
      `${name} is read as it lies: there is no git here to read its versions.`,
    );
  else
    try {
      const past = await sources.pastStates(uri);
      past.notes.forEach(gathering.note);
      for (const state of past.states) {
        if (token.isCancellationRequested) break;
        const open = await pastRecord(pathOf(state.uri), state.read);
        if (open === undefined)
          record.leftOut(state.commit, "it can't be read.");
        else record.past(open, state);
      }
    } catch (error) {
      // a repository that lacks what it should have says so in a whole sentence
      if (!(error instanceof Error) || error.name !== "HistoryFault")
        throw error;
      gathering.note(error.message);
    }
  record.now(now);
  const serials = serialsIn(now);
  if (0 < serials.size)
    for await (const other of sources.others(now.path, token)) {
      // what is amiss in a record of other parts is no matter of this trend
      const isOfThese = [...serialsIn(other)].some((each) => serials.has(each));
      if (isOfThese)
        gathering.record(nameBeside(now.path, other.path)).now(other);
    }
  const points = gathering
    .points()
    .filter(
      ({ file, serial }) =>
        file === name || (serial !== undefined && serials.has(serial)),
    );
  const shown = (["date", "hours"] as const).flatMap((along) => {
    const notes = gathering.notesOn(points, along);
    return seriesOf(points, along).map((series) =>
      trendPage(
        series,
        drawn(
          trendChart([series], {
            theme: "editor",
            width: WIDTH,
            words: "beside",
          }),
        ),
        notes,
      ),
    );
  });
  return shown.length === 0
    ? not(
        `${name} has no trend yet: no size in it that is finished or has run has a day. Write the day after each such reading, as in "read 0.8743 as run by AK on 2026-11-05"; three days with readings make a rate.`,
      )
    : { state: "found", series: shown };
}

/** The serials of all parts that a record has or uses. */
function serialsIn({ shop }: OpenFile): ReadonlySet<string> {
  return new Set(
    refsOfKind(shop, "part").flatMap((part) => serialOf(shop, part) ?? []),
  );
}

function not(because: string): Trended {
  return { state: "not", because };
}

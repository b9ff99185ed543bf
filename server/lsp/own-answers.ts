// The answers to our own requests. What comes in has been through the editor, or comes from an editor that nobody has met: nothing of it
// is taken for granted.
import type { CancellationToken } from "vscode-languageserver";
import { benchOf } from "../ide/bench.ts";
import { overviewMore, overviewOf } from "../ide/overview.ts";
import type { OpenFile } from "../model/project.ts";
import type { OwnRequest, ResultOf } from "../protocol.ts";
import { pages } from "../rules/pages.ts";
import { compareAnswer, type CompareSources } from "./compare-answer.ts";
import type { GuideAnswers } from "./guide-answers.ts";
import { member, type Settings } from "./settings.ts";
import { sheetAnswer } from "./sheet-answer.ts";
import { trendAnswer, type TrendSources } from "./trend-answer.ts";

export type OwnAnswers = {
  readonly [N in OwnRequest]: (
    params: unknown,
    token: CancellationToken,
  ) => ResultOf<N> | Promise<ResultOf<N>>;
};

/** What the answers need of the session. */
export interface OwnSources
  extends
    Pick<CompareSources, "isThere" | "lastCommit">,
    Pick<TrendSources, "others" | "pastStates"> {
  /** A record worked out, with pauses where it is long; undefined where it is not there. */
  readonly open: (
    uri: string,
    token: CancellationToken,
  ) => Promise<OpenFile | undefined>;
  readonly settings: () => Settings;
  readonly uriOf: (path: string) => string;
  readonly guide: GuideAnswers;
  readonly today: () => string;
  /** Of the tool. */
  readonly version: string;
}

export function createOwnAnswers(sources: OwnSources): OwnAnswers {
  return {
    "thou/newJob": (params) => sources.guide.newJob(params),
    "thou/takingSetup": (params) => sources.guide.takingSetup(params),
    "thou/takingStep": (params) => sources.guide.takingStep(params),
    "thou/page": (params) => {
      const code = member(params, "code");
      const page =
        typeof code === "string" && Object.hasOwn(pages, code)
          ? pages[code]
          : undefined;
      return page === undefined ? null : { markdown: page };
    },
    "thou/sheet": (params, token) => sheetAnswer(params, token, sources),
    "thou/compare": (params, token) => compareAnswer(params, token, sources),
    "thou/trend": (params, token) => trendAnswer(params, token, sources),
    "thou/bench": async (params, token) => {
      const uri = member(params, "uri");
      if (typeof uri !== "string") return null;
      const [line, width] = [member(params, "line"), member(params, "width")];
      const open = await sources.open(uri, token);
      return open === undefined
        ? null
        : benchOf(
            open,
            wholeNumber(line, 0),
            Math.min(wholeNumber(width, 600), 4000),
            sources.uriOf,
          );
    },
    "thou/overview": async (params, token) => {
      const uri = member(params, "uri");
      if (typeof uri !== "string") return null;
      const open = await sources.open(uri, token);
      return open === undefined
        ? null
        : overviewOf(open, sources.settings().levels, sources.uriOf);
    },
    "thou/overviewMore": async (params, token) => {
      const [uri, ref] = [member(params, "uri"), member(params, "ref")];
      if (typeof uri !== "string" || typeof ref !== "string") return null;
      const open = await sources.open(uri, token);
      return open === undefined
        ? null
        : { lines: overviewMore(open, sources.settings().levels, ref) };
    },
  };
}

function wholeNumber(value: unknown, otherwise: number): number {
  return typeof value === "number" && Number.isSafeInteger(value) && 0 <= value
    ? value
    : otherwise;
}

// The reamers that could cut a line, as a table in words: what each cuts, the clearance it leaves in each bore, whether that is as wanted.
// For a page that shows it as a table, and for the picture of it (ranking-picture.ts).
import type { Band } from "../core/quantity/band.ts";
import { metresToTenths } from "../core/quantity/exact.ts";
import { showLength, showRange } from "../core/quantity/show.ts";
import { reamerOfLine } from "../model/evaluate/line-bores.ts";
import { reamerValue } from "../model/evaluate/reamer.ts";
import { settings } from "../model/evaluate/settings.ts";
import {
  rankingOf,
  windowOf,
  type Choice,
  type Demand,
  type Ranking,
} from "../model/evaluate/window.ts";
import { finer } from "../model/ranges.ts";
import type { Shop } from "../model/shop.ts";
import { toolWords, type ToolWords } from "../model/tool-words.ts";
import { notKnown, unreadText } from "./words.ts";

/** What a candidate leaves in one bore, against what is wanted there. */
export interface LeftInBore {
  /** The fit, or the bore where its own limits ask. */
  readonly ref: string;
  /** m: the clearance; for limits of a bore, over the lower one. */
  readonly low: number;
  readonly high: number;
  readonly wanted: Band;
  /** "0.00099 to 0.00136 in" */
  readonly text: string;
  /** "as wanted", "too tight" … */
  readonly words: string;
  readonly isIn: boolean;
}

export interface RankedTool {
  /** A reamer of the crib; undefined for one to buy or to have ground. */
  readonly ref: string | undefined;
  readonly name: string;
  readonly from: "crib" | "to buy" | "to have ground";
  /** The line names it. */
  readonly named: boolean;
  /** "0.87538 to 0.87560 in", predicted. */
  readonly cuts: string;
  readonly left: readonly LeftInBore[];
  readonly margin: string;
  /** "98 %", or "unknown". */
  readonly chance: string;
  /** "serves", "serves at its likeliest cut", "does not serve". */
  readonly verdict: string;
  readonly serves: boolean;
  readonly oversizeAssumed: boolean;
}

export interface RankingTable {
  readonly line: string;
  /** Best first: the crib's that are near, then sizes to buy, then the size to have ground. */
  readonly tools: readonly RankedTool[];
  /** What holds for all: why there are none, how many are far off, what is assumed. */
  readonly notes: readonly string[];
}

/** Further off than this, m, is no near miss. */
const NEAR = 0.5e-3;
const MOST_OF_CRIB = 6;
const MOST_TO_BUY = 3;

export function rankingTable(shop: Shop, line: string): RankingTable {
  const unread = unreadText(shop, line);
  const found = windowOf(shop, line);
  const ranking = rankingOf(shop, line);
  const none = (note: string): RankingTable => ({
    line,
    tools: [],
    notes: [note],
  });
  if (unread !== undefined) return none(unread);
  if (!found.known) return none(`The reamer to take is ${notKnown(found)}.`);
  if (!ranking.known)
    return none(`The reamer to take is ${notKnown(ranking)}.`);
  const { crib, toBuy, demands } = ranking.value;
  const near = crib
    .filter(({ ranked }) => ranked.serves || -NEAR < ranked.margin.metres)
    .slice(0, MOST_OF_CRIB);
  const tools = [
    ...near.map((choice) => toolOf(shop, line, demands, choice)),
    ...toBuy
      .slice(0, MOST_TO_BUY)
      .map((choice) => toolOf(shop, line, demands, choice)),
    ...groundTool(shop, ranking.value),
  ];
  const farOff = crib.length - near.length;
  return {
    line,
    tools,
    notes: [
      ...(found.value.window.open
        ? []
        : [
            `No one size gives every journal its wanted clearance: ${conflictWords(shop, demands, found.value.window.conflict)}.`,
          ]),
      ...(near.length === 0 ? ["The crib has no reamer near this size."] : []),
      ...(farOff === 0 || near.length === 0
        ? []
        : [
            `${String(farOff)} more of the crib ${farOff === 1 ? "is" : "are"} further off.`,
          ]),
      ...(tools.some((tool) => tool.oversizeAssumed)
        ? [
            "* oversize taken as zero, for none is written: a test cut in a scrap bush tells.",
          ]
        : []),
    ],
  };
}

function conflictWords(
  shop: Shop,
  demands: readonly Demand[],
  {
    needsLarger,
    needsSmaller,
    by,
  }: {
    readonly needsLarger: number;
    readonly needsSmaller: number;
    readonly by: number;
  },
): string {
  const { system } = settings(shop);
  const name = (index: number): string =>
    demands[index]?.fit ?? demands[index]?.bore ?? "";
  const far = showLength(by, system, demands[needsLarger]?.step);
  return needsLarger === needsSmaller
    ? `the journal of ${name(needsLarger)} differs by ${far} more than that clearance is wide`
    : `${name(needsLarger)} needs a larger bore than ${name(needsSmaller)} bears, by ${far}`;
}

function toolOf(
  shop: Shop,
  line: string,
  demands: readonly Demand[],
  choice: Choice,
): RankedTool {
  const words = toolWords(shop, demands, choice);
  const { ranked, reamer } = choice;
  const own = reamer === undefined ? undefined : reamerValue(shop, reamer);
  const toolStep = own?.known === true ? own.value.step : undefined;
  const left = demands.flatMap((demand, index) => {
    const range = ranked.clearances[index];
    return range === undefined ? [] : [leftIn(shop, demand, range, toolStep)];
  });
  const named = reamerOfLine(shop, line);
  return {
    ref: reamer,
    name: words.name,
    from: reamer === undefined ? "to buy" : "crib",
    named: reamer !== undefined && named.known && named.value === reamer,
    cuts: words.cuts,
    left,
    margin: words.margin,
    chance: words.chance === "" ? "unknown" : words.chance,
    verdict: VERDICTS[words.serves],
    serves: words.serves !== "no",
    oversizeAssumed: words.oversizeAssumed,
  };
}

function groundTool(
  shop: Shop,
  { toGrind, demands }: Ranking,
): readonly RankedTool[] {
  if (toGrind === undefined) return [];
  const { system } = settings(shop);
  const step = demands.reduce<number | undefined>(
    (least, each) => finer(least, each.step),
    undefined,
  );
  const left = demands.flatMap((demand, index) => {
    const cut = toGrind.cuts[index];
    return cut === undefined
      ? []
      : [
          leftIn(shop, demand, {
            low: cut.low - demand.greatest,
            high: cut.high - demand.least,
          }),
        ];
  });
  const [cut] = toGrind.cuts;
  return [
    {
      ref: undefined,
      name: `ground to ${showLength(toGrind.size, system, step)}`,
      from: "to have ground",
      named: false,
      cuts: cut === undefined ? "" : showRange(cut.low, cut.high, system, step),
      left,
      margin:
        toGrind.limits === undefined
          ? "none to spare"
          : `the grinder has ${showRange(toGrind.limits.low, toGrind.limits.high, system, step)}`,
      chance: "unknown",
      verdict:
        VERDICTS[
          left.every((each) => each.isIn) ? "yes" : "at its likeliest cut"
        ],
      serves: true,
      oversizeAssumed: toGrind.cuts.some((each) => each.oversizeAssumed),
    },
  ];
}

const VERDICTS: Readonly<Record<ToolWords["serves"], string>> = {
  yes: "serves",
  "at its likeliest cut": "serves at its likeliest cut",
  no: "does not serve",
};

function leftIn(
  shop: Shop,
  demand: Demand,
  { low, high }: Band,
  toolStep?: number,
): LeftInBore {
  const { system } = settings(shop);
  const [from, to, least, most] = [
    low,
    high,
    demand.wanted.low,
    demand.wanted.high,
  ].map(metresToTenths) as [number, number, number, number]; // four in, four out
  const words =
    least <= from && to <= most
      ? "as wanted"
      : to < least
        ? "too tight"
        : most < from
          ? "too loose"
          : from < least && most < to
            ? "may be too tight or too loose"
            : from < least
              ? "may be too tight"
              : "may be too loose";
  return {
    ref: demand.fit ?? demand.bore,
    low,
    high,
    wanted: demand.wanted,
    text: showRange(low, high, system, finer(demand.step, toolStep)),
    words,
    isIn: words === "as wanted",
  };
}

// What a line asks of its reamer: the window, the crib's reamers in order, sizes to buy and to have ground; or the conflict and the ways out.
import { showLength, showRange, type System } from "../core/quantity/show.ts";
import type { Conflict } from "../core/line/window-conflict.ts";
import { settings } from "../model/evaluate/settings.ts";
import {
  rankingOf,
  windowOf,
  type Demand,
  type Ranking,
} from "../model/evaluate/window.ts";
import { finer } from "../model/ranges.ts";
import type { Shop } from "../model/shop.ts";
import { fitsAsking, toolWords, type ToolWords } from "../model/tool-words.ts";
import { neededText } from "../model/known.ts";
import { blocks, escaped, list, sentence, table } from "../markup/markdown.ts";

/** The whole hover of a line below its title. */
export function lineBody(shop: Shop, ref: string): string {
  const found = windowOf(shop, ref);
  if (!found.known) {
    if (found.because !== undefined)
      return `Not valid here, because ${sentence(found.because)}.`;
    const text = neededText(found.needs);
    return text === ""
      ? ""
      : `Bore sizes that suit: unknown; ${sentence(text)}.`;
  }
  const { demands, window } = found.value;
  const { system } = settings(shop);
  const step = demands.reduce<number | undefined>(
    (least, demand) => finer(least, demand.step),
    undefined,
  );
  const predicted = demands.some((demand) => demand.status === "predicted")
    ? "predicted: not every journal is measured"
    : "measured";
  const asked = demands.map((demand, index) => {
    const each = window.each[index];
    const range =
      each === undefined || each.high < each.low
        ? "no one size: its journal differs by more than the wanted clearance is wide"
        : showRange(each.low, each.high, system, step);
    return [
      demand.fit ?? `limits of ${demand.bore}`,
      demand.journal === undefined
        ? ""
        : showRange(demand.wanted.low, demand.wanted.high, system, demand.step),
      range,
    ];
  });
  const askedTable = table(["asked by", "clearance wanted", "bore"], asked);
  if (!window.open)
    return blocks(
      `**No one size suits the line** (${predicted}).`,
      askedTable,
      waysOut(demands, window.conflict, system, step),
    );
  const { low, high } = window.window;
  return blocks(
    `Bore sizes that suit every journal: **${showRange(low, high, system, step)}** (${predicted}).`,
    askedTable,
    rankingBody(shop, ref),
  );
}

/** A reamer further off than this, m, is no near miss. */
const NEAR = 0.5e-3;
const MOST_TO_BUY = 5;

function rankingBody(shop: Shop, ref: string): string {
  const found = rankingOf(shop, ref);
  if (!found.known) return sentence(neededText(found.needs));
  const { demands, crib, toBuy } = found.value;
  const ofCrib = crib
    .filter(({ ranked }) => ranked.serves || -NEAR < ranked.margin.metres)
    .map((choice) => toolWords(shop, demands, choice));
  const bought = toBuy
    .slice(0, MOST_TO_BUY)
    .map((choice) => toolWords(shop, demands, choice));
  const farOff = crib.length - ofCrib.length;
  return blocks(
    ofCrib.length === 0
      ? "The crib has no reamer near this size."
      : rankingTable("reamer of the crib", demands, ofCrib),
    ofCrib.length === 0 || farOff === 0
      ? ""
      : `${String(farOff)} more of the crib ${farOff === 1 ? "is" : "are"} far off.`,
    bought.length === 0
      ? "No size to buy serves."
      : rankingTable("to buy", demands, bought),
    groundText(shop, found.value),
    [...ofCrib, ...bought].some((each) => each.oversizeAssumed)
      ? "\\* oversize taken as zero: none is written for this material. A test cut in a scrap bush tells. Until then the chance counts the tool's own tolerance alone."
      : "",
  );
}

function rankingTable(
  head: string,
  demands: readonly Demand[],
  tools: readonly ToolWords[],
): string {
  const fits = fitsAsking(demands);
  return table(
    [
      head,
      "cuts (predicted)",
      ...fits.map((fit) => `clearance of ${fit}`),
      "margin",
      "chance",
      "serves",
    ],
    tools.map((tool) => [
      escaped(tool.name) + (tool.oversizeAssumed ? " \\*" : ""),
      tool.cuts,
      ...tool.clearances,
      tool.margin,
      tool.chance === "" ? "unknown" : tool.chance,
      tool.serves === "no" ? "**no**" : tool.serves,
    ]),
  );
}

function groundText(shop: Shop, { toGrind }: Ranking): string {
  if (toGrind === undefined) return "";
  const { system } = settings(shop);
  const { size, limits } = toGrind;
  return limits === undefined
    ? `To have ground: ${showLength(size, system)}; no size keeps all that its cuts spread inside.`
    : `To have ground: ${showLength(size, system)}; ${showRange(limits.low, limits.high, system)} does.`;
}

/** The conflict between two journals, and each way out with its numbers. */
function waysOut(
  demands: readonly Demand[],
  conflict: Conflict,
  system: System,
  step: number | undefined,
): string {
  const {
    needsLarger,
    needsSmaller,
    by,
    reamers,
    sizeDown,
    accept,
    unservable,
  } = conflict;
  const named = (index: number): string =>
    demands[index]?.journal ?? `the limits of ${demands[index]?.bore ?? ""}`;
  const length = (metres: number): string => showLength(metres, system, step);
  const range = (low: number, high: number): string =>
    showRange(low, high, system, step);
  const pair = [...new Set([needsLarger, needsSmaller])];
  const ways: string[] = [];
  if (1 < reamers.length && unservable.length === 0)
    ways.push(
      `Take ${String(reamers.length)} reamers: ${reamers
        .map(
          ({ journals, window }) =>
            `${range(window.low, window.high)} for ${journals.map(named).join(" and ")}`,
        )
        .join("; ")}.`,
    );
  const down = (sizeDown ?? []).filter(
    ({ journal }) => demands[journal]?.journal !== undefined,
  );
  if (0 < down.length)
    ways.push(
      `Size down ${down.map((each) => `${named(each.journal)} by ${length(each.by)} or more`).join(", ")}.`,
    );
  ways.push(
    `Accept what ${length(accept.size)} gives: ${pair
      .map((index) => {
        const clearance = accept.clearances[index];
        return `${clearance === undefined ? "" : range(clearance.low, clearance.high)} at ${named(index)}`;
      })
      .join(", ")}; ${length(accept.beyond)} past what is wanted.`,
  );
  const [one, two] = pair;
  return blocks(
    two === undefined
      ? `${named(one ?? 0)} can't have what it wants at both ends: it lacks ${length(by)}.`
      : `${named(one ?? 0)} and ${named(two)} conflict by ${length(by)}. Ways out:`,
    list(ways),
  );
}

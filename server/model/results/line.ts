// Results of a line: the window of bore sizes, and each reamer that could serve.
import { GOOD_CHANCE } from "../../core/line/chance.ts";
import { fixed, showLength, showRange } from "../../core/quantity/show.ts";
import { showChance } from "../../core/quantity/show-running.ts";
import { oversizeNote } from "../evaluate/reamer.ts";
import { settings } from "../evaluate/settings.ts";
import { cuttingSketches } from "./cutting.ts";
import {
  cribRankingOf,
  rankingOf,
  windowOf,
  type Choice,
} from "../evaluate/window.ts";
import {
  numberResult,
  sketch,
  unknownResult,
  type Sketch,
} from "../make-result.ts";
import { unknown, need } from "../known.ts";
import { finest } from "../ranges.ts";
import type { Result } from "../result.ts";
import type { Shop } from "../shop.ts";

export function lineSketches(shop: Shop, ref: string): readonly Sketch[] {
  const window = windowOf(shop, ref);
  return [
    sketch("reamer-window", window, () => windowResult(shop, ref, window)),
    sketch("cut-size", undefined, () => reamerResults(shop, ref)),
    ...cuttingSketches(shop, ref),
  ];
}

function windowResult(
  shop: Shop,
  ref: string,
  found: ReturnType<typeof windowOf>,
): Result {
  const { system } = settings(shop);
  const where = { entry: ref, kind: "reamer-window" };
  if (!found.known) return unknownResult(where, "m", found);
  const { demands, window } = found.value;
  const predicted = demands.some((demand) => demand.status === "predicted");
  const step = finest(demands);
  const named = (index: number): string => {
    const { fit, bore } = demands[index] ?? demands[0];
    return fit ?? bore;
  };
  if (!window.open) {
    const { needsLarger, needsSmaller, by } = window.conflict;
    const text =
      needsLarger === needsSmaller
        ? `one size that suits ${named(needsLarger)} at both ends: its journal differs by ${showLength(by, system, step)} more than the wanted clearance is wide`
        : `one size for ${named(needsLarger)} and ${named(needsSmaller)}: they conflict by ${showLength(by, system, step)}`;
    return unknownResult(where, "m", unknown(need(ref, "ream", text)));
  }
  const { low, high } = window.window;
  return numberResult(
    where,
    "m",
    { low, nominal: (low + high) / 2, high },
    {
      status: predicted ? "predicted" : "measured",
      text: showRange(low, high, system, step),
      step,
      working: demands.map((demand, index) => ({
        formula:
          demand.fit === undefined
            ? `limits of ${demand.bore}`
            : `${demand.fit}: largest journal + least wanted, to smallest journal + most wanted`,
        with: showRange(
          window.each[index]?.low ?? low,
          window.each[index]?.high ?? high,
          system,
          step,
        ),
        source: "",
      })),
    },
  );
}

function reamerResults(shop: Shop, ref: string): readonly Result[] {
  const found = rankingOf(shop, ref);
  if (!found.known) return [];
  const { crib, toBuy, demands } = found.value;
  const step = finest(demands);
  return [...crib.filter((choice) => choice.ranked.serves), ...toBuy].flatMap(
    (choice) => choiceResults(shop, ref, choice, step, demands[0].bore),
  );
}

/** The tool that the first of these results is of; the sizes to buy are not ranked for it where a reamer of the crib serves. */
export function bestTool(
  shop: Shop,
  ref: string,
): { readonly name: string; readonly doubt: string } | undefined {
  const inCrib = cribRankingOf(shop, ref);
  if (!inCrib.known) return undefined;
  const serving = inCrib.value.crib.find((choice) => choice.ranked.serves);
  if (serving !== undefined) return named(serving);
  const ranking = rankingOf(shop, ref);
  const [toBuy] = ranking.known ? ranking.value.toBuy : [];
  return toBuy === undefined ? undefined : named(toBuy);
}

function named(choice: Choice): {
  readonly name: string;
  readonly doubt: string;
} {
  const { chance } = choice.ranked;
  return {
    name: choiceName(choice),
    doubt:
      chance === undefined || GOOD_CHANCE <= chance
        ? ""
        : `, chance ${showChance(chance)}`,
  };
}

export function choiceName({ reamer, toBuy }: Choice): string {
  if (reamer !== undefined) return reamer;
  if (toBuy === undefined) return "";
  const { designation, series } = toBuy;
  if (series === "fraction") return `${designation} in`;
  if (series === "number") return `no ${designation}`;
  if (series === "letter") return `letter ${designation}`;
  return `${designation} mm`;
}

function choiceResults(
  shop: Shop,
  ref: string,
  choice: Choice,
  step: number | undefined,
  bore: string,
): readonly Result[] {
  const [cut] = choice.ranked.cuts;
  return cut === undefined
    ? []
    : [
        cutResult(shop, ref, choice, cut, step, bore),
        chanceResult(ref, choice),
      ];
}

function cutResult(
  shop: Shop,
  ref: string,
  choice: Choice,
  cut: Choice["ranked"]["cuts"][number],
  step: number | undefined,
  bore: string,
): Result {
  const { system } = settings(shop);
  const { setting } = choice.ranked;
  const cuts = showRange(cut.low, cut.high, system, step);
  const note = oversizeNote(shop, choice.reamer, bore);
  const where = { entry: ref, kind: "cut-size", of: choiceName(choice) };
  return numberResult(where, "m", cut, {
    status: "predicted",
    text:
      setting === undefined
        ? cuts
        : `${cuts}, set to ${showLength(setting, system, step)}`,
    step,
    working: [
      {
        formula: "cut = reamer + oversize, brought to 20 °C",
        with: note === "" ? cuts : `${cuts}; ${note}`,
        source: "",
      },
    ],
  });
}

function chanceResult(ref: string, choice: Choice): Result {
  const { chance, margin } = choice.ranked;
  const of = choiceName(choice);
  const where = { entry: ref, kind: "chance", of };
  if (chance === undefined) {
    const spread = `the spread of what ${of} cuts`;
    return unknownResult(
      where,
      "1",
      unknown(need(choice.reamer ?? ref, "oversize", spread)),
    );
  }
  return numberResult(
    where,
    "1",
    { low: chance, nominal: chance, high: chance },
    {
      status: "predicted",
      text: showChance(chance),
      working: [
        {
          formula: "chance that every bore lands in its window",
          with: `margin ${fixed(margin.deviations ?? 0, 1)} standard deviations`,
          source: "",
        },
      ],
    },
  );
}

// The results of each entry, in the order that a person reads them.
import {
  fixed,
  showLength,
  showRange,
  significant,
} from "../core/quantity/show.ts";
import type { EntryKind } from "../../grammar/vocabulary.ts";
import { clearance, clearanceVerdict } from "./evaluate/fit.ts";
import { boreSize } from "./evaluate/bore.ts";
import { gateOf } from "./evaluate/gate.ts";
import { orderOf } from "./evaluate/order.ts";
import { settings } from "./evaluate/settings.ts";
import {
  judgeEstimate,
  sizeOf,
  sizeVerdict,
  type Size,
} from "./evaluate/size.ts";
import { rankingOf, windowOf, type Choice } from "./evaluate/window.ts";
import { valueIn } from "./entry.ts";
import { lengthResult, numberResult, unknownResult } from "./make-result.ts";
import { unknown, need, type Known } from "./known.ts";
import type { Result } from "./result.ts";
import { entryOf, query, type Shop } from "./shop.ts";

const OF_KIND: Readonly<
  Partial<Record<EntryKind, (shop: Shop, ref: string) => readonly Result[]>>
> = {
  journal: featureResults,
  hole: featureResults,
  bore: featureResults,
  fit: fitResults,
  line: lineResults,
  step: stepResults,
};

/** All results of an entry; none for kinds that compute nothing. */
export const resultsOf = query<readonly Result[]>("results", (shop, ref) => {
  // a reference begins with its kind
  const kind = ref.slice(0, ref.indexOf(" ")) as EntryKind;
  return OF_KIND[kind]?.(shop, ref) ?? [];
});

function featureResults(shop: Shop, ref: string): readonly Result[] {
  const { system } = settings(shop, "job");
  const size: Known<Size> = ref.startsWith("bore ")
    ? boreSize(shop, ref)
    : sizeOf(shop, ref);
  if (!size.known)
    return [unknownResult({ entry: ref, kind: "size" }, "m", size)];
  const { outOfRound, taper, budget, budgetNeeds, step } = size.value;
  const results: Result[] = [
    lengthResult(
      { entry: ref, kind: "size" },
      system,
      size.value,
      verdictOfSize(shop, ref, size.value),
    ),
  ];
  if (outOfRound !== undefined)
    results.push(
      oneLength(
        ref,
        "out-of-round",
        outOfRound,
        shop,
        step,
        "largest − smallest diameter at one place (two-point; not roundness by ISO 12181)",
      ),
    );
  if (taper !== undefined)
    results.push(
      oneLength(
        ref,
        "taper",
        taper.difference,
        shop,
        step,
        "largest − smallest mean of the places",
      ),
    );
  if (size.value.status !== "measured") return results;
  if (budget === undefined) {
    results.push(
      unknownResult(
        { entry: ref, kind: "uncertainty" },
        "m",
        unknown(...budgetNeeds),
      ),
    );
    return results;
  }
  const U = budget.expanded;
  results.push(
    numberResult(
      { entry: ref, kind: "uncertainty" },
      "m",
      { low: U, nominal: U, high: U },
      {
        status: "measured",
        text: `± ${showLength(U, system, U / 10)} (95 %)`,
        working: budget.rows.map((row) => ({
          formula: `${row.name} (${row.distribution})`,
          with: showLength(row.contribution, system, U / 10),
          source: "JCGM 100:2008 (GUM)",
        })),
      },
    ),
  );
  return results;
}

function verdictOfSize(shop: Shop, ref: string, size: Size): Result["verdict"] {
  if (size.from === "readings")
    return sizeVerdict(shop, ref)?.verdict ?? "none";
  const limits = valueIn(entryOf(shop, ref), "LimitsFact");
  if (limits === undefined || size.from === "limits") return "none";
  return judgeEstimate(shop, size, limits, undefined).verdict;
}

function oneLength(
  ref: string,
  kind: string,
  value: number,
  shop: Shop,
  step: number | undefined,
  formula: string,
): Result {
  const { system } = settings(shop, "job");
  return numberResult(
    { entry: ref, kind },
    "m",
    { low: value, nominal: value, high: value },
    {
      status: "measured",
      text: showLength(value, system, step),
      working: [
        {
          formula,
          with: showLength(value, system, step),
          source: "common practice, no source",
        },
      ],
    },
  );
}

function fitResults(shop: Shop, ref: string): readonly Result[] {
  const { system } = settings(shop, "job");
  const found = clearance(shop, ref);
  if (!found.known)
    return [unknownResult({ entry: ref, kind: "clearance" }, "m", found)];
  return [
    lengthResult(
      { entry: ref, kind: "clearance" },
      system,
      found.value,
      clearanceVerdict(shop, ref)?.verdict,
    ),
  ];
}

function lineResults(shop: Shop, ref: string): readonly Result[] {
  return [windowResult(shop, ref), ...reamerResults(shop, ref)];
}

function windowResult(shop: Shop, ref: string): Result {
  const { system } = settings(shop, "job");
  const where = { entry: ref, kind: "reamer-window" };
  const found = windowOf(shop, ref);
  if (!found.known) return unknownResult(where, "m", found);
  const { demands, window } = found.value;
  const predicted = demands.some((demand) => demand.status === "predicted");
  const steps = demands
    .map((demand) => demand.step)
    .filter((step) => step !== undefined);
  const step = steps.length === 0 ? undefined : Math.min(...steps);
  const named = (index: number): string =>
    demands[index]?.fit ?? demands[index]?.bore ?? "";
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
  const steps = demands
    .map((demand) => demand.step)
    .filter((each) => each !== undefined);
  const step = steps.length === 0 ? undefined : Math.min(...steps);
  return [...crib.filter((choice) => choice.ranked.serves), ...toBuy].flatMap(
    (choice) => choiceResults(shop, ref, choice, step),
  );
}

/** "reamer r-8755", or what to ask for: "7/8 in", "no 30", "letter T", "22.5 mm". */
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
): readonly Result[] {
  const { system } = settings(shop, "job");
  const [cut] = choice.ranked.cuts;
  if (cut === undefined) return [];
  const of = choiceName(choice);
  const assumed = cut.oversizeAssumed
    ? "oversize taken as zero: none is written"
    : "";
  const setting =
    choice.ranked.setting === undefined
      ? ""
      : `set to ${showLength(choice.ranked.setting, system, step)}`;
  const results: Result[] = [
    numberResult({ entry: ref, kind: "cut-size", of }, "m", cut, {
      status: "predicted",
      text: [showRange(cut.low, cut.high, system, step), setting]
        .filter((part) => part !== "")
        .join(", "),
      working: [
        {
          formula: "cut = reamer + oversize, brought to 20 °C",
          with: [showRange(cut.low, cut.high, system, step), assumed]
            .filter((part) => part !== "")
            .join("; "),
          source: "",
        },
      ],
    }),
  ];
  const { chance } = choice.ranked;
  const where = { entry: ref, kind: "chance", of };
  if (chance === undefined) {
    return [
      ...results,
      unknownResult(
        where,
        "1",
        unknown(
          need(
            choice.reamer ?? ref,
            "oversize",
            `the spread of what ${of} cuts`,
          ),
        ),
      ),
    ];
  }
  results.push(
    numberResult(
      where,
      "1",
      { low: chance, nominal: chance, high: chance },
      {
        status: "predicted",
        text: `${significant(chance * 100, 2)} %`,
        working: [
          {
            formula: "chance that every bore lands in its window",
            with: `margin ${fixed(choice.ranked.margin.deviations ?? 0, 1)} standard deviations`,
            source: "",
          },
        ],
      },
    ),
  );
  return results;
}

function stepResults(shop: Shop, ref: string): readonly Result[] {
  const order = orderOf(shop, "");
  const step = order.steps.find((each) => each.ref === ref);
  if (step === undefined) return [];
  const gate = gateOf(shop, ref);
  const isNext = order.next.includes(ref);
  const ready = isNext && gate.length === 0 ? 1 : 0;
  const waits = step.after.filter((before) =>
    order.steps.some((each) => each.ref === before && !each.done),
  );
  const reasons = [
    ...waits.map((each) => `${each} to be done`),
    ...gate.map((each) => each.text),
  ];
  const text = step.done
    ? "done"
    : ready === 1
      ? "ready"
      : `waits: ${reasons.join("; ")}`;
  return [
    numberResult(
      { entry: ref, kind: "ready" },
      "1",
      { low: ready, nominal: ready, high: ready },
      {
        status: "measured",
        text,
        needs: step.done
          ? []
          : gate.map((each) => ({
              ref: each.ref,
              fact: each.fact,
              text: each.text,
            })),
      },
    ),
  ];
}

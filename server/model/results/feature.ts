// Results of a journal, a hole or a running bore.
import {
  showLength,
  significant,
  type System,
} from "../../core/quantity/show.ts";
import type { Taper } from "../../core/readings/form.ts";
import { featureSize } from "../evaluate/bore.ts";
import { settings } from "../evaluate/settings.ts";
import { roundnessOf } from "../evaluate/roundness.ts";
import { judgeEstimate, sizeVerdict, type Size } from "../evaluate/size.ts";
import { valueIn } from "../entry.ts";
import {
  lengthResult,
  numberResult,
  sketch,
  unknownResult,
  type Sketch,
} from "../make-result.ts";
import { unknown } from "../known.ts";
import type { Result } from "../result.ts";
import { entryOf, type Shop } from "../shop.ts";

export function featureSketches(shop: Shop, ref: string): readonly Sketch[] {
  return [...sizeSketches(shop, ref), ...roundnessSketches(shop, ref)];
}

function sizeSketches(shop: Shop, ref: string): readonly Sketch[] {
  const size = featureSize(shop, ref);
  const where = { entry: ref, kind: "size" };
  if (!size.known)
    return [sketch("size", size, () => unknownResult(where, "m", size))];
  const { outOfRound, taper, budget, budgetNeeds, step, status } = size.value;
  const sketches = [
    sketch("size", size, () =>
      lengthResult(
        where,
        settings(shop).system,
        size.value,
        verdictOfSize(shop, ref, size.value),
      ),
    ),
  ];
  if (outOfRound !== undefined)
    sketches.push(
      sketch("out-of-round", size, () =>
        oneLength(
          ref,
          "out-of-round",
          outOfRound,
          shop,
          step,
          "largest − smallest diameter at one place (two-point; not roundness by ISO 12181)",
        ),
      ),
    );
  if (taper !== undefined)
    sketches.push(
      sketch("taper", size, () =>
        withSlope(
          oneLength(
            ref,
            "taper",
            taper.difference,
            shop,
            step,
            "largest − smallest mean of the places",
          ),
          taper,
          settings(shop).system,
        ),
      ),
    );
  if (status === "measured")
    sketches.push(
      sketch("uncertainty", size, () =>
        uncertainty(shop, { entry: ref }, budget, budgetNeeds),
      ),
    );
  return sketches;
}

/** How round it is by the swing of a pointer, and how sure that is; nothing where no swing is written. */
function roundnessSketches(shop: Shop, ref: string): readonly Sketch[] {
  const found = roundnessOf(shop, ref);
  if (found === undefined) return [];
  const where = { entry: ref, kind: "roundness" };
  if (!found.known)
    return [sketch("roundness", found, () => unknownResult(where, "m", found))];
  const { worst, working } = found.value;
  const { roundness, step, budget, needs } = worst;
  const { system } = settings(shop);
  return [
    sketch("roundness", found, () =>
      numberResult(
        where,
        "m",
        { low: roundness, nominal: roundness, high: roundness },
        {
          status: "measured",
          text: showLength(roundness, system, step),
          step,
          working,
        },
      ),
    ),
    sketch("uncertainty", found, () =>
      uncertainty(shop, { entry: ref, of: "roundness" }, budget, needs),
    ),
  ];
}

function uncertainty(
  shop: Shop,
  { entry, of }: { readonly entry: string; readonly of?: string },
  budget: Size["budget"],
  needs: Size["budgetNeeds"],
): Result {
  const where = { entry, of, kind: "uncertainty" };
  if (budget === undefined) return unknownResult(where, "m", unknown(...needs));
  const { system } = settings(shop);
  const U = budget.expanded;
  const step = U / 10;
  return numberResult(
    where,
    "m",
    { low: U, nominal: U, high: U },
    {
      status: "measured",
      text: `± ${showLength(U, system, step)} (95 %)`,
      step,
      working: budget.rows.map((row) => ({
        formula: `${row.name} (${row.distribution})`,
        with: showLength(row.contribution, system, step),
        source: "JCGM 100:2008 (GUM)",
      })),
    },
  );
}

function verdictOfSize(shop: Shop, ref: string, size: Size): Result["verdict"] {
  if (size.from === "readings")
    return sizeVerdict(shop, ref)?.verdict ?? "none";
  const limits = valueIn(entryOf(shop, ref), "LimitsFact");
  if (limits === undefined || size.from === "limits") return "none";
  return judgeEstimate(shop, size, limits, undefined).verdict;
}

/** A taper over the distance between its two places, where both say where along the axis they lie. */
function withSlope(
  result: Result,
  { difference, perLength }: Taper,
  system: System,
): Result {
  if (perLength === undefined || perLength === 0) return result;
  const slope = `${significant(perLength * 1000, 2)} per mille`;
  return {
    ...result,
    text: `${result.text}, ${slope}`,
    working: [
      ...result.working,
      {
        formula: "taper per length = taper / distance of the two places",
        with: `${result.text} / ${showLength(difference / perLength, system)} = ${slope}`,
        source: "",
      },
    ],
  };
}

function oneLength(
  ref: string,
  kind: string,
  value: number,
  shop: Shop,
  step: number | undefined,
  formula: string,
): Result {
  const { system } = settings(shop);
  return numberResult(
    { entry: ref, kind },
    "m",
    { low: value, nominal: value, high: value },
    {
      status: "measured",
      text: showLength(value, system, step),
      step,
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

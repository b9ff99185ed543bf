// Results of the cut of each bore of a line: stock, the ledge of a blind bore, and the offset that each pilot allows.
import {
  showLength,
  showRange,
  type System,
} from "../../core/quantity/show.ts";
import { blindLedgeOf } from "../evaluate/ledge.ts";
import { ownBores } from "../evaluate/index-of.ts";
import { guidesOf, pilotLinesOf } from "../evaluate/pilot.ts";
import { settings } from "../evaluate/settings.ts";
import { passesOf, stockOf, type Passes } from "../evaluate/stock.ts";
import { SILENT, type Estimate } from "../known.ts";
import {
  lengthResult,
  numberResult,
  sketchOf,
  type Sketch,
  type Where,
} from "../make-result.ts";
import type { Result } from "../result.ts";
import type { Shop } from "../shop.ts";

export function cuttingSketches(shop: Shop, line: string): readonly Sketch[] {
  const bores = ownBores(shop, line);
  return [
    ...bores.map((bore) => stockSketch(shop, line, bore)),
    ...pilotSketches(shop, line),
    ...bores.flatMap((bore) => ledgeSketch(shop, line, bore)),
  ];
}

function stockSketch(shop: Shop, line: string, bore: string): Sketch {
  const where = { entry: line, kind: "stock", of: bore };
  return sketchOf(where, "m", stockOf(shop, bore), (stock) =>
    stockResult(shop, bore, where, stock),
  );
}

function stockResult(
  shop: Shop,
  bore: string,
  where: Where,
  stock: Estimate,
): Result {
  const { system } = settings(shop);
  const passes = passesOf(shop, bore);
  const size = showRange(stock.low, stock.high, system, stock.step);
  if (passes === undefined) return lengthResult(where, system, stock);
  return numberResult(where, "m", stock, {
    status: stock.status,
    text: passes.known ? `${size}, ${hint(passes.value, system)}` : size,
    step: stock.step,
    working: passes.known
      ? [...stock.working, working(passes.value, system, stock.step)]
      : stock.working,
    needs: passes.known ? [] : passes.needs,
  });
}

/** In how many passes it comes off, in a few words. */
function hint({ plan, allowance }: Passes, system: System): string {
  if (!plan.enough)
    return `under the ${showLength(allowance.least, system)} advised for a pass`;
  const [first, second] = plan.passes;
  if (second === undefined) return "one pass";
  return first?.kind === "bore"
    ? "bore out, rough and finish"
    : "rough and finish";
}

function working(
  { plan, allowance, drive, from }: Passes,
  system: System,
  step: number | undefined,
): Result["working"][number] {
  const allowed = `one ${drive} pass takes ${showRange(allowance.least, allowance.most, system)}`;
  const what = { bore: "bore out", rough: "rough", finish: "finish" };
  const plans = plan.enough
    ? plan.passes
        .map(
          ({ kind, to, stock }) =>
            `${what[kind]} to ${showLength(to, system, step)}, off ${showLength(stock, system, step)}`,
        )
        .join("; ")
    : `short by ${showLength(plan.shortBy, system, step)}`;
  return {
    formula: "passes, from the smallest bore",
    with: `${allowed}: ${plans}`,
    source:
      from === "written"
        ? "the reamer's own stock"
        : "reamer makers' tables, which differ twofold: advice",
  };
}

function pilotSketches(shop: Shop, line: string): readonly Sketch[] {
  const guides = guidesOf(shop, line);
  return pilotLinesOf(shop, line).map((each, index) => {
    const where = { entry: line, kind: "pilot-offset", of: each.guides };
    return sketchOf(where, "m", guides[index] ?? SILENT, (offset) =>
      lengthResult(where, settings(shop).system, offset),
    );
  });
}

function ledgeSketch(
  shop: Shop,
  line: string,
  bore: string,
): readonly Sketch[] {
  const where = { entry: line, kind: "ledge", of: bore };
  const found = blindLedgeOf(shop, bore);
  if (found === undefined) return [];
  return [
    sketchOf(where, "m", found, (left) => {
      const { system } = settings(shop);
      const { low, high, status, working: how, ledge } = left;
      return numberResult(where, "m", left, {
        status,
        text:
          high === 0
            ? "none: the bore is cut to its end"
            : `${showRange(low, high, system)} long, ${showLength(ledge.diameter, system)} across, from ${showLength(ledge.cutDepth, system)} deep`,
        working: how,
      });
    }),
  ];
}

// Results of the cut of each bore of a line: stock, the ledge of a blind bore, and the offset that each pilot allows.
import {
  showLength,
  showRange,
  type System,
} from "../../core/quantity/show.ts";
import { blindLedgeOf } from "../evaluate/ledge.ts";
import { boresOfLine, lineOfBore } from "../evaluate/index-of.ts";
import { guidesOf, pilotLinesOf } from "../evaluate/pilot.ts";
import { settings } from "../evaluate/settings.ts";
import { passesOf, stockOf, type Passes } from "../evaluate/stock.ts";
import { lengthResult, numberResult, unknownResult } from "../make-result.ts";
import type { Result } from "../result.ts";
import type { Shop } from "../shop.ts";

export function cuttingResults(shop: Shop, line: string): readonly Result[] {
  // a bore that two lines name is the first's, as its cut is
  const bores = [...new Set(boresOfLine(shop, line))].filter(
    (bore) => lineOfBore(shop, bore) === line,
  );
  return [
    ...bores.map((bore) => stockResult(shop, line, bore)),
    ...pilotResults(shop, line),
    ...bores.flatMap((bore) => ledgeResult(shop, line, bore)),
  ];
}

function stockResult(shop: Shop, line: string, bore: string): Result {
  const where = { entry: line, kind: "stock", of: bore };
  const found = stockOf(shop, bore);
  if (!found.known) return unknownResult(where, "m", found);
  const { system } = settings(shop, "job");
  const stock = found.value;
  const passes = passesOf(shop, bore);
  const size = showRange(stock.low, stock.high, system, stock.step);
  if (passes === undefined) return lengthResult(where, system, stock);
  return numberResult(where, "m", stock, {
    status: stock.status,
    text: passes.known ? `${size}, ${hint(passes.value, system)}` : size,
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

function pilotResults(shop: Shop, line: string): readonly Result[] {
  const { system } = settings(shop, "job");
  const guides = guidesOf(shop, line);
  return pilotLinesOf(shop, line).map((each, index) => {
    const where = { entry: line, kind: "pilot-offset", of: each.guides };
    const found = guides[index];
    if (found?.known === true) return lengthResult(where, system, found.value);
    return unknownResult(
      where,
      "m",
      found ?? { known: false, needs: [], silent: true },
    );
  });
}

function ledgeResult(
  shop: Shop,
  line: string,
  bore: string,
): readonly Result[] {
  const where = { entry: line, kind: "ledge", of: bore };
  const found = blindLedgeOf(shop, bore);
  if (found === undefined) return [];
  if (!found.known) return [unknownResult(where, "m", found)];
  const { system } = settings(shop, "job");
  const { low, high, status, working: how, ledge } = found.value;
  return [
    numberResult(where, "m", found.value, {
      status,
      text:
        high === 0
          ? "none: the bore is cut to its end"
          : `${showRange(low, high, system)} long, ${showLength(ledge.diameter, system)} across, from ${showLength(ledge.cutDepth, system)} deep`,
      working: how,
    }),
  ];
}

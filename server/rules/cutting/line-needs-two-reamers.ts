// No one size gives every journal of a line what it wants: who conflicts, and the three ways out.
import {
  lengthDigits,
  showLength,
  showRange,
  type System,
} from "../../core/quantity/show.ts";
import { settings } from "../../model/evaluate/settings.ts";
import {
  windowOf,
  type Demand,
  type LineDemands,
} from "../../model/evaluate/window.ts";
import type { Rule } from "../rule.ts";

export const lineNeedsTwoReamers: Rule = {
  code: "line-needs-two-reamers",
  level: "error",
  about: ["line"],
  check(shop, ref, entry) {
    const found = windowOf(shop, ref);
    if (!found.known || found.value.window.open) return [];
    const { system } = settings(shop, "job");
    const { demands, window } = found.value;
    const { needsLarger, needsSmaller, by } = window.conflict;
    const [larger, smaller] = [demands[needsLarger], demands[needsSmaller]];
    if (larger === undefined || smaller === undefined) return [];
    const step = larger.step ?? smaller.step;
    const conflict =
      larger === smaller
        ? `${nameOf(larger)} can't have what it wants at both ends: its sizes differ by ${showLength(by, system, step)} more than that is wide.`
        : `One size does not suit both ${nameOf(larger)} and ${nameOf(smaller)}: they conflict by ${showLength(by, system, step)}.`;
    return [
      {
        span: entry.nameSpan,
        message: `${conflict} Ways out: ${waysOut(found.value, system, step)}.`,
        related: [larger, smaller].flatMap((demand, index) => {
          const each = window.each[index === 0 ? needsLarger : needsSmaller];
          if (each === undefined || (index === 1 && larger === smaller))
            return [];
          return [
            {
              ref: demand.fit ?? demand.bore,
              message: `${nameOf(demand)} asks for a bore of ${lengthDigits(each.low, system, step)} to ${showLength(each.high, system, step)}`,
            },
          ];
        }),
      },
    ];
  },
};

function nameOf(demand: Demand): string {
  return demand.journal ?? `the limits of ${demand.bore}`;
}

function waysOut(
  { demands, window }: LineDemands,
  system: System,
  step: number | undefined,
): string {
  if (window.open) return "";
  const { reamers, sizeDown, accept, needsLarger, needsSmaller } =
    window.conflict;
  const ways: string[] = [];
  if (1 < reamers.length && window.conflict.unservable.length === 0) {
    const groups = reamers.map(
      ({ journals, window: shared }) =>
        `${showRange(shared.low, shared.high, system, step)} for ${journals.map((index) => names(demands, index)).join(" and ")}`,
    );
    ways.push(`(1) ${String(reamers.length)} reamers, ${groups.join("; ")}`);
  }
  if (sizeDown !== undefined) {
    const each = sizeDown
      .filter(({ journal }) => demands[journal]?.journal !== undefined)
      .map(
        ({ journal, by }) =>
          `${names(demands, journal)} down by ${showLength(by, system, step)}`,
      );
    if (0 < each.length)
      ways.push(`(${String(ways.length + 1)}) size ${each.join(", ")}`);
  }
  const given = [needsLarger, needsSmaller].flatMap((index) => {
    const clearance = accept.clearances[index];
    return clearance === undefined
      ? []
      : [
          `${showRange(clearance.low, clearance.high, system, step)} at ${names(demands, index)}`,
        ];
  });
  ways.push(
    `(${String(ways.length + 1)}) accept what ${showLength(accept.size, system, step)} gives, ${[...new Set(given)].join(" and ")}`,
  );
  return ways.join("; ");
}

function names(demands: readonly Demand[], index: number): string {
  const demand = demands[index];
  return demand === undefined ? "" : nameOf(demand);
}

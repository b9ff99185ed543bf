// No one size gives every journal of a line what it wants: who conflicts, and the ways out.
import { metresToTenths } from "../../core/quantity/exact.ts";
import {
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
import { showExcess } from "../show-excess.ts";
import { conflictIsSure, unread } from "./possible-bores.ts";

export const lineNeedsTwoReamers: Rule = {
  code: "line-needs-two-reamers",
  level: "error",
  about: ["line"],
  check(shop, ref, entry) {
    const found = windowOf(shop, ref);
    if (!found.known || found.value.window.open) return [];
    const { system } = settings(shop);
    const { demands, window } = found.value;
    const { needsLarger, needsSmaller, by } = window.conflict;
    const [larger, smaller] = [demands[needsLarger], demands[needsSmaller]];
    if (larger === undefined || smaller === undefined) return [];
    const step = larger.step ?? smaller.step;
    const much = showExcess(by, system, step);
    const conflict =
      larger === smaller
        ? `${nameOf(larger)} can't have what it wants at both ends: its sizes differ by ${much} more than that is wide.`
        : `One size does not suit both ${nameOf(larger)} and ${nameOf(smaller)}: they conflict by ${much}.`;
    const isSure = conflictIsSure(demands);
    return [
      {
        level: isSure ? "error" : "information",
        span: entry.nameSpan,
        message: isSure
          ? `${conflict} Ways out: ${waysOut(found.value, system, step)}.`
          : `No one size is sure to suit this line while ${unread(demands)} may be anywhere in the limits: it may lack ${much}. Read first, then choose the reamer.`,
        related: [larger, smaller].flatMap((demand, index) => {
          const each = window.each[index === 0 ? needsLarger : needsSmaller];
          if (each === undefined || (index === 1 && larger === smaller))
            return [];
          return [
            {
              ref: demand.fit ?? demand.bore,
              message:
                each.high < each.low
                  ? `${nameOf(demand)} asks for a bore of ${showLength(each.low, system, step)} at its largest and ${showLength(each.high, system, step)} at its smallest`
                  : `${nameOf(demand)} asks for a bore of ${showRange(each.low, each.high, system, step)}`,
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
  const { reamers, sizeDown, accept, unservable, needsLarger, needsSmaller } =
    window.conflict;
  const names = (indices: readonly number[]): string =>
    [
      ...new Set(
        indices.flatMap((index) => {
          const demand = demands[index];
          return demand === undefined ? [] : [nameOf(demand)];
        }),
      ),
    ].join(" and ");
  const ways: string[] = [];
  if (0 < unservable.length) ways.push(`true ${names(unservable)} up`);
  else if (1 < reamers.length) {
    const groups = reamers.map(
      ({ journals, window: shared }) =>
        `one for ${names(journals)} that cuts ${showRange(shared.low, shared.high, system, step)}`,
    );
    ways.push(`take ${String(reamers.length)} reamers, ${groups.join(", ")}`);
  }
  const down = (sizeDown ?? []).flatMap(({ journal, by }) =>
    demands[journal]?.journal === undefined
      ? []
      : [
          `${names([journal])} down by ${showExcess(by, system, step)} at least`,
        ],
  );
  if (0 < down.length) ways.push(`size ${down.join(", ")}`);
  const pair = [...new Set([needsLarger, needsSmaller])];
  const fine = stepHalfway(accept.size, step);
  // a size that leaves one of them no clearance is no way out
  if (pair.every((index) => 0 < (accept.clearances[index]?.low ?? 0))) {
    const given = pair.flatMap((index) => {
      const clearance = accept.clearances[index];
      return clearance === undefined
        ? []
        : [
            `${showRange(clearance.low, clearance.high, system, fine)} at ${names([index])}`,
          ];
    });
    ways.push(
      `accept what ${showLength(accept.size, system, fine)} gives, ${given.join(" and ")}`,
    );
  }
  return ways.length === 1
    ? (ways[0] ?? "")
    : ways.map((way, index) => `(${String(index + 1)}) ${way}`).join("; ");
}

/** A size halfway between two others may lie between the steps that they were read in: rounded to them, its clearances would not add up. */
function stepHalfway(
  size: number,
  step: number | undefined,
): number | undefined {
  return step === undefined || metresToTenths(size) % metresToTenths(step) === 0
    ? step
    : step / 10;
}

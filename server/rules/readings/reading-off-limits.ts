// A journal, hole or bore as read is outside its limits.
import { metresToTenths } from "../../core/quantity/exact.ts";
import { showLength, showRange } from "../../core/quantity/show.ts";
import { showExcess, stepOfExcess } from "../show-excess.ts";
import { settings } from "../../model/evaluate/settings.ts";
import { sizeOf, sizeVerdict } from "../../model/evaluate/size.ts";
import { given, type Entry } from "../../model/entry.ts";
import { isPastService, wearLimit } from "../../model/evaluate/wear.ts";
import type { Draft, Rule } from "../rule.ts";

export const readingOffLimits: Rule = {
  code: "reading-off-limits",
  level: "error",
  about: ["journal", "hole", "bore"],
  check(shop, ref, entry) {
    const size = sizeOf(shop, ref);
    const limits = given(entry, "LimitsFact");
    const judged = sizeVerdict(shop, ref);
    if (
      !size.known ||
      limits.state !== "given" ||
      judged === undefined ||
      judged.verdict === "in"
    )
      return [];
    const { system } = settings(shop);
    const { low, high, step } = limits.value;
    const source =
      limits.value.source === undefined ? "" : ` (${limits.value.source})`;
    const shown = `${showRange(low, high, system, step)}${source}`;
    const related = [
      { ref, span: limits.span, message: `limits of ${ref}: ${shown}` },
    ];
    const drafts: Draft[] = [];
    for (const { readings } of size.value.places) {
      for (const { values, valueSpans, place, temperature } of readings) {
        values.forEach((value, index) => {
          const span = valueSpans[index];
          if (span === undefined) return;
          const under = metresToTenths(low) - metresToTenths(value);
          const over = metresToTenths(value) - metresToTenths(high);
          const off = Math.max(under, over);
          if (off <= 0 || judged.verdict !== "out") return;
          const metres = off / 1e10;
          const digits = stepOfExcess(metres, size.value.step);
          const where = place === undefined ? "" : ` at ${place}`;
          const brought = temperature === 20 ? "" : ", brought to 20 °C,";
          const is = `${showLength(value, system, digits)}${where}${brought}`;
          const by = showExcess(metres, system, size.value.step);
          const service = wearLimit(entry);
          const isWear = (entry.kind === "journal") === 0 < under;
          if (isWear && isPastService(entry, value)) return;
          drafts.push({
            // what has worn and may run on is not wrong; past its service limit it is `worn`, and said there
            ...(isWear && service !== undefined
              ? { level: "information" as const }
              : {}),
            span,
            message:
              isWear && service !== undefined
                ? `${is} is ${by} ${0 < under ? "under" : "over"} the limits ${shown}, as it wears; its service limit is ${showLength(service, system, size.value.step)}.`
                : `${is} is ${by} ${0 < under ? "under" : "over"} the limits ${shown}. ${cureOf(entry, 0 < under)}`,
            related,
            value,
          });
        });
      }
    }
    if (0 < drafts.length || judged.verdict === "out") return drafts;
    const guard =
      judged.guard === undefined
        ? ""
        : ` by ${showLength(judged.guard, system, judged.guard / 10)} (k = ${judged.factor?.toFixed(2) ?? ""})`;
    const needs = size.value.budgetNeeds.map((need) => need.text).join(", ");
    const why =
      judged.guard === undefined
        ? `the verdict is guarded, and needs ${needs}`
        : `it does not keep clear of a limit${guard}, as its uncertainty asks (ISO 14253-1)`;
    return [
      {
        level: "warning",
        span: entry.nameSpan,
        message: `Whether ${ref} is within ${shown} is not sure: ${why}.${judged.guard === undefined ? "" : " Read it with a surer gauge."}`,
        related,
      },
    ];
  },
};

/** Metal that is there can be taken off; metal that is gone can't be put back by cutting. */
function cureOf({ kind }: Entry, isUnder: boolean): string {
  const isJournal = kind === "journal";
  if (isJournal !== isUnder)
    return isJournal
      ? "There is metal to take off: size it down."
      : "There is metal to take off: open it out.";
  if (isJournal) return "Build it up, or have the smaller size allowed.";
  return kind === "hole"
    ? "Sleeve it, or make the bush to suit."
    : "Fit a new bush, or have the larger size allowed.";
}

// A journal, hole or bore as read is outside its limits.
import { metresToTenths } from "../../core/quantity/exact.ts";
import {
  showLength,
  showRange,
  showUncertainty,
  type System,
} from "../../core/quantity/show.ts";
import { given, type Entry } from "../../model/entry.ts";
import {
  isAt20,
  type CorrectedReading,
} from "../../model/evaluate/readings.ts";
import { settings } from "../../model/evaluate/settings.ts";
import { sizeOf, sizeVerdict, type Judged } from "../../model/evaluate/size.ts";
import { isPastService, wearLimit } from "../../model/evaluate/wear.ts";
import { neededText } from "../../model/known.ts";
import type { Need } from "../../model/result.ts";
import type { Draft, DraftRelated, Rule } from "../rule.ts";
import { showExcess, stepOfExcess } from "../show-excess.ts";
import { slipWords } from "./slip.ts";

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
    const { low, high, step, source } = limits.value;
    const shown = `${showRange(low, high, system, step)}${source === undefined ? "" : ` (${source})`}`;
    const held: Held = {
      low,
      high,
      shown,
      step: size.value.step,
      system,
      related: [
        { ref, span: limits.span, message: `limits of ${ref}: ${shown}` },
      ],
    };
    if (judged.verdict !== "out")
      return [unsure(ref, entry, held, judged, size.value.budgetNeeds)];
    return size.value.places.flatMap(({ readings }) =>
      readings.flatMap((reading) =>
        reading.values.flatMap(
          (_, index) => offDraft(entry, held, reading, index) ?? [],
        ),
      ),
    );
  },
};

/** What the readings are held against. */
interface Held {
  /** m */
  readonly low: number;
  readonly high: number;
  /** "0.8740 to 0.8745 in (yard drawing L-204)" */
  readonly shown: string;
  /** Of the last digit of the readings, m. */
  readonly step: number | undefined;
  readonly system: System;
  readonly related: readonly DraftRelated[];
}

/** One value outside the limits; undefined for one within, and for one past its service limit, which is `worn`, and said there. */
function offDraft(
  entry: Entry,
  { low, high, shown, step, system, related }: Held,
  reading: CorrectedReading,
  index: number,
): Draft | undefined {
  const { values, valueSpans, place } = reading;
  const [value, span] = [values[index], valueSpans[index]];
  if (value === undefined || span === undefined) return undefined;
  const under = metresToTenths(low) - metresToTenths(value);
  const over = metresToTenths(value) - metresToTenths(high);
  const off = Math.max(under, over);
  const isUnder = 0 < under;
  const isWear = (entry.kind === "journal") === isUnder;
  if (off <= 0 || (isWear && isPastService(entry, value))) return undefined;
  const metres = off / 1e10;
  const where = place === undefined ? "" : ` at ${place}`;
  const brought = isAt20(reading) ? "" : ", brought to 20 °C,";
  const is = `${showLength(value, system, stepOfExcess(metres, step))}${where}${brought} is ${showExcess(metres, system, step)} ${isUnder ? "under" : "over"} the limits ${shown}`;
  const slip = slipWords(value, { low, high });
  const service = isWear && slip === "" ? wearLimit(entry) : undefined;
  return {
    // what has worn and may run on is not wrong
    ...(service === undefined ? {} : { level: "information" }),
    span,
    message:
      service === undefined
        ? `${is}${slip === "" ? `. ${cureOf(entry, isUnder)}` : `${slip}. Look at the gauge and at the limits before any metal goes.`}`
        : `${is}, as it wears; its service limit is ${showLength(service, system, step)}.`,
    related,
    value,
  };
}

/** Readings too near a limit for how sure they are. */
function unsure(
  ref: string,
  entry: Entry,
  { shown, system, related }: Held,
  { guard, factor }: Judged,
  budgetNeeds: readonly Need[],
): Draft {
  const why =
    guard === undefined
      ? `the verdict is guarded, and ${neededText(budgetNeeds)}.`
      : `it does not keep clear of a limit by ${showUncertainty(guard, system)} (k = ${factor?.toFixed(2) ?? ""}), as its uncertainty asks (ISO 14253-1). Read it with a surer gauge.`;
  return {
    level: "warning",
    span: entry.nameSpan,
    message: `Whether ${ref} is within ${shown} is not sure: ${why}`,
    related,
  };
}

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

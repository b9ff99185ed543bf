// The bores of a line are out of line: the shaft won't go through, or has less clearance at one than its fit wants.
import { metresToTenths } from "../../core/quantity/exact.ts";
import { showLength, showRange } from "../../core/quantity/show.ts";
import { wanted } from "../../model/evaluate/wanted.ts";
import { inLine, type InLine } from "../../model/evaluate/in-line.ts";
import { settings } from "../../model/evaluate/settings.ts";
import { allOf, type Entry } from "../../model/entry.ts";
import { refOf, type Shop } from "../../model/shop.ts";
import type { Span } from "../../model/values.ts";
import type { Draft, Rule } from "../rule.ts";

export const lineCrooked: Rule = {
  code: "line-crooked",
  level: "error",
  about: ["line"],
  check(shop, ref, entry) {
    const found = inLine(shop, ref);
    if (!found.known) return [];
    const stopped = stoppedDraft(shop, entry, found.value);
    return stopped === undefined
      ? shortDrafts(shop, entry, found.value)
      : [stopped];
  },
};

function stoppedDraft(
  shop: Shop,
  entry: Entry,
  { seats, tightest, loosest, status }: InLine,
): Draft | undefined {
  // what is read is tight where it is tightest; what is foretold, only where it is sure to be
  const shaft = status === "measured" ? tightest : loosest;
  const seat = seats[shaft.stoppedBy?.bore ?? -1];
  if (shaft.stoppedBy === undefined || seat === undefined) return undefined;
  const { system } = settings(shop);
  const { by, alone } = shaft.stoppedBy;
  return {
    span: spanOf(shop, entry, seat.bore),
    message: `A straight shaft does not go through: ${seat.bore} stops it by ${showLength(by, system, seat.step)}${alone ? ", with the shaft at its best in the others" : ", and without it the others would too"}. Cut the line again from its datum, or open ${seat.bore} out by that and the clearance that it wants.`,
    related: [{ ref: seat.fit, message: seat.fit }],
    value: shaft.leastClearance,
  };
}

/** It goes through, and runs with less at a bore than its fit wants. */
function shortDrafts(
  shop: Shop,
  entry: Entry,
  { seats, status }: InLine,
): readonly Draft[] {
  const { system } = settings(shop);
  return seats.flatMap(({ bore, fit, low, high, step }) => {
    const want = wanted(shop, fit);
    const end = status === "measured" ? low : high;
    if (
      want?.known !== true ||
      metresToTenths(want.value.low) <= metresToTenths(end)
    )
      return [];
    return [
      {
        level: "warning" as const,
        span: spanOf(shop, entry, bore),
        message: `In line with the others a straight shaft has ${showRange(low, high, system, step)} left in ${bore}, and ${fit} wants ${showLength(want.value.low, system, want.value.step)} at the least.`,
        related: [{ ref: fit, message: fit }],
        value: end,
      },
    ];
  });
}

function spanOf(shop: Shop, entry: Entry, bore: string): Span {
  return (
    allOf(entry, "LineBoreFact").find(
      ({ value }) => refOf(shop, value?.bore) === bore,
    )?.span ?? entry.nameSpan
  );
}

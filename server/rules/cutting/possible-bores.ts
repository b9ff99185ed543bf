// What a journal may yet come to ask of its bore, so that a finding is called an error only where no reading can mend it.
import { metresToTenths } from "../../core/quantity/exact.ts";
import type { Demand } from "../../model/evaluate/window.ts";

/** The bores, in m, that a demand may allow: those that a read journal allows, or any that one within its limits would. */
function possibleBores({ status, least, greatest, wanted }: Demand): {
  readonly low: number;
  readonly high: number;
} {
  const isRead = status === "measured";
  return {
    low: (isRead ? greatest : least) + wanted.low,
    high: (isRead ? least : greatest) + wanted.high,
  };
}

/** Whether no bore can suit all of them, whatever is still to be read. */
export function conflictIsSure(demands: readonly Demand[]): boolean {
  const all = demands.map(possibleBores);
  return (
    metresToTenths(Math.min(...all.map((each) => each.high))) <
    metresToTenths(Math.max(...all.map((each) => each.low)))
  );
}

/** Whether a bore can't suit a demand, whatever is still to be read. */
export function missesForSure(bore: number, demand: Demand): boolean {
  const { low, high } = possibleBores(demand);
  return (
    metresToTenths(bore) < metresToTenths(low) ||
    metresToTenths(high) < metresToTenths(bore)
  );
}

/** The journals that are known by their limits alone, as "journal front and journal rear"; "" where all are read. */
export function unread(demands: readonly Demand[]): string {
  return [
    ...new Set(
      demands.flatMap(({ status, journal }) =>
        status === "predicted" && journal !== undefined ? [journal] : [],
      ),
    ),
  ].join(" and ");
}

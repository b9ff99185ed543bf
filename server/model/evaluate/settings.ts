// What the job says of itself: units, temperature, how verdicts are given, its own thresholds.
import type { System } from "../../core/quantity/show.ts";
import { allOf, valueIn, type Entry } from "../entry.ts";
import { entryOf, openingEntry, queryOfShop, refsOfKind } from "../shop.ts";
import type { AnyQuantity } from "../values.ts";

export interface Settings {
  /** The unit that results are shown in; mm where the file does not say. */
  readonly system: System;
  /** °C of parts where a reading does not say its own; 20 where nothing is written. */
  readonly temperature: number;
  readonly temperatureAssumed: boolean;
  readonly verdict: "simple" | "guarded";
  /** The day the job was opened. */
  readonly opened: string | undefined;
  /** Thresholds by finding: the job's own before its cribs'. */
  readonly warn: Readonly<Record<string, AnyQuantity>>;
}

export const settings = queryOfShop<Settings>("settings", (shop) => {
  const opening = openingEntry(shop);
  const temperature = valueIn(opening, "TemperatureFact");
  return {
    system: valueIn(opening, "UnitsFact") ?? "mm",
    temperature: temperature ?? 20,
    temperatureAssumed: temperature === undefined,
    verdict: valueIn(opening, "VerdictFact") ?? "simple",
    opened: valueIn(opening, "OpenedFact")?.date,
    warn: thresholds(
      [...refsOfKind(shop, "job"), ...refsOfKind(shop, "shop")].map((ref) =>
        entryOf(shop, ref),
      ),
    ),
  };
});

function thresholds(
  entries: readonly (Entry | undefined)[],
): Readonly<Record<string, AnyQuantity>> {
  const all = new Map<string, AnyQuantity>();
  for (const entry of entries) {
    if (entry === undefined) continue;
    for (const { value } of allOf(entry, "WarnFact")) {
      if (value !== undefined && !all.has(value.code))
        all.set(value.code, value.at);
    }
  }
  return Object.fromEntries(all);
}

// What the lessons of each sort do alike: data in groups and in the order of time, without the wild ones, and where they come from.
import type { System } from "../core/quantity/show.ts";
import { groupedBy } from "../model/groups.ts";
import type { LeftOut } from "./evidence.ts";

/** Where a lesson comes from. */
export interface Origin {
  readonly records: number;
  /** ISO 8601 */
  readonly first: string;
  readonly last: string;
  /** The system of the last record, for display. */
  readonly system: System;
}

/**
 * All but the wild ones, which are told.
 * @param wild indexes of items
 * @param leftOut is added to
 */
export function withoutWild<T>(
  items: readonly T[],
  wild: readonly number[],
  leftOut: LeftOut[],
  whatOf: (item: T) => Omit<LeftOut, "why">,
): readonly T[] {
  return items.filter((item, index) => {
    const isWild = wild.includes(index);
    if (isWild) leftOut.push({ ...whatOf(item), why: "wild" });
    return !isWild;
  });
}

export function key(...parts: readonly string[]): string {
  return JSON.stringify(parts);
}

/** Groups in the order of their keys, so that the order of files changes nothing. */
export function sorted<T>(
  items: readonly T[],
  keyOf: (item: T) => string,
): readonly (readonly T[])[] {
  return [...groupedBy(items, keyOf)]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([, group]) => group);
}

interface Dated {
  readonly file: string;
  readonly date: string;
  readonly system: System;
}

export function inTime<T extends Dated>(items: readonly T[]): readonly T[] {
  return [...items].sort((a, b) =>
    a.date === b.date
      ? a.file < b.file
        ? -1
        : a.file === b.file
          ? 0
          : 1
      : a.date < b.date
        ? -1
        : 1,
  );
}

/** @param items in the order of time, not empty */
export function originOf(items: readonly Dated[]): Origin {
  return {
    records: new Set(items.map(({ file }) => file)).size,
    first: items[0]?.date ?? "",
    last: items.at(-1)?.date ?? "",
    system: items.at(-1)?.system ?? "mm",
  };
}

// Makes results of the contract from what the evaluation knows.
import { showRange, type System } from "../core/quantity/show.ts";
import {
  missing,
  neededText,
  type Estimate,
  type Extent,
  type Known,
  type Unknown,
} from "./known.ts";
import type { Waits } from "./shop.ts";
import type { Need, Result, Status, Verdict, Working } from "./result.ts";

/** What a result is of. */
export interface Where {
  readonly entry: string;
  readonly kind: string;
  readonly of?: string | undefined;
  readonly case?: number | undefined;
}

/** Adding zero makes -0 a plain 0. */
function plain(value: number): number {
  return value + 0;
}

export function numberResult(
  where: Where,
  unit: string,
  value: Extent,
  rest: {
    readonly status: Exclude<Status, "unknown">;
    readonly verdict?: Verdict | undefined;
    readonly text: string;
    readonly step?: number | undefined;
    readonly working?: readonly Working[];
    readonly needs?: readonly Need[];
  },
): Result {
  return {
    entry: where.entry,
    kind: where.kind,
    of: where.of ?? null,
    case: where.case ?? null,
    low: plain(value.low),
    nominal: plain(value.nominal),
    high: plain(value.high),
    unit,
    status: rest.status,
    verdict: rest.verdict ?? "none",
    text: rest.text,
    step: rest.step,
    working: rest.working ?? [],
    needs: rest.needs ?? [],
  };
}

/** A length that is known as a range. */
export function lengthResult(
  where: Where,
  system: System,
  estimate: Estimate,
  verdict?: Verdict,
): Result {
  return numberResult(where, "m", estimate, {
    status: estimate.status,
    verdict,
    text: showRange(estimate.low, estimate.high, system, estimate.step),
    step: estimate.step,
    working: estimate.working,
  });
}

/** What can't be said, with what would settle it. */
export function unknownResult(
  where: Where,
  unit: string,
  unknown: Unknown,
): Result {
  const needs = missing(unknown.needs).flat();
  return {
    entry: where.entry,
    kind: where.kind,
    of: where.of ?? null,
    case: where.case ?? null,
    low: null,
    nominal: null,
    high: null,
    unit,
    status: "unknown",
    verdict: "none",
    text: unknownText(needs, unknown.because),
    working: [],
    needs,
  };
}

/**
 * What becomes a result, or several that stand together. Their numbers and words are most of the work, and whoever looks for
 * methods that don't hold wants none of them: they are made when they are asked for.
 */
export interface Sketch {
  readonly kind: string;
  /** Why its method does not hold here; undefined for every other. */
  readonly because: string | undefined;
  readonly results: () => readonly Result[];
}

/** @param found what the results say: where its method does not hold, all of them say so; undefined where none can say that */
export function sketch(
  kind: string,
  found: Known<unknown> | undefined,
  results: () => Result | readonly Result[],
): Sketch {
  return {
    kind,
    because: found?.known === false ? found.because : undefined,
    results: () => [results()].flat(),
  };
}

/** The one result of what is known or not. @param made of what is known */
export function sketchOf<T>(
  where: Where,
  unit: string,
  found: Known<T>,
  made: (value: T) => Result,
): Sketch {
  return sketch(where.kind, found, () =>
    found.known ? made(found.value) : unknownResult(where, unit, found),
  );
}

/** Where neither a fact would settle it nor a method is out of its range, a line that it hangs on can't be read. */
function unknownText(
  needs: readonly Need[],
  because: string | undefined,
): string {
  if (because !== undefined) return `not valid here, because ${because}`;
  return 0 < needs.length ? neededText(needs) : WAITS;
}

const WAITS = "waits for a line that can't be read";

/** Whether a result says nothing because of what can't be read. */
export function isWaiting({ text }: Result): boolean {
  return text === WAITS;
}

/** A result that waits, with what it waits for. */
export function waitingFor(
  result: Result,
  { file, damaged, loose, names }: Waits,
): Result {
  const causes = [
    ...(file ? ["for a file that is missing"] : []),
    ...said(names, "which is nowhere", "which are nowhere"),
    ...said(loose, MAY_STAND, MAY_STAND),
    ...unread(damaged),
  ];
  return causes.length === 0
    ? result
    : { ...result, text: `waits ${causes.join(", or ")}` };
}

const MAY_STAND = "which may stand under a line that can't be read";

/** Names past these are said where they stand. */
const MOST_NAMES = 2;

function said(
  names: readonly string[],
  one: string,
  more: string,
): readonly string[] {
  return names.length === 0
    ? []
    : [`for ${firstOf(names)}, ${names.length === 1 ? one : more}`];
}

function unread(entries: readonly string[]): readonly string[] {
  if (entries.length === 0) return [];
  const lines = entries.length === 1 ? "a line" : "lines";
  return [`for ${lines} that can't be read in ${firstOf(entries)}`];
}

function firstOf(names: readonly string[]): string {
  return names.slice(0, MOST_NAMES).join(" and ");
}

// Writes what was taken as lines of a record, in the canonical layout, and finds where in its entry they go.
import { UNIT_OF_SYSTEM } from "../../core/quantity/show.ts";
import { eolOf } from "../../../grammar/lines.ts";
import type { OpenFile } from "../../model/project.ts";
import type { Entry } from "../../model/entry.ts";
import { rangeOfEntry, type Position } from "../position.ts";
import type { TakingPlan } from "../../protocol/guide.ts";
import type { Taken, Taking } from "./steps.ts";
import type { ReadingUnit } from "./typed.ts";

/** The lines of what has been taken, without indent: one a place, or one a unit where a place was read in two. */
export function linesOf(
  plan: TakingPlan,
  { taken }: Taking,
): readonly string[] {
  return taken.flatMap((readings, index) =>
    byUnit(readings).map(([unit, digits]) =>
      lineOf(plan, plan.places[index] ?? null, [
        ...digits,
        unit === UNIT_OF_SYSTEM[plan.system] ? "" : unit,
      ]),
    ),
  );
}

/** One line of a plan. @param taken the digits and, where it has to be said, their unit */
export function lineOf(
  plan: TakingPlan,
  place: string | null,
  taken: readonly string[],
): string {
  return [
    plan.fact,
    plan.side ?? "",
    place ?? "",
    ...taken,
    plan.turned === null ? "" : `on ${plan.turned}`,
    plan.gauge === null ? "" : `with ${plan.gauge}`,
    plan.temperature === null ? "" : `at ${plan.temperature}`,
    plan.stage === null ? "" : `as ${plan.stage}`,
    `on ${plan.date}`,
  ]
    .filter((word) => word !== "")
    .join(" ");
}

function byUnit(
  readings: readonly Taken[],
): readonly (readonly [ReadingUnit, readonly string[]])[] {
  const units = [...new Set(readings.map(({ unit }) => unit))];
  return units.map((unit) => [
    unit,
    readings.filter((each) => each.unit === unit).map(({ digits }) => digits),
  ]);
}

/** Where an entry of the file stands; undefined where it is not there, or its opening line can't be read. */
export function indexOf(
  { file, shop }: OpenFile,
  ref: string,
): number | undefined {
  const place = shop.places.get(ref);
  if (place?.file !== 0) return undefined;
  return file.entries[place.index]?.damaged === false ? place.index : undefined;
}

/** The edit that adds lines to an entry: after its last reading of the kind, else after its last fact. */
export function insertion(
  { file }: OpenFile,
  index: number,
  plan: TakingPlan,
  lines: readonly string[],
): { readonly at: Position; readonly text: string } {
  const entry = file.entries[index];
  const start = file.lines.starts[index] ?? 0;
  const last = entry === undefined ? undefined : lastReading(entry, plan);
  const line =
    last === undefined ? rangeOfEntry(file, index).end.line : start + last;
  const eol = eolOf(file.lines);
  return {
    at: { line, character: file.lines.lines[line]?.text.length ?? 0 },
    text: lines.map((each) => `${eol}  ${each}`).join(""),
  };
}

/** The number of the entry's line that holds its last reading of the same kind. */
function lastReading(entry: Entry, plan: TakingPlan): number | undefined {
  const lines = entry.facts.flatMap(({ word, value, span }) => {
    if (word !== plan.fact) return [];
    const side =
      typeof value === "object" && "side" in value ? value.side : null;
    return side === plan.side ? [span.line] : [];
  });
  return lines.length === 0 ? undefined : Math.max(...lines);
}

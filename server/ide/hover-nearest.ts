// From sizes back to classes: which common fits a measured pair is one of, and which class comes nearest to limits written as numbers.
import {
  fitsHolding,
  nearestClasses,
  roundSize,
} from "../core/fits/nearest.ts";
import {
  showLength,
  showRange,
  stepTaken,
  type System,
} from "../core/quantity/show.ts";
import type { EntryKind } from "../../grammar/vocabulary.ts";
import { blocks, table } from "../markup/markdown.ts";
import { valueIn, type Entry } from "../model/entry.ts";
import { RUNNING } from "../model/evaluate/advice.ts";
import { clearance } from "../model/evaluate/fit.ts";
import { interferenceOf } from "../model/evaluate/press.ts";
import { settings } from "../model/evaluate/settings.ts";
import { sideOf } from "../model/ranges.ts";
import type { Shop } from "../model/shop.ts";

/** As many as one reads at a glance. */
const MOST = 3;

/** Limits of a class are shown whole: micrometres, and hundred-thousandths of an inch. */
const STEP = { inch: 2.54e-7, mm: 1e-6 } as const;

/** The common fits that come nearest to a running or a press fit whose parts are both measured; "" for any other. */
export function nearestFits(shop: Shop, ref: string, kind: EntryKind): string {
  const pair = measuredPair(shop, ref, kind);
  if (pair === undefined) return "";
  const { system } = settings(shop);
  const of = STANDARD[system];
  const size = roundSize(pair.diameter, of.system);
  const interferes = kind === "press";
  const near = fitsHolding(size, of.system, pair)
    .filter(({ word, clearance: { least } }) =>
      interferes ? least < 0 : RUNNING.test(word),
    )
    .slice(0, MOST);
  if (near.length === 0) return "";
  return blocks(
    `As measured, this pair comes nearest to these ${interferes ? "interference" : "running"} fits of ${of.name} at ${showLength(size, system, undefined)}:`,
    table(
      ["fit", interferes ? "interference" : "clearance", ""],
      near.map(({ word, clearance: { least, most }, outside }) => {
        const step = stepTaken([least, most]);
        return [
          word,
          interferes
            ? showRange(-most, -least, system, step)
            : showRange(least, most, system, step),
          outside === 0
            ? "holds it"
            : `it lies ${showLength(outside, system, undefined)} outside`,
        ];
      }),
    ),
  );
}

/** Which class limits in plain numbers come nearest to: one sentence; "" where a class is written, or none is near. */
export function nearestClass(shop: Shop, entry: Entry): string {
  const limits = valueIn(entry, "LimitsFact");
  const side = sideOf(entry.kind ?? "job", "limits");
  if (limits === undefined || limits.className !== undefined) return "";
  if (side !== "hole" && side !== "shaft") return "";
  const { system } = settings(shop);
  const middle = (limits.low + limits.high) / 2;
  const size = roundSize(middle, STANDARD[system].system);
  const [first] = nearestClasses(size, side, {
    lower: limits.low,
    upper: limits.high,
  });
  // a class that lies further off than these limits are wide says nothing of them
  if (first === undefined || limits.high - limits.low < first.distance)
    return "";
  const { word, zone, distance } = first;
  const range = showRange(zone.lower, zone.upper, system, STEP[system]);
  return `The common class that comes nearest at ${showLength(size, system, undefined)} is ${word}, ${range}: ${
    distance === 0
      ? "the same limits"
      : `${showLength(distance, system, STEP[system])} off at most`
  } (ISO 286).`;
}

const STANDARD = {
  inch: { system: "inch", name: "ANSI B4.1" },
  mm: { system: "iso", name: "ISO 286" },
} as const satisfies Record<System, unknown>;

/** Clearance between least and most (m, diametral, below zero where it interferes), and the diameter that a class would go by. */
function measuredPair(
  shop: Shop,
  ref: string,
  kind: EntryKind,
): { least: number; most: number; diameter: number } | undefined {
  if (kind === "fit") {
    const found = clearance(shop, ref);
    return found.known && found.value.status === "measured"
      ? {
          least: found.value.low,
          most: found.value.high,
          diameter: found.value.journal.nominal,
        }
      : undefined;
  }
  if (kind !== "press") return undefined;
  const found = interferenceOf(shop, ref);
  // classes are of sizes as made: what smoothing takes is no part of them
  return found.known && found.value.status === "measured"
    ? {
        least: -found.value.asMade.high,
        most: -found.value.asMade.low,
        diameter: found.value.hole.nominal,
      }
    : undefined;
}

// What a size that is still to be measured is held against at the bench: limits as drawn, or what would suit the parts that it meets.
import { lineWindow } from "../core/line/reamer-window.ts";
import { metresToTenths } from "../core/quantity/exact.ts";
import { showLength, showRange } from "../core/quantity/show.ts";
import { valueIn } from "../model/entry.ts";
import {
  fitsOfBore,
  namedIn,
  pressesOfBush,
} from "../model/evaluate/index-of.ts";
import { pressOfBore } from "../model/evaluate/press.ts";
import { featureSize } from "../model/evaluate/bore.ts";
import { journalAsMet, lobesTake } from "../model/evaluate/roundness.ts";
import { sizeVerdict } from "../model/evaluate/size.ts";
import { wanted } from "../model/evaluate/wanted.ts";
import { resultsOf } from "../model/results.ts";
import { entryOf } from "../model/shop.ts";
import type { SourcedRange } from "../model/values.ts";
import type { Subject } from "./facts.ts";
import { kindOf } from "../model/reference.ts";

/** The size by which it is known: to look for on the bench, and no limit. */
export const NOMINAL = "Nominal";

/** One thing to hold a reading against. */
export interface Held {
  /** "Limits", "For fit front" */
  readonly label: string;
  /** "0.8740 to 0.8745 in" */
  readonly range: string;
  /** Where it is from, or what it rests on; "" where there is nothing to say. */
  readonly note: string;
}

/** What a journal, hole or bore is held against. */
export function heldAgainst(subject: Subject, ref: string): readonly Held[] {
  const { shop, system } = subject;
  const entry = entryOf(shop, ref);
  const limits = valueIn(entry, "LimitsFact");
  const service = valueIn(entry, "ServiceLimitFact");
  const nominal = valueIn(entry, "NominalFact");
  const held: Held[] = [];
  if (nominal !== undefined)
    held.push({
      label: NOMINAL,
      range: showLength(nominal.value, system, nominal.step),
      note: "",
    });
  if (limits !== undefined) {
    held.push(drawn(subject, "Limits", limits));
    held.push(...guarded(subject, ref, limits));
  }
  if (service !== undefined)
    held.push(drawn(subject, "Service limit", service));
  if (kindOf(ref) === "bore")
    held.push(
      ...fitsOfBore(shop, ref).flatMap((fit) => forFit(subject, fit) ?? []),
      ...asPressed(subject, ref),
    );
  const round = valueIn(entry, "RoundFact");
  if (round !== undefined)
    held.push({
      label: "Out of round",
      range: `up to ${showLength(round.value, system, round.step)}`,
      note: "two-point",
    });
  const taper = valueIn(entry, "TaperFact");
  if (taper !== undefined)
    held.push({
      label: "Taper",
      range: `up to ${showLength(taper.value, system, taper.step)}`,
      note: "",
    });
  return held;
}

/** What one side of a bush is held against, as it was bought. */
export function bushHeldAgainst(
  subject: Subject,
  ref: string,
  side: "od" | "id",
): readonly Held[] {
  const { shop } = subject;
  const entry = entryOf(shop, ref);
  const limits = valueIn(entry, side === "od" ? "OdFact" : "IdFact");
  const own =
    limits === undefined
      ? []
      : [drawn(subject, side === "od" ? "Od limits" : "Id limits", limits)];
  if (side === "id") return own;
  return [
    ...own,
    ...pressesOfBush(shop, ref).flatMap((press): readonly Held[] => {
      const found = resultsOf(shop, press).find(
        (each) => each.kind === "bush-od-to-make" && each.status !== "unknown",
      );
      return found === undefined
        ? []
        : [
            {
              label: `For ${press}`,
              range: found.text,
              note: `from the hole, ${found.status}`,
            },
          ];
    }),
  ];
}

function drawn(
  { system }: Subject,
  label: string,
  range: { readonly source?: string | undefined } & Omit<
    SourcedRange,
    "source"
  >,
): Held {
  const { low, high, step, className, source } = range;
  return {
    label,
    range: showRange(low, high, system, step),
    note: [className, source === undefined ? undefined : `from ${source}`]
      .filter((each) => each !== undefined)
      .join(", "),
  };
}

/** The limits drawn in by the guard of the readings taken so far: what is surely in. */
function guarded(
  { shop, system }: Subject,
  ref: string,
  { low, high }: SourcedRange,
): readonly Held[] {
  const guard = sizeVerdict(shop, ref)?.guard;
  if (guard === undefined) return [];
  const step = guard / 10;
  const isRoom = metresToTenths(low + guard) < metresToTenths(high - guard);
  return [
    {
      label: "Surely in",
      range: isRoom
        ? showRange(low + guard, high - guard, system, step)
        : "no size: the gauge is too coarse",
      note: `held back by ${showLength(guard, system, step)} for the gauge used so far`,
    },
  ];
}

/** The bores that give a fit what it wants over its journal as it is known. */
function forFit(subject: Subject, fit: string): Held | undefined {
  const { shop, system } = subject;
  const want = wanted(shop, fit);
  const journal = namedIn(shop, fit)[0];
  if (want?.known !== true || journal === undefined) return undefined;
  const met = journalAsMet(shop, journal);
  if (!met.known) return undefined;
  const { size, greatest, lobes } = met.value;
  const window = lineWindow([
    {
      least: size.low,
      greatest,
      wanted: { low: want.value.low, high: want.value.high },
    },
  ]);
  const each = window.valid ? window.value.each[0] : undefined;
  const text = showRange(
    want.value.low,
    want.value.high,
    system,
    want.value.step,
  );
  const take = lobesTake(lobes, system);
  const over =
    size.status === "measured"
      ? `${journal} as read`
      : `the limits of ${journal}, not yet read`;
  return {
    label: `For ${fit}`,
    range:
      each === undefined || each.high < each.low
        ? "no one size"
        : showRange(each.low, each.high, system, size.step),
    note: `clearance ${text} over ${over}${take === "" ? "" : `; ${take}, as measured`}`,
  };
}

/** What pressing should leave of a bore: far off it, something went in askew or out of size. */
function asPressed({ shop, system }: Subject, ref: string): readonly Held[] {
  const press = pressOfBore(shop, ref);
  const found =
    press === undefined
      ? undefined
      : resultsOf(shop, press).find(
          (each) =>
            each.kind === "bore-after-press" && each.status !== "unknown",
        );
  return found === undefined
    ? []
    : [
        {
          label: "As pressed",
          range: showRange(found.low ?? 0, found.high ?? 0, system, found.step),
          note: `${found.status}, by ${press ?? ""}`,
        },
      ];
}

/** "read so far: 0.87428 to 0.87435 in"; "" where nothing was read. */
export function soFar({ shop, system }: Subject, ref: string): string {
  const size = featureSize(shop, ref);
  if (!size.known || size.value.from !== "readings") return "";
  const { low, high, step } = size.value;
  return `read so far ${showRange(low, high, system, step)}`;
}

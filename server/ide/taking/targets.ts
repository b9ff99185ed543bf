// What of a record can be read with a gauge, what each has already, and where its size is to be expected.
import { showLength, showRange } from "../../core/quantity/show.ts";
import { allOf, valueIn, type Entry } from "../../model/entry.ts";
import {
  fitsOfBore,
  fitsOfJournal,
  lineOfBore,
  namedIn,
} from "../../model/evaluate/index-of.ts";
import { stepValue } from "../../model/evaluate/order.ts";
import { swingsOf, takesSwing } from "../../model/evaluate/roundness.ts";
import { hostOf, sizeOf } from "../../model/evaluate/size.ts";
import type { OpenFile } from "../../model/project.ts";
import { entryOf, refsOfKind, type Shop } from "../../model/shop.ts";
import type { LengthRange, Reading } from "../../model/values.ts";
import type { TakingPlan } from "../../protocol/guide.ts";
import { factsOf } from "./figures.ts";

export interface Target {
  readonly ref: string;
  readonly side: TakingPlan["side"];
  readonly entry: Entry;
  /** The readings that it has: how many values. */
  readonly count: number;
  /** Its swing is taken, and not its size. */
  readonly isSwing?: true;
}

const KINDS: ReadonlySet<string> = new Set([
  "journal",
  "hole",
  "bush",
  "bore",
  "reamer",
  "pilot",
]);

/** Everything of the file that takes readings, in its order: of a bush both diameters. */
export function targetsIn({ file, shop }: OpenFile): readonly Target[] {
  return file.entries.flatMap((entry, index) => {
    const place = shop.places.get(entry.ref);
    if (
      entry.damaged ||
      !KINDS.has(entry.kind ?? "") ||
      place?.file !== 0 ||
      place.index !== index
    )
      return [];
    const sides: readonly TakingPlan["side"][] =
      entry.kind === "bush" ? ["od", "id"] : [null];
    return sides.map((side) => ({
      ref: entry.ref,
      side,
      entry,
      count: readingsOf(entry, side).reduce(
        (sum, { values }) => sum + values.length,
        0,
      ),
    }));
  });
}

/** A size that is not turned under a pointer yet: an odd number of lobes hides from its readings. */
export function isUnturned({ entry }: Pick<Target, "entry">): boolean {
  return takesSwing(entry.ref) && swingsOf(entry).length === 0;
}

/** What has been read and not turned yet. */
export function swingTargetsIn(open: OpenFile): readonly Target[] {
  return targetsIn(open)
    .filter((each) => 0 < each.count && isUnturned(each))
    .map((target) => ({ ...target, count: 0, isSwing: true }));
}

export function readingsOf(
  entry: Entry,
  side: TakingPlan["side"],
): readonly Reading[] {
  return factsOf(entry, { fact: "read", side }).flatMap(
    ({ value }) => value ?? [],
  );
}

/** As an interview names it: "bush front od". */
export function targetName({
  ref,
  side,
  isSwing,
}: Pick<Target, "ref" | "side" | "isSwing">): string {
  const what = side ?? (isSwing === true ? "swing" : undefined);
  return what === undefined ? ref : `${ref} ${what}`;
}

/** As a person reads it: "bush front, outside". */
export function targetLabel({
  ref,
  side,
  isSwing,
}: Pick<Target, "ref" | "side" | "isSwing">): string {
  if (isSwing === true) return `${ref}, its swing`;
  return side === null
    ? ref
    : `${ref}, ${side === "od" ? "outside" : "inside"}`;
}

/** Its own limits as they are written, else its nominal size. */
export function limitsText(
  { entry, side }: Target,
  system: "inch" | "mm",
): string {
  const range = ownRange(entry, side);
  if (range !== undefined)
    return showRange(range.low, range.high, system, range.step);
  const nominal = valueIn(entry, "NominalFact");
  return nominal === undefined
    ? ""
    : `nominal ${showLength(nominal.value, system, nominal.step)}`;
}

function ownRange(
  entry: Entry,
  side: TakingPlan["side"],
): LengthRange | undefined {
  switch (entry.kind) {
    case "bush":
      return valueIn(entry, side === "id" ? "IdFact" : "OdFact");
    case "pilot":
      return valueIn(entry, "OdFact");
    case "reamer":
      return valueIn(entry, "SizeFact")?.range;
    default:
      return valueIn(entry, "LimitsFact");
  }
}

/** Where its size is to be expected: its own limits, else its earlier readings, else its nominal size, else what its mate says; null where nothing does. */
export function expectedOf(
  shop: Shop,
  { ref, entry, side }: Target,
): TakingPlan["expected"] {
  const own = ownRange(entry, side);
  if (own !== undefined) return { low: own.low, high: own.high };
  const read = readingsOf(entry, side).flatMap(({ values }) =>
    values.map(({ value }) => value),
  );
  if (0 < read.length)
    return { low: Math.min(...read), high: Math.max(...read) };
  const nominal = valueIn(entry, "NominalFact")?.value;
  if (nominal !== undefined) return { low: nominal, high: nominal };
  const mate = mateRange(shop, ref, entry);
  return mate === undefined ? null : { low: mate.low, high: mate.high };
}

function mateRange(
  shop: Shop,
  ref: string,
  entry: Entry,
): { readonly low: number; readonly high: number } | undefined {
  if (entry.kind === "hole") {
    const bush = refsOfKind(shop, "bush").find(
      (each) => namedIn(shop, each)[0] === ref,
    );
    return valueIn(
      bush === undefined ? undefined : entryOf(shop, bush),
      "OdFact",
    );
  }
  if (entry.kind === "bore") {
    const host = hostOf(shop, ref);
    const id = valueIn(
      host === undefined ? undefined : entryOf(shop, host),
      "IdFact",
    );
    if (id !== undefined) return id;
  }
  const fits =
    entry.kind === "journal"
      ? fitsOfJournal(shop, ref)
      : entry.kind === "bore"
        ? fitsOfBore(shop, ref)
        : [];
  for (const fit of fits) {
    const mate = namedIn(shop, fit)[entry.kind === "journal" ? 1 : 0];
    if (mate === undefined) continue;
    const size = sizeOf(shop, mate);
    if (size.known) return size.value;
    const nominal = valueIn(entryOf(shop, mate), "NominalFact")?.value;
    if (nominal !== undefined) return { low: nominal, high: nominal };
  }
  return undefined;
}

/** A bore that a line cuts, in a bush, and no step says that the cut is done. */
export function isUncut(shop: Shop, { ref, entry }: Target): boolean {
  const line = entry.kind === "bore" ? lineOfBore(shop, ref) : undefined;
  if (line === undefined) return false;
  const isCut = refsOfKind(shop, "step").some((step) => {
    const { done, cuts } = stepValue(shop, step);
    return done && cuts.includes(line);
  });
  return (
    !isCut &&
    !allOf(entry, "ReadFact").some(
      ({ value }) =>
        value !== undefined && (value.stage ?? "finished") === "finished",
    )
  );
}

// The presses of a record: how much each bush closed, as a share of what Lamé's rings foretell of it, where all of it was read.
import { effectiveInterference } from "../core/press/interference.ts";
import type { System } from "../core/quantity/show.ts";
import { allOf, valueIn, type Fact } from "../model/entry.ts";
import { bushId } from "../model/evaluate/bush-size.ts";
import { closureOf, elasticLimitOf } from "../model/evaluate/press-closure.ts";
import { ringsOf } from "../model/evaluate/press-rings.ts";
import {
  interferenceOf,
  partsOf,
  smoothingOf,
  type Interference,
  type PressParts,
} from "../model/evaluate/press.ts";
import { readingsAt, type PlaceReadings } from "../model/evaluate/readings.ts";
import { settings } from "../model/evaluate/settings.ts";
import {
  materialOfFeature,
  placesOf,
  type Size,
} from "../model/evaluate/size.ts";
import type { OpenFile } from "../model/project.ts";
import { nameOf } from "../model/reference.ts";
import { entryOf, type Shop } from "../model/shop.ts";
import type { FactValues } from "../model/values.ts";
import {
  damagedIn,
  hasStray,
  homeOf,
  lastDay,
  meanOf,
  stepOf,
  unsignedIn,
  type Evidence,
  type LeftOut,
  type Why,
} from "./evidence.ts";

export interface ClosureDatum {
  readonly file: string;
  readonly bush: string;
  /** The entry that was read. */
  readonly bore: string;
  readonly material: string;
  /** Path of the crib that has the material; "" where it is a shipped one. */
  readonly crib: string;
  readonly construction: FactValues["ConstructionFact"];
  /** As bought, m. */
  readonly od: number;
  readonly id: number;
  readonly lot: string | undefined;
  /** Measured closure over that of Lamé's rings. */
  readonly ratio: number;
  /** What a step of the readings is of that. */
  readonly step: number;
  readonly date: string;
  readonly system: System;
}

/** A closure that is not at least this many steps of its readings teaches nothing. */
const LEAST_STEPS = 10;

export function closuresIn({
  shop,
  path,
  file,
}: OpenFile): Evidence<ClosureDatum> {
  const data: ClosureDatum[] = [];
  const leftOut: LeftOut[] = [];
  for (const entry of file.entries) {
    if (entry.kind !== "press" || homeOf(shop, entry.ref) !== path) continue;
    const parts = partsOf(shop, entry.ref);
    const bore = parts?.bore;
    if (parts === undefined || bore === undefined) continue;
    const found = closureIn(shop, entry.ref, parts, bore);
    if (found === undefined) continue;
    if (typeof found === "string")
      leftOut.push({
        about: "bush",
        subject: parts.bush,
        file: path,
        entry: bore,
        why: found,
      });
    else data.push({ ...found, file: path });
  }
  return { data, leftOut };
}

/** Undefined of a bush that nobody has read as pressed, or that is still to be pressed. */
function closureIn(
  shop: Shop,
  press: string,
  { bush, hole, part }: PressParts,
  bore: string,
): Omit<ClosureDatum, "file"> | Why | undefined {
  const facts = factsOf(shop, bush, hole, bore);
  if (facts === undefined || facts.pressed.length === 0) return undefined;
  if (facts.isDamaged) return "damaged";
  const sizes = sizesRead(shop, press, bush, hole, facts);
  if (typeof sizes === "string") return sizes;
  if (hasStray(shop, hole)) return "stray";
  if (isSplitAlong(shop, part)) return "split";
  const material = materialOfFeature(shop, bush);
  const entry = entryOf(shop, bush);
  const construction = valueIn(entry, "ConstructionFact");
  if (!material.known || construction === undefined) return "unknown";
  const foretold = foretoldIn(shop, press, sizes.interference);
  if (typeof foretold === "string") return foretold;
  const { after, id } = sizes;
  const { od } = sizes.interference;
  const step = Math.max(od.step ?? 0, id.step ?? 0, stepOf(after));
  if (foretold < LEAST_STEPS * step || foretold <= 0) return "coarse";
  return {
    bush,
    bore,
    material: nameOf(material.value.ref),
    crib: homeOf(shop, material.value.ref),
    construction,
    od: od.nominal,
    id: id.nominal,
    lot: valueIn(entry, "LotFact"),
    ratio: (id.nominal - meanOf(after)) / foretold,
    step: step / foretold,
    date: lastDay(after),
    system: settings(shop).system,
  };
}

interface ReadFacts {
  readonly bush: readonly Fact<"BushReadFact">[];
  readonly hole: readonly Fact<"ReadFact">[];
  /** Those of the bore as pressed. */
  readonly pressed: readonly Fact<"ReadFact">[];
  /** A line of the three that can't be read may be a reading. */
  readonly isDamaged: boolean;
}

/** What was read of the three; undefined where one of them is not there. */
function factsOf(
  shop: Shop,
  bush: string,
  hole: string,
  bore: string,
): ReadFacts | undefined {
  const bushEntry = entryOf(shop, bush);
  const holeEntry = entryOf(shop, hole);
  const boreEntry = entryOf(shop, bore);
  if (
    bushEntry === undefined ||
    holeEntry === undefined ||
    boreEntry === undefined
  )
    return undefined;
  const ofBush = allOf(bushEntry, "BushReadFact");
  const ofHole = allOf(holeEntry, "ReadFact");
  const ofBore = allOf(boreEntry, "ReadFact");
  return {
    bush: ofBush,
    hole: ofHole,
    pressed: ofBore.filter(({ value }) => value?.stage === "pressed"),
    isDamaged:
      damagedIn(bushEntry, ofBush) ||
      damagedIn(holeEntry, ofHole) ||
      damagedIn(boreEntry, ofBore),
  };
}

interface SizesRead {
  /** Of the bore as pressed. */
  readonly after: readonly PlaceReadings[];
  /** Of the bush as bought. */
  readonly id: Size;
  readonly interference: Interference;
}

/** The sizes, each read, signed and dated; or why they don't count. */
function sizesRead(
  shop: Shop,
  press: string,
  bush: string,
  hole: string,
  facts: ReadFacts,
): SizesRead | Why {
  const after = readingsAt(shop, facts.pressed, "finished", ["pressed"], () =>
    materialOfFeature(shop, bush),
  );
  const holePlaces = placesOf(shop, hole);
  const id = bushId(shop, bush);
  const interference = interferenceOf(shop, press);
  if (!after.known) return after.silent ? "damaged" : "unknown";
  if (!holePlaces.known) return holePlaces.silent ? "damaged" : "unknown";
  if (!interference.known) return interference.silent ? "damaged" : "unknown";
  if (!id.known) return id.silent ? "damaged" : "unknown";
  const { od } = interference.value;
  if (![od, id.value].every(isRead) || holePlaces.value.length === 0)
    return "unread";
  return (
    unsignedIn(facts.pressed, after.value) ??
    unsignedIn(facts.hole, holePlaces.value) ??
    unsignedIn(facts.bush, od.places) ??
    unsignedIn(facts.bush, id.value.places) ?? {
      after: after.value,
      id: id.value,
      interference: interference.value,
    }
  );
}

/** The closure that Lamé's rings foretell, m; or why they foretell no one closure. */
function foretoldIn(
  shop: Shop,
  press: string,
  interference: Interference,
): number | Why {
  const rings = ringsOf(shop, press);
  const loss = smoothingOf(shop, press);
  const closure = closureOf(shop, press);
  const limit = elasticLimitOf(shop, press);
  if (!rings.known || !loss.known || !closure.known || !limit.known)
    return "unknown";
  if (rings.value.form === "bush-overhangs") return "overhangs";
  if (rings.value.form === "stiffer") return "stiffer";
  if (limit.value.interference < interference.high) return "yields";
  // what smoothing takes is foretold apart, or a record that uses the lesson would take it twice
  const tight = effectiveInterference(interference.nominal, loss.value.nominal);
  return closure.value.perUnit.low * tight;
}

function isSplitAlong(shop: Shop, part: string): boolean {
  return valueIn(entryOf(shop, part), "SplitFact") === "along";
}

function isRead(size: Size): boolean {
  return size.from === "readings";
}

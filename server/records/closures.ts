// The presses of a record: how much each bush closed, as a share of what Lamé's rings foretell of it, where all of it was read.
import { effectiveInterference } from "../core/press/interference.ts";
import type { System } from "../core/quantity/show.ts";
import { allOf, valueIn } from "../model/entry.ts";
import { bushId } from "../model/evaluate/bush-size.ts";
import { closureOf, elasticLimitOf } from "../model/evaluate/press-closure.ts";
import { ringsOf } from "../model/evaluate/press-rings.ts";
import {
  interferenceOf,
  partsOf,
  smoothingOf,
  type PressParts,
} from "../model/evaluate/press.ts";
import { readingsAt } from "../model/evaluate/readings.ts";
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
  const entries = [bush, hole, bore].map((ref) => entryOf(shop, ref));
  const [bushEntry, holeEntry, boreEntry] = entries;
  if (
    bushEntry === undefined ||
    holeEntry === undefined ||
    boreEntry === undefined
  )
    return undefined;
  const facts = {
    bush: allOf(bushEntry, "BushReadFact"),
    hole: allOf(holeEntry, "ReadFact"),
    bore: allOf(boreEntry, "ReadFact"),
  };
  const pressed = facts.bore.filter(({ value }) => value?.stage === "pressed");
  const isDamaged =
    damagedIn(bushEntry, facts.bush) ||
    damagedIn(holeEntry, facts.hole) ||
    damagedIn(boreEntry, facts.bore);
  if (pressed.length === 0) return undefined;
  if (isDamaged) return "damaged";
  const material = materialOfFeature(shop, bush);
  const after = readingsAt(
    shop,
    pressed,
    "finished",
    ["pressed"],
    () => material,
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
  const unsigned =
    unsignedIn(pressed, after.value) ??
    unsignedIn(facts.hole, holePlaces.value) ??
    unsignedIn(facts.bush, od.places) ??
    unsignedIn(facts.bush, id.value.places);
  if (unsigned !== undefined) return unsigned;
  if (hasStray(shop, hole)) return "stray";
  const rings = ringsOf(shop, press);
  if (isSplitAlong(shop, part)) return "split";
  const loss = smoothingOf(shop, press);
  const closure = closureOf(shop, press);
  const limit = elasticLimitOf(shop, press);
  const construction = valueIn(bushEntry, "ConstructionFact");
  if (
    !rings.known ||
    !loss.known ||
    !closure.known ||
    !limit.known ||
    !material.known ||
    construction === undefined
  )
    return "unknown";
  if (rings.value.form === "bush-overhangs") return "overhangs";
  if (rings.value.form === "stiffer") return "stiffer";
  // what smoothing takes is foretold apart, or a record that uses the lesson would take it twice
  const tight = effectiveInterference(
    interference.value.nominal,
    loss.value.nominal,
  );
  if (limit.value.interference < interference.value.high) return "yields";
  const foretold = closure.value.perUnit.low * tight;
  const step = Math.max(od.step ?? 0, id.value.step ?? 0, stepOf(after.value));
  if (foretold < LEAST_STEPS * step || foretold <= 0) return "coarse";
  return {
    bush,
    bore,
    material: nameOf(material.value.ref),
    crib: homeOf(shop, material.value.ref),
    construction,
    od: od.nominal,
    id: id.value.nominal,
    lot: valueIn(bushEntry, "LotFact"),
    ratio: (id.value.nominal - meanOf(after.value)) / foretold,
    step: step / foretold,
    date: lastDay(after.value),
    system: settings(shop).system,
  };
}

function isSplitAlong(shop: Shop, part: string): boolean {
  return valueIn(entryOf(shop, part), "SplitFact") === "along";
}

function isRead(size: Size): boolean {
  return size.from === "readings";
}

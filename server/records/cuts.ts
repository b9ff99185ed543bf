// The cuts of a record: what each reamer left over its own size, both at 20 °C, where the bore was read after the cut.
import { oversizeOfCut } from "../core/line/cut-size.ts";
import type { System } from "../core/quantity/show.ts";
import { allOf, given } from "../model/entry.ts";
import { concessionOf } from "../model/evaluate/concessions.ts";
import {
  boresOfLine,
  fitsOfBore,
  lineOfBore,
} from "../model/evaluate/index-of.ts";
import { orderOf } from "../model/evaluate/order.ts";
import { readingsAt } from "../model/evaluate/readings.ts";
import { cutHeat, reamerValue } from "../model/evaluate/reamer.ts";
import { settings } from "../model/evaluate/settings.ts";
import { materialOfFeature } from "../model/evaluate/size.ts";
import type { OpenFile } from "../model/project.ts";
import { nameOf } from "../model/reference.ts";
import { entryOf, refOf, refsOfKind, type Shop } from "../model/shop.ts";
import {
  damagedIn,
  hasStray,
  homeOf,
  lastDay,
  meanOf,
  openedOn,
  stepOf,
  unsignedIn,
  type Why,
} from "./evidence.ts";

/** A cut that a reamer made, learned from or not: the number of its cuts is what wears it. */
export interface Cut {
  readonly reamer: string;
  /** Path of the crib that has it. */
  readonly crib: string;
  readonly file: string;
  readonly bore: string;
  /** The day of the cut as far as the record says one. */
  readonly date: string;
  /** Its place in the order of its line. */
  readonly order: number;
  readonly system: System;
  /** A departure of this bore, or of a fit in it, has been signed for. It counts all the same: it is what the reamer cut. */
  readonly conceded: boolean;
  readonly learned:
    | {
        readonly material: string;
        readonly oversize: number;
        /** Of the readings, m. */
        readonly step: number;
      }
    | undefined;
  readonly why: Why | undefined;
}

export function cutsIn({ shop, path, file }: OpenFile): readonly Cut[] {
  return file.entries.flatMap((entry) => {
    if (entry.kind !== "line" || homeOf(shop, entry.ref) !== path) return [];
    const ream = given(entry, "ReamFact");
    const reamer = ream.state === "given" ? refOf(shop, ream.value) : undefined;
    if (reamer === undefined || entryOf(shop, reamer) === undefined) return [];
    return boresOfLine(shop, entry.ref)
      .filter((bore) => lineOfBore(shop, bore) === entry.ref)
      .flatMap((bore, order) => {
        const found = cutOf(shop, reamer, entry.ref, bore);
        if (found === undefined) return [];
        return [
          {
            reamer,
            crib: homeOf(shop, reamer),
            file: path,
            bore,
            date:
              found.date ?? dayOfCut(shop, entry.ref) ?? openedOn(shop) ?? "",
            order,
            system: settings(shop).system,
            conceded: isConceded(shop, bore),
            learned: found.learned,
            why: found.why,
          },
        ];
      });
  });
}

interface Found {
  readonly learned?: Cut["learned"];
  readonly why?: Why;
  readonly date?: string;
}

/** Undefined of a bore that nobody has cut yet: it is neither learned from nor left out. */
function cutOf(
  shop: Shop,
  reamer: string,
  line: string,
  bore: string,
): Found | undefined {
  const entry = entryOf(shop, bore);
  if (entry === undefined) return undefined;
  const facts = allOf(entry, "ReadFact");
  const steps = stepsThatCut(shop, line);
  const isDone = steps.length === 0 || steps.some((step) => step.done);
  if (damagedIn(entry, facts)) return { why: "damaged" };
  const finished = facts.filter(
    ({ value }) => (value?.stage ?? "finished") === "finished",
  );
  if (finished.length === 0)
    return 0 < steps.length && isDone ? { why: "unread" } : undefined;
  const material = materialOfFeature(shop, bore);
  const places = readingsAt(
    shop,
    finished,
    "finished",
    ["finished"],
    () => material,
  );
  if (!places.known) return { why: places.silent ? "damaged" : "unknown" };
  const signed = unsignedIn(finished, places.value);
  if (signed !== undefined) return { why: signed };
  const date = lastDay(places.value);
  const done = dayOfCut(shop, line);
  if (!isDone || (done !== undefined && date < done)) return { why: "early" };
  if (hasStray(shop, bore)) return { why: "stray", date };
  const tool = reamerValue(shop, reamer);
  const heat = cutHeat(shop, reamer, line, bore);
  if (!material.known || !tool.known || tool.value.size === undefined)
    return { why: "unknown", date };
  if (!heat.known) return { why: heat.silent ? "damaged" : "unknown", date };
  const { size } = tool.value;
  const over = oversizeOfCut(
    meanOf(places.value),
    size.kind === "measured" ? size.mean : (size.low + size.high) / 2,
    heat.value,
  );
  if (!over.valid) return { why: "unknown", date };
  return {
    learned: {
      material: nameOf(material.value.ref),
      oversize: over.value,
      step: stepOf(places.value),
    },
    date,
  };
}

function stepsThatCut(
  shop: Shop,
  line: string,
): ReturnType<typeof orderOf>["steps"] {
  return orderOf(shop).steps.filter((step) => step.cuts.includes(line));
}

function dayOfCut(shop: Shop, line: string): string | undefined {
  return stepsThatCut(shop, line).find((step) => step.done)?.date;
}

function isConceded(shop: Shop, bore: string): boolean {
  const about = [bore, ...fitsOfBore(shop, bore)];
  return refsOfKind(shop, "concession").some((ref) => {
    const concession = concessionOf(shop, ref);
    return (
      concession?.who !== undefined &&
      concession.date !== undefined &&
      about.includes(concession.on)
    );
  });
}

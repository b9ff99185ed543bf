// Which classes of size fit a place, with the limits that each gives at the size before the caret.
import {
  readNumber,
  tenthsToMetres,
  toTenths,
} from "../core/quantity/exact.ts";
import {
  UNIT_OF_SYSTEM,
  showRange,
  type System,
} from "../core/quantity/show.ts";
import { unitOf } from "../core/quantity/units.ts";
import { classZones, parseClass } from "../core/fits/class-words.ts";
import {
  commonClassesAt,
  commonFitsAt,
  inchFitWords,
  preferredHoles,
  preferredShafts,
} from "../core/fits/common-classes.ts";
import type { Side } from "../model/classes.ts";
import { tokenText, type Caret } from "./completion-caret.ts";
import type { Offer } from "./completion-item.ts";

const STEP = { inch: 2.54e-7, mm: 1e-6 } as const;

/** The classes that can be written after `25 mm` or a bare `25`: with a bare size only those of the file's own system. */
export function classOffers(
  caret: Caret,
  side: Side | undefined,
  system: System | undefined,
  rank: number,
): readonly Offer[] {
  const sized = sizeBefore(caret, system);
  if (side === undefined || sized === undefined) return [];
  const { size, isBare } = sized;
  const takes = (own: System): boolean => !isBare || own === system;
  const iso = takes("mm") ? isoOffers(size, side, rank) : [];
  const inch = takes("inch") ? inchOffers(size, side, rank) : [];
  return sized.system === "inch" ? [...inch, ...iso] : [...iso, ...inch];
}

function isoOffers(size: number, side: Side, rank: number): readonly Offer[] {
  if (side === "fit")
    return commonFitsAt(size, "iso").map(({ word, clearance }, index) =>
      offer(
        word,
        `clearance ${text(clearance.least, clearance.most, "mm")}`,
        rank + index / 100,
      ),
    );
  const first = side === "hole" ? preferredHoles : preferredShafts;
  return commonClassesAt(size, side).map(({ word, zone }) =>
    offer(
      word,
      text(zone.lower, zone.upper, "mm"),
      rank + (first.includes(word) ? 0 : 0.5),
    ),
  );
}

function inchOffers(size: number, side: Side, rank: number): readonly Offer[] {
  if (side === "fit")
    return commonFitsAt(size, "inch").map(({ word, clearance }) =>
      offer(
        word,
        `clearance ${text(clearance.least, clearance.most, "inch")}`,
        rank,
      ),
    );
  return inchFitWords.flatMap((word) => {
    const read = parseClass(word);
    const zones = read.valid ? classZones(size, read.value) : read;
    const zone = zones.valid
      ? zones.value.find((each) => each.feature === side)
      : undefined;
    return zone === undefined
      ? []
      : [offer(word, text(zone.lower, zone.upper, "inch"), rank)];
  });
}

function offer(label: string, detail: string, rank: number): Offer {
  return { label, kind: "class", detail, rank };
}

function text(low: number, high: number, system: System): string {
  return showRange(low, high, system, STEP[system]);
}

/** The size just before the caret, in m, and the system that it is written in. */
function sizeBefore(
  caret: Caret,
  system: System | undefined,
):
  | { readonly size: number; readonly isBare: boolean; readonly system: System }
  | undefined {
  const last = tokenText(caret, caret.tokens.at(-1));
  const isBare = unitOf(last) === undefined;
  const unit = isBare
    ? system === undefined
      ? undefined
      : unitOf(UNIT_OF_SYSTEM[system])
    : unitOf(last);
  if (unit?.tenths === undefined) return undefined;
  const words = isBare ? caret.tokens : caret.tokens.slice(0, -1);
  const first = words[1];
  const end = words.at(-1);
  const read =
    first === undefined || end === undefined
      ? undefined
      : readNumber(caret.head.slice(first.start, end.end));
  if (read === undefined) return undefined;
  const isInch = ["in", "thou", "tenths", "uin"].includes(unit.symbol);
  return {
    size: tenthsToMetres(toTenths(read, unit.tenths)),
    isBare,
    system: isInch ? "inch" : "mm",
  };
}

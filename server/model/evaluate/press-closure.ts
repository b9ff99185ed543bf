// How far the bush's bore closes when it is pressed, up to which interference that holds, and the bore that it leaves.
import { closureBand, elasticLimit } from "../../core/press/boss.ts";
import { middle, type Band } from "../../core/quantity/band.ts";
import {
  boreAfterPress,
  effectiveInterference,
  type BeforePress,
} from "../../core/press/interference.ts";
import { showLength, showRange } from "../../core/quantity/show.ts";
import type { YieldOnset } from "../../core/press/yield.ts";
import {
  everyKnown,
  known,
  lacking,
  outside,
  readingOf,
  SILENT,
  statusOf,
  unknown,
  type Estimate,
  type Extent,
  type Known,
} from "../known.ts";
import { finer } from "../ranges.ts";
import type { Working } from "../result.ts";
import { query, type Shop } from "../shop.ts";
import { bushId } from "./bush-size.ts";
import {
  learnedClosure,
  showShare,
  type LearnedClosure,
} from "./closure-learned.ts";
import { lessonOfBush } from "./lessons.ts";
import { figureOf, pairOf, ringsOf, type Rings } from "./press-rings.ts";
import {
  interferenceOf,
  partsOf,
  smoothingOf,
  type Interference,
  type SmoothingLoss,
} from "./press.ts";
import { settings } from "./settings.ts";
import type { Size } from "./size.ts";

export interface Closure {
  /** Of the bore, per unit of effective interference. */
  readonly perUnit: Band;
  readonly id: Size;
}

/** Closure of the bush as bought; it needs its bore, its boss, and both materials. */
export const closureOf = query<Known<Closure>>("press-closure", (shop, ref) => {
  const parts = partsOf(shop, ref);
  if (parts === undefined) return SILENT;
  const rings = ringsOf(shop, ref);
  const id = bushId(shop, parts.bush);
  if (!rings.known || !id.known) return lacking(rings, id);
  const pair = pairOf(rings.value, id.value.nominal);
  const perUnit = closureBand(pair, rings.value.form);
  if (!perUnit.valid) return outside(perUnit.because);
  return known({ perUnit: perUnit.value, id: id.value });
});

/** The interference at which bush or boss first yields, the bush as bought: closure is not elastic past it. It needs both yields. */
export const elasticLimitOf = query<Known<YieldOnset>>(
  "press-elastic-limit",
  (shop, ref) => {
    const closure = closureOf(shop, ref);
    return closure.known
      ? elasticLimitAt(shop, ref, closure.value.id.nominal)
      : closure;
  },
);

/** The same with the bush's bore as it now is, m. */
export function elasticLimitAt(
  shop: Shop,
  press: string,
  bore: number,
): Known<YieldOnset> {
  const rings = ringsOf(shop, press);
  if (!rings.known) return rings;
  const yields = everyKnown([
    figureOf(shop, rings.value.bush, "yield"),
    figureOf(shop, rings.value.case, "yield"),
  ]);
  if (!yields.known) return yields;
  const [bush, housing] = yields.value;
  const found = elasticLimit(
    pairOf(rings.value, bore),
    { bush, case: housing },
    rings.value.form,
  );
  return found.valid ? known(found.value) : outside(found.because);
}

/** The closure of the bore, m, and the bore after pressing with the root-sum-square of its parts. */
export interface Pressed {
  readonly closure: Estimate;
  readonly bore: Estimate & BoreLeft;
}

/** What pressing leaves of the bush's bore, by all sizes at their worst ends together. Past the elastic limit it has to be measured. */
export const pressedOf = query<Known<Pressed>>("press-bore", (shop, ref) => {
  const parts = partsOf(shop, ref);
  if (parts === undefined) return SILENT;
  const interference = interferenceOf(shop, ref);
  const loss = smoothingOf(shop, ref);
  const rings = ringsOf(shop, ref);
  const closure = closureOf(shop, ref);
  const limit = elasticLimitOf(shop, ref);
  if (
    !interference.known ||
    !loss.known ||
    !rings.known ||
    !closure.known ||
    !limit.known
  )
    return lacking(interference, loss, rings, closure, limit);
  const { od, hole } = interference.value;
  const { id } = closure.value;
  // learned of bushes in a boss that is a plain ring, and of no other
  const lesson =
    rings.value.form === "plain"
      ? lessonOfBush(shop, parts.bush, { od: od.nominal, id: id.nominal })
      : known(undefined);
  if (!lesson.known) return lesson;
  const learned = learnedClosure(closure.value.perUnit, lesson.value);
  if (limit.value.interference < interference.value.high) {
    // closure-not-valid says why; a reading settles it
    return unknown(readingOf(parts.bore ?? parts.bush, " as pressed"));
  }
  const left = boreLeft(
    { id, od, hole },
    learned.perUnit,
    loss.value,
    limit.value.interference,
  );
  if (!left.known) return left;
  const closing = closingOf(
    shop,
    interference.value,
    rings.value,
    closure.value,
    learned,
  );
  return known({
    closure: closing,
    bore: {
      ...left.value,
      // nobody has read this bore, however well its parts are read
      status: "predicted",
      step: closing.step,
      working: boreWorking(shop, id, closing, left.value),
    },
  });
});

/** How much the bore closes, m. */
function closingOf(
  shop: Shop,
  interference: Interference,
  rings: Rings,
  { perUnit: lame, id }: Closure,
  learned: LearnedClosure,
): Estimate {
  const { system } = settings(shop);
  const { perUnit } = learned;
  const step = finer(interference.step, id.step);
  const held = {
    low: effectiveInterference(interference.low, 0),
    nominal: effectiveInterference(interference.nominal, 0),
    high: effectiveInterference(interference.high, 0),
  };
  const closed = {
    low: perUnit.low * held.low,
    nominal: middle(perUnit) * held.nominal,
    high: perUnit.high * held.high,
  };
  return {
    ...closed,
    // what other bushes did is no measurement of this one
    status: learned.isUsed ? "predicted" : statusOf(interference, id),
    step,
    working: [
      ...interference.working,
      ...rings.working,
      {
        formula:
          "C = 2Dd/((D² − d²)·Eb) ÷ {[(D² + d²)/(D² − d²) − νb]/Eb + [(Do² + D²)/(Do² − D²) + νh]/Eh}",
        with: `D ${showLength(rings.od, system, step)}, d ${showLength(id.nominal, system, step)}, Do ${showLength(rings.boss, system)}: C = ${showShare(lame)}`,
        source: "Lamé's rings in plane stress",
      },
      ...learned.working,
      {
        formula: "closure = C · interference",
        with: `${showShare(perUnit)} · ${showRange(held.low, held.high, system, step)} = ${showRange(closed.low, closed.high, system, step)}`,
        source: "",
      },
    ],
  };
}

interface BoreLeft extends Extent {
  /** Undefined where the bush may be loose in its hole. */
  readonly rootSumSquare: Band | undefined;
}

/** The bore after pressing, m: largest where smoothing takes most of the interference, smallest where it takes least. */
function boreLeft(
  sizes: BeforePress,
  perUnit: Band,
  loss: SmoothingLoss,
  elasticLimit: number,
): Known<BoreLeft> {
  const [nominal, largest, smallest] = [
    boreAfterPress(sizes, perUnit, loss.nominal, elasticLimit),
    boreAfterPress(sizes, perUnit, loss.high, elasticLimit),
    boreAfterPress(sizes, perUnit, loss.low, elasticLimit),
  ];
  if (!nominal.valid) return outside(nominal.because);
  if (!largest.valid || !smallest.valid) return SILENT;
  const { rootSumSquare } = nominal.value;
  return known({
    low: smallest.value.worst.low,
    nominal: nominal.value.nominal,
    high: largest.value.worst.high,
    rootSumSquare: rootSumSquare.valid ? rootSumSquare.value : undefined,
  });
}

function boreWorking(
  shop: Shop,
  id: Size,
  closing: Estimate,
  { low, high, rootSumSquare: sum }: BoreLeft,
): readonly Working[] {
  const { system } = settings(shop);
  const { step } = closing;
  return [
    ...id.working,
    ...closing.working,
    {
      formula: "bore after press = id − closure, worst case",
      with: `${showRange(id.low, id.high, system, step)} less ${showRange(closing.low, closing.high, system, step)} = ${showRange(low, high, system, step)}`,
      source: "",
    },
    {
      formula: "the same as root-sum-square of independent sizes",
      with:
        sum === undefined
          ? "not given: the bush may be loose in its hole"
          : showRange(sum.low, sum.high, system, step),
      source: "JCGM 100:2008, 5.1.2",
    },
  ];
}

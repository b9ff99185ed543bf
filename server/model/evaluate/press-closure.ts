// How far the bush's bore closes when it is pressed, up to which interference that holds, and the bore that it leaves.
import { closureBand, elasticLimit } from "../../core/press/boss.ts";
import type { Band } from "../../core/press/band.ts";
import {
  boreAfterPress as boreAfter,
  effectiveInterference,
} from "../../core/press/interference.ts";
import { showLength, showRange } from "../../core/quantity/show.ts";
import type { YieldOnset } from "../../core/press/yield.ts";
import {
  everyKnown,
  known,
  outside,
  readingOf,
  SILENT,
  statusOf,
  unknown,
  type Estimate,
  type Known,
} from "../known.ts";
import { finer } from "../ranges.ts";
import { query, type Shop } from "../shop.ts";
import { bushId } from "./bush-size.ts";
import { learnedClosure, showShare } from "./closure-learned.ts";
import { interferenceOf, partsOf, smoothingOf } from "./press.ts";
import { lessonOfBush } from "./lessons.ts";
import { figureOf, pairOf, ringsOf } from "./press-rings.ts";
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
  if (!rings.known || !id.known)
    return everyKnown<unknown>([rings, id]) as Known<never>; // one of them is not known
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
  readonly bore: Estimate & { readonly rootSumSquare: Band | undefined };
}

/** What pressing leaves of the bush's bore, by all sizes at their worst ends together. Past the elastic limit it has to be measured. */
export const pressedOf = query<Known<Pressed>>("press-bore", (shop, ref) => {
  const parts = partsOf(shop, ref);
  if (parts === undefined) return SILENT;
  const all = {
    interference: interferenceOf(shop, ref),
    loss: smoothingOf(shop, ref),
    rings: ringsOf(shop, ref),
    closure: closureOf(shop, ref),
    limit: elasticLimitOf(shop, ref),
  };
  const { interference, loss, rings, closure, limit } = all;
  if (
    !interference.known ||
    !loss.known ||
    !rings.known ||
    !closure.known ||
    !limit.known
  )
    return everyKnown<unknown>(Object.values(all)) as Known<never>; // one of them is not known
  const { od, hole, step: sizeStep } = interference.value;
  const { perUnit: lame, id } = closure.value;
  // learned of bushes in a boss that is a plain ring, and of no other
  const lesson =
    rings.value.form === "plain"
      ? lessonOfBush(shop, parts.bush, { od: od.nominal, id: id.nominal })
      : known(undefined);
  if (!lesson.known) return lesson;
  const learned = learnedClosure(lame, lesson.value);
  const { perUnit } = learned;
  if (limit.value.interference < interference.value.high) {
    // closure-not-valid says why; a reading settles it
    const of = parts.bore ?? parts.bush;
    return unknown(readingOf(of, " as pressed"));
  }
  const after = (smoothing: number): ReturnType<typeof boreAfter> =>
    boreAfter({ id, od, hole }, perUnit, smoothing, limit.value.interference);
  const [nominal, most, least] = [
    after(loss.value.nominal),
    after(loss.value.low),
    after(loss.value.high),
  ];
  if (!nominal.valid) return outside(nominal.because);
  if (!most.valid || !least.valid) return SILENT;
  const { system } = settings(shop);
  const step = finer(sizeStep, id.step);
  const at = (value: number): number => effectiveInterference(value, 0);
  const closed = {
    low: perUnit.low * at(interference.value.low),
    nominal:
      ((perUnit.low + perUnit.high) / 2) * at(interference.value.nominal),
    high: perUnit.high * at(interference.value.high),
  };
  const ratio = showShare(perUnit);
  const closureWorking = [
    ...interference.value.working,
    ...rings.value.working,
    {
      formula:
        "C = 2Dd/((D² − d²)·Eb) ÷ {[(D² + d²)/(D² − d²) − νb]/Eb + [(Do² + D²)/(Do² − D²) + νh]/Eh}",
      with: `D ${showLength(rings.value.od, system, step)}, d ${showLength(id.nominal, system, step)}, Do ${showLength(rings.value.boss, system)}: C = ${showShare(lame)}`,
      source: "Lamé's rings in plane stress",
    },
    ...learned.working,
    {
      formula: "closure = C · interference",
      with: `${ratio} · ${showRange(at(interference.value.low), at(interference.value.high), system, step)} = ${showRange(closed.low, closed.high, system, step)}`,
      source: "",
    },
  ];
  const { rootSumSquare } = nominal.value;
  const bore = {
    low: most.value.worst.low,
    nominal: nominal.value.nominal,
    high: least.value.worst.high,
  };
  const status = statusOf(interference.value, id);
  const sum = rootSumSquare.valid ? rootSumSquare.value : undefined;
  return known({
    closure: {
      low: closed.low,
      nominal: closed.nominal,
      high: closed.high,
      // what other bushes did is no measurement of this one
      status: learned.isUsed ? "predicted" : status,
      step,
      working: closureWorking,
    },
    bore: {
      low: bore.low,
      nominal: bore.nominal,
      high: bore.high,
      // nobody has read this bore, however well its parts are read
      status: "predicted",
      step,
      rootSumSquare: sum,
      working: [
        ...id.working,
        ...closureWorking,
        {
          formula: "bore after press = id − closure, worst case",
          with: `${showRange(id.low, id.high, system, step)} less ${showRange(closed.low, closed.high, system, step)} = ${showRange(bore.low, bore.high, system, step)}`,
          source: "",
        },
        {
          formula: "the same as root-sum-square of independent sizes",
          with:
            sum === undefined
              ? "not given: the bush may be loose in its hole"
              : showRange(sum.low, sum.high, system, step),
          source: "JCGM 100:2008, 5.1.2 (from memory)",
        },
      ],
    },
  });
});

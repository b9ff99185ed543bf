// A press fit: which parts it joins, how much the bush is over the hole, and what smoothing takes of that. Its rings are press-rings.ts's,
// and what follows for bore, pressure and heat its other neighbours' (press-closure.ts, press-pressure.ts, press-heat.ts).
import { wanted } from "./wanted.ts";
import type { Budget } from "../../core/readings/budget.ts";
import { interferenceBand } from "../../core/press/interference.ts";
import { smoothing as smoothingOfFinishes } from "../../core/press/smoothing.ts";
import {
  lengthDigits,
  showLength,
  showRange,
} from "../../core/quantity/show.ts";
import { given } from "../entry.ts";
import {
  known,
  lacking,
  outside,
  SILENT,
  statusOf,
  type Estimate,
  type Extent,
  type Known,
} from "../known.ts";
import { finer } from "../ranges.ts";
import type { Working } from "../result.ts";
import { entryOf, query } from "../shop.ts";
import { differenceAtBest, judgeAtBest, type AtBest } from "./at-best.ts";
import { bushOd } from "./bush-size.ts";
import { boresOfHost, namedIn, pressesOfBush } from "./index-of.ts";
import { bushOfBore } from "./line-bores.ts";
import { differenceOf } from "./setting.ts";
import { settings } from "./settings.ts";
import { hostOf, sizeOf, type Judged, type Size } from "./size.ts";

export interface PressParts {
  readonly bush: string;
  readonly hole: string;
  readonly part: string;
  /** The running bore in the bush; undefined where none is written. */
  readonly bore: string | undefined;
}

/** What a press joins; undefined while one of its names leads nowhere. */
export const partsOf = query<PressParts | undefined>(
  "press-parts",
  (shop, ref) => {
    const [bush, hole] = namedIn(shop, ref);
    const part = hole === undefined ? undefined : hostOf(shop, hole);
    if (bush === undefined || hole === undefined || part === undefined)
      return undefined;
    return { bush, hole, part, bore: boresOfHost(shop, bush)[0] };
  },
);

/** The press that holds the bush that a bore is in; undefined for a bore in a part, and for a bush that no press names. */
export const pressOfBore = query<string | undefined>(
  "press-of-bore",
  (shop, ref) => {
    const bush = bushOfBore(shop, ref);
    return bush === undefined ? undefined : pressesOfBush(shop, bush)[0];
  },
);

/** Loss on diameter, m. */
export interface SmoothingLoss extends Extent {
  readonly working: Working;
}

/** What smoothing takes of the interference: as written, else from both finishes, else nothing, which is said. */
export const smoothingOf = query<Known<SmoothingLoss>>(
  "press-smoothing",
  (shop, ref) => {
    const parts = partsOf(shop, ref);
    const entry = entryOf(shop, ref);
    if (parts === undefined || entry === undefined) return SILENT;
    const { system } = settings(shop);
    const written = given(entry, "SmoothingFact");
    if (written.state === "damaged") return SILENT;
    if (written.state === "given") {
      const { value, step } = written.value;
      return known({
        nominal: value,
        low: value,
        high: value,
        working: {
          formula: "smoothing = as written",
          with: showLength(value, system, step),
          source: "",
        },
      });
    }
    const [bush, hole] = [parts.bush, parts.hole].map((of) => {
      const owner = entryOf(shop, of);
      return owner === undefined
        ? ({ state: "damaged" } as const)
        : given(owner, "FinishFact");
    });
    if (bush?.state === "damaged" || hole?.state === "damaged") return SILENT;
    if (bush?.state !== "given" || hole?.state !== "given")
      return known({
        nominal: 0,
        low: 0,
        high: 0,
        working: {
          formula: "smoothing = none",
          with: `assumed: the finishes of ${parts.bush} and ${parts.hole} are not both written`,
          source: "",
        },
      });
    const found = smoothingOfFinishes(bush.value, hole.value);
    if (!found.valid) return outside(found.because);
    const { loss, low, high, fromRa } = found.value;
    // a smoothing of 20 µin needs its own digits
    const step = loss / 100;
    const ratio = fromRa
      ? `, with Rz 6 Ra (4 to 7: ${showRange(low, high, system, step)})`
      : "";
    return known({
      nominal: loss,
      low,
      high,
      working: {
        formula: "smoothing = 0.4 · (Rz of the bush's od + Rz of the hole)",
        with: `${showLength(loss, system, step)}${ratio}`,
        source: "DIN 7190-1:2017, interference fits (as a manual quotes it)",
      },
    });
  },
);

export interface Interference extends Estimate {
  /** Bush od less hole as measured or within limits, before smoothing, m. */
  readonly asMade: Extent;
  /** The same at best, where a part is foretold. */
  readonly atBest: AtBest;
  readonly od: Size;
  readonly hole: Size;
  readonly budget: Budget | undefined;
}

/** Bush over hole less smoothing, diametral; negative where the bush is loose. */
export const interferenceOf = query<Known<Interference>>(
  "press-interference",
  (shop, ref) => {
    const parts = partsOf(shop, ref);
    if (parts === undefined) return SILENT;
    const bush = bushOd(shop, parts.bush);
    const bore = sizeOf(shop, parts.hole);
    const loss = smoothingOf(shop, ref);
    if (!bush.known || !bore.known) return lacking(bush, bore);
    if (!loss.known) return loss;
    const [od, hole] = [bush.value, bore.value];
    const made = interferenceBand(od, hole);
    if (!made.valid) return outside(made.because);
    const asMade = {
      low: made.value.low,
      nominal: od.nominal - hole.nominal,
      high: made.value.high,
    };
    const { system } = settings(shop);
    const step = finer(od.step, hole.step);
    const less = (value: number): string =>
      loss.value.nominal === 0
        ? ""
        : ` − ${showLength(value, system, loss.value.nominal / 100)}`;
    const low = asMade.low - loss.value.high;
    const high = asMade.high - loss.value.low;
    const difference = differenceOf(hole, od);
    return known({
      low,
      nominal: asMade.nominal - loss.value.nominal,
      high,
      status: statusOf(od, hole),
      step,
      asMade,
      atBest: differenceAtBest(od, hole),
      od,
      hole,
      budget: difference?.budget,
      working: [
        ...od.working,
        ...hole.working,
        loss.value.working,
        {
          formula:
            "least interference = smallest od − largest hole − smoothing",
          with: `${lengthDigits(od.low, system, step)} − ${lengthDigits(hole.high, system, step)}${less(loss.value.high)} = ${showLength(low, system, step)}`,
          source: "",
        },
        {
          formula: "most interference = largest od − smallest hole − smoothing",
          with: `${lengthDigits(od.high, system, step)} − ${lengthDigits(hole.low, system, step)}${less(loss.value.low)} = ${showLength(high, system, step)}`,
          source: "",
        },
        ...(difference?.working === undefined ? [] : [difference.working]),
      ],
    });
  },
);

/** The interference as made, before smoothing, against what is wanted. */
export const interferenceVerdict = query<Judged | undefined>(
  "press-verdict",
  (shop, ref) => {
    const found = interferenceOf(shop, ref);
    const want = wanted(shop, ref);
    if (!found.known || want?.known !== true) return undefined;
    const { asMade, status, atBest, budget } = found.value;
    return judgeAtBest(shop, { ...asMade, status, atBest }, want.value, budget);
  },
);

// Results of a press fit. All diameters and interferences are diametral.
import { odToMake } from "../evaluate/bush-to-make.ts";
import { showForces, showPressures } from "../../core/quantity/show-force.ts";
import { showRange, type System } from "../../core/quantity/show.ts";
import { pressedOf } from "../evaluate/press-closure.ts";
import {
  freezeTo,
  heatTo,
  releaseOf,
  showTemperatures,
  type Reached,
} from "../evaluate/press-heat.ts";
import { forceOf, pressureOf, stressesOf } from "../evaluate/press-pressure.ts";
import { interferenceOf, interferenceVerdict } from "../evaluate/press.ts";
import { settings } from "../evaluate/settings.ts";
import { known, unknown, type Estimate, type Known } from "../known.ts";
import {
  lengthResult,
  numberResult,
  sketch,
  unknownResult,
  type Sketch,
} from "../make-result.ts";
import type { Result, Verdict } from "../result.ts";
import type { Shop } from "../shop.ts";

export function pressSketches(shop: Shop, ref: string): readonly Sketch[] {
  const { system } = settings(shop);
  const length = (
    kind: string,
    found: Known<Estimate>,
    verdict?: () => Verdict | undefined,
  ): Sketch =>
    sketch(kind, found, () =>
      found.known
        ? lengthResult({ entry: ref, kind }, system, found.value, verdict?.())
        : unknownResult({ entry: ref, kind }, "m", found),
    );
  const temperature = (kind: string, found: Known<Reached>): Sketch =>
    sketch(kind, found, () => temperatureResult(ref, kind, found, system));
  const stresses = stressesOf(shop, ref);
  const pressed = pressedOf(shop, ref);
  return [
    length(
      "interference",
      interferenceOf(shop, ref),
      () => interferenceVerdict(shop, ref)?.verdict,
    ),
    shown(
      ref,
      "contact-pressure",
      "Pa",
      pressureOf(shop, ref),
      showPressures,
      system,
    ),
    shown(
      ref,
      "bush-stress",
      "Pa",
      part(stresses, "bush"),
      showPressures,
      system,
    ),
    shown(
      ref,
      "hole-stress",
      "Pa",
      part(stresses, "hole"),
      showPressures,
      system,
    ),
    length("bore-closure", part(pressed, "closure")),
    sketch("bore-after-press", pressed, () =>
      boreAfterPress(ref, pressed, system),
    ),
    shown(ref, "press-force", "N", forceOf(shop, ref), showForces, system),
    temperature("heat-to", heatTo(shop, ref)),
    temperature("freeze-to", freezeTo(shop, ref)),
    length("bush-od-to-make", odToMake(shop, ref)),
    temperature("release-temperature", releaseOf(shop, ref)),
  ];
}

function part<K extends string, T>(
  whole: Known<Readonly<Record<K, T>>>,
  key: K,
): Known<T> {
  return whole.known ? known(whole.value[key]) : whole;
}

function shown(
  entry: string,
  kind: string,
  unit: string,
  found: Known<Estimate>,
  show: (low: number, high: number, system: System) => string,
  system: System,
): Sketch {
  return sketch(kind, found, () => {
    if (!found.known) return unknownResult({ entry, kind }, unit, found);
    const { low, high, status, working } = found.value;
    return numberResult({ entry, kind }, unit, found.value, {
      status,
      working,
      text: show(low, high, system),
    });
  });
}

function boreAfterPress(
  entry: string,
  pressed: ReturnType<typeof pressedOf>,
  system: System,
): Result {
  const where = { entry, kind: "bore-after-press" };
  if (!pressed.known) return unknownResult(where, "m", pressed);
  const { bore } = pressed.value;
  const { low, high, status, step, working, rootSumSquare } = bore;
  const worst = showRange(low, high, system, step);
  return numberResult(where, "m", bore, {
    status,
    working,
    text:
      rootSumSquare === undefined
        ? worst
        : `${worst}, by root-sum-square ${showRange(rootSumSquare.low, rootSumSquare.high, system, step)}`,
    step,
  });
}

/** A temperature; where none does it, the text says why, and that is no fault of the record. */
function temperatureResult(
  entry: string,
  kind: string,
  found: Known<Reached>,
  system: System,
): Result {
  const where = { entry, kind };
  if (!found.known) return unknownResult(where, "degC", found);
  if (!found.value.reached)
    return {
      ...unknownResult(where, "degC", unknown()),
      text: found.value.because,
    };
  const { low, high, status, working } = found.value.value;
  return numberResult(where, "degC", found.value.value, {
    status,
    working,
    text: showTemperatures(low, high, system),
  });
}

// A running bore warm or cold: a bush in its case as both grow, or a bore in a part without a bush. The shaft's half is press-hot.ts's.
import { notValid, valid, type Answer } from "../../core/answer.ts";
import { middle, type Band } from "../../core/quantity/band.ts";
import { closureBand } from "../../core/press/boss.ts";
import { effectiveInterference } from "../../core/press/interference.ts";
import {
  pressAtTemperature,
  sizeAtTemperature,
} from "../../core/press/temperature.ts";
import { showRange, showTemperature } from "../../core/quantity/show.ts";
import {
  known,
  lacking,
  need,
  outside,
  SILENT,
  statusOf,
  unknown,
  type Estimate,
  type Extent,
  type Known,
} from "../known.ts";
import type { Working } from "../result.ts";
import type { Shop } from "../shop.ts";
import type { Bodies } from "../values.ts";
import type { Clearance } from "./fit.ts";
import { elasticLimitAt } from "./press-closure.ts";
import { expansionsOf } from "./press-heat.ts";
import { figureOf, pairOf, ringsOf } from "./press-rings.ts";
import { interferenceOf, pressOfBore } from "./press.ts";
import { settings } from "./settings.ts";
import { hostOf, materialOfFeature } from "./size.ts";
import { kindOf } from "../reference.ts";

export type When = "hot" | "cold";

/** The running bore at a temperature, m. */
export interface WarmBore extends Extent {
  readonly status: Estimate["status"];
  /** What is left of the interference there, m; undefined for a bore in a part. */
  readonly interference: Band | undefined;
  /** The case has let the bush go: at its least interference, or at all. */
  readonly released: "no" | "maybe" | "yes";
  readonly working: readonly Working[];
}

/** The temperature of one body, °C, as a `hot` or `cold` line of a fit writes it. */
export function temperatureOf(
  fit: string,
  when: When,
  body: "shaft" | "bush" | "case",
  value: number | undefined,
): Known<number> {
  return value === undefined
    ? unknown(
        need(
          fit,
          when,
          `the temperature of the ${body} on the \`${when}\` line of ${fit}`,
        ),
      )
    : known(value);
}

/** The bore that a fit runs in, its bodies as warm as a line says. */
export function warmBore(
  shop: Shop,
  fit: string,
  when: When,
  bore: string,
  at20: Clearance,
  bodies: Bodies,
): Known<WarmBore> {
  const host = hostOf(shop, bore);
  if (host === undefined) return SILENT;
  const housing = temperatureOf(fit, when, "case", bodies.case);
  if (!housing.known) return housing;
  if (kindOf(host) !== "bush") return inPart(shop, bore, at20, housing.value);
  const press = pressOfBore(shop, bore);
  if (press === undefined)
    return unknown(need(host, "press", `the press of ${host}`));
  return inBush(shop, press, at20, {
    bush: bodies.bush ?? housing.value,
    case: housing.value,
    assumed: bodies.bush === undefined,
  });
}

function inPart(
  shop: Shop,
  bore: string,
  at20: Clearance,
  temperature: number,
): Known<WarmBore> {
  const material = materialOfFeature(shop, bore);
  if (!material.known) return material;
  const expansion = figureOf(shop, material.value, "expansion");
  if (!expansion.known) return expansion;
  const grown = grownAt(at20.bore, expansion.value, temperature);
  if (!grown.valid) return outside(grown.because);
  const { low, nominal, high } = grown.value;
  const { system } = settings(shop);
  return known({
    low,
    nominal,
    high,
    status: at20.bore.status,
    interference: undefined,
    released: "no",
    working: [
      {
        formula: "bore = its size at 20 °C · (1 + α · (T − 20 °C))",
        with: `case at ${showTemperature(temperature, system)}: ${showRange(low, high, system, at20.step)}`,
        source: material.value.expansion?.source ?? "",
      },
    ],
  });
}

/** The three sizes of a journal or a plain bore at a temperature. */
export function grownAt(
  size: Extent,
  expansion: number,
  temperature: number,
): Answer<Extent> {
  const [low, nominal, high] = [size.low, size.nominal, size.high].map((each) =>
    sizeAtTemperature(each, expansion, temperature),
  );
  if (low?.valid !== true || nominal?.valid !== true || high?.valid !== true)
    return notValid("a temperature or an expansion is out of all range");
  return valid({ low: low.value, nominal: nominal.value, high: high.value });
}

interface PressTemperatures {
  readonly bush: number;
  readonly case: number;
  /** The bush is taken to be as its case. */
  readonly assumed: boolean;
}

function inBush(
  shop: Shop,
  press: string,
  { bore, step }: Clearance,
  temperatures: PressTemperatures,
): Known<WarmBore> {
  const interference = interferenceOf(shop, press);
  const rings = ringsOf(shop, press);
  const expansions = expansionsOf(shop, press);
  if (!interference.known || !rings.known || !expansions.known)
    return lacking(interference, rings, expansions);
  const limit = elasticLimitAt(shop, press, bore.nominal);
  if (!limit.known) return limit;
  const pair = pairOf(rings.value, bore.nominal);
  const closure = closureBand(pair, rings.value.form);
  if (!closure.valid) return outside(closure.because);
  const warm = warmedBush(
    bore,
    interference.value,
    closure.value,
    (size, held, perUnit) =>
      pressAtTemperature(
        {
          bore: size,
          od: pair.od,
          interference: effectiveInterference(held, 0),
          closure: perUnit,
          bushExpansion: expansions.value.bush,
          caseExpansion: expansions.value.case,
        },
        temperatures.bush,
        temperatures.case,
      ),
  );
  if (!warm.valid) return outside(warm.because);
  const { left } = warm.value;
  if (limit.value.interference < Math.max(left.high, interference.value.high))
    return outside(
      "the press fit yields, so what the bush does warm is not elastic and it may be loose when cold again",
    );
  const released = 0 < left.low ? "no" : 0 < left.high ? "maybe" : "yes";
  return known({
    ...warm.value.bore,
    // where the case has not let go, the bore does not hang on how much the bush is over the hole
    status:
      released === "no" ? bore.status : statusOf(bore, interference.value),
    interference: left,
    released,
    working: [
      ...interference.value.working,
      expansions.value.working,
      ...bushWorking(shop, temperatures, warm.value, step),
    ],
  });
}

interface WarmBush {
  readonly bore: Extent;
  /** What is left of the interference, m. */
  readonly left: Band;
}

/**
 * The bore of a bush in its warm case, m: the smallest and the largest that it may be at 20 °C, each with either end of the interference and
 * of the closure. @param at one bore, interference and closure at the temperatures
 */
function warmedBush(
  bore: Extent,
  interference: Extent,
  closure: Band,
  at: (
    bore: number,
    interference: number,
    closure: number,
  ) => ReturnType<typeof pressAtTemperature>,
): Answer<WarmBush> {
  const nominal = at(bore.nominal, interference.nominal, middle(closure));
  if (!nominal.valid) return nominal;
  const smallest: number[] = [];
  const largest: number[] = [];
  const left: number[] = [];
  for (const held of [interference.low, interference.high])
    for (const perUnit of [closure.low, closure.high]) {
      const [low, high] = [
        at(bore.low, held, perUnit),
        at(bore.high, held, perUnit),
      ];
      if (!low.valid) return low;
      if (!high.valid) return high;
      smallest.push(low.value.bore);
      largest.push(high.value.bore);
      left.push(low.value.interference);
    }
  return valid({
    bore: {
      low: Math.min(...smallest),
      nominal: nominal.value.bore,
      high: Math.max(...largest),
    },
    left: { low: Math.min(...left), high: Math.max(...left) },
  });
}

function bushWorking(
  shop: Shop,
  temperatures: PressTemperatures,
  { bore, left }: WarmBush,
  step: number | undefined,
): readonly Working[] {
  const { system } = settings(shop);
  const assumed = temperatures.assumed
    ? " (assumed as its case: none is written)"
    : "";
  const letGo = left.high <= 0 ? ", the case has let the bush go" : "";
  return [
    {
      formula:
        "interference(T) = max(0, interference + D · [αb·(Tb − 20 °C) − αh·(Th − 20 °C)])",
      with: `bush ${showTemperature(temperatures.bush, system)}${assumed}, case ${showTemperature(temperatures.case, system)}: ${showRange(left.low, left.high, system, step)}${letGo}`,
      source: "",
    },
    {
      formula:
        "bore(T) = bore · (1 + αb·(Tb − 20 °C)) + C · [interference − interference(T)]",
      with: showRange(bore.low, bore.high, system, step),
      source: "",
    },
  ];
}

// A running bore warm or cold: a bush in its case as both grow, or a bore in a part without a bush. The shaft's half is press-hot.ts's.
import { notValid, valid, type Answer } from "../../core/answer.ts";
import type { Band } from "../../core/press/band.ts";
import { closureBand } from "../../core/press/boss.ts";
import { effectiveInterference } from "../../core/press/interference.ts";
import {
  pressAtTemperature,
  sizeAtTemperature,
} from "../../core/press/temperature.ts";
import { showRange, showTemperature } from "../../core/quantity/show.ts";
import {
  everyKnown,
  known,
  need,
  outside,
  SILENT,
  statusOf,
  unknown,
  type Estimate,
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

export type When = "hot" | "cold";

/** The running bore at a temperature. */
export interface WarmBore {
  readonly low: number;
  readonly nominal: number;
  readonly high: number;
  readonly status: Estimate["status"];
  readonly interference: Band | undefined;
  readonly released: "no" | "maybe" | "yes";
  readonly working: readonly Working[];
}

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
  if (!host.startsWith("bush ")) return inPart(shop, bore, at20, housing.value);
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
  size: SizeBand,
  expansion: number,
  temperature: number,
): Answer<SizeBand> {
  const [low, nominal, high] = [size.low, size.nominal, size.high].map((each) =>
    sizeAtTemperature(each, expansion, temperature),
  );
  if (low?.valid !== true || nominal?.valid !== true || high?.valid !== true)
    return notValid("a temperature or an expansion is out of all range");
  return valid({ low: low.value, nominal: nominal.value, high: high.value });
}

interface SizeBand {
  readonly low: number;
  readonly nominal: number;
  readonly high: number;
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
    return everyKnown<unknown>([
      interference,
      rings,
      expansions,
    ]) as Known<never>; // one of them is not known
  const limit = elasticLimitAt(shop, press, bore.nominal);
  if (!limit.known) return limit;
  const pair = pairOf(rings.value, bore.nominal);
  const closure = closureBand(pair, rings.value.form);
  if (!closure.valid) return outside(closure.because);
  const at = (
    size: number,
    held: number,
    perUnit: number,
  ): ReturnType<typeof pressAtTemperature> =>
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
    );
  const { low, nominal, high } = interference.value;
  const ends = [low, high].flatMap((held) =>
    [closure.value.low, closure.value.high].map((perUnit) => ({
      least: at(bore.low, held, perUnit),
      most: at(bore.high, held, perUnit),
    })),
  );
  const middle = at(
    bore.nominal,
    nominal,
    (closure.value.low + closure.value.high) / 2,
  );
  if (!middle.valid) return outside(middle.because);
  const least: number[] = [];
  const most: number[] = [];
  const held: number[] = [];
  for (const end of ends) {
    if (!end.least.valid) return outside(end.least.because);
    if (!end.most.valid) return outside(end.most.because);
    least.push(end.least.value.bore);
    most.push(end.most.value.bore);
    held.push(end.least.value.interference);
  }
  const left = { low: Math.min(...held), high: Math.max(...held) };
  if (limit.value.interference < Math.max(left.high, high))
    return outside(
      "the press fit yields, so what the bush does warm is not elastic and it may be loose when cold again",
    );
  const [from, to] = [Math.min(...least), Math.max(...most)];
  // where the case has not let go, the bore does not hang on how much the bush is over the hole
  const released =
    0 < left.low ? "no" : 0 < left.high ? "maybe" : ("yes" as const);
  const { system } = settings(shop);
  return known({
    low: from,
    nominal: middle.value.bore,
    high: to,
    status:
      released === "no" ? bore.status : statusOf(bore, interference.value),
    interference: left,
    released,
    working: [
      ...interference.value.working,
      expansions.value.working,
      {
        formula:
          "interference(T) = max(0, interference + D · [αb·(Tb − 20 °C) − αh·(Th − 20 °C)])",
        with: `bush ${showTemperature(temperatures.bush, system)}${temperatures.assumed ? " (assumed as its case: none is written)" : ""}, case ${showTemperature(temperatures.case, system)}: ${showRange(left.low, left.high, system, step)}${released === "yes" ? ", the case has let the bush go" : ""}`,
        source: "",
      },
      {
        formula:
          "bore(T) = bore · (1 + αb·(Tb − 20 °C)) + C · [interference − interference(T)]",
        with: showRange(from, to, system, step),
        source: "",
      },
    ],
  });
}

// The clearance of a running fit warm or cold, as its `hot` and `cold` lines say: the shaft's own growth, and the bush in its case as both
// grow, or a bore in a part without a bush.
import { notValid, valid, type Answer } from "../../core/answer.ts";
import type { Band } from "../../core/press/band.ts";
import { closureBand } from "../../core/press/boss.ts";
import { effectiveInterference } from "../../core/press/interference.ts";
import {
  pressAtTemperature,
  sizeAtTemperature,
} from "../../core/press/temperature.ts";
import { clearance as clearanceOf } from "../../core/line/clearance.ts";
import { showRange, showTemperature } from "../../core/quantity/show.ts";
import { allOf, given } from "../entry.ts";
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
import { entryOf, query, type Shop } from "../shop.ts";
import type { Bodies, LengthRange, Span } from "../values.ts";
import { clearance, type Clearance } from "./fit.ts";
import { namedIn } from "./index-of.ts";
import { elasticLimitAt } from "./press-closure.ts";
import { expansionsOf } from "./press-heat.ts";
import { figureOf, ringsOf } from "./press-rings.ts";
import { interferenceOf, pressOfBore } from "./press.ts";
import { settings } from "./settings.ts";
import { hostOf, judgeEstimate, materialOfFeature } from "./size.ts";
import type { Verdict } from "../result.ts";

export type When = "hot" | "cold";

export interface Warm extends Estimate {
  /** What is left of the interference there, m; undefined for a bore in a part. */
  readonly interference: Band | undefined;
  /** The case has let the bush go, at its least interference or at all. */
  readonly released: "no" | "maybe" | "yes";
  readonly verdict: Verdict;
}

export interface WarmCase {
  /** 1… in the order written. */
  readonly number: number;
  readonly span: Span;
  readonly found: Known<Warm>;
}

/** The running bore at a temperature. */
interface WarmBore {
  readonly low: number;
  readonly nominal: number;
  readonly high: number;
  readonly status: Estimate["status"];
  readonly interference: Band | undefined;
  readonly released: Warm["released"];
  readonly working: readonly Working[];
}

export const hotCases = query<readonly WarmCase[]>("hot", (shop, fit) =>
  casesOf(shop, fit, "hot"),
);
export const coldCases = query<readonly WarmCase[]>("cold", (shop, fit) =>
  casesOf(shop, fit, "cold"),
);

/** The band that a fit wants when hot or cold; undefined where none is written. */
export const wantedWarm = query<Known<LengthRange> | undefined>(
  "wanted-warm",
  (shop, fit) => {
    const entry = entryOf(shop, fit);
    if (entry === undefined) return SILENT;
    const want = given(entry, "WantHotFact");
    if (want.state === "damaged") return SILENT;
    return want.state === "absent" ? undefined : known(want.value);
  },
);

function casesOf(shop: Shop, fit: string, when: When): readonly WarmCase[] {
  const entry = entryOf(shop, fit);
  if (entry === undefined) return [];
  const facts = allOf(entry, when === "hot" ? "HotFact" : "ColdFact");
  return facts.map(({ value, span }, index) => ({
    number: index + 1,
    span,
    found: value === undefined ? SILENT : warmOf(shop, fit, when, value),
  }));
}

function warmOf(
  shop: Shop,
  fit: string,
  when: When,
  bodies: Bodies,
): Known<Warm> {
  const [journal, bore] = namedIn(shop, fit);
  if (journal === undefined || bore === undefined) return SILENT;
  const at20 = clearance(shop, fit);
  const material = materialOfFeature(shop, journal);
  const expansion = material.known
    ? figureOf(shop, material.value, "expansion")
    : material;
  const shaft = temperatureOf(fit, when, "shaft", bodies.shaft);
  if (!at20.known || !expansion.known || !shaft.known)
    return everyKnown<unknown>([at20, shaft, expansion]) as Known<never>; // one of them is not known
  const { system } = settings(shop, "job");
  const { step } = at20.value;
  const coldShaft = at20.value.journal;
  const grown = grownAt(coldShaft, expansion.value, shaft.value);
  if (!grown.valid) return outside(grown.because);
  const warmShaft = grown.value;
  const warm = warmBore(shop, fit, when, bore, at20.value, bodies);
  if (!warm.known) return warm;
  const { low, nominal, high } = warm.value;
  const left = clearanceOf(
    { smallest: low, mean: nominal, largest: high },
    {
      smallest: warmShaft.low,
      mean: warmShaft.nominal,
      largest: warmShaft.high,
    },
  );
  if (!left.valid) return outside(left.because);
  const { least, mean, most } = left.value;
  const status = statusOf(coldShaft, warm.value);
  const range = { low: least, nominal: mean, high: most, status };
  return known({
    ...range,
    step,
    interference: warm.value.interference,
    released: warm.value.released,
    verdict: verdictOf(shop, fit, range, at20.value),
    working: [
      ...at20.value.working,
      ...warm.value.working,
      {
        formula: "journal = its size at 20 °C · (1 + α · (T − 20 °C))",
        with: `shaft at ${showTemperature(shaft.value, system)}: ${showRange(warmShaft.low, warmShaft.high, system, step)}`,
        source: material.known ? (material.value.expansion?.source ?? "") : "",
      },
      {
        formula: `${when} clearance = bore − journal, both as warm as written`,
        with: `${showRange(low, high, system, step)} less ${showRange(warmShaft.low, warmShaft.high, system, step)} = ${showRange(least, most, system, step)}`,
        source: "",
      },
    ],
  });
}

/** Against `want-hot`; with none, only that no clearance is left is out. */
function verdictOf(
  shop: Shop,
  fit: string,
  range: Parameters<typeof judgeEstimate>[1],
  { budget }: Clearance,
): Verdict {
  const want = wantedWarm(shop, fit);
  if (want?.known === true)
    return judgeEstimate(shop, range, want.value, budget).verdict;
  if (want !== undefined) return "none";
  const end = range.status === "measured" ? range.low : range.high;
  return end <= 0 ? "out" : "none";
}

function temperatureOf(
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

function warmBore(
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
  const { system } = settings(shop, "job");
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
function grownAt(
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
  const pair = { ...rings.value, bore: bore.nominal };
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
  const { system } = settings(shop, "job");
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

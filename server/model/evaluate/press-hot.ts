// The clearance of a running fit warm or cold, as its `hot` and `cold` lines say: the shaft's own growth against its bore as warm
// (warm-bore.ts), and the verdict on it.
import { clearance as clearanceOf } from "../../core/line/clearance.ts";
import { metresToTenths } from "../../core/quantity/exact.ts";
import { showRange, showTemperature } from "../../core/quantity/show.ts";
import { allOf, given } from "../entry.ts";
import {
  known,
  lacking,
  outside,
  SILENT,
  statusOf,
  type Estimate,
  type Known,
} from "../known.ts";
import type { Verdict } from "../result.ts";
import { entryOf, query, queryOfFacts, type Shop } from "../shop.ts";
import type { Bodies, LengthRange, Span } from "../values.ts";
import { judgeAtBest, type AtBest } from "./at-best.ts";
import { atBest, clearance, type Clearance } from "./fit.ts";
import { namedIn } from "./index-of.ts";
import { figureOf } from "./press-rings.ts";
import { settings } from "./settings.ts";
import { materialOfFeature } from "./size.ts";
import {
  grownAt,
  temperatureOf,
  warmBore,
  type WarmBore,
  type When,
} from "./warm-bore.ts";

export interface Warm extends Estimate {
  readonly atBest: AtBest;
  readonly interference: WarmBore["interference"];
  readonly released: WarmBore["released"];
  readonly verdict: Verdict;
}

export interface WarmCase {
  /** 1… in the order written. */
  readonly number: number;
  readonly span: Span;
  readonly found: Known<Warm>;
}

export const hotCases = queryOfFacts<readonly WarmCase[]>(
  "hot",
  ["HotFact"],
  [],
  (shop, fit) => casesOf(shop, fit, "hot"),
);
export const coldCases = queryOfFacts<readonly WarmCase[]>(
  "cold",
  ["ColdFact"],
  [],
  (shop, fit) => casesOf(shop, fit, "cold"),
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
    return lacking(at20, shaft, expansion);
  const { system } = settings(shop);
  const { step, lobes } = at20.value;
  const coldShaft = at20.value.journal;
  const grown = grownAt(coldShaft, expansion.value, shaft.value);
  if (!grown.valid) return outside(grown.because);
  const warmShaft = grown.value;
  const warm = warmBore(shop, fit, when, bore, at20.value, bodies);
  if (!warm.known) return warm;
  const { low, nominal, high } = warm.value;
  const left = clearanceOf(
    {
      smallest: low,
      mean: nominal,
      largest: high,
      roundness: lobes.bore.taken,
    },
    {
      smallest: warmShaft.low,
      mean: warmShaft.nominal,
      largest: warmShaft.high,
      roundness: lobes.journal.taken,
    },
  );
  if (!left.valid) return outside(left.because);
  const { least, mean, most } = left.value;
  const status = statusOf(coldShaft, warm.value);
  const range = {
    low: least,
    nominal: mean,
    high: most,
    status,
    atBest: atBest(
      { ...warmShaft, status: coldShaft.status },
      warm.value,
      lobes,
    ),
  };
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
  range: Parameters<typeof judgeAtBest>[1],
  { budget }: Clearance,
): Verdict {
  const want = wantedWarm(shop, fit);
  if (want?.known === true)
    return judgeAtBest(shop, range, want.value, budget).verdict;
  if (want !== undefined) return "none";
  return metresToTenths(range.atBest.least) <= 0 ? "out" : "none";
}

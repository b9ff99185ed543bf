// How a running fit works by what is written of it: how fast its surfaces slide, how hard they are pressed, and what its bearing material
// bears of both. Whether a film carries it is film.ts's.
import type { Answer } from "../../core/answer.ts";
import {
  oscillatingSpeed,
  pressureTimesSpeed,
  specificLoad as specificLoadOf,
  turningSpeed,
} from "../../core/film/running.ts";
import { fixed, showLength } from "../../core/quantity/show.ts";
import { showForces, showPressures } from "../../core/quantity/show-force.ts";
import { showPvs, showSpeeds } from "../../core/quantity/show-running.ts";
import { given } from "../entry.ts";
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
import { nameOf } from "../reference.ts";
import { entryOf, query, type Shop } from "../shop.ts";
import { namedIn } from "./index-of.ts";
import { bushOfBore } from "./line-bores.ts";
import type { MaterialValue } from "./material.ts";
import { settings } from "./settings.ts";
import { materialOfFeature, sizeOf } from "./size.ts";

/** Whether anything is written of how a fit runs: then its running is worked out, and what is still missing for it is said. */
export function isRun(shop: Shop, fit: string): boolean {
  return (
    entryOf(shop, fit)?.facts.some((fact) =>
      ["runs", "oscillates", "load", "oil", "feed"].includes(fact.word),
    ) ?? false
  );
}

export interface Motion {
  readonly kind: "turning" | "oscillating";
  /** Turns or full cycles a second. */
  readonly rate: number;
  /** From end to end, rad; undefined where it turns. */
  readonly angle: number | undefined;
}

export const motionOf = query<Known<Motion>>("motion", (shop, fit) => {
  const entry = entryOf(shop, fit);
  if (entry === undefined) return SILENT;
  const runs = given(entry, "RunsFact");
  const swings = given(entry, "OscillatesFact");
  if (runs.state === "damaged" || swings.state === "damaged") return SILENT;
  if (runs.state === "given" && swings.state === "given")
    return outside(
      "it is said to turn and to oscillate, and a journal does one of them",
    );
  if (runs.state === "given")
    return known({ kind: "turning", rate: runs.value, angle: undefined });
  if (swings.state === "given")
    return known({
      kind: "oscillating",
      rate: swings.value.frequency,
      angle: swings.value.angle,
    });
  return unknown(need(fit, "runs", `how ${fit} runs or oscillates`));
});

/** The load of a fit, N. */
export const loadOf = query<Known<number>>("load", (shop, fit) => {
  const entry = entryOf(shop, fit);
  if (entry === undefined) return SILENT;
  const load = given(entry, "LoadFact");
  if (load.state === "damaged") return SILENT;
  return load.state === "given"
    ? known(load.value.force)
    : unknown(need(fit, "load", `the load of ${fit}`));
});

/** m */
export interface FitLength extends Extent {
  /** The entry whose length is the least. */
  readonly of: string;
}

/** The length that a fit runs on: the least of those written for its journal, its bush and its bore. */
export const fitLength = query<Known<FitLength>>("fit-length", (shop, fit) => {
  const [journal, bore] = namedIn(shop, fit);
  if (journal === undefined || bore === undefined) return SILENT;
  const bush = bushOfBore(shop, bore);
  const refs = [journal, bore, ...(bush === undefined ? [] : [bush])];
  let least: FitLength | undefined;
  for (const ref of refs) {
    const entry = entryOf(shop, ref);
    const length = entry === undefined ? undefined : given(entry, "LengthFact");
    if (length === undefined || length.state === "damaged") return SILENT;
    if (length.state === "absent") continue;
    const { low, high } = length.value;
    const nominal = (low + high) / 2;
    if (least === undefined || nominal < least.nominal)
      least = { low, nominal, high, of: ref };
  }
  return least === undefined
    ? unknown(need(bore, "length", `the length that ${fit} runs on`))
    : known(least);
});

/** The three together; where one is refused, why. */
function extentOf(
  low: Answer<number>,
  nominal: Answer<number>,
  high: Answer<number>,
): Known<Extent> {
  if (!low.valid) return outside(low.because);
  if (!nominal.valid) return outside(nominal.because);
  if (!high.valid) return outside(high.because);
  return known({ low: low.value, nominal: nominal.value, high: high.value });
}

/** Mean speed of the journal's surface over the bore's, m/s. */
export const surfaceSpeed = query<Known<Estimate>>(
  "surface-speed",
  (shop, fit) => {
    const journal = namedIn(shop, fit)[0];
    if (journal === undefined) return SILENT;
    const size = sizeOf(shop, journal);
    const motion = motionOf(shop, fit);
    if (!size.known || !motion.known) return lacking(size, motion);
    const { kind, rate, angle = 0 } = motion.value;
    const { system } = settings(shop);
    const speed = (diameter: number) =>
      kind === "turning"
        ? turningSpeed(diameter, rate)
        : oscillatingSpeed(diameter, angle, rate);
    const found = extentOf(
      speed(size.value.low),
      speed(size.value.nominal),
      speed(size.value.high),
    );
    if (!found.known) return found;
    const diameter = showLength(size.value.nominal, system, size.value.step);
    const degrees = fixed((angle * 180) / Math.PI, 1);
    return known({
      ...found.value,
      status: size.value.status,
      step: undefined,
      working: [
        {
          formula:
            kind === "turning"
              ? "speed = π · diameter · turns"
              : "mean speed = angle from end to end · diameter · cycles",
          with: `${kind === "turning" ? "π" : `${degrees}°`} · ${diameter} · ${fixed(rate * 60, 1)} per min = ${showSpeeds(found.value.nominal, found.value.nominal, system)}`,
          source: "",
        },
      ],
    });
  },
);

/** Load on the projected area of the fit, Pa. */
export const specificLoad = query<Known<Estimate>>(
  "specific-load",
  (shop, fit) => {
    const journal = namedIn(shop, fit)[0];
    if (journal === undefined) return SILENT;
    const size = sizeOf(shop, journal);
    const load = loadOf(shop, fit);
    const length = fitLength(shop, fit);
    if (!size.known || !load.known || !length.known)
      return lacking(size, load, length);
    const { system } = settings(shop);
    const found = extentOf(
      specificLoadOf(load.value, size.value.high, length.value.high),
      specificLoadOf(load.value, size.value.nominal, length.value.nominal),
      specificLoadOf(load.value, size.value.low, length.value.low),
    );
    if (!found.known) return found;
    return known({
      ...found.value,
      status: size.value.status,
      step: undefined,
      working: [
        {
          formula: "specific load = load / (diameter · length)",
          with: `${showForces(load.value, load.value, system)} / (${showLength(size.value.nominal, system, size.value.step)} · ${showLength(length.value.nominal, system)} of ${length.value.of}) = ${showPressures(found.value.nominal, found.value.nominal, system)}`,
          source: "",
        },
      ],
    });
  },
);

/** Specific load times surface speed, Pa·m/s. */
export const pvOf = query<Known<Estimate>>("pv", (shop, fit) => {
  const speed = surfaceSpeed(shop, fit);
  const load = specificLoad(shop, fit);
  if (!speed.known || !load.known) return lacking(speed, load);
  // the journal's diameter cancels but for its part in π·d/d, so the ends of both belong crosswise
  const found = extentOf(
    pressureTimesSpeed(load.value.low, speed.value.high),
    pressureTimesSpeed(load.value.nominal, speed.value.nominal),
    pressureTimesSpeed(load.value.high, speed.value.low),
  );
  if (!found.known) return found;
  const { low, nominal, high } = found.value;
  const { system } = settings(shop);
  return known({
    // crosswise ends may differ by a rounding only
    low: Math.min(low, nominal, high),
    nominal,
    high: Math.max(low, nominal, high),
    status: statusOf(speed.value, load.value),
    step: undefined,
    working: [
      ...load.value.working,
      ...speed.value.working,
      {
        formula: "PV = specific load · speed",
        with: `${showPressures(load.value.nominal, load.value.nominal, system)} · ${showSpeeds(speed.value.nominal, speed.value.nominal, system)} = ${showPvs(nominal, nominal, system)}`,
        source: "",
      },
    ],
  });
});

/** What the running bore is made of: its bush, or the part that it is cut in. */
function bearingMaterial(shop: Shop, fit: string): Known<MaterialValue> {
  const bore = namedIn(shop, fit)[1];
  return bore === undefined ? SILENT : materialOfFeature(shop, bore);
}

/** What a fit's running is held against: SI, and whose it is. */
export interface RunningLimit {
  readonly value: number;
  /** "that bronze-c932 bears (shipped value)" */
  readonly whose: string;
}

const LIMIT_CODES = {
  speed: { code: "speed-over", dimension: "speed" },
  specificLoad: { code: "load-over", dimension: "pressure" },
  pv: { code: "pv-over", dimension: "pv" },
} as const;

/** The job's own limit where it writes one with `warn CODE at VALUE`, else the bearing material's; undefined where neither is known. */
export function runningLimit(
  shop: Shop,
  fit: string,
  of: keyof typeof LIMIT_CODES,
): RunningLimit | undefined {
  const { code, dimension } = LIMIT_CODES[of];
  const own = settings(shop).warn[code];
  if (own?.dimension === dimension)
    return { value: own.value, whose: "that this job allows" };
  const material = bearingMaterial(shop, fit);
  const property = material.known ? material.value[of] : undefined;
  if (!material.known || property === undefined) return undefined;
  const name = nameOf(material.value.ref);
  const shipped = property.source === "written" ? "" : " (shipped value)";
  return {
    value: property.value,
    whose: `that ${name} bears${shipped}`,
  };
}

/** Equal but for the rounding of doubles is not over. */
export function isOverLimit(value: number, limit: RunningLimit): boolean {
  return limit.value * (1 + 1e-12) < value;
}

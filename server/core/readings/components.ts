// Owns the components of a size's uncertainty: each fact about gauge, repeats and temperature turned into a standard uncertainty.
// Does not own how components combine (budget.ts). Clauses of JCGM 100:2008 (the GUM) are cited from memory: its text was not at hand.
import { notValid, valid, type Answer } from "../answer.ts";
import type { Repeatability } from "./statistics.ts";
import { referenceTemperature } from "../quantity/growth.ts";

/** One line of a budget before it is combined. */
export interface Component {
  /** What it comes from: resolution, calibration, mpe, repeatability, part temperature, … */
  readonly name: string;
  /** Change of the result per change of this input: 1 for an error of the size itself, m per K for a temperature. */
  readonly sensitivity: number;
  /** In the input's own unit. */
  readonly standardUncertainty: number;
  readonly distribution: "normal" | "rectangular" | "student";
  /** Infinity where the standard uncertainty itself is taken as known. */
  readonly degreesOfFreedom: number;
}

/**
 * A display or graduation that steps by `resolution` (m): r/√12, the input anywhere within ± half a step.
 * Refuses a resolution that is not above zero. Source: JCGM 100:2008, F.2.2.1.
 */
export function resolutionComponent(resolution: number): Answer<Component> {
  if (!isAboveZero(resolution))
    return notValid("a resolution is a length above zero");
  return valid(
    component(
      "resolution",
      1,
      resolution / Math.sqrt(12),
      "rectangular",
      Infinity,
    ),
  );
}

/**
 * A calibration's expanded uncertainty U (m) with its coverage factor k: U/k; `degreesOfFreedom` where the certificate states
 * them. Refuses U below zero, k below 1, degrees of freedom below 1. Source: JCGM 100:2008, 4.3.3.
 */
export function calibrationComponent(
  expanded: number,
  k = 2,
  degreesOfFreedom = Infinity,
): Answer<Component> {
  if (!isNotBelowZero(expanded))
    return notValid("an expanded uncertainty is not below zero");
  if (!(1 <= k && k < Infinity))
    return notValid("a coverage factor is 1 at least");
  if (!(1 <= degreesOfFreedom))
    return notValid("an uncertainty has one degree of freedom at least");
  return valid(
    component("calibration", 1, expanded / k, "normal", degreesOfFreedom),
  );
}

/**
 * A gauge known only to keep its maximum permissible error ±mpe (m): mpe/√3, any error within being as likely.
 * Refuses an mpe below zero. Source: JCGM 100:2008, 4.3.7.
 */
export function permissibleErrorComponent(mpe: number): Answer<Component> {
  if (!isNotBelowZero(mpe))
    return notValid("a permissible error is not below zero");
  return valid(
    component("mpe", 1, mpe / Math.sqrt(3), "rectangular", Infinity),
  );
}

/** What is known of how far a gauge may be off, m. */
export interface GaugeError {
  /** Expanded uncertainty of its calibration with k = 2. */
  readonly calibration?: number | undefined;
  /** Maximum permissible error ±. */
  readonly mpe?: number | undefined;
}

/**
 * The component of a gauge's own error: by its calibration or its maximum permissible error, the larger where both are known. Both are of
 * one error, which counts once; and a calibration tells how well the error was found, not that readings are rid of it. Undefined where
 * neither is known; refuses what the component's own function refuses. Source: JCGM 100:2008, 4.3.10 (nothing is counted twice).
 */
export function gaugeErrorComponent({
  calibration,
  mpe,
}: GaugeError): Answer<Component> | undefined {
  const found =
    calibration === undefined ? undefined : calibrationComponent(calibration);
  const kept = mpe === undefined ? undefined : permissibleErrorComponent(mpe);
  if (found === undefined || kept === undefined) return found ?? kept;
  if (!found.valid) return found;
  return kept.valid &&
    kept.value.standardUncertainty <= found.value.standardUncertainty
    ? found
    : kept;
}

/**
 * The scatter of a reading (m) that is the mean of `count` readings: s/√n. Refuses s below zero, degrees of freedom below 1,
 * a count that is not whole or below 1. Source: JCGM 100:2008, eq. 5 and 4.2.4 (pooled s).
 */
export function repeatabilityComponent(
  repeatability: Repeatability,
  count = 1,
): Answer<Component> {
  const { standardDeviation, degreesOfFreedom } = repeatability;
  if (!isNotBelowZero(standardDeviation))
    return notValid("a standard deviation is not below zero");
  if (!(1 <= degreesOfFreedom))
    return notValid("an uncertainty has one degree of freedom at least");
  if (!Number.isInteger(count) || count < 1)
    return notValid("a mean is of one reading at least");
  return valid(
    component(
      "repeatability",
      1,
      standardDeviation / Math.sqrt(count),
      "student",
      degreesOfFreedom,
    ),
  );
}

/**
 * What the gauge was set by: the standard uncertainty (m) of a ring's size, or of the micrometer that a bore gauge was set in.
 * Refuses one below zero, degrees of freedom below 1. Source: JCGM 100:2008, 4.1 (an input like any other).
 */
export function settingComponent(
  standardUncertainty: number,
  degreesOfFreedom = Infinity,
): Answer<Component> {
  if (!isNotBelowZero(standardUncertainty))
    return notValid("a standard uncertainty is not below zero");
  if (!(1 <= degreesOfFreedom))
    return notValid("an uncertainty has one degree of freedom at least");
  return valid(
    component("setting", 1, standardUncertainty, "normal", degreesOfFreedom),
  );
}

/** How well a body's temperature and expansion are known. */
export interface WarmKnown {
  /** °C */
  readonly temperature: number;
  /** Standard uncertainty of the temperature, K. */
  readonly temperatureUncertainty: number;
  /** Per K. */
  readonly expansion: number;
  /** Standard uncertainty of the expansion, per K. */
  readonly expansionUncertainty: number;
}

/**
 * The two components of a correction to 20 °C of a size `length` (m): α·L·u(T) and (T − 20)·L·u(α), of the part or of the gauge
 * (there with the other sign: its growth makes it read less). First order: at 20 °C exactly the second is nothing.
 * Refuses a length not above zero, uncertainties below zero, values not finite.
 * Source: the derivatives of sizeAtReference; JCGM 100:2008, H.1.4 has the same terms.
 */
export function temperatureComponents(
  of: "part" | "gauge",
  length: number,
  body: WarmKnown,
): Answer<readonly [Component, Component]> {
  if (!isAboveZero(length)) return notValid("a size is a number above zero");
  if (!Number.isFinite(body.temperature) || !Number.isFinite(body.expansion))
    return notValid("a temperature or an expansion is not a finite number");
  if (
    !isNotBelowZero(body.temperatureUncertainty) ||
    !isNotBelowZero(body.expansionUncertainty)
  )
    return notValid("a standard uncertainty is not below zero");
  const sign = of === "part" ? -1 : 1;
  const excess = body.temperature - referenceTemperature;
  return valid([
    component(
      `${of} temperature`,
      sign * body.expansion * length,
      body.temperatureUncertainty,
      "normal",
      Infinity,
    ),
    component(
      `${of} expansion`,
      sign * excess * length,
      body.expansionUncertainty,
      "normal",
      Infinity,
    ),
  ]);
}

/** What is known of the uncertainty of one size; what is left out adds no component. */
export interface SizeFacts extends GaugeError {
  /** The size itself, m. */
  readonly length: number;
  /** Step of the gauge's display or graduation, m. */
  readonly resolution?: number | undefined;
  readonly repeatability?: Repeatability | undefined;
  /** How many readings the size is the mean of; 1 for a single reading or an extreme. */
  readonly count?: number | undefined;
  /** Standard uncertainty of what the gauge was set by, m. */
  readonly setting?: number | undefined;
  readonly part?: WarmKnown | undefined;
  readonly gauge?: WarmKnown | undefined;
}

/**
 * The components that these facts give, in the order of a budget. Resolution alone says nothing of a gauge's error: whether the list is
 * enough for a guarded verdict is for the caller to say. Refuses what the component's own function refuses, and no fact at all.
 */
export function sizeComponents(facts: SizeFacts): Answer<readonly Component[]> {
  const { length, resolution, repeatability, count, setting, part, gauge } =
    facts;
  const found: Answer<Component | readonly Component[]>[] = [];
  if (resolution !== undefined) found.push(resolutionComponent(resolution));
  const error = gaugeErrorComponent(facts);
  if (error !== undefined) found.push(error);
  if (setting !== undefined) found.push(settingComponent(setting));
  if (repeatability !== undefined)
    found.push(repeatabilityComponent(repeatability, count));
  if (part !== undefined)
    found.push(temperatureComponents("part", length, part));
  if (gauge !== undefined) {
    const both = temperatureComponents("gauge", length, gauge);
    // a gauge that is as warm as its part has no temperature of its own
    found.push(
      both.valid
        ? valid(both.value.filter((each) => 0 < each.standardUncertainty))
        : both,
    );
  }
  const components: Component[] = [];
  for (const each of found) {
    if (!each.valid) return each;
    components.push(...[each.value].flat());
  }
  return components.length === 0
    ? notValid("no component of the uncertainty is known")
    : valid(components);
}

function component(
  name: string,
  sensitivity: number,
  standardUncertainty: number,
  distribution: Component["distribution"],
  degreesOfFreedom: number,
): Component {
  return {
    name,
    sensitivity,
    standardUncertainty,
    distribution,
    degreesOfFreedom,
  };
}

function isAboveZero(value: number): boolean {
  return 0 < value && value < Infinity;
}

function isNotBelowZero(value: number): boolean {
  return 0 <= value && value < Infinity;
}

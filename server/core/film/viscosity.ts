// Owns an oil's viscosity and density at a temperature. Does not own the grades' figures
// (server/core/materials/oils.ts), nor what temperature the oil in the gap takes (heat-balance.ts).
import { notValid, valid, type Answer } from "../answer.ts";

/** A kinematic viscosity as oil makers state it: m²/s (1 cSt = 1e-6 m²/s) at a temperature in °C. */
export interface ViscosityPoint {
  readonly temperature: number;
  readonly kinematic: number;
}

/** log10 log10(ν + 0.7) = height − slope·log10 T, ν in cSt, T in K. */
export interface WaltherLine {
  readonly height: number;
  readonly slope: number;
}

export interface FilmOil {
  readonly line: WaltherLine;
  /** At 15 °C, kg/m³. */
  readonly density: number;
}

/** What is answered: °C, and m²/s (below 2 cSt the standard adds terms to the 0.7). */
export const viscosityRange = {
  temperature: { least: -20, greatest: 150 },
  kinematic: { least: 2e-6, greatest: 20 },
} as const;

const KELVIN = 273.15;
const CENTISTOKE = 1e-6;

/**
 * The line of an oil through two of its viscosities. Refuses points outside `viscosityRange`, less than 10 K apart
 * (the slope would be mostly error), or with the warmer one not thinner. Source: Walther's equation as ASTM D341 has
 * it for ν ≥ 2 cSt (seen as others restate it).
 */
export function waltherLine(
  one: ViscosityPoint,
  other: ViscosityPoint,
): Answer<WaltherLine> {
  for (const { temperature, kinematic } of [one, other]) {
    if (!temperatureIsIn(temperature)) return notValid(temperatureRefusal);
    if (!kinematicIsIn(kinematic)) return notValid(kinematicRefusal);
  }
  const [cool, warm] =
    one.temperature < other.temperature ? [one, other] : [other, one];
  if (warm.temperature - cool.temperature < 10)
    return notValid(
      "two viscosities less than 10 K apart do not give an oil's slope",
    );
  if (!(warm.kinematic < cool.kinematic))
    return notValid("an oil is thinner where it is warmer");
  const slope =
    (doubleLog(cool.kinematic) - doubleLog(warm.kinematic)) /
    (logKelvin(warm.temperature) - logKelvin(cool.temperature));
  return valid({
    slope,
    height: doubleLog(cool.kinematic) + slope * logKelvin(cool.temperature),
  });
}

/** A figure and the range that a grade leaves it. */
interface Spread {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** A grade's oil from its thinnest to its thickest. */
export interface OilBand {
  readonly low: FilmOil;
  readonly nominal: FilmOil;
  readonly high: FilmOil;
}

/**
 * The oils of a grade: one line through the low ends of its viscosities at 40 and 100 °C (m²/s), one through the
 * middles, one through the high ends; density at 15 °C (kg/m³) its middle throughout. Refuses as `waltherLine` does.
 */
export function oilBand(grade: {
  readonly at40: Spread;
  readonly at100: Spread;
  readonly density: Spread;
}): Answer<OilBand> {
  const through = (end: keyof Spread) =>
    waltherLine(
      { temperature: 40, kinematic: grade.at40[end] },
      { temperature: 100, kinematic: grade.at100[end] },
    );
  const [low, nominal, high] = [
    through("low"),
    through("value"),
    through("high"),
  ];
  if (!low.valid) return low;
  if (!nominal.valid) return nominal;
  if (!high.valid) return high;
  const density = grade.density.value;
  return valid({
    low: { line: low.value, density },
    nominal: { line: nominal.value, density },
    high: { line: high.value, density },
  });
}

/**
 * Kinematic viscosity at a temperature (°C), m²/s. Refuses outside `viscosityRange`, on either side. Source: ASTM
 * D341 as above.
 */
export function kinematicViscosity(
  line: WaltherLine,
  temperature: number,
): Answer<number> {
  if (!temperatureIsIn(temperature)) return notValid(temperatureRefusal);
  const kinematic =
    CENTISTOKE *
    (10 ** (10 ** (line.height - line.slope * logKelvin(temperature))) - 0.7);
  return kinematicIsIn(kinematic)
    ? valid(kinematic)
    : notValid(kinematicRefusal);
}

/**
 * Density at a temperature (°C) from that at 15 °C, kg/m³. Refuses densities at 60 °F outside 801 to 1164 kg/m³ and
 * temperatures outside −20 to 150 °C. Source: API MPMS chapter 11.1 (ASTM D1250-04), lubricating oils: ρ =
 * ρ60·exp(−α·Δ(1 + 0.8·α·Δ)), Δ = t − 60 °F, α = 0.34878/ρ60 per °F, as quoted by an additive maker (seen); the pressure is
 * that of the air.
 */
export function densityAt(
  densityAt15: number,
  temperature: number,
): Answer<number> {
  if (!temperatureIsIn(temperature)) return notValid(temperatureRefusal);
  // 15 °C is 59 °F: one degree off the standard's base, found back in a few rounds
  let base = densityAt15;
  for (let round = 0; round < 4; round++)
    base = densityAt15 / expansionFactor(base, 59);
  if (!(801 <= base && base <= 1164))
    return notValid(
      "the density of a lubricating oil is taken from 801 to 1164 kg/m³",
    );
  return valid(base * expansionFactor(base, 1.8 * temperature + 32));
}

/**
 * Dynamic viscosity at a temperature (°C), Pa·s: kinematic times density (1 cSt of 1000 kg/m³ is 1 mPa·s). Refuses as
 * its parts do.
 */
export function dynamicViscosity(
  oil: FilmOil,
  temperature: number,
): Answer<number> {
  const kinematic = kinematicViscosity(oil.line, temperature);
  if (!kinematic.valid) return kinematic;
  const density = densityAt(oil.density, temperature);
  if (!density.valid) return density;
  return valid(kinematic.value * density.value);
}

function expansionFactor(base: number, fahrenheit: number): number {
  const grown = (0.34878 / base) * (fahrenheit - 60);
  return Math.exp(-grown * (1 + 0.8 * grown));
}

const { temperature: temperatures, kinematic: kinematics } = viscosityRange;
const temperatureRefusal = `an oil's line is trusted from ${temperatures.least} to ${temperatures.greatest} °C`;
const kinematicRefusal = `an oil's line is trusted from ${kinematics.least / CENTISTOKE} to ${kinematics.greatest / CENTISTOKE} cSt`;

function temperatureIsIn(temperature: number): boolean {
  return (
    temperatures.least <= temperature && temperature <= temperatures.greatest
  );
}

function kinematicIsIn(kinematic: number): boolean {
  return kinematics.least <= kinematic && kinematic <= kinematics.greatest;
}

function doubleLog(kinematic: number): number {
  return Math.log10(Math.log10(kinematic / CENTISTOKE + 0.7));
}

function logKelvin(temperature: number): number {
  return Math.log10(temperature + KELVIN);
}

// How much a body grows with heat: the linear law from 20 °C. Its callers refuse temperatures and expansions out of their range.

/** The reference temperature of dimensions, °C. Source: ISO 1 (20 °C, agreed internationally in 1931). */
export const referenceTemperature = 20;

/**
 * What a length of 1 at 20 °C is at a temperature in °C, by a mean coefficient of expansion from 20 °C in 1/K. Source: the linear law as the
 * National Physical Laboratory's length FAQ "How do I correct lengths to 20 °C?" gives it.
 */
export function growthAt(temperature: number, expansion: number): number {
  return 1 + expansion * (temperature - referenceTemperature);
}

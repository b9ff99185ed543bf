// Owns what a finish says as the other measure of it: Ra and Rz. Not what roughness does to a film or a press.
import { notValid, valid, type Answer } from "../answer.ts";

/** A finish as written on a drawing, in m. */
export interface Finish {
  readonly parameter: "Rz" | "Ra";
  readonly value: number;
}

/**
 * Rz over Ra where only one of them is known. 6 as ISO 6336-2 takes it (quoted in a text that was seen, the standard not); what
 * machining really leaves lies between 4 and 7 (common practice, no source).
 */
export const rzPerRa = { nominal: 6, low: 4, high: 7 } as const;

/**
 * Ra of a finish, m: as written, or of an Rz a seventh to a quarter of it, a sixth in the middle (rzPerRa). Refuses a finish below zero.
 */
export function asRa({ parameter, value }: Finish): Answer<{
  readonly low: number;
  readonly nominal: number;
  readonly high: number;
}> {
  if (!(0 <= value && value < Infinity))
    return notValid("a finish is missing or negative");
  return valid(
    parameter === "Ra"
      ? { low: value, nominal: value, high: value }
      : {
          low: value / rzPerRa.high,
          nominal: value / rzPerRa.nominal,
          high: value / rzPerRa.low,
        },
  );
}

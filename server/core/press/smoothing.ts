// What two rough surfaces lose of their interference when they are pressed together. Not what they do to friction.
import { notValid, valid, type Answer } from "../answer.ts";
import { rzPerRa, type Finish } from "../quantity/finish.ts";

export interface Smoothing {
  /** Loss on diameter, m. */
  readonly loss: number;
  /** Its ends where a finish is only known as Ra: Rz between 4 and 7 Ra. */
  readonly low: number;
  readonly high: number;
  /** Whether a ratio of Rz to Ra had to be assumed. */
  readonly fromRa: boolean;
}

/** Share of each Rz that is lost. */
const shareLost = 0.4;

/**
 * Diametral loss of interference by smoothing, m: 0.4·(Rz1 + Rz2); earlier editions had 0.8. Holds for metal on
 * metal, pressed lengthwise; for a shrunk joint less is lost, and this is then the safe side. Refuses a finish that is
 * negative or rougher than Rz 0.1 mm, which is no fitting surface.
 * Source: DIN 7190-1:2017, Interference fits – Part 1: Calculation and design rules for cylindrical self-locking pressfits, and the edition
 * DIN 7190:2001 before it (titles from memory); of each the factor alone, as a manual that was seen quotes it. Their own text was not at hand.
 */
export function smoothing(bush: Finish, hole: Finish): Answer<Smoothing> {
  let loss = 0;
  let low = 0;
  let high = 0;
  for (const { parameter, value } of [bush, hole]) {
    const ratio =
      parameter === "Ra" ? rzPerRa : { nominal: 1, low: 1, high: 1 };
    const rz = value * ratio.nominal;
    if (!(0 <= rz)) return notValid("a finish is missing or negative");
    if (1e-4 < rz)
      return notValid("a finish is too rough for a fitting surface");
    loss += shareLost * rz;
    low += shareLost * value * ratio.low;
    high += shareLost * value * ratio.high;
  }
  return valid({
    loss,
    low,
    high,
    fromRa: bush.parameter === "Ra" || hole.parameter === "Ra",
  });
}

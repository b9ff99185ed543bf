// Advice on how fast to ream: speed, turns and feed as ranges. It is advice, never a finding, and says what it rests on.
import { notValid, valid, type Answer } from "../answer.ts";
import type { Band } from "../quantity/band.ts";
import { feedPerFlute, handTurns, reamingSpeeds } from "./reaming-speeds.ts";
import type { Drive, MaterialClass } from "./stock-allowances.ts";
import type { ToolMaterial } from "./tool-materials.ts";

export interface ReamingAdvice {
  /** Surface speed at the diameter, m/s */
  readonly speed: Band;
  /** 1/s */
  readonly turns: Band;
  /** Feed in a turn, m; undefined by hand (as it draws itself in) and where the number of flutes is not known */
  readonly feed: Band | undefined;
  /** "read": in a published table; "practice": common practice, no source */
  readonly from: "read" | "practice";
}

/**
 * Speed, turns and feed for a reamer of that diameter (m) in that class of material. By hand turns are what is advised
 * and speed follows; by machine the other way round: turns = speed/(π·diameter). Feed = flutes × feed per flute.
 * Refuses a diameter not above zero or over 0.1 m, flutes that aren't a whole number from 1 to 40.
 * Source: reaming-speeds.ts, at each table.
 */
export function reamingAdvice(
  diameter: number,
  material: MaterialClass,
  drive: Drive,
  tool: ToolMaterial,
  flutes?: number,
): Answer<ReamingAdvice> {
  if (!(0 < diameter && diameter <= 0.1))
    return notValid("the advice is for reamers to 100 mm");
  if (
    flutes !== undefined &&
    !(Number.isInteger(flutes) && 1 <= flutes && flutes <= 40)
  ) {
    return notValid("a reamer has between 1 and 40 flutes");
  }
  const round = Math.PI * diameter;
  if (drive === "hand") {
    const speed = { low: handTurns.low * round, high: handTurns.high * round };
    return valid({
      speed,
      turns: handTurns,
      feed: undefined,
      from: "practice",
    });
  }
  const row = reamingSpeeds[material];
  const speed = row[tool];
  return valid({
    speed,
    turns: { low: speed.low / round, high: speed.high / round },
    feed:
      flutes === undefined
        ? undefined
        : { low: flutes * feedPerFlute.low, high: flutes * feedPerFlute.high },
    from: row.from,
  });
}

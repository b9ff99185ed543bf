// Data: cutting speeds and feeds for reaming. Advice only: makers' tables differ, and a worn machine runs slower.
import type { Band } from "../quantity/band.ts";
import type { MaterialClass } from "./stock-allowances.ts";
import type { ToolMaterial } from "./tool-materials.ts";

/** m/s at the diameter. "read": the whole range stands in a table that was read; "practice": common practice, no source. */
export interface SpeedRow extends Readonly<Record<ToolMaterial, Band>> {
  readonly from: "read" | "practice";
}

function feetPerMinute(low: number, high: number): Band {
  return { low: (low * 0.3048) / 60, high: (high * 0.3048) / 60 };
}

/**
 * Read: a reamer maker's tables "recommended cutting speeds in feet per minute", columns reaming, HSS and carbide: plain
 * carbon and low alloy steels to 300 HB, stainless steels to 275 HB, grey iron classes 20 to 60, cast and wrought
 * aluminium (not die castings). By another rule reaming runs at a third to a half of the drilling speed (US War Department TM 1-420, par. 37:
 * about half).
 */
export const reamingSpeeds: Readonly<Record<MaterialClass, SpeedRow>> = {
  steel: {
    hss: feetPerMinute(30, 65),
    carbide: feetPerMinute(150, 300),
    from: "read",
  },
  stainless: {
    hss: feetPerMinute(30, 60),
    carbide: feetPerMinute(125, 250),
    from: "read",
  },
  "cast-iron": {
    hss: feetPerMinute(20, 65),
    carbide: feetPerMinute(80, 300),
    from: "read",
  },
  aluminium: {
    hss: feetPerMinute(350, 500),
    carbide: feetPerMinute(750, 900),
    from: "read",
  },
  bronze: {
    hss: feetPerMinute(40, 100),
    carbide: feetPerMinute(100, 250),
    from: "practice",
  },
  brass: {
    hss: feetPerMinute(100, 200),
    carbide: feetPerMinute(200, 400),
    from: "practice",
  },
  plastic: {
    hss: feetPerMinute(50, 150),
    carbide: feetPerMinute(100, 300),
    from: "practice",
  },
};

/** Feed of each flute in a turn, m: 0.002 to 0.003 in. Read: the same maker's pages, "speeds and feeds". */
export const feedPerFlute: Band = {
  low: 0.002 * 0.0254,
  high: 0.003 * 0.0254,
};

/** Turns of a hand reamer, 1/s: 10 to 30 a minute, steadily, one way. Common practice, no source. */
export const handTurns: Band = { low: 10 / 60, high: 30 / 60 };

// Results of a line whose centres were checked: the clearance that a straight shaft has left at each bore.
import {
  showLength,
  showRange,
  significant,
} from "../../core/quantity/show.ts";
import { inLine, type InLine } from "../evaluate/in-line.ts";
import { lineBoresOf } from "../evaluate/line-bores.ts";
import { settings } from "../evaluate/settings.ts";
import {
  numberResult,
  sketch,
  unknownResult,
  type Sketch,
} from "../make-result.ts";
import type { Result } from "../result.ts";
import type { Shop } from "../shop.ts";

const SLOPE_STEP = 1e-7;

const KIND = "effective-clearance";

export function inLineSketches(shop: Shop, ref: string): readonly Sketch[] {
  const bores = lineBoresOf(shop, ref);
  if (!bores.known) return [];
  const checked = bores.value.some(({ centres }) => 0 < centres.length);
  // one bore that nobody checked is in line with itself
  if (bores.value.length < 2 && !checked) return [];
  const found = inLine(shop, ref);
  return [
    sketch(KIND, found, () =>
      found.known
        ? seatResults(shop, ref, found.value)
        : bores.value.map(({ bore }) =>
            unknownResult({ entry: ref, kind: KIND, of: bore }, "m", found),
          ),
    ),
  ];
}

function seatResults(
  shop: Shop,
  ref: string,
  { seats, status }: InLine,
): readonly Result[] {
  const { system } = settings(shop);
  return seats.map(
    ({ bore, low, nominal, high, lostToSlope, slope, runout, step }) =>
      numberResult(
        { entry: ref, kind: KIND, of: bore },
        "m",
        { low, nominal, high },
        {
          status,
          text: showRange(low, high, system, step),
          step,
          working: [
            {
              formula:
                "clearance left = bore − journal − run-out − 2 · offset of the straight shaft that leaves most at the tightest place",
              with: `${showRange(low, high, system, step)} in ${bore}; ${runout === undefined ? "no run-out is written, and none is taken off" : `run-out ${showLength(runout, system)}`}; the bore's slope ${significant(slope * 1000, 2)} per mille takes ${showLength(lostToSlope, system, SLOPE_STEP)} over its length`,
              source:
                "min–max over both ends of every bore; Boyd & Vandenberghe, Convex Optimization, 2004, ch. 11 (from memory)",
            },
          ],
        },
      ),
  );
}

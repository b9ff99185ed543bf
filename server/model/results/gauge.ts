// Results of a gauge: how fine it is for each tolerance that its readings serve.
import { showLength, significant } from "../../core/quantity/show.ts";
import {
  discriminationOf,
  expandedOf,
  narrowestRead,
  ratioOf,
  tolerancesRead,
  type Tolerance,
} from "../evaluate/gauge-ratio.ts";
import { settings } from "../evaluate/settings.ts";
import type { GaugeRatio } from "../../core/readings/gauge.ts";
import type { Known } from "../known.ts";
import {
  numberResult,
  sketch,
  unknownResult,
  type Sketch,
} from "../make-result.ts";
import type { Result } from "../result.ts";
import type { Shop } from "../shop.ts";

const U_STEP = 1e-7;

export function gaugeSketches(shop: Shop, ref: string): readonly Sketch[] {
  return tolerancesRead(shop, ref).map((tolerance) => {
    const found = ratioOf(shop, ref, tolerance.width);
    return sketch("ratio", found, () =>
      ratioResult(shop, ref, tolerance, found),
    );
  });
}

/** The results for the narrowest tolerances alone. */
export function narrowestRatios(shop: Shop, ref: string): readonly Result[] {
  return narrowestRead(shop, ref).map((tolerance) =>
    ratioResult(shop, ref, tolerance, ratioOf(shop, ref, tolerance.width)),
  );
}

function ratioResult(
  shop: Shop,
  ref: string,
  { of, width }: Tolerance,
  found: Known<GaugeRatio>,
): Result {
  const { system } = settings(shop);
  const where = { entry: ref, kind: "ratio", of };
  const expanded = expandedOf(shop, ref);
  if (!found.known) return unknownResult(where, "1", found);
  // a ratio is known only where it is
  if (!expanded.known) return unknownResult(where, "1", expanded);
  const { ratio, word } = found.value;
  const fine = discriminationOf(shop, ref, width);
  return numberResult(
    where,
    "1",
    { low: ratio, nominal: ratio, high: ratio },
    {
      status: "measured",
      text: `${significant(ratio, 2)}, ${word}`,
      working: [
        {
          formula:
            "ratio = T/(2U): from 4 good, from 2 poor, under 2 no verdict",
          with: `${showLength(width, system)} of ${of} / (2 · ${showLength(expanded.value, system, U_STEP)})`,
          source:
            "ANSI/NCSL Z540.3-2006 for two-sided tolerances (as quoted by others); 4 and 2: common practice, no source",
        },
        ...(fine === undefined
          ? []
          : [
              {
                formula: "resolution a tenth of T or less",
                with: `${significant(fine.share * 100, 2)} % of it: ${fine.isFine ? "fine enough" : "too coarse"}`,
                source: "rule of ten to one: common practice, no source",
              },
            ]),
      ],
    },
  );
}

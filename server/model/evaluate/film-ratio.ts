// The least film of a running fit over the roughness of its surfaces, and the regime that it means. The film is film.ts's.
import {
  filmRatio,
  regimeOf,
  type Regime,
} from "../../core/film/film-ratio.ts";
import { asRa, type Finish } from "../../core/quantity/finish.ts";
import {
  showLength,
  showRange,
  type System,
} from "../../core/quantity/show.ts";
import { given } from "../entry.ts";
import {
  known,
  lacking,
  need,
  outside,
  SILENT,
  unknown,
  type Extent,
  type Known,
} from "../known.ts";
import type { Status, Working } from "../result.ts";
import { entryOf, query, type Shop } from "../shop.ts";
import { filmOf } from "./film.ts";
import { namedIn } from "./index-of.ts";
import { settings } from "./settings.ts";

export interface FitFilmRatio extends Extent {
  readonly regime: Regime;
  readonly status: Exclude<Status, "unknown">;
  readonly working: readonly Working[];
}

/** Least film over the composite roughness of journal and bore. */
export const filmRatioOf = query<Known<FitFilmRatio>>(
  "film-ratio",
  (shop, fit) => {
    const film = filmOf(shop, fit);
    const [journal, bore] = namedIn(shop, fit);
    if (journal === undefined || bore === undefined) return SILENT;
    if (!film.known && film.because !== undefined) return film;
    const [ofJournal, ofBore] = [
      roughnessOf(shop, journal),
      roughnessOf(shop, bore),
    ];
    if (!film.known || !ofJournal.known || !ofBore.known)
      return lacking(film, ofJournal, ofBore);
    const ratios: number[] = [];
    for (const { left } of film.value.all) {
      // nominal first; the rougher the surfaces, the less
      for (const end of ["nominal", "high", "low"] as const) {
        const ratio = filmRatio(
          left,
          ofJournal.value.ra[end],
          ofBore.value.ra[end],
        );
        if (!ratio.valid) return outside(ratio.because);
        ratios.push(ratio.value);
      }
    }
    const low = Math.min(...ratios);
    const { system } = settings(shop);
    return known({
      low,
      nominal: ratios[0] ?? low,
      high: Math.max(...ratios),
      regime: regimeOf(low),
      status: film.value.status,
      working: [
        {
          formula: "film ratio = least film / √(Rq² + Rq²), Rq = 1.25 · Ra",
          with: `${roughnessWords(ofJournal.value, system)} of ${journal}, ${roughnessWords(ofBore.value, system)} of ${bore}; boundary under 1, mixed from 1, full from 5`,
          source:
            "Hamrock, Fundamentals of Fluid Film Lubrication (from memory)",
        },
      ],
    });
  },
);

export interface Roughness {
  /** m; a range where only Rz is written. */
  readonly ra: Extent;
  readonly finish: Finish;
}

export function roughnessOf(shop: Shop, ref: string): Known<Roughness> {
  const entry = entryOf(shop, ref);
  const finish = entry === undefined ? undefined : given(entry, "FinishFact");
  if (finish === undefined || finish.state === "damaged") return SILENT;
  if (finish.state === "absent")
    return unknown(need(ref, "finish", `the finish of ${ref}`));
  const ra = asRa(finish.value);
  return ra.valid
    ? known({ ra: ra.value, finish: finish.value })
    : outside(ra.because);
}

function roughnessWords({ ra, finish }: Roughness, system: System): string {
  return finish.parameter === "Ra"
    ? `Ra ${showLength(ra.nominal, system, 1e-9)}`
    : `Ra ${showRange(ra.low, ra.high, system, 1e-9)} (Rz ${showLength(finish.value, system, 1e-9)} is 4 to 7 times Ra: common practice, no source; 6 times in the middle)`;
}

// The oil film of a running fit, over the range of its clearance and the band of its oil. What it is reckoned from, and whether one may be
// claimed at all, is film-facts.ts's.
import {
  filmLeft,
  filmRatio,
  regimeOf,
  type Regime,
} from "../../core/film/film-ratio.ts";
import { warmFilm, type WarmFilm } from "../../core/film/heat-balance.ts";
import {
  fixed,
  showLength,
  showRange,
  showTemperature,
} from "../../core/quantity/show.ts";
import { showNumbers, showRises } from "../../core/quantity/show-running.ts";
import { given } from "../entry.ts";
import {
  everyKnown,
  known,
  need,
  outside,
  SILENT,
  statusOf,
  unknown,
  type Known,
} from "../known.ts";
import type { Status, Working } from "../result.ts";
import { entryOf, query, type Shop } from "../shop.ts";
import { filmFacts, type FilmFacts } from "./film-facts.ts";
import type { Clearance } from "./fit.ts";
import { namedIn } from "./index-of.ts";
import { settings } from "./settings.ts";

/** The film at one clearance with one oil. */
export interface FilmCase {
  readonly film: WarmFilm;
  /** Least film after form, m. */
  readonly left: number;
}

export interface FitFilm {
  /** At the mean clearance with the middle of the oil's grade. */
  readonly nominal: FilmCase;
  /** At every end of the clearance with every end of the grade, the nominal one among them. */
  readonly all: readonly FilmCase[];
  readonly status: Exclude<Status, "unknown">;
  readonly working: readonly Working[];
}

export const filmOf = query<Known<FitFilm>>("film", (shop, fit) => {
  const facts = filmFacts(shop, fit);
  if (!facts.known) return facts;
  const { bearing, oil, cooling, clearance: gap } = facts.value;
  const form = formOf(gap);
  const cases = new Map<string, FilmCase>();
  for (const end of ["nominal", "low", "high"] as const) {
    for (const grade of ["nominal", "low", "high"] as const) {
      if (grade !== "nominal" && oil.band[grade] === oil.band.nominal) continue;
      const film = warmFilm(
        { ...bearing, diametralClearance: gap[end] },
        oil.band[grade],
        cooling,
      );
      if (!film.valid) return outside(film.because + where(end, grade));
      const left = filmLeft(film.value.leastFilm, bearing.length, { form });
      if (!left.valid) return outside(left.because);
      cases.set(`${end} ${grade}`, { film: film.value, left: left.value });
      if (gap.low === gap.high && end === "nominal") continue;
    }
  }
  const nominal = cases.get("nominal nominal");
  if (nominal === undefined) return SILENT;
  return known({
    nominal,
    all: [...cases.values()],
    status: statusOf(gap),
    working: workingOf(shop, facts.value, nominal.film, form),
  });
});

const OF_END = { low: "least", nominal: "mean", high: "most" } as const;
const OF_GRADE = {
  low: "the thinnest oil of its grade",
  nominal: "the middle of the oil's grade",
  high: "the thickest oil of its grade",
} as const;

function where(end: keyof typeof OF_END, grade: keyof typeof OF_GRADE): string {
  return end === "nominal" && grade === "nominal"
    ? ""
    : ` (at the ${OF_END[end]} clearance with ${OF_GRADE[grade]})`;
}

/** Radial, m: half of what each of the two surfaces is out of round by. The sizes are extremes, so taper is already in the clearance. */
function formOf({ journal, bore }: Clearance): number {
  return ((journal.outOfRound ?? 0) + (bore.outOfRound ?? 0)) / 2;
}

function workingOf(
  shop: Shop,
  { bearing, oil, cooling, length, clearance: gap }: FilmFacts,
  film: WarmFilm,
  form: number,
): readonly Working[] {
  const { system } = settings(shop, "job");
  const lands =
    film.lands === 2
      ? "; the groove round parts it in two bearings of half the length each, its width taken as none"
      : "";
  return [
    {
      formula:
        "film of a bearing of finite length: Reynolds equation, one viscosity all through, the film ends where its pressure does",
      with: `clearance ${showRange(gap.low, gap.high, system, gap.step)} at 20 °C, length ${showLength(length.nominal, system)} of ${length.of}, length over diameter ${fixed(film.lengthOverDiameter, 2)}${lands}`,
      source: "solved by this tool, held against Raimondi & Boyd, 1958",
    },
    {
      formula:
        "heat: what friction makes is carried off by the oil that leaves at the ends, and by nothing else",
      with: `${oil.ref} enters at ${showTemperature(cooling.inlet, system)} and leaves ${showRises(film.oilRise, film.oilRise, system)} warmer; in the gap ${showTemperature(film.effectiveTemperature, system)}, ${fixed(film.viscosity * 1000, 1)} mPa·s, 1.8 MJ/(m³·K)`,
      source: "ISO 7902-1, side flow (from memory)",
    },
    {
      formula: "viscosity of the oil at a temperature (Walther's equation)",
      with: oil.source,
      source: "ASTM D341 (from memory)",
    },
    {
      formula: "least film = clearance/2 · (1 − relative eccentricity) − form",
      with: `${showLength(bearing.diameter, system, gap.journal.step)} journal: ${showLength(film.leastFilm, system, 1e-9)} less form ${showLength(form, system, 1e-9)} (half of what is measured out of round), at the mean clearance`,
      source: "",
    },
    {
      formula: "Sommerfeld number S = (μ·N/P)·(d/clearance)², US form",
      with: `S = ${showNumbers(film.sommerfeld, film.sommerfeld)}; So = P·ψ²/(μ·ω) = 1/(2πS) = ${showNumbers(film.sommerfeldDin, film.sommerfeldDin)}, DIN and ISO form`,
      source: "",
    },
  ];
}

export interface FitFilmRatio {
  readonly low: number;
  readonly nominal: number;
  readonly high: number;
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
    const all = everyKnown<unknown>([film, ofJournal, ofBore]);
    if (!all.known) return all;
    if (!film.known || !ofJournal.known || !ofBore.known) return SILENT;
    const ratios: number[] = [];
    for (const { left } of film.value.all) {
      const ratio = filmRatio(left, ofJournal.value, ofBore.value);
      if (!ratio.valid) return outside(ratio.because);
      ratios.push(ratio.value);
    }
    const low = Math.min(...ratios);
    const { system } = settings(shop, "job");
    return known({
      low,
      nominal: ratios[0] ?? low,
      high: Math.max(...ratios),
      regime: regimeOf(low),
      status: film.value.status,
      working: [
        {
          formula: "film ratio = least film / √(Rq² + Rq²), Rq = 1.25 · Ra",
          with: `Ra ${showLength(ofJournal.value, system, 1e-9)} of ${journal}, ${showLength(ofBore.value, system, 1e-9)} of ${bore}; boundary under 1, mixed from 1, full from 5`,
          source:
            "Hamrock, Fundamentals of Fluid Film Lubrication (from memory)",
        },
      ],
    });
  },
);

/** Ra of a surface, m. */
function roughnessOf(shop: Shop, ref: string): Known<number> {
  const entry = entryOf(shop, ref);
  const finish = entry === undefined ? undefined : given(entry, "FinishFact");
  if (finish === undefined || finish.state === "damaged") return SILENT;
  if (finish.state === "absent")
    return unknown(need(ref, "finish", `the finish of ${ref}`));
  return finish.value.parameter === "Ra"
    ? known(finish.value.value)
    : unknown(need(ref, "finish", `the finish of ${ref} as Ra`));
}

/** Whether a film was refused since none carries: a journal too heavily loaded, too slow, or in an oil too thin. */
export function carriesNone(film: Known<unknown>): string | undefined {
  return !film.known && film.because?.includes("no film") === true
    ? film.because
    : undefined;
}

// The oil film of a running fit, over the range of its clearance, at 20 °C and hot, and the band of its oil. What it is reckoned from, and
// whether one may be claimed at all, is film-facts.ts's; what tilt and form take of it film-loss.ts's; its ratio to the roughness film-ratio.ts's.
import { filmLeft } from "../../core/film/film-ratio.ts";
import { warmFilm, type WarmFilm } from "../../core/film/heat-balance.ts";
import {
  fixed,
  showLength,
  showNumbers,
  showRange,
  showTemperature,
  significant,
  type System,
} from "../../core/quantity/show.ts";
import {
  showArea,
  showFilms,
  showRises,
} from "../../core/quantity/show-running.ts";
import {
  known,
  neededText,
  outside,
  SILENT,
  statusOf,
  type Extent,
  type Known,
} from "../known.ts";
import type { Status, Working } from "../result.ts";
import { query, type Shop } from "../shop.ts";
import { filmFacts, type FilmFacts } from "./film-facts.ts";
import { filmLossOf, type Loss, type Tilt } from "./film-loss.ts";
import { hotCases } from "./press-hot.ts";
import { settings } from "./settings.ts";

/** A clearance that the film is reckoned at: of the parts at 20 °C, or as warm as a `hot` line says. */
interface Gap extends Extent {
  /** "20 °C", or "hot 1" */
  readonly name: string;
  readonly status: Exclude<Status, "unknown">;
}

/** The film at one clearance with one oil. */
export interface FilmCase {
  readonly film: WarmFilm;
  /** Least film after tilt and form, m. */
  readonly left: number;
  /** "20 °C", or "hot 1". */
  readonly gap: string;
}

export interface FitFilm {
  /** At the mean clearance at 20 °C with the middle of the oil's grade. */
  readonly nominal: FilmCase;
  /** At every end of each clearance, at 20 °C and at each `hot` line, with every end of the grade; the nominal one among them. */
  readonly all: readonly FilmCase[];
  /** The one that leaves least. */
  readonly worst: FilmCase;
  /** Reckoned for `hot` lines too. */
  readonly isWarm: boolean;
  readonly status: Exclude<Status, "unknown">;
  readonly working: readonly Working[];
}

export const filmOf = query<Known<FitFilm>>("film", (shop, fit) => {
  const facts = filmFacts(shop, fit);
  if (!facts.known) return facts;
  const { bearing, oil, cooling, clearance: at20 } = facts.value;
  const loss = filmLossOf(shop, fit, at20);
  const warm = warmGaps(shop, fit);
  if (!loss.known) return loss;
  if (!warm.known) return warm;
  const { tilt, form } = loss.value;
  const gaps: readonly Gap[] = [{ ...at20, name: "20 °C" }, ...warm.value.gaps];
  const all: FilmCase[] = [];
  for (const gap of gaps) {
    if (gap.name !== "20 °C" && gap.low <= 0)
      return outside(`${gap.name} leaves no clearance for an oil film`);
    for (const end of ["nominal", "low", "high"] as const) {
      if (end !== "nominal" && gap.low === gap.high) continue;
      for (const grade of ["nominal", "low", "high"] as const) {
        if (grade !== "nominal" && oil.band[grade] === oil.band.nominal)
          continue;
        const film = warmFilm(
          { ...bearing, diametralClearance: gap[end] },
          oil.band[grade],
          cooling,
        );
        if (!film.valid)
          return outside(film.because + where(gap.name, end, grade), film.sort);
        const left = filmLeft(film.value.leastFilm, bearing.length, {
          tilt: tilt.angle,
          form,
        });
        if (!left.valid) return outside(left.because);
        all.push({ film: film.value, left: left.value, gap: gap.name });
      }
    }
  }
  const [nominal] = all;
  if (nominal === undefined) return SILENT;
  return known({
    nominal,
    all,
    worst: all.reduce((least, each) => (each.left < least.left ? each : least)),
    isWarm: 1 < gaps.length,
    status: statusOf(...gaps),
    working: workingOf(shop, facts.value, loss.value, nominal.film).concat(
      warmWorking(shop, gaps, warm.value.left, all),
    ),
  });
});

/** The clearances of the `hot` lines, and what is missing for those that are not known: the film is then reckoned without them. */
function warmGaps(
  shop: Shop,
  fit: string,
): Known<{ readonly gaps: readonly Gap[]; readonly left: readonly string[] }> {
  const gaps: Gap[] = [];
  const left: string[] = [];
  for (const { number, found } of hotCases(shop, fit)) {
    const name = `hot ${String(number)}`;
    if (found.known) gaps.push({ ...found.value, name });
    else if (found.silent) return SILENT;
    else
      left.push(
        `${name} left out: ${found.because ?? neededText(found.needs)}`,
      );
  }
  return known({ gaps, left });
}

const OF_END = { low: "least", nominal: "mean", high: "most" } as const;
const OF_GRADE = {
  low: "the thinnest oil of its grade",
  nominal: "the middle of the oil's grade",
  high: "the thickest oil of its grade",
} as const;

function where(
  gap: string,
  end: keyof typeof OF_END,
  grade: keyof typeof OF_GRADE,
): string {
  const hot = gap === "20 °C" ? "" : `, ${gap},`;
  return hot === "" && end === "nominal" && grade === "nominal"
    ? ""
    : ` (at the ${OF_END[end]} clearance${hot} with ${OF_GRADE[grade]})`;
}

/** What each clearance leaves; nothing where no `hot` line is written. */
function warmWorking(
  shop: Shop,
  gaps: readonly Gap[],
  left: readonly string[],
  all: readonly FilmCase[],
): readonly Working[] {
  if (gaps.length === 1 && left.length === 0) return [];
  const { system } = settings(shop);
  const said = gaps.map(({ name, low, high }) => {
    const films = all
      .filter(({ gap }) => gap === name)
      .map((each) => each.left);
    return `${name}: clearance ${showRange(low, high, system)}, film ${showFilms(Math.min(...films), Math.max(...films), system)}`;
  });
  return [
    {
      formula:
        "film at the clearance of 20 °C and of each `hot` line, the oil entering as its own line says",
      with: [...said, ...left].join("; "),
      source: "",
    },
  ];
}

function workingOf(
  shop: Shop,
  facts: FilmFacts,
  { tilt, form }: Loss,
  film: WarmFilm,
): readonly Working[] {
  const { bearing, oil, length, clearance: gap } = facts;
  const { system } = settings(shop);
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
    heatWorking(shop, facts, film),
    {
      formula: "viscosity of the oil at a temperature (Walther's equation)",
      with: oil.source,
      source: "ASTM D341, as others restate it",
    },
    {
      formula:
        "least film = clearance/2 · (1 − relative eccentricity) − tilt · length/2 − form",
      with: `${showLength(bearing.diameter, system, gap.journal.step)} journal: ${showFilms(film.leastFilm, film.leastFilm, system)} less ${tiltWords(tilt, bearing.length, system)} and form ${showFilms(form, form, system)} (half of what is measured out of round), at the mean clearance`,
      source: "",
    },
    {
      formula: "Sommerfeld number S = (μ·N/P)·(d/clearance)², US form",
      with: `S = ${showNumbers(film.sommerfeld, film.sommerfeld)}; So = P·ψ²/(μ·ω) = 1/(2πS) = ${showNumbers(film.sommerfeldDin, film.sommerfeldDin)}, DIN and ISO form`,
      source: "",
    },
  ];
}

/** Where the heat goes, as it was chosen by the record. */
function heatWorking(
  shop: Shop,
  { oil, cooling, caseAssumed }: FilmFacts,
  film: WarmFilm,
): Working {
  const { system } = settings(shop);
  const rise = showRises(film.oilRise, film.oilRise, system);
  const gap = `in the gap ${showTemperature(film.effectiveTemperature, system)}, ${fixed(film.viscosity * 1000, 1)} mPa·s`;
  if (cooling.by !== "case")
    return {
      formula:
        "heat: what friction makes is carried off by the oil that leaves at the ends, and by nothing else",
      with: `${oil.ref} enters at ${showTemperature(cooling.inlet, system)} and leaves ${rise} warmer; ${gap}, 1.8 MJ/(m³·K)`,
      source: "ISO 7902-1, side flow (from memory)",
    };
  const area = showArea(cooling.area, system);
  return {
    formula:
      "heat: what friction makes is given off by the case to the air, and the oil takes none away: power = transfer · area · (oil less air)",
    with: `air at ${showTemperature(cooling.ambient, system)}, ${area}${caseAssumed ? " (assumed: 15 · d · length, the least that is usual for a bearing among others in a case)" : ""}, ${fixed(cooling.transfer, 0)} W/(m²·K), the least for still air; ${oil.ref} ${rise} over the air, ${gap}`,
    source: "ISO 7902-1, case cooled (from memory)",
  };
}

function tiltWords(
  { angle, said }: Tilt,
  length: number,
  system: System,
): string {
  if (angle === undefined) return `no tilt, which is not known (${said})`;
  const taken = (angle * length) / 2;
  return `tilt ${significant(angle * 1000, 2)} per mille (${said}), ${showFilms(taken, taken, system)}`;
}

/** Whether a film was refused since none carries: a journal too heavily loaded, too slow, or in an oil too thin. */
export function carriesNone(film: Known<unknown>): string | undefined {
  return !film.known && film.sort === "no-film" ? film.because : undefined;
}

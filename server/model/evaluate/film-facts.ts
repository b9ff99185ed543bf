// What the film of a fit is reckoned from, and whether one may be claimed at all. The film itself is film.ts's.
import {
  fullFilmClaim,
  type Bearing,
  type Service,
} from "../../core/film/bearing-film.ts";
import {
  typicalCaseArea,
  typicalTransfer,
  typicalVolumetricHeat,
  type Cooling,
} from "../../core/film/heat-balance.ts";
import { given } from "../entry.ts";
import {
  known,
  lacking,
  need,
  outside,
  SILENT,
  unknown,
  type Known,
} from "../known.ts";
import { entryOf, query, refOf, type Shop } from "../shop.ts";
import type { FactValues } from "../values.ts";
import { clearance, type Clearance } from "./fit.ts";
import { namedIn } from "./index-of.ts";
import { bushOfBore } from "./line-bores.ts";
import { oilValue, type OilValue } from "./oil.ts";
import { fitLength, loadOf, motionOf, type FitLength } from "./running.ts";

/** All that a film is reckoned from, but for the clearance. */
export interface FilmFacts {
  readonly bearing: Omit<Bearing, "diametralClearance">;
  readonly oil: OilValue;
  readonly cooling: Exclude<Cooling, { readonly by: "held" }>;
  /** The area of the case is not written, but taken from the size of the bearing. */
  readonly caseAssumed: boolean;
  readonly length: FitLength;
  readonly clearance: Clearance;
}

/** How the load of a fit, its feed and its groove bear on whether a film may be claimed. */
const serviceOf = query<Known<Service>>("service", (shop, fit) => {
  const entry = entryOf(shop, fit);
  const bore = namedIn(shop, fit)[1];
  if (entry === undefined || bore === undefined) return SILENT;
  const motion = motionOf(shop, fit);
  if (!motion.known) return motion;
  const load = given(entry, "LoadFact");
  const feed = given(entry, "FeedFact");
  if (load.state === "damaged" || feed.state === "damaged") return SILENT;
  const bush = bushFor(shop, bore);
  if (!bush.known) return bush;
  const turns = motion.value.kind;
  // what rules a film out by itself is said before anything is asked for
  const loading = load.state === "given" ? load.value.loading : undefined;
  const fed = feed.state === "given" ? feed.value.feed : undefined;
  const claim = fullFilmClaim({
    motion: turns,
    loading: loading ?? "steady",
    feed: fed ?? "pressure",
    groove: "none",
  });
  if (!claim.valid) return outside(claim.because);
  const refused = refusedBy(bush.value);
  if (refused !== undefined) return outside(refused);
  const needs = [
    ...(load.state === "absent"
      ? [need(fit, "load", `the load of ${fit}`)]
      : loading === undefined
        ? [
            need(
              fit,
              "load",
              `whether the load of ${fit} is \`steady\`, \`reversing\` or \`shock\``,
            ),
          ]
        : []),
    ...(fed === undefined
      ? [need(fit, "feed", `the feed of oil to ${fit}`)]
      : []),
  ];
  if (0 < needs.length) return unknown(...needs);
  return known({
    motion: turns,
    loading: loading ?? "steady",
    feed: fed ?? "pressure",
    groove: bush.value.groove === undefined ? "none" : "round",
  });
});

/** What of a bush bears on its film; nothing of a bore in a part. */
interface BushFor {
  readonly groove: FactValues["GrooveFact"] | undefined;
  readonly construction: FactValues["ConstructionFact"] | undefined;
  /** rad */
  readonly oilHole: number | undefined;
}

function bushFor(shop: Shop, bore: string): Known<BushFor> {
  const bush = bushOfBore(shop, bore);
  const entry = bush === undefined ? undefined : entryOf(shop, bush);
  if (entry === undefined)
    return known({
      groove: undefined,
      construction: undefined,
      oilHole: undefined,
    });
  const groove = given(entry, "GrooveFact");
  const construction = given(entry, "ConstructionFact");
  const oilHole = given(entry, "OilHoleFact");
  if (
    groove.state === "damaged" ||
    construction.state === "damaged" ||
    oilHole.state === "damaged"
  )
    return SILENT;
  return known({
    groove: groove.state === "given" ? groove.value : undefined,
    construction:
      construction.state === "given" ? construction.value : undefined,
    oilHole: oilHole.state === "given" ? oilHole.value : undefined,
  });
}

/** Why such a bush leaves no full film to be claimed; undefined where it does. */
function refusedBy({
  groove,
  construction,
  oilHole,
}: BushFor): string | undefined {
  if (construction === "porous")
    return "a porous bush lets the oil's pressure into its wall: no full film is claimed, PV decides";
  if (groove === "lengthwise")
    return "a lengthwise groove may lie where the load presses and lets the pressure out: no full film is claimed, PV decides";
  return oilHole !== undefined && isUnderLoad(oilHole)
    ? "the oil hole lies where the load presses and lets the pressure out: no full film is claimed, PV decides"
    : undefined;
}

/** Within 45 degrees of the load, to either side, as which way the journal turns is not written. Common practice, no source. */
function isUnderLoad(angle: number): boolean {
  return Math.cos(Math.PI / 4) + 1e-9 < Math.cos(angle);
}

/** Why no full film is claimed of a fit, whatever its numbers: its load, its feed or its bush. There PV decides. */
export function unclaimedFilm(shop: Shop, fit: string): string | undefined {
  const service = serviceOf(shop, fit);
  return service.known ? undefined : service.because;
}

/** What a film of the fit would be reckoned from; unknown where none may be claimed. */
export const filmFacts = query<Known<FilmFacts>>("film-facts", (shop, fit) => {
  const entry = entryOf(shop, fit);
  const bore = namedIn(shop, fit)[1];
  if (entry === undefined || bore === undefined) return SILENT;
  const service = serviceOf(shop, fit);
  if (!service.known && service.because !== undefined) return service;
  const found = clearance(shop, fit);
  const motion = motionOf(shop, fit);
  const load = loadOf(shop, fit);
  const length = fitLength(shop, fit);
  const oil = oilOf(shop, fit);
  const cooled = given(entry, "CooledFact");
  if (cooled.state === "damaged") return SILENT;
  if (
    !found.known ||
    !motion.known ||
    !load.known ||
    !length.known ||
    !oil.known ||
    !service.known
  )
    return lacking(found, motion, load, length, oil, service);
  const diameter = found.value.journal.nominal;
  return known({
    bearing: {
      diameter,
      length: length.value.nominal,
      load: load.value,
      turnsPerSecond: motion.value.rate,
      // a groove's width is nowhere written: it parts the bearing in two, and takes no length of it
      roundGrooveWidth:
        service.value.groove === "round" ? 1e-9 * length.value.nominal : 0,
    },
    oil: oil.value.oil,
    ...(cooled.state === "given"
      ? cooledByCase(cooled.value, diameter, length.value.nominal)
      : cooledByOil(oil.value.inlet)),
    length: length.value,
    clearance: found.value,
  });
});

type Cooled = Pick<FilmFacts, "cooling" | "caseAssumed">;

/** @param inlet °C of the oil as it enters */
function cooledByOil(inlet: number): Cooled {
  return {
    cooling: { by: "side-flow", inlet, volumetricHeat: typicalVolumetricHeat },
    caseAssumed: false,
  };
}

function cooledByCase(
  { air, area }: FactValues["CooledFact"],
  diameter: number,
  length: number,
): Cooled {
  return {
    cooling: {
      by: "case",
      ambient: air,
      // the least of what is usual gives the warmest oil
      area: area ?? typicalCaseArea(diameter, length).low,
      transfer: typicalTransfer.low,
    },
    caseAssumed: area === undefined,
  };
}

function oilOf(
  shop: Shop,
  fit: string,
): Known<{ readonly oil: OilValue; readonly inlet: number }> {
  const entry = entryOf(shop, fit);
  const fact = entry === undefined ? undefined : given(entry, "OilFact");
  if (fact === undefined || fact.state === "damaged") return SILENT;
  if (fact.state === "absent")
    return unknown(
      need(fit, "oil", `the oil of ${fit} and its temperature as it enters`),
    );
  const ref = refOf(shop, fact.value.oil);
  if (ref === undefined) return SILENT;
  const oil = oilValue(shop, ref);
  return oil.known
    ? known({ oil: oil.value, inlet: fact.value.temperature })
    : oil;
}

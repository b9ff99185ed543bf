// What clearance to want for a fit, from several sides: the running classes of both standards, the common shop rule, a rule by speed, and the
// clearances in which the film carries. Data to be shown beside each other: none of it is taken unless someone writes it.
import {
  sweepClearance,
  type ClearanceQuestion,
} from "../../core/film/clearance-sweep.ts";
import { trumpler, trumplerLeastFilm } from "../../core/film/film-ratio.ts";
import {
  clearanceByShopRule,
  clearanceBySpeed,
} from "../../core/film/wanted-clearance.ts";
import { commonFitsAt } from "../../core/fits/common-classes.ts";
import { roundSize } from "../../core/fits/nearest.ts";
import { query, type Shop } from "../shop.ts";
import { filmFacts } from "./film-facts.ts";
import { filmLossOf } from "./film-loss.ts";
import { roughnessOf } from "./film-ratio.ts";
import { namedIn } from "./index-of.ts";
import { surfaceSpeed } from "./running.ts";
import { settings } from "./settings.ts";
import { sizeOf } from "./size.ts";

/** One piece of advice. All clearances are diametral, m; both ends equal where a rule gives one figure. */
export interface AdviceRow {
  /** A class as it is written in a `want`, or what the rule is called. */
  readonly name: string;
  readonly kind: "class" | "shop-rule" | "speed-rule" | "film";
  readonly low: number;
  readonly high: number;
  readonly source: string;
}

/** The classes of running fits among those that are common: ISO ones with clearance, and RC1 to RC9. */
export const RUNNING = /^(?:RC\d|H\d+\/[a-h]\d+)$/;

/** Side by side for a fit whose journal's size is known; the rules that need a speed, and the film, only where it is said how it runs. */
export const adviceFor = query<readonly AdviceRow[]>("advice", (shop, fit) => {
  const journal = namedIn(shop, fit)[0];
  const size = journal === undefined ? undefined : sizeOf(shop, journal);
  if (size?.known !== true) return [];
  const diameter = size.value.nominal;
  const speed = surfaceSpeed(shop, fit);
  return [
    ...classRows(shop, diameter),
    ...oneRow(
      "one thou an inch of diameter, 1 in 1000",
      "shop-rule",
      clearanceByShopRule(diameter),
      "common practice, no source",
    ),
    ...(speed.known
      ? oneRow(
          "0.8 per mille times the fourth root of the speed in m/s",
          "speed-rule",
          clearanceBySpeed(diameter, speed.value.nominal),
          "DIN 31652-3 (from memory)",
        )
      : []),
    ...filmRows(shop, fit),
  ];
});

/** The job's own system first. */
function classRows(shop: Shop, diameter: number): readonly AdviceRow[] {
  const { system } = settings(shop);
  const rows = (of: "iso" | "inch", source: string): readonly AdviceRow[] =>
    commonFitsAt(roundSize(diameter, of), of)
      .filter(({ word }) => RUNNING.test(word))
      .map(({ word, clearance: { least, most } }) => ({
        name: word,
        kind: "class" as const,
        low: least,
        high: most,
        source,
      }));
  const iso = rows("iso", "ISO 286-2:2010");
  const inch = rows("inch", "ANSI B4.1-1967");
  return system === "inch" ? [...inch, ...iso] : [...iso, ...inch];
}

function oneRow(
  name: string,
  kind: AdviceRow["kind"],
  answer:
    | { readonly valid: true; readonly value: number }
    | { readonly valid: false },
  source: string,
): readonly AdviceRow[] {
  return answer.valid
    ? [{ name, kind, low: answer.value, high: answer.value, source }]
    : [];
}

/** Where the film is as thick as Trumpler asks, the regime full, and the oil under 250 °F, with the middle of the oil's grade. */
function filmRows(shop: Shop, fit: string): readonly AdviceRow[] {
  const facts = filmFacts(shop, fit);
  if (!facts.known) return [];
  const { bearing, oil, cooling, clearance } = facts.value;
  const found = filmLossOf(shop, fit, clearance);
  if (!found.known) return [];
  const { tilt, form } = found.value;
  // of a finish in Rz the roughest that it may be: where the film carries then, it carries
  const roughness = namedIn(shop, fit).map((ref) => {
    const of = ref === undefined ? undefined : roughnessOf(shop, ref);
    return of?.known === true ? of.value.ra.high : undefined;
  });
  const [journalRa, boreRa] = roughness;
  const rough = journalRa !== undefined && boreRa !== undefined;
  const question: ClearanceQuestion = {
    bearing,
    oil: oil.band.nominal,
    cooling,
    loss: { tilt: tilt.angle, form },
    // a film ratio asks for two finishes; without them only the thickness is asked
    journalRa: rough ? journalRa : 1e-9,
    boreRa: rough ? boreRa : 1e-9,
    needs: {
      film: trumplerLeastFilm(bearing.diameter),
      filmRatio: rough ? 5 : 0,
      hottest: trumpler.hottestOil,
    },
  };
  const { diameter } = bearing;
  const sweep = sweepClearance(question, 1e-4 * diameter, 1.9e-2 * diameter);
  if (!sweep.valid) return [];
  const source =
    "this tool's solution of the Reynolds equation; least film and hottest oil after Trumpler, 1966 (from memory)";
  return sweep.value.map(({ least, most }) => ({
    name: "the film carries",
    kind: "film" as const,
    low: least,
    high: most,
    source,
  }));
}

// The assumptions that a result rests on and that nobody wrote. They are those of the language page and no others; each is said only
// where it was used.
import { allOf, given, valueIn } from "./entry.ts";
import { filmFacts } from "./evaluate/film-facts.ts";
import { lineOfBore, namedIn } from "./evaluate/index-of.ts";
import { pressOfBore } from "./evaluate/press.ts";
import { cutBy } from "./evaluate/reamer.ts";
import { cribRankingOf } from "./evaluate/window.ts";
import { settings } from "./evaluate/settings.ts";
import { materialOfFeature, placesOf } from "./evaluate/size.ts";
import { featureSize } from "./evaluate/bore.ts";
import type { Result } from "./result.ts";
import { entryOf, refOf, type Shop } from "./shop.ts";
import { kindOf } from "./reference.ts";
import { bothScales } from "../core/quantity/show.ts";
import { steelScale } from "../core/readings/temperature.ts";
import { showExpansion } from "./evaluate/material.ts";
import { isAt20 } from "./evaluate/readings.ts";

/** Sentences, each once. */
export function assumptionsOf(
  shop: Shop,
  ref: string,
  results: readonly Result[],
): readonly string[] {
  const kind = kindOf(ref);
  const known = (...kinds: readonly string[]): boolean =>
    results.some(
      (each) => each.status !== "unknown" && kinds.includes(each.kind),
    );
  const said = featuresOf(shop, ref, kind).flatMap((feature) =>
    ofFeature(shop, feature),
  );
  if (kind === "line" && ofOversize(shop, ref)) said.push(OVERSIZE);
  if (known("hot-clearance", "cold-clearance"))
    said.push(...ofBodies(shop, ref), ...ofPressBelow(shop, ref));
  if (known("film")) said.push(...ofOil(shop, ref), ...ofCase(shop, ref));
  if (kind === "press") {
    if (known("contact-pressure")) said.push(...ofMaterials(shop, ref));
    const entry = entryOf(shop, ref);
    if (valueIn(entry, "FrictionFact") === undefined && known("press-force"))
      said.push("No friction is written: taken as 0.05 to 0.15.");
    if (known("interference", "contact-pressure"))
      said.push(...ofSmoothing(shop, ref));
    if (known("contact-pressure")) said.push(...ofWrapped(shop, ref));
  }
  return [...new Set(said)];
}

/** The outside of the case, where it cools the oil and nobody wrote how much of it does. */
function ofCase(shop: Shop, fit: string): readonly string[] {
  const facts = filmFacts(shop, fit);
  return facts.known && facts.value.caseAssumed
    ? [
        "No area of the case is written: taken as 15 times diameter times length, the least that is usual.",
      ]
    : [];
}

const OVERSIZE =
  "No oversize is written for a reamer in this material: taken as zero.";

/** The journals, holes and bores whose sizes an entry's results rest on; of a bush, which is among what a press names, nothing is said. */
function featuresOf(shop: Shop, ref: string, kind: string): readonly string[] {
  if (kind === "journal" || kind === "hole" || kind === "bore") return [ref];
  if (kind !== "fit" && kind !== "press") return [];
  return namedIn(shop, ref).filter((each) => each !== undefined);
}

function ofFeature(shop: Shop, ref: string): readonly string[] {
  const size = featureSize(shop, ref);
  if (!size.known) return [];
  const said = ["Sizes are at 20 °C (ISO 1)."];
  if (size.value.from === "cut" && isOversizeAssumed(shop, ref))
    said.push(OVERSIZE);
  const job = settings(shop);
  const readings = placesOf(shop, ref);
  const lines = readings.known
    ? readings.value.flatMap((place) => place.readings)
    : [];
  if (lines.some((each) => each.temperatureAssumed))
    said.push(
      `Some readings of ${ref} have no temperature, and the job has none: taken as read at 20 °C.`,
    );
  else if (lines.some((each) => each.temperatureStep === undefined))
    said.push(
      `Readings of ${ref} without a temperature are taken at the job's, ${bothScales(job.temperature, job.system)}.`,
    );
  const warm = lines.filter((each) => !isAt20(each));
  if (0 < warm.length)
    said.push(
      `A gauge is taken to have a scale of steel, ${showExpansion(steelScale.expansion, job.system)}${warm.some((each) => each.gaugeTemperatureStep === undefined) ? ", and to be as warm as what it reads where its line says nothing else" : ""}.`,
    );
  if (lines.some((each) => each.temperature !== 20)) {
    const material = materialOfFeature(shop, ref);
    const expansion = material.known ? material.value.expansion : undefined;
    if (
      material.known &&
      expansion !== undefined &&
      expansion.source !== "written"
    )
      said.push(`The expansion of ${material.value.ref} is the shipped value.`);
  }
  return said;
}

function isOversizeAssumed(shop: Shop, bore: string): boolean {
  const line = lineOfBore(shop, bore);
  if (line === undefined) return false;
  const reamer = refOf(shop, valueIn(entryOf(shop, line), "ReamFact"));
  const cut =
    reamer === undefined ? undefined : cutBy(shop, reamer, line, bore);
  return cut?.known === true && cut.value.oversizeAssumed;
}

function ofOversize(shop: Shop, line: string): boolean {
  const ranking = cribRankingOf(shop, line);
  return (
    ranking.known &&
    ranking.value.crib.some((choice) =>
      choice.ranked.cuts.some((cut) => cut.oversizeAssumed),
    )
  );
}

function ofBodies(shop: Shop, fit: string): readonly string[] {
  const entry = entryOf(shop, fit);
  if (entry === undefined) return [];
  const bodies = [...allOf(entry, "HotFact"), ...allOf(entry, "ColdFact")];
  return bodies.some(
    ({ value }) => value !== undefined && value.bush === undefined,
  )
    ? ["The bush is taken to be as warm as its case."]
    : [];
}

function ofOil(shop: Shop, fit: string): readonly string[] {
  const oil = refOf(shop, valueIn(entryOf(shop, fit), "OilFact")?.oil);
  return oil === undefined || entryOf(shop, oil) !== undefined
    ? []
    : [`The viscosity of ${oil} is the shipped value, with its grade's band.`];
}

function ofMaterials(shop: Shop, press: string): readonly string[] {
  return namedIn(shop, press).flatMap((ref) => {
    const material =
      ref === undefined ? undefined : materialOfFeature(shop, ref);
    if (material?.known !== true) return [];
    const { modulus, poisson, ref: of } = material.value;
    return [modulus, poisson].some(
      (each) => each !== undefined && each.source !== "written",
    )
      ? [`Modulus and Poisson's ratio of ${of} are shipped values.`]
      : [];
  });
}

/** The press that holds the bush which a fit runs in: heat works on what it leaves. */
function ofPressBelow(shop: Shop, fit: string): readonly string[] {
  const bore = namedIn(shop, fit)[1];
  const press = bore === undefined ? undefined : pressOfBore(shop, bore);
  return press === undefined
    ? []
    : [...ofMaterials(shop, press), ...ofSmoothing(shop, press)];
}

/** The rings of a press are whole ones. */
function ofWrapped(shop: Shop, press: string): readonly string[] {
  return namedIn(shop, press).flatMap((ref) =>
    ref !== undefined &&
    valueIn(entryOf(shop, ref), "ConstructionFact") === "wrapped"
      ? [
          `${ref} is wrapped: taken as a whole ring, and its od as with its joint closed.`,
        ]
      : [],
  );
}

function ofSmoothing(shop: Shop, press: string): readonly string[] {
  const entry = entryOf(shop, press);
  if (entry === undefined || given(entry, "SmoothingFact").state !== "absent")
    return [];
  const isMissing = namedIn(shop, press).some((ref) => {
    const half = ref === undefined ? undefined : entryOf(shop, ref);
    return half !== undefined && given(half, "FinishFact").state === "absent";
  });
  return isMissing
    ? [
        `The finishes that ${press} joins are not both written: no smoothing is taken off.`,
      ]
    : [];
}

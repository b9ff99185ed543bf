// A press fit as two rings: the boss and its form, and the elastic figures of bush and case. How they press is press-closure.ts's and
// press-pressure.ts's.
import type { BossForm } from "../../core/press/boss.ts";
import type { PressedPair } from "../../core/press/ring.ts";
import { given, type Entry } from "../entry.ts";
import {
  everyKnown,
  known,
  lacking,
  need,
  outside,
  SILENT,
  unknown,
  type Known,
} from "../known.ts";
import { nameOf } from "../reference.ts";
import type { Working } from "../result.ts";
import { entryOf, query, type Shop } from "../shop.ts";
import type { FactRule } from "../values.ts";
import { materialOf, propertyOf, type MaterialValue } from "./material.ts";
import { partsOf, type PressParts } from "./press.ts";
import { sizeOf } from "./size.ts";

/** The press without the bush's bore, which is one size as bought and another once it is reamed. */
export interface Rings extends Omit<PressedPair, "bore"> {
  readonly form: BossForm;
  readonly bush: MaterialValue;
  readonly case: MaterialValue;
  readonly working: readonly Working[];
}

/** The rings with a bore in the bush. */
export function pairOf(
  { od, boss, bushMaterial, caseMaterial, split }: Rings,
  bore: number,
): PressedPair {
  return { bore, od, boss, bushMaterial, caseMaterial, split };
}

/** The rings of a press, or the facts of them that are missing. A boss split along its axis is no ring and is refused. */
export const ringsOf = query<Known<Rings>>("press-rings", (shop, ref) => {
  const parts = partsOf(shop, ref);
  if (parts === undefined) return SILENT;
  const hole = entryOf(shop, parts.hole);
  const part = entryOf(shop, parts.part);
  if (hole === undefined || part === undefined) return SILENT;
  const split = given(part, "SplitFact");
  if (split.state === "damaged") return SILENT;
  if (split.state === "given" && split.value === "along")
    return outside("the boss is split along its axis and is no closed ring");
  const contact = sizeOf(shop, parts.hole);
  const boss = bossOf(parts.hole, hole);
  const form = formOf(shop, parts);
  const bush = elasticOf(shop, parts.bush);
  const housing = elasticOf(shop, parts.part);
  if (
    !contact.known ||
    !boss.known ||
    !form.known ||
    !bush.known ||
    !housing.known
  )
    return lacking(contact, boss, form, bush, housing);
  const materials = [bush.value.material, housing.value.material];
  return known({
    od: contact.value.nominal,
    boss: boss.value,
    bushMaterial: bush.value.elastic,
    caseMaterial: housing.value.elastic,
    split: split.state === "given" ? split.value : undefined,
    form: form.value.form,
    bush: bush.value.material,
    case: housing.value.material,
    working: [
      {
        formula: "E and Poisson's ratio of bush and case",
        with: materials.map(describeElastic).join("; "),
        source: [
          ...new Set(materials.flatMap(({ modulus }) => modulus?.source ?? [])),
        ].join("; "),
      },
      {
        formula: "boss = a round ring as long as the bush",
        with: form.value.says,
        source: "",
      },
    ],
  });
});

/** The outside diameter of the boss round a hole, m. */
function bossOf(ref: string, hole: Entry): Known<number> {
  const boss = given(hole, "BossFact");
  if (boss.state === "damaged") return SILENT;
  return boss.state === "given"
    ? known(boss.value.value)
    : unknown(need(ref, "boss", `the boss of ${ref} (its outside diameter)`));
}

function describeElastic({ ref, modulus, poisson }: MaterialValue): string {
  const own = modulus?.source === "written" ? "as written" : "shipped";
  return `${nameOf(ref)} ${((modulus?.value ?? 0) / 1e9).toPrecision(3)} GPa, ${String(poisson?.value ?? 0)} (${own})`;
}

/** What a bush or a part is made of, with its two elastic figures. */
function elasticOf(
  shop: Shop,
  ref: string,
): Known<{
  readonly material: MaterialValue;
  readonly elastic: { readonly modulus: number; readonly poisson: number };
}> {
  const material = materialOf(shop, ref);
  if (!material.known) return material;
  const both = everyKnown([
    figureOf(shop, material.value, "modulus"),
    figureOf(shop, material.value, "poisson"),
  ]);
  if (!both.known) return both;
  const [modulus = 0, poisson = 0] = both.value;
  return known({ material: material.value, elastic: { modulus, poisson } });
}

const FIGURE_RULES = {
  modulus: "ModulusFact",
  poisson: "PoissonFact",
  yield: "YieldFact",
  expansion: "ExpansionFact",
} as const satisfies Readonly<Record<string, FactRule>>;

/** One figure of a material in SI; silent where its line can't be read. */
export function figureOf(
  shop: Shop,
  material: MaterialValue,
  property: keyof typeof FIGURE_RULES,
): Known<number> {
  const entry = entryOf(shop, material.ref);
  if (
    entry !== undefined &&
    given(entry, FIGURE_RULES[property]).state === "damaged"
  )
    return SILENT;
  const found = propertyOf(material, property);
  return found.known ? known(found.value.value) : found;
}

/** How the boss departs from a plain ring of the bush's length. */
function formOf(
  shop: Shop,
  { bush, hole }: PressParts,
): Known<{ readonly form: BossForm; readonly says: string }> {
  const holeEntry = entryOf(shop, hole);
  const bushEntry = entryOf(shop, bush);
  if (holeEntry === undefined || bushEntry === undefined) return SILENT;
  const depth = given(holeEntry, "DepthFact");
  const length = given(bushEntry, "LengthFact");
  if (depth.state === "damaged" || length.state === "damaged") return SILENT;
  const deep = depth.state === "given" ? depth.value.depth?.value : undefined;
  const long = length.state === "given" ? length.value : undefined;
  if (deep !== undefined && long !== undefined && deep < long.high)
    return known({
      form: "bush-overhangs",
      says: `${bush} stands out of ${hole}: between no closure at its free end and a rigid boss`,
    });
  if (depth.state === "given" && depth.value.bottom === "blind")
    return known({
      form: "stiffer",
      says: `${hole} is blind: between a plain ring and a rigid boss`,
    });
  if (deep !== undefined && long !== undefined && long.high < deep)
    return known({
      form: "stiffer",
      says: `${hole} is deeper than ${bush} is long: between a plain ring and a rigid boss`,
    });
  return known({ form: "plain", says: `${hole} is taken as one` });
}

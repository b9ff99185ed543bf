// Materials by name: the crib's own before the shipped ones.
import {
  material as shippedMaterial,
  type Family,
} from "../../core/materials/material.ts";
import type { Figure } from "../../core/materials/figure.ts";
import { fixed, type System } from "../../core/quantity/show.ts";
import { given, valueIn } from "../entry.ts";
import { known, need, SILENT, unknown, type Known } from "../known.ts";
import { nameOf } from "../reference.ts";
import { entryOf, query, refOf, type Shop } from "../shop.ts";
import type { FactRule } from "../values.ts";

export interface MaterialValue {
  readonly ref: string;
  readonly family: Family | undefined;
  readonly expansion: Property | undefined;
  readonly modulus: Property | undefined;
  readonly poisson: Property | undefined;
  readonly yield: Property | undefined;
  readonly specificLoad: Property | undefined;
  readonly speed: Property | undefined;
  readonly pv: Property | undefined;
  /** Highest temperature to heat a case to, °C. */
  readonly caseHeat: Property | undefined;
}

export interface Property {
  /** SI */
  readonly value: number;
  /** Half the range that it is met in; 0 where the record states it. */
  readonly within: number;
  /** Where a shipped value is from; "written" for the record's own. */
  readonly source: string;
}

/** "6.83 uin/in-F" */
export function showExpansion(perKelvin: number, system: System): string {
  return system === "inch"
    ? `${fixed((perKelvin / 1.8) * 1e6, 2)} uin/in-F`
    : `${fixed(perKelvin * 1e6, 1)} um/m-K`;
}

/** A material by its full reference. What the record's own entry leaves out is taken from the shipped one of that name, if there is one. */
export const materialValue = query<MaterialValue>("material", (shop, ref) => {
  const entry = entryOf(shop, ref);
  const shipped = shippedMaterial(nameOf(ref));
  const written = (
    rule: Extract<
      FactRule,
      | "ExpansionFact"
      | "ModulusFact"
      | "PoissonFact"
      | "YieldFact"
      | "SpecificLoadFact"
      | "MaterialSpeedFact"
      | "PvFact"
    >,
    figure: Figure | undefined,
  ): Property | undefined => {
    const value = valueIn(entry, rule);
    if (value !== undefined) return { value, within: 0, source: "written" };
    return entry !== undefined && given(entry, rule).state === "damaged"
      ? undefined
      : fromFigure(figure);
  };
  return {
    ref,
    family: shipped?.family,
    expansion: written("ExpansionFact", shipped?.expansion),
    modulus: written("ModulusFact", shipped?.modulus),
    poisson: written("PoissonFact", shipped?.poisson),
    yield: written("YieldFact", shipped?.yield),
    specificLoad: written("SpecificLoadFact", shipped?.specificLoad),
    speed: written("MaterialSpeedFact", shipped?.speed),
    pv: written("PvFact", shipped?.pv),
    caseHeat: fromFigure(shipped?.caseHeat),
  };
});

function fromFigure(figure: Figure | undefined): Property | undefined {
  return figure === undefined
    ? undefined
    : {
        value: figure.value,
        within: (figure.high - figure.low) / 2,
        source: figure.source,
      };
}

/** The material that a part or a bush is said to be made of. */
export function materialOf(shop: Shop, ref: string): Known<MaterialValue> {
  const entry = entryOf(shop, ref);
  if (entry === undefined) return SILENT;
  const fact = given(entry, "MaterialFact");
  if (fact.state === "damaged") return SILENT;
  if (fact.state === "absent")
    return unknown(need(ref, "material", `the material of ${ref}`));
  const material = refOf(shop, fact.value);
  return material === undefined ? SILENT : known(materialValue(shop, material));
}

/** One property of it, each called as its fact is, or the need to write it. */
export function propertyOf(
  material: MaterialValue,
  property: "expansion" | "modulus" | "poisson" | "yield",
): Known<Property> {
  const value = material[property];
  return value === undefined
    ? unknown(
        need(material.ref, property, `the ${property} of ${material.ref}`),
      )
    : known(value);
}

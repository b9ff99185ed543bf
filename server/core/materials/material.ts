// What a shipped material is, where its figures come from, and how to find one by name. The figures are in
// metals.ts, bronzes.ts and bush-materials.ts.
import { bronzes } from "./bronzes.ts";
import { bushMaterials } from "./bush-materials.ts";
import type { Figure } from "./figure.ts";
import { metals } from "./metals.ts";

/** Materials that are cut, pressed and heated alike. `lined`: steel-backed with a soft lining; `white-metal`: babbitt. */
export type Family =
  | "steel"
  | "stainless"
  | "iron"
  | "aluminium"
  | "bronze"
  | "sintered"
  | "brass"
  | "polymer"
  | "lined"
  | "white-metal";

export interface Material {
  readonly name: string;
  readonly family: Family;
  /** What it is called in the trade, and the condition that its figures are for. */
  readonly what: string;
  /** Mean linear expansion round 20 to 100 °C, 1/K. */
  readonly expansion: Figure;
  readonly modulus: Figure;
  readonly poisson: Figure;
  /** Yield or proof stress, Pa; what kind, where it is not 0.2 % or 0.5 % under load, is in its source. */
  readonly yield: Figure;
  /** As a bearing: greatest load on projected area in Pa, speed in m/s, and product of both in Pa·m/s. */
  readonly specificLoad?: Figure;
  readonly speed?: Figure;
  readonly pv?: Figure;
  /** Highest temperature to heat a case of it to for a bush, without its maker's word, °C. */
  readonly caseHeat?: Figure;
}

export const materials: readonly Material[] = [
  ...metals,
  ...bronzes,
  ...bushMaterials,
];

const byName = new Map(materials.map((material) => [material.name, material]));

/** The shipped material of that name, or nothing. */
export function material(name: string): Material | undefined {
  return byName.get(name);
}

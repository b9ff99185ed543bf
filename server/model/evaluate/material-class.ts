// Which class of the reaming tables a material belongs to. The tables are core's; what an entry is made of is material.ts's.
import type { Family } from "../../core/materials/material.ts";
import type { MaterialClass } from "../../core/line/stock-allowances.ts";

/**
 * Sintered bronze, linings and white metal have no class: they are not reamed, and a table of stock or speed for bronze
 * would say that they could be.
 */
const CLASS_OF_FAMILY: Readonly<Record<Family, MaterialClass | undefined>> = {
  steel: "steel",
  stainless: "stainless",
  iron: "cast-iron",
  aluminium: "aluminium",
  bronze: "bronze",
  brass: "brass",
  polymer: "plastic",
  sintered: undefined,
  lined: undefined,
  "white-metal": undefined,
};

/** The class that stock, speed and feed are looked up under; undefined where the tables have none. */
export function materialClass(
  family: Family | undefined,
): MaterialClass | undefined {
  return family === undefined ? undefined : CLASS_OF_FAMILY[family];
}

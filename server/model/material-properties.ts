// What there is to know of a material, and the unit to show each in. The values are evaluate/material.ts's.
import type { System } from "../core/quantity/show.ts";
import type { MaterialValue } from "./evaluate/material.ts";

/** Its key, what it is called, and its unit; "" for a plain number. */
export const MATERIAL_PROPERTIES: readonly (readonly [
  Exclude<keyof MaterialValue, "ref" | "family">,
  string,
  Readonly<Record<System, string>>,
])[] = [
  ["expansion", "expansion", { inch: "uin/in-F", mm: "um/m-K" }],
  ["modulus", "modulus", { inch: "psi", mm: "GPa" }],
  ["poisson", "Poisson's ratio", { inch: "", mm: "" }],
  ["yield", "yield", { inch: "ksi", mm: "MPa" }],
  ["specificLoad", "largest specific load", { inch: "psi", mm: "MPa" }],
  ["speed", "largest surface speed", { inch: "ft/min", mm: "m/s" }],
  ["pv", "largest load times speed", { inch: "psi-ft/min", mm: "MPa-m/s" }],
  ["caseHeat", "heat a case of it to at most", { inch: "F", mm: "C" }],
];

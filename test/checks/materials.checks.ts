// Shipped figures against tables that they were not taken from, and grades' bands as two tables print them.
import { material } from "../../server/core/materials/material.ts";
import { oil } from "../../server/core/materials/oils.ts";
import type { Check } from "./check.ts";

const lengthTable =
  "a table of expansion coefficients for length measurement, chapter 17, table 17-1";
const callister =
  "Callister, Fundamentals of Materials Science and Engineering, 3rd ed., table B.6";
const cda =
  "Copper Development Association, as quoted on founders' data sheets";
const gearTable = "Elements of Metric Gear Technology, table 18-10";
const perF = 1.8;

/** Material, coefficient in 1e-6/K, source, relative difference that passes (the tables themselves differ by as much). */
const expansions = [
  ["aluminium-6061-t6", 23.4, lengthTable, 0.01],
  ["aluminium-356-t6", 21.5, lengthTable, 0.005],
  ["aluminium-7075-t6", 23.2, lengthTable, 0.01],
  ["aluminium-a380", 11.9 * perF, `${gearTable}, middle of its range`, 0.03],
  ["iron-grey", 6 * perF, gearTable, 0.06],
  ["stainless-304", 9.6 * perF, gearTable, 0.006],
  ["stainless-303", 9.6 * perF, gearTable, 0.006],
  ["stainless-416", 5.6 * perF, gearTable, 0.01],
  ["iron-ductile", 11.2, `${callister}, grade 60-40-18`, 0.02],
  ["iron-ductile", 10.6, `${callister}, grade 80-55-06`, 0.04],
  [
    "steel-1045",
    12,
    "MakeItFrom material property database, SAE-AISI 1045",
    0.06,
  ],
  ["steel-1018", 11.5, "a steel data sheet for 1018, typical of steel", 0.02],
  ["bronze-c932", 18, callister, 0.001],
  ["bronze-c905", 20, "a second material database, C90500", 0.011],
  ["bronze-c863", 12 * perF, `${cda}, their figure per °F`, 0.045],
  ["brass-c360", 20.5, "a table of room-temperature expansions", 0.001],
] as const;

const figureOf = (name: string) => {
  const found = material(name);
  if (found === undefined) throw new Error(`no material ${name}`);
  return found;
};
const oilOf = (name: string) => {
  const found = oil(name);
  if (found === undefined) throw new Error(`no oil ${name}`);
  return found;
};

const j300 = "SAE J300, January 2015, as tabulated";
const j306 = "SAE J306, 2005, as tabulated";

/** Oil, temperature, low and high in cSt, source. */
const bands = [
  ["iso-vg-10", 40, 9, 11, "ISO 3448 table"],
  ["iso-vg-32", 40, 28.8, 35.2, "ISO 3448 table"],
  ["iso-vg-46", 40, 41.4, 50.6, "ISO 3448 table"],
  ["iso-vg-68", 40, 61.2, 74.8, "ISO 3448 table"],
  ["iso-vg-220", 40, 198, 242, "ISO 3448 table"],
  ["iso-vg-460", 40, 414, 506, "ISO 3448 table"],
  ["sae-20", 100, 6.9, 9.3, j300],
  ["sae-30", 100, 9.3, 12.5, j300],
  ["sae-40", 100, 12.5, 16.3, j300],
  ["sae-50", 100, 16.3, 21.9, j300],
  ["sae-60", 100, 21.9, 26.1, j300],
  ["sae-80", 100, 7, 11, j306],
  ["sae-90", 100, 13.5, 18.5, j306],
  ["sae-140", 100, 24, 32.5, j306],
] as const;

/** Typical at 100 °C in cSt, as an industrial table prints it for mineral oils. */
const typical = [
  [10, 2.5],
  [15, 3.5],
  [22, 4.5],
  [32, 5.5],
  [46, 6.5],
  [68, 8.5],
  [100, 11.4],
  [150, 14.5],
  [220, 19],
  [320, 24.5],
  [460, 32],
] as const;

const checks: readonly Check[] = [
  ...expansions.map(([name, theirs, source, relative]): Check => ({
    kinds: [
      "hot-clearance",
      "cold-clearance",
      "release-temperature",
      "heat-to",
    ],
    what: `expansion of ${name} (${source})`,
    method: "shipped figure",
    against: "published",
    source,
    unit: "1e-6/K",
    ours: () => figureOf(name).expansion.value * 1e6,
    theirs: () => theirs,
    within: { relative },
  })),
  ...bands.flatMap(([name, at, low, high, source]) =>
    (
      [
        ["low", low],
        ["high", high],
      ] as const
    ).map(([end, theirs]): Check => ({
      kinds: ["film", "oil-rise"],
      what: `${end} end of ${oilOf(name).grade} at ${at} °C`,
      method: "shipped figure",
      against: "published",
      source,
      unit: "cSt",
      ours: () => {
        const { at40, at100 } = oilOf(name);
        return (at === 40 ? at40 : at100)[end] * 1e6;
      },
      theirs: () => theirs,
      within: { absolute: 1e-9 },
    })),
  ),
  ...typical.map(([grade, theirs]): Check => ({
    kinds: ["film", "oil-rise"],
    what: `typical viscosity of ISO VG ${grade} at 100 °C`,
    method: "shipped figure, viscosity index near 100",
    against: "published",
    source:
      "an industrial viscosity table, typical values of mineral oils, rounded to a half",
    unit: "cSt",
    ours: () => oilOf(`iso-vg-${grade}`).at100.value * 1e6,
    theirs: () => theirs,
    within: { relative: 0.065 },
  })),
];
export default checks;

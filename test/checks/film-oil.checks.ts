// Viscosity and density of oils and the limits of their grades, against published tables and examples.
import {
  densityAt,
  dynamicViscosity,
  kinematicViscosity,
  waltherLine,
} from "../../server/core/film/viscosity.ts";
import { oils } from "../../server/core/materials/oils.ts";
import { got } from "../core/film/got.ts";
import { grade } from "../core/film/grade.ts";
import type { Check } from "./check.ts";
import { viscosityIndex } from "./viscosity-index.ts";

const lineOf = (cool: number, at: number, warm: number, above: number) =>
  got(
    waltherLine(
      { temperature: at, kinematic: cool * 1e-6 },
      { temperature: above, kinematic: warm * 1e-6 },
    ),
  );

/** Seireg & Dandage's fits of the SAE chart: μ = μ0·exp(b/(T + 95)), microreyn and °F. */
const seiregDandage = [
  [20, 0.0136, 1271.6],
  [30, 0.0141, 1360],
  [40, 0.0121, 1474.4],
  [50, 0.017, 1509.6],
  [60, 0.0187, 1564],
] as const;

const checks: readonly Check[] = [
  ...(
    [
      [
        "404 cSt at 40 °C, 28 cSt at 100 °C: at 60 °C",
        () => kinematicViscosity(lineOf(404, 40, 28, 100), 60),
        132.126,
        0.001,
      ],
      [
        "68 cSt at 40 °C, 14.85 cSt at 80 °C: at 100 °C",
        () => kinematicViscosity(lineOf(68, 40, 14.85, 80), 100),
        8.8,
        0.003,
      ],
    ] as const
  ).map(([what, ours, theirs, relative]): Check => ({
    kinds: ["film"],
    what,
    method: "Walther's line with 0.7",
    against: "published",
    source: "examples of a lubricant maker's page on ASTM D341",
    unit: "cSt",
    ours: () => got(ours()) * 1e6,
    theirs: () => theirs,
    within: { relative },
  })),
  {
    kinds: ["film"],
    what: "32 cSt at 40 °C, 5.4 cSt at 100 °C: at 80 °C",
    method: "Walther's line with 0.7",
    against: "published",
    source: "a worked sheet on ASTM D341 that a reader of it shares",
    unit: "cSt",
    ours: () => got(kinematicViscosity(lineOf(32, 40, 5.4, 100), 80)) * 1e6,
    theirs: () => 8.5,
    within: { absolute: 0.05 },
  },
  ...oils.map(({ name, at40, at100 }): Check => ({
    kinds: ["film"],
    what: `viscosity index of ${name}: 95 to 103, as a plain mineral oil has it`,
    method: "viscosity index of the shipped grade's middles at 40 and 100 °C",
    against: "published",
    source: "ASTM D2270-10, table 1, as an open library has it",
    unit: "1",
    ours: () => viscosityIndex(at40.value * 1e6, at100.value * 1e6),
    theirs: () => 99,
    within: { absolute: 4 },
  })),
  ...(
    [
      ["iso-vg-32", "low", 40, 28.8],
      ["iso-vg-46", "low", 40, 41.4],
      ["iso-vg-46", "high", 40, 50.6],
      ["iso-vg-68", "high", 40, 74.8],
      ["iso-vg-220", "low", 40, 198],
      ["sae-20", "low", 100, 6.9],
      ["sae-30", "low", 100, 9.3],
      ["sae-30", "high", 100, 12.5],
      ["sae-40", "high", 100, 16.3],
      ["sae-50", "low", 100, 16.3],
    ] as const
  ).map(([name, side, temperature, theirs]): Check => ({
    kinds: ["film"],
    what: `${name} at its ${side} limit, ${temperature} °C`,
    method: "the line through that end of the shipped grade",
    against: "published",
    source: name.startsWith("sae")
      ? "SAE J300, kinematic limits, as reprinted by an oil maker"
      : "ISO 3448:1992, table 1, as reprinted by an oil maker",
    unit: "cSt",
    ours: () =>
      got(kinematicViscosity(grade(name)[side].line, temperature)) * 1e6,
    theirs: () => theirs,
    within: { relative: 1e-3 },
  })),
  ...seiregDandage.flatMap(([number, scale, exponent]) =>
    [40, 70, 100].map((temperature): Check => ({
      kinds: ["film"],
      what: `SAE ${number} at ${temperature} °C`,
      method: "grade's middle, density at temperature",
      against: "published",
      source:
        "Seireg & Dandage's fit of the SAE chart, Shigley, table 12-1; read in a transcription",
      unit: "mPa·s",
      ours: () =>
        got(dynamicViscosity(grade(`sae-${number}`).nominal, temperature)) *
        1e3,
      theirs: () =>
        6.89 * scale * Math.exp(exponent / (1.8 * temperature + 32 + 95)),
      within: { relative: 0.2 },
      because:
        "the chart drew one oil of each grade; a grade leaves 15 % either side of its middle at 100 °C and nothing binds it at 40 °C, and SAE 20 began at 5.6 cSt when the chart was drawn",
    })),
  ),
  {
    kinds: ["film"],
    what: "200 litres of oil warmed by 50 K grow by about 7 litres",
    method: "API MPMS 11.1, lubricating oils",
    against: "published",
    source: "an oil laboratory's page on density and temperature",
    unit: "m³",
    ours: () => 0.2 * (got(densityAt(880, 15)) / got(densityAt(880, 65)) - 1),
    theirs: () => 0.007,
    within: { absolute: 0.0006 },
  },
];

export default checks;

// Press fits against worked examples of textbooks; against finite elements in press-rings.checks.ts.
// A printed value is met within half a unit of its last printed digit; stresses are those of the pressure as printed, which is
// how the texts go on.
import {
  contactPressure,
  interferenceFor,
  pressStresses,
  type PressedPair,
  type PressStresses,
} from "../../server/core/press/ring.ts";
import { firstYield } from "../../server/core/press/yield.ts";
import { got } from "../core/readings/got.ts";
import type { Check } from "./check.ts";

const inch = 0.0254;
const psi = 4.4482216152605 / inch ** 2;
const mm = 1e-3;
const MPa = 1e6;

const solutions =
  "Budynas & Nisbett, Shigley's Mechanical Engineering Design, 8th ed., instructor's solution manual";
const steel = { modulus: 30e6 * psi, poisson: 0.292 };
const castIron = { modulus: 14.5e6 * psi, poisson: 0.211 };

function inches(bore: number, od: number, boss: number, caseMaterial = steel) {
  return {
    bore: bore * inch,
    od: od * inch,
    boss: boss * inch,
    bushMaterial: steel,
    caseMaterial,
  };
}

interface Example {
  readonly where: string;
  readonly pair: PressedPair;
  /** Diametral, m. */
  readonly interference: number;
  readonly unit: "psi" | "MPa";
  /** What the text prints, its pressure first: which value, how much, and half a unit of its last digit. */
  readonly printed: readonly (readonly [Printed, number, number])[];
}

type Printed =
  | "pressure"
  | "hoop at the bush's bore"
  | "hoop in the bush at the contact"
  | "hoop at the hole"
  | "hoop at the boss's outside"
  | "von Mises in the bush at the contact"
  | "von Mises at the hole";

const examples: readonly Example[] = [
  {
    where: `${solutions}, prob. 3-68, a steel shaft in a steel collar`,
    pair: inches(0, 1, 2),
    interference: 0.002 * inch,
    unit: "psi",
    printed: [
      ["pressure", 22500, 50],
      ["hoop at the hole", 37500, 50],
      ["hoop in the bush at the contact", -22500, 50],
    ],
  },
  {
    where: `${solutions}, prob. 3-69, a steel shaft in a cast iron collar`,
    pair: inches(0, 1, 2, castIron),
    interference: 0.002 * inch,
    unit: "psi",
    printed: [
      ["pressure", 13064, 0.5],
      ["hoop at the hole", 21770, 5],
      ["hoop in the bush at the contact", -13064, 0.5],
    ],
  },
  {
    where: `${solutions}, prob. 3-70, the most interference`,
    pair: inches(0, 1, 2),
    interference: 0.003 * inch,
    unit: "psi",
    printed: [["pressure", 33750, 5]],
  },
  {
    where: `${solutions}, prob. 5-34 (b), a solid inner tube`,
    pair: inches(0, 2, 3),
    interference: 0.001 * inch,
    unit: "psi",
    printed: [
      ["pressure", 4167, 0.5],
      ["hoop at the hole", 10830, 5],
      ["von Mises in the bush at the contact", 4167, 0.5],
      ["von Mises at the hole", 13410, 5],
    ],
  },
  {
    where: `${solutions}, prob. 5-35, one hollow tube on another`,
    pair: {
      bore: 25 * mm,
      od: 50 * mm,
      boss: 75 * mm,
      bushMaterial: { modulus: 207e9, poisson: 0.292 },
      caseMaterial: { modulus: 207e9, poisson: 0.292 },
    },
    interference: 0.02 * mm,
    unit: "MPa",
    printed: [
      ["pressure", 19.41, 0.005],
      ["hoop in the bush at the contact", -32.35, 0.005],
      ["von Mises in the bush at the contact", 28.2, 0.005],
      ["hoop at the hole", 50.47, 0.005],
      // the text goes on from the hoop as printed
      ["von Mises at the hole", 62.48, 0.006],
    ],
  },
  {
    where: `${solutions}, prob. 7-24, H7/s6, the most interference`,
    pair: inches(0, 1.5, 2.5),
    interference: 0.0023 * inch,
    unit: "psi",
    printed: [["pressure", 14720, 5]],
  },
  {
    where: `${solutions}, prob. 7-24, H7/s6, the least interference`,
    pair: inches(0, 1.5, 2.5),
    interference: 0.0007 * inch,
    unit: "psi",
    printed: [["pressure", 4480, 5]],
  },
  {
    where:
      "a worked answer (qammunity.org, question 10378823): a bronze bush 40/60 mm in a steel cylinder of 120 mm",
    pair: {
      bore: 40 * mm,
      od: 60 * mm,
      boss: 120 * mm,
      bushMaterial: { modulus: 105e9, poisson: 0.3 },
      caseMaterial: { modulus: 210e9, poisson: 0.3 },
    },
    interference: 0.1 * mm,
    unit: "MPa",
    printed: [
      ["pressure", 53.3, 0.05],
      ["hoop at the hole", 88.8, 0.05],
      ["hoop at the boss's outside", 35.5, 0.05],
      ["hoop at the bush's bore", -191.9, 0.05],
      ["hoop in the bush at the contact", -138.6, 0.05],
    ],
  },
];

/** In the text's unit. */
function valueOf(example: Example, printed: Printed): number {
  const { pair, interference, unit } = example;
  const scale = unit === "psi" ? psi : MPa;
  if (printed === "pressure")
    return got(contactPressure(pair, interference)) / scale;
  const pressure = example.printed[0]?.[1] ?? NaN;
  return stressOf(got(pressStresses(pair, pressure * scale)), printed) / scale;
}

function stressOf(
  stresses: PressStresses,
  printed: Exclude<Printed, "pressure">,
): number {
  switch (printed) {
    case "hoop at the bush's bore":
      return stresses.bushBore.hoop;
    case "hoop in the bush at the contact":
      return stresses.bushOutside.hoop;
    case "hoop at the hole":
      return stresses.hole.hoop;
    case "hoop at the boss's outside":
      return stresses.bossOutside.hoop;
    case "von Mises in the bush at the contact":
      return stresses.bushOutside.vonMises;
    case "von Mises at the hole":
      return stresses.hole.vonMises;
  }
}

const printedExamples: readonly Check[] = examples.flatMap((example) =>
  example.printed.map(([printed, theirs, half]): Check => ({
    kinds:
      printed === "pressure"
        ? ["contact-pressure"]
        : printed.includes("bush")
          ? ["bush-stress"]
          : ["hole-stress"],
    what: `${printed}, ${example.where.replace(`${solutions}, `, "")}`,
    method: "Lamé's rings in closed form",
    against: "published",
    source: example.where,
    unit: example.unit,
    ours: () => valueOf(example, printed),
    theirs: () => theirs,
    within: { absolute: half },
  })),
);

const jacket: PressedPair = {
  bore: 20 * mm,
  od: 40 * mm,
  boss: 60 * mm,
  bushMaterial: { modulus: 207e9, poisson: 0.3 },
  caseMaterial: { modulus: 207e9, poisson: 0.3 },
};

const others: readonly Check[] = [
  {
    kinds: ["interference"],
    what: "bore of a jacket that is to carry 100 N/mm² at its hole on a 20/40 mm tube, 60 mm outside",
    method: "pressure of the hoop stress, then interference of the pressure",
    against: "published",
    source:
      "Bhandari, Design of Machine Elements, example 22.6, as worked in the FOSSEE Scilab textbook companion 764",
    unit: "mm",
    ours: () => {
      const perUnit = got(pressStresses(jacket, 1)).hole.hoop;
      const delta = got(interferenceFor(jacket, (100 * MPa) / perUnit));
      return (jacket.od - delta) / mm;
    },
    theirs: () => 39.968289,
    within: { absolute: 5e-7 },
  },
  {
    kinds: ["bush-stress"],
    what: "outside pressure that brings the bore of a 1.25/1.75 in tube to 0.8 of its yield, 57 kpsi",
    method: "first yield at the bush's bore by von Mises",
    against: "published",
    source: `${solutions}, prob. 3-56`,
    unit: "psi",
    ours: () =>
      got(firstYield(inches(1.25, 1.75, 3), { bush: 0.8 * 57e3 * psi }))
        .pressure / psi,
    theirs: () => 11200,
    within: { absolute: 50 },
  },
];

const checks: readonly Check[] = [...printedExamples, ...others];
export default checks;

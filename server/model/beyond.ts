// Figures that nothing has: a Poisson's ratio of 0.9, a steel of 30 psi for 30e6, an oil at 900 °C. Such a number is a slip of the hand or of
// its unit, and nothing is worked out from it. The bounds are wide: what is merely unusual is whoever writes it's to know. What is below
// zero, or zero, is least.ts's; below absolute zero is no temperature anywhere, and quantities.ts's.
import { nodesIn, type Node } from "../../grammar/tree.ts";
import type { Dimension } from "../core/quantity/units.ts";
import { textOf, valueOf, type LineReader } from "./quantities.ts";
import type { FactRule } from "./values.ts";

/** What a node of a quantity may measure. */
const MEASURED = {
  density: ["density"],
  expansion: ["expansion"],
  pressure: ["pressure"],
  ratio: ["ratio"],
  temperature: ["temperature"],
  viscosity: ["viscosity", "dynamic-viscosity"],
} as const satisfies Readonly<Record<string, readonly Dimension[]>>;

interface Bound {
  /** The node that holds the quantity. */
  readonly at: keyof typeof MEASURED;
  readonly of: Dimension;
  /** SI, °C */
  readonly low: number;
  readonly high: number;
  /** The end of a sentence that says what the number lies outside of. */
  readonly said: string;
}

const BOUNDS: Readonly<Partial<Record<FactRule, readonly Bound[]>>> = {
  ExpansionFact: [
    {
      at: "expansion",
      of: "expansion",
      // from memory: the alloys made to grow least grow about 1 um/m-K, the softest plastics and rubbers up to 300
      low: 0.1e-6,
      high: 500e-6,
      said: "what parts are made of grows by 0.1 to 500 um/m-K (0.06 to 280 uin/in-F)",
    },
  ],
  ModulusFact: [
    {
      at: "pressure",
      of: "pressure",
      // from memory: soft rubber has a few MPa, tungsten carbide 700 GPa, diamond 1200
      low: 1e6,
      high: 1300e9,
      said: "what parts are made of has 1 MPa to 1300 GPa (145 psi to 190e6 psi)",
    },
  ],
  PoissonFact: [
    {
      at: "ratio",
      of: "ratio",
      // the theory of elasticity: past 0.5 what is pressed from all sides would grow
      low: 0,
      high: 0.5,
      said: "Poisson's ratio is 0.5 at the most, where what is pressed keeps its volume",
    },
  ],
  YieldFact: [
    {
      at: "pressure",
      of: "pressure",
      // from memory: lead has about 10 MPa, the hardest drawn wire 5 GPa
      low: 0.1e6,
      high: 10e9,
      said: "what parts are made of yields at 0.1 MPa to 10 GPa (15 psi to 1450 ksi)",
    },
  ],
  ViscosityFact: [
    {
      at: "viscosity",
      of: "viscosity",
      // from memory: water has 1 cSt, petrol half of it, the thickest open-gear lubricants some 100,000
      low: 0.1e-6,
      high: 1,
      said: "oils have 0.1 to 1e6 cSt",
    },
    {
      at: "viscosity",
      of: "dynamic-viscosity",
      low: 0.1e-3,
      high: 1e3,
      said: "oils have 0.1 to 1e6 cP",
    },
    {
      at: "temperature",
      of: "temperature",
      // from memory: most oils are stiff at -50 °C, and burn by themselves in air at 250 to 400
      low: -100,
      high: 400,
      said: "viscosity is stated at -100 to 400 C (-148 to 752 F), mostly at 40 and 100 C: at more an oil burns",
    },
  ],
  DensityFact: [
    {
      at: "density",
      of: "density",
      // from memory: light hydrocarbons have 0.65 g/cm3, fluorinated oils 1.9
      low: 500,
      high: 2500,
      said: "oils have 0.5 to 2.5 g/cm3",
    },
  ],
};

/** m. From memory: the largest rings that are turned have some 20 m. */
const MOST_ACROSS = 100;

/** Reports the first value of a reading that nothing is as large as: a reading without its decimal point. */
export function reportTooLarge(
  line: LineReader,
  nodes: readonly Node[],
  values: readonly { readonly value: number }[],
): boolean {
  const node = nodes[values.findIndex(({ value }) => MOST_ACROSS < value)];
  if (node === undefined) return false;
  line.report("line-damaged", node, {
    message: `\`${textOf(line, node)}\` can't be what was read, since nothing is 100 m (3937 in) across: look at its decimal point and its unit.`,
  });
  return true;
}

/** What a double makes of a bound that is written in another unit. */
const ROUNDING = 1e-9;

/** Reports each number of a line that nothing of its kind has. */
export function reportBeyond(
  line: LineReader,
  tree: Node,
  word: string,
  rule: FactRule,
): void {
  for (const { at, of, low, high, said } of BOUNDS[rule] ?? [])
    for (const node of nodesIn(tree)) {
      if (node.type !== at) continue;
      const read = valueOf(line, node, ...MEASURED[at]);
      if (read?.dimension !== of) continue;
      const room = ROUNDING * (high - low);
      if (low - room <= read.value && read.value <= high + room) continue;
      line.report("line-damaged", node, {
        message: `\`${textOf(line, node)}\` can't be what \`${word}\` says, since ${said}: look at the number and its unit, or leave the line out until it is known.`,
      });
    }
}

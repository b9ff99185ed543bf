// The second look at readings: each result of the room by another way (second/readings.ts).
import type { Check } from "./check.ts";
import * as readings from "./second/readings.ts";
import { secondLook } from "./second/sides.ts";

const checks: readonly Check[] = [
  secondLook({
    kinds: ["uncertainty"],
    what: "second look: Grubbs' critical values",
    method: "from Student's t",
    source:
      "2n caps on the sphere of residuals in n − 1 dimensions, no t in it, where the caps are apart and so exact: n of 3 to 10 000, α of 0.1 to 10 %",
    unit: "1",
    isRelative: true,
    allowed: 6e-8,
    sides: readings.critical(),
  }),
  secondLook({
    kinds: ["uncertainty"],
    what: "second look: scatter and pooled scatter",
    method: "squares about compensated means",
    source:
      "squares of the differences of all pairs, in whole numbers; readings in steps of 0.1 µm",
    unit: "1",
    isRelative: true,
    allowed: 1e-10,
    sides: readings.scatter(),
  }),
  secondLook({
    kinds: ["size"],
    what: "second look: sizes at 20 °C",
    method: "reading, correction, growth of part and gauge",
    source: "fractions of whole numbers, −40 to 80 °C",
    unit: "m",
    isRelative: true,
    allowed: 1e-15,
    sides: readings.sizes(),
  }),
  secondLook({
    kinds: ["uncertainty"],
    what: "second look: what a degree or a unit of expansion does to a size",
    method: "first-order sensitivities",
    source:
      "differences of the size itself, in parts of α·L and of 20 K·L; the second order is left out of the first-order ones",
    unit: "1",
    allowed: 1e-3,
    sides: readings.sensitivities(),
  }),
  secondLook({
    kinds: ["uncertainty"],
    what: "second look: combined and expanded uncertainty, and of a clearance with a shared input",
    method: "budget, Welch–Satterthwaite, Student's t",
    source:
      "the whole matrix of covariances, the variance of a variance, t by caps of a sphere; the shared input combined before it is squared",
    unit: "m",
    isRelative: true,
    allowed: 6e-8,
    sides: readings.budgets(),
  }),
  secondLook({
    kinds: [],
    what: "second look: verdicts on sizes and on ranges",
    method: "simple and guarded verdicts",
    source:
      "every size of a lattice of 0.1 nm about five pairs of limits and five guards; a range by asking each size in it",
    unit: "1",
    allowed: 0,
    sides: readings.verdicts(),
  }),
  secondLook({
    kinds: ["roundness"],
    what: "second look: what a vee shows of lobes",
    method: "closed form",
    source:
      "the part's seat in the vee solved from its two contacts, over a turn; 60 to 120°, 2 to 24 lobes, both places of the indicator",
    unit: "1",
    allowed: 1e-9,
    sides: readings.vees(),
  }),
];

export default checks;

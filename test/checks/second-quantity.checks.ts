// The second look at quantities: numbers as written, units, Student's t (second/quantity.ts, second/shown.ts, second/student.ts).
import type { Check } from "./check.ts";
import * as quantity from "./second/quantity.ts";
import { shown } from "./second/shown.ts";
import { secondLook } from "./second/sides.ts";

const kinds: readonly string[] = [];

const checks: readonly Check[] = [
  secondLook({
    kinds,
    what: "second look: a written number's double",
    method: "nearest double of a written number",
    source:
      "the fraction that the word means, its neighbours among doubles weighed in whole numbers; seeded words of up to 20 digits and powers of ten of −49 to 26",
    unit: "1",
    isRelative: true,
    allowed: 0,
    sides: quantity.numbers(),
  }),
  secondLook({
    kinds,
    what: "second look: a written length in tenths of a nanometre",
    method: "whole tenths of a nanometre, in m and back",
    source: "fractions of whole numbers, halves away from zero",
    unit: "1",
    allowed: 0,
    sides: quantity.tenths(),
  }),
  secondLook({
    kinds,
    what: "second look: lengths as they are shown",
    method: "rounding of what is shown",
    source:
      "whole numbers of the last digit, halves away from zero (ISO 80000-1, annex B, rule B, from memory); an eighth of them halves, inch and mm",
    unit: "1",
    allowed: 0,
    sides: shown(),
  }),
  secondLook({
    kinds,
    what: "second look: units from their definitions",
    method: "table of units",
    source:
      "inch, pound, standard gravity and minute as defined (from memory: exact by definition), all else by fractions; °F and K at 0, 20, 100 and −40 °C",
    unit: "1",
    isRelative: true,
    allowed: 1e-15,
    sides: quantity.units(),
  }),
  secondLook({
    kinds,
    what: "second look: quantiles of Student's t in the tails",
    method: "quantile of Student's t",
    source:
      "caps of a sphere: the angle's integral by tanh-sinh, solved by bisection; tails of 1e-9 to 0.4, 1 to 999 999 degrees of freedom, whole or not",
    unit: "1",
    isRelative: true,
    allowed: 6e-8,
    sides: quantity.tails(),
  }),
  secondLook({
    kinds,
    what: "second look: quantiles of Student's t near a half",
    method: "quantile of Student's t",
    source: "caps of a sphere, likewise; tails of 0.42 to 0.4999",
    unit: "1",
    isRelative: true,
    allowed: 6e-8,
    sides: quantity.middles(),
  }),
  secondLook({
    kinds,
    what: "second look: a printed table of Student's t",
    method: "quantile of Student's t",
    against: "published",
    source:
      "critical values for the t-distribution, table B.1 of a course on linear models (bookdown.org/pingapang9), rows 1 to 10, 15, 20, 25, nine tails; three decimals",
    unit: "1",
    allowed: 5.1e-4,
    sides: quantity.printedT(),
  }),
  secondLook({
    kinds,
    what: "second look: NIST's table of coverage factors",
    method: "two-sided Student's t",
    against: "published",
    source:
      "NIST Technical Note 1297, appendix B, table B.1, nine rows, six shares; two decimals",
    unit: "1",
    allowed: 5.1e-3,
    sides: quantity.nistT(),
  }),
];

export default checks;

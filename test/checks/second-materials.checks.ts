// The second look at shipped materials: a printed column that was not the one shipped from, and what no solid can break (second/materials.ts).
import type { Check } from "./check.ts";
import * as materials from "./second/materials.ts";
import { secondLook } from "./second/sides.ts";

const checks: readonly Check[] = [
  secondLook({
    kinds: [],
    what: "second look: expansions by their printed value per °F",
    method: "shipped figure",
    against: "published",
    source:
      "Fundamentals of Materials Science and Engineering, 3rd edition, table B.6, column per °F, two digits, times 1.8",
    unit: "1e-6/K",
    allowed: 0.0901,
    sides: materials.expansions(),
  }),
  secondLook({
    kinds: [],
    what: "second look: figures that no solid can have",
    method: "shipped figures",
    source:
      "ν under a half, strain at yield under 1 % (plastics 5 %), each value within its own range, load × speed not under PV",
    unit: "1",
    allowed: 0,
    sides: materials.impossible(),
  }),
];

export default checks;

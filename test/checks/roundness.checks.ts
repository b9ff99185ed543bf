// What two- and three-point methods see of a lobed form, against an outline of points turned between its contacts.
import { clearance } from "../../server/core/line/clearance.ts";
import {
  lobingFactor,
  type RoundnessMethod,
} from "../../server/core/readings/lobing.ts";
import { got } from "../core/readings/got.ts";
import {
  threeContactSwing,
  twoPointSwing,
  veeSwing,
} from "../core/readings/turned.ts";
import type { Check } from "./check.ts";

function vee(
  degrees: number,
  indicator: "opposite" | "between",
): RoundnessMethod {
  return { kind: "vee", angle: (degrees * Math.PI) / 180, indicator };
}

const twoPoint: RoundnessMethod = { kind: "two-point" };
const threeContacts: RoundnessMethod = { kind: "three-contacts" };

const opposite = [60, 90, 108, 120].flatMap((angle) =>
  [2, 3, 4, 5, 6, 7, 9, 11].map((lobes): [string, RoundnessMethod, number] => [
    `a vee of ${angle}°`,
    vee(angle, "opposite"),
    lobes,
  ]),
);

const between = [60, 90].flatMap((angle) =>
  [2, 3, 4, 5, 6].map((lobes): [string, RoundnessMethod, number] => [
    `a vee of ${angle}°, indicator between its faces`,
    vee(angle, "between"),
    lobes,
  ]),
);

const methods: readonly [string, RoundnessMethod, number][] = [
  ["two points", twoPoint, 2],
  ["two points", twoPoint, 6],
  ["three contacts", threeContacts, 3],
  ["three contacts", threeContacts, 6],
  ...opposite,
  ...between,
];

// low against the radius, so that what the factors leave out is beyond the tolerance
const amplitude = 1e-5;

function turnedFactor(method: RoundnessMethod, lobes: number): number {
  const outline = { radius: 1, amplitude, lobes };
  switch (method.kind) {
    case "two-point":
      return twoPointSwing(outline) / (2 * amplitude);
    case "three-contacts":
      return threeContactSwing(outline) / (2 * amplitude);
    case "vee":
      return (
        veeSwing(outline, method.angle, method.indicator) / (2 * amplitude)
      );
  }
}

const factors = methods
  // where a method is blind there is no factor; the tests see to it that it says so
  .filter(([, method, lobes]) => lobingFactor(method, lobes).valid)
  .map(([name, method, lobes]): Check => ({
    kinds: method.kind === "two-point" ? ["out-of-round"] : ["roundness"],
    what: `factor of a form with ${lobes} lobes by ${name}`,
    method: "closed form",
    against: "independent",
    source: "an outline of points turned between its contacts",
    unit: "1",
    ours: () => got(lobingFactor(method, lobes)),
    theirs: () => turnedFactor(method, lobes),
    within: { relative: 0.002 },
  }));

// of constant width 1: the circle round it has the diameter 2/√3, the circle within it 2(1 − 1/√3)
const roundness = 2 / Math.sqrt(3) - 1;

function reuleaux(
  what: string,
  feature: "journal" | "bore",
  theirs: number,
): Check {
  return {
    kinds: ["clearance"],
    what,
    method: "two-point diameters, and radial roundness",
    against: "independent",
    source: "geometry of the Reuleaux triangle",
    unit: "1",
    ours: () => {
      const three = { smallest: 1, largest: 1, roundness };
      // the other part is a true circle, of the diameter that geometry gives it
      const round = { smallest: theirs, largest: theirs };
      const found =
        feature === "journal"
          ? clearance(round, three)
          : clearance(three, round);
      return got(found).least;
    },
    theirs: () => 0,
    within: { absolute: 1e-15 },
  };
}

const checks: readonly Check[] = [
  ...factors,
  reuleaux(
    "clearance of a three-cornered journal of constant width 1 in the hole that it just fills",
    "journal",
    2 / Math.sqrt(3),
  ),
  reuleaux(
    "clearance of the pin that just fills a three-cornered bore of constant width 1",
    "bore",
    2 - 2 / Math.sqrt(3),
  ),
];
export default checks;

// The shipped materials and oils: well-formed, in range, and every pair of them answers.
import { describe, expect, test } from "vitest";
import type { Figure } from "../../../server/core/materials/figure.ts";
import {
  material,
  materials,
} from "../../../server/core/materials/material.ts";
import { oil, oils } from "../../../server/core/materials/oils.ts";
import { closureBand, pressureBand } from "../../../server/core/press/boss.ts";
import { pressAtTemperature } from "../../../server/core/press/temperature.ts";
import { firstYield } from "../../../server/core/press/yield.ts";
import { got } from "../readings/got.ts";

function figuresOf(entry: object): (readonly [name: string, figure: Figure])[] {
  return Object.entries(entry).filter(
    (field): field is [string, Figure] =>
      typeof field[1] === "object" && field[1] !== null,
  );
}

describe.each([...materials, ...oils])("$name", (entry) => {
  test("has a kebab-case name that finds it", () => {
    expect(entry.name).toMatch(/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/);
    expect(material(entry.name) ?? oil(entry.name)).toBe(entry);
  });
  test("has figures within their ranges, each with its source", () => {
    for (const [name, { value, low, high, source }] of figuresOf(entry)) {
      expect(low, name).toBeGreaterThan(0);
      expect(low, name).toBeLessThanOrEqual(value);
      expect(value, name).toBeLessThanOrEqual(high);
      expect(source, name).toMatch(/seen|memory|practice|own minimum|misprint/);
    }
  });
});

test("names are unique over materials, and over oils", () => {
  expect(new Set(materials.map(({ name }) => name)).size).toBe(
    materials.length,
  );
  expect(new Set(oils.map(({ name }) => name)).size).toBe(oils.length);
  expect(material("mithril")).toBeUndefined();
  expect(oil("snake")).toBeUndefined();
});

test.each([
  "steel-1018",
  "steel-1045",
  "steel-4140",
  "stainless-303",
  "stainless-304",
  "stainless-316",
  "iron-grey",
  "iron-ductile",
  "aluminium-356-t6",
  "aluminium-a380",
  "aluminium-6061-t6",
  "bronze-c932",
  "bronze-c954",
  "bronze-c863",
  "bronze-c936",
  "bronze-c905",
  "sae-841",
  "brass-c360",
  "acetal",
  "ptfe-lined",
  "babbitt-tin",
])("%s is shipped", (name) => {
  expect(material(name)).toBeDefined();
});

test.each([
  ...[10, 15, 22, 32, 46, 68, 100, 150, 220, 320, 460].map(
    (grade) => `iso-vg-${grade}`,
  ),
  ...[10, 20, 30, 40, 50, 80, 85, 90, 140].map((grade) => `sae-${grade}`),
])("%s is shipped", (name) => {
  expect(oil(name)).toBeDefined();
});

test("a material is of the family that its name begins with", () => {
  const others = {
    "sae-841": "sintered",
    acetal: "polymer",
    "ptfe-lined": "lined",
    "babbitt-tin": "white-metal",
    "babbitt-lead": "white-metal",
  };
  for (const { name, family } of materials)
    expect(family, name).toBe(
      Object.entries(others).find(([each]) => each === name)?.[1] ??
        name.split("-")[0],
    );
});

test("what bushes are made of says how it may run, and a case's metal how hot it may be made", () => {
  for (const entry of materials) {
    const runs = [entry.specificLoad, entry.speed, entry.pv];
    const bush = !["steel", "stainless", "iron", "aluminium"].includes(
      entry.family,
    );
    for (const limit of runs)
      expect(limit !== undefined, entry.name).toBe(bush);
    if (!bush) expect(entry.caseHeat, entry.name).toBeDefined();
    if (entry.family === "aluminium") expect(entry.caseHeat?.value).toBe(120);
    // the product's limit is never over what load and speed allow together
    if (entry.pv && entry.specificLoad && entry.speed)
      expect(entry.pv.value).toBeLessThanOrEqual(
        entry.specificLoad.value * entry.speed.value,
      );
  }
});

test("every material pressed into every other answers, in every form of boss, cold and hot", () => {
  for (const bush of materials)
    for (const housing of materials) {
      const pair = {
        bore: 0.022,
        od: 0.0254,
        boss: 0.045,
        bushMaterial: {
          modulus: bush.modulus.value,
          poisson: bush.poisson.value,
        },
        caseMaterial: {
          modulus: housing.modulus.value,
          poisson: housing.poisson.value,
        },
      };
      for (const form of ["plain", "stiffer", "bush-overhangs"] as const) {
        const closure = got(closureBand(pair, form));
        expect(closure.high).toBeLessThan(1.1);
        got(pressureBand(pair, { low: 0, high: 3e-5 }, form));
      }
      got(
        firstYield(pair, { bush: bush.yield.value, case: housing.yield.value }),
      );
      for (const temperature of [-40, 20, 120])
        got(
          pressAtTemperature(
            {
              bore: pair.bore,
              od: pair.od,
              interference: 2e-5,
              closure: got(closureBand(pair, "plain")).low,
              bushExpansion: bush.expansion.value,
              caseExpansion: housing.expansion.value,
            },
            temperature,
            temperature,
          ),
        );
    }
});

describe("oils", () => {
  const named = (name: string) => {
    const found = oil(name);
    if (found === undefined) throw new Error(`no ${name}`);
    return found;
  };
  test("thin as they warm, and every end of a band with its own end", () => {
    for (const { at40, at100 } of oils) {
      expect(at100.value).toBeLessThan(at40.value);
      expect(at100.low).toBeLessThan(at40.low);
      expect(at100.high).toBeLessThan(at40.high);
    }
  });
  test("ISO grades thicken with their number and lie 10 % either side of it", () => {
    const grades = oils.filter(({ use }) => use === "industrial");
    for (const [i, { at40, at100, density, name }] of grades.entries()) {
      const number = Number(name.replace("iso-vg-", "")) * 1e-6;
      expect(at40.value).toBeCloseTo(number, 12);
      expect(at40.low).toBeCloseTo(0.9 * number, 12);
      expect(at40.high).toBeCloseTo(1.1 * number, 12);
      const next = grades[i + 1];
      if (next === undefined) continue;
      expect(at100.value).toBeLessThan(next.at100.value);
      expect(density.value).toBeLessThan(next.density.value);
    }
  });
  test("SAE bands join end to end at 100 °C", () => {
    for (const use of ["engine", "gear"] as const) {
      const grades = oils.filter(
        (entry) => entry.use === use && !/^sae-10w?$/.test(entry.name),
      );
      for (const [i, { at100 }] of grades.entries()) {
        const next = grades[i + 1];
        if (next !== undefined) expect(next.at100.low).toBe(at100.high);
      }
    }
    expect(named("sae-10").at100).toEqual(named("sae-10w").at100);
  });
});

test("a material that two spellings name is found by either", () => {
  const said = (word: string): number =>
    materials.filter(({ what }) => what.includes(word)).length;
  expect(said("gray")).toBe(said("grey"));
  expect(said("aluminum")).toBe(said("aluminium"));
  expect(said("aluminum")).toBeGreaterThan(5);
});

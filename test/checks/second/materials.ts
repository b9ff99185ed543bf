// Owns the second look at shipped materials: the same printed expansions in their other unit, and rules that any isotropic solid keeps.
import {
  material,
  materials,
} from "../../../server/core/materials/material.ts";
import type { Side } from "./sides.ts";

/**
 * Expansions per °F as Fundamentals of Materials Science and Engineering, 3rd edition, table B.6, prints them beside those per °C (pages seen
 * at issuhub.com, 5550, p. 816, and pdfslide.us, Thermal expansion data table). Two digits: half a tenth, times 1.8.
 */
const perFahrenheit: ReadonlyMap<string, number> = new Map([
  ["steel-1018", 6.5],
  ["steel-1045", 6.3],
  ["steel-4140", 6.8],
  ["steel-4340", 6.8],
  ["stainless-304", 9.6],
  ["stainless-316", 8.8],
  ["iron-grey", 6.3],
  ["aluminium-6061-t6", 13.1],
  ["aluminium-7075-t6", 13.0],
  ["aluminium-356-t6", 11.9],
  ["brass-c360", 11.4],
  ["bronze-c932", 10.0],
]);

/** 1e-6 per °C: the shipped figure, and 1.8 times the printed one per °F. 1018 stands beside 1020, 1045 beside 1040. */
export function expansions(): readonly Side[] {
  return [...perFahrenheit].map(([name, theirs]) => {
    const figure = material(name)?.expansion.value;
    return {
      at: name,
      ours: figure === undefined ? undefined : figure * 1e6,
      theirs: theirs * 1.8,
    };
  });
}

/**
 * What holds for every isotropic solid whatever was read where: a bulk modulus E/(3(1 − 2ν)) and a shear modulus E/(2(1 + ν)) above nothing and
 * so ν under a half; strain at yield under 1 % for a metal, 5 % for a plastic; a figure within its own range. Each gives how many break it.
 */
export function impossible(): readonly Side[] {
  return materials.map((each) => {
    const figures = [
      each.expansion,
      each.modulus,
      each.poisson,
      each.yield,
    ].concat(
      [each.specificLoad, each.speed, each.pv, each.caseHeat].filter(
        (figure) => figure !== undefined,
      ),
    );
    const unordered = figures.filter(
      ({ low, value, high }) => !(0 < low && low <= value && value <= high),
    ).length;
    const strain = each.yield.value / each.modulus.value;
    const stretched =
      (each.family === "polymer" ? 0.05 : 0.01) < strain ? 1 : 0;
    const soft = each.poisson.high < 0.5 ? 0 : 1;
    // Load and speed together carry no more than their product, each at its own limit.
    const idle =
      each.pv !== undefined &&
      each.specificLoad !== undefined &&
      each.speed !== undefined &&
      each.specificLoad.value * each.speed.value < each.pv.value
        ? 1
        : 0;
    return {
      at: each.name,
      ours: unordered + stretched + soft + idle,
      theirs: 0,
    };
  });
}

// What is shipped under a designation of the trade. The designations themselves: SAE J461 and J463, AISI and SAE numbers, UNS numbers,
// EN 1561, ISO 3448, as printed beside the shipped figures.
import { describe, expect, test } from "vitest";
import { materials } from "../../server/core/materials/material.ts";
import { oils } from "../../server/core/materials/oils.ts";
import { shippedAs } from "../../server/rules/text/designation.ts";

const both = ["material", "oil"];

test.each([
  ["4140", "steel-4140"],
  ["AISI 4140", "steel-4140"],
  ["12L14", "steel-12l14"],
  ["316", "stainless-316"],
  ["17-4", "stainless-17-4ph"],
  ["17", "stainless-17-4ph"],
  ["c932", "bronze-c932"],
  ["C93200", "bronze-c932"],
  ["660", "bronze-c932"],
  ["SAE 660", "bronze-c932"],
  ["bronze-660", "bronze-c932"],
  ["sae_841", "sae-841"],
  ["EN-GJL-200", "iron-grey"],
  ["VG68", "iso-vg-68"],
  ["ISO VG 68", "iso-vg-68"],
  ["68", "iso-vg-68"],
  // and not the iron that is called "class 30 (SAE G3000)"
  ["SAE30", "sae-30"],
  ["10W", "sae-10w"],
  ["10", "iso-vg-10, sae-10, sae-10w"],
])("%s stands for %s", (written, shipped) => {
  expect(shippedAs(written, both).join(", ")).toBe(shipped);
});

test.each(["", "h7", "C45", "12", "15W-40", "SAE 15W-40", "25", "bronze"])(
  "%j stands for nothing that is shipped",
  (written) => {
    expect(shippedAs(written, both)).toEqual([]);
  },
);

test("only what the place takes is meant", () => {
  expect(shippedAs("68", ["material"])).toEqual([]);
  expect(shippedAs("4140", ["oil"])).toEqual([]);
  expect(shippedAs("4140", ["reamer"])).toEqual([]);
});

describe("every shipped name that has a number of two figures stands for itself first", () => {
  test.each([...materials, ...oils].map(({ name }) => name))("%s", (name) => {
    const shipped = shippedAs(name, both);
    if (/\d\d/u.test(name)) expect(shipped).toContain(name);
    else expect(shipped).toEqual([]);
  });
});

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  densityAt,
  dynamicViscosity,
  kinematicViscosity,
  oilBand,
  waltherLine,
} from "../../../server/core/film/viscosity.ts";
import { oils } from "../../../server/core/materials/oils.ts";
import { got } from "./got.ts";

const vg46 = got(
  waltherLine(
    { temperature: 40, kinematic: 46e-6 },
    { temperature: 100, kinematic: 6.8e-6 },
  ),
);

describe("an oil's line", () => {
  test("passes through its two points, whichever comes first", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5e-6, max: 60e-6, noNaN: true }),
        fc.double({ min: 1.5, max: 12, noNaN: true }),
        (warm, ratio) => {
          const cool = { temperature: 40, kinematic: warm * ratio };
          const hot = { temperature: 100, kinematic: warm };
          const line = got(waltherLine(hot, cool));
          expect(
            got(kinematicViscosity(line, 40)) / cool.kinematic,
          ).toBeCloseTo(1, 9);
          expect(
            got(kinematicViscosity(line, 100)) / hot.kinematic,
          ).toBeCloseTo(1, 9);
          expect(got(waltherLine(cool, hot))).toEqual(line);
        },
      ),
    );
  });

  test("falls with the temperature", () => {
    let before = Infinity;
    for (let t = -20; t <= 150; t += 5) {
      const here = kinematicViscosity(vg46, t);
      if (!here.valid) continue;
      expect(here.value).toBeLessThan(before);
      before = here.value;
    }
    expect(before).toBeLessThan(3.5e-6);
  });

  test("is refused outside its range, and where two points make none", () => {
    expect(kinematicViscosity(vg46, -21).valid).toBe(false);
    expect(kinematicViscosity(vg46, 151).valid).toBe(false);
    expect(kinematicViscosity(vg46, NaN).valid).toBe(false);
    // thinner than 2 cSt: the line alone no longer holds
    const thin = got(
      waltherLine(
        { temperature: 40, kinematic: 5e-6 },
        { temperature: 100, kinematic: 2.01e-6 },
      ),
    );
    expect(kinematicViscosity(thin, 120).valid).toBe(false);
    const at = (temperature: number, kinematic: number) => ({
      temperature,
      kinematic,
    });
    expect(waltherLine(at(40, 46e-6), at(45, 40e-6)).valid).toBe(false);
    expect(waltherLine(at(40, 46e-6), at(100, 46e-6)).valid).toBe(false);
    expect(waltherLine(at(40, 46e-6), at(100, 47e-6)).valid).toBe(false);
    expect(waltherLine(at(40, 1e-6), at(100, 0.5e-6)).valid).toBe(false);
    expect(waltherLine(at(40, NaN), at(100, 5e-6)).valid).toBe(false);
    expect(waltherLine(at(200, 46e-6), at(100, 50e-6)).valid).toBe(false);
  });
});

describe("density", () => {
  test("is the given one at 15 °C and falls by some 0.7 ‰ a kelvin", () => {
    expect(got(densityAt(880, 15))).toBeCloseTo(880, 9);
    expect(got(densityAt(880, 16)) / 880).toBeCloseTo(1 - 0.00071, 5);
  });
  test("is refused where no lubricating oil is", () => {
    for (const density of [700, 1300, NaN, -880])
      expect(densityAt(density, 20).valid).toBe(false);
    expect(densityAt(880, 200).valid).toBe(false);
  });
  test("turns cSt into mPa·s", () => {
    const oil = { line: vg46, density: 869 };
    expect(got(dynamicViscosity(oil, 40))).toBeCloseTo(
      46e-6 * got(densityAt(869, 40)),
      12,
    );
    expect(dynamicViscosity({ ...oil, density: 100 }, 40).valid).toBe(false);
    expect(dynamicViscosity(oil, 400).valid).toBe(false);
  });
});

describe("a grade", () => {
  test.each(oils.map((oil) => [oil.name, oil] as const))(
    "%s is thinnest, middling, thickest at every temperature",
    (_, oil) => {
      const band = got(oilBand(oil));
      for (const temperature of [20, 40, 60, 80, 100]) {
        const at = (end: keyof typeof band) =>
          got(dynamicViscosity(band[end], temperature));
        expect(at("low")).toBeLessThan(at("nominal"));
        expect(at("nominal")).toBeLessThan(at("high"));
      }
      expect(got(kinematicViscosity(band.high.line, 100))).toBeCloseTo(
        oil.at100.high,
        12,
      );
    },
  );
  test("without a slope is refused", () => {
    const flat = { value: 46e-6, low: 41e-6, high: 51e-6 };
    expect(
      oilBand({
        at40: flat,
        at100: flat,
        density: { value: 870, low: 860, high: 880 },
      }).valid,
    ).toBe(false);
  });
});

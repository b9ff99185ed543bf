import fc from "fast-check";
import { expect, test } from "vitest";
import {
  calibrationComponent,
  permissibleErrorComponent,
  repeatabilityComponent,
  resolutionComponent,
  settingComponent,
  sizeComponents,
  temperatureComponents,
} from "../../../server/core/readings/components.ts";
import { sizeAtReference } from "../../../server/core/readings/temperature.ts";
import { chance, spread } from "./chance.ts";
import { got } from "./got.ts";

test("a rectangle's standard deviation, from draws", () => {
  const { even } = chance(12);
  const step = got(resolutionComponent(1)).standardUncertainty;
  const error = got(permissibleErrorComponent(1)).standardUncertainty;
  expect(step / spread(100_000, () => even() / 2)).toBeCloseTo(1, 2);
  expect(error / spread(100_000, even)).toBeCloseTo(1, 2);
});

test("what they hold", () => {
  expect(got(resolutionComponent(1e-6))).toMatchObject({
    name: "resolution",
    distribution: "rectangular",
    sensitivity: 1,
  });
  expect(got(calibrationComponent(2e-6))).toMatchObject({
    standardUncertainty: 1e-6,
    degreesOfFreedom: Infinity,
  });
  expect(got(calibrationComponent(3e-6, 3, 18))).toMatchObject({
    standardUncertainty: 1e-6,
    degreesOfFreedom: 18,
  });
  expect(
    got(
      repeatabilityComponent(
        { standardDeviation: 2e-6, degreesOfFreedom: 9 },
        4,
      ),
    ),
  ).toMatchObject({
    standardUncertainty: 1e-6,
    degreesOfFreedom: 9,
    distribution: "student",
  });
  expect(got(settingComponent(1e-6))).toMatchObject({
    name: "setting",
    standardUncertainty: 1e-6,
  });
});

test("sensitivities of temperature are the slopes of the size at 20 °C", () => {
  const temperature = fc.double({ min: 0, max: 40, noNaN: true });
  const expansion = fc.double({ min: 5e-6, max: 30e-6, noNaN: true });
  fc.assert(
    fc.property(
      temperature,
      expansion,
      temperature,
      expansion,
      (tp, ap, tg, ag) => {
        const at = (
          dtp: number,
          dap: number,
          dtg: number,
          dag: number,
        ): number =>
          got(
            sizeAtReference({
              reading: 1,
              part: { temperature: tp + dtp, expansion: ap + dap },
              gauge: { temperature: tg + dtg, expansion: ag + dag },
            }),
          );
        const known = { temperatureUncertainty: 1, expansionUncertainty: 1 };
        const part = got(
          temperatureComponents("part", 1, {
            ...known,
            temperature: tp,
            expansion: ap,
          }),
        );
        const gauge = got(
          temperatureComponents("gauge", 1, {
            ...known,
            temperature: tg,
            expansion: ag,
          }),
        );
        // second order against first: α·ΔT is under a thousandth here
        expect((at(0.5, 0, 0, 0) - at(-0.5, 0, 0, 0)) / ap).toBeCloseTo(
          part[0].sensitivity / ap,
          2,
        );
        expect((at(0, 0, 0.5, 0) - at(0, 0, -0.5, 0)) / ag).toBeCloseTo(
          gauge[0].sensitivity / ag,
          2,
        );
        const step = 1e-7;
        expect(
          (at(0, step, 0, 0) - at(0, -step, 0, 0)) / (2 * step),
        ).toBeCloseTo(part[1].sensitivity, 1);
        expect(
          (at(0, 0, 0, step) - at(0, 0, 0, -step)) / (2 * step),
        ).toBeCloseTo(gauge[1].sensitivity, 1);
      },
    ),
  );
});

test("the facts of a size give its components in order, a gauge's error once, and those only", () => {
  const warm = {
    temperature: 25,
    temperatureUncertainty: 0.5,
    expansion: 11.5e-6,
    expansionUncertainty: 1e-6,
  };
  const all = {
    length: 0.025,
    resolution: 1e-6,
    calibration: 2e-6,
    mpe: 1e-6,
    setting: 1e-6,
    repeatability: { standardDeviation: 1e-6, degreesOfFreedom: 4 },
    part: warm,
    gauge: warm,
  };
  expect(got(sizeComponents(all)).map(({ name }) => name)).toEqual([
    "resolution",
    "calibration",
    "setting",
    "repeatability",
    "part temperature",
    "part expansion",
    "gauge temperature",
    "gauge expansion",
  ]);
  expect(
    got(sizeComponents({ length: 0.025, mpe: 2e-6 })).map(({ name }) => name),
  ).toEqual(["mpe"]);
  expect(sizeComponents({ length: 0.025 }).valid).toBe(false);
  expect(sizeComponents({ length: 0.025, mpe: NaN }).valid).toBe(false);
  expect(sizeComponents({ ...all, mpe: NaN }).valid).toBe(false);
  expect(sizeComponents({ ...all, calibration: NaN }).valid).toBe(false);
  expect(sizeComponents({ ...all, length: 0 }).valid).toBe(false);
});

test("refusals", () => {
  const scatter = { standardDeviation: 1e-6, degreesOfFreedom: 3 };
  const warm = {
    temperature: 25,
    temperatureUncertainty: 0.5,
    expansion: 11.5e-6,
    expansionUncertainty: 1e-6,
  };
  const refused = [
    resolutionComponent(0),
    resolutionComponent(NaN),
    calibrationComponent(-1e-6),
    calibrationComponent(1e-6, 0.5),
    calibrationComponent(1e-6, 2, 0),
    permissibleErrorComponent(-1e-6),
    permissibleErrorComponent(Infinity),
    settingComponent(-1e-6),
    settingComponent(1e-6, 0),
    repeatabilityComponent({ ...scatter, standardDeviation: -1 }),
    repeatabilityComponent({ ...scatter, degreesOfFreedom: 0 }),
    repeatabilityComponent(scatter, 0),
    repeatabilityComponent(scatter, 1.5),
    temperatureComponents("part", 0, warm),
    temperatureComponents("part", 1, { ...warm, temperature: NaN }),
    temperatureComponents("part", 1, { ...warm, temperatureUncertainty: -1 }),
    temperatureComponents("gauge", 1, { ...warm, expansionUncertainty: NaN }),
  ];
  expect(refused.filter(({ valid }) => valid)).toEqual([]);
});

// How hard bush and hole press on each other, what that does to both, and the force that it takes to press the bush home.
import { middle, type Band } from "../../core/quantity/band.ts";
import {
  holeStressBand,
  pressureBand,
  type BossForm,
} from "../../core/press/boss.ts";
import { pressForce, usualFriction } from "../../core/press/force.ts";
import { effectiveInterference } from "../../core/press/interference.ts";
import { pressStresses, type PressedPair } from "../../core/press/ring.ts";
import { showForces, showPressures } from "../../core/quantity/show-force.ts";
import { fixed, showLength, showRange } from "../../core/quantity/show.ts";
import { given, valueIn } from "../entry.ts";
import {
  known,
  lacking,
  need,
  outside,
  SILENT,
  statusOf,
  unknown,
  type Estimate,
  type Extent,
  type Known,
} from "../known.ts";
import type { Working } from "../result.ts";
import { entryOf, query } from "../shop.ts";
import { bushId } from "./bush-size.ts";
import { interferenceOf, partsOf } from "./press.ts";
import { pairOf, ringsOf } from "./press-rings.ts";
import { settings } from "./settings.ts";

export interface Pressure extends Estimate {
  readonly pair: PressedPair;
  readonly form: BossForm;
  /** What is left of the interference, m. */
  readonly left: Extent;
}

/** Contact pressure, Pa. In a boss that is no plain ring it is bracketed, and its nominal is the middle of that. */
export const pressureOf = query<Known<Pressure>>(
  "press-pressure",
  (shop, ref) => {
    const parts = partsOf(shop, ref);
    if (parts === undefined) return SILENT;
    const interference = interferenceOf(shop, ref);
    const rings = ringsOf(shop, ref);
    const id = bushId(shop, parts.bush);
    if (!interference.known || !rings.known || !id.known)
      return lacking(interference, rings, id);
    const { low, nominal, high, step } = interference.value;
    if (high < 0)
      return outside(
        "the bush is smaller than the hole, so nothing is pressed",
      );
    const pair = pairOf(rings.value, id.value.nominal);
    const { form } = rings.value;
    const left = (value: number): number => effectiveInterference(value, 0);
    const found = pressureBand(
      pair,
      { low: left(low), high: left(high) },
      form,
    );
    const typical = pressureBand(
      pair,
      { low: left(nominal), high: left(nominal) },
      form,
    );
    if (!found.valid) return outside(found.because);
    if (!typical.valid) return outside(typical.because);
    const { system } = settings(shop);
    return known({
      low: found.value.low,
      high: found.value.high,
      nominal: middle(typical.value),
      status: statusOf(interference.value, id.value),
      step: undefined,
      pair,
      form,
      left: { low: left(low), nominal: left(nominal), high: left(high) },
      working: [
        ...interference.value.working,
        ...rings.value.working,
        {
          formula:
            "p = interference ÷ (D · {[(D² + d²)/(D² − d²) − νb]/Eb + [(Do² + D²)/(Do² − D²) + νh]/Eh})",
          with: `interference ${showRange(left(low), left(high), system, step)}, D ${showLength(pair.od, system, step)}, d ${showLength(pair.bore, system, step)}, Do ${showLength(pair.boss, system)}: ${showPressures(found.value.low, found.value.high, system)}`,
          source:
            "Shigley's Mechanical Engineering Design, 9th ed., eq. (3-56)",
        },
      ],
    });
  },
);

export interface PressStress {
  /** Von Mises at the bush's bore, Pa. */
  readonly bush: Estimate;
  /** Von Mises in the boss at the hole, Pa. */
  readonly hole: Estimate;
}

export const stressesOf = query<Known<PressStress>>(
  "press-stresses",
  (shop, ref) => {
    const pressure = pressureOf(shop, ref);
    if (!pressure.known) return pressure;
    const { pair, form, left, low, nominal, high, status, working } =
      pressure.value;
    const perUnit = pressStresses(pair, 1);
    if (!perUnit.valid) return outside(perUnit.because);
    const ofHole = holeStressBand(pair, left, form);
    const typical = holeStressBand(
      pair,
      { low: left.nominal, high: left.nominal },
      form,
    );
    if (!ofHole.valid) return outside(ofHole.because);
    if (!typical.valid) return outside(typical.because);
    const { system } = settings(shop);
    const times = (factor: number, formula: string): Estimate => ({
      low: factor * low,
      nominal: factor * nominal,
      high: factor * high,
      status,
      step: undefined,
      working: [
        ...working,
        {
          formula,
          with: `${fixed(factor, 3)} · ${showPressures(low, high, system)} = ${showPressures(factor * low, factor * high, system)}`,
          source:
            "Lamé's stresses; Shigley, 9th ed., eq. (5-13) for plane stress",
        },
      ],
    });
    return known({
      bush: times(
        perUnit.value.bushBore.vonMises,
        "von Mises at the bush's bore = 2p/(1 − d²/D²)",
      ),
      hole:
        form === "plain"
          ? times(
              perUnit.value.hole.vonMises,
              "von Mises at the hole = p · √(k² + k + 1), k = (Do² + D²)/(Do² − D²)",
            )
          : {
              low: ofHole.value.low,
              nominal: middle(typical.value),
              high: ofHole.value.high,
              status,
              step: undefined,
              working: [
                ...working,
                {
                  formula:
                    "von Mises at the hole = √(h² + h·p + p²), h = Eh · (interference/D − p · [(D² + d²)/(D² − d²) − νb]/Eb) − νh·p",
                  with: `each pressure with its own stress: at the most interference ${showPressures(ofHole.value.bare, ofHole.value.bare, system)} in a plain ring, ${showPressures(ofHole.value.rigid, ofHole.value.rigid, system)} in a rigid boss; in all ${showPressures(ofHole.value.low, ofHole.value.high, system)}`,
                  source: "Hooke's law in plane stress",
                },
              ],
            },
    });
  },
);

export interface Friction {
  readonly band: Band;
  readonly working: Working;
}

/** Friction of the press as written, else the usual band, which is said. */
export const frictionOf = query<Known<Friction>>(
  "press-friction",
  (shop, ref) => {
    const entry = entryOf(shop, ref);
    if (entry === undefined) return SILENT;
    const written = given(entry, "FrictionFact");
    if (written.state === "damaged") return SILENT;
    const isWritten = written.state === "given";
    const { low, high } = isWritten ? written.value : usualFriction;
    const band = `${fixed(low, 2)} to ${fixed(high, 2)}`;
    return known({
      band: { low, high },
      working: {
        formula: "friction of the press",
        with: isWritten
          ? `${band}, as written`
          : `${band}, assumed: none is written`,
        source: isWritten ? "" : "common practice, no source",
      },
    });
  },
);

/** Length over which bush and hole touch, m, both ends. */
export const engagedLength = query<Known<Band>>("press-length", (shop, ref) => {
  const parts = partsOf(shop, ref);
  const bush = parts === undefined ? undefined : entryOf(shop, parts.bush);
  if (parts === undefined || bush === undefined) return SILENT;
  const length = given(bush, "LengthFact");
  if (length.state === "damaged") return SILENT;
  if (length.state === "absent")
    return unknown(need(parts.bush, "length", `the length of ${parts.bush}`));
  const depth =
    valueIn(entryOf(shop, parts.hole), "DepthFact")?.depth?.value ?? Infinity;
  return known({
    low: Math.min(length.value.low, depth),
    high: Math.min(length.value.high, depth),
  });
});

/** Force at the end of the stroke, N. */
export const forceOf = query<Known<Estimate>>("press-force", (shop, ref) => {
  const pressure = pressureOf(shop, ref);
  const friction = frictionOf(shop, ref);
  const length = engagedLength(shop, ref);
  if (!pressure.known || !friction.known || !length.known)
    return lacking(pressure, length, friction);
  const { pair, low, nominal, high, working } = pressure.value;
  const { band } = friction.value;
  const force = (
    pressures: Band,
    long: number,
    rubbing: Band,
  ): ReturnType<typeof pressForce> =>
    pressForce(pressures, pair.od, long, rubbing);
  const rubs = middle(band);
  const long = middle(length.value);
  const [least, typical, most] = [
    force({ low, high }, length.value.low, band),
    force({ low: nominal, high: nominal }, long, { low: rubs, high: rubs }),
    force({ low, high }, length.value.high, band),
  ];
  if (!least.valid) return outside(least.because);
  if (!typical.valid) return outside(typical.because);
  if (!most.valid) return outside(most.because);
  const { system } = settings(shop);
  const { low: from } = least.value;
  const { high: to } = most.value;
  return known({
    low: from,
    nominal: typical.value.low,
    high: to,
    // friction is never read
    status: "predicted",
    step: undefined,
    working: [
      ...working,
      friction.value.working,
      {
        formula: "force = friction · p · π · D · length",
        with: `${fixed(band.low, 2)} to ${fixed(band.high, 2)} · ${showPressures(low, high, system)} · π · ${showLength(pair.od, system)} · ${showRange(length.value.low, length.value.high, system)} = ${showForces(from, to, system)}`,
        source: "Shigley's Mechanical Engineering Design, 9th ed., eq. (7-48)",
      },
      {
        formula: "press to have = 1.5 · most force",
        with: showForces(1.5 * to, 1.5 * to, system),
        source: "common practice, no source",
      },
    ],
  });
});

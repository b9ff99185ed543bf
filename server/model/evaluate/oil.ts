// The oil of a fit by name: what the record's own entry says of it, else the shipped one of that name or grade, as a band from its thinnest
// to its thickest.
import {
  densityAt,
  oilBand,
  waltherLine,
  type OilBand,
} from "../../core/film/viscosity.ts";
import {
  oil as shippedOil,
  oils,
  type Oil,
} from "../../core/materials/oils.ts";
import { given, type Entry } from "../entry.ts";
import { known, need, outside, SILENT, unknown, type Known } from "../known.ts";
import { nameOf } from "../reference.ts";
import { entryOf, query } from "../shop.ts";
import type { FactValues } from "../values.ts";

export interface OilValue {
  readonly ref: string;
  readonly band: OilBand;
  /** Where its viscosities are from. */
  readonly source: string;
}

/** An oil by its full reference. */
export const oilValue = query<Known<OilValue>>("oil", (shop, ref) => {
  const entry = entryOf(shop, ref);
  const shipped = shippedOil(nameOf(ref));
  if (entry === undefined)
    return shipped === undefined ? SILENT : ofGrade(ref, shipped, undefined);
  const viscosity = given(entry, "ViscosityFact");
  const grade = given(entry, "GradeFact");
  const density = given(entry, "DensityFact");
  if (
    viscosity.state === "damaged" ||
    grade.state === "damaged" ||
    density.state === "damaged"
  )
    return SILENT;
  const graded = grade.state === "given" ? oilOfGrade(grade.value) : shipped;
  const written = density.state === "given" ? density.value : undefined;
  if (viscosity.state === "given")
    return ofViscosities(
      ref,
      entry,
      viscosity.value,
      written ?? graded?.density.value,
    );
  if (graded !== undefined) return ofGrade(ref, graded, written);
  return unknown(
    need(ref, "viscosity", `the viscosity of ${ref} at two temperatures`),
  );
});

/** The shipped oil of a grade; undefined where none is. */
export function oilOfGrade({
  system,
  grade,
}: FactValues["GradeFact"]): Oil | undefined {
  const name = `${system} ${grade}`.toUpperCase();
  return oils.find((each) => each.grade.toUpperCase() === name);
}

function ofGrade(
  ref: string,
  oil: Oil,
  density: number | undefined,
): Known<OilValue> {
  const band = oilBand(
    density === undefined
      ? oil
      : { ...oil, density: { value: density, low: density, high: density } },
  );
  return band.valid
    ? known({
        ref,
        band: band.value,
        source: `shipped values of ${oil.grade}: at 40 °C ${oil.at40.source}; at 100 °C ${oil.at100.source}`,
      })
    : outside(band.because);
}

function ofViscosities(
  ref: string,
  entry: Entry,
  points: FactValues["ViscosityFact"],
  density: number | undefined,
): Known<OilValue> {
  const sorted = [...points].sort((a, b) => a.temperature - b.temperature);
  const [cool, warm] = [sorted[0], sorted.at(-1)];
  if (cool === undefined || warm === undefined || cool === warm)
    return unknown(
      need(ref, "viscosity", `the viscosity of ${ref} at a second temperature`),
    );
  if (density === undefined)
    return unknown(need(ref, "density", `the density of ${ref}`));
  const kinematics: number[] = [];
  for (const { value, dynamic, temperature } of [cool, warm]) {
    const there = densityAt(density, temperature);
    if (!there.valid) return outside(there.because);
    kinematics.push(dynamic ? value / there.value : value);
  }
  const line = waltherLine(
    { temperature: cool.temperature, kinematic: kinematics[0] ?? 0 },
    { temperature: warm.temperature, kinematic: kinematics[1] ?? 0 },
  );
  if (!line.valid) return outside(line.because);
  const oil = { line: line.value, density };
  return known({
    ref,
    band: { low: oil, nominal: oil, high: oil },
    source: `viscosities written for ${entry.ref}`,
  });
}

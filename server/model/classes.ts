// What a class of size means where it stands: limits of a hole or a shaft, or the clearance of a fit.
import {
  classClearance,
  classZones,
  parseClass,
} from "../core/fits/class-words.ts";
import { letterSizes, numberSizes } from "../core/line/gauge-sizes.ts";
import { tenthsToMetres } from "../core/quantity/exact.ts";
import type { System } from "../core/quantity/show.ts";

export type Side = "hole" | "shaft" | "fit";

export type ClassRange =
  | { readonly low: number; readonly high: number; readonly problem: undefined }
  | {
      readonly problem: {
        readonly code: "class-wrong" | "unit-missing";
        readonly data: Readonly<Record<string, string | readonly string[]>>;
      };
    };

/**
 * The range in m that a class gives at a nominal size in m. `bare` is the file's system where the size stands without a unit: it then
 * has to be the class's own.
 */
export function classRange(
  size: number,
  word: string,
  side: Side | undefined,
  bare: System | undefined,
): ClassRange {
  const wrong = (
    because: string,
    near: readonly string[] = [],
  ): ClassRange => ({
    problem: { code: "class-wrong", data: { because, near } },
  });
  if (side === undefined)
    return wrong("no class of size can stand here: write the range");
  const read = parseClass(word);
  if (!read.valid) return wrong(read.because, read.near);
  const fitClass = read.value;
  const own: System = fitClass.system === "iso" ? "mm" : "inch";
  if (bare !== undefined && bare !== own) {
    return { problem: { code: "unit-missing", data: { system: own } } };
  }
  if (side === "fit") {
    if (fitClass.feature !== "fit")
      return wrong(
        `a fit takes a hole and a shaft class, such as H7/f7; \`${word}\` is one of them`,
      );
    const clearance = classClearance(size, fitClass);
    return clearance.valid
      ? {
          low: clearance.value.least,
          high: clearance.value.most,
          problem: undefined,
        }
      : wrong(clearance.because);
  }
  if (fitClass.system === "iso" && fitClass.feature !== side) {
    if (fitClass.feature === "fit")
      return wrong(`a ${side} takes one class, not a hole and a shaft`);
    const mended = side === "hole" ? word.toUpperCase() : word.toLowerCase();
    return wrong(
      `\`${word}\` is a class of a ${fitClass.feature}, and this is a ${side}`,
      parseClass(mended).valid ? [mended] : [],
    );
  }
  const zones = classZones(size, fitClass);
  if (!zones.valid) return wrong(zones.because);
  const zone = zones.value.find((each) => each.feature === side);
  return zone === undefined
    ? wrong(`\`${word}\` says nothing of a ${side}`)
    : { low: zone.lower, high: zone.upper, problem: undefined };
}

/** The diameter in m of `no 7` or `letter F`; undefined where there is no such size. */
export function namedSize(words: readonly string[]): number | undefined {
  const [series, name] = words;
  if (name === undefined) return undefined;
  const index =
    series === "no" ? 80 - Number(name) : name.toUpperCase().charCodeAt(0) - 65;
  const tenThousandths = (series === "no" ? numberSizes : letterSizes)[index];
  return tenThousandths === undefined
    ? undefined
    : tenthsToMetres(tenThousandths * 25_400);
}

// Results of a stack: its end float, cold and at temperature, and the shims that bring it in.
import {
  lengthDigits,
  showLength,
  showRange,
  showTemperature,
  significant,
} from "../../core/quantity/show.ts";
import type { ShimChoice } from "../../core/stack/shims.ts";
import {
  drawnFloat,
  floatCases,
  floatOf,
  floatVerdict,
  shimsOf,
  type FloatCase,
  type StackFloat,
} from "../evaluate/stack.ts";
import { settings } from "../evaluate/settings.ts";
import type { Known } from "../known.ts";
import {
  numberResult,
  sketch,
  sketchOf,
  unknownResult,
  type Sketch,
  type Where,
} from "../make-result.ts";
import type { Result, Working } from "../result.ts";
import type { Shop } from "../shop.ts";

export function stackSketches(shop: Shop, ref: string): readonly Sketch[] {
  const float = floatOf(shop, ref);
  return [
    sketch("end-float", float, () => floatResult(shop, ref, float)),
    ...floatCases(shop, ref).map((each) =>
      sketch("end-float", each.float, () => caseResult(shop, ref, each)),
    ),
    ...shimSketch(shop, ref),
  ];
}

function floatResult(
  shop: Shop,
  ref: string,
  found: Known<StackFloat>,
): Result {
  const { system } = settings(shop);
  const where = { entry: ref, kind: "end-float" };
  if (!found.known) return unknownResult(where, "m", found);
  const { nominal, worst, rootSumSquare, status, step, members } = found.value;
  const range = (band: StackFloat["worst"]): string =>
    showRange(band.low, band.high, system, step);
  const isOne = worst.low === worst.high;
  const drawn = drawnFloat(shop, ref);
  const chance =
    drawn?.chance === undefined
      ? ""
      : `, ${significant(drawn.chance * 100, 3)} % of them as wanted`;
  const working: Working[] = [
    {
      formula: "end float = what opens it − what closes it, at worst",
      with: `${members
        .map(
          ({ sign, name, length }, index) =>
            `${sign === 1 ? (index === 0 ? "" : "+ ") : "− "}${name} ${length.low === length.high ? lengthDigits(length.low, system, step) : `${lengthDigits(length.low, system, step)} to ${lengthDigits(length.high, system, step)}`}`,
        )
        .join(" ")} = ${range(worst)}`,
      source: "",
    },
  ];
  if (!isOne)
    working.push({
      formula:
        "by root-sum-square: all members independent, limits at the same number of deviations",
      with: range(rootSumSquare),
      source: "JCGM 100:2008, 5.1.2",
    });
  if (drawn !== undefined)
    working.push({
      formula:
        "of 10,000 stacks drawn at random (seed 1, normal, limits at three deviations), 99.73 %",
      with: `${range(drawn.band)}${chance}`,
      source: "",
    });
  return numberResult(
    where,
    "m",
    { low: worst.low, nominal, high: worst.high },
    {
      status,
      verdict: floatVerdict(shop, ref),
      text: isOne
        ? range(worst)
        : `${range(worst)}, by root-sum-square ${range(rootSumSquare)}`,
      step,
      working,
    },
  );
}

function caseResult(
  shop: Shop,
  ref: string,
  { kind, number, bodies, float }: FloatCase,
): Result {
  const { system } = settings(shop);
  const where = { entry: ref, kind: "end-float", of: kind, case: number };
  if (!float.known) return unknownResult(where, "m", float);
  const { nominal, worst, status, step } = float.value;
  const at = [
    bodies?.shaft === undefined
      ? undefined
      : `shaft ${showTemperature(bodies.shaft, system)}`,
    bodies?.case === undefined
      ? undefined
      : `case ${showTemperature(bodies.case, system)}`,
  ]
    .filter((each) => each !== undefined)
    .join(", ");
  return numberResult(
    where,
    "m",
    { low: worst.low, nominal, high: worst.high },
    {
      status,
      text: `${showRange(worst.low, worst.high, system, step)} at ${at}`,
      step,
      working: [
        {
          formula: "each member grows: length · (1 + expansion · (T − 20 °C))",
          with: at,
          source: "",
        },
      ],
    },
  );
}

function shimSketch(shop: Shop, ref: string): readonly Sketch[] {
  const where = { entry: ref, kind: "shim" };
  const found = shimsOf(shop, ref);
  if (found === undefined) return [];
  return [
    sketchOf(where, "m", found, (choice) =>
      shimResult(shop, ref, where, choice),
    ),
  ];
}

function shimResult(
  shop: Shop,
  ref: string,
  where: Where,
  { shims, sum, float }: ShimChoice,
): Result {
  const { system } = settings(shop);
  const stack = floatOf(shop, ref);
  const step = stack.known ? stack.value.step : undefined;
  const list =
    shims.length === 0
      ? "none needed"
      : shims.length === 1
        ? showLength(sum, system)
        : `${shims.map((each) => lengthDigits(each, system)).join(" + ")} = ${showLength(sum, system)}`;
  return numberResult(
    where,
    "m",
    { low: sum, nominal: sum, high: sum },
    {
      status: stack.known ? stack.value.status : "predicted",
      text: list,
      working: [
        {
          formula:
            "fewest shims that bring all of the float in; of those, nearest to the middle of what is wanted",
          with: `float then ${showRange(float.low, float.high, system, step)}`,
          source: "",
        },
      ],
    },
  );
}

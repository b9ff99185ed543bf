// Temperatures of a press fit: to which the case is heated or the bush frozen to drop it in, and at which the case lets it go. All are
// with no gap to spare: room costs more, and the working says how much.
import type { Band } from "../../core/quantity/band.ts";
import {
  bushTemperatureToDropIn,
  caseTemperatureToDropIn,
  type DropIn,
} from "../../core/press/drop-in.ts";
import { effectiveInterference } from "../../core/press/interference.ts";
import { releaseTemperature } from "../../core/press/temperature.ts";
import type { Answer } from "../../core/answer.ts";
import {
  fixed,
  showLength,
  showRange,
  significant,
  type System,
} from "../../core/quantity/show.ts";
import {
  everyKnown,
  known,
  lacking,
  SILENT,
  type Estimate,
  type Known,
} from "../known.ts";
import { nameOf } from "../reference.ts";
import type { Working } from "../result.ts";
import { query, type Shop } from "../shop.ts";
import { materialOf, showExpansion } from "./material.ts";
import { interferenceOf, partsOf, type Interference } from "./press.ts";
import { figureOf } from "./press-rings.ts";
import { settings } from "./settings.ts";

/** A temperature with its reason where there is none that does it: no fault of the record. */
export type Reached =
  | { readonly reached: true; readonly value: Estimate }
  | { readonly reached: false; readonly because: string };

export interface Expansions {
  /** 1/K */
  readonly bush: number;
  readonly case: number;
  readonly working: Working;
}

/** Expansion of bush and case. */
export const expansionsOf = query<Known<Expansions>>(
  "press-expansions",
  (shop, ref) => {
    const parts = partsOf(shop, ref);
    if (parts === undefined) return SILENT;
    const materials = [
      materialOf(shop, parts.bush),
      materialOf(shop, parts.part),
    ];
    const both = everyKnown(
      materials.map((each) =>
        each.known ? figureOf(shop, each.value, "expansion") : each,
      ),
    );
    if (!both.known) return both;
    const [bush = 0, housing = 0] = both.value;
    const { system } = settings(shop);
    const of = materials.flatMap((each) => (each.known ? [each.value] : []));
    const said = of.map(({ ref: name, expansion }, index) => {
      const whose = expansion?.source === "written" ? "as written" : "shipped";
      return `${showExpansion(both.value[index] ?? 0, system)} ${nameOf(name)} (${whose})`;
    });
    const sources = new Set(
      of.flatMap(({ expansion }) => expansion?.source ?? []),
    );
    sources.delete("written");
    return known({
      bush,
      case: housing,
      working: {
        formula: "expansion of bush αb, of case αh",
        with: said.join(", "),
        source: [...sources].join("; "),
      },
    });
  },
);

/** Case temperature, °C, at which the hole is as wide as the bush at 20 °C. */
export const heatTo = query<Known<Reached>>("press-heat-to", (shop, ref) =>
  dropIn(shop, ref, "heat"),
);
/** Bush temperature, °C, at which it is as small as the hole at 20 °C. */
export const freezeTo = query<Known<Reached>>("press-freeze-to", (shop, ref) =>
  dropIn(shop, ref, "freeze"),
);

/** The sizes of a drop-in at the most interference, as a finding about it needs them. */
export const dropInOf = query<Known<DropIn>>("press-drop-in", (shop, ref) => {
  const found = interferenceOf(shop, ref);
  const expansions = expansionsOf(shop, ref);
  if (!found.known || !expansions.known) return lacking(found, expansions);
  return known({
    od: found.value.od.high,
    hole: found.value.hole.low,
    gap: 0,
    bushExpansion: expansions.value.bush,
    caseExpansion: expansions.value.case,
  });
});

/** No bush of metal or carbon gives so easily, Pa: a shop's own material below it is a plastic. From memory. */
const MOST_OF_PLASTIC = 8e9;

/** Plastic and lined bushes are pressed in cold: nobody heats a case for them. Common practice, no source. */
export function isPressedCold(shop: Shop, ref: string): boolean {
  const parts = partsOf(shop, ref);
  const bush = parts === undefined ? undefined : materialOf(shop, parts.bush);
  if (bush?.known !== true) return false;
  const { family, modulus } = bush.value;
  return family === undefined
    ? modulus !== undefined && modulus.value < MOST_OF_PLASTIC
    : family === "polymer" || family === "lined";
}

function dropIn(
  shop: Shop,
  ref: string,
  how: "heat" | "freeze",
): Known<Reached> {
  const most = dropInOf(shop, ref);
  const found = interferenceOf(shop, ref);
  const expansions = expansionsOf(shop, ref);
  if (!most.known) return most;
  if (how === "heat" && isPressedCold(shop, ref))
    return known({
      reached: false,
      because:
        "a bush of plastic or with a lining gives way, and the heat of the case harms it: press it in cold",
    });
  if (!found.known || !expansions.known) return SILENT;
  const { od, hole, status } = found.value;
  const temperature = (sizes: DropIn): Answer<number> =>
    how === "heat"
      ? caseTemperatureToDropIn(sizes)
      : bushTemperatureToDropIn(sizes);
  const ends = [
    temperature({ ...most.value, od: od.low, hole: hole.high }),
    temperature({ ...most.value, od: od.nominal, hole: hole.nominal }),
    temperature(most.value),
  ];
  const values: number[] = [];
  for (const end of ends) {
    if (!end.valid) return known({ reached: false, because: end.because });
    values.push(end.value);
  }
  const [a = 20, nominal = 20, b = 20] = values;
  const range = { low: Math.min(a, b), high: Math.max(a, b) };
  return known({
    reached: true,
    value: {
      low: range.low,
      nominal,
      high: range.high,
      status,
      step: undefined,
      working: dropInWorking(shop, how, found.value, expansions.value, range),
    },
  });
}

/** @param range of the temperature, °C */
function dropInWorking(
  shop: Shop,
  how: "heat" | "freeze",
  { od, hole, step }: Interference,
  expansions: Expansions,
  range: Band,
): readonly Working[] {
  const { system } = settings(shop);
  // a thou or a hundredth of a millimetre to spare
  const room = system === "inch" ? 25.4e-6 : 10e-6;
  const perRoom =
    room / (hole.nominal * expansions[how === "heat" ? "case" : "bush"]);
  const degrees =
    system === "inch"
      ? `${significant(perRoom * 1.8, 2)} °F`
      : `${significant(perRoom, 2)} °C`;
  return [
    expansions.working,
    {
      formula:
        how === "heat"
          ? "hole · (1 + αh · (T − 20 °C)) = od, bush at 20 °C"
          : "od · (1 + αb · (T − 20 °C)) = hole, case at 20 °C",
      with: `od ${showRange(od.low, od.high, system, step)}, hole ${showRange(hole.low, hole.high, system, step)}: ${showTemperatures(range.low, range.high, system)}`,
      source: "",
    },
    {
      formula: "room to drop in = none",
      with: `each ${showLength(room, system)} of room costs ${degrees} more`,
      source: "",
    },
  ];
}

/** Temperature of bush and case alike, °C, at which the case lets the bush go. */
export const releaseOf = query<Known<Reached>>("press-release", (shop, ref) => {
  const found = interferenceOf(shop, ref);
  const expansions = expansionsOf(shop, ref);
  if (!found.known || !expansions.known) return lacking(found, expansions);
  const { hole, low, nominal, high, status, step, working } = found.value;
  const values: number[] = [];
  for (const end of [low, nominal, high]) {
    const at = releaseTemperature({
      od: hole.nominal,
      interference: effectiveInterference(end, 0),
      bushExpansion: expansions.value.bush,
      caseExpansion: expansions.value.case,
    });
    if (!at.valid) return known({ reached: false, because: at.because });
    values.push(at.value);
  }
  const [from = 20, typical = 20, to = 20] = values;
  const { system } = settings(shop);
  return known({
    reached: true,
    value: {
      low: from,
      nominal: typical,
      high: to,
      status,
      step: undefined,
      working: [
        ...working,
        expansions.value.working,
        {
          formula: "T = 20 °C + interference ÷ (D · (αh − αb))",
          with: `${showRange(Math.max(0, low), Math.max(0, high), system, step)} at D ${showLength(hole.nominal, system, step)}: ${showTemperatures(from, to, system)}`,
          source: "",
        },
      ],
    },
  });
});

/** "147 to 160 °F" */
export function showTemperatures(
  low: number,
  high: number,
  system: System,
): string {
  const symbol = system === "inch" ? "°F" : "°C";
  const digits = (celsius: number): string =>
    fixed(system === "inch" ? celsius * 1.8 + 32 : celsius, 0);
  const [from, to] = [digits(low), digits(high)];
  return from === to ? `${from} ${symbol}` : `${from} to ${to} ${symbol}`;
}

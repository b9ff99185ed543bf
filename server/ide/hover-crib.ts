// What the crib's things are: materials and oils with the source of each value, reamers with what they measure and would cut, gauges, pilots.
import { neededText } from "../model/known.ts";
import { material as shippedMaterial } from "../core/materials/material.ts";
import { oil as shippedOil, type Oil } from "../core/materials/oils.ts";
import {
  fixed,
  showCount,
  showLength,
  showRange,
  significant,
  type System,
} from "../core/quantity/show.ts";
import { fromSi, unitOf } from "../core/quantity/units.ts";
import { allOf, valueIn, type Entry } from "../model/entry.ts";
import { gaugeValue } from "../model/evaluate/gauge.ts";
import { materialValue } from "../model/evaluate/material.ts";
import { cutBy, reamerValue } from "../model/evaluate/reamer.ts";
import { correctionWords, settersOf } from "../model/evaluate/setting.ts";
import { settings } from "../model/evaluate/settings.ts";
import { MATERIAL_PROPERTIES } from "../model/material-properties.ts";
import { entryOf, refOf, type Shop } from "../model/shop.ts";
import { blocks, escaped, list, table } from "../markup/markdown.ts";
import { kindOf, nameOf } from "../model/reference.ts";
import { lessonsOnGauge, lessonsOnReamer } from "./hover-lessons.ts";

/** The name of the shipped thing that a reference means, where no file has it: "SAE 30, engine oil". */
export function shippedWhat(ref: string): string | undefined {
  const name = nameOf(ref);
  if (kindOf(ref) === "material") return shippedMaterial(name)?.what;
  const oil = kindOf(ref) === "oil" ? shippedOil(name) : undefined;
  return oil === undefined
    ? undefined
    : `${oil.grade}, plain mineral ${oil.use} oil`;
}

/** Each value of a material, in both systems, with the range it is met in and where it is from. */
export function materialBody(shop: Shop, ref: string): string {
  const { system } = settings(shop);
  const value = materialValue(shop, ref);
  const shipped = shippedMaterial(nameOf(ref));
  const systems: readonly System[] =
    system === "inch" ? ["inch", "mm"] : ["mm", "inch"];
  const rows = MATERIAL_PROPERTIES.flatMap(([key, label, units]) => {
    const property = value[key];
    if (property === undefined) return [];
    const isShipped = property.source !== "written";
    const figure = isShipped ? shipped?.[key] : undefined;
    return [
      [
        label,
        ...systems.map((each) => inUnit(property.value, units[each])),
        figure === undefined
          ? ""
          : `${digitsIn(figure.low, units[system])} to ${inUnit(figure.high, units[system])}`,
        isShipped ? `shipped: ${escaped(property.source)}` : "written",
      ],
    ];
  });
  return blocks(
    escaped(shippedWhat(ref) ?? ""),
    table(["value", ...systems, "met from", "source"], rows),
    rows.length === 0 ? "None of its values is written." : "",
  );
}

function inUnit(si: number, symbol: string): string {
  return `${digitsIn(si, symbol)}${symbol === "" ? "" : ` ${symbol}`}`;
}

function digitsIn(si: number, symbol: string): string {
  const unit = symbol === "" ? undefined : unitOf(symbol);
  const number = unit === undefined ? si : fromSi(si, unit);
  if (unit?.zero !== undefined) return fixed(number, 0);
  return 1e6 <= number ? `${fixed(number / 1e6, 1)}e6` : significant(number, 3);
}

/** A shipped oil, or one of the record's own with its facts. */
export function oilBody(shop: Shop, ref: string): string {
  const entry = entryOf(shop, ref);
  if (entry !== undefined) return factsAsWritten(entry);
  const oil = shippedOil(nameOf(ref));
  if (oil === undefined) return "";
  return blocks(
    escaped(shippedWhat(ref) ?? ""),
    table(
      ["", "value", "range", "source"],
      [
        viscosityRow("viscosity at 40 °C", oil.at40),
        viscosityRow("viscosity at 100 °C", oil.at100),
        [
          "density at 15 °C",
          `${fixed(oil.density.value, 0)} kg/m3`,
          `${fixed(oil.density.low, 0)} to ${fixed(oil.density.high, 0)}`,
          `shipped: ${escaped(oil.density.source)}`,
        ],
      ],
    ),
  );
}

function viscosityRow(label: string, figure: Oil["at40"]): readonly string[] {
  const cSt = (si: number): string => significant(si * 1e6, 3);
  return [
    label,
    `${cSt(figure.value)} cSt`,
    `${cSt(figure.low)} to ${cSt(figure.high)}`,
    `shipped: ${escaped(figure.source)}`,
  ];
}

/** What a reamer measures, and its facts. */
export function reamerBody(shop: Shop, ref: string): string {
  const entry = entryOf(shop, ref);
  if (entry === undefined) return "";
  return blocks(
    escaped(reamerSize(shop, ref)),
    factsAsWritten(entry),
    lessonsOnReamer(shop, ref),
  );
}

/** "0.87539 in, mean of 2 readings", or its written size. */
export function reamerSize(shop: Shop, ref: string): string {
  const value = reamerValue(shop, ref);
  const { system } = settings(shop);
  if (!value.known) return neededText(value.needs);
  const { size, step, expands } = value.value;
  const range =
    expands === undefined
      ? ""
      : `adjustable, ${showRange(expands.low, expands.high, system, expands.step)}`;
  if (size === undefined) return range;
  const own =
    size.kind === "measured"
      ? `${showLength(size.mean, system, step)} measured, mean of ${showCount(size.count, "reading")}`
      : `${showRange(size.low, size.high, system, step)} as written, not measured`;
  return range === "" ? own : `${own}; ${range}`;
}

/** What a reamer would cut in a bore of a line, in the job's units; undefined where that can't be said. */
export function cutText(
  shop: Shop,
  reamer: string,
  line: string,
  bore: string,
): string | undefined {
  const cut = cutBy(shop, reamer, line, bore);
  if (!cut.known) return undefined;
  const value = reamerValue(shop, reamer);
  const { system } = settings(shop);
  const step = value.known ? value.value.step : undefined;
  return showRange(cut.value.low, cut.value.high, system, step);
}

/** "micrometer, resolution 0.00001 in, U 0.00004 in, due 2027-05-14" */
export function gaugeSummary(shop: Shop, ref: string): string {
  const entry = entryOf(shop, ref);
  const { system } = settings(shop);
  const length = (
    rule: "ResolutionFact" | "UncertaintyFact" | "MpeFact",
  ): string | undefined => {
    const value = valueIn(entry, rule);
    return value === undefined
      ? undefined
      : showLength(value.value, system, value.step);
  };
  const said = (label: string, value: string | undefined): readonly string[] =>
    value === undefined ? [] : [`${label}${value}`];
  return [
    ...said("", valueIn(entry, "KindFact")),
    ...said("resolution ", length("ResolutionFact")),
    ...said("U ", length("UncertaintyFact")),
    ...said("largest error ", length("MpeFact")),
    ...said("due ", valueIn(entry, "DueFact")?.date),
  ].join(", ");
}

/** The facts of an entry as they are written, notes last; what can't be read is left out. */
export function factsAsWritten(entry: Entry): string {
  const notes = allOf(entry, "NoteFact");
  const lines = [
    ...entry.facts.filter((fact) => fact.rule !== "NoteFact"),
    ...notes,
  ]
    .filter((fact) => fact.value !== undefined)
    .map((fact) => escaped(entry.block.lines[fact.span.line]?.body ?? ""));
  const most = 12;
  return list(
    lines.length <= most
      ? lines
      : [...lines.slice(0, most), `and ${String(lines.length - most)} more`],
  );
}

/** What a gauge was set on, where it compares. */
export function gaugeBody(shop: Shop, ref: string): string {
  const entry = entryOf(shop, ref);
  if (entry === undefined) return "";
  const set = valueIn(entry, "SetFact");
  const by =
    set !== undefined && "with" in set ? refOf(shop, set.with) : undefined;
  return blocks(
    factsAsWritten(entry),
    by === undefined
      ? ""
      : `Set with ${by}: ${escaped(gaugeSummary(shop, by))}`,
    takenOver(shop, ref),
    lessonsOnGauge(shop, ref),
  );
}

/** What the gauges that it was set with add to its readings; why there is no saying where they are set with each other. */
function takenOver(shop: Shop, ref: string): string {
  const gauge = gaugeValue(shop, ref);
  const setters = settersOf(shop, ref);
  if (!setters.known)
    return setters.because === undefined
      ? ""
      : `Its readings are not used: ${setters.because}`;
  if (gauge === undefined || setters.value.every((each) => each.adds === 0))
    return "";
  const { system } = settings(shop);
  return `To its readings is added: ${correctionWords(gauge, setters.value, system).join("; ")}`;
}

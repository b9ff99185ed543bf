// The materials and oils that the record names, with each value that the tool holds for them and where it is from: the record, or the
// stock list that ships with the tool.
import type { Figure } from "../core/materials/figure.ts";
import { oil as shippedOil } from "../core/materials/oils.ts";
import { fixed, significant, type System } from "../core/quantity/show.ts";
import { fromSi, unitOf } from "../core/quantity/units.ts";
import { materialValue } from "../model/evaluate/material.ts";
import { MATERIAL_PROPERTIES } from "../model/material-properties.ts";
import { kindOf, nameOf } from "../model/reference.ts";
import { entryOf, refOf, type Shop } from "../model/shop.ts";
import type { RefSite } from "../model/values.ts";
import type { Subject } from "./facts.ts";
import { el, type Child, type Markup } from "../markup/html.ts";
import type { Sources } from "./sources.ts";
import { table } from "./table.ts";

export function materialsSection(
  subject: Subject,
  sources: Sources,
): Markup | undefined {
  const { shop, system } = subject;
  const rows = [
    ...namedIn(subject, "material").map((ref) =>
      materialRow(shop, ref, system, sources),
    ),
    ...namedIn(subject, "oil").map((ref) => oilRow(shop, ref, sources)),
  ];
  return rows.length === 0
    ? undefined
    : el(
        "section",
        {},
        el("h2", {}, "Materials and oils"),
        el(
          "p",
          { class: "small heads" },
          "A value with a number ships with the tool and is from the source of that number; the others are written in the record.",
        ),
        table(
          [{ head: "Name", percent: 20 }, { head: "Values" }],
          rows,
          "small",
        ),
      );
}

/** The materials or oils that entries of the record's own file name, in its order. */
function namedIn(
  { shop, open }: Subject,
  kind: "material" | "oil",
): readonly string[] {
  const refs = open.file.entries.flatMap((entry) => entry.refs);
  const found = refs
    .filter((site: RefSite) => site.takes.includes(kind))
    .flatMap((site) => refOf(shop, site) ?? [])
    .filter((ref) => kindOf(ref) === kind);
  return [...new Set(found)];
}

function materialRow(
  shop: Shop,
  ref: string,
  system: System,
  sources: Sources,
): readonly Child[] {
  const value = materialValue(shop, ref);
  const values = MATERIAL_PROPERTIES.flatMap(([key, label, units]) => {
    const property = value[key];
    if (property === undefined) return [];
    const { source } = property;
    const from =
      source === "written" ? "written" : `shipped ${sources.mark(source)}`;
    // several stand on one line here: a modulus in psi would fill it
    const unit = key === "modulus" && system === "inch" ? "ksi" : units[system];
    return [`${label} ${inUnit(property.value, unit)} ${from}`];
  });
  return [
    el("b", {}, nameOf(ref)),
    values.length === 0 ? "none of its values is known" : values.join("; "),
  ];
}

function inUnit(si: number, symbol: string): string {
  const unit = symbol === "" ? undefined : unitOf(symbol);
  if (unit === undefined) return significant(si, 3);
  const number = fromSi(si, unit);
  const digits =
    unit.zero === undefined ? significant(number, 3) : fixed(number, 0);
  return `${digits} ${symbol === "F" || symbol === "C" ? `°${symbol}` : symbol}`;
}

function oilRow(shop: Shop, ref: string, sources: Sources): readonly Child[] {
  const entry = entryOf(shop, ref);
  const name = el("b", {}, nameOf(ref));
  if (entry !== undefined) {
    const facts = entry.facts
      .filter((fact) => fact.value !== undefined && fact.rule !== "NoteFact")
      .map((fact) => entry.block.lines[fact.span.line]?.body ?? "");
    return [name, `${facts.join("; ")} written`];
  }
  const oil = shippedOil(nameOf(ref));
  if (oil === undefined) return [name, "not known"];
  const cSt = (figure: Figure): string =>
    `${significant(figure.low * 1e6, 3)} to ${significant(figure.high * 1e6, 3)} cSt`;
  const shipped = (text: string, { source }: Figure): string =>
    `${text} shipped ${sources.mark(source)}`;
  return [
    name,
    [
      shipped(`${cSt(oil.at40)} at 40 °C`, oil.at40),
      shipped(`${cSt(oil.at100)} at 100 °C`, oil.at100),
      shipped(
        `density ${fixed(oil.density.value, 0)} kg/m3 at 15 °C`,
        oil.density,
      ),
    ].join("; "),
  ];
}

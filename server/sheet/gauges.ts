// The gauges of a record, with what is written of each, and how fine they are for what was read with them.
import type { FactRule } from "../model/values.ts";
import { gaugeValue } from "../model/evaluate/gauge.ts";
import { kindOf, nameOf } from "../model/reference.ts";
import type { Result } from "../model/result.ts";
import { entryOf, type Shop } from "../model/shop.ts";
import type { Subject } from "./facts.ts";
import { el, type Child, type Markup } from "../markup/html.ts";
import { nameOfResult, verdictMark } from "./results.ts";
import { line, table } from "./table.ts";

/** The gauges that results are about: those that something was read with. */
export function gaugesTable(
  { shop }: Subject,
  entries: ReadonlyMap<string, readonly Result[]>,
): Markup | undefined {
  const gauges = [...entries].filter(([ref]) => kindOf(ref) === "gauge");
  if (gauges.length === 0) return undefined;
  return el(
    "section",
    {},
    el("h3", {}, "Gauges"),
    table(
      [
        { head: "Gauge", percent: 20 },
        { head: "Resolution", percent: 13 },
        { head: "U (k = 2)", percent: 13 },
        { head: "Due", percent: 13 },
        { head: "How fine for what it read" },
      ],
      gauges.map(([ref, results]): readonly Child[] => {
        const gauge = gaugeValue(shop, ref);
        return [
          [
            el("b", {}, nameOf(ref)),
            gauge?.kind === undefined ? "" : `, ${gauge.kind}`,
          ],
          asWritten(shop, ref, "ResolutionFact") ?? "not written",
          asWritten(shop, ref, "UncertaintyFact") ?? "not written",
          gauge?.due ?? "not written",
          results.map((result) =>
            line(
              `${nameOfResult(result)}: ${result.text}`,
              result.verdict === "none" ? "" : [", ", verdictMark(result)],
            ),
          ),
        ];
      }),
      "small",
    ),
  );
}

/** A length as it is written, a bare one with the unit of its file: a metric gauge reads in mm, whatever the job's unit. */
export function asWritten(
  shop: Shop,
  ref: string,
  rule: FactRule,
): string | undefined {
  const entry = entryOf(shop, ref);
  const fact = entry?.facts.find((each) => each.rule === rule);
  if (entry === undefined || fact?.value === undefined) return undefined;
  const body = entry.block.lines[fact.span.line]?.body ?? "";
  const text = body.slice(fact.word.length).trim();
  // a gauge that it is set with may be called mike-25-50
  if (!/(?<!\S)[\d.+/-]+$/u.test(text)) return text;
  const place = shop.places.get(ref);
  const file = place === undefined ? undefined : shop.files[place.file];
  return `${text} ${file?.context.system === "inch" ? "in" : "mm"}`;
}

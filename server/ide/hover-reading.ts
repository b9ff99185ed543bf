// What a reading becomes at 20 °C, and why.
import { neededText } from "../model/known.ts";
import type { Node } from "../../grammar/tree.ts";
import {
  showLength,
  showTemperature,
  significant,
  type System,
} from "../core/quantity/show.ts";
import { steelScale } from "../core/readings/temperature.ts";
import type { Fact } from "../model/entry.ts";
import { propertyOf } from "../model/evaluate/material.ts";
import type { GaugeValue } from "../model/evaluate/gauge.ts";
import { isAt20, readingsAt } from "../model/evaluate/readings.ts";
import { correctionWords } from "../model/evaluate/setting.ts";
import { settings } from "../model/evaluate/settings.ts";
import { materialOfFeature } from "../model/evaluate/size.ts";
import type { OpenFile } from "../model/project.ts";
import { factAt, type Spot } from "./position.ts";

const FEATURES = new Set(["journal", "hole", "bush", "bore"]);

/** A diameter that was read, at 20 °C, where that changes it. */
export function readingHover(
  { shop }: OpenFile,
  spot: Spot,
  number: Node,
): string | undefined {
  const fact = factAt(spot);
  if (fact === undefined || !isReading(fact) || fact.value === undefined)
    return undefined;
  const { ref } = spot.entry;
  if (!FEATURES.has(spot.kind ?? "") || ref === "") return undefined;
  const at = fact.value.valueSpans.findIndex(
    (span) => span.start === spot.line.indent + number.start,
  );
  const raw = fact.value.values[at];
  if (raw === undefined) return undefined;
  const stage = fact.value.stage ?? "finished";
  const found = readingsAt(shop, [fact], stage, [stage], () =>
    materialOfFeature(shop, ref),
  );
  if (!found.known) {
    const needed = neededText(found.needs);
    return needed === "" ? undefined : `At 20 °C: ${needed}`;
  }
  const reading = found.value[0]?.readings[0];
  const value = reading?.values[at];
  if (reading === undefined || value === undefined) return undefined;
  const { system } = settings(shop);
  if (Math.abs(value - raw.value) < 5e-11) {
    const assumed = reading.temperatureAssumed
      ? "No temperature is written: taken as read at 20 °C."
      : "";
    return assumed === "" ? undefined : assumed;
  }
  return `At 20 °C: ${showLength(value, system, raw.step)} (${becauseOf(shop, ref, reading, system)})`;
}

function becauseOf(
  shop: OpenFile["shop"],
  ref: string,
  reading: {
    readonly temperature: number;
    readonly gaugeTemperature: number;
    readonly gauge: GaugeValue | undefined;
    readonly setters: readonly GaugeValue[];
  },
  system: System,
): string {
  const parts: string[] = [];
  if (!isAt20(reading)) {
    const material = materialOfFeature(shop, ref);
    const expansion = material.known
      ? propertyOf(material.value, "expansion")
      : material;
    const grows = expansion.known
      ? `, ${material.known ? material.value.ref : ""} grows ${significant(expansion.value.value * 1e6, 3)} um/m-K (${expansion.value.source === "written" ? "written" : "shipped value"}), the steel of the gauge ${significant(steelScale.expansion * 1e6, 3)}`
      : "";
    parts.push(
      `read at ${showTemperature(reading.temperature, system)}${reading.gaugeTemperature === reading.temperature ? "" : `, the gauge at ${showTemperature(reading.gaugeTemperature, system)}`}${grows}`,
    );
  }
  if (reading.gauge !== undefined)
    parts.push(...correctionWords(reading.gauge, reading.setters, system));
  return parts.join("; ");
}

function isReading(
  fact: Fact,
): fact is Fact<"ReadFact" | "RepeatFact" | "BushReadFact"> {
  return (
    fact.rule === "ReadFact" ||
    fact.rule === "RepeatFact" ||
    fact.rule === "BushReadFact"
  );
}

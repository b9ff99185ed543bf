// Reads a `read` or `repeat` line: the place, its diameters, and the clauses after them. What follows from readings is evaluate/readings.ts's.
import { child, children, type Node } from "../../grammar/tree.ts";
import { reportTooLarge } from "./beyond.ts";
import { saysTwice, signature } from "./clauses.ts";
import { length, ref, type FactReader } from "./fact-parts.ts";
import { lengthsOf, temperatureOf, textOf } from "./quantities.ts";
import type { Length, Reading } from "./values.ts";

export function reading(node: Node, line: FactReader): Reading | undefined {
  const valuesNode = child(node, "values");
  const clauses = node.children.filter((each) =>
    each.type.startsWith("Clause_"),
  );
  if (saysTwice(clauses, line)) return undefined;
  const clause = (type: string): Node | undefined => child(node, type);
  const station = clause("Clause_station");
  const gauge = clause("Clause_with");
  const temperature = clause("Clause_at");
  const stage = clause("Clause_as");
  const signed = signature({ ...node, children: clauses }, line);
  const values =
    valuesNode === undefined ? undefined : readingValues(valuesNode, line);
  const stationAt = station === undefined ? undefined : length(station, line);
  const temperatureAt = temperatureIn(temperature, line);
  const gaugeClause =
    temperature === undefined ? undefined : child(temperature, "GaugeAt");
  const gaugeAt = temperatureIn(gaugeClause, line);
  const gaugeRef = gauge === undefined ? undefined : ref(gauge, line);
  if (values === undefined || signed === undefined) return undefined;
  const decimals = children(valuesNode ?? node, "decimal");
  if (reportTooLarge(line, decimals, values)) return undefined;
  if (station !== undefined && stationAt === undefined) return undefined;
  if (temperature !== undefined && temperatureAt === undefined)
    return undefined;
  if (gaugeClause !== undefined && gaugeAt === undefined) return undefined;
  const place = child(node, "place");
  const stageNode = stage === undefined ? undefined : child(stage, "stage");
  return {
    place: place === undefined ? undefined : textOf(line, place),
    values,
    valueSpans: decimals.map((each) => line.spanOf(each)),
    station: stationAt?.value,
    gauge: gaugeRef,
    temperature: temperatureAt,
    gaugeTemperature: gaugeAt,
    // the grammar admits only the stages
    stage:
      stageNode === undefined
        ? undefined
        : (textOf(line, stageNode) as NonNullable<Reading["stage"]>),
    signature: signed,
  };
}

/** The temperature that stands in a clause. */
function temperatureIn(
  clause: Node | undefined,
  line: FactReader,
): Reading["temperature"] {
  const node = clause === undefined ? undefined : child(clause, "temperature");
  return node === undefined ? undefined : temperatureOf(line, node);
}

/** The decimals of a reading, with the one unit at their end. */
function readingValues(
  node: Node,
  line: FactReader,
): readonly Length[] | undefined {
  const decimals = children(node, "decimal");
  const unit = child(node, "unit");
  const asQuantities = decimals.map((decimal, index): Node => {
    const withUnit = unit !== undefined && index === decimals.length - 1;
    return {
      ...decimal,
      type: "length",
      children: withUnit ? [decimal, unit] : [decimal],
    };
  });
  return lengthsOf(line, asQuantities);
}

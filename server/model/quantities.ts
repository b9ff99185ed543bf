// Reads numbers with units off a line's tree into SI. A number that can't be had whole is not had: the reader notes the
// problem and gives undefined.
import { gluedFigures } from "../../grammar/explain-numbers.ts";
import { child, type Node } from "../../grammar/tree.ts";
import {
  readNumber,
  tenthsToMetres,
  toNumber,
  toTenths,
  type Written,
} from "../core/quantity/exact.ts";
import type { System } from "../core/quantity/show.ts";
import {
  toSi,
  unitOf,
  type Dimension,
  type Unit,
} from "../core/quantity/units.ts";
import { isLettered, letteredOf } from "./lettered.ts";
import type { Problem } from "./problem.ts";
import type { AnyQuantity, Length, Span } from "./values.ts";

/** One line while it is read. */
export interface LineReader {
  /** The body that the tree's spans count from. */
  readonly body: string;
  /** The unit of bare lengths; undefined where the file does not say. */
  readonly system: System | undefined;
  readonly spanOf: (node: Node) => Span;
  readonly report: (code: string, node: Node, data: Problem["data"]) => void;
}

export function textOf(line: LineReader, node: Node): string {
  return line.body.slice(node.start, node.end);
}

const BARE: Readonly<Record<System, Unit | undefined>> = {
  inch: unitOf("in"),
  mm: unitOf("mm"),
};

/** The written number of a node; a comma for a point is its own problem. */
function numberOf(line: LineReader, node: Node): Written | undefined {
  const text = textOf(line, node);
  if (text.includes(",")) {
    line.report("number-comma", node, { number: text });
    return undefined;
  }
  const written = readNumber(text);
  if (written === undefined)
    line.report("line-damaged", node, {
      message: `\`${text}\` is not a number that can be read.`,
    });
  return written;
}

/** The unit of a node of type "unit" if it measures one of these. */
function unitFor(
  line: LineReader,
  node: Node,
  dimensions: readonly Dimension[] | undefined,
  number: Node | undefined,
): Unit | undefined {
  const word = textOf(line, node);
  const unit = unitOf(word);
  const figures =
    letteredOf(line.body, number, node) ?? gluedTo(line.body, number, node);
  if (figures !== undefined) {
    line.report("line-damaged", figures.node, figures.data);
    return undefined;
  }
  if (
    unit === undefined ||
    (dimensions !== undefined && !dimensions.includes(unit.dimension))
  ) {
    line.report("unit-wrong", node, {
      unit: word,
      measures: unit?.dimension ?? "",
      wanted: dimensions ?? [],
    });
    return undefined;
  }
  return unit;
}

/** `30x200`: a second figure in the place of a unit. */
function gluedTo(
  body: string,
  number: Node | undefined,
  unit: Node,
): ReturnType<typeof letteredOf> {
  if (number === undefined) return undefined;
  const said = gluedFigures(body.slice(number.start, unit.end));
  return said === undefined
    ? undefined
    : { node: { ...unit, start: number.start }, data: said };
}

/** °C, what a double makes of absolute zero in another unit left to it. */
const ABSOLUTE_ZERO = -273.15 - 1e-9;

function isBelowAll(written: Written, unit: Unit): boolean {
  return toSi(toNumber(written), unit) < ABSOLUTE_ZERO;
}

interface Quantity {
  readonly written: Written;
  readonly unit: Unit | undefined;
}

/**
 * Reads quantities that stand in one range or list: one unit at the end counts for the bare numbers before it. Undefined where any
 * can't be read, so that half a list is never used.
 */
function quantitiesOf(
  line: LineReader,
  nodes: readonly Node[],
  dimensions: readonly Dimension[],
): readonly Quantity[] | undefined {
  const units = nodes.map((node) => child(node, "unit"));
  const read = nodes.map((node, index) => {
    const number = child(node, "number", "decimal");
    const written = number === undefined ? undefined : numberOf(line, number);
    const unitNode = units[index];
    const unit =
      unitNode === undefined
        ? undefined
        : unitFor(line, unitNode, dimensions, number);
    if (written === undefined || (unitNode !== undefined && unit === undefined))
      return undefined;
    if (unit?.dimension === "temperature" && isBelowAll(written, unit)) {
      line.report("line-damaged", node, {
        message: `\`${textOf(line, node)}\` is no temperature, since nothing is colder than -273.15 C (-459.67 F): write what it is.`,
      });
      return undefined;
    }
    return { written, unit };
  });
  // what was taken for a unit is none, so that nothing is missing from the others
  if (nodes.some((node) => isLettered(line.body, node))) return undefined;
  const last = read.at(-1)?.unit;
  const endsOnly =
    last !== undefined &&
    units.slice(0, -1).every((unit) => unit === undefined);
  const someHave = units.some((unit) => unit !== undefined);
  let missing = false;
  const whole = read.map((quantity, index) => {
    if (quantity === undefined || quantity.unit !== undefined) return quantity;
    if (endsOnly) return { ...quantity, unit: last };
    if (dimensions.includes("ratio")) return quantity;
    const node = nodes[index];
    if (!someHave && dimensions.includes("length")) {
      const unit = line.system === undefined ? undefined : BARE[line.system];
      // said once a file, not of each length: see units-unwritten in problem.ts
      if (unit === undefined && node !== undefined && !missing)
        line.report("units-unwritten", node, {});
      missing = true;
      return unit === undefined ? undefined : { ...quantity, unit };
    }
    if (units.at(-1) !== undefined && read.at(-1) === undefined)
      return undefined; // its unit is wrong: said
    if (!missing) reportMissing(line, nodes, dimensions);
    missing = true;
    return undefined;
  });
  return whole.every((quantity) => quantity !== undefined) ? whole : undefined;
}

/** Bare numbers of one range or list that need a unit, said at the first of them. */
function reportMissing(
  line: LineReader,
  nodes: readonly Node[],
  wanted: readonly Dimension[],
): void {
  const bare = nodes.filter((node) => child(node, "unit") === undefined);
  const units = nodes.flatMap((node) => child(node, "unit") ?? []);
  const [first] = bare;
  if (first === undefined) return;
  line.report("unit-missing", first, {
    number: textOf(line, first),
    wanted,
    written: units.map((unit) => textOf(line, unit)),
    ends: bare.map((node) => String(line.spanOf(node).end)),
    system: line.system ?? "",
  });
}

/** A range whose larger end stands first, said of the two ends as they stand, with what they are the other way round. */
export function reportReversed(
  line: LineReader,
  node: Node,
  ends: readonly Node[],
): void {
  const [first, second] = ends;
  if (first === undefined || second === undefined) return;
  const number = (end: Node): string =>
    textOf(line, child(end, "number") ?? end);
  const { end } = second;
  const { start } = first;
  const between = line.body.slice(first.end, second.start);
  // a unit at the end counts for both, so that it stays there
  const swapped =
    child(first, "unit") === undefined
      ? `${number(second)}${between}${number(first)}${textOf(line, second).slice(number(second).length)}`
      : `${textOf(line, second)}${between}${textOf(line, first)}`;
  line.report(
    "range-reversed",
    { ...node, start, end },
    { high: textOf(line, first), low: textOf(line, second), swapped },
  );
}

function lengthOf(quantity: Quantity): Length {
  const { written, unit } = quantity;
  const perUnit = unit?.tenths ?? 0n;
  return {
    value: tenthsToMetres(toTenths(written, perUnit)),
    step:
      written.decimals === undefined
        ? undefined
        : (Number(perUnit) / 1e10) * 10 ** -written.decimals,
  };
}

/** Lengths of one range or list, in m. */
export function lengthsOf(
  line: LineReader,
  nodes: readonly Node[],
): readonly Length[] | undefined {
  return quantitiesOf(line, nodes, ["length"])?.map(lengthOf);
}

/** Lengths whose bare ones are in the unit of `main`: the deviations of `25 mm +0.021 -0` in a mm job. */
export function deviationsOf(
  line: LineReader,
  main: Node,
  nodes: readonly Node[],
): readonly Length[] | undefined {
  const mainUnit = child(main, "unit");
  const bare = nodes.find((node) => child(node, "unit") === undefined);
  if (
    mainUnit !== undefined &&
    bare !== undefined &&
    line.system !== undefined
  ) {
    // never a guess: 25 mm +0.021 in an inch job could be either
    if (
      unitOf(textOf(line, mainUnit)) !== BARE[line.system] &&
      nodes.at(-1)?.children.every((each) => each.type !== "unit")
    ) {
      line.report("unit-missing", bare, {
        number: textOf(line, bare),
        wanted: ["length"],
        written: [textOf(line, mainUnit)],
        ends: [String(line.spanOf(nodes.at(-1) ?? bare).end)],
        system: line.system,
      });
      return undefined;
    }
  }
  return quantitiesOf(line, nodes, ["length"])?.map((quantity, index) => {
    const sign =
      nodes[index] === undefined ? undefined : child(nodes[index], "sign");
    const length = lengthOf(quantity);
    const negative = sign !== undefined && textOf(line, sign) !== "+";
    return negative ? { ...length, value: 0 - length.value } : length;
  });
}

export function lengthIn(line: LineReader, node: Node): Length | undefined {
  return lengthsOf(line, [node])?.[0];
}

/** SI values of one range or list of another dimension. */
export function valuesOf(
  line: LineReader,
  nodes: readonly Node[],
  ...dimensions: readonly Dimension[]
): readonly number[] | undefined {
  return quantitiesOf(line, nodes, dimensions)?.map(({ written, unit }) => {
    const number = toNumber(written);
    return unit === undefined ? number : toSi(number, unit);
  });
}

/** The SI value of one quantity, and which of the dimensions its unit has. */
export function valueOf(
  line: LineReader,
  node: Node,
  ...dimensions: readonly Dimension[]
): { readonly value: number; readonly dimension: Dimension } | undefined {
  const quantity = quantitiesOf(line, [node], dimensions)?.[0];
  if (quantity === undefined) return undefined;
  const number = toNumber(quantity.written);
  const { unit } = quantity;
  return unit === undefined
    ? { value: number, dimension: "ratio" }
    : { value: toSi(number, unit), dimension: unit.dimension };
}

/** A temperature in °C with the step of its last written digit in K. */
export function temperatureOf(
  line: LineReader,
  node: Node,
): { readonly value: number; readonly step: number } | undefined {
  const quantity = quantitiesOf(line, [node], ["temperature"])?.[0];
  if (quantity?.unit === undefined) return undefined;
  const step = quantity.unit.size * 10 ** -(quantity.written.decimals ?? 0);
  return { value: toSi(toNumber(quantity.written), quantity.unit), step };
}

/** A quantity of a dimension that only its use can tell. */
export function anyQuantityOf(
  line: LineReader,
  node: Node,
): AnyQuantity | undefined {
  const number = child(node, "number");
  const unitNode = child(node, "unit");
  const written = number === undefined ? undefined : numberOf(line, number);
  if (written === undefined) return undefined;
  if (unitNode === undefined) {
    const bare =
      line.system === undefined ? undefined : BARE[line.system]?.tenths;
    return {
      value: toNumber(written),
      dimension: undefined,
      asLength:
        bare === undefined
          ? undefined
          : tenthsToMetres(toTenths(written, bare)),
    };
  }
  const unit = unitFor(line, unitNode, undefined, number);
  if (unit === undefined) return undefined;
  const value =
    unit.tenths === undefined
      ? toSi(toNumber(written), unit)
      : tenthsToMetres(toTenths(written, unit.tenths));
  return { value, dimension: unit.dimension, asLength: undefined };
}

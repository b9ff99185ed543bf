// What a class of size means at the size before it: limits of hole and shaft, and the clearance of a fit.
import { child, type Node } from "../../grammar/tree.ts";
import { classZones, parseClass } from "../core/fits/class-words.ts";
import { fitOf } from "../core/fits/fit.ts";
import {
  readNumber,
  tenthsToMetres,
  toTenths,
} from "../core/quantity/exact.ts";
import {
  UNIT_OF_SYSTEM,
  showRange,
  type System,
} from "../core/quantity/show.ts";
import { unitOf } from "../core/quantity/units.ts";
import type { OpenFile } from "../model/project.ts";
import { sideOf } from "../model/ranges.ts";
import { blocks, escaped, table } from "../markup/markdown.ts";
import type { Spot } from "./position.ts";

// limits of size are to be shown whole: micrometres, and hundred-thousandths of an inch
const STEP = { inch: 2.54e-7, mm: 1e-6 } as const;

export function classHover(
  { file }: OpenFile,
  spot: Spot,
  path: readonly Node[],
): string | undefined {
  const node = path.at(-1);
  const holder = path.at(-2);
  const length = holder === undefined ? undefined : child(holder, "length");
  if (node === undefined || length === undefined) return undefined;
  const { body } = spot.line;
  const size = sizeOfLength(body, length, file.context.system);
  const word = body.slice(node.start, node.end);
  const read = parseClass(word);
  if (!read.valid) return `${escaped(word)}: ${escaped(read.because)}.`;
  if (size === undefined) return undefined;
  const zones = classZones(size, read.value);
  if (!zones.valid) return `Not valid here, because ${escaped(zones.because)}.`;
  const side = sideOf(spot.entry.kind ?? "job", spot.line.word);
  const own: System = read.value.system === "iso" ? "mm" : "inch";
  const order: readonly System[] =
    own === "mm" ? ["mm", "inch"] : ["inch", "mm"];
  const range = (low: number, high: number): readonly string[] =>
    order.map((system) => showRange(low, high, system, STEP[system]));
  const rows = zones.value.map((zone) => [
    zone.feature +
      (side === zone.feature && 1 < zones.value.length
        ? ", which counts here"
        : ""),
    ...range(zone.lower, zone.upper),
  ]);
  const [hole, shaft] = zones.value;
  const clearance =
    hole === undefined || shaft === undefined ? undefined : fitOf(hole, shaft);
  if (clearance !== undefined)
    rows.push([
      clearance.kind === "clearance"
        ? "clearance (diametral)"
        : "clearance (diametral; below zero is interference)",
      ...range(clearance.least, clearance.most),
    ]);
  const standard = read.value.system === "iso" ? "ISO 286" : "ANSI B4.1";
  return blocks(
    `**${escaped(word)}** at ${escaped(body.slice(length.start, length.end))}: limits of size (${standard})`,
    table(["", ...order], rows),
  );
}

function sizeOfLength(
  body: string,
  length: Node,
  system: System | undefined,
): number | undefined {
  const number = child(length, "number");
  const unit = child(length, "unit");
  const read =
    number === undefined
      ? undefined
      : readNumber(body.slice(number.start, number.end));
  const bare = system === undefined ? undefined : UNIT_OF_SYSTEM[system];
  const word = unit === undefined ? bare : body.slice(unit.start, unit.end);
  const tenths = word === undefined ? undefined : unitOf(word)?.tenths;
  return read === undefined || tenths === undefined
    ? undefined
    : tenthsToMetres(toTenths(read, tenths));
}

// Writes the lengths of a file in the other unit, without loss: an inch is 25.4 mm, so that every inch decimal is a metric one with one
// decimal more, and that one leads back to the same digits. What has no such form keeps its unit, written out. Comments and layout stay.
import { isIndented, type Line } from "../../grammar/lines.ts";
import { parseBody } from "../../grammar/parse.ts";
import { child, children, nodesIn, type Node } from "../../grammar/tree.ts";
import { factSpec } from "../../grammar/vocabulary.ts";
import type { System } from "../core/quantity/show.ts";
import type { Entry } from "../model/entry.ts";
import type { OpenFile } from "../model/project.ts";
import { figuresOf } from "../rules/figures.ts";
import {
  editAt,
  isRead,
  type Refactoring,
  type RefactoringEdit,
} from "./refactoring.ts";

const UNIT: Readonly<Record<System, string>> = { inch: "in", mm: "mm" };

/** Undefined where the file does not say its unit, or a line of it can't be read: what it means might change when it is mended. */
export function otherUnits(open: OpenFile): Refactoring | undefined {
  const { file, path } = open;
  const from = file.context.system;
  if (from === undefined || !file.entries.every(isLegible)) return undefined;
  const to: System = from === "inch" ? "mm" : "inch";
  const edits: RefactoringEdit[] = [];
  let kept = 0;
  for (const [index, entry] of file.entries.entries()) {
    const start = file.lines.starts[index] ?? 0;
    for (const [number, line] of entry.block.lines.entries()) {
      const changes = changesOf(entry, line, number, from, to);
      if (changes === undefined) return undefined;
      kept += changes.kept;
      for (const { at, end, text } of changes.edits)
        edits.push(
          editAt(
            path,
            start + number,
            line.indent + at,
            line.indent + end,
            text,
          ),
        );
    }
  }
  const stay =
    kept === 0
      ? ""
      : kept === 1
        ? `; 1 line keeps its ${UNIT[from]}`
        : `; ${String(kept)} lines keep their ${UNIT[from]}`;
  return {
    title: `Write this file's lengths in ${to === "mm" ? "mm" : "inches"}${stay}`,
    kind: "rewrite",
    edits,
  };
}

/** Blank and comment lines before the first entry are read too. */
function isLegible(entry: Entry): boolean {
  return entry.kind === undefined
    ? entry.block.lines.every(({ body }) => body === "")
    : isRead(entry);
}

interface Change {
  readonly at: number;
  readonly end: number;
  readonly text: string;
}

interface Changes {
  readonly edits: readonly Change[];
  /** 1 where something of the line keeps its unit, else 0. */
  readonly kept: number;
}

const NOTHING: Changes = { edits: [], kept: 0 };

/** Undefined where a bare number may be a length or a factor, and only its finding could tell. */
function changesOf(
  entry: Entry,
  line: Line,
  number: number,
  from: System,
  to: System,
): Changes | undefined {
  if (number === 0 || line.body === "" || !isIndented(line)) return NOTHING;
  const spec =
    entry.kind === undefined ? undefined : factSpec(entry.kind, line.word);
  if (spec === undefined) return NOTHING;
  const { tree } = parseBody(line.body, spec.rule);
  if (spec.rule === "UnitsFact") {
    const system = child(tree, "system");
    return system === undefined
      ? NOTHING
      : { edits: [{ at: system.start, end: system.end, text: to }], kept: 0 };
  }
  if (spec.rule === "WarnFact" || spec.rule === "UpToFact") {
    const bare = isBareLength(entry, line.body, tree, spec.rule);
    if (bare !== true) return bare === false ? NOTHING : undefined;
  }
  const all = groupsOf(tree).map((group) =>
    changesOfGroup(group, line.body, from, to),
  );
  return {
    edits: all.flatMap(({ edits }) => edits),
    kept: Math.max(0, ...all.map(({ kept }) => kept)),
  };
}

/** Whether the number of a threshold or a bound is a bare length; undefined where it can be either. */
function isBareLength(
  entry: Entry,
  body: string,
  tree: Node,
  rule: string,
): boolean | undefined {
  const code =
    rule === "WarnFact" ? textOf(body, child(tree, "code")) : allowedBy(entry);
  const figures = figuresOf(code);
  // a bare threshold is a length where one is taken
  if (rule === "WarnFact") return figures.warn.includes("length");
  if (!figures.value.includes("length")) return false;
  const isBare = child(child(tree, "anything") ?? tree, "unit") === undefined;
  return figures.value.length === 1 || !isBare ? true : undefined;
}

function allowedBy(entry: Entry): string {
  for (const { value } of entry.facts)
    if (typeof value === "object" && "code" in value && "on" in value)
      return value.code;
  return "";
}

/** Quantities that are written together: one unit at the end counts for all, and they change together or not at all. */
interface Group {
  readonly nodes: readonly Node[];
  /** `own`: it stays in the file's unit, which is written to it then: a reading, or what is added to a size that has its unit written. */
  readonly sort: "each" | "end" | "values" | "class" | "own";
}

function groupsOf(tree: Node): readonly Group[] {
  return nodesIn(tree).flatMap((node): readonly Group[] => {
    switch (node.type) {
      case "values":
        return [{ nodes: [node], sort: "values" }];
      // a reading of an indicator
      case "SwingFact":
      case "BoreSwingFact":
        return [{ nodes: children(node, "length"), sort: "own" }];
      case "LengthRange_class":
        return [{ nodes: children(node, "length"), sort: "class" }];
      case "LengthRange_deviations":
      case "LengthRange_plusMinus":
        return toleranceGroups(children(node, "length", "deviation"));
      case "Point":
        return [];
      case "Centres":
        return [
          {
            nodes: nodesIn(node).filter(({ type }) => type === "length"),
            sort: "each",
          },
        ];
    }
    const nodes = children(node, "length", "anything");
    if (nodes.length === 0) return [];
    const isRange = /^(?:LengthRange|SignedRange)_to$/.test(node.type);
    return [
      { nodes, sort: isRange || node.type === "ShimsFact" ? "end" : "each" },
    ];
  });
}

/** A unit does not reach over a tolerance: `1.1875 +/- 3 tenths` is a size in the file's unit. */
function toleranceGroups([size, ...by]: readonly Node[]): readonly Group[] {
  if (size === undefined) return [];
  const hasUnit = (node: Node): boolean => child(node, "unit") !== undefined;
  const isWritten = by.some(hasUnit);
  if (hasUnit(size) === isWritten)
    return [{ nodes: [size, ...by], sort: "each" }];
  return [
    { nodes: [size], sort: "each" },
    { nodes: by, sort: isWritten ? "each" : "own" },
  ];
}

function changesOfGroup(
  { nodes, sort }: Group,
  body: string,
  from: System,
  to: System,
): Changes {
  const units = nodes.flatMap((node) => child(node, "unit") ?? []);
  const numbers = nodes.flatMap((node) => children(node, "number", "decimal"));
  const texts = numbers.map((node) => textOf(body, node));
  // a reading stays as the gauge showed it: its digits say how fine it was read
  const isFixed = sort === "values" || sort === "class" || sort === "own";
  if (0 < units.length) {
    const isTheFiles = units.every((unit) => textOf(body, unit) === UNIT[to]);
    const leadsBack =
      !isFixed && texts.every((text) => inOther(text, to) !== undefined);
    // it was written out because it has no form in the other unit, which is the file's no more
    return isTheFiles && !leadsBack
      ? { edits: units.map((unit) => withoutUnit(body, unit)), kept: 0 }
      : NOTHING;
  }
  const others = isFixed
    ? [undefined]
    : texts.map((text) => inOther(text, from));
  if (others.every((other) => other !== undefined))
    return {
      edits: numbers.map((node, index) => ({
        at: node.start,
        end: node.end,
        text: others[index] ?? "",
      })),
      kept: 0,
    };
  const unit = ` ${UNIT[from]}`;
  const isEach = sort === "each" || sort === "own";
  const ends = isEach ? nodes : nodes.slice(-1);
  return {
    edits: ends.map(({ end }) => ({ at: end, end, text: unit })),
    kept: 1,
  };
}

/** The unit with the blanks before it. */
function withoutUnit(body: string, { start, end }: Node): Change {
  const before = body.slice(0, start).trimEnd().length;
  return { at: before, end, text: "" };
}

function textOf(body: string, node: Node | undefined): string {
  return node === undefined ? "" : body.slice(node.start, node.end);
}

const DECIMAL = /^([+\u{2212}-]?)(0|[1-9]\d*)(?:\.(\d+))?$/u;

/**
 * The digits of a length in the other unit, such that they lead back to the very same digits; undefined where there are none: for a
 * fraction, and for most metric sizes. Nothing is nothing in either.
 */
export function inOther(text: string, from: System): string | undefined {
  const match = DECIMAL.exec(text);
  if (match === null) return undefined;
  const [, sign = "", whole = "", part = ""] = match;
  const digits = BigInt(whole + part);
  if (digits === 0n) return text;
  if (from === "inch") return decimal(sign, digits * 254n, part.length + 1);
  return part === "" || digits % 254n !== 0n
    ? undefined
    : decimal(sign, digits / 254n, part.length - 1);
}

function decimal(sign: string, digits: bigint, decimals: number): string {
  const text = digits.toString().padStart(decimals + 1, "0");
  const at = text.length - decimals;
  return decimals === 0
    ? sign + text
    : `${sign}${text.slice(0, at)}.${text.slice(at)}`;
}

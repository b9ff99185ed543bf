// The short texts beside the lines: what an entry comes to, and what a line means in other words. The working behind one is asked for
// apart, when someone points at it. Every number is the model's.
import { blockAt, type Line } from "../../grammar/lines.ts";
import { showInOther, showRange, type System } from "../core/quantity/show.ts";
import { unitOf } from "../core/quantity/units.ts";
import type { Entry, Fact } from "../model/entry.ts";
import { boreSize } from "../model/evaluate/bore.ts";
import { settings } from "../model/evaluate/settings.ts";
import type { OpenFile } from "../model/project.ts";
import { HEADLINES } from "../model/result-kinds.ts";
import type { Result } from "../model/result.ts";
import { resultsOfKind } from "../model/results.ts";
import { bestTool } from "../model/results/line.ts";
import type { Shop } from "../model/shop.ts";
import type { LengthRange, Reading } from "../model/values.ts";
import { blocks, code, escaped, list } from "../markup/markdown.ts";
import { locationOf, type Location, type Position } from "./position.ts";

export interface Hint {
  readonly position: Position;
  readonly parts: readonly HintPart[];
  /** The result that it shows; undefined where there is nothing to explain. */
  readonly source: HintSource | undefined;
}

export interface HintPart {
  readonly text: string;
  /** Where a click on it leads. */
  readonly target?: Location;
}

/** Names a result of an entry. */
export interface HintSource {
  readonly ref: string;
  readonly kind: string;
  readonly case: number | null;
}

/** The results of facts that may repeat: the first such line has the first case. */
const CASES: Readonly<Record<string, string>> = {
  HotFact: "hot-clearance",
  ColdFact: "cold-clearance",
};

/** What is taken between diameters, and could be taken for half of it. */
const DIAMETRAL = /clearance$|^interference$/u;

/** Hints on the lines from `first` to `last`, from 0, both inclusive. */
export function hintsIn(
  open: OpenFile,
  first: number,
  last: number,
): readonly Hint[] {
  const { lines, entries } = open.file;
  const hints: Hint[] = [];
  for (let at = blockAt(lines, first); at < entries.length; at++) {
    const start = lines.starts[at] ?? 0;
    if (last < start) break;
    const entry = entries[at];
    if (entry === undefined || entry.damaged) continue;
    for (const hint of hintsOfEntry(open, at, entry, start)) {
      const { line } = hint.position;
      if (first <= line && line <= last) hints.push(hint);
    }
  }
  return hints;
}

function hintsOfEntry(
  open: OpenFile,
  index: number,
  entry: Entry,
  start: number,
): readonly Hint[] {
  const hints: Hint[] = [];
  const add = (
    line: number,
    parts: readonly HintPart[] | undefined,
    source?: HintSource,
  ): void => {
    const at = entry.block.lines[line];
    if (at === undefined || parts === undefined || parts.length === 0) return;
    hints.push({
      position: { line: start + line, character: at.indent + at.body.length },
      parts,
      source,
    });
  };
  add(0, headline(open, index), sourceOf(entry));
  const cases = new Map<string, number>();
  for (const fact of entry.facts) {
    const { line } = fact.span;
    const kind = CASES[fact.rule];
    if (kind !== undefined) {
      const number = (cases.get(kind) ?? 0) + 1;
      cases.set(kind, number);
      const source = { ref: entry.ref, kind, case: number };
      const result = resultFor(open, index, source);
      if (result !== undefined)
        add(line, lengthParts(open.shop, result), source);
    } else add(line, factParts(open.shop, entry, fact));
  }
  return hints;
}

function sourceOf(entry: Entry): HintSource | undefined {
  const kind = HEADLINES[entry.kind ?? ""];
  return kind === undefined ? undefined : { ref: entry.ref, kind, case: null };
}

/** What an entry comes to, as it stands beside its name; undefined where there is nothing to say. */
export function headline(
  open: OpenFile,
  index: number,
): readonly HintPart[] | undefined {
  const entry = open.file.entries[index];
  const result = headlineResult(open, index);
  if (entry === undefined || result === undefined) return undefined;
  if (entry.kind === "step") return stepParts(open.shop, result);
  if (entry.kind === "line") return lineParts(open.shop, result);
  const saysMore = HEADLINES[entry.kind ?? ""] !== "size";
  return saysMore || isMoreThanLimits(open.shop, result)
    ? lengthParts(open.shop, result)
    : undefined;
}

/** The result that an entry's headline shows; undefined where the entry has none. */
export function headlineResult(
  open: OpenFile,
  index: number,
): Result | undefined {
  const entry = open.file.entries[index];
  const source = entry === undefined ? undefined : sourceOf(entry);
  return entry === undefined || entry.damaged || source === undefined
    ? undefined
    : resultFor(open, index, source);
}

function resultFor(
  open: OpenFile,
  index: number,
  { ref, kind, case: number }: HintSource,
): Result | undefined {
  return resultsAt(open, index, ref, kind).find(
    (result) => result.case === number,
  );
}

/** The results of one kind of an entry of the file; none for the second of a name. */
function resultsAt(
  { shop }: OpenFile,
  index: number,
  ref: string,
  kind: string,
): readonly Result[] {
  const place = shop.places.get(ref);
  return place?.file === 0 && place.index === index
    ? resultsOfKind(shop, ref, kind)
    : [];
}

/** A size that is only its limits stands on the line below already, and one that is unknown is no news on every feature. */
function isMoreThanLimits(shop: Shop, { entry, status }: Result): boolean {
  if (status !== "predicted") return status === "measured";
  if (!entry.startsWith("bore ")) return false;
  const size = boreSize(shop, entry);
  return size.known && size.value.from !== "limits";
}

/** "0.0010 to 0.0013 in, predicted, in", or what it needs. */
function lengthParts(
  shop: Shop,
  result: Result,
): readonly HintPart[] | undefined {
  const { status, verdict, text } = result;
  if (status === "unknown") return needParts(shop, result);
  const words = [text, status, ...(verdict === "none" ? [] : [verdict])];
  return [{ text: words.join(", ") }];
}

/** The first of what is missing; a click leads to the entry that lacks it. */
function needParts(
  shop: Shop,
  { needs }: Result,
): readonly HintPart[] | undefined {
  const [first, ...more] = needs;
  if (first === undefined) return undefined;
  return [
    { text: "needs " },
    part(shop, first.text, first.ref),
    ...(more.length === 0 ? [] : [{ text: ` and ${more.length} more` }]),
  ];
}

function part(shop: Shop, text: string, ref: string): HintPart {
  const target = locationOf(shop, ref);
  return target === undefined ? { text } : { text, target };
}

/** The window, and the best reamer for it. */
function lineParts(
  shop: Shop,
  window: Result,
): readonly HintPart[] | undefined {
  if (window.status === "unknown") return needParts(shop, window);
  const tool = bestTool(shop, window.entry) ?? "no reamer that serves";
  return [
    { text: `bore to be ${window.text}, by ${window.status} journals: ` },
    part(shop, tool, tool),
  ];
}

function stepParts(
  shop: Shop,
  { nominal, text, needs }: Result,
): readonly HintPart[] {
  if (nominal === 1) return [{ text: "next" }];
  const [first, ...more] = text.replace(/^waits: /u, "").split("; ");
  if (first === undefined || !text.startsWith("waits: ")) return [{ text }];
  const about =
    needs.find((need) => need.text === first)?.ref ??
    first.replace(/ to be done$/u, "");
  return [
    { text: "waits: " },
    part(shop, first, about),
    ...(more.length === 0 ? [] : [{ text: ` and ${more.length} more` }]),
  ];
}

/** A reading in the other unit, or the limits that a class stands for. */
function factParts(
  shop: Shop,
  entry: Entry,
  { rule, span, value }: Fact,
): readonly HintPart[] | undefined {
  if (value === undefined) return undefined;
  const { system } = settings(shop, "job");
  switch (rule) {
    case "ReadFact":
    case "RepeatFact":
    case "BushReadFact":
    case "StackReadFact":
      // the rule says which value it is
      return readingParts(
        value as Reading,
        entry.block.lines[span.line],
        system,
      );
    default: {
      const range = classRange(value);
      return range === undefined
        ? undefined
        : [{ text: showRange(range.low, range.high, system, range.step) }];
    }
  }
}

function readingParts(
  { values, valueSpans }: Reading,
  line: Line | undefined,
  system: System,
): readonly HintPart[] | undefined {
  const last = valueSpans.at(-1);
  if (last === undefined || line === undefined) return undefined;
  const mean =
    values.reduce((sum, { value }) => sum + value, 0) / values.length;
  const steps = values.flatMap(({ step }) => step ?? []);
  const written = unitAfter(line.text.slice(last.end)) ?? system;
  const text = showInOther(
    mean,
    written,
    steps.length === 0 ? undefined : Math.min(...steps),
  );
  return [{ text: values.length === 1 ? text : `mean ${text}` }];
}

/** The system of the unit that a text begins with, if it begins with one. */
function unitAfter(text: string): System | undefined {
  const unit = unitOf(/^[ \t\u{A0}]*("|[\p{L}\u{B5}]+)/u.exec(text)?.[1] ?? "");
  if (unit?.tenths === undefined) return undefined;
  // the inch and what is made of it are whole numbers of its millionth
  return unit.tenths % 254n === 0n ? "inch" : "mm";
}

/** The range that a class stands for, where the fact is written as one. */
function classRange(value: unknown): LengthRange | undefined {
  if (typeof value !== "object" || value === null) return undefined;
  if ("className" in value && value.className !== undefined)
    return value as LengthRange; // only ranges have a class
  return "range" in value ? classRange(value.range) : undefined;
}

/** How the number of a hint came about, as Markdown; undefined where its entry is gone. */
export function hintWorking(
  open: OpenFile,
  source: HintSource,
): string | undefined {
  const place = open.shop.places.get(source.ref);
  const result =
    place === undefined ? undefined : resultFor(open, place.index, source);
  if (result === undefined) return undefined;
  const { status, verdict, text, working, needs } = result;
  const judged = verdict === "none" ? "" : `, ${verdict}`;
  const what =
    source.kind.replaceAll("-", " ") +
    (DIAMETRAL.test(source.kind) ? " on diameter" : "");
  const title = `**${escaped(source.ref)}**, ${what}: ${code(text)} (${status}${judged})`;
  const steps = working.map(({ formula, with: numbers, source: from }) =>
    [
      escaped(formula),
      numbers === "" ? "" : `: ${code(numbers)}`,
      from === "" ? "" : ` (${escaped(from)})`,
    ].join(""),
  );
  const wanting = needs.map((need) => `needs ${escaped(need.text)}`);
  return blocks(title, list([...steps, ...wanting]));
}

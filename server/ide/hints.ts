// The short texts beside the lines: what an entry comes to, and what a line means in other words. The working behind one is asked for
// apart, when someone points at it. Every number is the model's.
import { missingTexts } from "../model/known.ts";
import { blockAt, type Line } from "../../grammar/lines.ts";
import {
  showInOther,
  showLength,
  showRange,
  type System,
} from "../core/quantity/show.ts";
import { radialRoundness } from "../core/readings/lobing.ts";
import { unitOf } from "../core/quantity/units.ts";
import type { Entry, Fact } from "../model/entry.ts";
import { settings } from "../model/evaluate/settings.ts";
import type { OpenFile } from "../model/project.ts";
import { HEADLINES, VERDICT_WORDS } from "../model/result-kinds.ts";
import type { Result } from "../model/result.ts";
import { resultsOfKind } from "../model/results.ts";
import { isFirstOfName, type Shop } from "../model/shop.ts";
import type { LengthRange, Reading, Swing } from "../model/values.ts";
import { blocks, code, escaped, list, sentence } from "../markup/markdown.ts";
import { headline, lengthWords, type Words } from "./headline.ts";
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
    words: readonly Words[],
    source?: HintSource,
  ): void => {
    const at = entry.block.lines[line];
    if (at === undefined || words.length === 0) return;
    hints.push({
      position: { line: start + line, character: at.indent + at.body.length },
      parts: partsOf(open.shop, words),
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
      if (result !== undefined) add(line, lengthWords(result), source);
    } else add(line, factWords(open.shop, entry, fact));
  }
  return hints;
}

function sourceOf(entry: Entry): HintSource | undefined {
  const kind = HEADLINES[entry.kind ?? ""];
  return kind === undefined ? undefined : { ref: entry.ref, kind, case: null };
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
  return isFirstOfName(shop, ref, index) ? resultsOfKind(shop, ref, kind) : [];
}

function partsOf(shop: Shop, words: readonly Words[]): readonly HintPart[] {
  return words.map(({ text, about }) => {
    const target = about === undefined ? undefined : locationOf(shop, about);
    return target === undefined ? { text } : { text, target };
  });
}

/** A reading in the other unit, or the limits that a class stands for. */
function factWords(
  shop: Shop,
  entry: Entry,
  { rule, span, value }: Fact,
): readonly Words[] {
  if (value === undefined) return [];
  const { system } = settings(shop);
  switch (rule) {
    case "ReadFact":
    case "RepeatFact":
    case "BushReadFact":
    case "StackReadFact":
      // the rule says which value it is
      return readingWords(
        value as Reading,
        entry.block.lines[span.line],
        system,
      );
    case "SwingFact":
    case "BoreSwingFact":
      return swingWords(value as Swing, system);
    default: {
      const range = classRange(value);
      return range === undefined
        ? []
        : [{ text: showRange(range.low, range.high, system, range.step) }];
    }
  }
}

function readingWords(
  { values, valueSpans }: Reading,
  line: Line | undefined,
  system: System,
): readonly Words[] {
  const last = valueSpans.at(-1);
  if (last === undefined || line === undefined) return [];
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

/** The roundness that a swing shows; nothing where its method is blind to it, which is a finding. */
function swingWords(
  { swing, method, lobes }: Swing,
  system: System,
): readonly Words[] {
  const found = radialRoundness(swing.value, method, lobes);
  if (!found.valid) return [];
  const step = swing.step === undefined ? undefined : swing.step / 10;
  return [{ text: `roundness ${showLength(found.value, system, step)}` }];
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
  const judged = verdict === "none" ? "" : `, ${VERDICT_WORDS[verdict]}`;
  const what =
    source.kind.replaceAll("-", " ") +
    (DIAMETRAL.test(source.kind) ? " on diameter" : "");
  const title = `**${escaped(source.ref)}**, ${what}: ${code(text)} (${status}${judged})`;
  const steps = working.map(({ formula, with: numbers, source: from }) =>
    [
      sentence(formula),
      numbers === "" ? "" : `: ${code(numbers)}`,
      from === "" ? "" : ` (${escaped(from)})`,
    ].join(""),
  );
  const wanting = missingTexts(needs).map((text) => `needs ${sentence(text)}`);
  return blocks(title, list([...steps, ...wanting]));
}

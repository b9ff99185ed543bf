// What one entry says by itself: its name, its references, its facts as values, and what is wrong with its text. It knows the file's
// unit and nothing of any other entry, so it is read once and kept for as long as its block stays the same.
import type { Block, Line } from "../../grammar/lines.ts";
import { isIndented } from "../../grammar/lines.ts";
import { parseBody } from "../../grammar/parse.ts";
import { child, nodesIn, type Node } from "../../grammar/tree.ts";
import {
  entrySpec,
  factSpec,
  kindsWithFact,
  REFERENCE_PLACES,
  type EntryKind,
} from "../../grammar/vocabulary.ts";
import { explainDamage } from "../../grammar/explain.ts";
import type { System } from "../core/quantity/show.ts";
import { namedSize } from "./classes.ts";
import { READERS, type FactReader } from "./facts.ts";
import type { Problem } from "./problem.ts";
import type { FactRule, FactValues, RefSite, Span } from "./values.ts";

export interface Fact<K extends FactRule = FactRule> {
  readonly word: string;
  readonly rule: K;
  readonly wordSpan: Span;
  /** From the fact's word to its last. */
  readonly span: Span;
  /** Undefined where the line is damaged or stands twice: then nothing is known, and nothing may be said. */
  readonly value: FactValues[K] | undefined;
}

export interface Entry {
  readonly block: Block;
  /** Undefined for a block that no known word opens. */
  readonly kind: EntryKind | undefined;
  readonly name: string | undefined;
  /** "fit front"; "" where kind or name is missing. */
  readonly ref: string;
  readonly headSpan: Span;
  readonly nameSpan: Span;
  /** The opening line is damaged or misplaced: the name holds, and nothing else is known. */
  readonly damaged: boolean;
  /** The references of the opening line, in order. */
  readonly of: readonly RefSite[];
  readonly facts: readonly Fact[];
  /** Every reference, those of the opening line among them. */
  readonly refs: readonly RefSite[];
  readonly problems: readonly Problem[];
}

/** What an entry has to know of its file. */
export interface FileContext {
  readonly system: System | undefined;
  /** The file opens with a job: then a material without facts is a fact that lost its indent. */
  readonly isJob: boolean;
}

/** A fact as an entry gives it. */
export type Given<T> =
  | { readonly state: "absent" }
  | { readonly state: "damaged" }
  | { readonly state: "given"; readonly value: T; readonly span: Span };

/** A fact that stands once. */
export function given<K extends FactRule>(
  entry: Entry,
  rule: K,
): Given<FactValues[K]> {
  if (entry.damaged) return { state: "damaged" };
  const fact = entry.facts.find((each): each is Fact<K> => each.rule === rule);
  if (fact === undefined) return { state: "absent" };
  return fact.value === undefined
    ? { state: "damaged" }
    : { state: "given", value: fact.value, span: fact.span };
}

/** The value of a fact that stands once, where it is whole. */
export function valueIn<K extends FactRule>(
  entry: Entry | undefined,
  rule: K,
): FactValues[K] | undefined {
  if (entry === undefined) return undefined;
  const fact = given(entry, rule);
  return fact.state === "given" ? fact.value : undefined;
}

/** All facts of one rule, damaged ones among them. */
export function allOf<K extends FactRule>(
  entry: Entry,
  rule: K,
): readonly Fact<K>[] {
  return entry.facts.filter((each): each is Fact<K> => each.rule === rule);
}

/**
 * Reads a block.
 * @param before the entry that stood in its place in the same file, of which lines that stayed are not read again
 */
export function readEntry(
  block: Block,
  file: FileContext,
  before?: Entry,
): Entry {
  const problems: Problem[] = [];
  const refs: RefSite[] = [];
  const head = block.lines[0];
  const spec = head === undefined ? undefined : entrySpec(head.word);
  if (
    head === undefined ||
    spec === undefined ||
    !block.opens ||
    block.kind === undefined
  )
    return unknownBlock(block);
  const body = block.lines.slice(1);
  const isMisplaced =
    isIndented(head) ||
    (file.isJob &&
      (head.word === "material" || head.word === "oil") &&
      !body.some((line) => isOwnFact(line, block.kind)));
  const reader = new LineReading(
    head,
    0,
    file,
    block.kind,
    head.word,
    problems,
    refs,
  );
  const parsed = parseBody(head.body, spec.rule);
  const nameNode = child(parsed.tree, "name");
  const of = parsed.tree.children
    .filter((node) => node.type in REFERENCE_PLACES)
    .map((node) => reader.ref(node));
  if (isMisplaced)
    reader.report("word-misplaced", parsed.tree.children[0] ?? parsed.tree, {
      word: head.word,
      place: isIndented(head) ? "margin" : "indent",
    });
  else if (parsed.damagedAt !== undefined)
    reportDamage(reader, parsed.tree, parsed.damagedAt, spec.form);
  // what stands under a line in the wrong place is not its own: it is read once that line stands right
  const facts = body.flatMap((line, index) =>
    isMisplaced && !isOwnFact(line, block.kind)
      ? []
      : (keptFact(line, index + 1, block, before, refs) ??
        readFact(line, index + 1, block.kind ?? "job", file, problems, refs) ??
        []),
  );
  const name =
    nameNode === undefined
      ? undefined
      : head.body.slice(nameNode.start, nameNode.end);
  // a material that is a fact without its indent is no entry: the shipped one of that name still holds
  const named = isMisplaced && !isIndented(head) ? undefined : name;
  return {
    block,
    kind: block.kind,
    name: named,
    ref: named === undefined ? "" : `${block.kind} ${named}`,
    headSpan: spanOfLine(head, 0),
    nameSpan:
      nameNode === undefined ? spanOfLine(head, 0) : reader.spanOf(nameNode),
    damaged: isMisplaced || parsed.damagedAt !== undefined,
    of,
    facts: onceOnly(block.kind, facts, problems),
    refs,
    problems,
  };
}

function isOwnFact(line: Line, kind: EntryKind | undefined): boolean {
  return kind !== undefined && factSpec(kind, line.word) !== undefined;
}

class LineReading implements FactReader {
  readonly body: string;
  readonly system: System | undefined;
  readonly namedSize = namedSize;
  readonly #line: Line;
  readonly #number: number;
  readonly kind: EntryKind;
  readonly word: string;
  readonly #problems: Problem[];
  readonly #refs: RefSite[];

  constructor(
    line: Line,
    number: number,
    file: FileContext,
    kind: EntryKind,
    word: string,
    problems: Problem[],
    refs: RefSite[],
  ) {
    this.body = line.body;
    this.system = file.system;
    this.#line = line;
    this.#number = number;
    this.kind = kind;
    this.word = word;
    this.#problems = problems;
    this.#refs = refs;
  }

  spanOf(node: { readonly start: number; readonly end: number }): Span {
    return {
      line: this.#number,
      start: this.#line.indent + node.start,
      end: this.#line.indent + node.end,
    };
  }

  report(
    code: string,
    node: { readonly start: number; readonly end: number },
    data: Problem["data"],
  ): void {
    this.#problems.push({ code, span: this.spanOf(node), data });
  }

  ref(node: Node): RefSite {
    const all = nodesIn(node);
    const kind = all.find((each) => each.type === "kind");
    const name = all.findLast((each) => each.type === "name") ?? node;
    const site: RefSite = {
      span: this.spanOf(node),
      nameSpan: this.spanOf(name),
      kind:
        kind === undefined
          ? undefined
          : entrySpec(this.body.slice(kind.start, kind.end))?.kind,
      name: this.body.slice(name.start, name.end),
      takes: REFERENCE_PLACES[node.type] ?? [],
    };
    this.#refs.push(site);
    return site;
  }
}

/** The fact that a line was before; one that something was wrong with has no value, and is read again. */
function keptFact(
  line: Line,
  number: number,
  { kind }: Block,
  before: Entry | undefined,
  refs: RefSite[],
): Fact | undefined {
  if (before?.block.lines[number] !== line || before.kind !== kind)
    return undefined;
  const fact = before.facts.find(({ span }) => span.line === number);
  if (fact?.value === undefined) return undefined;
  for (const site of before.refs)
    if (site.span.line === number) refs.push(site);
  return fact;
}

function readFact(
  line: Line,
  number: number,
  kind: EntryKind,
  file: FileContext,
  problems: Problem[],
  refs: RefSite[],
): Fact | undefined {
  if (line.body === "") return undefined;
  const reader = new LineReading(
    line,
    number,
    file,
    kind,
    line.word,
    problems,
    refs,
  );
  const word = { start: 0, end: line.word.length };
  const spec = factSpec(kind, line.word);
  if (spec === undefined) {
    if (isIndented(line))
      reader.report("word-unknown", word, {
        word: line.word,
        kind,
        elsewhere: kindsWithFact(line.word),
      });
    else
      reader.report("word-misplaced", word, {
        word: line.word,
        place: "elsewhere",
        elsewhere: kindsWithFact(line.word),
      });
    return undefined;
  }
  // the tables name only rules of thou.ohm that have a reader; a test holds them together
  const rule = spec.rule as FactRule;
  // written out: facts are many, and the engine gives each copy of an object that is spread a shape of its own
  const fact = (value: Fact["value"]): Fact => ({
    word: line.word,
    rule,
    wordSpan: reader.spanOf(word),
    span: spanOfLine(line, number),
    value,
  });
  if (!isIndented(line)) {
    reader.report("word-misplaced", word, { word: line.word, place: "indent" });
    return fact(undefined);
  }
  const parsed = parseBody(line.body, spec.rule);
  if (parsed.damagedAt !== undefined) {
    reportDamage(reader, parsed.tree, parsed.damagedAt, spec.form);
    return fact(undefined);
  }
  const found = problems.length;
  const value = READERS[rule](parsed.tree, reader);
  // a reading of half a line is none
  return fact(found < problems.length ? undefined : value);
}

function reportDamage(
  reader: LineReading,
  tree: Node,
  at: number,
  form: string,
): void {
  const damage = explainDamage(reader.body, tree.type, at, form);
  const written = reader.body.slice(damage.start, damage.end);
  if (damage.code === "date-wrong")
    reader.report(damage.code, damage, { date: written });
  else if (damage.code === "number-comma")
    reader.report(damage.code, damage, { number: written });
  else
    reader.report("line-damaged", damage, {
      message: damage.message,
      written,
      choices: damage.choices ?? [],
      ...(damage.mended === undefined ? {} : { mended: damage.mended }),
      ...(damage.below === undefined ? {} : { below: damage.below }),
      ...(damage.safe === true ? { safe: "yes" } : {}),
    });
}

/** A fact that may stand once and stands twice is unknown: which one was meant can't be told. */
function onceOnly(
  kind: EntryKind,
  facts: readonly Fact[],
  problems: Problem[],
): readonly Fact[] {
  const counts = new Map<string, number>();
  for (const fact of facts)
    counts.set(fact.word, (counts.get(fact.word) ?? 0) + 1);
  const seen = new Map<string, Fact>();
  return facts.map((fact) => {
    if (counts.get(fact.word) === 1 || factSpec(kind, fact.word)?.many === true)
      return fact;
    const first = seen.get(fact.word);
    if (first === undefined) seen.set(fact.word, fact);
    else
      problems.push({
        code: "fact-twice",
        span: fact.wordSpan,
        data: { word: fact.word, kind, firstLine: String(first.span.line) },
      });
    return { ...fact, value: undefined };
  });
}

/** A block that is left out, with the sentence that says why. Nothing is known of it, not even its name. */
export function unreadEntry(block: Block, message: string): Entry {
  const [head] = block.lines;
  const span =
    head === undefined ? { line: 0, start: 0, end: 0 } : spanOfLine(head, 0);
  return blankEntry(block, undefined, span, [
    { code: "line-damaged", span, data: { message } },
  ]);
}

/** Of no kind and without facts: nothing hangs on it. */
function blankEntry(
  block: Block,
  name: string | undefined,
  span: Span,
  problems: readonly Problem[],
): Entry {
  return {
    block,
    kind: undefined,
    name,
    ref: "",
    headSpan: span,
    nameSpan: span,
    damaged: true,
    of: [],
    facts: [],
    refs: [],
    problems,
  };
}

/** Lines that no known word opens: the first word is reported, and the facts under it are left alone. */
function unknownBlock(block: Block): Entry {
  const problems: Problem[] = [];
  const head = block.lines.find((line) => line.body !== "");
  const number = head === undefined ? 0 : block.lines.indexOf(head);
  const span =
    head === undefined
      ? { line: 0, start: 0, end: 0 }
      : spanOfLine(head, number);
  let name: string | undefined;
  if (head !== undefined) {
    const word = {
      line: number,
      start: head.indent,
      end: head.indent + head.word.length,
    };
    if (block.opens) {
      problems.push({
        code: "word-unknown",
        span: word,
        data: {
          word: head.word,
          kind: "",
          elsewhere: kindsWithFact(head.word),
        },
      });
      const recovered = child(parseBody(head.body, "JobEntry").tree, "name");
      name =
        recovered === undefined
          ? undefined
          : head.body.slice(recovered.start, recovered.end);
    } else
      problems.push({
        code: "word-misplaced",
        span: word,
        data: {
          word: head.word,
          place: "first",
          elsewhere: kindsWithFact(head.word),
        },
      });
  }
  return blankEntry(block, name, span, problems);
}

function spanOfLine(line: Line, number: number): Span {
  return {
    line: number,
    start: line.indent,
    end: line.indent + line.body.length,
  };
}

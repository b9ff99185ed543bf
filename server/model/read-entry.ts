// Reads one block into its entry. It knows the file's unit and nothing of any other entry, so a block is read once and its entry kept for
// as long as the block stays the same.
import { explainDamage } from "../../grammar/explain.ts";
import { valueInRemark } from "../../grammar/explain-remark.ts";
import { isIndented, type Block, type Line } from "../../grammar/lines.ts";
import { parseBody } from "../../grammar/parse.ts";
import { child } from "../../grammar/tree.ts";
import {
  entrySpec,
  factSpec,
  kindsWithFact,
  REFERENCE_PLACES,
  type EntryKind,
} from "../../grammar/vocabulary.ts";
import type { Entry, Fact } from "./entry.ts";
import { withDatesInOrder } from "./gauge-dates.ts";
import { READERS } from "./facts.ts";
import { reportBeyond } from "./beyond.ts";
import { reportLess } from "./least.ts";
import { factRead, noteFact } from "./facts-read.ts";
import { LineReading, type FileContext } from "./line-reading.ts";
import type { Problem } from "./problem.ts";
import type { FactRule, RefSite, Span } from "./values.ts";

export function readEntry(block: Block, file: FileContext): Entry {
  const problems: Problem[] = [];
  const refs: RefSite[] = [];
  const { kind } = block;
  const head = block.lines[0];
  const spec = head === undefined ? undefined : entrySpec(head.word);
  if (
    head === undefined ||
    spec === undefined ||
    kind === undefined ||
    !block.opens
  )
    return unknownBlock(block);
  const body = block.lines.slice(1);
  const isMisplaced =
    isIndented(head) ||
    (file.isJob &&
      (head.word === "material" || head.word === "oil") &&
      !body.some((line) => isOwnFact(line, kind)));
  const reader = new LineReading(
    head,
    0,
    file,
    kind,
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
    reportDamage(reader, head, parsed.damagedAt, spec);
  // what stands under a line in the wrong place is not its own: it is read once that line stands right
  const facts: Fact[] = [];
  body.forEach((line, index) => {
    if (isMisplaced && !isOwnFact(line, kind)) return;
    const fact = readFact(line, index + 1, kind, file, problems, refs);
    if (fact !== undefined) facts.push(fact);
  });
  const name =
    nameNode === undefined
      ? undefined
      : head.body.slice(nameNode.start, nameNode.end);
  // a material that is a fact without its indent is no entry: the shipped one of that name still holds
  const named = isMisplaced && !isIndented(head) ? undefined : name;
  return {
    block,
    kind,
    name: named,
    ref: named === undefined ? "" : `${kind} ${named}`,
    headSpan: spanOfLine(head, 0),
    nameSpan:
      nameNode === undefined ? spanOfLine(head, 0) : reader.spanOf(nameNode),
    damaged: isMisplaced || parsed.damagedAt !== undefined,
    of,
    facts: withDatesInOrder(block, onceOnly(kind, facts, problems), problems),
    refs,
    problems,
  };
}

function isOwnFact(line: Line, kind: EntryKind): boolean {
  return factSpec(kind, line.word) !== undefined;
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
  const standing = { kind, system: file.system, number };
  const read = factRead(line, standing);
  if (read !== undefined) {
    refs.push(...read.refs);
    return read.fact;
  }
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
    reportForeign(reader, line, kind);
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
    reportDamage(reader, line, parsed.damagedAt, spec);
    return fact(undefined);
  }
  const [found, named] = [problems.length, refs.length];
  const value = READERS[rule](parsed.tree, reader);
  if (found === problems.length) reportLess(reader, parsed.tree, spec);
  if (found === problems.length)
    reportBeyond(reader, parsed.tree, spec.word, rule);
  // a reading of half a line is none
  if (found < problems.length) return fact(undefined);
  const whole = fact(value);
  noteFact(line, standing, whole, refs.slice(named));
  return whole;
}

/** A line that the entry does not take: the entries that do are named. */
function reportForeign(reader: LineReading, line: Line, kind: EntryKind): void {
  const { word } = line;
  const at = { start: 0, end: word.length };
  const elsewhere = kindsWithFact(word);
  if (isIndented(line))
    reader.report("word-unknown", at, { word, kind, elsewhere });
  else
    reader.report("word-misplaced", at, {
      word,
      place: "elsewhere",
      elsewhere,
    });
}

function reportDamage(
  reader: LineReading,
  line: Line,
  at: number,
  { rule, form }: { readonly rule: string; readonly form: string },
): void {
  const damage =
    (at === line.body.length ? valueInRemark(line, rule, form) : undefined) ??
    explainDamage(line.body, rule, at, form);
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
      ...(damage.unit === undefined ? {} : { unit: damage.unit }),
      ...(damage.kind === undefined ? {} : { kind: damage.kind }),
      ...(damage.safe === true ? { safe: "yes" } : {}),
      ...(damage.isEnd === true ? { isEnd: "yes" } : {}),
    });
}

/** A fact that may stand once and stands twice is unknown: which one was meant can't be told. */
function onceOnly(
  kind: EntryKind,
  facts: readonly Fact[],
  problems: Problem[],
): readonly Fact[] {
  const counts = new Map<string, number>();
  for (const { word } of facts) counts.set(word, (counts.get(word) ?? 0) + 1);
  if (counts.size === facts.length) return facts;
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

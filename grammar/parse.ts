// Reads one line's body into a tree. The only file that calls Ohm, and it calls it as seldom as it can: a line that was read
// before, or whose shape was, costs no second parse. It never throws, and it never looks at another line.
import { makeRecipe, type Grammar, type MatchResult } from "ohm-js";
import recipe from "./thou.ohm-bundle.ts";
import { shapeOf, type Shape } from "./shape.ts";
import { tokenize } from "./tokens.ts";
import { isName } from "./names.ts";
import type { Node } from "./tree.ts";

export interface Parsed {
  readonly rule: string;
  /** The whole line where it could be read; else its first word and its name. */
  readonly tree: Node;
  /** Where reading stopped, from the start of the body; undefined for a line that could be read. */
  readonly damagedAt: number | undefined;
}

/** What may come at the end of a text that is read by a rule. */
export interface Expectation {
  /** Words and marks that may stand there as they are. */
  readonly words: readonly string[];
  /** Descriptions of thou.ohm, "a journal" among them. */
  readonly described: readonly string[];
  /** Where it was expected. */
  readonly at: number;
}

interface Wrapper {
  readonly ctorName: string;
  readonly source: { readonly startIdx: number; readonly endIdx: number };
  readonly children: readonly Wrapper[];
}

let loaded:
  | {
      readonly grammar: Grammar;
      readonly semantics: ReturnType<Grammar["createSemantics"]>;
    }
  | undefined;

function ohm(): NonNullable<typeof loaded> {
  if (loaded === undefined) {
    const grammar = makeRecipe(recipe);
    loaded = { grammar, semantics: grammar.createSemantics() };
  }
  return loaded;
}

// a line that comes again by its words alone costs a look-up; one that does not costs filling in its shape, so few lines do
const MOST_LINES = 10_000;
const MOST_SHAPES = 5_000;
const lines = new Map<string, Parsed>();
const shapes = new Map<string, Node>();

/**
 * The longest body that is read, in UTF-16 units: what Ohm takes of time and memory grows with a line, a kilobyte a character, and what looks for
 * a mend tries it many times over. The longest line of the samples has 130.
 */
export const LONGEST_BODY = 2_000;

/** Reads a body by a start rule of thou.ohm. A longer one than LONGEST_BODY is damaged where that ends. */
export function parseBody(body: string, rule: string): Parsed {
  if (LONGEST_BODY < body.length)
    return {
      rule,
      tree: recover(body.slice(0, LONGEST_BODY), rule),
      damagedAt: LONGEST_BODY,
    };
  const key = `${rule} ${body}`;
  const known = lines.get(key);
  if (known !== undefined) return known;
  const parsed = parseByShape(body, rule);
  if (MOST_LINES <= lines.size) lines.clear();
  lines.set(key, parsed);
  return parsed;
}

function parseByShape(body: string, rule: string): Parsed {
  const shape = shapeOf(body);
  const key = `${rule} ${shape.key}`;
  const template = shapes.get(key);
  if (template !== undefined)
    return { rule, tree: fill(template, shape), damagedAt: undefined };
  const parsed = parseAfresh(body, rule);
  if (parsed.damagedAt === undefined) {
    const made = toTemplate(parsed.tree, shape);
    if (made !== undefined) {
      if (MOST_SHAPES <= shapes.size) shapes.clear();
      shapes.set(key, made);
    }
  }
  return parsed;
}

/** Reads a body by Ohm itself, whatever was read before. */
export function parseAfresh(body: string, rule: string): Parsed {
  const { grammar, semantics } = ohm();
  const match: MatchResult = grammar.match(body, rule);
  if (match.failed())
    return {
      rule,
      tree: recover(body, rule),
      damagedAt: match.getRightmostFailurePosition(),
    };
  // Ohm's wrappers have these three members, and no type that names them
  const wrapper = semantics(match) as unknown as Wrapper;
  return { rule, tree: toTree(wrapper, rule), damagedAt: undefined };
}

/** A sign that nothing of thou.ohm takes. At the end of a text, reading stops at it and says what it would have taken. */
export const STOP = "\u{1}";

const expectations = new Map<string, Expectation>();

/** What may follow a text that breaks off, in the words of thou.ohm. */
export function expectAfter(text: string, rule: string): Expectation {
  // what is expected within a word hangs on its letters; what is expected after the last one, on the shape
  if (!text.endsWith(STOP) || LONGEST_BODY < text.length)
    return expectAfresh(text, rule);
  const key = `${rule} ${shapeOf(text).key}`;
  const end = text.length - STOP.length;
  const known = expectations.get(key);
  if (known !== undefined) return { ...known, at: end };
  const found = expectAfresh(text, rule);
  if (found.at === end) {
    if (MOST_SHAPES <= expectations.size) expectations.clear();
    expectations.set(key, found);
  }
  return found;
}

/** The same by Ohm itself, whatever was asked before. */
export function expectAfresh(text: string, rule: string): Expectation {
  if (LONGEST_BODY < text.length)
    return { words: [], described: [], at: text.length };
  const match: MatchResult = ohm().grammar.match(text, rule);
  if (!match.failed()) return { words: [], described: [], at: text.length };
  const words: string[] = [];
  const described: string[] = [];
  for (const failure of match.getRightmostFailures()) {
    const said = failure.toString();
    if (failure.type === "string") words.push(unquote(said));
    else if (failure.type === "description" && said !== "a space")
      described.push(said);
  }
  return { words, described, at: match.getRightmostFailurePosition() };
}

function unquote(said: string): string {
  return said.startsWith('"') && said.endsWith('"') ? said.slice(1, -1) : said;
}

/** Rules whose text is taken whole. */
const LEAVES = new Set([
  ...[
    "number",
    "decimal",
    "text",
    "date",
    "class",
    "count",
    "code",
    "name",
    "word",
    "kindWord",
    "nameShape",
    "place",
    "member",
  ],
  ...[
    "stage",
    "side",
    "system",
    "rule",
    "axis",
    "bottom",
    "construction",
    "direction",
    "loading",
    "body",
    "cutBody",
    "outcome",
  ],
  ...[
    "drive",
    "toolMaterial",
    "hand",
    "gaugeKind",
    "parameter",
    "caution",
    "stepName",
    "saeGrade",
    "serialWord",
    "letterSize",
  ],
  ...["sign", "dashed", "unitShape"],
]);

/** Rules that are nothing by themselves: their children stand in their place. */
const TRANSPARENT = new Set([
  ...[
    "quantity_unit",
    "quantity_bare",
    "decimalQuantity_unit",
    "decimalQuantity_bare",
    "NonemptyListOf",
    "Listed",
  ],
  ...[
    "nonemptyListOf",
    "_iter",
    "_terminal",
    "quantity",
    "decimalQuantity",
    "LengthOrRange",
    "Range",
    "Size",
    "Grade",
    "Feed",
  ],
  ...[
    "Finish",
    "Depth",
    "SignedRange",
    "Dated",
    "Clause",
    "ref",
    "Reading",
    "Signature",
    "LengthRange",
    "exponent",
    "space",
    "spaces",
  ],
  ...[
    "Finish_after",
    "Finish_before",
    "Signature_by",
    "Signature_on",
    "Dated_date",
    "Dated_signed",
    "NonemptyListOf_nonempty",
    "unitAny",
  ],
]);

const RENAMED: Readonly<Record<string, string>> = {
  kindWord: "kind",
  nameShape: "name",
  unitShape: "unit",
};

function toTree(wrapper: Wrapper, rule: string): Node {
  const found = nodesOf(wrapper);
  const root = found.find((node) => node.type === rule) ?? found[0];
  return (
    root ?? {
      type: rule,
      start: wrapper.source.startIdx,
      end: wrapper.source.endIdx,
      children: NO_NODES,
    }
  );
}

function nodesOf(wrapper: Wrapper): readonly Node[] {
  const type = wrapper.ctorName;
  const { startIdx: start, endIdx: end } = wrapper.source;
  if (LEAVES.has(type))
    return [{ type: RENAMED[type] ?? type, start, end, children: NO_NODES }];
  const below = wrapper.children.flatMap(nodesOf);
  if (TRANSPARENT.has(type) || below.length === 0 || type.startsWith("unit"))
    return below;
  return [
    {
      type,
      start: below[0]?.start ?? start,
      end: below.at(-1)?.end ?? end,
      children: below,
    },
  ];
}

/** What a line that can't be read still says: its first word, and the name after it. */
function recover(body: string, rule: string): Node {
  const words = tokenize(body).filter((token) => token.kind !== "blank");
  const [first, second] = words;
  const found: Node[] = [];
  if (first !== undefined)
    found.push({
      type: "word",
      start: first.start,
      end: first.end,
      children: NO_NODES,
    });
  if (second?.kind === "word" && isName(body.slice(second.start, second.end))) {
    found.push({
      type: "name",
      start: second.start,
      end: second.end,
      children: NO_NODES,
    });
  }
  return {
    type: rule,
    start: 0,
    end: found.at(-1)?.end ?? body.length,
    children: found,
  };
}

/** The tree with token numbers for offsets; undefined where a node does not begin and end with a token. */
function toTemplate(node: Node, shape: Shape): Node | undefined {
  const start = shape.starts.indexOf(node.start);
  const end = shape.ends.indexOf(node.end);
  if (start === -1 || end === -1) return undefined;
  const below: Node[] = [];
  for (const each of node.children) {
    const made = toTemplate(each, shape);
    if (made === undefined) return undefined;
    below.push(made);
  }
  return { type: node.type, start, end, children: below };
}

/** Most nodes have none below them, and they are many. */
const NO_NODES: readonly Node[] = [];

function fill(template: Node, shape: Shape): Node {
  return {
    type: template.type,
    start: shape.starts[template.start] ?? 0,
    end: shape.ends[template.end] ?? 0,
    children:
      template.children.length === 0
        ? NO_NODES
        : template.children.map((each) => fill(each, shape)),
  };
}

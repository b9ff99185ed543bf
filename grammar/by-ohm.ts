// One line's body by Ohm: its tree, where reading it stopped, and what could have stood there. The only file that calls Ohm; parse.ts calls it
// as seldom as it can.
import { makeRecipe, type Grammar, type MatchResult } from "ohm-js";
import { recipe } from "./thou.ohm-bundle.ts";
import { isName } from "./names.ts";
import { tokenize } from "./tokens.ts";
import { NO_NODES, type Node } from "./tree.ts";

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
    const grammar = makeRecipe(recipe());
    loaded = { grammar, semantics: grammar.createSemantics() };
  }
  return loaded;
}

/**
 * The longest body that is read, in UTF-16 units: what Ohm takes of time and memory grows with a line, a kilobyte a character, and what looks for
 * a mend tries it many times over. The longest line of the samples has 130.
 */
export const LONGEST_BODY = 2_000;

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
  const tree = nodesOf(wrapper)[0] ?? recover(body, rule);
  return { rule, tree, damagedAt: undefined };
}

/** What may follow a text that breaks off, in the words of thou.ohm, whatever was asked before. */
export function expectAfresh(text: string, rule: string): Expectation {
  if (LONGEST_BODY < text.length)
    return { words: [], described: [], at: text.length };
  const match: MatchResult = ohm().grammar.match(text, rule);
  if (!match.failed()) return { words: [], described: [], at: text.length };
  const words: string[] = [];
  const described: string[] = [];
  for (const failure of match.getRightmostFailures()) {
    const said = failure.toString();
    if (failure.type === "string") words.push(said.slice(1, -1));
    // "not a wordChar": what ends there is a word of the grammar's own
    else if (
      failure.type === "description" &&
      said !== "a space" &&
      !said.startsWith("not ")
    )
      described.push(said);
  }
  return { words, described, at: match.getRightmostFailurePosition() };
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
    "indicator",
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
  ...["quantity_unit", "quantity_bare", "NonemptyListOf", "Listed"],
  ...["_iter", "quantity", "LengthOrRange", "Range", "Size", "Grade", "Feed"],
  ...[
    "Finish",
    "Depth",
    "SignedRange",
    "Dated",
    "Clause",
    "SwingClause",
    "ref",
    "Reading",
    "Signature",
    "LengthRange",
  ],
  ...[
    "Finish_after",
    "Finish_before",
    "Signature_by",
    "Signature_on",
    "Dated_date",
    "Dated_signed",
  ],
]);

const RENAMED: Readonly<Record<string, string>> = {
  kindWord: "kind",
  nameShape: "name",
  unitShape: "unit",
};

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
export function recover(body: string, rule: string): Node {
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

// Writes the TextMate grammar, which colours a record before the server has read it and wherever there is no server. Its words
// come from grammar/vocabulary.ts and thou.ohm, so that a new word needs no edit here. It looks at one line at a time and knows
// shapes only; what the names on a line are, the server's semantic tokens say.
import { recipe } from "../../grammar/thou.ohm-bundle.ts";
import {
  CLAUSE_WORDS,
  ENTRIES,
  ENTRY_KINDS,
} from "../../grammar/vocabulary.ts";

interface Pattern {
  readonly name?: string;
  readonly match?: string;
  readonly begin?: string;
  readonly end?: string;
  readonly include?: string;
  readonly captures?: Captures;
  readonly beginCaptures?: Captures;
  readonly patterns?: readonly Pattern[];
}
type Captures = Readonly<Record<string, { readonly name: string }>>;

// The scopes are those that common themes colour; package.json gives the server's token types the same ones.
const SCOPES = {
  entry: "keyword.control.entry.thou",
  fact: "keyword.other.fact.thou",
  declared: "entity.name.function.declaration.thou",
  name: "variable.other.name.thou",
  kind: "support.type.kind.thou",
  clause: "keyword.operator.clause.thou",
  choice: "variable.other.enummember.thou",
  number: "constant.numeric.thou",
  unit: "keyword.other.unit.thou",
  class: "variable.other.enummember.class.thou",
  date: "constant.numeric.date.thou",
  sign: "keyword.operator.sign.thou",
  comma: "punctuation.separator.thou",
  text: "string.quoted.double.thou",
  comment: "comment.line.number-sign.thou",
} as const;

// Shapes, each as thou.ohm has it. Only what Oniguruma and JavaScript read alike is used, so that tests need no Oniguruma.
const BLANK = "[ \\t\\u00A0]";
const WORD_CHAR = "[\\p{L}\\d_-]";
const NAME = `\\p{L}[\\p{L}\\d-]*(?!${WORD_CHAR})`;
const SIGN = "[+\\u2212-]";
const FRACTION = `\\d+/\\d+(?!${WORD_CHAR})`;
const DECIMAL = `${SIGN}?(?:\\d+\\.\\d*|\\.\\d+|\\d+)(?:[eE][+-]?\\d+)?(?!\\d)`;
const COMMA = `${SIGN}?\\d+(?:\\.\\d+)?,\\d+(?:\\.\\d+)?`;
const NUMBER = `${SIGN}?\\d+(?: +|-)${FRACTION}|${SIGN}?${FRACTION}|${COMMA}|${DECIMAL}`;
const UNIT_CHAR = "[\\p{L}\\d/\\u00B0%_\\u00B7\\u00B2\\u00B3^-]";
const CLASS = "\\p{L}{1,2}\\d{1,2}(?:/\\p{L}{1,2}\\d{1,2})?";
// A text ends at a quote before a blank, a comma or the line's end, unless a stray quote follows: "12" shaft" is one text.
const STRAY_QUOTE = `(?:(?!${BLANK}#)[^"])*(?<!${BLANK}|,)"`;
const TEXT = `"(?:.*?"(?=${BLANK}|,|$)(?!${STRAY_QUOTE})|(?:(?!${BLANK}#).)*)`;

/** The grammar as the text of a .tmLanguage.json file. */
export function tmLanguage(): string {
  const grammar = {
    information_for_contributors: [
      { note: "Made by npm run generate from generate.ts: do not edit." },
    ],
    name: "Thou",
    scopeName: "source.thou",
    patterns: [
      entryLine(),
      ...factLines(),
      // a line whose first word is unknown: that word stays plain, which shows it
      ...["comment", "text", "date", "quantity", "clause"].map(include),
    ],
    repository: {
      rest: {
        patterns: [
          "comment",
          "text",
          "date",
          "quantity",
          "signer",
          "kind",
          "clause",
          "name",
          "separators",
        ].map(include),
      },
      comment: { name: SCOPES.comment, match: `(?<![^ \\t\\u00A0])#.*` },
      text: { name: SCOPES.text, match: `(?<![^ \\t\\u00A0,])${TEXT}` },
      date: {
        name: SCOPES.date,
        match: `(?<!${WORD_CHAR})\\d{4}-\\d{1,2}-\\d{1,2}(?!${WORD_CHAR})`,
      },
      quantity: quantity(),
      kind: {
        name: SCOPES.kind,
        match: `${word(ENTRY_KINDS)}(?=${BLANK}+(?!${word(CLAUSE_WORDS)})${NAME})`,
      },
      signer: {
        match: `(${word(["by"])})${BLANK}+(${NAME})`,
        captures: { 1: { name: SCOPES.clause }, 2: { name: SCOPES.text } },
      },
      clause: { name: SCOPES.clause, match: word(CLAUSE_WORDS) },
      name: { name: SCOPES.name, match: `(?<!${WORD_CHAR})${NAME}` },
      separators: {
        patterns: [
          { name: SCOPES.sign, match: "\\+/-|\\u00B1" },
          { name: SCOPES.comma, match: "," },
        ],
      },
    },
  };
  return `${JSON.stringify(grammar, undefined, 2)}\n`;
}

/** An entry in column 1; indented too where its word is no fact, for there it still opens an entry. */
function entryLine(): Pattern {
  const facts = new Set(
    ENTRIES.flatMap((entry) => entry.facts.map((fact) => fact.word)),
  );
  const onlyEntries = ENTRY_KINDS.filter((kind) => !facts.has(kind));
  return {
    begin: `^(?:(${word(ENTRY_KINDS)})|${BLANK}+(${word(onlyEntries)}))(?:${BLANK}+(${NAME}))?`,
    beginCaptures: {
      1: { name: SCOPES.entry },
      2: { name: SCOPES.entry },
      3: { name: SCOPES.declared },
    },
    end: "$",
    patterns: [include("rest")],
  };
}

/** The lines of facts: one pattern for all facts that take the same words. */
function factLines(): Pattern[] {
  const groups = new Map<string, { facts: Set<string>; words: FactWords }>();
  for (const [fact, words] of wordsByFact()) {
    const key = JSON.stringify([[...words.choices], [...words.joining]]);
    const group = groups.get(key) ?? { facts: new Set(), words };
    group.facts.add(fact);
    groups.set(key, group);
  }
  return [...groups.values()].map(({ facts, words }) => ({
    begin: `^${BLANK}*(${word([...facts])})`,
    beginCaptures: { 1: { name: SCOPES.fact } },
    end: "$",
    patterns: [
      ...someWords(SCOPES.clause, words.joining),
      ...someWords(SCOPES.choice, words.choices),
      include("rest"),
    ],
  }));
}

function someWords(name: string, words: ReadonlySet<string>): Pattern[] {
  return words.size === 0 ? [] : [{ name, match: word([...words]) }];
}

function quantity(): Pattern {
  const notUnits = [...wordsUnder("afterQuantity"), ...CLAUSE_WORDS];
  const unitWord = `(?!${word(notUnits)})(?!${CLASS}(?!${UNIT_CHAR}))[\\p{L}\\u00B0%]${UNIT_CHAR}*`;
  const unit = `${word(["per"])}${BLANK}+${word(["min"])}|${word(["in"])}|${unitWord}`;
  return {
    match:
      `(?<!${WORD_CHAR}|\\.)(${NUMBER})(?:(-|\\u2013|\\u2014|\\.\\.)(${DECIMAL}))?` +
      `(?:("(?=${BLANK}|,|$))|${BLANK}*(${unit}))?(?:${BLANK}*(${CLASS})(?!${WORD_CHAR}))?`,
    captures: {
      1: { name: SCOPES.number },
      2: { name: SCOPES.sign },
      3: { name: SCOPES.number },
      4: { name: SCOPES.unit },
      5: { name: SCOPES.unit },
      6: { name: SCOPES.class },
    },
  };
}

function include(name: string): Pattern {
  return { include: `#${name}` };
}

/** One of the words, whole: the longest first, as an alternation takes the first that fits. */
function word(words: readonly string[]): string {
  const longestFirst = [...words].sort(
    (one, other) =>
      other.length - one.length || (one < other ? -1 : one > other ? 1 : 0),
  );
  return `(?<!${WORD_CHAR})(?:${longestFirst.join("|")})(?!${WORD_CHAR})`;
}

interface FactWords {
  /** Words that a fact chooses among, `steady` of a load. */
  readonly choices: ReadonlySet<string>;
  /** Words that every such line has, like a clause word: `for` of a pilot. */
  readonly joining: ReadonlySet<string>;
}

/** For each fact's word the words that its lines may hold, whatever entry it stands in. */
function wordsByFact(): ReadonlyMap<string, FactWords> {
  const found = new Map<
    string,
    { choices: Set<string>; joining: Set<string> }
  >();
  for (const { word: fact, rule } of ENTRIES.flatMap((entry) => entry.facts)) {
    const words = found.get(fact) ?? { choices: new Set(), joining: new Set() };
    found.set(fact, words);
    const ofEveryLine = new Set(directWords(rule));
    for (const each of wordsUnder(rule)) {
      if (each === fact || CLAUSE_WORDS.includes(each)) continue;
      (ofEveryLine.has(each) ? words.joining : words.choices).add(each);
    }
  }
  return found;
}

// ------------------------------------------------------------------ reading the compiled thou.ohm
// A rule is ["define", …, body]; a word in it is ["app", …, "word", [["terminal", …, "steady"]]].

/** Rules whose words are no words of a fact: names, numbers and units, and the bodies of a temperature, which go like names. */
const NOT_OF_A_FACT = new Set([
  ...["kindWord", "nameShape", "unitShape"],
  ...["body", "cutBody"],
]);

/** The words that a rule may hold, at any depth, in the order of writing. */
function wordsUnder(
  rule: string,
  seen = new Set<string>(),
): ReadonlySet<string> {
  const words = new Set<string>();
  if (seen.has(rule) || NOT_OF_A_FACT.has(rule)) return words;
  seen.add(rule);
  for (const [name, argument] of applications(bodyOf(rule))) {
    if (name === "word" && argument !== undefined) words.add(argument);
    else for (const each of wordsUnder(name, seen)) words.add(each);
  }
  return words;
}

/** The words in the rule's own sequence, not in a choice or behind another rule. */
function directWords(rule: string): readonly string[] {
  const body = bodyOf(rule);
  const parts = isList(body) && body[0] === "seq" ? body.slice(2) : [];
  return parts.flatMap((part) => {
    if (!isList(part) || part[0] !== "app" || part[2] !== "word") return [];
    return applications(part).flatMap(([, argument]) => argument ?? []);
  });
}

/** All applications of rules in an expression: the rule's name, and its argument where that is a plain word. */
function applications(
  expression: unknown,
): readonly (readonly [string, string | undefined])[] {
  if (!isList(expression)) return [];
  const [type, , name, args] = expression;
  const inner = expression.flatMap(applications);
  if (type !== "app" || typeof name !== "string") return inner;
  const first = isList(args) ? args[0] : undefined;
  const argument =
    isList(first) && first[0] === "terminal" && typeof first[2] === "string"
      ? first[2]
      : undefined;
  return [[name, argument], ...inner];
}

function bodyOf(rule: string): unknown {
  const rules = recipe()[5];
  const definition: unknown =
    typeof rules === "object" && rules !== null
      ? Object.getOwnPropertyDescriptor(rules, rule)?.value
      : undefined;
  return isList(definition) ? definition.at(-1) : undefined;
}

function isList(value: unknown): value is readonly unknown[] {
  return Array.isArray(value);
}

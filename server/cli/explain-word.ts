// The page of a word of the language, made from the vocabulary and the grammar's own examples: how an entry is written and which facts it
// takes, where a fact stands and what it says; what a result is; what a shipped name stands for. Pages of findings are files; these are made
// when they are asked for.
import {
  ENTRIES,
  factsWithin,
  factSpec,
  kindsWithFact,
  type EntrySpec,
  type FactSpec,
} from "../../grammar/vocabulary.ts";
import { examples } from "../../grammar/examples.ts";
import { materials } from "../core/materials/material.ts";
import { oils } from "../core/materials/oils.ts";
import { unitOf, UNITS } from "../core/quantity/units.ts";
import { CAUTIONS } from "../model/cautions.ts";
import { groupedBy } from "../model/groups.ts";
import { RESULT_KINDS } from "../model/result-kinds.ts";
import { capitalised } from "../model/sentences.ts";

/** Every word that has a page: entries first, each once. */
export const WORDS: readonly string[] = [
  ...new Set([
    ...ENTRIES.map(({ kind }) => kind),
    ...ENTRIES.flatMap(({ facts }) => facts.map(({ word }) => word)),
    ...Object.keys(RESULT_KINDS),
  ]),
];

/** The materials and oils that are shipped, by name. */
export const SHIPPED: readonly string[] = [...materials, ...oils].map(
  ({ name }) => name,
);

/** What each entry is, for a list. */
export const ENTRY_SUMMARIES: readonly (readonly [string, string])[] =
  ENTRIES.map(({ kind, means }) => [kind, means]);

/** What each result of a check is, for a list. */
export const RESULT_SUMMARIES: readonly (readonly [string, string])[] =
  Object.entries(RESULT_KINDS).map(([kind, means]) => [kind, sentence(means)]);

/** The page of an entry, a fact, a result or a shipped name in Markdown, or nothing where there is no such word. */
export function wordPage(word: string): string | undefined {
  const entry = ENTRIES.find(({ kind }) => kind === word);
  const kinds = kindsWithFact(word);
  const others = [...resultPart(word), ...shippedName(word)];
  if (entry === undefined && kinds.length + others.length === 0)
    return withinFacts(word);
  const parts = [`# ${word}`];
  if (entry !== undefined) parts.push(...entryPart(entry));
  for (const [kindsOfForm, fact] of formsOf(word, kinds))
    parts.push(...factPart(kindsOfForm, fact));
  parts.push(...shipped(word), ...others);
  return parts.join("\n\n");
}

/** A word that begins no line and stands within some, as `blind` does. */
function withinFacts(word: string): string | undefined {
  const found = factsWithin(word);
  if (found.length === 0) return undefined;
  // units have a page of their own, which says more
  if (unitOf(word) !== undefined) return undefined;
  const lines = [
    ...groupedBy(found, ({ fact }) => `\`${fact.form}\`: ${fact.means}`),
  ];
  return [
    `# ${word}`,
    "A word within these facts:",
    lines
      .map(
        ([line, all]) =>
          `- In ${all.map(({ kind }) => kind).join(", ")}: ${line}`,
      )
      .join("\n"),
  ].join("\n\n");
}

function entryPart({ form, means, rule, facts }: EntrySpec): readonly string[] {
  return [
    means,
    `An entry: its first line begins in column 1, its facts are set in below it. Written \`${form}\`; CAPITALS stand for what is filled in, a|b for a choice, [ ] for what may be left off.`,
    ...sampleOf(rule),
    "## Its facts",
    facts
      .map(
        (fact) =>
          `- \`${fact.form}\`${fact.many ? " (more than once, or a list)" : ""}: ${fact.means}`,
      )
      .join("\n"),
  ];
}

/** The kinds of entry in which a word is written alike, with how. */
function formsOf(
  word: string,
  kinds: ReturnType<typeof kindsWithFact>,
): readonly (readonly [readonly string[], FactSpec])[] {
  const forms = new Map<string, [string[], FactSpec]>();
  for (const kind of kinds) {
    const fact = factSpec(kind, word);
    if (fact === undefined) continue;
    const key = `${fact.form}\n${fact.means}`;
    const known = forms.get(key);
    if (known === undefined) forms.set(key, [[kind], fact]);
    else known[0].push(kind);
  }
  return [...forms.values()];
}

function factPart(
  kinds: readonly string[],
  { form, means, many, rule }: FactSpec,
): readonly string[] {
  return [
    `## In ${kinds.join(", ")}`,
    means,
    `Written \`${form}\`${many ? ", more than once, or as a list" : ""}.`,
    ...sampleOf(rule),
  ];
}

function sampleOf(rule: string): readonly string[] {
  const lines = examples[rule] ?? [];
  return lines.length === 0 ? [] : [["```", ...lines, "```"].join("\n")];
}

function resultPart(word: string): readonly string[] {
  const means = Object.hasOwn(RESULT_KINDS, word)
    ? RESULT_KINDS[word]
    : undefined;
  return means === undefined
    ? []
    : [
        "## Among the results of a check",
        sentence(means),
        "`measured`: every size that it rests on was read; `predicted`: a limit or a tool stands for one; `unknown` says what would settle it. " +
          "Loads, turns, temperatures and materials are as the record states them, in either. " +
          "The verdict after it, `in`, `out` or `unsure`, holds it against the limits or against what is wanted. " +
          "Its working stands on the job sheet, and under the pointer in an editor.",
      ];
}

function sentence(text: string): string {
  return `${capitalised(text)}.`;
}

/** A material or an oil that is shipped. */
function shippedName(word: string): readonly string[] {
  const material = materials.find(({ name }) => name === word);
  if (material !== undefined)
    return [
      `A shipped material: ${material.what}.`,
      `Written \`material ${word}\`. "thou explain material" lists them all, and how your own figures are written.`,
    ];
  const oil = oils.find(({ name }) => name === word);
  return oil === undefined
    ? []
    : [
        `A shipped oil: ${oil.grade}, ${oil.use}.`,
        `Written \`oil ${word} at 40 C\`. "thou explain oil" lists them all, and how your own figures are written.`,
      ];
}

/** What is shipped under a word, so that nobody has to look further for it. */
function shipped(word: string): readonly string[] {
  switch (word) {
    case "material":
      return listPart(
        "Shipped materials",
        materials.map(({ name, what }) => [name, what]),
      );
    case "oil":
      return listPart(
        "Shipped oils",
        oils.map(({ name, grade, use }) => [name, `${grade}, ${use}`]),
      );
    case "caution":
      return listPart(
        "Cautions",
        CAUTIONS.map(({ name, title }) => [name, title]),
      );
    case "units":
      return [
        "## Units that a number can have",
        UNITS.map(({ symbol }) => `\`${symbol}\``).join(", "),
      ];
    default:
      return [];
  }
}

function listPart(
  title: string,
  rows: readonly (readonly [string, string])[],
): readonly string[] {
  return [
    `## ${title}`,
    rows.map(([name, what]) => `- \`${name}\`: ${what}`).join("\n"),
  ];
}

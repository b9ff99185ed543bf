// The page of a word of the language, made from the vocabulary and the grammar's own examples: how an entry is written and which facts it
// takes, where a fact stands and what it says. Pages of findings are files; these are made when they are asked for.
import {
  ENTRIES,
  factSpec,
  kindsWithFact,
  type EntrySpec,
  type FactSpec,
} from "../../grammar/vocabulary.ts";
import { examples } from "../../grammar/examples.ts";
import { materials } from "../core/materials/material.ts";
import { oils } from "../core/materials/oils.ts";
import { UNITS } from "../core/quantity/units.ts";
import { CAUTIONS } from "../model/cautions.ts";

/** Every word that has a page: entries first, each once. */
export const WORDS: readonly string[] = [
  ...new Set([
    ...ENTRIES.map(({ kind }) => kind),
    ...ENTRIES.flatMap(({ facts }) => facts.map(({ word }) => word)),
  ]),
];

/** What each entry is, for a list. */
export const ENTRY_SUMMARIES: readonly (readonly [string, string])[] =
  ENTRIES.map(({ kind, means }) => [kind, means]);

/** The page of an entry or a fact in Markdown, or nothing where the language has no such word. */
export function wordPage(word: string): string | undefined {
  const entry = ENTRIES.find(({ kind }) => kind === word);
  const kinds = kindsWithFact(word);
  if (entry === undefined && kinds.length === 0) return undefined;
  const parts = [`# ${word}`];
  if (entry !== undefined) parts.push(...entryPart(entry));
  for (const [kindsOfForm, fact] of formsOf(word, kinds))
    parts.push(...factPart(kindsOfForm, fact));
  parts.push(...shipped(word));
  return parts.join("\n\n");
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

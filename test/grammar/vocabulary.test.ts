// The words of the language, thou.ohm and the readers hold together: each word's rule is there, and each rule of a fact has its reader.
import { readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, test } from "vitest";
import { parseAfresh } from "../../grammar/by-ohm.ts";
import {
  CLAUSE_WORDS,
  ENTRIES,
  ENTRY_KINDS,
  factSpec,
  kindsWithFact,
  REFERENCE_PLACES,
} from "../../grammar/vocabulary.ts";
import { READERS } from "../../server/model/facts.ts";

const source = readFileSync(
  path.join(import.meta.dirname, "../../grammar/thou.ohm"),
  "utf8",
);
const rules = new Set(
  [...source.matchAll(/^ {2}([A-Za-z]\w*)(?:<\w+>)?(?: \([^)]*\))? =/gm)].map(
    ([, rule]) => rule ?? "",
  ),
);
const facts = ENTRIES.flatMap((entry) =>
  entry.facts.map((fact) => ({ kind: entry.kind, ...fact })),
);

test.each(ENTRIES)("$kind is read by a rule of thou.ohm", ({ rule, kind }) => {
  expect(rules).toContain(rule);
  expect(source).toContain(`${rule} = word<"${kind}">`);
});

test.each(facts)(
  "$word of $kind has a rule, a reader, a form and a meaning",
  ({ word, rule, form, means }) => {
    expect(rules).toContain(rule);
    expect(Object.keys(READERS)).toContain(rule);
    expect(source).toContain(`${rule} = word<"${word}">`);
    expect(form.split(" ")[0]).toBe(word);
    expect(means).toMatch(/\.$/);
  },
);

test("every reader has a fact", () => {
  const used = new Set(facts.map((fact) => fact.rule));
  expect(Object.keys(READERS).filter((rule) => !used.has(rule))).toEqual([]);
});

test("every fact's rule has a word", () => {
  const used = new Set(facts.map((fact) => fact.rule));
  const ofFacts = [...rules].filter((rule) => rule.endsWith("Fact"));
  expect(ofFacts.filter((rule) => !used.has(rule))).toEqual([]);
});

test("each kind has one entry, in the order of the list", () => {
  expect(ENTRIES.map((entry) => entry.kind)).toEqual(ENTRY_KINDS);
});

test("no fact stands twice in an entry", () => {
  for (const entry of ENTRIES) {
    const words = entry.facts.map((fact) => fact.word);
    expect(new Set(words).size, entry.kind).toBe(words.length);
    for (const word of words) {
      expect(factSpec(entry.kind, word)?.word).toBe(word);
      expect(kindsWithFact(word)).toContain(entry.kind);
    }
  }
});

test("each place of a reference is a rule of thou.ohm and takes kinds that there are", () => {
  for (const [rule, kinds] of Object.entries(REFERENCE_PLACES)) {
    expect(rules).toContain(rule);
    expect(kinds.filter((kind) => !ENTRY_KINDS.includes(kind))).toEqual([]);
  }
});

test("each place takes the kinds that thou.ohm describes it by", () => {
  const described = new Map(
    [...source.matchAll(/^ {2}(\w+) \((.*)\) =/gm)].map(
      ([, rule = "", text = ""]) => [rule, text],
    ),
  );
  for (const [rule, kinds] of Object.entries(REFERENCE_PLACES)) {
    const named = (described.get(rule) ?? "")
      .split(" or ")
      .map((each) => each.replace(/^an? /u, "").replace(/,.*$/u, ""));
    expect(kinds, rule).toEqual(named.includes("entry") ? ENTRY_KINDS : named);
  }
});

test("the words that thou.ohm opens clauses and names kinds with are those of the tables", () => {
  /** The words of a rule that is a choice of words, on as many lines as it takes. */
  const wordsOf = (rule: string): readonly string[] => {
    const [, text = ""] =
      new RegExp(`^  ${rule} =(.*(?:\\n    \\|.*)*)`, "m").exec(source) ?? [];
    return [...text.matchAll(/word<"([^"]+)">/g)].map(([, word]) => word ?? "");
  };
  expect(wordsOf("clauseWord")).toEqual(CLAUSE_WORDS);
  expect(wordsOf("kindWord")).toEqual(ENTRY_KINDS);
});

describe("the page of words", () => {
  const page = readFileSync(
    path.join(import.meta.dirname, "../../docs/words.md"),
    "utf8",
  );
  /** What stands under an entry's heading, up to the next. */
  const under = (kind: string): string =>
    page.split(`\n## ${kind}\n`)[1]?.split("\n## ")[0] ?? "";

  test.each(ENTRIES)("says of $kind what hover and completion say", (entry) => {
    const cell = (text: string): string => text.replaceAll("|", String.raw`\|`);
    const [head = "", ...rows] = under(entry.kind)
      .split("\n")
      .filter((line) => /^[`|] ?`?/.test(line) && !/^\|(?: fact|-)/.test(line));
    expect(head).toBe(`\`${entry.form}\`. ${entry.means}`);
    expect(rows).toEqual(
      entry.facts.map(
        ({ form, many, means }) =>
          `| \`${cell(form)}\`${many ? " *" : ""} | ${cell(means)} |`,
      ),
    );
  });
});

describe("names", () => {
  test.each(CLAUSE_WORDS)(
    "%s can't be one, since it opens a clause",
    (word) => {
      expect(parseAfresh(`part ${word}`, "PartEntry").damagedAt).toBeDefined();
    },
  );
  test.each(ENTRY_KINDS)("%s can be one, though it is a kind", (word) => {
    expect(parseAfresh(`part ${word}`, "PartEntry").damagedAt).toBeUndefined();
  });
});

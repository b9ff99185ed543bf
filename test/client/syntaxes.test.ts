// The TextMate grammar: that the file is the one its generator makes, and that it colours a line as thou.ohm reads it. Its
// example lines are those of thou.ohm itself, so that a new fact is tested without an edit here.
import fc from "fast-check";
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { tmLanguage } from "../../client/syntaxes/generate.ts";
import { parseAfresh } from "../../grammar/by-ohm.ts";
import { startOfComment, tokenize } from "../../grammar/tokens.ts";
import { nodesIn } from "../../grammar/tree.ts";
import {
  CLAUSE_WORDS,
  ENTRIES,
  ENTRY_KINDS,
} from "../../grammar/vocabulary.ts";
import { exampleLines } from "./example-lines.ts";
import { tokenise, type Coloured, type Grammar } from "./tokenise.ts";

const grammar = JSON.parse(tmLanguage()) as Grammar; // our own generator's, whose every line would fail below if it were not

const scopes = (line: string): Record<string, string> =>
  Object.fromEntries(
    tokenise(grammar, line).map(({ text, scope }) => [
      text,
      scope.replace(/\.thou$/, ""),
    ]),
  );

const examples = exampleLines();

/** What each leaf of a parsed line is coloured as. */
const scopeOfLeaf: Readonly<Record<string, RegExp>> = {
  number: /^constant\.numeric\.thou$/,
  decimal: /^constant\.numeric\.thou$/,
  count: /^constant\.numeric\.thou$/,
  unitShape: /^keyword\.other\.unit\./,
  class: /^variable\.other\.enummember\.class\./,
  date: /^constant\.numeric\.date\./,
  text: /^string\./,
  kindWord: /^support\.type\.kind\./,
  name: /^(?:entity\.name\.function\.declaration|variable\.other\.name)\./,
  nameShape: /^variable\.other\.name\./,
  body: /^variable\.other\.name\./,
  cutBody: /^variable\.other\.name\./,
  place: /^variable\.other\.name\./,
  member: /^variable\.other\.name\./,
  caution: /^variable\.other\.name\./,
  code: /^variable\.other\.name\./,
  ...Object.fromEntries(
    [
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
      ],
      ...["outcome", "drive", "toolMaterial", "hand", "parameter"],
    ].map((leaf) => [leaf, /^variable\.other\.enummember\./]),
  ),
};

describe("the TextMate grammar", () => {
  it("in the folder is the one that its generator makes", () => {
    expect(readFileSync("client/syntaxes/thou.tmLanguage.json", "utf8")).toBe(
      tmLanguage(),
    );
  });

  it("has examples to be tested on, one at least for each entry and fact", () => {
    const rules = new Set(examples.map(({ rule }) => rule));
    const wanted = ENTRIES.flatMap((entry) => [
      entry.rule,
      ...entry.facts.map((fact) => fact.rule),
    ]);
    expect(wanted.filter((rule) => !rules.has(rule))).toEqual([]);
  });

  it.each(examples)(
    "colours each part of a line as thou.ohm reads it: $body",
    ({ rule, body }) => {
      const indent = rule.endsWith("Entry") ? "" : "  ";
      const coloured = tokenise(grammar, indent + body);
      const scopeAt = (start: number, end: number): string | undefined =>
        coloured.find(
          (piece) =>
            // a deviation's sign is a part of its own in thou.ohm, and one with its number here
            piece.start + piece.text.length === indent.length + end &&
            piece.text.replace(/^[+-](?=\d)/, "") ===
              body.slice(start, end).replace(/^[+-](?=\d)/, ""),
        )?.scope;
      const first = /^[\w-]+/.exec(body)?.[0] ?? "";
      expect(scopeAt(0, first.length)).toMatch(
        indent === ""
          ? /^keyword\.control\.entry\./
          : /^keyword\.other\.fact\./,
      );
      const { tree, damagedAt } = parseAfresh(body, rule);
      expect(damagedAt).toBeUndefined();
      for (const { type, start, end } of nodesIn(tree)) {
        // who signs is a text, in quotes or not
        const signs = type === "name" && /\bby $/.test(body.slice(0, start));
        const scope = scopeOfLeaf[signs ? "text" : type];
        if (scope !== undefined && start !== 0)
          expect(
            scopeAt(start, end),
            `${type} ${body.slice(start, end)}`,
          ).toMatch(scope);
      }
      // and nothing that is written stays without a colour
      expect(without(indent + body, coloured)).toMatch(/^[\s/]*$/);
    },
  );

  it("colours every entry in column 1 with the name that it declares, whatever the name is", () => {
    for (const kind of ENTRY_KINDS) {
      expect(
        tokenise(grammar, `${kind} fit-7`).map(({ text, scope }) => [
          text,
          scope,
        ]),
      ).toEqual([
        [kind, "keyword.control.entry.thou"],
        ["fit-7", "entity.name.function.declaration.thou"],
      ]);
    }
    expect(scopes("bore line in bush oil")).toEqual({
      bore: "keyword.control.entry",
      line: "entity.name.function.declaration",
      in: "keyword.operator.clause",
      bush: "support.type.kind",
      oil: "variable.other.name",
    });
  });

  it("leaves a misspelt first word plain, and colours what follows", () => {
    expect(scopes("  wnat 0.8 to 1.6 thou")).toEqual({
      "0.8": "constant.numeric",
      to: "keyword.operator.clause",
      "1.6": "constant.numeric",
      thou: "keyword.other.unit",
    });
    expect(scopes("  wants 1")).toEqual({ "1": "constant.numeric" });
    expect(scopes("fits front")).toEqual({});
  });

  it("takes a word after a number for its unit, but no word of a clause", () => {
    for (const clause of CLAUSE_WORDS.filter(
      (word) => word !== "in" && word !== "per",
    )) {
      expect(scopes(`  read near 0.8743 ${clause} x`)[clause]).toBe(
        "keyword.operator.clause",
      );
    }
    expect(scopes("  limits 0.875 in RC4").in).toBe("keyword.other.unit");
    expect(scopes('  limits 12" to 13"')['"']).toBe("keyword.other.unit");
  });

  it("ends texts and begins comments where the language does", () => {
    const piece = fc.constantFrom(
      '"',
      " ",
      "\u{A0}",
      "#",
      ",",
      "a",
      "12",
      "x",
      '" ',
      ' "',
      " #",
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 14 }), (pieces) => {
        const body = `note ${pieces.join("")}`;
        const line = `  ${body}`;
        const coloured = tokenise(grammar, line);
        const comment = coloured.find(({ scope }) =>
          scope.startsWith("comment"),
        );
        const begins = startOfComment(body);
        expect(comment?.start ?? line.length).toBe(2 + begins);
        const texts = tokenize(body.slice(0, begins)).filter(
          ({ kind }) => kind === "text",
        );
        for (const { start, end } of texts) {
          expect(coloured).toContainEqual({
            text: body.slice(start, end),
            start: 2 + start,
            scope: "string.quoted.double.thou",
          });
        }
        // beyond those only a text that nobody closed, up to the comment or the line's end
        const strings = coloured.filter(({ scope }) =>
          scope.startsWith("string"),
        );
        const [open, ...others] = strings.slice(texts.length);
        expect(others).toEqual([]);
        if (open !== undefined)
          expect(line.slice(open.start + open.text.length, 2 + begins)).toMatch(
            /^[ \u00A0]?$/,
          );
      }),
      { numRuns: 2000 },
    );
  });
});

/** What is left of a line when the coloured pieces are taken out. */
function without(line: string, coloured: readonly Coloured[]): string {
  let left = "";
  let at = 0;
  for (const { start, text } of coloured) {
    left += line.slice(at, start);
    at = start + text.length;
  }
  return left + line.slice(at);
}

// What the editor is told of words and of Enter: the regular expressions, run as the editor runs them. That the editor does run
// them so is for the tests in the real editor.
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { parseAfresh } from "../../grammar/by-ohm.ts";
import { nodesIn } from "../../grammar/tree.ts";
import { ENTRY_KINDS } from "../../grammar/vocabulary.ts";
import { exampleLines } from "./example-lines.ts";

interface Configuration {
  readonly wordPattern: { readonly pattern: string; readonly flags: string };
  readonly onEnterRules: readonly {
    readonly beforeText:
      string | { readonly pattern: string; readonly flags: string };
    readonly afterText: string;
    readonly action: { readonly indent: string };
  }[];
}

const configuration = JSON.parse(
  readFileSync("client/language-configuration.json", "utf8").replace(
    /^\s*\/\/.*$/gm,
    "",
  ),
) as Configuration; // a missing member fails the first test that reads it

function words(text: string): readonly string[] {
  const { pattern, flags } = configuration.wordPattern;
  return [...text.matchAll(new RegExp(pattern, `g${flags}`))].map(
    ([word]) => word,
  );
}

/** What Enter does at the bar: "none" keeps the indent. */
function onEnter(line: string): string {
  const [before = "", after = ""] = line.split("|");
  const rule = configuration.onEnterRules.find(
    ({ beforeText, afterText }) =>
      (typeof beforeText === "string"
        ? new RegExp(beforeText)
        : new RegExp(beforeText.pattern, beforeText.flags)
      ).test(before) && new RegExp(afterText).test(after),
  );
  return rule?.action.indent ?? "none";
}

describe("a word", () => {
  const oneWord = new Set([
    "name",
    "nameShape",
    "kindWord",
    "class",
    "date",
    "decimal",
    "code",
    "unitShape",
  ]);

  it.each(exampleLines())(
    "is each name, number, date, class and unit of $body",
    ({ rule, body }) => {
      const found = words(body);
      for (const { type, start, end } of nodesIn(
        parseAfresh(body, rule).tree,
      )) {
        const leaf = body.slice(start, end).replace(/^[+-]/, "");
        if (oneWord.has(type) && !/["\s]/.test(leaf))
          expect(found).toContain(leaf);
      }
    },
  );

  it("stays one word while it is typed", () => {
    for (const typed of ["service-", "bronze-c", "um/", "um/m-K", "r-8"])
      expect(words(`  x ${typed}`)).toEqual(["x", typed]);
  });

  it("is not a deviation with the next one, nor a text's full stop", () => {
    expect(words("limits 0.8745 +0.01/-0.00")).toEqual([
      "limits",
      "0.8745",
      "0.01",
      "0.00",
    ]);
    expect(words('note "dressed the face. Then 12" long."')).toEqual([
      "note",
      "dressed",
      "the",
      "face",
      "Then",
      "12",
      "long",
    ]);
  });
});

describe("Enter", () => {
  it("indents after an entry, with or without a comment", () => {
    for (const kind of ENTRY_KINDS)
      expect(onEnter(`${kind} front|`)).toBe("indent");
    expect(onEnter("fit front of front in front # as drawn|  ")).toBe("indent");
  });

  it("keeps the indent after a fact, a comment and an empty line", () => {
    expect(onEnter("  want 0.8 to 1.6 thou|")).toBe("none");
    expect(onEnter("  # remark|")).toBe("none");
    expect(onEnter("# remark|")).toBe("none");
    expect(onEnter("|")).toBe("none");
    expect(onEnter("|fit front of front in front")).toBe("none");
  });

  it("leaves the entry on a line still empty", () => {
    expect(onEnter("  |")).toBe("outdent");
    expect(onEnter("\t|  ")).toBe("outdent");
  });
});

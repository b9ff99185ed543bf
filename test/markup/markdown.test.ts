// What a record's text becomes in Markdown, as another program renders it: markdown-it, with HTML and links on, which is the most that an
// editor would do. The text must come out as it went in, and nothing else.
import { createRequire } from "node:module";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  code,
  escaped,
  list,
  sentence,
  table,
} from "../../server/markup/markdown.ts";
import { hoverAt } from "../../server/ide/hover.ts";
import { atCaret } from "../ide/caret.ts";

interface Renderer {
  render(markdown: string): string;
}

// markdown-it has no types of its own, and it is here only with the packer of the extension
const MarkdownIt = createRequire(import.meta.url)(
  "markdown-it",
) as new (options: {
  readonly html: boolean;
  readonly linkify: boolean;
}) => Renderer;
const renderer = new MarkdownIt({ html: true, linkify: true });

const render = (markdown: string): string => renderer.render(markdown).trim();

/** The text that a page shows, tags taken off. */
function shown(html: string): string {
  return html
    .replaceAll(/<[^>]*>/g, "")
    .replaceAll("&lt;", "<")
    .replaceAll("&gt;", ">")
    .replaceAll("&quot;", '"')
    .replaceAll("&amp;", "&");
}

function tags(html: string): readonly string[] {
  return [...html.matchAll(/<\/?([a-z0-9]+)/gi)].map(([, tag = ""]) => tag);
}

const NASTY = [
  "<img src=x onerror=alert(1)>",
  "<script>alert(1)</script>",
  "[press here](command:workbench.action.quit)",
  "![x](https://example.invalid/x.png)",
  "https://example.invalid/ www.example.invalid a@example.invalid mailto:a@example.invalid",
  "`code` ``more`` ``` three",
  "a | b | c",
  "*b* _i_ __B__ ~~s~~ \\* \\\\",
  "&lt;b&gt; &amp; &#60;b&#62;",
  "# head",
  "- item",
  "+ item",
  "1. item",
  "2) item",
  "> quote",
  "    indented",
  "---",
  "===",
  "| a | b |",
  "[ref]: https://example.invalid",
  "$(alert) ${x} $x^2$",
  "line\u{2028}break\u{85}and\u{b}more",
  "<!-- gone -->",
  "right\u{202E}tfel",
];

const pieces = fc.oneof(
  fc.constantFrom(...NASTY),
  fc.string({ unit: "grapheme", maxLength: 12 }),
  fc.string({
    unit: fc.constantFrom(
      ...Array.from("\\`*_{}[]<>()#+-.!|&~$:@\"'=^%/ \t1a.w"),
    ),
    maxLength: 30,
  }),
);
const texts = fc.array(pieces, { maxLength: 5 }).map((parts) => parts.join(""));

/** What is meant to come out: one line, without signs that can't be seen. */
function meant(text: string): string {
  return text
    .replaceAll(
      /[\u{202A}-\u{202E}\u{2066}-\u{2069}\u{200E}\u{200F}\u{FEFF}]/gu,
      "",
    )
    .replaceAll(/[\p{Cc}\s]+/gu, " ")
    .trim();
}

describe("a text comes out as it went in", () => {
  const usable = texts.filter(
    (text) => meant(text) !== "" && meant(text).length <= 400,
  );

  test("alone, after words, in a list and in a table", () => {
    fc.assert(
      fc.property(usable, (text) => {
        const alone = render(escaped(text));
        expect(new Set(tags(alone))).toEqual(new Set(["p"]));
        expect(shown(alone)).toBe(meant(text));
        const inList = render(list([escaped(text)]));
        expect(new Set(tags(inList))).toEqual(new Set(["ul", "li"]));
        expect(shown(inList).trim()).toBe(meant(text));
        const inTable = render(table(["a", "b"], [[escaped(text), "x"]]));
        expect(tags(inTable)).toEqual(
          tags(render(table(["a", "b"], [["y", "x"]]))),
        );
        expect(shown(/<td[^>]*>([^]*?)<\/td>/.exec(inTable)?.[1] ?? "")).toBe(
          meant(text),
        );
      }),
      { numRuns: 400 },
    );
  });

  test.each(NASTY)("%s", (text) => {
    const html = render(`Before ${escaped(text)} after`);
    expect(tags(html)).toEqual(["p", "p"]);
    expect(shown(html)).toBe(`Before ${meant(text)} after`);
  });

  test("a long one is cut, and never in the middle of a sign", () => {
    const html = shown(render(escaped("\u{1F529}".repeat(1000))));
    expect(html.length).toBeLessThan(420);
    expect(html).not.toMatch(/\p{Surrogate}/u);
  });

  test("a sentence has its words set off, and obeys them no more than any text", () => {
    expect(
      render(sentence("a fit has no `wnat`: write `want`, or *none*")),
    ).toBe(
      "<p>a fit has no <code>wnat</code>: write <code>want</code>, or *none*</p>",
    );
    // an upright stroke would end a cell
    expect(
      tags(render(table(["a", "b"], [[sentence("no `x|y` here"), "z"]]))),
    ).toEqual(tags(render(table(["a", "b"], [["y", "z"]]))));
    fc.assert(
      fc.property(usable, (text) => {
        for (const tag of tags(render(`Before ${sentence(text)} after`)))
          expect(["p", "code"]).toContain(tag);
        if (text.includes("`")) return;
        expect(sentence(text)).toBe(escaped(text));
      }),
      { numRuns: 400 },
    );
  });

  test("code holds what it is given", () => {
    expect(render(code("units inch|mm"))).toBe(
      "<p><code>units inch|mm</code></p>",
    );
    expect(tags(render(code("a ` <b> `` c")))).toEqual([
      "p",
      "code",
      "code",
      "p",
    ]);
  });
});

describe("the hover of a record that is written to do harm", () => {
  const RECORDS: readonly ((text: string) => string)[] = [
    (text) => `jo|b j\n  title "${text}"\n`,
    (text) => `part| a\n  serial "${text}"\n  note "${text}"\n`,
    (text) => `st|ep s\n  do "${text}"\n`,
    (text) => `journal |a on b\n  limits 1 to 2 from "${text}"\n`,
    (text) => `gau|ge g\n  note "${text}"\n`,
    (text) => `concess|ion c\n  why "${text}" by "${text}"\n`,
    (text) => `job j\n  use "|${text}"\n`,
    (text) => `part a\n  material |${text}\n`,
    (text) => `fit a of |${text} in b\n`,
  ];

  test("shows no link, picture or tag, whatever a text or a name holds", () => {
    fc.assert(
      fc.property(fc.constantFrom(...RECORDS), texts, (record, text) => {
        const clean = text.replaceAll(/[\r\n|]/g, " ");
        const { open, position } = atCaret(record(clean));
        const html = render(hoverAt(open, position)?.markdown ?? "");
        expect(html).not.toMatch(
          /<(?!\/?(?:p|strong|em|ul|li|table|thead|tbody|tr|th|td|code|br)\b)/,
        );
        // a cell says on which side its text begins, and nothing else has an attribute
        expect(
          html.replaceAll(/(?<=<t[hd]) style="text-align:left"(?=>)/g, ""),
        ).not.toMatch(/<\w+\s/);
      }),
      { numRuns: 300 },
    );
  });
});

test("headings of a table stand over the beginning of their columns, with room before the next", () => {
  const html = render(table(["a", "b"], [["1", "2"]]));
  expect(html).toContain(
    '<th style="text-align:left">a\u00A0\u00A0\u00A0</th>',
  );
  expect(html).toContain('<th style="text-align:left">b</th>');
});

// The builder of pages: whatever text goes in comes out of a parser as the same text, and as nothing else.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { cssText, el, page, row } from "../../server/markup/html.ts";
import { styleOf } from "../../server/sheet/style.ts";
import { attribute, readPage } from "../sheet/read-page.ts";

const HOSTILE = [
  "<script>alert(1)</script>",
  '" onload="alert(1)',
  "' onload='alert(1)",
  "</title><img src=x onerror=alert(1)>",
  "</style><script>alert(1)</script>",
  "<!-- ",
  "]]>",
  "&lt;b&gt; &amp; &#x41;",
  "a\u{0}b\u{1B}[31m",
  "lone \u{D800} half",
  "\u{202E}txet",
];

function pageWith(text: string): string {
  return page({
    title: text,
    generator: text,
    style: styleOf(text, text),
    body: [el("p", { title: text }, text), el("p", {}, row(text, 1))],
  });
}

/** The signs that no page may hold stand as one sign that says so. */
function asShown(text: string): string {
  return text.replace(/[\p{Cc}\u{D800}\u{202E}]/gu, "\u{FFFD}");
}

describe("hostile text", () => {
  test.each(HOSTILE)("%j is text and nothing more", (text) => {
    const read = readPage(pageWith(text));
    expect(read.errors).toEqual([]);
    expect(read.elements.map((each) => each.tagName)).toEqual([
      "html",
      "head",
      "meta",
      "meta",
      "meta",
      "meta",
      "title",
      "style",
      "body",
      "p",
      "p",
    ]);
    const [paragraph] = read.elements.filter(({ tagName }) => tagName === "p");
    expect(paragraph?.attrs).toEqual([{ name: "title", value: asShown(text) }]);
    expect(read.text).toContain(asShown(text).replace(/\s+/g, " ").trim());
  });
});

test("any text at all makes a page without an error, and with no element more", () => {
  fc.assert(
    fc.property(fc.string({ unit: "binary" }), (text) => {
      const read = readPage(pageWith(text));
      expect(read.errors).toEqual([]);
      expect(read.elements.length).toBe(11);
    }),
    { numRuns: 200 },
  );
});

test("plain text, accents and other scripts come through as they are", () => {
  const text = "Bœuf & Söhne, Ø 25 ± 0,01 µm — 船 👍🏽 نص";
  const [paragraph] = readPage(pageWith(text)).elements.filter(
    ({ tagName }) => tagName === "p",
  );
  expect(paragraph === undefined ? "" : attribute(paragraph, "title")).toBe(
    text,
  );
});

// Content Security Policy Level 3: a directive of an element `meta` holds from there on, so that it stands before anything else
test("a page fetches nothing and runs nothing, by a policy that stands before all that a record has a part in", () => {
  const { elements } = readPage(pageWith("x"));
  const at = elements.findIndex(
    (each) => attribute(each, "http-equiv") === "Content-Security-Policy",
  );
  const policy = elements[at];
  expect(policy === undefined ? "" : attribute(policy, "content")).toBe(
    "default-src 'none'; style-src 'unsafe-inline'",
  );
  expect(elements.slice(0, at).map((each) => each.tagName)).toEqual([
    "html",
    "head",
    "meta",
    "meta",
  ]);
});

// CSS Syntax Level 3, 4.3.7: a backslash and one to six hex digits stand for that code point; six digits need no blank after them
test("a text in a style is a string of code points", () => {
  expect(cssText('a"\\\n</style>')).toBe(
    '"a\\000022\\00005c\\00000a\\00003c\\00002fstyle\\00003e"',
  );
});

test("nothing, null and undefined leave nothing; an attribute without a value is left off", () => {
  expect(
    el("p", { id: undefined, class: "" }, undefined, null, "", []),
  ).toEqual({ markup: '<p class=""></p>' });
  expect(el("br").markup).toBe("<br>");
});

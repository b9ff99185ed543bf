// Our pages within the editor: what their policies let in, read as Content Security Policy Level 3 has it (2.2, a serialized policy), and that
// every page there has one.
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { expect, test } from "vitest";
import { nonceOf, withScript, withStyle } from "../../client/policy.ts";
import { attribute, readPage } from "../sheet/read-page.ts";

function directivesOf(meta: string): Readonly<Record<string, string>> {
  const { elements } = readPage(
    `<!DOCTYPE html><html><head>${meta}<title>x</title></head></html>`,
  );
  const element = elements.find(({ tagName }) => tagName === "meta");
  expect(element && attribute(element, "http-equiv")).toBe(
    "Content-Security-Policy",
  );
  return Object.fromEntries(
    ((element && attribute(element, "content")) ?? "")
      .split(";")
      .map((each) => each.trim())
      .map((each) => [
        each.slice(0, each.indexOf(" ")),
        each.slice(each.indexOf(" ") + 1),
      ]),
  );
}

test("a page with a script runs the one of its nonce, and fetches nothing but the editor's copies of our styles", () => {
  expect(directivesOf(withScript("abc", "https://editor.invalid"))).toEqual({
    "default-src": "'none'",
    "style-src": "https://editor.invalid",
    "script-src": "'nonce-abc'",
  });
});

test("a page without one runs nothing", () => {
  expect(directivesOf(withStyle("abc"))).toEqual({
    "default-src": "'none'",
    "style-src": "'nonce-abc'",
  });
});

test("a nonce is never the same, and long enough not to be guessed", () => {
  const many = Array.from({ length: 100 }, nonceOf);
  expect(new Set(many).size).toBe(many.length);
  // 128 bits, as the standard asks for (7.1, nonce reuse)
  for (const each of many) expect(each).toMatch(/^[0-9a-f]{32}$/u);
});

test("every file of the client that writes a page writes a policy into it", () => {
  const folder = path.join(import.meta.dirname, "..", "..", "client");
  const pages = readdirSync(folder)
    .filter((name) => name.endsWith(".ts"))
    .map((name) => readFileSync(path.join(folder, name), "utf8"))
    .filter((text) => text.includes("<!DOCTYPE html>"));
  expect(pages.length).toBeGreaterThan(1);
  for (const text of pages)
    expect(text).toMatch(/<meta charset="UTF-8">\n\$\{with(?:Script|Style)\(/u);
});

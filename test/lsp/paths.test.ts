// One file has one path, in whatever way an editor writes its address.
import { pathToFileURL } from "node:url";
import { expect, test } from "vitest";
import { folderOf, isIn, parentOf, pathOf } from "../../server/lsp/paths.ts";

test.each([
  ["file:///c%3A/shop/a.thou", "file:///C:/shop/a.thou"],
  ["file:///c%3a/shop/a.thou", "file:///c%3A/shop/a.thou"],
  ["file:///a/crib%20%28old%29.thou", "file:///a/crib%20(old).thou"],
  ["file:///a/b%26c.thou", "file:///a/b&c.thou"],
  ["file:///a/n%C3%A9.thou", "file:///a/né.thou"],
  ["file:///a/100%.thou", "file:///a/100%25.thou"],
  ["FILE:///a/b.thou", "file:///a/b.thou"],
  ["vscode-vfs://github/o/r/a.thou?x=1", "vscode-vfs://github/o/r/a.thou"],
])("%s is %s", (a, b) => {
  expect(pathOf(a)).toBe(pathOf(b));
});

test("names that differ stay apart", () => {
  const all = [
    "a.thou",
    "A.thou",
    "a%2Fb.thou",
    "a/b.thou",
    "a%20b.thou",
    "a+b.thou",
  ];
  expect(new Set(all.map((name) => pathOf(`file:///x/${name}`))).size).toBe(
    all.length,
  );
});

test("what Node makes of a path and what an editor makes of it are one", () => {
  for (const path of [
    "/shop/a b.thou",
    "/shop/ä#1.thou",
    "/shop/50%.thou",
    "/shop/[x] (y)!.thou",
  ])
    expect(pathOf(pathToFileURL(path).href)).toBe(
      pathOf(`file://${path.split("/").map(encodeURIComponent).join("/")}`),
    );
});

test("folders", () => {
  expect(folderOf("file:///a/b/")).toBe("file:///a/b");
  expect(parentOf("file:///a/b/c.thou")).toBe("file:///a/b");
  expect(isIn("file:///a/b/c.thou", "file:///a/b")).toBe(true);
  expect(isIn("file:///a/bc.thou", "file:///a/b")).toBe(false);
});

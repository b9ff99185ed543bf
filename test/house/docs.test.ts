// What the pages for people say of the project's files and commands is true.
import { existsSync, readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, test } from "vitest";
import manifest from "../../package.json" with { type: "json" };

const root = path.join(import.meta.dirname, "..", "..");
const PAGES = [
  "README.md",
  "DEVELOPERS.md",
  "docs/language.md",
  "docs/review.md",
  "docs/archive.md",
  "docs/security.md",
  ...readdirSync(path.join(root, "docs/guide")).map(
    (file) => `docs/guide/${file}`,
  ),
];

function read(page: string): string {
  return readFileSync(path.join(root, page), "utf8");
}

describe.each(PAGES)("%s", (page) => {
  const text = read(page);

  test("names only files that are there", () => {
    const named = [
      ...text.matchAll(
        /`((?:grammar|server|client|samples|test|docs|\.config|\.ci)\/[\w./*-]*)`/g,
      ),
    ].map((match) => match[1] ?? "");
    const missing = named
      // a pattern names its folder
      .map((file) => file.replace(/\/?[^/]*\*.*$/, ""))
      // capitals stand for what is filled in
      .filter(
        (file) => !/[A-Z]{3,}/.test(file.replace(/README|DEVELOPERS/g, "")),
      )
      .filter((file) => !existsSync(path.join(root, file)));
    expect(missing).toEqual([]);
  });

  test("links only to files that are there", () => {
    const links = [...text.matchAll(/\]\(([^)#:]+)(?:#[^)]*)?\)/g)].map(
      (match) => match[1] ?? "",
    );
    const missing = links.filter(
      (link) => !existsSync(path.join(root, path.dirname(page), link)),
    );
    expect(missing).toEqual([]);
  });

  test("names only scripts that are there", () => {
    const scripts = [...text.matchAll(/npm run ([\w:]+)/g)].map(
      (match) => match[1] ?? "",
    );
    expect(scripts.filter((script) => !(script in manifest.scripts))).toEqual(
      [],
    );
  });
});

test("the top level holds what it may and nothing else", () => {
  const allowed = new Set([
    ...["client", "server", "grammar", "samples", "test", "docs"],
    ...["package.json", "package-lock.json", "tsconfig.json"],
    ...["README.md", "DEVELOPERS.md", "LICENSE", "CHANGELOG.md"],
    ...["node_modules", "dist"],
  ]);
  const there = readdirSync(root).filter(
    // a package that somebody has made lies there until it is used; git keeps none
    (name) =>
      !name.startsWith(".") &&
      !allowed.has(name) &&
      !/\.(?:tgz|vsix)$/u.test(name),
  );
  expect(there).toEqual([]);
});

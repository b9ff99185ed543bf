// Each key of what a command gives as JSON stands in the paragraph of docs/language.md that tells of that command's.
import { readFileSync } from "node:fs";
import path from "node:path";
import { expect, test } from "vitest";
import { createProject } from "../../server/rules/check.ts";
import { folderWith, thou } from "../cli/in-process.ts";
import { shopHistory } from "../history/shop-history.ts";

const page = readFileSync(
  path.join(import.meta.dirname, "../../docs/language.md"),
  "utf8",
);
const paragraphs = page.split("\n\n");

/** The words that stand marked in what tells of a command, in the paragraphs that begin so. */
function told(...beginnings: readonly string[]): ReadonlySet<string> {
  return new Set(
    beginnings
      .map((each) => paragraphs.filter((text) => text.startsWith(each)))
      .flatMap((found) => {
        expect(found).toHaveLength(1);
        return found;
      })
      .flatMap((text) => text.match(/`[^`]*`/gu) ?? [])
      .flatMap((marked) => marked.match(/[A-Za-z]\w*/gu) ?? []),
  );
}

function keysOf(value: unknown): readonly string[] {
  if (typeof value !== "object" || value === null) return [];
  return Array.isArray(value)
    ? value.flatMap(keysOf)
    : Object.entries(value).flatMap(([key, each]) => [key, ...keysOf(each)]);
}

const history = shopHistory(47, { records: 24 });
const before = Object.fromEntries(
  [
    ...[...history.cribs].map(({ path: at, text }) => [at, text] as const),
    ...[...history.records].map(
      ({ path: at, versions }) => [at, versions.at(-1)?.text ?? ""] as const,
    ),
  ].flatMap(([at, text]) => [
    [`now/${at}`, text.replaceAll(/^( {2}read .*\d)(?= )/gmu, "$19")],
    [`then/${at}`, text],
  ]),
);

test.each([
  [
    ["check", "then"],
    ["`thou check", "A result has", "A finding has"],
  ],
  [["trend", "then"], ["`thou trend"]],
  [["learn", "then"], ["`thou learn … --format"]],
  [
    ["limits", "25 H7", "0.875 in RC4", "24.98 in 25.01", "none"],
    ["`thou limits"],
  ],
  [["compare", "then", "now"], ["`thou compare"]],
])(
  "%j",
  async (words, beginnings) => {
    const { out } = await thou([...words, "--format", "json"], {
      cwd: await folderWith(before),
      parts: { createProject: () => createProject({ root: "" }) },
    });
    const keys = new Set(keysOf(JSON.parse(out)));
    const known = told(...beginnings);
    expect(3).toBeLessThan(keys.size);
    expect([...keys].filter((key) => !known.has(key))).toEqual([]);
  },
  60_000,
);

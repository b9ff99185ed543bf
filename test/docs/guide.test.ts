// Every page of the guide, and the README, says what is true now: `npm test -- -u` writes what was really said into a page; read the
// difference before it is committed.
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { expect, test } from "vitest";
import { agree, runPage } from "./guide-page.ts";

const root = path.join(import.meta.dirname, "..", "..");
const guide = readdirSync(path.join(root, "docs/guide"))
  .filter((file) => file.endsWith(".md"))
  .sort();
const PAGES = ["README.md", ...guide.map((file) => `docs/guide/${file}`)];

/** Pages that answer in words alone. */
const WITHOUT_SAMPLES = new Set([
  "docs/guide/README.md",
  "docs/guide/limits.md",
]);

test.each(PAGES)("%s", { timeout: 30_000 }, async (page) => {
  const file = path.join(root, page);
  const { text, count } = await runPage(readFileSync(file, "utf8"));
  await expect(text).toMatchFileSnapshot(file);
  expect(0 < count || WITHOUT_SAMPLES.has(page)).toBe(true);
});

test("the index leads to every page, and every page to the index", () => {
  const index = readFileSync(path.join(root, "docs/guide/README.md"), "utf8");
  for (const file of guide.filter((each) => each !== "README.md")) {
    expect(index).toContain(`](${file})`);
    expect(readFileSync(path.join(root, "docs/guide", file), "utf8")).toContain(
      "](README.md)",
    );
  }
});

test("a page that is stale, or that names what is not there, is told", async () => {
  const page = (said: string): string =>
    ["```console", '$ thou limits "25 H7"', said, "```"].join("\n");
  const { text } = await runPage(page("25 H7  hole  1 to 2 mm"));
  expect(text).not.toBe(page("25 H7  hole  1 to 2 mm"));
  expect((await runPage(text)).text).toBe(text);
  const record = ["```thou a.thou", "job a", "  unit mm", "```", ""];
  expect(
    (await runPage([...record, "Findings: none."].join("\n"))).text,
  ).toContain("Findings: `word-unknown`");
  await expect(
    runPage(["```diff winch.thou", "-  no such line", "```"].join("\n")),
  ).rejects.toThrow("0 times");
  await expect(
    runPage(["```sh", "thou check", "```"].join("\n")),
  ).rejects.toThrow("not run");
});

test("lines may be left out where a page says so, and nowhere else", () => {
  expect(agree(["a", "…", "d"], ["a", "b", "c", "d"])).toBe(true);
  expect(agree(["a", "d"], ["a", "b", "d"])).toBe(false);
  expect(agree(["…"], [])).toBe(false);
  expect(agree(["a", "…"], ["b", "c"])).toBe(false);
});

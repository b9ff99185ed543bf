// A hostile record through every command that writes what it says: whatever a terminal, a page, a table or a reader of Markdown would obey
// comes out as text. What is HTML is read by a parser, what is Markdown by a reader that takes HTML and makes links of addresses.
import { execFileSync } from "node:child_process";
import { createRequire } from "node:module";
import path from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { createProject } from "../../server/rules/check.ts";
import { readPage } from "../sheet/read-page.ts";
import { folderWith, thou } from "./in-process.ts";

// markdown-it has no types of its own
const MarkdownIt = createRequire(import.meta.url)(
  "markdown-it",
) as new (options: { readonly html: boolean; readonly linkify: boolean }) => {
  render(markdown: string): string;
};

const SCRIPT = "<script>alert(1)</script><img src=x onerror=alert(1)>";
const LINK = "[a](https://example.org) ![b](x) https://example.org `c` | d";
/** Escape, delete, a C1 control, one that turns the reading direction, a line separator. */
const CONTROLS = "\u{1b}[31m\u{7f}\u{9b}2J\u{202e}\u{2028}";
const BAD = `=1+1 ${SCRIPT} ${LINK} ${CONTROLS}`;

function record(size: string): string {
  return `job winch-9
  title "${BAD}"
  units inch
  use "${SCRIPT}.thou"
part shaft
  serial "${BAD}"
  note "${BAD}"
part case
journal one on shaft
  limits 0.8740 to 0.8742 from "${BAD}"
  read ${size}
bore one in case
  limits 0.8750 to 0.8755 from "${BAD}"
  read 0.8752
fit one of journal one in bore one
  want 0.0008 to 0.0012
step mark
  do "${BAD}"
  found failed "${BAD}"
concession one on fit one
  accept fit-loose up to 0.001 in
  why "${BAD}" by "${SCRIPT}" on 2026-11-02
${CONTROLS}limts ${SCRIPT}
`;
}

const RAW = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/u;
let cwd = "";
beforeAll(async () => {
  cwd = await folderWith({
    "old/job.thou": record("0.8741"),
    "new/job.thou": record("0.8735"),
  });
});

async function out(words: readonly string[]): Promise<string> {
  const { out: said, err } = await thou(words, {
    cwd,
    parts: { createProject: () => createProject({ root: cwd }) },
  });
  expect(err).not.toContain("\u{1b}");
  return said;
}

describe.each([
  ["check", "new"],
  ["check", "new", "--format", "json"],
  ["check", "new", "--format", "sarif"],
  ["compare", "old", "new"],
  ["compare", "old", "new", "--format", "markdown"],
  ["compare", "old", "new", "--format", "json"],
  ["sheet", "new/job.thou"],
  ["sheet", "new/job.thou", "--blank"],
])("%s %s %s %s %s", (...given) => {
  const words = given.filter((word) => typeof word === "string");
  test("has no sign that steers what shows it", async () => {
    const text = await out(words);
    expect(text.length).toBeGreaterThan(100);
    for (const line of text.split("\n"))
      expect(RAW.exec(line)?.[0].codePointAt(0), line).toBeUndefined();
  });
});

test("what is compared as Markdown has no element, link or picture of a record's", async () => {
  const text = await out(["compare", "old", "new", "--format", "markdown"]);
  expect(text).toContain("alert");
  const html = new MarkdownIt({ html: true, linkify: true }).render(text);
  const { elements } = readPage(
    `<!DOCTYPE html><html><head><title>x</title></head><body>${html}</body></html>`,
  );
  const tags = new Set(elements.map(({ tagName }) => tagName));
  for (const tag of ["script", "img", "a"]) expect(tags).not.toContain(tag);
});

test.each([[[]], [["--blank"]]])(
  "a sheet has no element of a record's %j",
  async (more) => {
    const { elements, errors } = readPage(
      await out(["sheet", "new/job.thou", ...more]),
    );
    expect(errors).toEqual([]);
    for (const { tagName, attrs } of elements) {
      expect(["script", "img", "a", "iframe", "object"]).not.toContain(tagName);
      for (const { name } of attrs) expect(name).not.toMatch(/^on/u);
    }
  },
);

test.skipIf(process.platform === "win32")(
  "a crib that is a pipe is none: nothing waits for who may write to it",
  { timeout: 20_000 },
  async () => {
    const folder = await folderWith({
      "job.thou": `job a\n  units mm\n  use "pipe.thou"\n`,
    });
    execFileSync("mkfifo", [path.join(folder, "pipe.thou")]);
    const { out: said } = await thou(["check", "job.thou"], {
      cwd: folder,
      parts: { createProject: () => createProject({ root: folder }) },
    });
    expect(said).toContain("file-missing");
  },
);

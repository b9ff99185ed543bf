// A hostile record through every command that writes what it says: whatever a terminal, a page, a table or a reader of Markdown would obey
// comes out as text. What is HTML is read by a parser, what is Markdown by a reader that takes HTML and makes links of addresses.
import { execFileSync } from "node:child_process";
import { createRequire } from "node:module";
import path from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { createProject } from "../../server/rules/check.ts";
import { all, readSvg, textOf } from "../pictures/read-svg.ts";
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
  service-limit 0.8700 to 0.8745
  read 0.8742 on 2021-06-01
  read ${size} on 2023-06-01
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

/** A file may have any name as well. */
const NAMED =
  process.platform === "win32"
    ? "other.thou"
    : `${SCRIPT.replaceAll("/", "")} ${CONTROLS}.thou`;

const RAW = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/u;
let cwd = "";
beforeAll(async () => {
  cwd = await folderWith({
    "old/job.thou": record("0.8741"),
    "new/job.thou": record("0.8735"),
    [`old/${NAMED}`]: record("0.8741"),
    [`new/${NAMED}`]: record("0.8735"),
  });
  await out(["export", "new", "--out", "archive"]);
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
  ["sheet", `new/${NAMED}`],
  ["trend", "new", "old"],
  ["trend", "new", "old", "--format", "json"],
  ["trend", "new", "old", "--format", "svg"],
  ["learn", "new", "old", "--format", "json"],
  ["limits", BAD, "25 H7"],
  ["limits", BAD, "25 H7", "--format", "json"],
  ["ask", "open-concessions"],
  ["ask", "open-concessions", "--format", "json"],
  ["ask", "open-concessions", "--format", "csv"],
  ["ask", "findings-by-month"],
])("%j %j %j %j %j %j", (...given) => {
  const words = given.filter((word) => typeof word === "string");
  test("has no sign that steers what shows it", async () => {
    const text = await out(words);
    expect(text.length).toBeGreaterThan(70);
    // lines of CSV end in both
    for (const line of text.split(/\r?\n/u))
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

test("a picture of a trend has no element of a record's, and says what the record does", async () => {
  const svg = readSvg(await out(["trend", "new", "old", "--format", "svg"]));
  for (const { name, attributes } of all(svg)) {
    expect(["script", "image", "a", "foreignObject", "style"]).not.toContain(
      name,
    );
    for (const each of Object.keys(attributes))
      expect(each).not.toMatch(/^on/u);
  }
  expect(textOf(svg)).toContain("alert");
});

test("no command fails on what it is told instead of saying why", async () => {
  for (const words of [
    ["explain", BAD],
    ["ask", BAD],
    ["ask", "closures", "--archive", BAD],
    ["trend", BAD],
    ["learn", "new", "old"],
    ["check", BAD],
    ["compare", "old", BAD],
    ["limits", "--format", BAD, "25 H7"],
    [BAD],
  ]) {
    const {
      out: said,
      err,
      code,
    } = await thou(words, {
      cwd,
      parts: { createProject: () => createProject({ root: cwd }) },
    });
    expect(code, words.join(" ")).toBe(words[0] === "learn" ? 0 : 2);
    for (const line of (said + err).split("\n"))
      expect(RAW.exec(line)?.[0].codePointAt(0), line).toBeUndefined();
  }
});

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

// What the fuzzer and other rough hands found, each in the least text that shows it.
import { expect, test } from "vitest";
import type { DocumentLink, Hover } from "vscode-languageserver";
import { readLines } from "../../grammar/lines.ts";
import { createProject } from "../../server/rules/check.ts";
import { folderWith, thou } from "../cli/in-process.ts";
import { serveHere } from "../lsp/in-process.ts";

function findingsOf(text: string) {
  const project = createProject({ root: "/" });
  project.setFile("/job.thou", readLines(text));
  for (const missing of project.missingUses("/job.thou"))
    project.setFile(missing, null);
  return project.check("/job.thou").findings;
}

test("a fact that stands twice in the second entry of a name points to its own entry", () => {
  const findings = findingsOf(
    "job a\n  units mm\npart x\npart x\n  serial 1\n  serial 2\n",
  );
  const twice = findings.find(({ code }) => code === "fact-twice");
  expect(twice?.place.line).toBe(5);
  expect(twice?.related.map(({ place }) => place.line)).toEqual([4]);
});

test("a file's opening that says a fact twice points to the first", () => {
  const findings = findingsOf("job\n  units mm\n  units inch\n");
  const twice = findings.find(({ code }) => code === "fact-twice");
  expect(twice?.related.map(({ place }) => place.line)).toEqual([1]);
});

test("a fact that loses its indent under an opening line that can't be read changes no other finding, typed or read afresh", () => {
  const job = (indent: string): string =>
    `job a\n  units mm\npart x\njournal rear on x|\n${indent}limits 20 to 20.1\nfit rear of journal rear in bore rear\n`;
  const codesOf = (project: ReturnType<typeof createProject>) =>
    project.check("/job.thou").findings.map(({ code }) => code);
  const typed = createProject({ root: "/" });
  typed.setFile("/job.thou", readLines(job("  ")));
  const before = codesOf(typed);
  typed.setFile("/job.thou", readLines(job("")));
  const after = codesOf(typed);
  expect(after.filter((code) => code !== "word-misplaced")).toEqual(before);
  expect(after).toEqual(findingsOf(job("")).map(({ code }) => code));
});

test("a sentence that is cut short is cut between characters, and is no longer than any may be", () => {
  // a letter outside of the first plane lies in two UTF-16 units: one of the two names puts the cut through it
  for (const before of ["", "x"]) {
    const name = `${before}${"\u{10400}".repeat(700)}`;
    const cut = findingsOf(
      `job a\n  units mm\npart p\n${`journal ${name} on p\n`.repeat(2)}`,
    ).find(({ code }) => code === "name-twice");
    expect(cut?.message).toMatch(/\u{10400}…$/u);
    expect(cut?.message).not.toMatch(/\p{Cs}/u);
    expect([999, 1000]).toContain(cut?.message.length);
  }
});

test("a used file with a very long way to it is told with both ends of that way, and the sentence goes on to its end", () => {
  const [missing] = findingsOf(
    `job a\n  units mm\n  use "deep/${"\u{1F529}/".repeat(500)}crib.thou"\n`,
  );
  expect(missing?.message).toMatch(
    /looked for at \/deep\/[\u{1F529}/]+…[\u{1F529}/]+crib\.thou: the names in it are not known until it is there\.$/u,
  );
  expect(missing?.message.length).toBeLessThan(600);
});

test("a comparison as JSON has no raw control, whatever a file is called", async () => {
  const name = "a\u{202e}b.thou";
  const cwd = await folderWith({
    [`old/${name}`]: "job a\n  units mm\n",
    [`new/${name}`]: "job a\n  units mm\npart x\n",
  });
  const { out } = await thou(["compare", "old", "new", "--format", "json"], {
    cwd,
    parts: { createProject: () => createProject({ root: "" }) },
  });
  expect(out.trimEnd()).not.toMatch(/[\p{Cc}\p{Cf}]/u);
  expect(JSON.stringify(JSON.parse(out))).toContain("\u{202e}");
});

test("an editor shows a message as it stands, so it has no marks of Markdown", async () => {
  const { editor } = serveHere();
  await editor.start(["file:///shop"]);
  const uri = "file:///shop/a.thou";
  await editor.open(uri, "job a\n  units mm\n  units inch\n");
  const findings = await editor.findings(uri);
  expect(findings.map(({ code }) => code)).toContain("fact-twice");
  for (const { message, relatedInformation = [] } of findings)
    for (const text of [
      message,
      ...relatedInformation.map((each) => each.message),
    ])
      expect(text).not.toContain("`");
  expect(findings.map(({ message }) => message)).toContainEqual(
    expect.stringContaining("‘units’"),
  );
});

test("half a character in what is used, or in the name of a file, fails no answer", async () => {
  const half = JSON.parse('"\\ud800"') as string; // a string of one UTF-16 unit
  const { editor } = serveHere();
  await editor.start(["file:///shop"]);
  for (const uri of [`untitled:${half}`, `file:///shop/${half}.thou`]) {
    await editor.open(uri, `job a\n  units mm\n  use "x${half}.thou"\n`);
    expect(await editor.codes(uri)).toContain("file-missing");
  }
});

test("what a second job of one name uses lies in that job", async () => {
  const job = (used: string, more = ""): string =>
    `job a\n${more}  use "${used}.thou"\n`;
  const shop = "shop s\n  units mm\nreamer r\n  size 10\n";
  const text = job("one", "  units mm\n") + job("two");
  const { editor } = serveHere(
    new Map([
      ["file:///shop/one.thou", shop],
      ["file:///shop/two.thou", shop],
    ]),
  );
  await editor.start(["file:///shop"]);
  const uri = "file:///shop/a.thou";
  await editor.open(uri, text);
  const links = await editor.request<readonly DocumentLink[]>(
    "textDocument/documentLink",
    { textDocument: { uri } },
  );
  const over = await editor.request<Hover | null>("textDocument/hover", {
    textDocument: { uri },
    position: { line: 4, character: 8 },
  });
  expect(JSON.stringify(over)).toMatch(/two\\+\.thou/u);
  expect(links.map(({ range, target }) => [range.start.line, target])).toEqual([
    [2, "file:///shop/one.thou"],
    [4, "file:///shop/two.thou"],
  ]);
  const shared = (await editor.findings(uri)).find(({ message }) =>
    JSON.stringify(message).includes("both have"),
  );
  expect(shared?.range.start.line).toBe(4);
});

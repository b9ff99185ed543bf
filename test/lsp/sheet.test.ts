// The sheets through the protocol: the page follows what is typed and not yet saved, and every question gets an answer. What stands on a
// sheet is tested with server/sheet.
import { expect, test } from "vitest";
import { nameBeside } from "../../server/lsp/sheet-answer.ts";
import { readPage } from "../sheet/read-page.ts";
import { rangeOf, type Editor } from "./editor.ts";
import { serveHere } from "./in-process.ts";
import { CRIB, JOB } from "./winch.ts";

const FOLDER = "file:///shop%20floor";
const URI = `${FOLDER}/winch.thou`;
const CRIB_URI = `${FOLDER}/crib.thou`;

async function shop() {
  const here = serveHere(new Map([[CRIB_URI, CRIB]]));
  await here.editor.start([FOLDER]);
  await here.editor.open(URI, JOB);
  return here.editor;
}

async function textOf(editor: Editor, params: unknown): Promise<string> {
  const answer = await editor.request<{ readonly html: string } | null>(
    "thou/sheet",
    params,
  );
  const { errors, text } = readPage(answer?.html ?? "");
  expect(errors).toEqual([]);
  return text;
}

test("the page is of the record as it stands in the editor, on the day that it is there", async () => {
  const editor = await shop();
  const before = await textOf(editor, { uri: URI, blank: false });
  expect(before).toContain("Job sheet");
  expect(before).toContain("2026-11-05, with thou");
  expect(before).toContain("Files read winch.thou, crib.thou");
  expect(before).not.toContain("0.87470");
  await editor.change(URI, {
    range: rangeOf(JOB, "0.87432 0.87428 0.87430"),
    text: "0.87470",
  });
  expect(await textOf(editor, { uri: URI, blank: false })).toContain("0.87470");
});

test("a blank one is a measuring sheet", async () => {
  const editor = await shop();
  const text = await textOf(editor, { uri: URI, blank: true });
  expect(text).toContain("Measuring sheet");
  expect(text).toContain("Journal front");
});

test("what the editor says of version control stands on it, of the files that were read", async () => {
  const editor = await shop();
  const at = (versioned: unknown): Promise<string> =>
    textOf(editor, { uri: URI, blank: false, versioned });
  expect(
    await at({
      revision: "0123456789ab",
      changed: [CRIB_URI, `${FOLDER}/other.thou`],
    }),
  ).toMatch(
    /revision 0123456789ab, with uncommitted changes in crib\.thou Sheet made/,
  );
  expect(await at({ revision: null, changed: [] })).toContain(
    "under version control, never committed",
  );
  for (const nonsense of [undefined, null, 7, {}, { changed: "all" }])
    expect(await at(nonsense)).toContain(
      "not known: the editor names no version control",
    );
});

test("a record that is not there is null, and so is whatever is no address", async () => {
  const editor = await shop();
  for (const uri of [`${FOLDER}/none.thou`, "", 7, null, {}])
    expect(await editor.request("thou/sheet", { uri })).toBeNull();
  expect(await editor.request("thou/sheet", null)).toBeNull();
});

test.each([
  ["file:///a/b/job.thou", "file:///a/b/job.thou", "job.thou"],
  ["file:///a/b/job.thou", "file:///a/b/c/crib.thou", "c/crib.thou"],
  ["file:///a/b/job.thou", "file:///a/my%20crib.thou", "../my crib.thou"],
  ["file:///a/b/job.thou", "file:///z/crib.thou", "file:///z/crib.thou"],
  ["untitled:Untitled-1", "untitled:Untitled-1", "untitled:Untitled-1"],
  ["file:///a/100%.thou", "file:///a/100%.thou", "100%.thou"],
])("beside %s, %s is called %s", (record, file, name) => {
  expect(nameBeside(record, file)).toBe(name);
});

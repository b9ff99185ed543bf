// No fault on the line being typed: it waits until another line is changed, or nothing was typed for a moment. Other lines don't wait.
import { expect, test } from "vitest";
import { STILL } from "../../server/lsp/stillness.ts";
import { FULL, rangeOf, type Editor } from "./editor.ts";
import { serveHere } from "./in-process.ts";
import { CRIB, JOB } from "./winch.ts";

const FOLDER = "file:///shop";
const URI = `${FOLDER}/winch.thou`;

async function shop(capabilities: object = FULL, settings: unknown = null) {
  const here = serveHere(new Map([[`${FOLDER}/crib.thou`, CRIB]]));
  here.editor.settings.thou = settings;
  await here.editor.start([FOLDER], capabilities);
  await here.editor.until(
    "asking for settings",
    () => 0 < here.editor.told.asked,
  );
  await here.editor.open(URI, JOB);
  return here;
}

/** Types a character in the word `want`. */
const misspell = (editor: Editor): Promise<void> => {
  const { start } = rangeOf(JOB, "ant 0.0008");
  return editor.change(URI, { range: { start, end: start }, text: "x" });
};
const typeElsewhere = (editor: Editor): Promise<void> => {
  const { start } = rangeOf(JOB, "ream\n");
  return editor.change(URI, { range: { start, end: start }, text: "x" });
};

test("a fault on the line being typed waits, and the editor is asked to ask again when it is still", async () => {
  const { editor, clock } = await shop();
  expect(await editor.codes(URI)).toEqual(["step-open"]);
  await misspell(editor);
  expect(await editor.codes(URI)).not.toContain("word-unknown");
  clock.pass(STILL - 1);
  expect(await editor.codes(URI)).not.toContain("word-unknown");
  expect(editor.told.refreshed).toEqual([]);
  clock.pass(1);
  await editor.until("asking again", () => 0 < editor.told.refreshed.length);
  expect(editor.told.refreshed).toEqual(["diagnostic"]);
  expect(await editor.codes(URI)).toContain("word-unknown");
});

test("each keystroke begins the moment anew", async () => {
  const { editor, clock } = await shop();
  await misspell(editor);
  await editor.codes(URI);
  clock.pass(STILL - 1);
  await misspell(editor);
  expect(await editor.codes(URI)).not.toContain("word-unknown");
  clock.pass(STILL - 1);
  expect(await editor.codes(URI)).not.toContain("word-unknown");
  expect(editor.told.refreshed).toEqual([]);
});

test("typing on another line shows the fault of the line that was left, at once", async () => {
  const { editor } = await shop();
  await misspell(editor);
  await typeElsewhere(editor);
  expect(await editor.codes(URI)).toContain("word-unknown");
});

test("what the typing does to other lines is shown at once", async () => {
  const { editor, clock } = await shop();
  const lines = async () =>
    (await editor.findings(URI))
      .filter(({ severity }) => severity === 1)
      .map(({ range }) => range.start.line);
  // a digit more makes the reading eighty thou: off its limits, and too small for the line's reamer
  const { start } = rangeOf(JOB, "7432");
  await editor.change(URI, { range: { start, end: start }, text: "0" });
  const { line } = rangeOf(JOB, "line layshaft").start;
  expect(await lines()).toContain(line);
  expect(await lines()).not.toContain(start.line);
  clock.pass(STILL);
  expect(await lines()).toEqual(expect.arrayContaining([start.line, line]));
});

test("a fault that was in sight stays in sight while it is being mended", async () => {
  const { editor } = await shop();
  await editor.change(URI, { range: rangeOf(JOB, "want"), text: "wnatt" });
  expect(await editor.codes(URI)).toContain("word-unknown");
  const { start } = rangeOf(JOB, "want");
  const end = { ...start, character: start.character + 1 };
  await editor.change(URI, { range: { start, end }, text: "" });
  expect(await editor.codes(URI)).toContain("word-unknown");
});

test("what is put there whole is no typing", async () => {
  const { editor } = await shop();
  await editor.change(URI, { range: rangeOf(JOB, "want"), text: "wnat" });
  expect(await editor.codes(URI)).toContain("word-unknown");
});

test("nothing is asked for where nothing was held back", async () => {
  const { editor, clock } = await shop();
  const { end } = rangeOf(JOB, "0.0016");
  await editor.change(URI, { range: { start: end, end }, text: "0" });
  expect(await editor.codes(URI)).toEqual(["step-open"]);
  clock.pass(10 * STILL);
  await editor.codes(URI);
  expect(editor.told.refreshed).toEqual([]);
});

test("it can be switched off", async () => {
  const { editor } = await shop(FULL, { findings: { waitWhileTyping: false } });
  await misspell(editor);
  expect(await editor.codes(URI)).toContain("word-unknown");
});

test("an editor that can't be asked to ask again is told at once", async () => {
  const { workspace, ...rest } = FULL;
  const { editor } = await shop({
    ...rest,
    workspace: { ...workspace, diagnostics: { refreshSupport: false } },
  });
  await misspell(editor);
  expect(await editor.codes(URI)).toContain("word-unknown");
});

test("an editor that is sent its findings is sent them again when it is still", async () => {
  const { diagnostic, ...textDocument } = FULL.textDocument;
  expect(diagnostic).toBeDefined();
  const { editor, clock } = await shop({ ...FULL, textDocument });
  const last = () => editor.told.published.at(-1);
  const codes = () => last()?.diagnostics.map(({ code }) => code);
  await editor.hints(URI);
  clock.pass(0);
  await editor.until("findings", () => last()?.version === 1);
  await misspell(editor);
  await editor.hints(URI);
  clock.pass(0);
  await editor.until("findings of the change", () => last()?.version === 2);
  expect(codes()).not.toContain("word-unknown");
  clock.pass(STILL);
  clock.pass(0);
  await editor.until(
    "what was held back",
    () => 3 <= editor.told.published.length,
  );
  expect(codes()).toContain("word-unknown");
  expect(last()?.version).toBe(2);
});

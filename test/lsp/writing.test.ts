// The form of a line, its indent, selections, files to use, names of the workspace and the lines above fits, through the protocol: that the
// answers have its shape, that they follow what changes, and that an editor that never said it knows them is offered none.
import { beforeAll, expect, test } from "vitest";
import type {
  CodeLens,
  CompletionList,
  SelectionRange,
  SignatureHelp,
  SymbolInformation,
  TextEdit,
} from "vscode-languageserver";
import { FULL, rangeOf, withEdits, type Editor } from "./editor.ts";
import { serveHere } from "./in-process.ts";
import { CRIB, JOB } from "./winch.ts";

const FOLDER = "file:///shop";
const URI = `${FOLDER}/winch.thou`;
const CRIB_URI = `${FOLDER}/crib.thou`;
const OLD_URI = `${FOLDER}/old/my%20pump.thou`;

const WRITING = {
  workspace: { symbol: {}, codeLens: { refreshSupport: true } },
  textDocument: {
    signatureHelp: {
      signatureInformation: {
        parameterInformation: { labelOffsetSupport: true },
      },
    },
    selectionRange: {},
    onTypeFormatting: {},
    codeLens: {},
    completion: { completionItem: { snippetSupport: true } },
  },
};

const CAPABILITIES = {
  workspace: { ...FULL.workspace, ...WRITING.workspace },
  textDocument: { ...FULL.textDocument, ...WRITING.textDocument },
};

async function shop(capabilities: object = CAPABILITIES) {
  const texts = new Map([
    [CRIB_URI, CRIB],
    [OLD_URI, "job pump\n\njournal drive on shaft\n"],
  ]);
  const served = serveHere(texts);
  await served.editor.start([FOLDER], capabilities);
  await served.editor.open(URI, JOB);
  return served;
}

let editor: Editor;
beforeAll(async () => {
  ({ editor } = await shop());
});

const textDocument = { uri: URI };
const at = (piece: string) => ({
  textDocument,
  position: rangeOf(JOB, piece).start,
});

test("only an editor that says it knows them is offered these", async () => {
  const offered = async (capabilities: object) => {
    const bare = serveHere().editor;
    const { capabilities: own } = await bare.start([FOLDER], capabilities);
    return [
      own.signatureHelpProvider,
      own.workspaceSymbolProvider,
      own.selectionRangeProvider,
      own.documentOnTypeFormattingProvider,
      own.codeLensProvider,
    ];
  };
  expect(await offered({})).toEqual(Array(5).fill(undefined));
  expect(await offered(WRITING)).toEqual([
    { triggerCharacters: [" "], retriggerCharacters: [","] },
    true,
    true,
    { firstTriggerCharacter: "\n" },
    { resolveProvider: true },
  ]);
});

test("the form of the line, with the part at the caret as a range of it, or as a piece", async () => {
  const ask = (from: Editor) =>
    from.request<SignatureHelp | null>(
      "textDocument/signatureHelp",
      at("0.8745\n"),
    );
  const help = await ask(editor);
  const signature = help?.signatures[help.activeSignature ?? 0];
  expect(signature?.label).toBe('limits LOW to HIGH [from "SOURCE"]');
  expect(signature?.parameters?.[help?.activeParameter ?? -1]).toEqual({
    label: [11, 18],
    documentation: { kind: "markdown", value: "The upper limit." },
  });
  const plain = (await shop({ textDocument: { signatureHelp: {} } })).editor;
  expect(
    (await ask(plain))?.signatures[0]?.parameters?.map(({ label }) => label),
  ).toEqual(["LOW", "to HIGH", 'from "SOURCE"']);
  expect(
    await editor.request("textDocument/signatureHelp", at("job winch")),
  ).toBeNull();
});

test("a selection grows from the word to the file", async () => {
  const [innermost] = await editor.request<SelectionRange[]>(
    "textDocument/selectionRange",
    { textDocument, positions: [at("mic-1").position] },
  );
  expect(innermost?.range).toEqual(rangeOf(JOB, "mic-1"));
  expect(innermost?.parent?.range).toEqual(rangeOf(JOB, "with mic-1"));
  let outermost = innermost;
  while (outermost?.parent !== undefined) outermost = outermost.parent;
  expect(outermost?.range.start).toEqual({ line: 0, character: 0 });
});

test("a line begun below an entry is set in, and nothing else is touched", async () => {
  const { editor: own } = await shop();
  const text = JOB.replace("part case\n", "part case\n\n");
  await own.change(URI, { text });
  const { line } = rangeOf(text, "part case").start;
  const edits = await own.request<TextEdit[]>("textDocument/onTypeFormatting", {
    textDocument,
    position: { line: line + 1, character: 0 },
    ch: "\n",
    options: { tabSize: 4, insertSpaces: false },
  });
  expect(withEdits(text, edits)).toBe(
    JOB.replace("part case\n", "part case\n  \n"),
  );
});

test("names of the whole workspace, open or not, as they are now", async () => {
  const { editor: own, texts } = await shop();
  const names = async (query: string) =>
    (await own.request<SymbolInformation[]>("workspace/symbol", { query })).map(
      ({ name, containerName, location }) => [
        name,
        containerName,
        location.uri,
      ],
    );
  expect(await names("drive")).toEqual([
    ["journal drive", "job pump", OLD_URI],
  ]);
  expect(await names("mic")).toEqual([
    ["gauge mic-1", "shop harbour", CRIB_URI],
  ]);
  const [found] = await own.request<SymbolInformation[]>("workspace/symbol", {
    query: "fit front",
  });
  expect(found?.location).toEqual({
    uri: URI,
    range: rangeOf(JOB, "front", "fit "),
  });
  // the open document before the disk
  await own.change(URI, { text: JOB.replaceAll("front", "ahead") });
  expect((await names("fitahead")).map(([name]) => name)).toEqual([
    "fit ahead",
  ]);
  expect(await names("fit front")).toEqual([]);
  // a file that changes on the disk, and one that goes
  texts.set(CRIB_URI, CRIB.replaceAll("mic-1", "mike-1"));
  texts.delete(OLD_URI);
  await own.notify("workspace/didChangeWatchedFiles", {
    changes: [
      { uri: CRIB_URI, type: 2 },
      { uri: OLD_URI, type: 3 },
    ],
  });
  expect((await names("mike")).map(([name]) => name)).toEqual(["gauge mike-1"]);
  expect(await names("drive")).toEqual([]);
});

test("after `use` and a quote: the records of the folder, the crib first", async () => {
  const { editor: own } = await shop();
  const text = JOB.replace('"crib.thou"', '""');
  await own.change(URI, { text });
  const { start } = rangeOf(text, '""');
  const ask = (line: number, character: number, triggerCharacter: string) =>
    own.request<CompletionList>("textDocument/completion", {
      textDocument,
      position: { line, character },
      context: { triggerKind: 2, triggerCharacter },
    });
  const { items } = await ask(start.line, start.character + 1, '"');
  expect(
    items.map(({ label, detail, sortText }) => [label, detail, sortText]),
  ).toEqual([
    ["crib.thou", "shop harbour", "00000"],
    ["old/my pump.thou", "job pump", "00001"],
  ]);
  // taken, the crib is there
  const edit = items[0]?.textEdit;
  if (edit === undefined || !("range" in edit)) throw new Error("no edit");
  await own.change(URI, { text: withEdits(text, [edit]) });
  expect(await own.codes(URI)).not.toContain("file-missing");
  // a quote elsewhere opens no list
  const limits = rangeOf(JOB, "0.8740");
  expect(
    (await ask(limits.start.line, limits.end.character, '"')).items,
  ).toEqual([]);
});

test("lenses: none unless they are asked for, worked out one by one, with commands for an editor that has them", async () => {
  const lenses = (from: Editor) =>
    from.request<CodeLens[]>("textDocument/codeLens", { textDocument });
  expect(await lenses(editor)).toEqual([]);

  const { editor: own, clock } = await shop({
    ...CAPABILITIES,
    experimental: { thouCommands: true },
  });
  own.settings.thou = { lenses: { enabled: true } };
  const asked = own.told.asked;
  await own.notify("workspace/didChangeConfiguration", { settings: null });
  await own.until("the settings", () => asked < own.told.asked);
  const found = await lenses(own);
  expect(found.map(({ range, command }) => [range, command])).toEqual([
    [rangeOf(JOB, "front", "fit "), undefined],
    [rangeOf(JOB, "layshaft", "line "), undefined],
  ]);
  const says = (lens: CodeLens | undefined, from = own) =>
    from.request<CodeLens>("codeLens/resolve", lens);
  const fit = await says(found[0]);
  expect(fit.command).toMatchObject({
    title: expect.stringMatching(
      /^clearance \(diametral\) .* in, predicted: /,
    ) as string,
    arguments: [URI, expect.anything()],
  });
  expect(["thou.showUses", "thou.showFinding"]).toContain(fit.command?.command);
  // an editor that never named our commands gets the words alone
  expect((await says(found[0], editor)).command).toEqual({
    title: fit.command?.title,
    command: "",
  });
  // asked for again when what the job rests on changes
  await own.open(CRIB_URI, CRIB);
  own.told.refreshed.length = 0;
  await own.change(CRIB_URI, { text: CRIB.replace("0.8755", "0.8760") });
  await lenses(own);
  clock.pass(1000);
  await own.until("lenses to be asked for again", () =>
    own.told.refreshed.includes("codeLens"),
  );
});

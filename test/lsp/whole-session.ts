// One session with the sample shop, from the opening of a record to its closing, as a list of questions and answers: whatever the server runs
// in, the answers are to be the same. What they ought to be is for other tests.
import { readFile } from "node:fs/promises";
import { fileURLToPath, pathToFileURL } from "node:url";
import { rangeOf, type Editor } from "./editor.ts";

const SHOP = new URL("../../samples/shop/", import.meta.url);

export interface Answered {
  readonly asked: string;
  /** What came back, without what differs from run to run; for an error its sentence. */
  readonly answer: unknown;
}

/** Plays the session. It starts the editor and does not end it. */
export async function playSession(
  editor: Editor,
  capabilities: object,
): Promise<readonly Answered[]> {
  const uri = new URL("winch.thou", SHOP).href;
  const text = await readFile(new URL("winch.thou", SHOP), "utf8");
  const textDocument = { uri };
  const options = { tabSize: 2, insertSpaces: true };
  const answers: Answered[] = [];

  async function ask(
    method: string,
    params: object = {},
    label = "",
  ): Promise<unknown> {
    const answer = await editor
      .request<unknown>(method, { textDocument, ...params })
      .catch((error: unknown) => ({
        refused: error instanceof Error ? error.message : String(error),
      }));
    answers.push({ asked: `${method} ${label}`.trim(), answer: plain(answer) });
    return answer;
  }
  const at = (piece: string, after = "") => {
    const { start } = rangeOf(text, piece, after);
    return { line: start.line, character: start.character + 1 };
  };
  const whole = {
    start: { line: 0, character: 0 },
    end: { line: text.split("\n").length, character: 0 },
  };
  async function askAll(label: string): Promise<void> {
    await ask("textDocument/diagnostic", {}, label);
    await ask("textDocument/inlayHint", { range: whole }, label);
    await ask("textDocument/documentSymbol", {}, label);
    await ask("textDocument/foldingRange", {}, label);
    await ask("textDocument/semanticTokens/full", {}, label);
    await ask("textDocument/formatting", { options }, label);
  }

  const begun = await editor.start(
    [pathToFileURL(fileURLToPath(SHOP).replace(/\/$/u, "")).href],
    capabilities,
  );
  answers.push({ asked: "initialize", answer: plain(begun) });
  await editor.open(uri, text);
  await askAll("as it is on the disk");

  const places = {
    "a fit": at("front", "fit front"),
    "a name of the crib": at("mic-1"),
    "a number": at("0.8740"),
    "a material": at("steel-4140"),
    "a line": at("line layshaft"),
    "a step": at("step ream"),
    "the crib": at("crib.thou"),
  };
  for (const [label, position] of Object.entries(places))
    await ask("textDocument/hover", { position }, label);
  for (const label of ["a name of the crib", "a fit"] as const) {
    const position = places[label];
    await ask("textDocument/definition", { position }, label);
    await ask("textDocument/documentHighlight", { position }, label);
    await ask(
      "textDocument/references",
      { position, context: { includeDeclaration: true } },
      label,
    );
    await ask("textDocument/prepareRename", { position }, label);
    await ask(
      "textDocument/rename",
      { position, newName: "another-name" },
      label,
    );
  }
  await ask(
    "textDocument/rename",
    { position: places["a fit"], newName: "no name" },
    "to what is no name",
  );
  await ask("textDocument/documentLink");
  await ask("textDocument/semanticTokens/range", {
    range: { start: { line: 5, character: 0 }, end: { line: 9, character: 0 } },
  });
  const hints: unknown = await editor.hints(uri);
  const [hint] = hints as readonly object[]; // none: the request below fails, and says so in the list
  await ask("inlayHint/resolve", hint ?? {});

  // a word is misspelt, mended by its fix's text, and a line is laid out badly
  const misspelt = rangeOf(text, "want", "fit front");
  await editor.change(uri, { range: misspelt, text: "wnat" });
  await askAll("with a misspelt word");
  await ask("textDocument/codeAction", {
    range: misspelt,
    context: { diagnostics: [] },
  });
  await editor.change(uri, {
    text: text.replace("  units inch", "   units   inch\n  opened 2026-13-02"),
  });
  await askAll("with a bad layout and a wrong date");
  await ask("textDocument/rangeFormatting", { range: whole, options });

  // completion at the end of what is being typed
  for (const typed of [
    "",
    "  ",
    "fit new of ",
    "journal new on shaft\n  limits 25 mm ",
  ]) {
    const grown = `${text.trimEnd()}\n${typed}`;
    await editor.change(uri, { text: grown });
    const lines = grown.split("\n");
    await ask(
      "textDocument/completion",
      {
        position: {
          line: lines.length - 1,
          character: lines.at(-1)?.length ?? 0,
        },
        context: { triggerKind: 1 },
      },
      JSON.stringify(typed),
    );
  }
  await editor.change(uri, { text });
  await askAll("put back");
  await ask("workspace/diagnostic", { previousResultIds: [] });
  await ask("thou/page", { code: "fit-tight" });
  await ask("thou/page", { code: "no-such-code" }, "of no finding");
  await ask("thou/noSuchRequest");
  return answers;
}

/** An answer as JSON carries it, without the ids that a run of the server gives its reports. */
function plain(answer: unknown): unknown {
  return JSON.parse(
    JSON.stringify(answer ?? null, (key, value: unknown) =>
      key === "resultId" ? undefined : value,
    ),
  );
}

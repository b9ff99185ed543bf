// The real server, in this process and over its own protocol, with a damaged record open: every request is asked at random places, the record
// is edited and asked again, and a second server that is given the texts as they then are must say the same.
import { isDeepStrictEqual } from "node:util";
import { TextDocument } from "vscode-languageserver-textdocument";
import type {
  TextDocumentContentChangeEvent,
  TextEdit,
} from "vscode-languageserver";
import { FULL } from "../lsp/editor.ts";
import { serveHere } from "../lsp/in-process.ts";
import { damaged } from "./damage.ts";
import type { Random } from "./random.ts";
import { requestsFor, type Asked } from "./requests.ts";
import { assertTokens, assertWellFormed } from "./well-formed.ts";

const FOLDER = "file:///shop";
const URI = `${FOLDER}/job.thou`;

/** An editor that can do all that the server offers. */
const ALL = {
  ...FULL,
  workspace: {
    ...FULL.workspace,
    symbol: {},
    codeLens: { refreshSupport: true },
  },
  textDocument: {
    ...FULL.textDocument,
    signatureHelp: {},
    selectionRange: {},
    onTypeFormatting: {},
    codeLens: {},
    completion: { completionItem: { snippetSupport: true } },
  },
  experimental: { thouCommands: true },
};

type Server = ReturnType<typeof serveHere>;

async function opened(texts: ReadonlyMap<string, string>): Promise<Server> {
  const server = serveHere(new Map(), {});
  await server.editor.start([FOLDER], ALL);
  for (const [uri, text] of texts) await server.editor.open(uri, text);
  return server;
}

/** Refusals in plain words are answers: that a name can't be changed, that nothing is there to be renamed. */
const REFUSED = -32803;

async function ask(
  { editor }: Server,
  { method, params }: Asked,
): Promise<unknown> {
  try {
    return await editor.request<unknown>(method, params);
  } catch (error) {
    const code: unknown =
      error instanceof Error && "code" in error ? error.code : undefined;
    if (code === REFUSED) return null;
    throw new Error(
      `${method} ${JSON.stringify(params)}: ${String(error)}\n${editor.told.logged.join("\n")}`,
      { cause: error },
    );
  }
}

/** What a second server must say in the same words; ids of reports differ from run to run. */
const SAME = [
  "textDocument/diagnostic",
  "textDocument/inlayHint",
  "textDocument/documentSymbol",
  "textDocument/foldingRange",
  "textDocument/semanticTokens/full",
  "textDocument/formatting",
  "textDocument/codeLens",
  "textDocument/hover",
  "thou/overview",
  "thou/sheet",
  "thou/bench",
];

function withoutIds(answer: unknown): unknown {
  return JSON.parse(
    JSON.stringify(answer ?? null, (key, value: unknown) =>
      key === "resultId" || key === "version" ? undefined : value,
    ),
  );
}

function editIn(
  document: TextDocument,
  random: Random,
  others: readonly string[],
): TextDocumentContentChangeEvent {
  const text = document.getText();
  const start = random.below(text.length + 1);
  const end = random.chance(0.6)
    ? start
    : start + random.below(random.pick([3, 80]));
  const other = random.pick(others);
  const from = random.below(other.length);
  return {
    range: { start: document.positionAt(start), end: document.positionAt(end) },
    text: random.chance(0.7)
      ? random.pick([
          "",
          "x",
          "9",
          " ",
          "\n",
          "\r",
          '"',
          "#",
          ".",
          "\u{D800}",
          "\u{FEFF}",
          "__proto__",
        ])
      : damaged(other.slice(from, from + 200), random, others).slice(0, 1000),
  };
}

/** @returns how many requests were asked. @throws Error for an answer that is an error, or that can't be true */
export async function tryServer(
  text: string,
  random: Random,
  others: readonly string[],
): Promise<number> {
  let asked = 0;
  const crib = random.pick(others);
  const texts = new Map([
    [URI, text],
    [`${FOLDER}/crib.thou`, crib],
  ]);
  const server = await opened(texts);
  const documents = new Map(
    [...texts].map(([uri, each]) => [
      uri,
      TextDocument.create(uri, "thou", 1, each),
    ]),
  );
  const document = documents.get(URI);
  if (document === undefined) throw new Error("no document");

  const askAll = async (): Promise<void> => {
    for (const each of requestsFor(document, random)) {
      asked++;
      const answer = await ask(server, each);
      try {
        assertWellFormed(answer, URI, documents);
        if (each.method.startsWith("textDocument/semanticTokens")) {
          const data = (answer as { data?: readonly number[] }).data; // absent in a delta
          if (data !== undefined) assertTokens(data, document);
        }
        if (each.method === "textDocument/formatting")
          await assertFormat(answer as readonly TextEdit[], document); // the protocol's answer
        await askFurther(server, each.method, answer);
      } catch (error) {
        throw new Error(
          `${each.method} ${JSON.stringify(each.params)}: ${String(error)}`,
          { cause: error },
        );
      }
    }
  };

  await askAll();
  for (let left = 3 + random.below(4); 0 < left; left--) {
    const change = editIn(document, random, others);
    TextDocument.update(document, [change], document.version + 1);
    await server.editor.change(URI, change);
    if (!random.chance(0.5)) continue;
    asked++;
    await ask(server, {
      method: "textDocument/diagnostic",
      params: { textDocument: { uri: URI } },
    });
  }
  await askAll();

  // the line that is being typed on says nothing yet: both servers wait as long
  server.clock.pass(60_000);
  const fresh = await opened(
    new Map([...documents].map(([uri, each]) => [uri, each.getText()])),
  );
  // the first answer of a long record has what its lines say alone
  await ask(fresh, {
    method: "textDocument/diagnostic",
    params: { textDocument: { uri: URI } },
  });
  for (const each of requestsFor(document, random)) {
    if (!SAME.includes(each.method)) continue;
    asked += 2;
    const [one, other] = [await ask(server, each), await ask(fresh, each)];
    if (!isDeepStrictEqual(withoutIds(one), withoutIds(other)))
      throw new Error(
        `${each.method} after edits is not what it is afresh: ${JSON.stringify(each.params)}\n${JSON.stringify(one)}\n${JSON.stringify(other)}`,
      );
  }
  if (0 < server.editor.told.logged.length)
    throw new Error(server.editor.told.logged.join("\n"));
  // no `exit`: it would end this process
  for (const { editor } of [server, fresh]) editor.connection.dispose();
  return asked;
}

/** The layout changes blanks alone, and twice is as once. */
async function assertFormat(
  edits: readonly TextEdit[],
  document: TextDocument,
): Promise<void> {
  const after = TextDocument.applyEdits(document, [...edits]);
  const bare = (text: string): string =>
    text.replaceAll(/[ \t\u{A0}\r\n]/gu, "");
  if (bare(after) !== bare(document.getText()))
    throw new Error("the layout changed more than blanks");
  const again = await opened(new Map([[URI, after]]));
  const more = await again.editor.format(URI);
  again.editor.connection.dispose();
  if (0 < more.length)
    throw new Error(`the layout is not done: ${JSON.stringify(more[0])}`);
}

/** Hints and lenses are worked out when they are looked at. */
async function askFurther(
  server: Server,
  method: string,
  answer: unknown,
): Promise<void> {
  const further = {
    "textDocument/inlayHint": "inlayHint/resolve",
    "textDocument/codeLens": "codeLens/resolve",
  }[method];
  if (further === undefined || !Array.isArray(answer)) return;
  for (const each of answer.slice(0, 3) as readonly object[])
    await ask(server, { method: further, params: each });
}

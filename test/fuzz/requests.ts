// Every request that an editor may ask of the server about one document, the protocol's and our own, at places and with words that are
// chosen at random.
import type { Range } from "vscode-languageserver";
import type { TextDocument } from "vscode-languageserver-textdocument";
import { OWN_REQUESTS, type OwnRequest } from "../../server/protocol.ts";
import type { Random } from "./random.ts";

export interface Asked {
  readonly method: string;
  readonly params: object;
}

/** Names that a person may type, and that no name should be. */
const NAMES = ["front", "x", "", "__proto__", "a b", "é", "\u{D800}", "x\ny"];

function placeIn(document: TextDocument, random: Random) {
  // now and then past the end of a line, or of the text
  return random.chance(0.05)
    ? {
        line: random.below(document.lineCount + 3),
        character: random.below(300),
      }
    : document.positionAt(random.below(document.getText().length + 1));
}

function rangeIn(document: TextDocument, random: Random): Range {
  const a = random.below(document.getText().length + 1);
  const b = random.chance(0.5)
    ? a + random.below(200)
    : document.getText().length;
  return { start: document.positionAt(a), end: document.positionAt(b) };
}

/** One of each, in the order in which editors tend to ask. */
export function requestsFor(
  document: TextDocument,
  random: Random,
): readonly Asked[] {
  const { uri } = document;
  const textDocument = { uri };
  const options = { tabSize: 2, insertSpaces: true };
  const place = () => placeIn(document, random);
  const range = () => rangeIn(document, random);
  const at = (method: string, more: object = {}): Asked => ({
    method: `textDocument/${method}`,
    params: { textDocument, position: place(), ...more },
  });
  const of = (method: string, more: object = {}): Asked => ({
    method: `textDocument/${method}`,
    params: { textDocument, ...more },
  });
  return [
    of("diagnostic"),
    { method: "workspace/diagnostic", params: { previousResultIds: [] } },
    of("inlayHint", { range: range() }),
    of("documentSymbol"),
    of("foldingRange"),
    of("semanticTokens/full"),
    of("semanticTokens/full/delta", { previousResultId: "1" }),
    of("semanticTokens/range", { range: range() }),
    of("codeLens"),
    of("documentLink"),
    of("formatting", { options }),
    of("rangeFormatting", { range: range(), options }),
    of("codeAction", { range: range(), context: { diagnostics: [] } }),
    of("codeAction", {
      range: range(),
      context: { diagnostics: [], only: ["source.fixAll"] },
    }),
    of("selectionRange", { positions: [place(), place()] }),
    at("hover"),
    at("hover"),
    at("completion", { context: { triggerKind: 1 } }),
    at("completion", {
      context: {
        triggerKind: 2,
        triggerCharacter: random.pick([" ", '"', "/"]),
      },
    }),
    at("signatureHelp"),
    at("definition"),
    at("references", { context: { includeDeclaration: true } }),
    at("documentHighlight"),
    at("prepareRename"),
    at("rename", { newName: random.pick(NAMES) }),
    at("onTypeFormatting", { ch: "\n", options }),
    { method: "workspace/symbol", params: { query: random.pick(NAMES) } },
    ...OWN_REQUESTS.map((name) => ({
      method: name,
      params: ownParams(name, document, random),
    })),
  ];
}

/** What each of our own requests is asked with. A table, so that the compiler misses none. */
function ownParams(
  name: OwnRequest,
  document: TextDocument,
  random: Random,
): object {
  const { uri } = document;
  const ref = random.pick([
    "fit front",
    "journal front",
    "toString",
    "job",
    ...entryLines(document),
  ]);
  const answers = random.chance(0.5)
    ? []
    : [
        {
          key: random.pick(["kind", "units", "__proto__"]),
          values: random.pick([[], ["x"], NAMES]),
        },
      ];
  const params: Readonly<Record<OwnRequest, object>> = {
    "thou/page": { code: random.pick(["fit-tight", "constructor", ""]) },
    "thou/overview": { uri },
    "thou/overviewMore": { uri, ref },
    "thou/bench": {
      uri,
      line: random.below(document.lineCount + 2),
      width: random.pick([0, 1, 600, 1e9]),
    },
    "thou/newJob": { answers, names: null, crib: null },
    "thou/takingSetup": {
      uri,
      ref: random.chance(0.5) ? ref : null,
      position: random.chance(0.5) ? placeIn(document, random) : null,
      answers,
    },
    "thou/takingStep": {
      uri,
      plan: {
        ref,
        side: random.pick([null, "od", "id"]),
        fact: random.pick(["read", "repeat"]),
        places: [null, random.pick(NAMES)],
        each: random.pick([1, 2, 3]),
        gauge: random.pick([null, ...NAMES]),
        temperature: random.pick([null, "68 F", "x"]),
        stage: null,
        date: "2026-11-05",
        system: random.pick(["inch", "mm"]),
        expected: null,
        resolution: null,
      },
      inputs: random.pick([[], ["0.874"], ["x", "undo", "0.8741"], NAMES]),
    },
    "thou/sheet": { uri, blank: random.chance(0.5) },
    "thou/compare": { uri, isTrusted: random.chance(0.5), link: null },
    "thou/trend": { uri, isTrusted: random.chance(0.5) },
  };
  return params[name];
}

function entryLines(document: TextDocument): readonly string[] {
  return document
    .getText()
    .split(/\r\n|\n|\r/u)
    .filter((line) => /^\S/u.test(line))
    .map((line) => line.split(" ").slice(0, 2).join(" "));
}

// Our server beside general-purpose ones for JSON and YAML, and beside one that does nothing, over standard streams, by hand:
//   (cd test/bench/peers && npm ci)
//   node test/bench/peers.mjs [--keys 30] [--rounds 3] [--lines 200,2000,20000]
// Each server has a document of its own language and of the same length, with some faults in it, and is run in turns with the others; a
// figure is the least of the rounds' medians, since other work on the machine only ever adds. A keystroke counts only once an answer shows it:
// the character typed makes a fault, and taking it out takes the fault away. Trust the ratios, not the milliseconds.
import { existsSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { parseArgs } from "node:util";
import { CRIB, longRecord } from "./long-record.mjs";
import { jsonRecord, SCHEMA, yamlRecord } from "./peer-records.mjs";
import { bundle, late, median, pause, start } from "./stdio-client.mjs";

const { values } = parseArgs({
  options: {
    keys: { type: "string", default: "30" },
    rounds: { type: "string", default: "3" },
    lines: { type: "string", default: "200,2000,20000" },
  },
});
const KEYS = Number(values.keys);
const WARM = 6;
/** A server that has not shown a keystroke by then has missed it. */
const LATEST = 15_000;
const folder = mkdtempSync(path.join(tmpdir(), "thou-bench-"));
const schemaUri = pathToFileURL(path.join(folder, "schema.json")).href;
const peer = (file) =>
  path.join(import.meta.dirname, "peers", "node_modules", file);

const thou = {
  language: "thou",
  text: longRecord,
  // a digit that makes a reading too large: what is wrong on the line itself waits till the hand rests, what follows of it shows
  typed: { after: /^ {2}read near 0\.8/, text: "9" },
  hover: /^ {2}read near .* with mi/,
  complete: /^ {2}read near .* with /,
};
const json = {
  language: "json",
  text: jsonRecord,
  typed: { after: /^ {6}"kind": "/, text: "x" },
  hover: /^ {6}"outs/,
  complete: /^ {6}"kind": "/,
  settings: {
    json: {
      validate: { enable: true },
      format: { enable: true },
      schemas: [{ fileMatch: ["*.json"], url: schemaUri, schema: SCHEMA }],
    },
  },
  options: { provideFormatter: true },
};
const yaml = {
  language: "yaml",
  text: yamlRecord,
  typed: { after: /^ {4}kind: /, text: "x" },
  hover: /^ {4}outs/,
  complete: /^ {4}kind: /,
  settings: {
    yaml: {
      validate: true,
      hover: true,
      completion: true,
      format: { enable: true },
      schemaStore: { enable: false },
      schemas: { [schemaUri]: "*.yaml" },
    },
  },
};

const capabilities = {
  workspace: {
    configuration: true,
    workspaceFolders: true,
    didChangeConfiguration: { dynamicRegistration: true },
    didChangeWatchedFiles: { dynamicRegistration: true },
    diagnostics: { refreshSupport: true },
    inlayHint: { refreshSupport: true },
  },
  textDocument: {
    diagnostic: {},
    publishDiagnostics: { relatedInformation: true },
    hover: { contentFormat: ["markdown", "plaintext"] },
    completion: {
      completionItem: {
        snippetSupport: true,
        documentationFormat: ["markdown"],
      },
    },
    documentSymbol: { hierarchicalDocumentSymbolSupport: true },
    formatting: { dynamicRegistration: true },
  },
};

/** @param count the lines of the document */
async function run({ file, kind }, count) {
  const text = kind.text(count);
  const lines = text.split("\n");
  /** Where a line ends that a pattern begins. */
  const ends = (pattern) =>
    lines.flatMap((each, line) => {
      const found = pattern.exec(each);
      return found === null ? [] : [{ line, character: found[0].length }];
    });
  const session = await begin(file, kind);
  const times = { start: [session.startTook] };
  const MBatStart = session.memory();
  session.tell("initialized", {});
  session.tell("workspace/didChangeConfiguration", {
    settings: kind.settings ?? {},
  });
  await pause(700);
  const all = await openDocument(session, kind, text, times);
  const at = ends(kind.typed.after).find(({ line }) => lines.length / 2 < line);
  const missed = await typeKeys(
    { session, kind, at, before: all.length, isEmpty: isEmpty(file) },
    times,
  );
  const spread = (pattern) => {
    const found = ends(pattern).filter(({ line }) => line !== at.line);
    return Array.from(
      { length: 10 },
      (_, index) => found[Math.floor((index * found.length) / 10)],
    );
  };
  const empty = await askEach(session, kind, spread, lines.length, times);
  const MB = session.memory();
  await session.end();
  const figures = Object.fromEntries(
    Object.entries(times)
      .filter(([, every]) => 0 < every.length)
      .map(([what, every]) => [what, median(every)]),
  );
  if (0 < times.keystroke.length)
    figures["keystroke, p95"] = late(times.keystroke);
  return {
    figures: { ...figures, "MB at the start": MBatStart, "MB at the end": MB },
    empty,
    found: all.length,
    missed,
  };
}

/** A server that has answered its first message, and what is asked of it about the one document. */
async function begin(file, kind) {
  const uri = pathToFileURL(path.join(folder, `record.${kind.language}`)).href;
  const heard = new Set();
  const begun = performance.now();
  const { child, ask, tell, memory } = start(
    file,
    (section) => kind.settings?.[section] ?? null,
    ({ method, params }) => {
      if (method === "textDocument/publishDiagnostics" && params.uri === uri)
        for (const hear of [...heard]) hear(params.diagnostics);
    },
  );
  const started = await ask("initialize", {
    processId: process.pid,
    rootUri: pathToFileURL(folder).href,
    capabilities,
    initializationOptions: kind.options ?? {},
    workspaceFolders: [{ uri: pathToFileURL(folder).href, name: "bench" }],
  });
  const startTook = performance.now() - begun;
  const textDocument = { uri };
  const pulls = started.capabilities.diagnosticProvider !== undefined;

  /** Tells the server of a change and waits for what it then finds. @param isShown whether findings show the change */
  async function findings(change, isShown) {
    if (pulls) {
      change();
      const items =
        (await ask("textDocument/diagnostic", { textDocument })).items ?? [];
      return isShown(items) ? items : undefined;
    }
    return new Promise((resolve) => {
      const end = (items) => {
        clearTimeout(timer);
        heard.delete(hear);
        resolve(items);
      };
      const hear = (items) => {
        if (isShown(items)) end(items);
      };
      const timer = setTimeout(() => end(undefined), LATEST);
      heard.add(hear);
      change();
    });
  }

  return {
    uri,
    ask,
    tell,
    memory,
    findings,
    pulls,
    startTook,
    hasHints: Boolean(started.capabilities.inlayHintProvider),
    async end() {
      await ask("shutdown", null).catch(() => null);
      tell("exit", undefined);
      setTimeout(() => child.kill(), 2_000).unref();
    },
  };
}

/** Gives all findings. */
async function openDocument({ uri, tell, findings, pulls }, kind, text, times) {
  const openedAt = performance.now();
  const opened = await findings(
    () =>
      tell("textDocument/didOpen", {
        textDocument: { uri, languageId: kind.language, version: 1, text },
      }),
    () => true,
  );
  times["open, first findings"] = [performance.now() - openedAt];
  // a server may show a part first, and all when it is asked again
  const all = pulls
    ? await findings(
        () => undefined,
        () => true,
      )
    : opened;
  times["open, all findings"] = [performance.now() - openedAt];
  return all ?? [];
}

/** Types a fault at a place and takes it out, again and again. Gives how many of the keys no findings showed. */
async function typeKeys({ session, kind, at, before, isEmpty }, times) {
  const { uri, tell, findings } = session;
  let version = 1;
  let missed = 0;
  times.keystroke = [];
  for (let key = 0; key < KEYS + WARM; key++) {
    const isTyped = key % 2 === 0;
    const end = {
      line: at.line,
      character: at.character + (isTyped ? 0 : kind.typed.text.length),
    };
    const sentAt = performance.now();
    const items = await findings(
      () =>
        tell("textDocument/didChange", {
          textDocument: { uri, version: ++version },
          contentChanges: [
            {
              range: { start: at, end },
              text: isTyped ? kind.typed.text : "",
            },
          ],
        }),
      (found) => isEmpty || before < found.length === isTyped,
    );
    if (items === undefined) missed++;
    else if (WARM <= key) times.keystroke.push(performance.now() - sentAt);
    await pause(12);
  }
  return missed;
}

/** Asks what an editor asks beside findings. Gives what had no answer. */
async function askEach({ uri, ask, hasHints }, kind, spread, count, times) {
  const whole = {
    start: { line: 0, character: 0 },
    end: { line: count, character: 0 },
  };
  const empty = {};
  for (const [what, method, each] of [
    ["hover", "hover", spread(kind.hover).map((position) => ({ position }))],
    [
      "completion",
      "completion",
      spread(kind.complete).map((position) => ({ position })),
    ],
    ["hints, all", "inlayHint", Array(6).fill({ range: whole })],
    ["symbols", "documentSymbol", Array(6).fill({})],
    [
      "format",
      "formatting",
      Array(6).fill({ options: { tabSize: 2, insertSpaces: true } }),
    ],
  ]) {
    if (method === "inlayHint" && !hasHints) continue;
    times[what] = [];
    let answered = 0;
    for (const params of each) {
      const askedAt = performance.now();
      const result = await ask(`textDocument/${method}`, {
        textDocument: { uri },
        ...params,
      }).catch(() => null);
      times[what].push(performance.now() - askedAt);
      const found = result?.items ?? result;
      if (Array.isArray(found) ? 0 < found.length : found) answered++;
    }
    if (answered === 0) empty[what] = true;
  }
  return empty;
}

let emptyServer;
const isEmpty = (file) => file === emptyServer;

const ROWS = [
  ...["start", "open, first findings", "open, all findings"],
  ...["keystroke", "keystroke, p95", "hover", "completion"],
  ...["hints, all", "symbols", "format", "MB at the start", "MB at the end"],
];

const TITLES = { empty: "empty", thou: "Thou", json: "JSON", yaml: "YAML" };

/** A figure beside the empty server's, with no more digits than it is worth: "×2.4, 0.61". */
function cellOf(name, row, { least, notes }) {
  const figure = least[name][row];
  if (figure === undefined) return "–";
  const floor = least.empty[row];
  const ratio =
    name === "empty" || floor === undefined
      ? ""
      : `×${Number((figure / floor).toPrecision(2))}, `;
  const nothing = notes[name].empty[row] && name !== "empty" ? " ∅" : "";
  return `${ratio}${Number(figure.toPrecision(3))}${nothing}`;
}

/** What the run was of, size by size, then its figures as docs/speed.md has them. */
function report(runs) {
  for (const { count, notes } of runs)
    console.log(
      `${count} lines: ${Object.entries(notes)
        .map(
          ([name, { found, missed }]) =>
            `${TITLES[name]} ${found} findings, ${missed} keystrokes not shown`,
        )
        .join("; ")}`,
    );
  const names = Object.keys(TITLES);
  console.log(`\n| | lines | ${Object.values(TITLES).join(" | ")} |`);
  console.log(`|---|---|${names.map(() => "---|").join("")}`);
  for (const row of ROWS)
    runs.forEach((run, index) => {
      const cells = names.map((name) => cellOf(name, row, run));
      console.log(
        `| ${index === 0 ? row : ""} | ${run.count.toLocaleString("en-US")} | ${cells.join(" | ")} |`,
      );
    });
}

try {
  const peers = {
    json: {
      file: peer(
        "vscode-langservers-extracted/bin/vscode-json-language-server",
      ),
      kind: json,
    },
    yaml: {
      file: peer("yaml-language-server/bin/yaml-language-server"),
      kind: yaml,
    },
  };
  for (const { file } of Object.values(peers))
    if (!existsSync(file)) {
      console.error("Install them first: (cd test/bench/peers && npm ci)");
      process.exit(2);
    }
  writeFileSync(path.join(folder, "crib.thou"), CRIB);
  writeFileSync(path.join(folder, "schema.json"), JSON.stringify(SCHEMA));
  emptyServer = await bundle(path.join(folder, "empty"), "empty-server.ts");
  const servers = {
    empty: { file: emptyServer, kind: thou },
    thou: {
      file: await bundle(
        path.join(folder, "thou"),
        "../../server/main.node.ts",
      ),
      kind: thou,
    },
    ...peers,
  };
  const runs = [];
  for (const count of values.lines.split(",").map(Number)) {
    const least = {};
    const notes = {};
    for (let round = 0; round < Number(values.rounds); round++)
      for (const [name, server] of Object.entries(servers)) {
        const { figures, ...rest } = await run(server, count);
        notes[name] = {
          ...rest,
          missed: rest.missed + (notes[name]?.missed ?? 0),
        };
        least[name] ??= {};
        for (const [what, figure] of Object.entries(figures))
          least[name][what] = Math.min(figure, least[name][what] ?? Infinity);
      }
    runs.push({ count, least, notes });
  }
  report(runs);
} finally {
  rmSync(folder, { recursive: true });
}

// How long a keystroke takes until its findings and its hints are there, over standard streams, beside a server that does nothing.
//   node test/bench/keystroke.mjs [--keys 40] [--rounds 3] [--lines 200,2000,20000]
// Both servers are bundled alike and run in turns, round by round; a figure is the least of the rounds' medians, since other work on the
// machine only ever adds. Trust the ratios, not the milliseconds.
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { parseArgs } from "node:util";
import { CRIB, longRecord } from "./long-record.mjs";
import { bundle, late, median, pause, start } from "./stdio-client.mjs";

const { values } = parseArgs({
  options: {
    keys: { type: "string", default: "40" },
    rounds: { type: "string", default: "3" },
    lines: { type: "string", default: "200,2000,20000" },
  },
});
const KEYS = Number(values.keys);
const folder = mkdtempSync(join(tmpdir(), "thou-bench-"));

const capabilities = {
  workspace: {
    configuration: true,
    workspaceFolders: true,
    diagnostics: { refreshSupport: true },
    inlayHint: { refreshSupport: true },
    didChangeWatchedFiles: { dynamicRegistration: true },
  },
  textDocument: {
    diagnostic: {},
    publishDiagnostics: {
      relatedInformation: true,
      codeDescriptionSupport: true,
    },
    documentSymbol: { hierarchicalDocumentSymbolSupport: true },
  },
};

/** @param count the lines of the record */
async function run(file, count) {
  const text = longRecord(count);
  const lines = text.split("\n");
  const uri = pathToFileURL(join(folder, "record.thou")).href;
  const times = {};
  const timed = async (what, act) => {
    const begun = performance.now();
    const result = await act();
    (times[what] ??= []).push(performance.now() - begun);
    return result;
  };
  const begun = performance.now();
  const { ask, tell, memory } = start(file);
  await ask("initialize", {
    processId: process.pid,
    rootUri: null,
    capabilities,
    workspaceFolders: [{ uri: pathToFileURL(folder).href, name: "bench" }],
  });
  times.start = [performance.now() - begun];
  tell("initialized", {});
  await pause(700);
  const session = { uri, ask, tell, timed };
  const pull = () => ask("textDocument/diagnostic", { textDocument: { uri } });
  const openedAt = performance.now();
  await timed("open", () => {
    tell("textDocument/didOpen", {
      textDocument: { uri, languageId: "thou", version: 1, text },
    });
    return pull();
  });
  // a long record shows what its lines say first; asked again, it shows all
  const all = await pull();
  times["open, all"] = [performance.now() - openedAt];
  await typeKeys(session, lines, pull);
  const hints = await askOfAll(session, lines.length);
  const MB = memory();
  await ask("shutdown", null);
  tell("exit", null);
  delete times.warm;
  const late95 = late(times.key);
  return {
    found: `${all.items?.length ?? 0} findings, ${hints} hints`,
    figures: {
      ...Object.fromEntries(
        Object.entries(times).map(([what, all]) => [what, median(all)]),
      ),
      "key, p95": late95,
      MB,
    },
  };
}

/** Types a digit and takes it out, again and again, past the middle of the record; after each the hints of a screen are asked for. */
async function typeKeys({ uri, ask, tell, timed }, lines, pull) {
  // the first reading of a line past the middle, after its last digit
  const line = lines.findIndex(
    (each, at) => lines.length / 2 < at && each.startsWith("  read near "),
  );
  const character = /^ {2}read near \S+/.exec(lines[line])[0].length;
  const screen = {
    start: { line: line - 30, character: 0 },
    end: { line: line + 30, character: 0 },
  };
  let version = 1;
  const type = (key) => {
    const isTyped = key % 2 === 0;
    const start = { line, character };
    tell("textDocument/didChange", {
      textDocument: { uri, version: ++version },
      contentChanges: [
        {
          range: {
            start,
            end: { line, character: character + (isTyped ? 0 : 1) },
          },
          text: isTyped ? "9" : "",
        },
      ],
    });
  };
  const warm = 6;
  for (let key = 0; key < KEYS + warm; key++) {
    const now = key < warm ? "warm" : "key";
    await timed(now, () => {
      type(key);
      return pull();
    });
    await timed(now === "key" ? "hints of a screen" : "warm", () =>
      ask("textDocument/inlayHint", {
        textDocument: { uri },
        range: screen,
      }),
    );
    await pause(12);
  }
}

/** Asks what is of the record as a whole. Gives how many hints it has. */
async function askOfAll({ uri, ask, timed }, count) {
  const textDocument = { uri };
  const whole = {
    start: { line: 0, character: 0 },
    end: { line: count, character: 0 },
  };
  let hints = 0;
  for (let again = 0; again < 6; again++) {
    hints = (
      await timed("hints, all", () =>
        ask("textDocument/inlayHint", { textDocument, range: whole }),
      )
    ).length;
    await timed("outline", () =>
      ask("textDocument/documentSymbol", { textDocument }),
    );
    await timed("layout", () =>
      ask("textDocument/formatting", {
        textDocument,
        options: { tabSize: 2, insertSpaces: true },
      }),
    );
  }
  return hints;
}

try {
  writeFileSync(join(folder, "crib.thou"), CRIB);
  const servers = {
    empty: await bundle(join(folder, "empty"), "empty-server.ts"),
    thou: await bundle(join(folder, "thou"), "../../server/main.node.ts"),
  };
  for (const count of values.lines.split(",").map(Number)) {
    const least = {};
    let found = "";
    for (let round = 0; round < Number(values.rounds); round++)
      for (const [name, file] of Object.entries(servers)) {
        const one = await run(file, count);
        if (name === "thou") found = one.found;
        for (const [what, time] of Object.entries(one.figures))
          least[what] = {
            ...least[what],
            [name]: Math.min(time, least[what]?.[name] ?? Infinity),
          };
      }
    console.log(`\n${count} lines (${found})`);
    console.table(
      Object.fromEntries(
        Object.entries(least).map(([what, { empty, thou }]) => [
          what,
          {
            empty: Number(empty.toFixed(2)),
            thou: Number(thou.toFixed(2)),
            ratio: Number((thou / empty).toFixed(2)),
          },
        ]),
      ),
    );
  }
} finally {
  rmSync(folder, { recursive: true });
}

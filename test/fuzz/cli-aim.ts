// The command line, over files of any bytes: it ends with 0, 1 or 2, shows no stack and no raw control, and what calls itself JSON is JSON.
import { mkdir, mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import type { Io, Output, Parts } from "../../server/cli/io.ts";
import { run } from "../../server/cli/run.ts";
import { createProject } from "../../server/rules/check.ts";
import { bytesOf, damaged } from "./damage.ts";
import type { Random } from "./random.ts";

interface Call {
  readonly words: readonly string[];
  readonly stdin?: Uint8Array;
}

function kept(): Output & { text(): string } {
  const pieces: string[] = [];
  return {
    write: (text) => void pieces.push(text),
    drained: () => Promise.resolve(),
    isTerminal: false,
    columns: undefined,
    isClosed: false,
    text: () => pieces.join(""),
  };
}

async function* once(bytes: Uint8Array): AsyncGenerator<Uint8Array> {
  await Promise.resolve();
  yield bytes;
}

const parts: Parts = {
  createProject: () => createProject({ root: "" }),
  pages: {},
  serverFile: "",
};

/** An odd name too: names of files reach every report. */
const NAMES = [
  "job.thou",
  "__proto__.thou",
  "a b.thou",
  "=1+1.thou",
  "é\u{202e}.thou",
  "x\u{1b}[31m.thou",
];

function callsFor(
  name: string,
  stdin: Uint8Array,
  random: Random,
): readonly Call[] {
  const format = random.pick(["text", "json", "sarif"]);
  return [
    { words: ["check", "--format", format] },
    { words: ["check", name, "--fail-on", "warning", "--brief"] },
    { words: ["format", "--check", "."] },
    { words: ["format", "-"], stdin },
    { words: ["sheet", name] },
    { words: ["sheet", name, "--blank"] },
    {
      words: [
        "compare",
        "old",
        "new",
        "--format",
        random.pick(["text", "json", "md", "markdown"]),
      ],
    },
    {
      words: [
        "trend",
        "old",
        "new",
        "--format",
        random.pick(["text", "json", "csv"]),
      ],
    },
    {
      words: ["learn", ".", "--format", random.pick(["text", "json", "crib"])],
    },
    {
      words: ["limits", "-", "--format", random.pick(["text", "json", "csv"])],
      stdin,
    },
    {
      words: [
        "limits",
        random.pick([
          "25 H7",
          "__proto__",
          "0.875 RC4",
          "25 H7/",
          "1e9 H7",
          "\u{1b}[2J",
        ]),
      ],
    },
    {
      words: [
        "explain",
        random.pick(["fit-tight", "constructor", "\u{1b}]0;x\u{7}"]),
      ],
    },
    {
      words: [
        "ask",
        random.pick(["reamer-wear", "__proto__"]),
        "--archive",
        name,
      ],
    },
    {
      words: [
        random.pick(["no-such", "--zzz", "", "__proto__", "check"]),
        random.pick(["--format", "-", "nowhere", "\u{202e}"]),
      ],
    },
  ];
}

/** HTML may hold joiners, and what a person typed in any script; a terminal gets nothing that steers it. */
const RAW =
  /[\p{Cc}\u{2028}\u{2029}\u{200e}\u{200f}\u{202a}-\u{202e}\u{2066}-\u{2069}\p{Cs}]/u;

/** @returns how many commands were run. @throws Error for one that ended otherwise than it may */
export async function tryCli(
  text: string,
  random: Random,
  others: readonly string[],
): Promise<number> {
  const cwd = await mkdtemp(path.join(tmpdir(), "thou-fuzz-"));
  try {
    const name = random.pick(NAMES);
    const bytes = bytesOf(text, random);
    for (const folder of ["old", "new"]) await mkdir(path.join(cwd, folder));
    await writeFile(path.join(cwd, name), bytes);
    await writeFile(
      path.join(cwd, "old", name),
      damaged(text, random, others),
      "utf8",
    );
    await writeFile(path.join(cwd, "new", name), bytes);
    await writeFile(path.join(cwd, "crib.thou"), random.pick(others), "utf8");
    const calls = callsFor(name, bytes, random);
    for (const call of calls) await tryCall(call, cwd);
    return calls.length;
  } finally {
    await rm(cwd, { recursive: true, force: true });
  }
}

async function tryCall({ words, stdin }: Call, cwd: string): Promise<void> {
  const [stdout, stderr] = [kept(), kept()];
  const io: Io = {
    stdin: once(stdin ?? new Uint8Array()),
    stdout,
    stderr,
    cwd,
    env: {},
  };
  const code = await run(words, io, parts);
  const [out, err] = [stdout.text(), stderr.text()];
  const fail = (what: string): never => {
    throw new Error(
      `thou ${JSON.stringify(words)}: ${what}\n${err.slice(0, 2000)}`,
    );
  };
  if (![0, 1, 2].includes(code)) fail(`it ended with ${String(code)}`);
  if (/fault of thou itself|^\s+at .+:\d+:\d+/mu.test(err + out))
    fail("a fault of its own");
  if (code === 2 && err === "") fail("it could not run, and says nothing");
  for (const line of err.split("\n"))
    if (RAW.test(line)) fail(`a raw control in ${JSON.stringify(line)}`);
  // what is laid out is the user's own text
  if (words[0] !== "format")
    for (const line of out.split(/\r?\n/u))
      // in HTML a tab is a blank
      if (RAW.test(words[0] === "sheet" ? line.replaceAll("\t", " ") : line))
        fail(`a raw control in ${JSON.stringify(line.slice(0, 300))}`);
  if ((words.includes("json") || words.includes("sarif")) && out !== "")
    JSON.parse(out);
}

// Runs a page of the guide: its records are put into a folder beside the sample shop's, its changes are made to them, its command lines are
// run there, and the page comes back with what was really said. Where nothing is stale it is the page that went in.
//
// What a page may hold, by the word after the fence:
//
//     thou pump.thou      a whole record, written to that file
//     diff winch.thou     a change to a record: lines with + and -, and lines that stay with a blank
//     console             command lines after `$ `, each with what it says; a line … stands for lines that are left out
//
// A record and a change are each followed by a line `Findings: …` with the codes that a check of the file has, in their order.
import { execFileSync } from "node:child_process";
import {
  cpSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { run } from "../../server/cli/run.ts";
import { createProject } from "../../server/rules/check.ts";
import { pages } from "../../server/rules/pages.ts";

const SHOP = path.join(import.meta.dirname, "..", "..", "samples", "shop");
const LEFT_OUT = "…";

/** Commits have the same name on every machine and on every day. */
const GIT = {
  GIT_CONFIG_GLOBAL: "/dev/null",
  GIT_CONFIG_SYSTEM: "/dev/null",
  GIT_AUTHOR_NAME: "AK",
  GIT_AUTHOR_EMAIL: "ak@example.invalid",
  GIT_COMMITTER_NAME: "AK",
  GIT_COMMITTER_EMAIL: "ak@example.invalid",
  GIT_AUTHOR_DATE: "2026-11-05T12:00:00Z",
  GIT_COMMITTER_DATE: "2026-11-05T12:00:00Z",
};

export interface RunPage {
  /** The page with what was really found and said. */
  readonly text: string;
  /** How many records, changes and command lines were run. */
  readonly count: number;
}

/** The page as it is when it is run now. Throws where a change does not fit its file or a fence is of none of the forms. */
export async function runPage(text: string): Promise<RunPage> {
  const folder = mkdtempSync(path.join(tmpdir(), "thou-guide-"));
  try {
    cpSync(SHOP, folder, { recursive: true });
    return await runIn(folder, text.split("\n"));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function runIn(
  folder: string,
  lines: readonly string[],
): Promise<RunPage> {
  const out: string[] = [];
  let count = 0;
  let at = 0;
  while (at < lines.length) {
    const line = lines[at] ?? "";
    const [, fence, kind = "", file = ""] =
      /^(```)(\S*) ?(\S*)$/.exec(line) ?? [];
    if (fence === undefined) {
      out.push(line);
      at++;
      continue;
    }
    const end = lines.indexOf("```", at + 1);
    if (end === -1) throw new Error(`a fence is left open: ${line}`);
    const body = lines.slice(at + 1, end);
    at = end + 1;
    out.push(line);
    if (kind === "console") {
      const said = await runConsole(folder, body);
      out.push(...said.lines, "```");
      count += said.count;
      continue;
    }
    out.push(...body, "```");
    if (kind !== "thou" && kind !== "diff") {
      if (body.some((each) => /^\$? ?thou /.test(each)))
        throw new Error(
          `a command line stands in a block that is not run: ${line}`,
        );
      continue;
    }
    if (file === "") throw new Error(`a record needs its file's name: ${line}`);
    const where = path.join(folder, file);
    writeFileSync(
      where,
      kind === "thou"
        ? `${body.join("\n")}\n`
        : changed(readFileSync(where, "utf8"), body),
    );
    count++;
    out.push("", await findingsLine(folder, file));
    if (lines[at] === "" && (lines[at + 1] ?? "").startsWith("Findings:"))
      at += 2;
  }
  return { text: out.join("\n"), count };
}

function changed(text: string, diff: readonly string[]): string {
  const side = (mark: "+" | "-"): string =>
    diff
      .filter((line) => line.startsWith(mark) || line.startsWith(" "))
      .map((line) => `${line.slice(1)}\n`)
      .join("");
  const before = side("-");
  const parts = `\n${text}`.split(`\n${before}`);
  if (parts.length !== 2)
    throw new Error(
      `a change fits its file ${String(parts.length - 1)} times:\n${before}`,
    );
  return parts.join(`\n${side("+")}`).slice(1);
}

async function findingsLine(folder: string, file: string): Promise<string> {
  const { said } = await thou(folder, ["check", "--format", "json", file]);
  const { files } = JSON.parse(said) as {
    readonly files: readonly {
      readonly findings: readonly { readonly code: string }[];
    }[];
  };
  const codes = files.flatMap(({ findings }) =>
    findings.map(({ code }) => code),
  );
  return codes.length === 0
    ? "Findings: none."
    : `Findings: ${codes.map((code) => `\`${code}\``).join(", ")}.`;
}

async function runConsole(
  folder: string,
  body: readonly string[],
): Promise<{ readonly lines: readonly string[]; readonly count: number }> {
  const out: string[] = [];
  let count = 0;
  let code = 0;
  for (let at = 0; at < body.length;) {
    const line = body[at] ?? "";
    if (!line.startsWith("$ ")) throw new Error(`not a command line: ${line}`);
    let end = at + 1;
    while (end < body.length && !(body[end] ?? "").startsWith("$ ")) end++;
    const written = body.slice(at + 1, end);
    at = end;
    const words = wordsOf(line.slice(2));
    const [command, ...rest] = words;
    let said: string;
    if (command === "thou") ({ said, code } = await thou(folder, rest));
    else if (line === "$ echo $?") said = `${String(code)}\n`;
    else said = shell(folder, line.slice(2));
    const real = said === "" ? [] : said.replace(/\n$/, "").split("\n");
    out.push(line, ...(agree(written, real) ? written : real));
    count++;
  }
  return { lines: out, count };
}

/** Whether what is written is what was said, but for what it leaves out. */
export function agree(
  written: readonly string[],
  real: readonly string[],
): boolean {
  const [first, ...rest] = written;
  if (first === undefined) return real.length === 0;
  if (first !== LEFT_OUT)
    return first === real[0] && agree(rest, real.slice(1));
  return real.some((_, from) => agree(rest, real.slice(from + 1)));
}

function wordsOf(line: string): readonly string[] {
  return [...line.matchAll(/"([^"]*)"|(\S+)/g)].map(
    ([, quoted, plain]) => quoted ?? plain ?? "",
  );
}

function shell(folder: string, line: string): string {
  if (!/^(?:git|mkdir|cp|sh) /.test(line))
    throw new Error(`a page may not run this: ${line}`);
  return execFileSync("sh", ["-c", line], {
    cwd: folder,
    encoding: "utf8",
    env: { PATH: process.env.PATH ?? "", ...GIT },
    stdio: ["ignore", "pipe", "pipe"],
  });
}

async function thou(
  folder: string,
  words: readonly string[],
): Promise<{ readonly said: string; readonly code: number }> {
  let said = "";
  const stream = {
    write(text: string) {
      said += text;
    },
    drained: () => Promise.resolve(),
    isTerminal: false,
    columns: undefined,
    isClosed: false,
  };
  const stdin = {
    async *[Symbol.asyncIterator](): AsyncGenerator<string> {
      // nothing is typed into a page
    },
  };
  const code = await run(
    words,
    {
      stdin,
      stdout: stream,
      stderr: stream,
      cwd: folder,
      env: { PATH: process.env.PATH },
    },
    {
      createProject: () => createProject({ root: "" }),
      pages,
      serverFile: path.join(folder, "server.cjs"),
    },
  );
  return { said, code };
}

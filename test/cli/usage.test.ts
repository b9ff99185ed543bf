// The command line itself: help, version, and what is said to someone who mistyped.
import { mkdir, readdir, writeFile } from "node:fs/promises";
import path from "node:path";
import { describe, expect, test } from "vitest";
import manifest from "../../package.json" with { type: "json" };
import { folderWith, thou } from "./in-process.ts";
import { real } from "./scratch-repository.ts";

const COMMANDS = [
  "check",
  "compare",
  "format",
  "limits",
  "sheet",
  "export",
  "ask",
  "explain",
  "serve",
];

describe("help", () => {
  test("of the whole lists every command", async () => {
    const cwd = await folderWith({});
    const { code, out, err } = await thou(["--help"], { cwd, columns: 80 });
    expect([code, err]).toEqual([0, ""]);
    for (const command of COMMANDS)
      expect(out).toMatch(new RegExp(`^  ${command} +\\w`, "m"));
    await expect(out).toMatchFileSnapshot("golden/help-80.txt");
  });

  test.each(COMMANDS)(
    "of %s has an example and fits a terminal of 80",
    async (command) => {
      const cwd = await folderWith({});
      const { code, out, err } = await thou([command, "--help"], {
        cwd,
        columns: 80,
      });
      expect([code, err]).toEqual([0, ""]);
      expect(out).toContain(`Usage: thou ${command}`);
      expect(out).toMatch(/\nExamples?[:,]/);
      expect(out.split("\n").filter((line) => 80 < line.length)).toEqual([]);
      expect((await thou(["help", command], { cwd, columns: 80 })).out).toBe(
        out,
      );
      expect((await thou([command, "-h"], { cwd, columns: 80 })).out).toBe(out);
    },
  );

  test("is shown where no command is given, and that is a failure", async () => {
    const cwd = await folderWith({});
    const { code, out, err } = await thou([], { cwd });
    expect([code, out]).toEqual([2, ""]);
    expect(err).toContain("Usage: thou");
  });
});

test("the version is the package's", async () => {
  expect(await thou(["--version"], { cwd: await folderWith({}) })).toEqual({
    code: 0,
    out: `${manifest.version}\n`,
    err: "",
  });
});

describe("a mistyped line is one sentence and code 2", () => {
  test.each([
    [["chek"], 'there is no command "chek"; did you mean check?'],
    [
      ["polish"],
      'there is no command "polish"; "thou --help" shows what there is.',
    ],
    [["version"], 'there is no command "version"; "thou --version" says it.'],
    // what other tools begin with, and a file where a command stands
    [
      ["init"],
      'there is no command "init"; a record is a text file that any editor makes, and "thou explain job" says how it begins.',
    ],
    [
      ["pump.thou"],
      'there is no command "pump.thou"; to check it, "thou check pump.thou".',
    ],
    [["--versoin"], 'thou has no option "--versoin"; did you mean --version?'],
    [
      ["check", "--formt", "json"],
      'check has no option "--formt"; did you mean --format?',
    ],
    [
      ["check", "--format", "xml"],
      '--format takes text, json or sarif, not "xml"; "thou check --help" shows what there is.',
    ],
    [
      ["check", "--fail-on", "hint"],
      '--fail-on takes error or warning, not "hint"; "thou check --help" shows what there is.',
    ],
    [
      ["export"],
      'export needs --out <folder>; "thou export --help" shows what there is.',
    ],
    [
      ["check", "--format"],
      '"--format <form>" needs a word after it; "thou check --help" shows what there is.',
    ],
    [
      ["limits"],
      'limits needs something to work on (classes); "thou limits --help" shows what there is.',
    ],
    [
      ["explain", "a", "b"],
      'explain takes one word after it, and was given 2; "thou explain --help" shows what there is.',
    ],
    [
      ["compare", "a", "b", "c"],
      'compare takes 2 words after it, and was given 3; "thou compare --help" shows what there is.',
    ],
    [["help", "chek"], 'there is no command "chek"; did you mean check?'],
    [["-v"], 'thou has no option "-v"; did you mean -V?'],
    [
      ["serve"],
      'The server speaks over standard input and output only; write "thou serve --stdio".',
    ],
    [
      ["ch\u{1B}[31mk"],
      'there is no command "ch\\x1b[31mk"; "thou --help" shows what there is.',
    ],
  ])("%j", async (words, sentence) => {
    const ran = await thou(words, { cwd: await folderWith({}), columns: 200 });
    expect(ran).toEqual({ code: 2, out: "", err: `thou: ${sentence}\n` });
  });
});

describe("serve", () => {
  test("loads the server that lies beside the command, and writes nothing itself", async () => {
    const cwd = await folderWith({});
    const serverFile = path.join(cwd, "with blank #1", "server.cjs");
    await mkdir(path.dirname(serverFile));
    await writeFile(
      serverFile,
      "globalThis.thouServed = (globalThis.thouServed ?? 0) + 1;",
    );
    const ran = await thou(["serve", "--stdio", "--clientProcessId=42"], {
      cwd,
      parts: { serverFile },
    });
    expect(ran).toEqual({ code: 0, out: "", err: "" });
    expect(Reflect.get(globalThis, "thouServed")).toBe(1);
  });

  test("says where it should lie when it is missing", async () => {
    const cwd = await folderWith({});
    const ran = await thou(["serve", "--stdio"], { cwd, columns: 500 });
    expect(ran).toEqual({
      code: 2,
      out: "",
      err: `thou: The language server is missing (it should lie at ${path.join(cwd, "server.cjs")}); install thou again.\n`,
    });
  });
});

test("a fault of the tool itself is one sentence, without a stack trace", async () => {
  const cwd = await folderWith({ "a.thou": "job a\n" });
  const parts = {
    createProject: () => {
      throw new TypeError("no such thing");
    },
  };
  const ran = await thou(["check"], { cwd, parts, columns: 200 });
  expect(ran).toEqual({
    code: 2,
    out: "",
    err: "thou: this is a fault of thou itself: TypeError: no such thing. Please report it with what you asked for.\n",
  });
});

describe("standard input, where it is not read", () => {
  test.each([
    ["trend", "-"],
    ["learn", "-"],
    ["export", "-", "--out", "archive"],
    ["compare", "-", "a.thou"],
  ])("%s %s is told so, and how else", async (...words) => {
    const cwd = await folderWith({ "a.thou": "job a\n" });
    const ran = await thou(words, { cwd, columns: 400, stdin: "job b\n" });
    expect(ran.code).toBe(2);
    expect(ran.err).toMatch(
      /^thou: - would be standard input, which is not (?:read here|compared): (?:name|keep) /mu,
    );
  });

  test("a file of that name is named by its folder", async () => {
    const cwd = await folderWith({ "-": "job a\n" });
    const ran = await thou(["trend", "./-"], {
      cwd,
      project: { checks: {} },
    });
    expect(ran.err).not.toContain("standard input");
  });
});

describe("a path that is not there", () => {
  test.each([
    [["check", "pump"], "pump", "pump.thou"],
    [["check", "Pump.thou"], "Pump.thou", "pump.thou"],
    [["sheet", "pmup.thou"], "pmup.thou", "pump.thou"],
    [["trend", "job"], "job", "jobs"],
    [["compare", "pump.thou", "jobs/a.thuo"], "jobs/a.thuo", "jobs/a.thou"],
  ])("%j: what it may have been", async (words, asked, near) => {
    const cwd = await folderWith({
      "pump.thou": "job a\n",
      "jobs/a.thou": "job b\n",
      "notes.txt": "",
    });
    const { code, err } = await thou(words, { cwd, columns: 400 });
    expect(code).toBe(2);
    expect(err).toMatch(
      new RegExp(`^thou: ${asked} .*; did you mean ${near}\\?$`, "mu"),
    );
  });

  test("nothing is offered that is no record and no folder, or that is far", async () => {
    const cwd = await folderWith({ "notes.txt": "", ".jobs/a.thou": "" });
    for (const asked of ["notes.tx", ".job", "winch.thou"])
      expect((await thou(["check", asked], { cwd })).err).toBe(
        `thou: ${asked} cannot be read: there is no such file or folder.\n`,
      );
  });

  test.each([
    ["sheet", "a.thou", "--out", "out/a.html"],
    ["learn", "a.thou", "--out", "out/a.thou"],
    ["trend", "a.thou", "--svg", "out/a.svg"],
  ])("%s into a folder that is not there says so", async (...words) => {
    const cwd = await folderWith({ "a.thou": "job a\n" });
    const { code, err } = await thou(words, { cwd, columns: 400, ...real });
    expect(code).toBe(2);
    expect(err).toContain("cannot be written: its folder is not there");
  });

  test.each([
    [
      ["sheet", "a.thou", "--out", "-"],
      "--out takes a file, and - is none: without it the sheet goes to standard output.",
    ],
    [
      ["learn", "a.thou", "--out", "-"],
      '--out takes a file, and - is none: "--format thou" writes the crib to standard output.',
    ],
    [
      ["trend", "a.thou", "--svg", "-"],
      '--svg takes a file, and - is none: "--format svg" writes the picture to standard output.',
    ],
  ])("%j makes no file that is called -", async (words, says) => {
    const cwd = await folderWith({ "a.thou": "job a\n" });
    expect(await thou(words, { cwd, columns: 400, ...real })).toEqual({
      code: 2,
      out: "",
      err: `thou: ${says}\n`,
    });
    expect(await readdir(cwd)).toEqual(["a.thou"]);
  });
});

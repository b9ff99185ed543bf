// The command as it ships: one bundle, started as a process of its own, over the real model.
import { spawn } from "node:child_process";
import { existsSync } from "node:fs";
import { chmod, readFile, readdir, symlink, writeFile } from "node:fs/promises";
import path from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import manifest from "../../package.json" with { type: "json" };
import { shopHistory } from "../history/shop-history.ts";
import { bundledCommand } from "./bundled-command.ts";
import { folderWith } from "./in-process.ts";

let folder = "";
let command = "";

beforeAll(async () => {
  ({ folder, command } = await bundledCommand());
});

interface Ended {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs the bundle; `leave` closes its standard output after the first piece, as `head` does. */
function ran(
  words: readonly string[],
  cwd: string,
  options: { stdin?: string; leave?: boolean; by?: string } = {},
): Promise<Ended> {
  return new Promise((resolve, reject) => {
    const child = spawn(
      options.by ?? process.execPath,
      [...(options.by === undefined ? [command] : []), ...words],
      {
        cwd,
        env: {
          ...process.env,
          // set to nothing at once, Node itself warns of them in a thread
          FORCE_COLOR: undefined,
          NO_COLOR: undefined,
          NODE_OPTIONS: "",
        },
      },
    );
    let out = "";
    let err = "";
    child.stdout.setEncoding("utf8").on("data", (text: string) => {
      out += text;
      if (options.leave === true) child.stdout.destroy();
    });
    child.stderr.setEncoding("utf8").on("data", (text: string) => {
      err += text;
    });
    child.on("error", reject);
    child.on("close", (code) => {
      resolve({ code, out, err });
    });
    // whoever leaves early does not read the rest
    child.stdin.on("error", () => undefined);
    child.stdin.end(options.stdin ?? "");
  });
}

describe("the bundle", () => {
  test("is one file that needs nothing beside it, and starts by its own name or a link", async () => {
    expect((await readFile(command, "utf8")).split("\n")[0]).toBe(
      "#!/usr/bin/env node",
    );
    expect(await ran(["--version"], folder)).toEqual({
      code: 0,
      out: `${manifest.version}\n`,
      err: "",
    });
    await chmod(command, 0o755);
    const link = path.join(folder, "thou");
    await symlink("cli.cjs", link);
    expect((await ran(["--version"], folder, { by: link })).out).toBe(
      `${manifest.version}\n`,
    );
  });

  test("checks a file by the real model", async () => {
    const cwd = await folderWith({
      "a.thou":
        "job a\n  units inch\njournal front on shaft\n  limits 0,8740 to 0.8745\n",
    });
    const { code, out, err } = await ran(["check", "--format", "json"], cwd);
    expect([code, err]).toEqual([1, ""]);
    expect(JSON.parse(out)).toMatchObject({
      schema: 1,
      files: [
        {
          file: "a.thou",
          findings: expect.arrayContaining([
            expect.objectContaining({
              code: "number-comma",
              line: 4,
              column: 10,
            }),
          ]) as unknown,
        },
      ],
    });
    const text = await ran(["check"], cwd);
    expect(text.code).toBe(1);
    expect(text.out).toContain("a.thou:4:10 error number-comma");
    expect(text.out).not.toContain("\u{1B}");
  });

  test("finds a crib above the folder that it is started in", async () => {
    const cwd = await folderWith({
      "crib.thou": "shop c\n  units inch\nreamer r\n  size 0,8755\n",
      "jobs/a.thou": 'job a\n  units inch\n  use "../crib.thou"\n',
    });
    const { out } = await ran(["check"], path.join(cwd, "jobs"));
    expect(out).toContain("../crib.thou is used here and has an error");
  });

  test("without DuckDB says which command installs it, and writes nothing", async () => {
    const cwd = await folderWith({ "a.thou": "job a\n  units inch\n" });
    for (const words of [
      ["export", "--out", "archive"],
      ["ask", "closures"],
    ]) {
      const { code, out, err } = await ran(words, cwd);
      expect([code, out]).toEqual([2, ""]);
      expect(err.replaceAll(/\s+/g, " ")).toContain(
        `the archive is read and written by DuckDB, which is not installed here: run "npm install @duckdb/node-api@${manifest.optionalDependencies["@duckdb/node-api"]}" where thou is installed`,
      );
    }
    expect(await readdir(cwd)).toEqual(["a.thou"]);
    // the questions themselves need nothing
    expect((await ran(["ask"], cwd)).out).toContain("gauges-overdue");
    expect((await ran(["ask", "closures", "--sql"], cwd)).out).toContain(
      "SELECT",
    );
  });

  test.runIf(existsSync("/dev/full"))(
    "says that what it writes does not get there, and fails",
    async () => {
      const cwd = await folderWith({});
      for (const words of ["--help", "limits 25H7", "explain"])
        expect(
          await ran(
            ["-c", `exec ${process.execPath} ${command} ${words} > /dev/full`],
            cwd,
            { by: "/bin/sh" },
          ),
        ).toEqual({
          code: 2,
          out: "",
          err: "thou: standard output cannot be written: the disk is full. What was said is not whole; run it again where there is room.\n",
        });
    },
  );

  test("reads standard input and writes standard output as they are", async () => {
    expect(
      await ran(["format", "-"], folder, { stdin: "\u{FEFF}job  a\r\n" }),
    ).toEqual({ code: 0, out: "\u{FEFF}job a\r\n", err: "" });
    const { out } = await ran(["limits", "--format", "json", "-"], folder, {
      stdin: "25 H7\n20 g6\n",
    });
    expect(JSON.parse(out)).toMatchObject([
      { asked: "25 H7" },
      { asked: "20 g6" },
    ]);
  });

  test("ends in silence when nobody reads on, with the code that it would have had", async () => {
    const long = Array.from(
      { length: 20_000 },
      (_, index) => `${(index % 400) + 1} H7`,
    ).join("\n");
    expect(
      await ran(["limits", "-"], folder, { stdin: long, leave: true }),
    ).toMatchObject({ code: 0, err: "" });
    const cwd = await folderWith({
      "a.thou": Array.from(
        { length: 800 },
        (_, n) => `journal j${n} on shaft\n  limits 0,8740 to 0.8745\n`,
      ).join(""),
    });
    const whole = await ran(["check"], cwd);
    expect(whole.out.length).toBeGreaterThan(100_000);
    expect(await ran(["check"], cwd, { leave: true })).toMatchObject({
      code: whole.code,
      err: "",
    });
  });

  test("hands its streams to the language server beside it", async () => {
    await writeFile(
      path.join(folder, "server.cjs"),
      'process.stdin.on("data", (d) => process.stdout.write(`${process.argv.slice(2).join(" ")}: ${d}`)).on("end", () => process.exit(3));\n',
    );
    expect(
      await ran(["serve", "--stdio"], folder, {
        stdin: "Content-Length: 2\r\n\r\n{}",
      }),
    ).toEqual({
      code: 3,
      out: "serve --stdio: Content-Length: 2\r\n\r\n{}",
      err: "",
    });
  });
});

describe("many records", () => {
  test("come out alike whatever the number of threads, and in the order of the files", async () => {
    const history = shopHistory(31, { records: 72 });
    const files = Object.fromEntries([
      ...[...history.cribs].map(({ path: at, text }) => [at, text] as const),
      ...[...history.records].map(
        ({ path: at, versions }) => [at, versions.at(-1)?.text ?? ""] as const,
      ),
    ]);
    const cwd = await folderWith({
      ...files,
      "zz-bytes.thou": "job\u{FFFD}\n",
    });
    await writeFile(path.join(cwd, "aa-bytes.thou"), Buffer.from([0x6a, 0xff]));
    for (const format of ["json", "sarif", "text"]) {
      const [one, two, four] = await Promise.all(
        ["1", "2", "4"].map((jobs) =>
          ran(
            [
              ...["check", "--format", format, "--jobs", jobs],
              // by 2 answers are kept and taken, by both at once
              ...(jobs === "1" ? [] : ["--cache", ".answers"]),
            ],
            cwd,
          ),
        ),
      );
      expect(one?.out.length).toBeGreaterThan(10_000);
      expect(one?.err).toContain("aa-bytes.thou cannot be read");
      for (const other of [two, four]) {
        expect(other?.err, format).toBe(one?.err);
        // not as a difference: megabytes of it
        expect(other?.out === one?.out, format).toBe(true);
        expect(other?.code).toBe(one?.code);
      }
    }
  }, 120_000);

  test("--jobs takes a whole number", async () => {
    const cwd = await folderWith({ "a.thou": "job a\n" });
    const { code, err } = await ran(["check", "--jobs", "0"], cwd);
    expect(code).toBe(2);
    expect(err).toContain("--jobs takes a whole number from 1 to 64");
  });
});

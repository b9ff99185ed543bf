// `thou sheet`: what it reads and writes, what it will not write over, and what it asks of git. What stands on a sheet is tested with it.
import { execFileSync } from "node:child_process";
import {
  chmod,
  mkdir,
  readFile,
  readdir,
  symlink,
  writeFile,
} from "node:fs/promises";
import path from "node:path";
import { describe, expect, test } from "vitest";
import { dayOf } from "../../server/cli/sheet.ts";
import { createProject } from "../../server/rules/check.ts";
import { readPage } from "../sheet/read-page.ts";
import { folderWith, thou, type Ran } from "./in-process.ts";

const JOB = `job pump
  title "Bilge pump"
  units inch
  use "crib.thou"
part shaft
journal j on shaft
  limits 0.8740 to 0.8745
  read 0.8747 with mic
`;
const CRIB = "shop c\n  units inch\ngauge mic\n  resolution 0.0001\n";

async function shop(): Promise<string> {
  return folderWith({ "pump.thou": JOB, "crib.thou": CRIB });
}

function sheet(
  cwd: string,
  words: readonly string[],
  env: Readonly<Record<string, string>> = {},
  stdin?: string,
): Promise<Ran> {
  return thou(["sheet", ...words], {
    cwd,
    columns: 400,
    env,
    ...(stdin === undefined ? {} : { stdin }),
    parts: { createProject: () => createProject({ root: "" }) },
  });
}

describe("the sheet", () => {
  test("goes to standard output where no file is named, with the files that were read", async () => {
    const { code, out, err } = await sheet(await shop(), ["pump.thou"]);
    expect([code, err]).toEqual([0, ""]);
    const { errors, text } = readPage(out);
    expect(errors).toEqual([]);
    expect(text).toContain("Bilge pump");
    expect(text).toContain("Files read pump.thou, crib.thou");
    // an error of the record is no failure: it stands on the sheet
    expect(text).toContain("code reading-off-limits");
  });

  test("goes into the file that is named, whole and by itself, and again over a sheet of ours", async () => {
    const cwd = await shop();
    for (const words of [["pump.thou"], ["pump.thou", "--blank"]]) {
      const ran = await sheet(cwd, [...words, "--out", "pump.html"]);
      expect(ran.code).toBe(0);
      expect(ran.out).toBe("");
      expect(ran.err).toBe(
        `thou: ${words.length === 1 ? "job" : "measuring"} sheet written to pump.html; open it in a browser and print it.\n`,
      );
      expect(await readFile(path.join(cwd, "pump.html"), "utf8")).toContain(
        words.length === 1 ? "Bilge pump: job sheet" : "Reads on it before",
      );
    }
    expect((await readdir(cwd)).sort()).toEqual([
      "crib.thou",
      "pump.html",
      "pump.thou",
    ]);
  });

  test("is made of standard input, which belongs where it is said to", async () => {
    const cwd = await shop();
    const piped = JOB.replace("Bilge pump", "Bilge pump as typed");
    const ran = await sheet(cwd, ["-", "--as", "pump.thou"], {}, piped);
    expect([ran.code, ran.err]).toEqual([0, ""]);
    const { text } = readPage(ran.out);
    expect(text).toContain("Bilge pump as typed");
    expect(text).toContain("Files read pump.thou, crib.thou");
    expect(text).toContain("the record came on standard input");
    const elsewhere = await sheet(cwd, ["-"], {}, piped);
    expect(readPage(elsewhere.out).text).toContain("Files read -, crib.thou");
    for (const [words, said] of [
      [["-", "--as", "."], "--as takes the file that the record stands for"],
      [["pump.thou", "--as", "a.thou"], "give - as the only path"],
      [["-", "--as", "pump.thou", "--out", "pump.thou"], "the record itself"],
    ] as const) {
      const refused = await sheet(cwd, words, {}, piped);
      expect([refused.code, refused.out]).toEqual([2, ""]);
      expect(refused.err).toContain(said);
    }
    expect(await readFile(path.join(cwd, "pump.thou"), "utf8")).toBe(JOB);
  });

  test("is not poured over a terminal", async () => {
    const cwd = await shop();
    const asked = { cwd, columns: 400, terminal: true };
    expect(await thou(["sheet", "pump.thou"], asked)).toEqual({
      code: 2,
      out: "",
      err: "thou: a sheet is a page of HTML, which a terminal does not show: name a file for it, as with --out pump.html.\n",
    });
    expect(await readdir(cwd)).not.toContain("pump.html");
  });

  test("keeps a link a link", async () => {
    const cwd = await shop();
    await mkdir(path.join(cwd, "out"));
    await writeFile(path.join(cwd, "out", "real.html"), "");
    await symlink(path.join("out", "real.html"), path.join(cwd, "a.html"));
    expect((await sheet(cwd, ["pump.thou", "--out", "a.html"])).code).toBe(0);
    expect(
      await readFile(path.join(cwd, "out", "real.html"), "utf8"),
    ).toContain("Bilge pump");
  });
});

describe("is refused in one sentence, with nothing written", () => {
  test.each([
    [
      ["none.thou"],
      "none.thou cannot be read: there is no such file or folder.",
    ],
    [
      ["."],
      ". cannot be read: it is a folder; name one record, for a sheet is of one job.",
    ],
    [
      ["pump.thou", "--out", "notes.html"],
      "notes.html is there already and is no sheet of thou's; name another file, or write over it with --force.",
    ],
    [
      ["pump.thou", "--out", "pump.thou"],
      "pump.thou is the record itself; name another file for the sheet.",
    ],
    [
      ["pump.thou", "--out", "pump.thou", "--force"],
      "pump.thou is the record itself; name another file for the sheet.",
    ],
    [
      ["pump.thou", "--out", "none/a.html"],
      "none/a.html cannot be written: its folder is not there; name another file.",
    ],
    [
      ["pump.thou", "--out", "."],
      ". cannot be written: it is a folder; name another file.",
    ],
    [
      ["pump.thou", "--out", "\u{1B}[31m/a.html"],
      "\\x1b[31m/a.html cannot be written: its folder is not there; name another file.",
    ],
    [
      [],
      'sheet needs something to work on (file); "thou sheet --help" shows what there is.',
    ],
  ])("%j", async (words, sentence) => {
    const cwd = await shop();
    await writeFile(path.join(cwd, "notes.html"), "<p>mine</p>");
    const ran = await sheet(cwd, words);
    expect(ran).toEqual({ code: 2, out: "", err: `thou: ${sentence}\n` });
    expect(await readFile(path.join(cwd, "notes.html"), "utf8")).toBe(
      "<p>mine</p>",
    );
    expect(await readFile(path.join(cwd, "pump.thou"), "utf8")).toBe(JOB);
    expect((await readdir(cwd)).sort()).toEqual([
      "crib.thou",
      "notes.html",
      "pump.thou",
    ]);
  });

  test("the record itself under another name", async () => {
    const cwd = await shop();
    await symlink("pump.thou", path.join(cwd, "a.html"));
    const { code, err } = await sheet(cwd, [
      "pump.thou",
      "--out",
      "a.html",
      "--force",
    ]);
    expect([code, err]).toEqual([
      2,
      "thou: a.html is the record itself; name another file for the sheet.\n",
    ]);
    expect(await readFile(path.join(cwd, "pump.thou"), "utf8")).toBe(JOB);
  });

  test("a record that is not UTF-8", async () => {
    const cwd = await folderWith({ "a.thou": new Uint8Array([0xff, 0xfe, 0]) });
    expect(await sheet(cwd, ["a.thou"])).toEqual({
      code: 2,
      out: "",
      err: "thou: a.thou cannot be read: it is in UTF-16; save it as UTF-8.\n",
    });
  });
});

test("--force writes over a file of someone else's", async () => {
  const cwd = await shop();
  await writeFile(path.join(cwd, "notes.html"), "<p>mine</p>");
  const words = ["pump.thou", "--out", "notes.html", "--force"];
  expect((await sheet(cwd, words)).code).toBe(0);
  expect(await readFile(path.join(cwd, "notes.html"), "utf8")).toContain(
    "Bilge pump",
  );
});

test("a crib that can't be read is told, stands on the sheet as missing, and the sheet is made", async () => {
  const cwd = await folderWith({
    "pump.thou": JOB,
    "crib.thou": new Uint8Array([0x80]),
  });
  const { code, out, err } = await sheet(cwd, ["pump.thou"]);
  expect(code).toBe(2);
  expect(err).toContain("crib.thou cannot be read: it is not UTF-8");
  expect(readPage(out).text).toContain(
    "Files read pump.thou, crib.thou (not there)",
  );
});

test("a day is the day where one is", () => {
  expect(dayOf(new Date(2026, 0, 3, 23, 59))).toBe("2026-01-03");
  expect(dayOf(new Date(2026, 10, 25, 0, 0))).toBe("2026-11-25");
});

const withGit = { PATH: process.env.PATH ?? "" };
const hasGit = ((): boolean => {
  try {
    execFileSync("git", ["--version"]);
    return true;
  } catch {
    return false;
  }
})();

/** What the sheet says of the state of the files. */
async function stateOf(
  cwd: string,
  record = "pump.thou",
  env: Readonly<Record<string, string>> = withGit,
): Promise<string> {
  const { out } = await sheet(cwd, [record], env);
  const { text } = readPage(out);
  return (
    /State of the files (.*?) Sheet made/
      .exec(text)?.[1]
      ?.replace(/ ,/g, ",") ?? ""
  );
}

test("without git it says that it does not know", async () => {
  expect(await stateOf(await shop(), "pump.thou", { PATH: "/nowhere" })).toBe(
    "not known to be under version control: git is not installed",
  );
});

describe.skipIf(!hasGit)("the state of the files, by git", () => {
  function git(cwd: string, ...words: readonly string[]): string {
    return execFileSync(
      "git",
      ["-c", "user.name=t", "-c", "user.email=t@t.example", ...words],
      { cwd, encoding: "utf8", stdio: ["ignore", "pipe", "ignore"] },
    ).trim();
  }
  async function repository(): Promise<string> {
    const cwd = await shop();
    git(cwd, "init", "-q");
    return cwd;
  }

  test("outside of any repository", async () => {
    expect(await stateOf(await shop())).toBe("not under version control");
  });

  test("in one that does not know the record", async () => {
    expect(await stateOf(await repository())).toBe("not under version control");
  });

  test("added and never committed", async () => {
    const cwd = await repository();
    git(cwd, "add", ".");
    expect(await stateOf(cwd)).toBe(
      "under version control, never committed, with uncommitted changes in pump.thou, crib.thou",
    );
  });

  test("committed: the revision is git's; then changed, new and named like a pattern", async () => {
    const cwd = await repository();
    await writeFile(path.join(cwd, "[p]ump.thou"), JOB);
    await mkdir(path.join(cwd, "-x"));
    git(cwd, "add", "pump.thou", "crib.thou");
    git(cwd, "commit", "-qm", "first");
    const revision = git(cwd, "rev-parse", "--short=12", "HEAD");
    expect(await stateOf(cwd)).toBe(
      `revision ${revision}, no uncommitted changes`,
    );
    await writeFile(path.join(cwd, "crib.thou"), `${CRIB}# changed\n`);
    expect(await stateOf(cwd)).toBe(
      `revision ${revision}, with uncommitted changes in crib.thou`,
    );
    git(cwd, "add", "crib.thou");
    expect(await stateOf(cwd)).toBe(
      `revision ${revision}, with uncommitted changes in crib.thou`,
    );
    git(cwd, "commit", "-qm", "second");
    // a name that git could take for a pattern is only itself, and nobody added it
    expect(await stateOf(cwd, "[p]ump.thou")).toBe(
      `revision ${git(cwd, "rev-parse", "--short=12", "HEAD")}, with uncommitted changes in [p]ump.thou`,
    );
  });

  test("no program that the repository names is run", async () => {
    const cwd = await repository();
    git(cwd, "add", ".");
    git(cwd, "commit", "-qm", "first");
    const trap = path.join(cwd, "trap.sh");
    await writeFile(trap, `#!/bin/sh\ntouch "${cwd}/sprung"\n`);
    await chmod(trap, 0o755);
    git(cwd, "config", "core.fsmonitor", trap);
    await stateOf(cwd);
    expect(await readdir(cwd)).not.toContain("sprung");
  });
});

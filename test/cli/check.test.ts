// `thou check` as a whole, over a project that says what the test wants.
import { symlink, chmod } from "node:fs/promises";
import path from "node:path";
import { describe, expect, test } from "vitest";
import {
  createFakeProject,
  finding,
  placeOf,
  type FakeWorld,
} from "./fake-project.ts";
import { createProject } from "../../server/rules/check.ts";
import { folderWith, thou } from "./in-process.ts";
import { real } from "./scratch-repository.ts";
import { CRIB, WINCH, WINCH_WORLD } from "./winch.ts";

/** A finding of this level on the first line of every file named. */
function finds(
  level: "error" | "warning" | "information" | "hint",
  accepted: string | null,
  ...names: readonly string[]
): FakeWorld {
  return {
    checks: Object.fromEntries(
      names.map((name) => [
        name,
        (file: string) => ({
          findings: [
            finding(
              { file, line: 0, start: 0, end: 3 },
              { code: "fit-tight", level, message: "Too tight.", accepted },
            ),
          ],
          results: [],
        }),
      ]),
    ),
  };
}

async function namesOf(
  words: readonly string[],
  cwd: string,
): Promise<readonly string[]> {
  const { out } = await thou(["check", "--format", "json", ...words], { cwd });
  return (JSON.parse(out) as { files: { file: string }[] }).files.map(
    ({ file }) => file,
  );
}

describe("what a reader sees", () => {
  test.each([80, 100])("at %i columns", async (columns) => {
    const cwd = await folderWith({
      "shop/winch.thou": WINCH,
      "shop/crib.thou": CRIB,
    });
    const ran = await thou(["check", "shop/winch.thou"], {
      cwd,
      project: WINCH_WORLD,
      columns,
    });
    await expect(ran.out).toMatchFileSnapshot(`golden/winch-${columns}.txt`);
    expect(ran.out.split("\n").filter((line) => columns < line.length)).toEqual(
      [],
    );
    expect(ran).toMatchObject({ code: 1, err: "" });
  });

  test("on a terminal too narrow for the table", async () => {
    const cwd = await folderWith({ "winch.thou": WINCH });
    const ran = await thou(["check"], {
      cwd,
      project: WINCH_WORLD,
      columns: 50,
    });
    await expect(ran.out).toMatchFileSnapshot("golden/winch-50.txt");
  });

  test("is the same with colours as without, but for the colours", async () => {
    const cwd = await folderWith({ "winch.thou": WINCH });
    const world = { cwd, project: WINCH_WORLD, columns: 80 };
    const plain = await thou(["check"], world);
    const coloured = await thou(["check"], {
      ...world,
      terminal: true,
      env: { TERM: "xterm" },
    });
    expect(coloured.out).toContain("\u{1B}[");
    // eslint-disable-next-line no-control-regex
    expect(coloured.out.replace(/\u{1B}\[\d+m/gu, "")).toBe(plain.out);
  });

  test.each([
    [{ terminal: false }, false],
    [{ terminal: true }, true],
    [{ terminal: true, env: { NO_COLOR: "1" } }, false],
    [{ terminal: true, env: { NO_COLOR: "" } }, true],
    [{ terminal: true, env: { TERM: "dumb" } }, false],
    [{ terminal: false, env: { FORCE_COLOR: "1" } }, true],
    [{ terminal: true, env: { FORCE_COLOR: "0" } }, false],
    [{ terminal: true, env: { FORCE_COLOR: "1", NO_COLOR: "1" } }, false],
    [{ terminal: false, env: { CI: "true" } }, false],
  ])("has colours where they are wanted: %j", async (look, wanted) => {
    const cwd = await folderWith({ "winch.thou": WINCH });
    const { out } = await thou(["check"], {
      cwd,
      project: WINCH_WORLD,
      ...look,
    });
    expect(out.includes("\u{1B}")).toBe(wanted);
  });

  test("never lets a file, a name or a message steer the terminal", async () => {
    const name = "a\u{1B}]0;owned\u{7}.thou";
    const cwd = await folderWith({
      [name]: "job x\u{1B}[2J\u{9B}31m\n  title \u{202E}\u{200B}x\n",
    });
    const evil = "\u{1B}[31mred\u{1B}[0m\rback\u{8}\u{2028}\nline";
    const project: FakeWorld = {
      checks: {
        [name]: (file) => ({
          findings: [0, 1].map((line) =>
            finding(
              { file, line, start: 5, end: 9 },
              {
                code: evil,
                level: "error",
                message: evil,
                related: [
                  { place: { file, line, start: 0, end: 1 }, message: evil },
                ],
              },
            ),
          ),
          results: [],
        }),
      },
    };
    for (const words of [["check"], ["check", name]]) {
      const { out } = await thou(words, { cwd, project });
      expect(out).toContain("\\x1b]0;owned\\x07.thou:1:6");
      expect(out).toContain("job x\\x1b[2J\\x9b31m");
      expect(out).toContain("\\u{202e}\\u{200b}x");
      expect(out.replaceAll("\n", "")).not.toMatch(
        /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/u,
      );
    }
    const { err } = await thou(["check", "no\u{1B}[31mpe"], { cwd });
    expect(err).toBe(
      "thou: no\\x1b[31mpe cannot be read: there is no such file or folder.\n",
    );
  });

  test("says what is next: the step, else what is missing, of each job that waits", async () => {
    const cwd = await folderWith({
      "a.thou": "job a\n",
      "b.thou": "job b\n",
      "c.thou": "job c\n",
    });
    const step: FakeWorld["checks"][string] = (file, lines) => ({
      findings: ["step press-in", "step bolt-up"].map((entry) =>
        finding(placeOf(file, lines, "job"), {
          code: "step-open",
          level: "hint",
          message: "It is next.",
          entry,
        }),
      ),
      results: [],
    });
    const needs = ["one", "two", "one", "three", "four"].map((text) => ({
      ref: "bore a",
      fact: "read",
      text,
    }));
    const missing: FakeWorld["checks"][string] = () => ({
      findings: [],
      results: [
        {
          entry: "fit a",
          kind: "clearance",
          of: null,
          case: null,
          low: null,
          nominal: null,
          high: null,
          unit: "m",
          status: "unknown",
          verdict: "none",
          text: "",
          working: [],
          needs,
        },
      ],
    });
    const ran = await thou(["check"], {
      cwd,
      project: { checks: { "a.thou": step, "b.thou": missing } },
    });
    expect(ran.out.split("\n").slice(-4)).toEqual([
      "3 files checked: 2 hints.",
      "a.thou: next: step press-in; step bolt-up.",
      "b.thou needs one; two; three; and 1 more.",
      "",
    ]);
    expect(ran.code).toBe(0);
  });
});

describe("the exit code", () => {
  test.each([
    ["error", null, [], 1],
    ["warning", null, [], 0],
    ["warning", null, ["--fail-on", "warning"], 1],
    ["error", null, ["--fail-on=warning"], 1],
    ["information", null, ["--fail-on", "warning"], 0],
    ["hint", null, ["--fail-on", "warning"], 0],
    ["error", "signed", [], 0],
    ["warning", "signed", ["--fail-on", "warning"], 0],
  ] as const)(
    "of a finding at level %s, accepted by %s, with %j is %i",
    async (level, accepted, words, code) => {
      const cwd = await folderWith({ "a.thou": "job a\n" });
      expect(
        (
          await thou(["check", ...words], {
            cwd,
            project: finds(level, accepted, "a.thou"),
          })
        ).code,
      ).toBe(code);
    },
  );

  test("is 2 for a path that is not there, and the others are checked all the same", async () => {
    const cwd = await folderWith({ "a.thou": "job a\n" });
    const ran = await thou(["check", "gone.thou", "a.thou"], {
      cwd,
      project: finds("error", null, "a.thou"),
    });
    expect(ran.code).toBe(2);
    expect(ran.err).toBe(
      "thou: gone.thou cannot be read: there is no such file or folder.\n",
    );
    expect(ran.out).toContain("a.thou:1:1 error fit-tight");
  });

  test("is 2 for a file that is not UTF-8, with the place", async () => {
    const cwd = await folderWith({
      "bad.thou": Buffer.concat([
        Buffer.from("job a\r\n  title \u{1F527}"),
        Buffer.from([0xe9]),
        Buffer.from("\n"),
      ]),
      "wide.thou": Buffer.from("\u{FEFF}job a\n", "utf16le"),
      "good.thou": "job b\n",
    });
    const ran = await thou(["check", "--format", "json"], { cwd });
    expect(ran.code).toBe(2);
    expect(ran.err.replace(/\n {2}/g, " ")).toBe(
      "thou: bad.thou cannot be read: it is not UTF-8 at line 2, column 11 (byte 0xE9); save it as UTF-8.\n" +
        "thou: wide.thou cannot be read: it is in UTF-16; save it as UTF-8.\n",
    );
    expect(JSON.parse(ran.out)).toMatchObject({
      files: [{ file: "good.thou" }],
      summary: { files: 1 },
    });
  });

  test("is 2 where the tool itself fails on a file, without a stack trace", async () => {
    const cwd = await folderWith({ "a.thou": "job a\n", "b.thou": "job b\n" });
    const project: FakeWorld = {
      checks: {
        "a.thou": () => {
          throw new RangeError("depth");
        },
      },
    };
    const ran = await thou(["check", "--format", "json"], { cwd, project });
    expect(ran.code).toBe(2);
    expect(ran.err.replace(/\n {2}/g, " ")).toBe(
      "thou: a.thou could not be checked, by a fault of thou itself: RangeError: depth. Please report it with the file.\n",
    );
    expect(JSON.parse(ran.out)).toMatchObject({ files: [{ file: "b.thou" }] });
  });

  test("is 0 for a record without entries, and that is said, answers kept or not", async () => {
    const cwd = await folderWith({
      "empty.thou": "",
      "remarks.thou": "# to do\n\n  # ask the yard\n",
      "a.thou": "job a\n",
    });
    const none = (name: string): string =>
      `thou: ${name} holds no entries: "thou explain job" says how a record begins.\n`;
    const cache = path.join(cwd, ".kept");
    for (const more of [
      [],
      ["--format", "json"],
      ["--cache", cache],
      ["--cache", cache],
      // before a commit, and in CI: a record that was emptied by mistake would go in unseen
      ["--brief"],
    ]) {
      const { code, err } = await thou(["check", ...more], { cwd, ...real });
      expect([code, err]).toEqual([
        0,
        none("empty.thou") + none("remarks.thou"),
      ]);
    }
    const brief = await thou(["check", "--brief"], { cwd, ...real });
    expect(brief.out).toBe("");
  });

  test("is 0 where there is nothing to check, and that is said", async () => {
    const cwd = await folderWith({ "readme.txt": "" });
    const ran = await thou(["check", "--format", "json"], { cwd });
    expect(ran).toMatchObject({
      code: 0,
      err: 'thou: there is no .thou file in this folder: "thou explain job" says how a record begins.\n',
    });
    expect(JSON.parse(ran.out)).toEqual({
      schema: 1,
      files: [],
      summary: {
        files: 0,
        errors: 0,
        warnings: 0,
        information: 0,
        hints: 0,
        accepted: 0,
      },
    });
  });
});

describe("which files are checked", () => {
  test("those of a folder and below, in byte order, without node_modules and names with a dot", async () => {
    const cwd = await folderWith(
      Object.fromEntries(
        [
          "b.thou",
          "B.thou",
          "a/z.thou",
          "a.thou",
          "\u{E9}.thou",
          "\u{1F527}.thou",
          "\u{FF21}.thou",
          ".hidden.thou",
          ".git/x.thou",
          "node_modules/x.thou",
          "a/node_modules/x.thou",
          "notes.txt",
          "x.thou.bak",
        ].map((name) => [name, "job a\n"]),
      ),
    );
    const names = [
      "B.thou",
      "a.thou",
      "a/z.thou",
      "b.thou",
      "\u{E9}.thou",
      "\u{FF21}.thou",
      "\u{1F527}.thou",
    ];
    expect(await namesOf([], cwd)).toEqual(names);
    expect(await namesOf(["."], cwd)).toEqual(names);
    expect(
      await namesOf(["b.thou", "a", "./a/../b.thou", "a/z.thou"], cwd),
    ).toEqual(["a/z.thou", "b.thou"]);
    expect(await namesOf(["node_modules", ".git"], cwd)).toEqual([
      ".git/x.thou",
      "node_modules/x.thou",
    ]);
    expect(await namesOf(["notes.txt"], cwd)).toEqual(["notes.txt"]);
  });

  test("each once, by its own name before that of a link, and links in a circle end", async () => {
    const cwd = await folderWith({
      "z/job.thou": "job a\n",
      "far/other.thou": "job b\n",
    });
    await symlink("z/job.thou", path.join(cwd, "a.thou"));
    await symlink("..", path.join(cwd, "z/up"));
    await symlink("z", path.join(cwd, "y"));
    expect(await namesOf([], cwd)).toEqual(["far/other.thou", "z/job.thou"]);
    await symlink("../far", path.join(cwd, "z/linked"));
    // z/up leads there as well, but after it
    expect(await namesOf(["z"], cwd)).toEqual([
      "z/job.thou",
      "z/linked/other.thou",
    ]);
  });

  test("a link to nothing is said to be one", async () => {
    const cwd = await folderWith({ "b.thou": "job b\n" });
    await symlink("gone.thou", path.join(cwd, "a.thou"));
    const ran = await thou(["check"], { cwd });
    expect(ran).toMatchObject({
      code: 2,
      err: "thou: a.thou cannot be read: there is no such file or folder.\n",
    });
  });

  test("from below the folder of a file, its name climbs", async () => {
    const cwd = await folderWith({
      "a.thou": "job a\n",
      "deep/down/b.thou": "job b\n",
    });
    expect(await namesOf(["../.."], path.join(cwd, "deep/down"))).toEqual([
      "../../a.thou",
      "b.thou",
    ]);
  });

  test.skipIf(process.getuid?.() === 0)(
    "a folder that may not be read is said to be one",
    async () => {
      const cwd = await folderWith({ "shut/a.thou": "job a\n" });
      await chmod(path.join(cwd, "shut"), 0);
      const ran = await thou(["check"], { cwd });
      await chmod(path.join(cwd, "shut"), 0o755);
      expect(ran).toMatchObject({
        code: 2,
        err: "thou: shut cannot be read: its permissions do not allow it.\n",
      });
    },
  );

  test("a crib is given to those that use it, read once, and checked once as its own file", async () => {
    const cwd = await folderWith({
      "crib.thou": "shop c\n",
      "a.thou": "job a\n",
      "b.thou": "job b\n",
      "deep.thou": "shop d\n",
    });
    const project = createFakeProject({
      checks: {},
      uses: {
        "a.thou": ["crib.thou", "gone.thou"],
        "b.thou": ["crib.thou"],
        "crib.thou": ["deep.thou"],
        "deep.thou": ["crib.thou"],
      },
    });
    const ran = await thou(["check", "--format", "json"], {
      cwd,
      parts: { createProject: () => project },
    });
    expect(ran).toMatchObject({ code: 0, err: "" });
    expect(project.calls.filter((call) => call.startsWith("check"))).toEqual([
      "check a.thou",
      "check b.thou",
      "check crib.thou",
      "check deep.thou",
    ]);
    expect(project.calls).toContain("set gone.thou null");
    // a job that no file uses is let go of; a crib stays
    expect(project.calls.filter((call) => call.startsWith("drop"))).toEqual([
      "drop a.thou",
      "drop b.thou",
    ]);
    // of that only what was made of it as a record goes
    expect(project.calls.filter((call) => call.startsWith("close"))).toEqual([
      "close crib.thou",
      "close deep.thou",
    ]);
  });

  test("of a route that only the crib has, the step that is next is named", async () => {
    const cwd = await folderWith({
      "crib.thou":
        'shop yard\n  units inch\nroute shafts\n  step wash\nstep wash\n  do "Wash it"\n',
      "a.thou": 'job a\n  units inch\n  use "crib.thou"\n  follow shafts\n',
    });
    const { out } = await thou(["check", "a.thou"], {
      cwd,
      parts: { createProject: () => createProject({ root: "" }) },
    });
    expect(out).toContain("Next: step wash.");
  });

  test("a crib that was not asked for is not among the files, but its errors are spoken of", async () => {
    const cwd = await folderWith({ "crib.thou": CRIB, "winch.thou": WINCH });
    const ran = await thou(["check", "winch.thou"], {
      cwd,
      project: WINCH_WORLD,
    });
    expect(ran.out).toContain(
      'crib.thou is used here and has an error of its own: "thou check crib.thou" shows it.',
    );
    const whole = await thou(["check"], { cwd, project: WINCH_WORLD });
    expect(whole.out).toContain("crib.thou:4:3 error word-unknown");
    expect(whole.out).not.toContain("is used here");
  });

  test("what is used must be a plain file", async () => {
    const cwd = await folderWith({
      "a.thou": "job a\n",
      "crib.thou/b.thou": "shop b\n",
    });
    const project = createFakeProject({
      checks: {},
      uses: { "a.thou": ["crib.thou"] },
    });
    const ran = await thou(["check", "a.thou"], {
      cwd,
      parts: { createProject: () => project },
    });
    expect(project.calls).toContain("set crib.thou null");
    expect(ran).toMatchObject({ code: 0, err: "" });
  });
});

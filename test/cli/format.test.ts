// `thou format`: which files it touches, and what it keeps of them. The layout itself is tested beside grammar/print.ts.
import {
  chmod,
  lstat,
  readFile,
  readdir,
  stat,
  symlink,
} from "node:fs/promises";
import path from "node:path";
import { describe, expect, test } from "vitest";
import { whyTooWide } from "../../server/cli/format.ts";
import { folderWith, thou } from "./in-process.ts";

const UNTIDY = 'job a\n\n\n\ttitle   "Winch  3"   # as found\nunits inch\n';
const TIDY = 'job a\n\n  title "Winch  3"  # as found\nunits inch\n';

async function bytesOf(folder: string, name: string): Promise<string> {
  return (await readFile(path.join(folder, name))).toString("latin1");
}

describe("files", () => {
  test("are laid out in place, named, and counted", async () => {
    const cwd = await folderWith({
      "b.thou": UNTIDY,
      "a/c.thou": UNTIDY,
      "tidy.thou": TIDY,
    });
    const ran = await thou(["format"], { cwd });
    expect(ran).toEqual({
      code: 0,
      out: "a/c.thou\nb.thou\n",
      err: "thou: 2 files laid out, 1 left as it is.\n",
    });
    expect(await bytesOf(cwd, "b.thou")).toBe(TIDY);
    expect(await bytesOf(cwd, "a/c.thou")).toBe(TIDY);
    expect(await readdir(cwd)).toEqual(["a", "b.thou", "tidy.thou"]);
    expect(await thou(["format"], { cwd })).toEqual({
      code: 0,
      out: "",
      err: "thou: nothing to lay out; 3 files stand as they should.\n",
    });
  });

  test("that stand as they should are not written", async () => {
    const cwd = await folderWith({ "tidy.thou": TIDY });
    const before = await stat(path.join(cwd, "tidy.thou"));
    await thou(["format"], { cwd });
    const after = await stat(path.join(cwd, "tidy.thou"));
    expect([after.ino, after.mtimeMs]).toEqual([before.ino, before.mtimeMs]);
  });

  test("keep their byte order mark, their line ends and the lack of a last one", async () => {
    const mark = "\u{EF}\u{BB}\u{BF}";
    const cwd = await folderWith({
      "a.thou": Buffer.from(
        `${mark}job  a\r\n title "x"\n\tunits mm\rpart p`,
        "latin1",
      ),
    });
    expect((await thou(["format"], { cwd })).code).toBe(0);
    expect(await bytesOf(cwd, "a.thou")).toBe(
      `${mark}job a\r\n  title "x"\n  units mm\rpart p`,
    );
  });

  test("keep their mode, and a link stays a link", async () => {
    const cwd = await folderWith({ "real/a.thou": UNTIDY });
    const real = path.join(cwd, "real/a.thou");
    await chmod(real, 0o640);
    await symlink("real/a.thou", path.join(cwd, "link.thou"));
    expect(await thou(["format", "link.thou"], { cwd })).toMatchObject({
      code: 0,
      out: "link.thou\n",
    });
    expect((await lstat(path.join(cwd, "link.thou"))).isSymbolicLink()).toBe(
      true,
    );
    expect((await stat(real)).mode & 0o777).toBe(0o640);
    expect(await bytesOf(cwd, "real/a.thou")).toBe(TIDY);
  });

  test("that a link in a folder leads to are left where they lie", async () => {
    const cwd = await folderWith({
      "other/a.thou": UNTIDY,
      "jobs/b.thou": UNTIDY,
    });
    await symlink("../other", path.join(cwd, "jobs/other"));
    await symlink("../other/a.thou", path.join(cwd, "jobs/link.thou"));
    expect(await thou(["format", "jobs"], { cwd })).toMatchObject({
      code: 0,
      out: "jobs/b.thou\n",
    });
    expect(await bytesOf(cwd, "other/a.thou")).toBe(UNTIDY);
  });

  test("are none where a name is empty", async () => {
    const cwd = await folderWith({ "b.thou": UNTIDY });
    expect(await thou(["format", ""], { cwd })).toMatchObject({
      code: 2,
      out: "",
    });
    expect(await bytesOf(cwd, "b.thou")).toBe(UNTIDY);
  });

  test("are only looked at with --check", async () => {
    const cwd = await folderWith({ "b.thou": UNTIDY, "tidy.thou": TIDY });
    const ran = await thou(["format", "--check"], { cwd });
    expect(ran.code).toBe(1);
    expect(ran.out).toBe("b.thou\n");
    expect(ran.err).toBe(
      'thou: 1 file to lay out ("thou format" does it), 1 left as it is.\n',
    );
    expect(await bytesOf(cwd, "b.thou")).toBe(UNTIDY);
    expect((await thou(["format", "--check", "tidy.thou"], { cwd })).code).toBe(
      0,
    );
  });

  test("that cannot be read are left alone and said, and the rest is laid out", async () => {
    const bad = Buffer.from('job  a\n title "\xE9"\n', "latin1");
    const cwd = await folderWith({ "bad.thou": bad, "b.thou": UNTIDY });
    const ran = await thou(["format", "gone.thou", "."], { cwd });
    expect(ran.code).toBe(2);
    expect(ran.out).toBe("b.thou\n");
    expect(ran.err.split("\n")).toEqual([
      "thou: gone.thou cannot be read: there is no such file or folder.",
      "thou: bad.thou cannot be read: it is not UTF-8 at line 2, column 9 (byte 0xE9); save it as UTF-8.",
      "thou: 1 file laid out, 0 left as they are.",
      "",
    ]);
    expect(await bytesOf(cwd, "bad.thou")).toBe(bad.toString("latin1"));
  });

  test.skipIf(process.getuid?.() === 0)(
    "that may not be written are left alone",
    async () => {
      const cwd = await folderWith({ "a.thou": UNTIDY });
      await chmod(path.join(cwd, "a.thou"), 0o444);
      const ran = await thou(["format"], { cwd });
      expect(ran.code).toBe(2);
      expect(await bytesOf(cwd, "a.thou")).toBe(UNTIDY);
    },
  );

  test("with a line that cannot be read keep it as it stands", async () => {
    const damaged = "journal  j   of of\n   limits  0.8740   to to 3\n";
    const cwd = await folderWith({ "a.thou": damaged });
    expect(await thou(["format"], { cwd })).toMatchObject({ code: 0, out: "" });
    expect(await bytesOf(cwd, "a.thou")).toBe(damaged);
  });
});

describe("standard input", () => {
  test("goes to standard output, in whatever pieces it comes", async () => {
    const cwd = await folderWith({});
    const bytes = Buffer.from(`\u{FEFF}part  \u{E9}\u{1F527} # \u{B5}m\r\n`);
    const pieces = [...bytes].map((byte) => new Uint8Array([byte]));
    expect(await thou(["format", "-"], { cwd, stdin: pieces })).toEqual({
      code: 0,
      out: "\u{FEFF}part  \u{E9}\u{1F527} # \u{B5}m\r\n",
      err: "",
    });
    expect(await thou(["format", "-"], { cwd, stdin: UNTIDY })).toEqual({
      code: 0,
      out: TIDY,
      err: "",
    });
  });

  test("is only looked at with --check", async () => {
    const cwd = await folderWith({});
    expect(
      await thou(["format", "--check", "-"], { cwd, stdin: UNTIDY }),
    ).toEqual({ code: 1, out: "-\n", err: "" });
    expect(
      await thou(["format", "--check", "-"], { cwd, stdin: TIDY }),
    ).toEqual({ code: 0, out: "", err: "" });
  });

  test("stands alone, and is UTF-8", async () => {
    const cwd = await folderWith({ "a.thou": UNTIDY });
    expect(await thou(["format", "a.thou", "-"], { cwd })).toMatchObject({
      code: 2,
      out: "",
    });
    expect(await bytesOf(cwd, "a.thou")).toBe(UNTIDY);
    expect(
      await thou(["format", "-"], {
        cwd,
        columns: 200,
        stdin: new Uint8Array([0x6a, 0xff]),
      }),
    ).toEqual({
      code: 2,
      out: "",
      err: "thou: Standard input cannot be read: it is not UTF-8 at line 1, column 2 (byte 0xFF); save it as UTF-8.\n",
    });
  });
});

test("where no file can be read, nothing is said to stand as it should", async () => {
  const cwd = await folderWith({ "a.thou": new Uint8Array([0xff, 0xfe]) });
  const { code, err } = await thou(["format"], { cwd });
  expect(code).toBe(2);
  expect(err).toContain("a.thou cannot be read");
  expect(err).not.toContain("stand");
});

describe("what is too wide to be meant", () => {
  test.each([
    ["/", "/home/yard", "the root of a disk"],
    ["/home/yard", "/home/yard", "your home folder"],
    ["/home", "/home/yard", "a folder that your home folder lies in"],
    ["/home/yard/records", "/home/yard", undefined],
    ["/home/yard-2", "/home/yard", undefined],
    ["/home/..yard", "/home/yard", undefined],
    ["/srv/records", "/", undefined],
  ])("%s where home is %s: %j", (at, home, why) => {
    expect(whyTooWide(at, home)).toBe(why);
  });

  test("nothing is touched of all that was named, and the way out is said", async () => {
    const cwd = await folderWith({
      "home/a.thou": UNTIDY,
      "home/jobs/b.thou": UNTIDY,
      "c.thou": UNTIDY,
    });
    await symlink("home", path.join(cwd, "link"));
    const env = { HOME: path.join(cwd, "home") };
    for (const [asked, at, said] of [
      [["c.thou", "home"], cwd, "home is your home folder"],
      [["link"], cwd, "link is your home folder"],
      [["home/jobs/.."], cwd, "home/jobs/.. is your home folder"],
      [[], cwd, "this folder is a folder that your home folder lies in"],
      [[], env.HOME, "this folder is your home folder"],
    ] as const) {
      const ran = await thou(["format", ...asked], {
        cwd: at,
        env,
        columns: 400,
      });
      expect(ran).toEqual({
        code: 2,
        out: "",
        err: `thou: ${said}: every .thou file below it would be laid out. Nothing was touched; name the folder of your records. With --check it only looks.\n`,
      });
    }
    for (const name of ["home/a.thou", "home/jobs/b.thou", "c.thou"])
      expect(await bytesOf(cwd, name)).toBe(UNTIDY);
    // a look, a file and a folder in it are as ever
    expect((await thou(["format", "--check", "home"], { cwd, env })).out).toBe(
      "home/a.thou\nhome/jobs/b.thou\n",
    );
    expect(
      (await thou(["format", "home/a.thou", "home/jobs"], { cwd, env })).err,
    ).toBe("thou: 2 files laid out, 0 left as they are.\n");
  });
});

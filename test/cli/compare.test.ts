// `thou compare` as a person runs it: over real repositories, made for each test.
import { execFileSync } from "node:child_process";
import { rmSync } from "node:fs";
import { mkdir, readdir, rename, rm, writeFile } from "node:fs/promises";
import path from "node:path";
import { describe, expect, test } from "vitest";
import { folderWith, thou } from "./in-process.ts";
import {
  CRIB,
  git,
  JOB,
  real,
  repositoryWith,
  WORN,
} from "./scratch-repository.ts";

const yard = (
  files: Readonly<Record<string, string>> = {
    "jobs/pump.thou": JOB,
    "jobs/crib.thou": CRIB,
  },
): Promise<string> => repositoryWith(files);

interface Comparison {
  readonly before: string;
  readonly after: string;
  readonly records: readonly {
    readonly file: string;
    readonly movedFrom: string | null;
    readonly state: string;
    readonly changes: readonly {
      readonly entry: string;
      readonly what: string;
      readonly tendency: string;
    }[];
    readonly worse: number;
  }[];
  readonly summary: { readonly compared: number; readonly worse: number };
}

async function compare(
  cwd: string,
  ...words: readonly string[]
): Promise<{ code: number; err: string; found: Comparison }> {
  const ran = await thou(["compare", ...words, "--format", "json"], {
    cwd,
    ...real,
  });
  return {
    code: ran.code,
    err: ran.err,
    found: (ran.out === "" ? undefined : JSON.parse(ran.out)) as Comparison,
  };
}

const files = ({ records }: Comparison): readonly string[] =>
  records.map(({ file, state, worse }) => `${file} ${state} ${String(worse)}`);

describe("two files, two folders", () => {
  test("two files are one pair, whatever they are called", async () => {
    const cwd = await folderWith({
      "crib.thou": CRIB,
      "then.thou": JOB,
      "now.thou": WORN,
    });
    const { code, err, found } = await compare(cwd, "then.thou", "now.thou");
    expect(err).toBe("");
    expect([found.before, found.after]).toEqual(["then.thou", "now.thou"]);
    expect(code).toBe(1);
    expect(found.records.length).toBe(1);
    // it lies there, too: it has not moved
    expect(found.records[0]?.movedFrom).toBeNull();
    expect(
      found.records[0]?.changes.map(({ entry, what }) => `${entry} ${what}`),
    ).toContain("journal drive size");
    // nothing is worse the other way round
    expect((await compare(cwd, "now.thou", "then.thou")).code).toBe(0);
  });

  test("in folders by path; each side reads its own crib", async () => {
    const cwd = await folderWith({
      "a/crib.thou": CRIB,
      "a/pump.thou": JOB,
      "a/gone.thou": "job gone\n",
      "b/crib.thou": CRIB.replace("0.8750", "0.8755"),
      "b/pump.thou": JOB,
      "b/new.thou": "job new\n",
    });
    const { found } = await compare(cwd, "a", "b");
    expect(files(found)).toEqual([
      "crib.thou changed 0",
      "gone.thou gone 0",
      "new.thou new 0",
      // 0.8756 to 0.8758 over 0.8741 to 0.8742 leaves 0.0014 to 0.0017, and 0.0016 is the most wanted
      expect.stringMatching(/^pump.thou changed [1-9]/),
    ]);
  });
});

describe("what is gone", () => {
  const said = async (
    now: string | undefined,
    form: "text" | "markdown" = "text",
  ): Promise<readonly [number, string]> => {
    const cwd = await folderWith({
      "a/crib.thou": CRIB,
      "a/pump.thou": JOB,
      "b/crib.thou": CRIB,
      ...(now === undefined ? {} : { "b/pump.thou": now }),
    });
    const { code, out } = await thou(["compare", "a", "b", "--format", form], {
      cwd,
      ...real,
    });
    return [code, out];
  };

  test("a record that is named and gone is gone, and so is a folder", async () => {
    const cwd = await yard();
    await rm(path.join(cwd, "jobs/pump.thou"));
    const one = await compare(cwd, "HEAD", "jobs/pump.thou");
    expect([one.code, one.err]).toEqual([0, ""]);
    expect(files(one.found)).toEqual(["pump.thou gone 0"]);
    await rm(path.join(cwd, "jobs"), { recursive: true });
    const all = await compare(cwd, "HEAD", "jobs");
    expect([all.code, all.err]).toEqual([0, ""]);
    expect(files(all.found)).toEqual(["crib.thou gone 0", "pump.thou gone 0"]);
    const never = await compare(cwd, "HEAD", "jobs/pmup.thou");
    expect([never.code, never.found]).toEqual([2, undefined]);
    expect(never.err).toContain("there is no such file or folder.");
  });

  test("a record that is gone is counted as gone", async () => {
    const [code, out] = await said(undefined);
    expect(code).toBe(0);
    expect(out).toContain("\npump.thou, gone\n");
    expect(out).toContain(
      "2 records compared, 1 changed: 1 record is gone; of what is left nothing is worse.\n",
    );
    const cwd = await yard();
    await rm(path.join(cwd, "jobs/pump.thou"));
    const alone = await thou(["compare", "HEAD", "jobs/pump.thou"], {
      cwd,
      ...real,
    });
    expect(alone.out).toContain(
      "\n1 record compared, 1 changed: 1 record is gone.\n",
    );
  });

  test.each(["", "# all of it was here\n"])(
    "a record that holds no entries any more is worse: %j",
    async (now) => {
      const [code, out] = await said(now);
      expect(code).toBe(1);
      expect(out).toContain(
        "\npump.thou, emptied: it holds no entries any more\n",
      );
      expect(out).toMatch(/: \d+ things are worse; 1 record is emptied\.\n$/u);
      const [, comment] = await said(now, "markdown");
      expect(comment).toContain(
        "### pump\\.thou, emptied: it holds no entries any more\n",
      );
      expect(comment).toContain("**worse**");
    },
  );

  test("entries that are gone are counted", async () => {
    const [code, out] = await said(JOB.slice(0, JOB.indexOf("\nfit ")) + "\n");
    expect(code).toBe(0);
    expect(out).toMatch(
      /1 changed: (?:1 entry is|\d+ entries are) gone; of what is left nothing is worse\.\n$/u,
    );
  });
});

describe("states in version control", () => {
  test("since the last commit: nothing, then a worn journal", async () => {
    const cwd = await yard();
    const same = await compare(cwd, "HEAD");
    expect([same.code, same.err]).toEqual([0, ""]);
    expect(files(same.found)).toEqual([
      "jobs/crib.thou changed 0",
      "jobs/pump.thou changed 0",
    ]);
    expect(same.found.records.flatMap(({ changes }) => changes)).toEqual([]);
    await writeFile(path.join(cwd, "jobs/pump.thou"), WORN);
    const worn = await compare(cwd, "HEAD");
    expect(worn.code).toBe(1);
    expect(worn.found.summary).toMatchObject({ compared: 2 });
    expect(worn.found.before).toMatch(/^HEAD \([\da-f]{12}\)$/);
  });

  test("one record, from a folder below, and a path at a revision", async () => {
    const cwd = await yard();
    await writeFile(path.join(cwd, "jobs/pump.thou"), WORN);
    for (const words of [
      ["HEAD", "pump.thou"],
      ["HEAD:pump.thou", "pump.thou"],
      ["HEAD:pump.thou"],
    ]) {
      const { code, err, found } = await compare(
        path.join(cwd, "jobs"),
        ...words,
      );
      expect([code, err], words.join(" ")).toEqual([1, ""]);
      expect(found.records.map(({ file }) => file)).toEqual(["pump.thou"]);
    }
  });

  test("two commits; a crib of then for the job of then", async () => {
    const cwd = await yard();
    git(cwd, "tag", "received");
    await writeFile(
      path.join(cwd, "jobs/crib.thou"),
      CRIB.replace("0.8750", "0.8755"),
    );
    git(cwd, "commit", "--quiet", "--all", "--message=another reamer");
    // what lies on the disk is no matter
    await rm(path.join(cwd, "jobs"), { recursive: true });
    const { code, err, found } = await compare(cwd, "received", "HEAD");
    expect([code, err]).toEqual([1, ""]);
    expect(
      found.records.find(({ file }) => file === "jobs/pump.thou")?.changes,
    ).toContainEqual(
      expect.objectContaining({ entry: "fit drive", what: "clearance" }),
    );
  });

  test("a record that moved is known by its job", async () => {
    const cwd = await yard();
    await mkdir(path.join(cwd, "done"));
    await rename(
      path.join(cwd, "jobs/pump.thou"),
      path.join(cwd, "jobs/pump-2026.thou"),
    );
    const { found } = await compare(cwd, "HEAD");
    expect(
      found.records.map(({ file, movedFrom, state }) => [
        file,
        movedFrom,
        state,
      ]),
    ).toEqual([
      ["jobs/crib.thou", null, "changed"],
      ["jobs/pump-2026.thou", "jobs/pump.thou", "changed"],
    ]);
  });

  test("a detached head", async () => {
    const cwd = await yard();
    git(cwd, "checkout", "--quiet", "--detach");
    await writeFile(path.join(cwd, "jobs/pump.thou"), WORN);
    expect((await compare(cwd, "HEAD")).code).toBe(1);
  });

  test("names that git or a shell could take for something else", async () => {
    const odd = "-x $(touch made) *.thou";
    const cwd = await yard({ [odd]: JOB, "crib.thou": CRIB });
    await writeFile(path.join(cwd, odd), WORN);
    const { code, err, found } = await compare(cwd, "HEAD", `./${odd}`);
    expect([code, err]).toEqual([1, ""]);
    expect(files(found)).toEqual([expect.stringContaining(odd)]);
    const { code: refused, err: why } = await compare(cwd, "HEAD; touch made");
    expect(refused).toBe(2);
    expect(why).toContain("git knows no state");
    expect((await readdir(cwd)).sort()).toEqual([odd, ".git", "crib.thou"]);
  });
});

describe("what can't be compared says why, and the way out", () => {
  const saidBy = async (
    cwd: string,
    ...words: readonly string[]
  ): Promise<string> => {
    const ran = await thou(["compare", ...words], { cwd, ...real });
    expect(ran.code, words.join(" ")).toBe(2);
    return ran.err.replaceAll(/\s+/gu, " ");
  };

  test("no such state, no repository, no commit yet", async () => {
    const cwd = await yard();
    expect(await saidBy(cwd, "v9")).toBe(
      'thou: v9 is no file or folder here, and git knows no state "v9". ',
    );
    const plain = await folderWith({ "pump.thou": JOB });
    expect(await saidBy(plain, "HEAD")).toContain(
      "this folder is not under version control",
    );
    git(plain, "init", "--quiet");
    expect(await saidBy(plain, "HEAD")).toContain(
      "the repository has no commit yet",
    );
  });

  test("a clone that holds only the newest commit", async () => {
    const cwd = await yard();
    await writeFile(path.join(cwd, "jobs/pump.thou"), WORN);
    git(cwd, "commit", "--quiet", "--all", "--message=worn");
    const clone = await folderWith({});
    git(clone, "clone", "--quiet", "--depth=1", `file://${cwd}`, "shallow");
    expect(await saidBy(path.join(clone, "shallow"), "HEAD~1")).toContain(
      'which holds only the newest commits: fetch the rest first ("git fetch --unshallow")',
    );
  });

  test("one path alone", async () => {
    const cwd = await folderWith({ "pump.thou": JOB });
    expect(await saidBy(cwd, "pump.thou")).toContain(
      '"thou compare HEAD pump.thou"',
    );
    expect(await saidBy(cwd, "pump.thou/a.thou", "pump.thou")).toContain(
      "pump.thou/a.thou cannot be read: a part of its path is a file, not a folder",
    );
    expect(await saidBy(cwd, "pmup.thou", "pump.thou")).toContain(
      "pmup.thou cannot be read: there is no such file or folder",
    );
  });

  test("a record that was not there then is new; one that is nowhere, or named at a state, is told", async () => {
    const cwd = await yard();
    await writeFile(path.join(cwd, "jobs/winch.thou"), "job winch\n");
    const { code, err, found } = await compare(cwd, "HEAD", "jobs/winch.thou");
    expect([code, err]).toEqual([0, ""]);
    expect(files(found)).toEqual(["winch.thou new 0"]);
    for (const words of [
      ["HEAD:jobs/winch.thou", "jobs/winch.thou"],
      ["HEAD:jobs/winch.thou", "HEAD"],
    ]) {
      const asked = await compare(cwd, ...words);
      expect(asked.code).toBe(2);
      expect(asked.err.replaceAll(/\s+/gu, " ")).toContain(
        "jobs/winch.thou is not there at HEAD",
      );
    }
  });

  test("bytes that are no text", async () => {
    const cwd = await yard();
    await writeFile(
      path.join(cwd, "jobs/pump.thou"),
      Buffer.from([0x6a, 0xff, 0x0a]),
    );
    const { code, err, found } = await compare(cwd, "HEAD");
    expect(code).toBe(2);
    expect(err).toContain("is not UTF-8 at line 1, column 2");
    // it is neither gone nor new
    expect(files(found)).toEqual(["jobs/crib.thou changed 0"]);
    expect(
      (await compare(cwd, "HEAD", "jobs/pump.thou")).found.records,
    ).toEqual([]);
  });

  test("a record that goes while its folder is read: it is said, and the others are compared", async () => {
    const records = { "crib.thou": CRIB, "pump.thou": JOB, "winch.thou": JOB };
    const cwd = await folderWith(
      Object.fromEntries(
        Object.entries(records).flatMap(([name, text]) => [
          [`then/${name}`, text],
          [`now/${name}`, text],
        ]),
      ),
    );
    const { code, out, err } = await thou(["compare", "then", "now"], {
      cwd,
      parts: {
        createProject() {
          // both folders have been looked through by then
          rmSync(path.join(cwd, "now/pump.thou"), { force: true });
          return real.parts.createProject();
        },
      },
    });
    expect(code).toBe(2);
    expect(err).toBe(
      "thou: now/pump.thou cannot be read: there is no such file or folder.\n",
    );
    expect(out).not.toContain("pump.thou");
    expect(out).toContain("2 records compared");
  });

  test.skipIf(process.platform === "win32")(
    "a crib that is not there, or no file, is said by the record that uses it alone",
    async () => {
      const cwd = await folderWith({
        "then.thou": JOB,
        "now.thou": JOB.replace(
          "part shaft",
          '  use "pipe.thou"\n\npart shaft',
        ),
      });
      execFileSync("mkfifo", [path.join(cwd, "pipe.thou")]);
      const { code, err, found } = await compare(cwd, "then.thou", "now.thou");
      expect(err).toBe("");
      expect(code).not.toBe(2);
      expect(files(found)).toHaveLength(1);
    },
    10_000,
  );
});

describe("how it reads", () => {
  test("in the terminal, and as Markdown that obeys nothing of the record", async () => {
    const cwd = await yard({ "pump.thou": JOB, "crib.thou": CRIB });
    await writeFile(
      path.join(cwd, "pump.thou"),
      `${WORN}note "x"\npart [a](javascript:x)\n`,
    );
    const text = await thou(["compare", "HEAD"], {
      cwd,
      ...real,
      columns: 100,
    });
    expect(text.code).toBe(1);
    expect(text.out).toContain("size  0.8741 to 0.8742 in, in tolerance → ");
    expect(text.out).toMatch(
      /2 records compared, 1 changed: \d+ things are worse\./,
    );
    expect(text.out.split("\n").filter((line) => 100 < line.length)).toEqual(
      [],
    );
    const { out } = await thou(["compare", "HEAD", "--format", "markdown"], {
      cwd,
      ...real,
    });
    expect(out).toContain(
      "| **journal drive** size | 0.8741 to 0.8742 in, in tolerance |",
    );
    // but as code, in which nothing is a link
    expect(out.replaceAll(/`[^`\n]*`/gu, "")).not.toContain("](javascript:");
  });

  test("findings that read alike are one line, and say how many they are", async () => {
    const cwd = await yard({ "pump.thou": JOB, "crib.thou": CRIB });
    await writeFile(
      path.join(cwd, "pump.thou"),
      WORN.replace("0.8737 0.8736", "0.8737 0.8736 0.8737 0.8737"),
    );
    const linesOf = async (...form: readonly string[]) => {
      const { out } = await thou(["compare", "HEAD", ...form], {
        cwd,
        ...real,
        columns: 500,
      });
      return out
        .split("\n")
        .filter((line) => line.includes("new error reading-off-limits"))
        .map((line) => line.match(/: 0\.\d+|\(\d times\)$/gu));
    };
    const each = [[": 0.8737", "(3 times)"], [": 0.8736"]];
    expect(await linesOf()).toEqual(each);
    expect(await linesOf("--format", "markdown")).toEqual(each);
  });
});

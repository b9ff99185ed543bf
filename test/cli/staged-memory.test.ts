// `thou check --staged` over files whose bytes together are far more than it may hold: each is read from git once, and waits on the disk.
import { execFileSync } from "node:child_process";
import { readdir, readFile } from "node:fs/promises";
import path from "node:path";
import { describe, expect, test } from "vitest";
import { createProject } from "../../server/rules/check.ts";
import { createReadOnce } from "../../server/cli/read-once.ts";
import { folderWith, thou } from "./in-process.ts";
import { liveCheck } from "./live.ts";
import {
  CRIB,
  git,
  JOB,
  real,
  repositoryWith,
  script,
  write,
} from "./scratch-repository.ts";

const NAMES = ["a", "b", "c", "d"].map((name) => `${name}.thou`);

/** Four jobs that use a crib, which is staged as another. */
async function yard(): Promise<string> {
  const cwd = await repositoryWith(
    Object.fromEntries([
      ["crib.thou", CRIB],
      ...NAMES.map((name) => [name, `${JOB}# ${name}\n`] as const),
    ]),
  );
  await write(cwd, "crib.thou", CRIB.replace("0.8750", "0.8760"));
  git(cwd, "add", "--all");
  return cwd;
}

test("each file is read from git once, a crib that all use among them", async () => {
  const cwd = await yard();
  const folder = await folderWith({});
  const log = path.join(folder, "log");
  const actual = execFileSync("which", ["git"], { encoding: "utf8" }).trim();
  await script(
    path.join(folder, "bin", "git"),
    `#!/bin/sh\necho "$*" >>${log}\nexec ${actual} "$@"\n`,
  );
  const { code } = await thou(["check", "--staged"], {
    cwd,
    ...real,
    env: { ...real.env, PATH: path.join(folder, "bin") },
  });
  expect(code).toBe(1);
  const read = (await readFile(log, "utf8"))
    .split("\n")
    .flatMap((line) => /cat-file blob ([\da-f]+)$/u.exec(line)?.[1] ?? []);
  const staged = git(cwd, "ls-files", "--stage").match(/[\da-f]{40}/gu) ?? [];
  expect(staged).toHaveLength(5);
  expect([...read].sort()).toEqual([...staged].sort());
});

test("while it is asked who uses what has changed, one file at a time is held", async () => {
  let held = 0;
  let most = 0;
  let projects = 0;
  const counting: typeof createProject = (options) => {
    const project = createProject(options);
    // the first project is asked for uses, the next ones check
    if (0 < projects++) return project;
    const files = new Set<string>();
    return {
      ...project,
      setFile(file, lines) {
        files.add(file);
        held = files.size;
        most = Math.max(most, held);
        project.setFile(file, lines);
      },
      dropFile(file) {
        files.delete(file);
        held = files.size;
        project.dropFile(file);
      },
    };
  };
  const { code } = await thou(["check", "--staged"], {
    cwd: await yard(),
    ...real,
    parts: { createProject: () => counting({ root: "" }) },
  });
  expect([code, held, most]).toEqual([1, 0, 1]);
});

test(
  "what it holds at its end does not grow with the files that were read",
  { timeout: 240_000 },
  async () => {
    const check = await liveCheck();
    // 100 kB each: remarks, so that all but the bytes is small
    const text = `job a\n  units mm\n${`# ${"-".repeat(98)}\n`.repeat(1000)}`;
    const bytesOf = async (records: number): Promise<number> => {
      const cwd = await repositoryWith({ "note.txt": "" });
      for (let at = 0; at < records; at++)
        await write(cwd, `winch-${at}.thou`, `${text}# ${at}\n`);
      git(cwd, "add", "--all");
      return check(records, cwd, ["--staged"], real.env);
    };
    // past the megabyte that is held, and so many more that some 100 kB of compiled code here or there are little of each
    const FEW = 20;
    const MANY = 220;
    const slope = ((await bytesOf(MANY)) - (await bytesOf(FEW))) / (MANY - FEW);
    // a name, what git calls it, where it waits: not its 100,000 bytes
    expect(slope).toBeLessThan(3000);
  },
);

describe("files that are read once", () => {
  const BYTES = Object.fromEntries(
    Array.from({ length: 40 }, (_, at) => [
      `f${at}`,
      new Uint8Array(100_000 + at).fill(at),
    ]),
  );

  /** How often each was asked for. */
  function counted() {
    const asked = new Map<string, number>();
    return {
      asked,
      read: (file: string) => {
        asked.set(file, (asked.get(file) ?? 0) + 1);
        return Promise.resolve(BYTES[file]);
      },
    };
  }

  test.each([
    ["with a place for them", () => folderWith({})],
    ["with none", async () => path.join(await folderWith({}), "none")],
  ])("come back as they were, %s, and leave nothing", async (_, place) => {
    const { asked, read } = counted();
    const folder = await place();
    const once = createReadOnce(read, folder);
    for (let time = 0; time < 3; time++)
      for (const [file, bytes] of Object.entries(BYTES))
        expect(
          Buffer.compare((await once.read(file)) ?? new Uint8Array(), bytes),
          file,
        ).toBe(0);
    for (let time = 0; time < 2; time++)
      expect(await once.read("gone")).toBeUndefined();
    expect([...asked.values()]).toEqual(Array(41).fill(1));
    once.close();
    expect(await readdir(folder).catch(() => [])).toEqual([]);
  });
});

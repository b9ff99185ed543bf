// Wherever an export ends — killed, or by a disk that does not take what is written — the archive is in its former state or in the new one,
// whole, for readers that go by archive.json and for those that go by folders; and the next export is as if nothing had been.
import { spawnSync } from "node:child_process";
import { cp, readdir, rm, symlink, writeFile } from "node:fs/promises";
import path from "node:path";
import { build } from "esbuild";
import { beforeAll, describe, expect, test } from "vitest";
import { askArchive } from "../../server/archive/ask.ts";
import { createDisk, type Operation } from "../../server/archive/disk.ts";
import { TABLE_NAMES } from "../../server/archive/schema.ts";
import { folderWith } from "../cli/in-process.ts";
import { exportShop } from "./export-shop.ts";
import { CRIB, filesOf, job, rowsOf } from "./shop.ts";

/** Operations from the writing of the new list on. */
const LAST = 9;

let root = "";
/** The shop before and after: of a record, one changed, one gone, one new, one as it was. */
const before = () => path.join(root, "before");
const after = () => path.join(root, "after");
/** The archive of the former; each test has a copy. */
const former = () => path.join(root, "archive");
let script = "";

beforeAll(async () => {
  const shop = {
    "crib.thou": CRIB,
    "kept.thou": job("kept", "2025-02-01"),
    "gone.thou": job("gone", "2026-03-01"),
    "changed.thou": job("changed", "2026-03-01"),
  };
  root = await folderWith({
    ...Object.fromEntries(
      Object.entries(shop).map(([name, text]) => [`before/${name}`, text]),
    ),
    "after/crib.thou": CRIB,
    "after/kept.thou": shop["kept.thou"],
    "after/changed.thou": job("changed", "2026-03-01", "0.8751"),
    "after/new.thou": job("new", "2026-05-01"),
  });
  await exportShop(before(), former(), createDisk());
  script = path.join(root, "killed-export.mjs");
  await build({
    entryPoints: ["test/archive/killed-export.ts"],
    outfile: script,
    bundle: true,
    platform: "node",
    format: "esm",
    external: ["@duckdb/node-api"],
    logLevel: "silent",
  });
  // the script finds the package as a shop's own would
  await symlink(
    path.resolve("node_modules"),
    path.join(root, "node_modules"),
    "dir",
  );
});

/** Which state an archive is in, by what every table has of each record; "none" where there is no archive. */
async function stateOf(archive: string): Promise<string> {
  const counts = TABLE_NAMES.map(
    (table) =>
      `SELECT '${table}' AS of_table, record, COUNT(*) AS n FROM "${table}" GROUP BY record`,
  ).join(" UNION ALL ");
  const sql = `SELECT of_table, record, n FROM (${counts}) ORDER BY of_table, record`;
  const { rows } = await askArchive(archive, "archive", sql).catch(
    (error: unknown) => {
      if (String(error).includes("there is no archive"))
        return { rows: [["none", "none", 0]] };
      throw error;
    },
  );
  return rows.map((row) => row.join(" ")).join("\n");
}

/** The same for readers that know no archive.json. */
async function stateByFolders(archive: string): Promise<string> {
  const isThere = (await readdir(archive)).includes("tables");
  if (!isThere) return "none none 0";
  const counts = TABLE_NAMES.map(
    (table) =>
      `SELECT '${table}' AS of_table, record, COUNT(*) AS n FROM ${filesOf(archive, table)} GROUP BY record`,
  ).join(" UNION ALL ");
  const rows = await rowsOf(
    `SELECT of_table, record, n FROM (${counts}) ORDER BY of_table, record`,
  );
  return rows
    .map(({ of_table, record, n }) =>
      [of_table, record, n].map(String).join(" "),
    )
    .join("\n");
}

/** Every operation of an export that ends well. */
async function operations(
  from: string | undefined,
): Promise<readonly Operation[]> {
  const archive = path.join(root, `counted-${String(from === undefined)}`);
  if (from !== undefined) await copyArchive(from, archive);
  const done: Operation[] = [];
  await exportShop(
    after(),
    archive,
    createDisk((operation) => done.push(operation)),
  );
  return done;
}

async function copyArchive(from: string, to: string): Promise<void> {
  await rm(to, { recursive: true, force: true });
  await cp(from, to, { recursive: true, verbatimSymlinks: true });
}

/**
 * The first and a middle one, and the last ones, where one state takes the place of the other: the new list, its place, the link, the clearing
 * up. THOU_TEST_EVERY=1 takes every one, which is minutes.
 */
function chosen(done: readonly Operation[], last: number): readonly number[] {
  const all = done.map((_, index) => index);
  return process.env.THOU_TEST_EVERY === "1"
    ? all
    : [0, Math.floor(done.length / 2), ...all.slice(-last)];
}

describe.each(["over a former state", "into an empty folder"])("%s", (how) => {
  const from = (): string | undefined =>
    how === "over a former state" ? former() : undefined;
  let done: readonly Operation[] = [];
  let [old, next] = ["", ""];

  beforeAll(async () => {
    done = await operations(from());
    old = from() === undefined ? "none none 0" : await stateOf(former());
    next = await stateOf(
      path.join(root, `counted-${String(from() === undefined)}`),
    );
    expect(old).not.toBe(next);
    expect(next.split("\n").length).toBeGreaterThan(30);
  });

  async function start(name: string): Promise<string> {
    const archive = path.join(root, name);
    const source = from();
    if (source === undefined)
      await rm(archive, { recursive: true, force: true });
    else await copyArchive(source, archive);
    return archive;
  }

  /** Former or new, the same by both ways of reading, and whole after one more export. */
  async function isSound(archive: string): Promise<"old" | "new"> {
    const state = await stateOf(archive);
    expect([old, next]).toContain(state);
    expect([old, next]).toContain(await stateByFolders(archive));
    await exportShop(after(), archive, createDisk());
    expect(await stateByFolders(archive)).toBe(next);
    expect((await readdir(archive)).sort()).toEqual([
      "archive.json",
      "states",
      "tables",
    ]);
    expect(await readdir(path.join(archive, "states"))).toHaveLength(1);
    return state === old ? "old" : "new";
  }

  test("a full disk at any operation: a sentence, and one state or the other", async () => {
    const seen = new Set<string>();
    for (const at of chosen(done, from() === undefined ? 3 : LAST)) {
      const archive = await start("full");
      let count = 0;
      const disk = createDisk(() => {
        // from there on nothing more is taken
        if (at <= count++)
          throw Object.assign(new Error("ENOSPC: no space left on device"), {
            code: "ENOSPC",
          });
      });
      const told = await exportShop(after(), archive, disk).then(
        () => "done",
        (error: unknown) => String(error),
      );
      // what fails after the new state holds is only what clears up
      if (told !== "done")
        expect(told, `operation ${at}`).toMatch(
          /^ArchiveFault: the archive in archive (?:cannot be written: the disk is full\. (?:What it held before, it still holds|None is there yet); put that right and export again\.|is written, but what it held before could not be cleared away: the disk is full\.)/,
        );
      const state = await isSound(archive);
      if (told.includes("cannot be written"))
        expect([state, told.includes("None is there yet")]).toEqual([
          "old",
          from() === undefined,
        ]);
      else expect(state).toBe("new");
      seen.add(state);
    }
    expect([...seen].sort()).toEqual(["new", "old"]);
  }, 600_000);

  test.skipIf(how !== "over a former state")(
    "one operation that fails, as a folder that may not be written",
    async () => {
      for (const operation of new Set(done)) {
        const archive = await start("denied");
        let left = Math.floor(
          done.filter((each) => each === operation).length / 2,
        );
        const disk = createDisk((each) => {
          if (each === operation && left-- === 0)
            throw Object.assign(new Error("EACCES: permission denied"), {
              code: "EACCES",
            });
        });
        await exportShop(after(), archive, disk).catch((error: unknown) => {
          expect(String(error)).toContain("its permissions do not allow it");
        });
        await isSound(archive);
      }
    },
    120_000,
  );

  test.skipIf(how !== "over a former state")(
    "killed at any operation",
    async () => {
      const seen = new Set<string>();
      for (const at of chosen(done, LAST)) {
        const archive = await start("killed");
        const { signal } = spawnSync(process.execPath, [
          script,
          after(),
          archive,
          String(at),
        ]);
        expect(signal, `operation ${at} of ${done.length}`).toBe("SIGKILL");
        seen.add(await isSound(archive));
      }
      expect([...seen].sort()).toEqual(["new", "old"]);
    },
    600_000,
  );
});

test("what others left in the archive's folder is not taken away", async () => {
  const archive = path.join(root, "mixed");
  await copyArchive(former(), archive);
  await writeFile(path.join(archive, "letter.txt"), "x");
  await exportShop(after(), archive, createDisk());
  expect(await readdir(archive)).toContain("letter.txt");
});

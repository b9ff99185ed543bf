// `thou export` as a person runs it: what is worked out again and what is not, what leaves, and what is said when the world does not allow it.
import manifest from "../../package.json" with { type: "json" };
import { rmSync } from "node:fs";
import {
  mkdir,
  readFile,
  readdir,
  rename,
  rm,
  stat,
  truncate,
  writeFile,
} from "node:fs/promises";
import { hostname } from "node:os";
import path from "node:path";
import { describe, expect, test } from "vitest";
import { SCHEMA, TABLE_NAMES } from "../../server/archive/schema.ts";
import { createProject } from "../../server/rules/check.ts";
import { folderWith, thou } from "../cli/in-process.ts";
import { CRIB, filesOf, job, ran, rowsOf } from "./shop.ts";

const SHOP = {
  "jobs/crib.thou": CRIB,
  "jobs/a.thou": job("a", "2025-03-01"),
  "jobs/b.thou": job("b", "2026-03-01"),
  "jobs/c.thou": job("c", "2026-05-01"),
};

async function exported(cwd: string, ...more: readonly string[]) {
  return ran(["export", "jobs", "--out", "archive", ...more], cwd);
}

async function records(cwd: string): Promise<readonly string[]> {
  const rows = await rowsOf(
    `SELECT record FROM ${filesOf(path.join(cwd, "archive"), "jobs")} ORDER BY record`,
  );
  return rows.map(({ record }) => String(record));
}

/** Each file of the archive's state with what tells whether it is the same file. */
async function parts(cwd: string): Promise<ReadonlyMap<string, number>> {
  const tables = path.join(cwd, "archive", "tables");
  const files = (
    await readdir(tables, { recursive: true, withFileTypes: true })
  ).filter((each) => each.isFile() && each.name.endsWith(".parquet"));
  return new Map(
    await Promise.all(
      files.map(async ({ parentPath, name }): Promise<[string, number]> => {
        const file = path.join(parentPath, name);
        return [path.relative(tables, file), (await stat(file)).ino];
      }),
    ),
  );
}

/** Writes a file of a table as it was before there was a column. */
async function without(column: string, file: string): Promise<void> {
  await rowsOf(
    `COPY (SELECT * EXCLUDE (${column}) FROM '${file}') TO '${file}.old' (FORMAT parquet)`,
  );
  await rename(`${file}.old`, file);
}

describe("what is worked out", () => {
  test("all the first time, nothing the second, and the archive is not touched then", async () => {
    const cwd = await folderWith(SHOP);
    expect(await exported(cwd)).toEqual({
      code: 0,
      out: "4 records worked out, 0 left as they were; the archive in archive holds 4 records.\n",
      err: "",
    });
    const before = await readFile(path.join(cwd, "archive/archive.json"));
    expect((await exported(cwd)).out).toMatch(/^0 records worked out, 4 left/);
    expect(await readFile(path.join(cwd, "archive/archive.json"))).toEqual(
      before,
    );
    expect(await records(cwd)).toEqual([
      "jobs/a.thou",
      "jobs/b.thou",
      "jobs/c.thou",
      "jobs/crib.thou",
    ]);
  });

  test("a record that changed, and only the parts of its year", async () => {
    const cwd = await folderWith(SHOP);
    await exported(cwd);
    const before = await parts(cwd);
    await writeFile(
      path.join(cwd, "jobs/a.thou"),
      job("a", "2025-03-01", "0.8754"),
    );
    expect((await exported(cwd)).out).toMatch(/^1 record worked out, 3 left/);
    const after = await parts(cwd);
    const same = [...after].filter(([file, ino]) => before.get(file) === ino);
    expect(same.map(([file]) => file).sort()).toEqual(
      [...before.keys()].filter((file) => !file.includes("year=2025")).sort(),
    );
    const rows = await rowsOf(
      `SELECT value FROM ${filesOf(path.join(cwd, "archive"), "readings")} WHERE record = 'jobs/a.thou' AND entry = 'bore drive' AND stage = 'finished'`,
    );
    expect(rows).toEqual([{ value: 0.02223516 }, { value: 0.02223516 }]);
    expect(await records(cwd)).toHaveLength(4);
  });

  test("every record that uses a crib which changed, or came, or went", async () => {
    const cwd = await folderWith(SHOP);
    await exported(cwd);
    const crib = path.join(cwd, "jobs/crib.thou");
    await writeFile(crib, CRIB.replace("0.00004", "0.00006"));
    expect((await exported(cwd)).out).toMatch(/^4 records worked out, 0 left/);
    await rename(crib, `${crib}.away`);
    expect((await exported(cwd)).out).toMatch(
      /^3 records worked out, 0 left as they were, 1 taken out; .* holds 3 records/,
    );
    expect((await exported(cwd)).out).toMatch(/^0 records worked out, 3 left/);
    await rename(`${crib}.away`, crib);
    expect((await exported(cwd)).out).toMatch(/^4 records worked out, 0 left/);
    const used = await rowsOf(
      `SELECT used, COUNT(*)::INTEGER AS n, COUNT(DISTINCT content)::INTEGER AS kinds FROM ${filesOf(path.join(cwd, "archive"), "uses")} GROUP BY used`,
    );
    expect(used).toEqual([{ used: "jobs/crib.thou", n: 3, kinds: 1 }]);
  });

  test("a record whose crib is missing, where another comes beside it that may be meant", async () => {
    const cwd = await folderWith(SHOP);
    await rm(path.join(cwd, "jobs/crib.thou"));
    const said = async (): Promise<readonly unknown[]> => {
      const { out } = await ran(["check", "jobs", "--format", "json"], cwd);
      const { files } = JSON.parse(out) as {
        readonly files: readonly {
          readonly findings: readonly { code: string; message: string }[];
        }[];
      };
      return files
        .flatMap(({ findings }) => findings)
        .filter(({ code }) => code === "file-missing")
        .map(({ message }) => message);
    };
    const kept = async (): Promise<readonly unknown[]> =>
      (
        await rowsOf(
          `SELECT message FROM ${filesOf(path.join(cwd, "archive"), "findings")} WHERE code = 'file-missing' ORDER BY record`,
        )
      ).map(({ message }) => message);
    expect((await exported(cwd)).out).toMatch(/^3 records worked out, 0 left/);
    expect(await kept()).toEqual(await said());
    await writeFile(path.join(cwd, "jobs/crab.thou"), CRIB);
    expect((await exported(cwd)).out).toMatch(/^4 records worked out, 0 left/);
    expect((await kept())[0]).toContain("did you mean `crab.thou`?");
    expect(await kept()).toEqual(await said());
    expect((await exported(cwd)).out).toMatch(/^0 records worked out, 4 left/);
  });

  test("every record whose crib can't be read, each time, and says so", async () => {
    const cwd = await folderWith(SHOP);
    await writeFile(
      path.join(cwd, "jobs/crib.thou"),
      new Uint8Array([0x70, 0xff]),
    );
    for (let time = 1; time <= 2; time++) {
      const { out, err } = await exported(cwd);
      expect(out).toMatch(/^3 records worked out/);
      expect(err).toContain("jobs/crib.thou cannot be read: it is not UTF-8");
    }
  });

  test("nothing of two cribs that use each other, and both where one of them changed", async () => {
    const cribs = { a: "b", b: "a" };
    const cwd = await folderWith(
      Object.fromEntries(
        Object.entries(cribs).map(([name, other]) => [
          `jobs/${name}.thou`,
          `shop ${name}\n  units inch\n  use "${other}.thou"\n`,
        ]),
      ),
    );
    expect((await exported(cwd)).out).toMatch(/^2 records worked out, 0 left/);
    expect((await exported(cwd)).out).toMatch(/^0 records worked out, 2 left/);
    await writeFile(
      path.join(cwd, "jobs/a.thou"),
      'shop a\n  units mm\n  use "b.thou"\n',
    );
    expect((await exported(cwd)).out).toMatch(/^2 records worked out, 0 left/);
  });

  test("a crib that a crib uses counts as well", async () => {
    const cwd = await folderWith({
      ...SHOP,
      "jobs/crib.thou": CRIB.replace(
        "units inch",
        'units inch\n  use "../stock.thou"',
      ),
    });
    await exported(cwd);
    expect((await exported(cwd)).out).toMatch(/^0 records worked out, 4 left/);
    await writeFile(path.join(cwd, "stock.thou"), "shop stock\n  units inch\n");
    expect((await exported(cwd)).out).toMatch(/^4 records worked out, 0 left/);
  });

  test("a record moved to another year is there once", async () => {
    const cwd = await folderWith(SHOP);
    await exported(cwd);
    await writeFile(path.join(cwd, "jobs/a.thou"), job("a", "2027-03-01"));
    await exported(cwd);
    const rows = await rowsOf(
      `SELECT record, year::INTEGER AS year FROM ${filesOf(path.join(cwd, "archive"), "jobs")} ORDER BY record`,
    );
    expect(rows).toEqual([
      { record: "jobs/a.thou", year: 2027 },
      { record: "jobs/b.thou", year: 2026 },
      { record: "jobs/c.thou", year: 2026 },
      { record: "jobs/crib.thou", year: 0 },
    ]);
  });
});

describe("what leaves", () => {
  test("a record that is gone, from every table", async () => {
    const cwd = await folderWith(SHOP);
    await exported(cwd);
    await rm(path.join(cwd, "jobs/b.thou"));
    expect((await exported(cwd)).out).toMatch(
      /^0 records worked out, 3 left as they were, 1 taken out; .* 3 records/,
    );
    for (const table of TABLE_NAMES)
      expect(
        await rowsOf(
          `SELECT * FROM ${filesOf(path.join(cwd, "archive"), table)} WHERE record = 'jobs/b.thou'`,
        ),
        table,
      ).toEqual([]);
  });

  test("not what is elsewhere, nor what lies under a path that is not there", async () => {
    const cwd = await folderWith({
      ...SHOP,
      "old/crib.thou": CRIB,
      "old/d.thou": job("d", "2024-03-01"),
    });
    await ran(["export", "jobs", "old", "--out", "archive"], cwd);
    await exported(cwd);
    expect(await records(cwd)).toHaveLength(6);
    await rename(path.join(cwd, "old"), path.join(cwd, "older"));
    const gone = await ran(["export", "jobs", "old", "--out", "archive"], cwd);
    expect(gone).toMatchObject({
      code: 2,
      err: "thou: old cannot be read: there is no such file or folder; did you mean older?\n",
    });
    expect(await records(cwd)).toHaveLength(6);
  });

  test("all but the tables themselves, where no record is left", async () => {
    const cwd = await folderWith(SHOP);
    await exported(cwd);
    await rm(path.join(cwd, "jobs"), { recursive: true });
    await mkdir(path.join(cwd, "jobs"));
    expect((await exported(cwd)).out).toMatch(/4 taken out; .* 0 records/);
    for (const table of TABLE_NAMES)
      expect(
        await rowsOf(
          `SELECT * FROM ${filesOf(path.join(cwd, "archive"), table)}`,
        ),
      ).toEqual([]);
    expect((await ran(["ask", "closures"], cwd)).out).toContain(
      "Nothing in this archive answers it.",
    );
  });
});

describe("names", () => {
  test("are the same from wherever an export is started", async () => {
    const cwd = await folderWith(SHOP);
    await exported(cwd);
    const inside = await ran(
      ["export", "--out", "../archive"],
      path.join(cwd, "jobs"),
    );
    expect(inside.out).toMatch(/^0 records worked out, 4 left/);
  });

  test("with quotes, brackets and stars in them are names and nothing else", async () => {
    const odd = "it's [a] *job* {1}";
    const cwd = await folderWith({
      "jobs/crib.thou": CRIB,
      [`jobs/${odd}.thou`]: job("a", "2025-03-01"),
    });
    const out = `ar'ch[iv]e*`;
    for (const worked of [2, 0])
      expect((await ran(["export", "jobs", "--out", out], cwd)).out).toMatch(
        new RegExp(`^${worked} records worked out`),
      );
    await rm(path.join(cwd, `jobs/${odd}.thou`));
    expect((await ran(["export", "jobs", "--out", out], cwd)).out).toContain(
      "1 taken out",
    );
    const asked = await ran(
      ["ask", "findings-by-month", "--archive", out],
      cwd,
    );
    expect([asked.code, asked.err]).toEqual([0, ""]);
  });
});

describe("what goes wrong", () => {
  test("a record that can't be read: the others are exported, and what the archive held of it stays", async () => {
    const cwd = await folderWith(SHOP);
    await exported(cwd);
    await writeFile(path.join(cwd, "jobs/b.thou"), Buffer.from([0xff, 0xfe]));
    await writeFile(path.join(cwd, "jobs/d.thou"), job("d", "2026-07-01"));
    const again = await exported(cwd);
    expect(again.code).toBe(2);
    expect(again.err).toContain("jobs/b.thou cannot be read: it is in UTF-16");
    expect(again.out).toMatch(/^1 record worked out, .* 5 records/);
    expect(await records(cwd)).toContain("jobs/b.thou");
  });

  test("a record that vanishes while the export runs: it is said, the others are exported, and what the archive held stays", async () => {
    const cwd = await folderWith(SHOP);
    await exported(cwd);
    await writeFile(path.join(cwd, "jobs/a.thou"), job("a", "2025-04-01"));
    const { code, out, err } = await thou(
      ["export", "jobs", "--out", "archive"],
      {
        cwd,
        parts: {
          createProject() {
            const project = createProject({ root: "" });
            return {
              ...project,
              check(file) {
                rmSync(path.join(cwd, "jobs/b.thou"), { force: true });
                return project.check(file);
              },
            };
          },
        },
      },
    );
    expect(code).toBe(2);
    expect(err.replaceAll(/\s+/g, " ")).toBe(
      "thou: jobs/b.thou cannot be read: there is no such file or folder. What the archive holds of it stays. ",
    );
    expect(out).toMatch(/^1 record worked out, .* 4 records/);
    expect(await records(cwd)).toContain("jobs/b.thou");
    // the next export finds it gone
    expect((await exported(cwd)).out).toContain("1 taken out");
  });

  test("another export at work: who, since when, and the way out; a stale lock is taken over", async () => {
    const cwd = await folderWith(SHOP);
    await exported(cwd);
    const lock = path.join(cwd, "archive/export.lock");
    const hold = (pid: number, host: string, since: string): Promise<void> =>
      writeFile(lock, JSON.stringify({ pid, host, since, id: "x" }));
    const now = new Date().toISOString();
    await hold(process.ppid, hostname(), now);
    const other = await exported(cwd);
    expect(other.code).toBe(2);
    expect(other.err.replaceAll(/\s+/g, " ")).toBe(
      `thou: another export (process ${process.ppid} on ${hostname()}, since ${now.slice(11, 16)} UTC on ${now.slice(0, 10)}) is at work on archive: wait until it is done. If you know that it is not running any more, remove archive/export.lock and try again. `,
    );
    // what another machine holds can't be known to be stale
    await hold(2 ** 22 + 1, "elsewhere.example", "2001-01-01T00:00:00Z");
    expect((await exported(cwd)).code).toBe(2);
    await writeFile(lock, "");
    expect((await exported(cwd)).code).toBe(2);
    // no process has this number; the other was there before the machine started; the last had our own number
    for (const [pid, since] of [
      [2 ** 22 + 1, now],
      [process.ppid, "2001-01-01T00:00:00Z"],
      [process.pid, now],
    ] as const) {
      await hold(pid, hostname(), since);
      expect((await exported(cwd)).code).toBe(0);
      await expect(stat(lock)).rejects.toThrow("ENOENT");
    }
  });

  test("two exports at once: one is done whole, the other says so", async () => {
    const cwd = await folderWith(SHOP);
    const both = await Promise.all([exported(cwd), exported(cwd)]);
    expect(both.map(({ code }) => code).sort()).toEqual([0, 2]);
    expect(both.find(({ code }) => code === 2)?.err).toContain(
      "another export",
    );
    expect(await records(cwd)).toHaveLength(4);
    expect((await readdir(path.join(cwd, "archive"))).sort()).toEqual([
      "archive.json",
      "states",
      "tables",
    ]);
  });

  test("someone's own folder, a damaged list, a newer archive: nothing is written", async () => {
    const cwd = await folderWith({ ...SHOP, "mine/letter.txt": "x" });
    const mine = await ran(["export", "jobs", "--out", "mine"], cwd);
    expect(mine.code).toBe(2);
    expect(mine.err).toContain("mine holds other files (letter.txt)");
    expect(await readdir(path.join(cwd, "mine"))).toEqual(["letter.txt"]);

    await exported(cwd);
    const list = path.join(cwd, "archive/archive.json");
    const text = await readFile(list, "utf8");
    for (const broken of [
      "",
      "{",
      "null",
      "[]",
      '{"archive":"thou"}',
      '{"archive":"thou","schema":1,"thou":"1","state":"../..","namedFrom":".","parts":[]}',
    ]) {
      await writeFile(list, broken);
      for (const words of [
        ["export", "jobs", "--out", "archive"],
        ["ask", "closures"],
      ]) {
        const refused = await ran(words, cwd);
        expect(refused.code, broken).toBe(2);
        expect(refused.err).toContain("archive/archive.json is no archive's");
      }
    }
    const newer = text.replace(
      `"schema": ${SCHEMA}`,
      `"schema": ${SCHEMA + 1}`,
    );
    await writeFile(list, newer);
    for (const words of [
      ["export", "jobs", "--out", "archive"],
      ["ask", "closures"],
    ]) {
      const refused = await ran(words, cwd);
      expect(refused.code).toBe(2);
      expect(refused.err.replaceAll(/\s+/g, " ")).toContain(
        `archive was written by a newer thou (${manifest.version}; its schema is ${SCHEMA + 1}, this one knows up to ${SCHEMA}): install that version, or export to another folder.`,
      );
    }
    expect(await readFile(list, "utf8")).toBe(newer);
  });

  test.each([
    [1, "before there were swings"],
    [
      2,
      "before a gauge had a temperature of its own, and what lay beside a missing file counted",
    ],
  ])(
    "an archive of schema %d, %s, answers its questions, and is made anew by the next export, which says what that leaves out",
    async (old) => {
      const cwd = await folderWith(SHOP);
      await exported(cwd);
      const list = path.join(cwd, "archive/archive.json");
      const manifest = JSON.parse(await readFile(list, "utf8")) as object;
      expect(manifest).toMatchObject({ schema: SCHEMA });
      await writeFile(
        list,
        JSON.stringify({ ...manifest, schema: old, thou: "0.9.0" }),
      );
      const tables = path.join(cwd, "archive/tables");
      for (const part of (await parts(cwd)).keys()) {
        if (part.startsWith("readings"))
          await without("gauge_temperature", path.join(tables, part));
        if (part.startsWith("uses"))
          await without("beside", path.join(tables, part));
      }
      if (old === 1) await rm(path.join(tables, "swings"), { recursive: true });
      const asked = await ran(["ask", "closures"], cwd);
      expect([asked.code, asked.err]).toEqual([0, ""]);
      expect(asked.out).toContain("jobs/a.thou");

      const anew = await ran(
        ["export", "jobs/a.thou", "--out", "archive"],
        cwd,
      );
      expect(anew.code).toBe(2);
      expect(anew.err.replaceAll(/\s+/g, " ")).toBe(
        `thou: the archive in archive is of an older thou (0.9.0; its schema is ${old}, this one writes ${SCHEMA}): of its 4 records, those that are under the paths of this export are written anew, others need an export of their own. `,
      );
      expect(anew.out).toContain("holds 1 record.");
      expect((await exported(cwd)).code).toBe(0);
      expect(await records(cwd)).toHaveLength(4);
      expect(JSON.parse(await readFile(list, "utf8"))).toMatchObject({
        schema: SCHEMA,
      });
      expect(
        await rowsOf(
          `SELECT DISTINCT gauge_temperature FROM '${tables}/readings/*/*.parquet'`,
        ),
      ).toEqual([{ gauge_temperature: null }]);
    },
  );

  test("a part that is missing or cut short is said, and written anew", async () => {
    const cwd = await folderWith(SHOP);
    await exported(cwd);
    const [file] = [...(await parts(cwd)).keys()].filter(
      (each) => each.startsWith("results") && each.includes("2026"),
    );
    await truncate(path.join(cwd, "archive/tables", file ?? ""), 100);
    const asked = await ran(["ask", "closures"], cwd);
    expect(asked.code).toBe(2);
    expect(asked.err).toContain("the archive in archive cannot be read");
    const again = await exported(cwd);
    expect(again.code).toBe(2);
    expect(again.err.replaceAll(/\s+/g, " ")).toContain(
      "a part of the archive in archive is missing or damaged (2 records of 2026)",
    );
    expect(again.out).toMatch(/^2 records worked out, 2 left/);
    expect((await exported(cwd)).code).toBe(0);
    expect(await records(cwd)).toHaveLength(4);
  });

  test("a folder that can't be made, and no folder at all", async () => {
    const cwd = await folderWith(SHOP);
    const under = await ran(
      ["export", "jobs", "--out", "jobs/a.thou/archive"],
      cwd,
    );
    expect(under.code).toBe(2);
    expect(under.err.replaceAll(/\s+/g, " ")).toContain(
      "the archive in jobs/a.thou/archive cannot be written: a part of its path is a file, not a folder. None is there yet; put that right and export again.",
    );
    const none = await ran(["export", "jobs"], cwd);
    expect(none.code).toBe(2);
    expect(none.err).toContain("--out");
    const asked = await ran(["ask", "closures"], cwd);
    expect(asked).toMatchObject({ code: 2, out: "" });
    expect(asked.err.replaceAll(/\s+/g, " ")).toContain(
      'there is no archive in archive: "thou export --out archive" makes one',
    );
  });
});

test("parts stay few, however often a year grows by a record", async () => {
  const cwd = await folderWith({ "jobs/crib.thou": CRIB });
  let most = 0;
  for (let day = 1; day <= 12; day++) {
    await writeFile(
      path.join(cwd, `jobs/d${day}.thou`),
      job(`d${day}`, `2026-03-${String(day).padStart(2, "0")}`),
    );
    await exported(cwd);
    const jobs = [...(await parts(cwd)).keys()].filter((file) =>
      file.startsWith("jobs/year=2026"),
    );
    most = Math.max(most, jobs.length);
  }
  expect(most).toBeLessThanOrEqual(8);
  expect(1).toBeLessThan(most);
  expect(await records(cwd)).toHaveLength(13);
});

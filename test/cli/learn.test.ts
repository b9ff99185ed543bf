// `thou learn` as a person calls it: the report, the crib file and what a check makes of it, the JSON, and what it refuses.
import { readFile } from "node:fs/promises";
import path from "node:path";
import { beforeAll, expect, test } from "vitest";
import { createProject } from "../../server/rules/check.ts";
import { misread, misreadIn } from "../history/misread.ts";
import { shopHistory } from "../history/shop-history.ts";
import { folderWith, thou, type Ran } from "./in-process.ts";

const parts = { createProject: () => createProject({ root: "" }) };
let cwd = "";
const run = (...words: readonly string[]): Promise<Ran> =>
  thou(words, { cwd, parts });

beforeAll(async () => {
  const { records, cribs } = shopHistory(3, { records: 24 });
  cwd = await folderWith({
    ...Object.fromEntries([...cribs].map(({ path: at, text }) => [at, text])),
    ...Object.fromEntries(
      [...records].map((record) => [
        record.path,
        record.versions.at(-1)?.text ?? "",
      ]),
    ),
    "empty/crib.thou": "shop bare\n  units inch\n",
  });
});

test("says what was learned, and what was left out", async () => {
  const { code, out, err } = await run("learn", "shop-0001");
  expect([code, err]).toEqual([0, ""]);
  expect(out).toContain("What reamers cut over their size");
  expect(out).toMatch(/r-8755 in tin-bronze: -?\d+\.\d+ thou, spread/u);
  expect(out).toContain("What bushes close");
  expect(out).toContain("mic-2 over mic-1");
  expect(out.trimEnd()).toMatch(/Learned from 24 records\.$/u);
});

test("writes a crib file that checks clean and stands as the formatter puts it, and writes it again", async () => {
  const file = "shop-0001/learned.thou";
  expect((await run("learn", "shop-0001", "--out", file)).code).toBe(0);
  const text = await readFile(path.join(cwd, file), "utf8");
  expect(text).toContain("lesson r-8755-in-tin-bronze\n");
  expect(text).toContain('  use "crib.thou"\n');
  const checked = await run("check", file, "--fail-on", "warning");
  expect([checked.code, checked.err]).toEqual([0, ""]);
  expect((await run("format", "--check", file)).code).toBe(0);
  // the file that it wrote is no record: the same again, byte for byte
  expect((await run("learn", "shop-0001", "--out", file)).code).toBe(0);
  expect(await readFile(path.join(cwd, file), "utf8")).toBe(text);
  const printed = await run("learn", "shop-0001", "--format", "thou");
  expect(printed.out).toBe(
    text.replace('use "crib.thou"', 'use "shop-0001/crib.thou"'),
  );
});

test("as JSON every key is there, and every number is one", async () => {
  const { out } = await run("learn", "shop-0001", "--format", "json");
  const found = JSON.parse(out) as {
    schema: number;
    records: number;
    reamers: readonly Record<string, unknown>[];
    bushes: readonly Record<string, unknown>[];
    gauges: readonly Record<string, unknown>[];
    leftOut: readonly Record<string, unknown>[];
  };
  expect([found.schema, found.records]).toEqual([1, 24]);
  const shared = ["mean", "low", "high", "spread", "count", "records"];
  for (const each of [...found.reamers, ...found.bushes, ...found.gauges])
    for (const key of shared)
      expect(each[key] === null || Number.isFinite(each[key]), key).toBe(true);
  expect(Object.keys(found.reamers[0] ?? {})).toEqual([
    ...["reamer", "material", "crib", "mean", "low", "high", "spread"],
    ...["count", "seen", "conceded", "drift", "records", "first", "last"],
    "unit",
  ]);
  expect(Object.keys(found.leftOut[0] ?? {})).toEqual([
    ...["about", "subject", "file", "entry", "why", "text"],
  ]);
});

test("never writes over a file that it did not write", async () => {
  const file = "shop-0001/crib.thou";
  const before = await readFile(path.join(cwd, file), "utf8");
  const { code, err } = await run("learn", "shop-0001", "--out", file);
  expect([code, err.replace(/\s+/gu, " ")]).toEqual([
    2,
    "thou: shop-0001/crib.thou is there already, and was not written by thou learn. Choose another name, or move it away. ",
  ]);
  expect(await readFile(path.join(cwd, file), "utf8")).toBe(before);
  // a device has no end to read to
  const device = await run("learn", "shop-0001", "--out", "/dev/zero");
  expect([device.code, device.err.replace(/\s+/gu, " ")]).toEqual([
    2,
    expect.stringMatching(
      /cannot be written: it is not a file; name another file\. $/u,
    ),
  ]);
});

test.each([
  [
    ["shop-0001", "nowhere"],
    "not all of what it is learned from could be read; mend that, or name only what can be read",
  ],
  [["empty"], "there is no job to learn from"],
])("leaves a crib as it is when told to learn from %j", async (paths, why) => {
  const file = "kept.thou";
  expect((await run("learn", "shop-0001", "--out", file)).code).toBe(0);
  const before = await readFile(path.join(cwd, file), "utf8");
  const { code, err } = await run("learn", ...paths, "--out", file);
  expect(code).toBe(2);
  expect(err.replace(/\s+/gu, " ")).toContain(
    `thou: ${file} is left as it is: ${why}.`,
  );
  expect(await readFile(path.join(cwd, file), "utf8")).toBe(before);
});

test("of no record it says that nothing was learned; of a missing one that it is", async () => {
  const none = await run("learn", "empty");
  expect([none.code, none.out]).toEqual([
    0,
    "Nothing was learned from 0 records.\n",
  ]);
  const missing = await run("learn", "nowhere");
  expect(missing.code).toBe(2);
  expect(missing.err).toContain("nowhere cannot be read");
  expect((await run("learn")).code).toBe(2);
});

test("a signed reading that no other is like is told with its place", async () => {
  const { records, cribs } = shopHistory(20_262, { records: 60 });
  const all = [...records];
  const within = misreadIn(all);
  const change = misread(within);
  const folder = await folderWith(
    Object.fromEntries([
      ...[...cribs].map(({ path: at, text }) => [at, text] as const),
      ...all.map(
        (record) =>
          [
            record.path,
            change(record, record.versions.at(-1)?.text ?? ""),
          ] as const,
      ),
    ]),
  );
  const { out, code } = await thou(["learn", "."], { cwd: folder, parts });
  expect(code).toBe(0);
  expect(out.replace(/\s+/gu, " ")).toContain(
    `look whether it was misread bore rear in ${all[within]?.path ?? ""}`,
  );
});

test("two cribs that have the same names are learned from one at a time", async () => {
  const two = shopHistory(3, { records: 62 });
  const folder = await folderWith({
    ...Object.fromEntries(
      [...two.cribs].map(({ path: at, text }) => [at, text]),
    ),
    ...Object.fromEntries(
      [...two.records]
        .filter(({ index }) => index < 2 || 60 <= index)
        .map((record) => [record.path, record.versions.at(-1)?.text ?? ""]),
    ),
  });
  const text = await thou(["learn", "."], { cwd: folder, parts });
  expect(text.code).toBe(0);
  const crib = await thou(["learn", ".", "--format", "thou"], {
    cwd: folder,
    parts,
  });
  expect(crib.code).toBe(2);
  expect(crib.err.replace(/\s+/gu, " ")).toContain(
    "Learn from the records of one crib at a time.",
  );
});

test("a crib learned from a shop that works in millimetres is in millimetres", async () => {
  const folder = await folderWith({
    "pump.thou": `job pump
  units mm
part shaft
part case
  material iron-grey
journal drive on shaft
  read 19.986
bore drive in case
  read 20.016 by TW on 2026-03-05
fit drive of journal drive in bore drive
line drive
  bore drive from 0 to 30
  ream with r-20
step ream
  cuts line drive
  done 2026-03-05 by TW
reamer r-20
  size 20.015
`,
  });
  const { out } = await thou(["learn", "pump.thou", "--format", "thou"], {
    cwd: folder,
    parts,
  });
  expect(out).toMatch(/^shop learned\n {2}units mm$/mu);
});

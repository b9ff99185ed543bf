// What goes into the archive comes out of it: every result and finding of `thou check --format json` is in Parquet and equal, bit for bit;
// readings and steps are those that the text of the records says. Over all samples, damaged ones too, and a made-up history, as a first export
// has them and as a second one does after some of them have changed, moved to another year, or gone.
import { cp, mkdir, readFile, rm, writeFile } from "node:fs/promises";
import path from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { folderWith } from "../cli/in-process.ts";
import { shopHistory } from "../history/shop-history.ts";
import { filesOf, ran, rowsOf } from "./shop.ts";

interface Checked {
  readonly files: readonly {
    readonly file: string;
    readonly findings: readonly Readonly<Record<string, unknown>>[];
    readonly results: readonly Readonly<Record<string, unknown>>[];
  }[];
}

type Rows = readonly Readonly<Record<string, unknown>>[];

/** What a check says, and what the archive has of it, at one time. */
interface Kept {
  readonly json: Checked;
  readonly tables: ReadonlyMap<string, Rows>;
}

let cwd = "";
const kept: Kept[] = [];

/** Every form of a swing, and two that no row is kept of: a line that can't be read, and one of the second entry of a name. */
const TURNED = `job turned
  opened 2026-02-03
  units inch
gauge dti
part shaft
part case
journal one on shaft
  read 0.8740
  read 0.8741 at 104 F
  read 0.8742 at 104 F, gauge 68 F
  swing near 0.0006 on vee 60 deg, 3 lobes with dti by AK on 2026-02-04
  swing far 4 um on vee 90 deg between, 5 lobes as run
  swing 0.0000 on vee 60 deg, 5 lobes
  swing 0.0006 on vee 60 deg, 3
journal one on shaft
  swing 0.0009 on vee 60 deg, 3 lobes
bore one in case
  swing 0.0004 on three points, 9 lobes with other
`;

const NONE: Kept = { json: { files: [] }, tables: new Map() };
/** The state that lies on the disk while the tests run. */
const last = (): Kept => kept.at(-1) ?? NONE;
const table = (name: string, { tables } = last()): Rows =>
  tables.get(name) ?? [];

beforeAll(async () => {
  cwd = await folderWith({
    // what a person may type into a text
    "turned.thou": TURNED,
    "odd.thou":
      'job odd\n  title "\u0000 \u{1F529} \u202E \\"=1+1\\""\n  opened 0001-01-01 by "\u00E9\u0301"\n  units mm\n',
  });
  await cp("samples", path.join(cwd, "samples"), { recursive: true });
  const history = shopHistory(60_031, { records: 48 });
  const write = async (file: string, text: string): Promise<void> => {
    await mkdir(path.dirname(path.join(cwd, file)), { recursive: true });
    await writeFile(path.join(cwd, file), text);
  };
  for (const crib of history.cribs) await write(crib.path, crib.text);
  for (const record of history.records)
    await write(record.path, record.versions.at(-1)?.text ?? "");
  await keep(/^(\d+) records worked out, 0 left/);
  const records = [...history.records];
  for (const [index, { path: file, versions }] of records.entries()) {
    const text = versions.at(-1)?.text ?? "";
    if (index % 3 === 0) await write(file, `# looked at\n${text}`);
    if (index % 7 === 1)
      await write(file, text.replace(/opened \d{4}/u, "opened 2031"));
  }
  await rm(path.join(cwd, records[2]?.path ?? ""));
  await keep(/^(2\d) records worked out, \d{2,} left as they were, 1 taken/);
}, 120_000);

/** @param says what the export has to say, with a number */
async function keep(says: RegExp): Promise<void> {
  const json = JSON.parse(
    (await ran(["check", "--format", "json"], cwd)).out,
  ) as Checked;
  const { out } = await ran(["export", "--out", "archive"], cwd);
  expect(out).toMatch(says);
  expect(out).toContain(`holds ${json.files.length} records`);
  const order: Readonly<Record<string, string>> = {
    results: "number",
    workings: "result, number",
    needs: "result, number",
    findings: "number",
    readings: "line, number",
    swings: "line",
    steps: "number",
    concessions: "entry",
    jobs: "record",
  };
  const tables = new Map<string, Rows>();
  for (const [name, by] of Object.entries(order))
    tables.set(
      name,
      await rowsOf(
        `SELECT * EXCLUDE (year) FROM ${filesOf(path.join(cwd, "archive"), name)} ORDER BY record, ${by}`,
      ),
    );
  kept.push({ json, tables });
}

function of(rows: Rows, record: string): Rows {
  return rows.filter((row) => row.record === record);
}

/** Files in the order of their names, as the tables have them. */
function byName({ json } = last()): Checked["files"] {
  return [...json.files].sort((a, b) => (a.file < b.file ? -1 : 1));
}

describe.each([
  ["the first time", 0],
  ["once some have changed", 1],
])("as thou check says it, %s", (_, time) => {
  const then = (): Kept => kept[time] ?? NONE;
  const rowsOfTable = (name: string): Rows => table(name, then());

  test("every result, with its working and its needs", () => {
    let results = 0;
    for (const { file, results: wanted } of byName(then())) {
      const workings = of(rowsOfTable("workings"), file);
      const needs = of(rowsOfTable("needs"), file);
      const found = of(rowsOfTable("results"), file).map((row) => ({
        entry: row.entry,
        kind: row.kind,
        of: row.about,
        case: row.hot_case,
        low: row.low,
        nominal: row.nominal,
        high: row.high,
        unit: row.unit,
        status: row.status,
        verdict: row.verdict,
        text: row.text,
        working: workings
          .filter((each) => each.result === row.number)
          .map((each) => ({
            formula: each.formula,
            with: each.with_numbers,
            source: each.source,
          })),
        needs: needs
          .filter((each) => each.result === row.number)
          .map((each) => ({
            ref: each.needs_entry,
            fact: each.fact,
            text: each.text,
          })),
      }));
      // numbers are held to the last bit: toEqual goes by Object.is
      expect(found, file).toEqual(wanted);
      results += found.length;
    }
    expect(results).toBeGreaterThan(3000);
    expect(rowsOfTable("results")).toHaveLength(results);
  });

  test("every finding", () => {
    let findings = 0;
    for (const { file, findings: wanted } of byName(then())) {
      const found = of(rowsOfTable("findings"), file).map((row) => ({
        code: row.code,
        level: row.level,
        line: row.line,
        column: row.first_column,
        endLine: row.end_line,
        endColumn: row.end_column,
        message: row.message,
        entry: row.entry,
        accepted: row.accepted,
      }));
      expect(found, file).toEqual(wanted);
      findings += found.length;
    }
    expect(findings).toBeGreaterThan(100);
    expect(rowsOfTable("findings")).toHaveLength(findings);
    // an accepted one names a concession of its record that allows it
    let accepted = 0;
    for (const row of rowsOfTable("findings")) {
      expect(row.accepted_by !== null).toBe(row.accepted);
      if (row.accepted !== true) continue;
      expect(
        of(rowsOfTable("concessions"), String(row.record)).filter(
          ({ name, code }) => name === row.accepted_by && code === row.code,
        ),
        `${String(row.record)} ${String(row.message)}`,
      ).toHaveLength(1);
      accepted++;
    }
    expect(accepted).toBeGreaterThan(2);
  });

  test("every file, and the count of its findings", () => {
    expect(rowsOfTable("jobs").map((row) => row.record)).toEqual(
      byName(then()).map(({ file }) => file),
    );
    for (const { file, findings } of then().json.files) {
      const [row] = of(rowsOfTable("jobs"), file);
      const count = (level: string): number =>
        findings.filter(
          (each) => each.accepted !== true && each.level === level,
        ).length;
      expect(row, file).toMatchObject({
        errors: count("error"),
        warnings: count("warning"),
        information: count("information"),
        hints: count("hint"),
        accepted: findings.filter((each) => each.accepted === true).length,
      });
    }
  });
});

describe("as the text says it", () => {
  test("texts of any kind", async () => {
    const [row] = of(table("jobs"), "odd.thou");
    const text = await readFile(path.join(cwd, "odd.thou"), "utf8");
    expect(text).toContain(`title "${String(row?.title)}"`);
    expect(row?.title).toContain("\u0000 \u{1F529} \u202E");
    expect(row?.opened_by).toBe("\u00E9\u0301");
    expect(row?.opened).toEqual(new Date("0001-01-01"));
  });

  // sound records only: of a damaged line nothing is kept
  const isSound = (file: string): boolean =>
    !file.includes("broken") && file !== "odd.thou";

  test("every value that was read, where, when and by whom", async () => {
    let values = 0;
    for (const { file } of byName().filter((each) => isSound(each.file))) {
      const text = await readFile(path.join(cwd, file), "utf8");
      const unit = /^ +units +(inch|mm)/m.exec(text)?.[1] ?? "mm";
      const damaged = new Set(
        of(table("findings"), file)
          .filter((row) => row.code === "line-damaged")
          .map((row) => row.line),
      );
      for (const [index, line] of text.split(/\r?\n/).entries()) {
        const read = /^\s+(read|repeat)\s+(.*?)\s*(?:#.*)?$/.exec(line);
        if (read === null || damaged.has(index + 1)) continue;
        const [, word = "", rest = ""] = read;
        const [, numbers = "", own] =
          /((?:^|\s)\d*\.?\d+(?:\s+\d*\.?\d+)*)(?:\s+(mm|in)\b)?/.exec(rest) ??
          [];
        const size = (own ?? unit) === "mm" ? 1e-3 : 0.0254;
        const rows = of(table("readings"), file).filter(
          (row) => row.line === index + 1,
        );
        const where = `${file}:${index + 1} ${line}`;
        expect(rows.map((row) => Number(row.value)).length, where).toBe(
          numbers.trim().split(/\s+/).length,
        );
        numbers
          .trim()
          .split(/\s+/)
          .forEach((number, at) => {
            // as written, in tenths of a nanometre
            expect(Number(rows[at]?.value), where).toBeCloseTo(
              Number(number) * size,
              10,
            );
            values++;
          });
        const [, on] = /\bon (\d{4}-\d\d-\d\d)/.exec(rest) ?? [];
        const [, by] = /\bby (\w+)/.exec(rest) ?? [];
        const [, stage] = /\bas (\w+)/.exec(rest) ?? [];
        const [, gauge] = /\bwith ([\w-]+)/.exec(rest) ?? [];
        for (const row of rows)
          expect([row.fact, row.taken, row.taken_by, row.gauge], where).toEqual(
            [
              word,
              on === undefined ? null : new Date(on),
              by ?? null,
              gauge === undefined ? null : `gauge ${gauge}`,
            ],
          );
        if (stage !== undefined)
          expect(rows.map((row) => row.stage)).toContain(stage);
      }
    }
    expect(values).toBeGreaterThan(1000);
    const inSound = table("readings").filter((row) =>
      isSound(String(row.record)),
    );
    expect(inSound).toHaveLength(values);
  });

  test("how warm the part was, and the gauge where that was another", () => {
    expect(
      of(table("readings"), "turned.thou").map((row) => [
        row.temperature,
        row.gauge_temperature,
      ]),
    ).toEqual([
      [null, null],
      [40, null],
      [40, 20],
    ]);
  });

  test("every swing, and the roundness that a check gives for it", async () => {
    let swings = 0;
    for (const { file, results } of byName()) {
      const rows = of(table("swings"), file);
      swings += rows.length;
      // of what a part is now, the worst
      for (const { entry, nominal } of results.filter(
        ({ kind, status }) => kind === "roundness" && status === "measured",
      ))
        expect(
          rows.filter((row) => row.entry === entry).map((row) => row.roundness),
          `${file} ${String(entry)}`,
        ).toContain(nominal);
    }
    const lines = (await readFile(path.join(cwd, "turned.thou"), "utf8")).split(
      "\n",
    );
    const turned = of(table("swings"), "turned.thou");
    expect(turned.map((row) => lines[Number(row.line) - 1]?.trim())).toEqual(
      lines
        .map((line) => line.trim())
        .filter(
          (line) => /^swing .* lobes/.test(line) && !line.includes("0.0009"),
        ),
    );
    const degree = Math.PI / 180;
    const near = (value: number): number => expect.closeTo(value, 12) as number;
    const at = { record: "", line: 0 };
    const none = {
      gauge: null,
      gauge_record: null,
      taken: null,
      taken_by: null,
    };
    // the factors of a vee of 60°, opposite, and of 90°, between, by the formula in the page of `lobed` written out
    const between = Math.abs(
      -1 - Math.cos(5 * (90 + 45) * degree) / Math.sin(45 * degree),
    );
    expect(turned.map((row) => ({ ...row, record: "", line: 0 }))).toEqual([
      {
        ...at,
        entry: "journal one",
        place: "near",
        swing: near(0.0006 * 0.0254),
        step: near(0.0001 * 0.0254),
        method: "vee",
        vee_angle: near(60 * degree),
        indicator: "opposite",
        lobes: 3,
        factor: near(3),
        roundness: near(0.0002 * 0.0254),
        gauge: "gauge dti",
        gauge_record: "turned.thou",
        stage: "finished",
        taken: new Date("2026-02-04"),
        taken_by: "AK",
      },
      {
        ...at,
        ...none,
        entry: "journal one",
        place: "far",
        swing: near(4e-6),
        step: near(1e-6),
        method: "vee",
        vee_angle: near(90 * degree),
        indicator: "between",
        lobes: 5,
        factor: near(between),
        roundness: near(4e-6 / between),
        stage: "run",
      },
      {
        ...at,
        ...none,
        entry: "journal one",
        place: null,
        swing: 0,
        step: near(0.0001 * 0.0254),
        method: "vee",
        vee_angle: near(60 * degree),
        indicator: "opposite",
        lobes: 5,
        // blind
        factor: null,
        roundness: null,
        stage: "finished",
      },
      {
        ...at,
        ...none,
        entry: "bore one",
        place: null,
        swing: near(0.0004 * 0.0254),
        step: near(0.0001 * 0.0254),
        method: "three-points",
        vee_angle: null,
        indicator: null,
        lobes: 9,
        factor: near(2),
        roundness: near(0.0002 * 0.0254),
        stage: "finished",
      },
    ]);
    // those of the samples beside them
    expect(swings).toBeGreaterThan(4);
    expect(table("swings")).toHaveLength(swings);
  });

  test("every step, and how it stands", async () => {
    let steps = 0;
    for (const { file } of byName().filter((each) => isSound(each.file))) {
      const text = await readFile(path.join(cwd, file), "utf8");
      if (!/^job /m.test(text)) {
        expect(of(table("steps"), file), file).toEqual([]);
        continue;
      }
      for (const [block, name] of text.matchAll(
        /^step ([\w-]+).*(?:\n(?:[ \t].*|\s*|#.*))*/gm,
      )) {
        const [, done] =
          /^\s+done(?: on)? (\d{4}-\d\d-\d\d)/m.exec(block) ?? [];
        const [, says] = /^\s+do "(.*)"/m.exec(block) ?? [];
        const row = of(table("steps"), file).find(
          (each) => each.entry === `step ${name ?? ""}`,
        );
        expect(row, `${file} ${name ?? ""}`).toBeDefined();
        expect(row?.done_on, `${file} ${name ?? ""}`).toEqual(
          done === undefined ? null : new Date(done),
        );
        if (done !== undefined) expect(row?.done).toBe(true);
        if (says !== undefined) expect(row?.text).toBe(says);
        steps++;
      }
      // what is ready is next
      const ready = of(table("results"), file)
        .filter((each) => each.kind === "ready" && each.nominal === 1)
        .map((each) => each.entry);
      for (const entry of ready)
        expect(
          of(table("steps"), file).find((each) => each.entry === entry)?.next,
        ).toBe(true);
    }
    expect(steps).toBeGreaterThan(90);
  });
});

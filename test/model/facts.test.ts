// What facts say, in SI: every form that the trade writes and the language takes, and the problem of each that it does not.
import { describe, expect, test } from "vitest";
import { readLines } from "../../grammar/lines.ts";
import { ENTRIES, type EntryKind } from "../../grammar/vocabulary.ts";
import type { Entry } from "../../server/model/entry.ts";
import { readEntry } from "../../server/model/read-entry.ts";
import { READERS } from "../../server/model/facts.ts";
import { metresToTenths } from "../../server/core/quantity/exact.ts";
import type { System } from "../../server/core/quantity/show.ts";

function entry(
  kind: EntryKind,
  fact: string,
  system: System | "none" = "inch",
): Entry {
  const head =
    ENTRIES.find((each) => each.kind === kind)
      ?.form.replace(/bush\|part/, "bush")
      .replace(/[A-Z]+/g, "x") ?? "";
  const block = readLines(`${head}\n  ${fact}\n`).blocks[0];
  if (block === undefined) throw new Error("no block");
  return readEntry(block, {
    system: system === "none" ? undefined : system,
    isJob: false,
  });
}

/** The value of one fact, with lengths in the unit given for reading along. */
function value(kind: EntryKind, fact: string, system?: System): unknown {
  const read = entry(kind, fact, system);
  expect(read.problems).toEqual([]);
  return read.facts[0]?.value;
}

function problems(
  kind: EntryKind,
  fact: string,
  system?: System,
): readonly string[] {
  const read = entry(kind, fact, system);
  // a line with a problem has no value: never half a number
  expect(read.facts[0]?.value).toBeUndefined();
  return read.problems.map((problem) => problem.code);
}

const inch = (size: number): number => Math.round(size * 254_000_000) / 1e10;

test("every fact of the tables has a reader, and every reader a fact", () => {
  const rules = new Set(
    ENTRIES.flatMap((each) => each.facts.map((fact) => fact.rule)),
  );
  expect([...rules].sort()).toEqual(Object.keys(READERS).sort());
});

describe("ranges of lengths", () => {
  test.each([
    ["0.8740 to 0.8745", 0.874, 0.8745],
    ["0.8745 +0 -0.0005", 0.874, 0.8745],
    ["0.8745 -0.0005 +0", 0.874, 0.8745],
    ["0.8745 +0.01/-0.00", 0.8745, 0.8845],
    ["0.8742 +/- 0.0003", 0.8739, 0.8745],
    ["0.8742 \u{B1}0.0003", 0.8739, 0.8745],
    ["1.1875 +/- 3 tenths", 1.1872, 1.1878],
    ["7/8 to 1 3/16", 0.875, 1.1875],
    ["1-3/16 to 1-1/4 in", 1.1875, 1.25],
    ['.874" to .875"', 0.874, 0.875],
    ["25.4 mm to 1.001 in", 1, 1.001],
    ["874 to 875 thou", 0.874, 0.875],
    ["25.40 to 25.4254 mm", 1, 1.001],
  ])("limits %s", (written, low, high) => {
    const found = value("journal", `limits ${written}`) as {
      low: number;
      high: number;
    };
    expect(
      [found.low, found.high].map((each) => Math.round(each * 1e10)),
    ).toEqual([low, high].map((each) => Math.round(inch(each) * 1e10)));
  });

  test.each([
    ["hole", "limits 25 mm H7", 25, 25.021],
    ["journal", "limits 25 mm f7", 24.959, 24.98],
    ["bush", "od 32mm s6", 32.043, 32.059],
  ] as const)("%s %s", (kind, fact, low, high) => {
    const found = value(kind, fact) as { low: number; high: number };
    expect(
      [found.low * 1e3, found.high * 1e3].map(
        (each) => Math.round(each * 1e7) / 1e7,
      ),
    ).toEqual([low, high]);
  });

  test("a bare size takes a class where the class's system is the file's", () => {
    expect(value("hole", "limits 25 H7", "mm")).toMatchObject({
      low: 0.025,
      high: 0.025021,
      className: "H7",
    });
    expect(problems("hole", "limits 25 H7", "inch")).toEqual(["unit-missing"]);
    expect(problems("journal", "limits 0.875 RC4", "mm")).toEqual([
      "unit-missing",
    ]);
  });

  test("a class or a fraction is shown with the digits that its limits take", () => {
    const step = (fact: string, system: "inch" | "mm") =>
      metresToTenths((value("journal", fact, system) as { step: number }).step);
    expect([
      // ISO 286: IT7 of 25 mm is 21 µm, half of it either way
      step("limits 25 js7", "mm"),
      // ANSI B4.1: −0.00030 to −0.00055
      step("limits 0.875 RC1", "inch"),
      step("limits 13/32 +0.0005 -0", "inch"),
      step("limits 7/8 +/- 0.00005", "inch"),
      step("limits 7/8 to 0.876", "inch"),
      step("limits 0.8740 to 0.8745", "inch"),
    ]).toEqual([1_000, 2_540, 2_540, 2_540, 254_000, 25_400]);
  });

  test("a fit wants the clearance of its two classes", () => {
    expect(value("fit", "want 25 H7/f7", "mm")).toMatchObject({
      low: 20e-6,
      high: 62e-6,
    });
  });

  test.each([
    ["journal", "limits 0,874 to 0.875", "number-comma"],
    ["journal", "limits 0.875 to 0.874", "range-reversed"],
    ["journal", "limits 24.959-24.980", "line-damaged"],
    ["journal", "limits 0.8740 0.8745", "line-damaged"],
    ["journal", "limits 0.874", "line-damaged"],
    ["journal", "limits 0.874 to 0.875 lbf", "unit-wrong"],
    ["journal", "limits 0.874 to 0.875 thuo", "unit-wrong"],
    ["journal", "limits 0.874 in to 0.875", "unit-missing"],
    ["journal", "limits 25 mm +0.02 -0", "unit-missing"],
    ["journal", "limits 25 mm H7", "class-wrong"],
    ["hole", "limits 25 mm Q7", "class-wrong"],
    ["press", "want 25 mm H7", "class-wrong"],
  ] as const)("%s %s: %s", (kind, fact, code) => {
    expect(problems(kind, fact)).toEqual([code]);
  });
});

describe("readings", () => {
  test("all clauses, in any order", () => {
    const found = value(
      "journal",
      'read near 0.87432 .87428 by "A K" on 2026-11-02 station 0.25 as run at 68 F with gauge mic-1',
    );
    expect(found).toMatchObject({
      place: "near",
      station: inch(0.25),
      stage: "run",
      gauge: { kind: "gauge", name: "mic-1" },
      signature: { who: "A K", date: "2026-11-02" },
    });
    expect(
      (
        found as { values: readonly { value: number; step: number }[] }
      ).values.map((each) => each.value),
    ).toEqual([inch(0.87432), inch(0.87428)]);
    expect(
      (found as { temperature: { value: number } }).temperature.value,
    ).toBeCloseTo(20, 9);
  });

  test("one unit at the end counts for all", () => {
    const found = value("journal", "read 25.40 25.41 mm") as {
      values: readonly { value: number; step: number }[];
    };
    expect(found.values.map((each) => each.value)).toEqual([0.0254, 0.02541]);
    expect(found.values[0]?.step).toBeCloseTo(1e-5, 12);
  });

  test("a bush says which diameter", () => {
    expect(value("bush", "read od 1.00112 with mic-1")).toMatchObject({
      side: "od",
      place: undefined,
    });
    expect(value("bush", "read id near 0.8718")).toMatchObject({
      side: "id",
      place: "near",
    });
  });

  test("a swing says how it was turned, and its lobes", () => {
    expect(
      value(
        "journal",
        "swing near 0.6 thou on vee 90 deg between, 3 lobes as run with dti-1 by AK on 2026-11-02",
      ),
    ).toMatchObject({
      place: "near",
      swing: { value: inch(0.0006) },
      method: { kind: "vee", angle: Math.PI / 2, indicator: "between" },
      lobes: 3,
      stage: "run",
      gauge: { name: "dti-1" },
      signature: { who: "AK", date: "2026-11-02" },
    });
    expect(
      value("journal", "swing 0.0006 on vee 60 deg, 5 lobes"),
    ).toMatchObject({
      place: undefined,
      method: { kind: "vee", indicator: "opposite" },
      gauge: undefined,
      stage: undefined,
    });
    expect(
      value("bore", "swing 0.0006 on three points, 9 lobes"),
    ).toMatchObject({ method: { kind: "three-contacts" }, lobes: 9 });
  });

  test.each([
    ["journal", "swing 0.0006 on vee 60, 3 lobes", "unit-missing"],
    ["journal", "swing 0.0006 on vee 60 between, 3 lobes", "unit-missing"],
    ["journal", "swing 0.0006 on vee 180 deg, 3 lobes", "line-damaged"],
    ["journal", "swing 0.0006 on vee 60 deg, 1 lobes", "line-damaged"],
    ["journal", "swing 0.0006 on vee 60 deg, 1001 lobes", "line-damaged"],
    ["journal", "swing -0.0006 on vee 60 deg, 3 lobes", "line-damaged"],
    ["journal", "swing 0,0006 on vee 60 deg, 3 lobes", "number-comma"],
    ["journal", "swing 0.0006 on vee 60 deg", "line-damaged"],
    [
      "journal",
      "swing 0.0006 on vee 60 deg, 3 lobes with a with b",
      "line-damaged",
    ],
    [
      "journal",
      "swing 0.0006 on vee 60 deg, 3 lobes on 2026-02-30",
      "date-wrong",
    ],
    ["bore", "swing 0.0006 on vee 60 deg, 3 lobes", "line-damaged"],
    ["hole", "swing 0.0006 on vee 60 deg, 3 lobes", "line-damaged"],
  ] as const)("%s %s: %s", (kind, fact, code) => {
    expect(problems(kind, fact)).toEqual([code]);
  });

  test.each([
    ["read near 7/8", "line-damaged"],
    ["read 1 3/16", "line-damaged"],
    ["read 0,874", "number-comma"],
    ["read 0.874 at 68", "unit-missing"],
    ["read 0.874 at 68 mm", "unit-wrong"],
    ["read 0.874 by AK on 2026-02-30", "date-wrong"],
    ["read 0.874 by AK on 2.11.2026", "date-wrong"],
    ["read 0.874 with a with b", "line-damaged"],
    ["read near", "line-damaged"],
  ])("%s: %s", (fact, code) => {
    expect(problems("journal", fact)).toEqual([code]);
  });
});

describe("other facts", () => {
  test.each([
    ["fit", "runs 240 rpm", 4],
    ["fit", "load 1 kN shock", { force: 1000, loading: "shock" }],
    ["fit", "load 10 N", { force: 10, loading: undefined }],
    [
      "fit",
      "oscillates 180 deg, 30 per min",
      { angle: Math.PI, frequency: 0.5 },
    ],
    [
      "fit",
      "hot shaft 60 C, case 50 C",
      { shaft: 60, bush: undefined, case: 50 },
    ],
    ["journal", "nominal 7/8", { value: 0.022225 }],
    ["hole", "nominal 25 mm", { value: 0.025 }],
    ["fit", "feed drip", { feed: "drip", pressure: undefined }],
    ["part", "joint bare", 0],
    ["part", "joint gasket 0.004", inch(0.004)],
    ["part", "split along", "along"],
    ["part", "serial W3-1187", "W3-1187"],
    ["part", 'serial "W3 1187"', "W3 1187"],
    ["part", "dowels 2", 2],
    ["bush", "lot K3-1187", "K3-1187"],
    [
      "lesson",
      "reamer r-8755 in bronze-c932",
      { reamer: { name: "r-8755" }, material: { name: "bronze-c932" } },
    ],
    [
      "lesson",
      "oversize mean 0.31 thou spread 0.08 thou from 9",
      { mean: inch(0.00031), spread: inch(0.00008), count: 9 },
    ],
    [
      "lesson",
      "oversize mean -0.004 mm from 1",
      { mean: -4e-6, spread: undefined, count: 1 },
    ],
    [
      "lesson",
      "bush bronze-c932 solid 28 by 25 mm lot K3",
      { construction: "solid", od: 0.028, id: 0.025, lot: "K3" },
    ],
    [
      "lesson",
      "closes 0.93 spread 0.04 from 7",
      { mean: 0.93, spread: 0.04, count: 7 },
    ],
    [
      "lesson",
      "gauge mic-1 against bore-1",
      { gauge: { name: "mic-1" }, against: { name: "bore-1" } },
    ],
    [
      "lesson",
      "reads +0.05 thou spread 0.04 thou from 12",
      { mean: inch(0.00005), count: 12 },
    ],
    [
      "lesson",
      "between 2019-03-04 and 2026-11-05",
      { first: "2019-03-04", last: "2026-11-05" },
    ],
    ["hole", "depth through", { depth: undefined, bottom: "through" }],
    ["stack", "shims 0.1, 0.2, 0.5 mm", [0.0001, 0.0002, 0.0005]],
    ["reamer", "flutes 6 left", { count: 6, hand: "left" }],
    ["line", "speed 15 ft/min", { speed: 0.0762 }],
    ["line", "speed 60 rpm", { turns: 1 }],
    ["oil", "grade ISO VG 46", { system: "ISO VG", grade: "46" }],
    ["oil", "grade SAE 10W-30", { system: "SAE", grade: "10W-30" }],
    ["material", "expansion 18 um/m-K", 18e-6],
    ["material", "modulus 100 GPa", 100e9],
    ["step", "found passed", { outcome: "passed", text: undefined }],
    ["step", "done by AK on 2026-11-05", { who: "AK", date: "2026-11-05" }],
    ["step", "done 2026-11-05", { who: undefined, date: "2026-11-05" }],
    ["press", "friction 0.1", { low: 0.1, high: 0.1 }],
    ["gauge", "set on ring 0.875", { ring: inch(0.875) }],
    [
      "reamer",
      "size letter F",
      { named: "letter F", range: { low: inch(0.257), high: inch(0.257) } },
    ],
    [
      "reamer",
      "size no 7",
      { named: "no 7", range: { low: inch(0.201), high: inch(0.201) } },
    ],
  ] as const)("%s %s", (kind, fact, wanted) => {
    const found = value(kind, fact);
    if (typeof wanted === "number") expect(found).toBeCloseTo(wanted, 10);
    else if (typeof wanted === "string") expect(found).toBe(wanted);
    else expect(found).toMatchObject(wanted);
  });

  test("a comma in a note is no list, and a text keeps its inch marks", () => {
    expect(value("part", 'note "a, 12" shaft, b"')).toBe('a, 12" shaft, b');
  });

  test("temperatures in a list take the unit at its end", () => {
    expect(value("fit", "hot shaft 140, case 104 F")).toMatchObject({
      shaft: 60,
      case: 40,
    });
  });

  test.each([
    ["fit", "runs 240", "unit-missing"],
    ["fit", "load 180 steady", "unit-missing"],
    ["fit", "load 180klbf steady", "unit-wrong"],
    ["fit", "load 18Olbf steady", "line-damaged"],
    ["fit", "hot shaft 140 F, shaft 150 F", "line-damaged"],
    ["fit", "hot shaft 140 F, case 104", "unit-missing"],
    ["line", "bore a from 2 to 1", "range-reversed"],
    ["reamer", "size no 99", "line-damaged"],
    ["part", 'note "open', "line-damaged"],
    ["lesson", "oversize mean 0.3 spread 0.1 thou from 0", "line-damaged"],
    ["lesson", "oversize mean 0.3 spread 0.1 thou from 1", "line-damaged"],
    ["lesson", "oversize mean 0.3 thou from 9", "line-damaged"],
    ["lesson", "closes -0.93 spread 0.04 from 7", "line-damaged"],
    ["lesson", "closes 0 spread 0.04 from 7", "line-damaged"],
    ["lesson", "closes 0,93 spread 0.04 from 7", "number-comma"],
    ["lesson", "oversize mean 0,3 thou from 1", "number-comma"],
    ["lesson", "bush acetal solid 25 by 28 mm", "line-damaged"],
    ["lesson", "between 2026-11-05 and 2019-03-04", "line-damaged"],
    ["lesson", "between 2026-11-31 and 2026-12-04", "date-wrong"],
  ] as const)("%s %s: %s", (kind, fact, code) => {
    expect(problems(kind, fact)).toEqual([code]);
  });

  test("a bare number between two with units lacks its own", () => {
    expect(problems("stack", "shims 0.1 mm, 0.2, 0.5 mm")).toEqual([
      "unit-missing",
    ]);
  });

  test("of a day that there is not, it is told which", () => {
    const { problems: found } = entry(
      "lesson",
      "between 2026-11-31 and 2026-12-04",
    );
    expect(found.map(({ data }) => data.date)).toEqual(["2026-11-31"]);
  });

  test("a list whose last number can't be read may lack its unit besides, and both are said", () => {
    expect(problems("fit", "hot shaft 140, case 104,5")).toEqual([
      "number-comma",
      "unit-missing",
    ]);
    // of a unit that is wrong it is not said that one is missing
    for (const bodies of [
      "shaft 140, case 104 lbf",
      "shaft 140, bush 135, case 104 lbf",
    ])
      expect(problems("fit", `hot ${bodies}`)).toEqual(["unit-wrong"]);
  });

  test("without the file's unit a bare length is unknown, and the file is asked for its unit", () => {
    const read = entry("journal", "limits 0.874 to 0.875", "none");
    expect([
      read.facts[0]?.value,
      read.problems.map((problem) => problem.code),
    ]).toEqual([undefined, ["units-unwritten"]]);
  });
});

test("hours of the hour meter, in seconds, of the day that is written or of none", () => {
  expect(value("job", "hours 12400 h on 2026-11-02")).toEqual({
    meter: 12_400 * 3600,
    date: "2026-11-02",
  });
  expect(value("job", "hours 12400.5 h")).toEqual({
    meter: 12_400.5 * 3600,
    date: undefined,
  });
  expect(problems("job", "hours 12400")).toEqual(["unit-missing"]);
  expect(problems("job", "hours 12,400 h")).toEqual(["number-comma"]);
  expect(problems("job", "hours 12400 mm")).toEqual(["unit-wrong"]);
  expect(problems("job", "hours 12400 h on 2026-13-02")).toEqual([
    "date-wrong",
  ]);
});

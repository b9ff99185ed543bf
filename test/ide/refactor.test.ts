// What is offered at the caret without a finding: what it writes can be read, or says nothing yet, and no result changes by another way of
// writing. `|` marks the caret.
import { describe, expect, test } from "vitest";
import { readLines } from "../../grammar/lines.ts";
import { refactoringsAt } from "../../server/ide/refactor.ts";
import type { Refactoring } from "../../server/ide/refactoring.ts";
import type { Result } from "../../server/model/result.ts";
import { createProject } from "../../server/rules/check.ts";
import { opened, JOB_PATH } from "./opened.ts";
import { rewritten } from "./rewritten.ts";

const TODAY = "2026-11-25";

function offered(
  marked: string,
  others: Readonly<Record<string, string>> = {},
): { readonly text: string; readonly all: readonly Refactoring[] } {
  const before = marked.slice(0, marked.indexOf("|")).split("\n");
  const text = marked.replace("|", "");
  const caret = {
    line: before.length - 1,
    character: before.at(-1)?.length ?? 0,
  };
  return { text, all: refactoringsAt(opened(text, others), caret, TODAY) };
}

const titles = (...given: Parameters<typeof offered>): readonly string[] =>
  offered(...given).all.map(({ title }) => title);

/** The text after the one refactoring whose title begins so. */
function after(begins: string, ...given: Parameters<typeof offered>): string {
  const { text, all } = offered(...given);
  const found = all.filter(({ title }) => title.startsWith(begins));
  expect(found.map(({ title }) => title)).toHaveLength(1);
  return rewritten(text, found[0] ?? { edits: [] }, JOB_PATH);
}

function bare({ text, working, needs, ...result }: Result): object {
  return { ...result, said: [text, working, needs].length };
}

function resultsOf(texts: Readonly<Record<string, string>>): readonly object[] {
  const project = createProject({ root: "" });
  for (const [name, text] of Object.entries(texts))
    project.setFile(name, readLines(text));
  return project.check("job.thou").results.map(bare);
}

const head = (units: string): string =>
  `job j\n  units ${units}\npart p\npart q\n`;

describe("forms of a range", () => {
  const line = (kind: string, fact: string, units = "inch"): string =>
    `${head(units)}${kind === "journal" ? "journal a on p" : "bore a in q"}\n  li|${fact.slice(2)}\n`;

  test.each([
    ["journal", "inch", "limits 0.8740 to 0.8745", "limits 0.8745 +0 -0.0005"],
    ["bore", "inch", "limits 0.8750 to 0.8755", "limits 0.8750 +0.0005 -0"],
    [
      "journal",
      "inch",
      "limits 24.980 to 24.993 mm  # as drawn",
      "limits 24.993 mm +0 mm -0.013 mm  # as drawn",
    ],
  ])("a %s in %s: %s and %s lead to each other", (kind, units, ends, by) => {
    const there = after("Write a size and", line(kind, ends, units));
    expect(there).toBe(line(kind, by, units).replace("|", ""));
    expect(after("Write the smallest", line(kind, by, units))).toBe(
      line(kind, ends, units).replace("|", ""),
    );
    expect(resultsOf({ "job.thou": there })).toEqual(
      resultsOf({ "job.thou": line(kind, ends, units).replace("|", "") }),
    );
  });

  test.each([
    ["limits 0.8742 +/- 0.0003", "limits 0.8739 to 0.8745"],
    ["limits 0.8745 -0.0005 +0.00", "limits 0.8740 to 0.8745"],
    ["limits 0.8745 -0.0005/-0.0010", "limits 0.8735 to 0.8740"],
  ])("%s is %s", (by, ends) => {
    expect(after("Write the smallest", line("journal", by))).toBe(
      line("journal", ends).replace("|", ""),
    );
  });

  // ISO 286-2:2010 gives 25 H7 as +21 and 0 µm, 25 f7 as -20 and -41 µm (as in test/core/fits/printed-iso.ts)
  test.each([
    ["bore", "mm", "limits 25 H7", "limits 25 +0.021 +0"],
    ["journal", "mm", "limits 25 f7", "limits 25 -0.02 -0.041"],
    ["bore", "inch", "limits 25 mm H7", "limits 25 mm +0.021 mm +0 mm"],
  ])("a class of a %s in %s: %s is %s, and back", (kind, units, word, by) => {
    const there = after("Write its deviations", line(kind, word, units));
    const name = word.slice(word.lastIndexOf(" ") + 1);
    expect(there).toBe(line(kind, `${by}  # ${name}`, units).replace("|", ""));
    expect(after("Write the class", line(kind, by, units))).toBe(
      line(kind, word, units).replace("|", ""),
    );
  });

  test("limits that are no class are offered none, and a damaged line nothing", () => {
    expect(
      titles(line("bore", "limits 25 +0.020 +0", "mm")),
    ).not.toContainEqual(expect.stringMatching(/class/));
    expect(
      titles(line("bore", "limits 25 to", "mm")).filter((title) =>
        /^Write (?:a size|the|its)/.test(title),
      ),
    ).toEqual([]);
  });

  test("a fraction has no deviations in whole last digits", () => {
    expect(titles(line("journal", "limits 7/8 to 1 3/16"))).not.toContainEqual(
      expect.stringMatching(/^Write/),
    );
  });
});

describe("what an entry lacks", () => {
  const JOB = `${head("inch")}journal a on p\nbore b in q\n  limits 0.8750 to 0.8755\nfit f| of journal a in bore b\n  runs 300 rpm\n`;

  test("each need of its results, in the entry that it belongs to; without tab stops a comment that says nothing", () => {
    const found = titles(JOB).filter((title) => title.startsWith("Add"));
    expect(found.length).toBeGreaterThan(0);
    expect(found.some((title) => title.startsWith("Add `load` to fit f"))).toBe(
      true,
    );
    const text = after("Add `load`", JOB);
    expect(text).toContain("  runs 300 rpm\n  # load FORCE");
    expect(resultsOf({ "job.thou": text })).toEqual(
      resultsOf({ "job.thou": JOB.replace("|", "") }),
    );
  });

  test("rows for readings near and far, with a gauge of the shop", () => {
    const { all } = offered(
      `${head("inch")}gauge mic-1\n  kind micrometer\njour|nal a on p\n  length 1.250\n`,
    );
    const [edit] =
      all.find(({ title }) => title.includes("readings"))?.edits ?? [];
    expect(edit?.text).toBe(
      "  read near ${1:VALUES} with ${2:mic-1}\n  read far ${3:VALUES} with ${4:mic-1}\n",
    );
    expect(edit?.plain).toBe(
      "  # read near VALUES with mic-1\n  # read far VALUES with mic-1\n",
    );
    expect(edit?.range.start).toEqual({ line: 8, character: 0 });
  });

  test("only the place that is not read yet, and none where readings have no place", () => {
    const of = (readings: string): readonly string[] =>
      titles(`${head("inch")}jour|nal a on p\n${readings}`).filter((title) =>
        title.includes("readings"),
      );
    expect(of("  read near 0.8742\n")).toEqual([
      "Add a row for readings of journal a far",
    ]);
    expect(of("  read 0.8742\n")).toEqual([]);
    expect(of("  read near 0.8742\n  read far 0.8742\n")).toEqual([]);
    expect(of("  read near 7/8\n")).toEqual([]);
  });

  test("a bush has both its diameters", () => {
    const found = titles(
      `${head("inch")}hole h in q\nbu|sh b in hole h\n`,
    ).filter((title) => title.includes("readings"));
    expect(found).toEqual([
      "Add rows for readings of the od of bush b near and far",
      "Add rows for readings of the id of bush b near and far",
    ]);
  });

  test("what is next can be done today, what is not next can't", () => {
    const steps = "step mark\nstep ream\n  after mark\n";
    expect(
      after(
        "It is done today",
        `${head("inch")}${steps.replace("mark", "ma|rk")}`,
      ),
    ).toBe(
      `${head("inch")}${steps.replace("mark\n", `mark\n  done ${TODAY}\n`)}`,
    );
    expect(
      titles(`${head("inch")}${steps.replace("step ream", "step re|am")}`),
    ).not.toContainEqual(expect.stringMatching(/today/));
  });
});

describe("to the crib", () => {
  const REAMER =
    "reamer r-8755\n  size 0.8755  # ground\n  oversize bronze-c932 +0.0001\n";
  const job = (use: string): string =>
    `job j\n  units inch\n${use}part p\npart q\n  material bronze-c932\njournal a on p\n  limits 0.8740 to 0.8742\nbore b in q\nfit f of journal a in bore b\n  want 0.0008 to 0.0020\n${REAMER.replace("reamer r", "reamer| r")}\nline l\n  bore b from 0 to 1\n  ream with r-8755\n`;
  const CRIB = "shop s\n  units inch\n\nreamer r-1\n  size 1.0000\n";

  test("one that is used takes it, and no result changes", () => {
    const { text, all } = offered(job('  use "crib.thou"\n'), {
      "crib.thou": CRIB,
    });
    const moved = all.find(({ kind }) => kind === "extract");
    expect(moved?.title).toBe("Move reamer r-8755 to `crib.thou`");
    if (moved === undefined) return;
    const now = {
      "job.thou": rewritten(text, moved, JOB_PATH),
      "crib.thou": rewritten(CRIB, moved, "/shop/crib.thou"),
    };
    expect(now["job.thou"]).not.toContain("reamer r");
    expect(now["job.thou"]).toContain("0.0020\nline l");
    expect(now["crib.thou"]).toBe(`${CRIB}\n${REAMER}`);
    expect(resultsOf(now)).toEqual(
      resultsOf({ "job.thou": text, "crib.thou": CRIB }),
    );
  });

  test("a new one is made where none is used, and no result changes", () => {
    const { text, all } = offered(job(""));
    const moved = all.find(({ kind }) => kind === "extract");
    const [made] = moved?.creates ?? [];
    expect(made?.file).toBe("/shop/crib.thou");
    const now = rewritten(text, moved ?? { edits: [] }, JOB_PATH);
    expect(now).toContain('  units inch\n  use "crib.thou"\npart p');
    const before = resultsOf({ "job.thou": text });
    expect(0 < before.length).toBe(true);
    expect(
      resultsOf({ "job.thou": now, "crib.thou": made?.text ?? "" }),
    ).toEqual(before);
  });

  test.each([
    ["another unit", CRIB.replace("inch", "mm")],
    ["one of its name", `${CRIB}reamer r-8755\n  size 0.8755\n`],
  ])("not to a crib with %s", (_, crib) => {
    expect(
      titles(job('  use "crib.thou"\n'), { "crib.thou": crib }),
    ).not.toContainEqual(expect.stringMatching(/^Move/));
  });

  test("not where a name in it is known in the job alone", () => {
    const text = `job j\n  units inch\n  use "crib.thou"\ngauge mic\n  kind micrometer\nrea|mer r\n  read 0.8755 with mic\n`;
    expect(titles(text, { "crib.thou": CRIB })).not.toContainEqual(
      expect.stringMatching(/^Move/),
    );
  });
});

describe("the clearance that is wanted", () => {
  const fit = (rest: string, units = "inch"): string =>
    `${head(units)}journal a on p\n  limits 0.9995 to 1.0005 in\nbore b in q\nfit f| of journal a in bore b\n${rest}`;

  test("the shop rule, one to two thou at 1 in, with its source", () => {
    expect(titles(fit(""))).toContain(
      "Want 0.0010 to 0.0020 in: shop rule, one to two thou an inch (common practice, no source)",
    );
    expect(after("Want 0.0010 to 0.0020 in: shop", fit(""))).toContain(
      "in bore b\n  want 0.0010 to 0.0020\n",
    );
  });

  // 0.71 to 1.19 in, thousandths: RC3 0.8 to 2.1, RC4 0.8 to 2.8 (Machinery's Handbook, 31st edition, ANSI B4.1; printed-inch.ts)
  test("a class of the standard, by its clearances", () => {
    for (const [word, most] of [
      ["RC3", "0.0021"],
      ["RC4", "0.0028"],
    ] as const)
      expect(titles(fit(""))).toContain(
        `Want 0.0008 to ${most} in: ${word} (ANSI B4.1-1967)`,
      );
  });

  test("by the oil film, in a title that a menu has room for", () => {
    const text = `job j
  units inch
part p
part q
journal a on p
  length 1
  limits 0.9995 to 1.0005
  finish 16 uin Ra
bore b in q
  limits 1.0020 to 1.0030
  finish 16 uin Ra
fit f| of journal a in bore b
  runs 900 rpm
  load 100 lbf steady
  oil iso-vg-68 at 100 F
  feed splash
`;
    const film = titles(text).filter((each) => each.includes("the oil film"));
    expect(film).toEqual([
      expect.stringMatching(
        /^Want 0\.\d+ to 0\.\d+ in: the oil film carries \(Reynolds; Trumpler, from memory\)$/,
      ),
    ]);
  });

  test("on the want that it replaces, and not on another line", () => {
    const rest = "  want 0.0001 to 0.0002  # too little\n  feed drip\n";
    expect(titles(fit(rest))).not.toContainEqual(
      expect.stringMatching(/^Want/),
    );
    const on = fit(rest).replace("|", "").replace("want", "wa|nt");
    expect(after("Want 0.0010 to 0.0020 in: shop", on)).toContain(
      "  want 0.0010 to 0.0020  # too little\n",
    );
  });
});

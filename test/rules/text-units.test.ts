// What is said of units, ranges, facts that stand twice and thresholds, word for word, beyond what the pages' samples
// show: each way that a sentence can end and what its fixes write.
import { describe, expect, test } from "vitest";
import { HEAD, JOURNAL, said } from "./said-of-line.ts";

test("a word of the language that runs on into what follows is no unit", () => {
  expect(said("unit-wrong", "  read 0.8743 byAK on 2026-11-02")).toEqual([
    "`by` is a word of its own: write `by AK`.",
    "  fix: Write `by AK`",
    '    15-19 "by AK"',
  ]);
});

test.each([
  ["AK", "who read it stands behind `by`", "by AK"],
  ["mic-1", "a gauge stands behind `with`", "with mic-1"],
])("a name that stands for a reading's unit: %s", (name, says, text) => {
  expect(said("unit-wrong", `  read 0.8743 ${name}`)).toEqual([
    `\`${name}\` is no unit of a length: ${says}, \`${text}\`.`,
    `  fix: Write \`${text}\``,
    `    15-${String(15 + name.length)} "${text}"`,
  ]);
  // it is no name that another fact takes there
  expect(said("unit-wrong", `  length 0.8743 ${name}`)).toEqual([
    `\`${name}\` is no unit of a length: write \`in\`, \`thou\`, \`tenths\`, \`mm\` or \`um\`; a remark goes behind a \`#\`.`,
  ]);
});

describe("a unit", () => {
  test("that measures something else is told what, and what stands there", () => {
    expect(said("unit-wrong", "  temperature 68 rpm", { under: HEAD })).toEqual(
      [
        "`rpm` measures a turning speed, and here stands a temperature: write `F` or `C`.",
        "  fix: Write `F`",
        '    18-21 "F"',
        "  fix: Write `C`",
        '    18-21 "C"',
      ],
    );
    expect(
      said("unit-wrong", "  joint gasket 5 N", { under: `${HEAD}part s\n` }),
    ).toEqual([
      "`N` measures a force, and here stands a length: write `in`, `thou`, `tenths`, `mm` or `um`.",
      ...["in", "thou", "tenths"].flatMap((unit) => [
        `  fix: Write \`${unit}\``,
        `    18-19 "${unit}"`,
      ]),
    ]);
  });

  test("that is none is told what stands there, the one that was meant, or what it is in those that are", () => {
    expect(
      said("unit-wrong", "  temperature 68 furlong", { under: HEAD }),
    ).toEqual([
      "`furlong` is no unit of a temperature: write `F` or `C`; a remark goes behind a `#`.",
    ]);
    expect(
      said("unit-wrong", "  temperature 68 celsius", { under: HEAD }),
    ).toEqual([
      "`celsius` is no unit of a temperature: did you mean `C`?",
      "  fix, safe: Write `C`",
      '    18-25 "C"',
    ]);
    expect(said("unit-wrong", "  fillet 5 mils")).toEqual([
      "`mils` is no unit of a length: did you mean `thou` or `mm`?",
      "  fix: Write `thou`",
      '    12-16 "thou"',
      "  fix: Write `mm`",
      '    12-16 "mm"',
    ]);
    expect(said("unit-wrong", "  fillet 5 ft")).toEqual([
      "`ft` is no unit of this record, and 1 ft is 12 in: write the value in `in`, `thou`, `tenths`, `mm` or `um`.",
    ]);
    expect(said("unit-wrong", "  read 0.8740 near")).toEqual([
      "`near` is no unit of a length: write `in`, `thou`, `tenths`, `mm` or `um`; a place's name stands before its values, a gauge's behind `with`; a remark goes behind a `#`.",
    ]);
    expect(said("unit-wrong", "  repeat 0.8740 nearby")[0]).toContain(
      "a place's name stands before its values",
    );
    expect(said("unit-wrong", "  fillet 5 nearby")[0]).not.toContain(
      "a place's name",
    );
  });

  test("in signs that no unit has is told as one that is none", () => {
    const FIT_HEAD = `${HEAD}fit a of b in c\n`;
    const told = (line: string): readonly string[] =>
      said("line-damaged", line, { under: FIT_HEAD });
    expect(told("  cooled case 150 m2, air 20 C")).toEqual([
      "`m2` is no unit of an area: did you mean `sq-m`?",
      "  fix, safe: Write `sq-m`",
      '    19-21 "sq-m"',
    ]);
    expect(told("  cooled case 150 cm2, air 20 C")).toEqual([
      "`cm2` is no unit of this record, and 1 sq-m is 10000 cm2: write the value in `sq-in`, `sq-ft` or `sq-m`.",
    ]);
    expect(
      said("line-damaged", "  expansion 18 1/K", {
        under: `${HEAD}material m\n`,
      }),
    ).toEqual([
      "`1/K` is no unit of an expansion: write `uin/in-F` or `um/m-K`; a remark goes behind a `#`.",
    ]);
  });

  test("of an expansion is a millionth, which a number so small says already", () => {
    const told = (line: string): readonly string[] =>
      said("unit-missing", line, { under: `${HEAD}material m\n` });
    expect(told("  expansion 18e-6")).toEqual([
      "An expansion needs its unit, and `18e-6` has none: write `18 uin/in-F` or `18 um/m-K`.",
      "  fix: Write `18 uin/in-F`",
      '    13-18 "18 uin/in-F"',
      "  fix: Write `18 um/m-K`",
      '    13-18 "18 um/m-K"',
    ]);
    expect(told("  expansion 0.0000117")[0]).toContain("write `11.7 uin/in-F`");
    expect(told("  expansion 11.7")[2]).toBe('    17-17 " uin/in-F"');
  });

  test("that a class belongs to is the other than the record's", () => {
    expect(said("unit-missing", "  limits 25 H7")).toEqual([
      "`H7` is a class of ISO 286, which counts in mm, and bare sizes of this record are in inches: write `25 mm H7` or `25 in H7`.",
      "  fix: Write `25 mm H7`",
      '    12-12 " mm"',
      "  fix: Write `25 in H7`",
      '    12-12 " in"',
    ]);
    // no size in mm
    expect(said("unit-missing", "  limits 7/8 g6")[0]).toContain(
      "write `7/8 in g6` or `7/8 mm g6`.",
    );
    expect(
      said("unit-missing", "  limits 1.0 RC4", {
        under: JOURNAL.replace("inch", "mm"),
      }),
    ).toEqual([
      "`RC4` is a class of ANSI B4.1, which counts in inches, and bare sizes of this record are in mm: write `1.0 in RC4` or `1.0 mm RC4`.",
      "  fix: Write `1.0 in RC4`",
      '    13-13 " in"',
      "  fix: Write `1.0 mm RC4`",
      '    13-13 " mm"',
    ]);
  });
});

describe("a range or a class", () => {
  test("that stands the wrong way round is turned, surely where its ends are near", () => {
    const turned = (range: string): readonly string[] =>
      said("range-reversed", `  limits ${range}`);
    expect(turned("0.8745 to 0.8740")).toEqual([
      "The smaller end of a range comes first, and 0.8745 is more than 0.8740: write `0.8740 to 0.8745`.",
      "  fix, safe: Turn it round: 0.8740 to 0.8745",
      '    10-26 "0.8740 to 0.8745"',
    ]);
    expect(turned("0.8 to 0.4")[1]).toContain("fix, safe:");
    expect(turned("0.81 to 0.4")[1]).toContain("fix:");
    expect(turned("7/8 to 3/4")[1]).toContain("fix, safe:");
    expect(turned("0.8745 +/- -0.0005")).toEqual([
      "A tolerance either way has no sign of its own: write `0.0005`.",
      "  fix, safe: Write `0.0005`",
      '    21-28 "0.0005"',
    ]);
  });

  test("that no standard has is told why, with those that are near", () => {
    expect(said("class-wrong", "  limits 25 mm H99")).toEqual([
      "ISO 286 has the grades 01 and 0 to 18, and no 99: did you mean `H18`?",
      "  fix: Write `H18`",
      '    16-19 "H18"',
    ]);
    expect(said("class-wrong", "  limits 7/8 in RC44")[0]).toBe(
      "ANSI B4.1 has RC1 to RC9, and no RC44: did you mean `RC9`?",
    );
  });
});

describe("a fact that stands twice", () => {
  test("is kept once, surely where both say the same", () => {
    const twice = (second: string): readonly string[] =>
      said("fact-twice", `  length ${second}`, {
        under: `${JOURNAL}  length 1\n`,
      });
    const fixes = (safe: string): readonly string[] => [
      "  see 5:3-9: It stands here too.",
      `  fix${safe}: Make this line a comment`,
      '    3-3 "# "',
      "  fix: Make the first one a comment",
      '    5:3-3 "# "',
    ];
    expect(twice("2")).toEqual([
      "`length` stands twice in this journal, and neither is used, since which one holds can't be told: keep one.",
      ...fixes(""),
    ]);
    expect(twice("1")).toEqual([
      "`length` stands twice in this journal, in the same words: keep one.",
      ...fixes(", safe"),
    ]);
  });
});

describe("a threshold that changes nothing", () => {
  const CODE = "warn-idle";
  const warn = (line: string, units = "inch", before = ""): readonly string[] =>
    said(CODE, `  warn ${line}`, {
      under: `job j\n  units ${units}\n${before}`,
    });
  const comment = ["  fix: Make this line a comment", '    3-3 "# "'];

  test("has no unit, and is offered three of the job's system", () => {
    expect(warn("pv-over at 3")).toEqual([
      "The threshold of `pv-over` is a pressure times a speed, and `3` has no unit: this line changes nothing until it is `3 psi-ft/min` or `3 MPa-m/s`.",
      "  fix: Write `3 psi-ft/min`",
      '    20-20 " psi-ft/min"',
      "  fix: Write `3 MPa-m/s`",
      '    20-20 " MPa-m/s"',
    ]);
    expect(warn("load-over at 3")[0]).toMatch(
      /until it is `3 psi`, `3 ksi` or `3 MPa`\.$/u,
    );
    expect(warn("load-over at 3", "mm")[0]).toMatch(
      /until it is `3 MPa`, `3 GPa` or `3 psi`\.$/u,
    );
  });

  test("is of another kind, of a finding that has none, or the second", () => {
    expect(warn("stock-thin at 50 %")).toEqual([
      "A share sets no threshold of `stock-thin`, which is held against a length: this line changes nothing until it is one.",
      ...comment,
    ]);
    expect(warn("float-off at 3")).toEqual([
      "`float-off` has no threshold, so this line changes nothing: take it out.",
      ...comment,
    ]);
    expect(
      warn("stock-thin at 3 thou", "inch", "  warn stock-thin at 4 thou\n"),
    ).toEqual([
      "The threshold of `stock-thin` stands above already, and the first one counts: take one of the two out.",
      ...comment,
    ]);
  });

  test("is none that is of its kind, bare where it may be", () => {
    for (const line of [
      "stock-thin at 3 thou",
      "stock-thin at 0.003",
      "bush-slips-hot at 2",
      "taper at 20 %",
      "heat-over at 300 F",
    ])
      expect(warn(line), line).toEqual([]);
    expect(warn("heat-over at 300")[0]).toContain(
      "is a temperature, and `300` has no unit",
    );
    expect(warn("none-such at 3")).toEqual([]);
  });
});

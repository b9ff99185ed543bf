// What is said of words, numbers and dates that can't be read as they stand, word for word, beyond what the pages' samples
// show: each way that a sentence can end and what its fixes write.
import { describe, expect, test } from "vitest";
import { HEAD, said } from "./said-of-line.ts";

describe("a first word that is none", () => {
  const CODE = "word-unknown";

  test.each<readonly [string, readonly string[]]>([
    [
      "  wamt 3",
      [
        "A journal has no fact `wamt`: did you mean `want`, which stands under a press, a fit or a stack?",
        "  fix: Write `want`",
        '    3-7 "want"',
      ],
    ],
    [
      "  cuts 3",
      ["`cuts` is a fact of step, not of journal: it stands under a step."],
    ],
    [
      "  length-x 3",
      [
        "A journal has no fact `length-x`: did you mean `length`?",
        "  fix: Write `length`",
        '    3-11 "length"',
      ],
    ],
    [
      "  Fillet 0.5",
      [
        "A journal has no fact `Fillet`: did you mean `fillet`?",
        "  fix, safe: Write `fillet`",
        '    3-9 "fillet"',
      ],
    ],
    [
      "  xyzzyplugh 3",
      [
        "A journal has no fact `xyzzyplugh`: it takes nominal, limits, service-limit, length, read, repeat, swing, finish, runout, fillet, reaches, round, taper and note.",
      ],
    ],
    [
      "  jurnal x",
      [
        "A journal has no fact `jurnal`: did you mean `journal`, which begins an entry in column 1?",
        "  fix: Write `journal` in column 1",
        '    1-9 "journal"',
      ],
    ],
    [
      "  reemer x",
      [
        "A journal has no fact `reemer`: did you mean `reamer`, which stands under a lesson?",
        "  fix: Write `reamer`",
        '    3-9 "reamer"',
      ],
    ],
    [
      "wamt x",
      [
        "No entry begins with `wamt`: did you mean the fact `want`, indented under its entry?",
        "  fix: Write `want`, indented",
        '    1-5 "  want"',
      ],
    ],
    [
      "Journal b on shaft",
      [
        "No entry begins with `Journal`: did you mean `journal`?",
        "  fix, safe: Write `journal`",
        '    1-8 "journal"',
      ],
    ],
    [
      "jurnal c on shaft",
      [
        "No entry begins with `jurnal`: did you mean `journal`?",
        "  fix: Write `journal`",
        '    1-7 "journal"',
      ],
    ],
    [
      "housing x",
      [
        "No entry begins with `housing`: did you mean `hole` or `part`?",
        "  fix: Write `hole`",
        '    1-8 "hole"',
        "  fix: Write `part`",
        '    1-8 "part"',
      ],
    ],
    [
      "xyzzyplugh",
      [
        "No entry begins with `xyzzyplugh`: in column 1 stands what the entry is, such as part, journal, hole, bush, bore or fit, then its name.",
      ],
    ],
  ])("%s", (line, told) => {
    expect(said(CODE, line)).toEqual(told);
  });

  test("a bore of a line without its kind, and a line of which nothing else is said for that", () => {
    const under = `${HEAD}line all\n`;
    expect(said(CODE, "  front from 0 to 1.25", { under })).toEqual([
      "A bore of a line is written `bore front from 0 to 1.25`.",
      "  fix, safe: Write `bore` before it",
      '    3-3 "bore "',
    ]);
    expect(said("fact-missing", "  front from 0 to 1.25", { under })).toEqual(
      [],
    );
    expect(said("fact-missing", '  note "none yet"', { under })).toHaveLength(
      1,
    );
  });

  test.each<readonly [string, string, boolean, string]>([
    ["// remark", "//", true, '3-5 "#"'],
    ["/// remark", "///", true, '3-6 "#"'],
    ["; remark", ";", true, '3-4 "#"'],
    [";; remark", ";;", true, '3-5 "#"'],
    ["-- remark", "--", true, '3-5 "#"'],
    ["/* remark", "/*", true, '3-5 "#"'],
    ["% remark", "%", true, '3-4 "#"'],
    ["' remark", "'", true, '3-4 "#"'],
    ["! remark", "!", true, '3-4 "#"'],
    ["?? remark", "??", false, '3-3 "# "'],
    ["- remark", "-", false, '3-3 "# "'],
    ["//remark", "//remark", true, '3-5 "#"'],
  ])(
    "%s is most often a comment in another dress",
    (line, mark, safe, edit) => {
      expect(said(CODE, `  ${line}`)).toEqual([
        `A line begins with a word, and \`${mark}\` is none; a comment begins with \`#\`.`,
        `  fix${safe ? ", safe" : ""}: Make it a comment`,
        `    ${edit}`,
      ]);
    },
  );

  test("is a number that says not of what, and is offered the facts that it could be of, four at most", () => {
    const offered = (line: string): readonly string[] =>
      said(CODE, `  ${line}`).flatMap(
        (each) => /^ {2}fix: Write `(\S+)` before it$/u.exec(each)?.[1] ?? [],
      );
    expect(offered("12")).toEqual([
      "nominal",
      "service-limit",
      "length",
      "read",
    ]);
    expect(offered("0.8740 to 0.8745")).toEqual([
      "limits",
      "service-limit",
      "length",
    ]);
    expect(offered("+0.5")).not.toEqual([]);
    expect(said(CODE, "  12 x y z")[0]).toBe(
      "A line begins with a word, and `12` is a number: say first what it is.",
    );
    expect(said(CODE, "  1st 0.5")[0]).not.toContain("is a number");
  });
});

describe("a comma in a number", () => {
  const CODE = "number-comma";
  const gasket = (number: string): readonly string[] =>
    said(CODE, `  joint gasket ${number} mm`, { under: `${HEAD}part s\n` });

  test("is a point or a thousand, or neither", () => {
    expect(gasket("1,25")).toEqual([
      "A number takes a point, not a comma: write 1.25.",
      "  fix, safe: Write a point: 1.25",
      '    16-20 "1.25"',
    ]);
    expect(gasket("-1,250")).toEqual([
      "`-1,250` can be read in more ways than one: write -1.250 or -1250.",
      "  fix: Write a point: -1.250",
      '    16-22 "-1.250"',
      "  fix: Take the comma out: -1250",
      '    16-22 "-1250"',
    ]);
    expect(gasket("1,25,3")).toEqual([
      "`1,25,3` is no one number: a number takes a point and no comma.",
    ]);
    expect(gasket("1,250.5")[0]).toBe(
      "Thousands are not parted: write 1250.5.",
    );
    expect(gasket("1.250,5")[0]).toBe(
      "A number takes one point, and thousands are not parted: write 1250.5.",
    );
    expect(gasket("0,250")[0]).toBe(
      "A number takes a point, not a comma: write 0.250.",
    );
    expect(gasket("1,2345")[0]).toBe(
      "A number takes a point, not a comma: write 1.2345.",
    );
    expect(gasket("1,2345.6")[0]).toBe(
      "`1,2345.6` is no one number: a number takes a point and no comma.",
    );
    expect(gasket("0.250,5")[0]).toContain("is no one number");
    expect(gasket("1.25,5")[0]).toContain("is no one number");
  });

  test.each<readonly [string, string, string, string]>([
    [
      "stack e\n",
      "shims 0.1,0.2 in",
      "A blank follows the comma of a list: write 0.1, 0.2.",
      "Put a blank after the comma",
    ],
    [
      "journal k on s\n",
      "read 0.875,0.876",
      "Values of a reading are parted by blanks: write 0.875 0.876.",
      "Put blanks between the values",
    ],
    [
      "journal k on s\n",
      "repeat 0.875,0.876",
      "Values of a reading are parted by blanks: write 0.875 0.876.",
      "Put blanks between the values",
    ],
    [
      "bush k in h\n",
      "read od 0.875,0.876",
      "Values of a reading are parted by blanks: write 0.875 0.876.",
      "Put blanks between the values",
    ],
    [
      "stack e\n  plus a 1\n",
      "read a 0.875,0.876",
      "Values of a reading are parted by blanks: write 0.875 0.876.",
      "Put blanks between the values",
    ],
    [
      "bush k in h\n",
      "od 0.875,0.876",
      "A range is written with `to`: write 0.875 to 0.876.",
      "Write a range",
    ],
    [
      "bush k in h\n",
      "id 0.875,0.876",
      "A range is written with `to`: write 0.875 to 0.876.",
      "Write a range",
    ],
  ])("parts what stands in a row, %#", (under, line, message, title) => {
    const told = said(CODE, `  ${line}`, { under: `${HEAD}part s\n${under}` });
    expect(told[0]).toBe(message);
    expect(told[1]).toBe(
      `  fix, safe: ${title}: ${/write (.*)\.$/u.exec(message)?.[1] ?? ""}`,
    );
  });

  test("in a reading without points is a point or a thousand, in a list a point or two sizes", () => {
    expect(said(CODE, "  read 875,876")[0]).toBe(
      "`875,876` can be read in more ways than one: write 875.876 or 875876.",
    );
    expect(said(CODE, "  shims 1,2 in", { under: `${HEAD}stack e\n` })[0]).toBe(
      "`1,2` can be read in more ways than one: write 1.2 or 1, 2.",
    );
    // a size that stands alone has no three
    expect(
      said(CODE, "  od 0.875,0.876,0.877", {
        under: `${HEAD}bush k in h\n`,
      })[0] ?? "",
    ).not.toContain(" to ");
  });
});

describe("a date", () => {
  const CODE = "date-wrong";
  const done = (date: string): readonly string[] =>
    said(CODE, `  done by AK on ${date}`, { under: `${HEAD}step a\n` });
  const none = "write the day that was meant, year-month-day.";

  test.each<readonly [string, string]>([
    [
      "2026-11-35T10:30",
      `is no date, since November 2026 has 30 days: ${none}`,
    ],
    [
      "2026-13-32",
      `is no date, since a year has 12 months and this is 13: ${none}`,
    ],
    [
      "2026-00-32",
      `is no date, since a year has 12 months and this is 00: ${none}`,
    ],
    ["2026-02-30", `is no date, since February 2026 has 28 days: ${none}`],
    ["2024-2-30", `is no date, since February 2024 has 29 days: ${none}`],
    ["2026-12-32", `is no date, since December 2026 has 31 days: ${none}`],
    ["31/31/2026", `is no day that there is: ${none}`],
    ["31-Nov-2026", `is no day that there is: ${none}`],
  ])("%s", (date, why) => {
    expect(done(date)).toEqual([`\`${date}\` ${why}`]);
  });

  test.each<readonly [string, string, boolean, readonly string[]]>([
    [
      "2026-11-05T10:30",
      "has an hour, and a day is enough",
      true,
      ["2026-11-05"],
    ],
    [
      "2026-11-05T10:30:00Z",
      "has an hour, and a day is enough",
      true,
      ["2026-11-05"],
    ],
    ["5-Nov-2026", "is not written year-month-day", true, ["2026-11-05"]],
    ["5-Nov-26", "is not written year-month-day", false, ["2026-11-05"]],
    [
      "05/11/2026",
      "can be read in more ways than one",
      false,
      ["2026-11-05", "2026-05-11"],
    ],
    ["25/11/2026", "is not written year-month-day", true, ["2026-11-25"]],
    ["11/25/2026", "is not written year-month-day", true, ["2026-11-25"]],
    ["25.11.2026", "is not written year-month-day", false, ["2026-11-25"]],
    ["05.11.2026", "is not written year-month-day", false, ["2026-11-05"]],
    ["20261105", "is not written year-month-day", true, ["2026-11-05"]],
    ["2026/11/5", "is not written year-month-day", true, ["2026-11-05"]],
    ["2026-25-11", "has its month after its day", false, ["2026-11-25"]],
    [
      "5/11/26",
      "can be read in more ways than one",
      false,
      ["2026-11-05", "2026-05-11"],
    ],
    [
      "11/11/26",
      "can be read in more ways than one",
      false,
      ["2011-11-26", "2026-11-11"],
    ],
  ])("%s %s", (date, why, safe, days) => {
    const told = done(date);
    expect(told[0]).toBe(`\`${date}\` ${why}: write ${days.join(" or ")}.`);
    expect(told.filter((each) => each.startsWith("  fix"))).toEqual(
      days.map((day) => `  fix${safe ? ", safe" : ""}: Write ${day}`),
    );
  });

  test("in a word is another on another day", () => {
    expect(said(CODE, "  opened today", { under: HEAD })).toEqual([
      `\`today\` is no date, since a record is read on other days: ${none}`,
    ]);
  });
});

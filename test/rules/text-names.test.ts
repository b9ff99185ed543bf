// What is said of names that no entry has, files that are used and the head of a file, word for word, beyond what the pages' samples
// show: each way that a sentence can end and what its fixes write.
import { describe, expect, test } from "vitest";
import { readLines } from "../../grammar/lines.ts";
import { createProject } from "../../server/rules/check.ts";
import { toldIn } from "./found.ts";
import { HEAD, said } from "./said-of-line.ts";

describe("a name that no entry has", () => {
  const CODE = "name-unknown";
  const SHOP = "shop bench\n  units inch\n";

  test.each<readonly [string, string, readonly string[]]>([
    [HEAD, "  warn none at 3", ["There is no finding `none`."]],
    [
      HEAD,
      "  warn fit-lose at 3",
      [
        "There is no finding `fit-lose`: did you mean `fit-loose`?",
        "  fix: Write `fit-loose`",
        '    8-16 "fit-loose"',
      ],
    ],
    [
      `${SHOP}step s\n`,
      "  caution old-gasket",
      [
        "There is no caution `old-gasket`: did you mean `old-gaskets`?",
        "  fix: Write `old-gaskets`",
        '    11-21 "old-gaskets"',
      ],
    ],
    [
      `${SHOP}stack k\n  plus a 1\n  minus b 2\n`,
      "  read c 3",
      ["This stack has no member `c`: write it as `plus` or `minus` first."],
    ],
    [
      `${SHOP}stack k\n  plus a 1\n  minus b 2\n`,
      "  read bb 3",
      [
        "This stack has no member `bb`: did you mean `b`?",
        "  fix: Write `b`",
        '    8-10 "b"',
      ],
    ],
    [`${SHOP}stack k\n  plus a 1\n  minus b 2\n`, "  read a 3", []],
    [`${SHOP}stack k\n  plus a 1\n  minus b\n`, "  read c 3", []],
    [
      `${SHOP}part p\n`,
      "  material stel-4140",
      [
        "There is no material `stel-4140` here or in the files that are used: did you mean `steel-4140`?",
        "  fix: Write `steel-4140`",
        '    12-21 "steel-4140"',
      ],
    ],
    [
      `${SHOP}part p\n`,
      "  material zzzz",
      [
        'There is no material `zzzz` here or in the files that are used: write it as the shop\'s own, with `material zzzz` from column 1 and its `expansion`, and what else is asked for, as lines set in below, or name one that is shipped, as "thou explain material" lists them.',
      ],
    ],
    [
      `${SHOP}part p\n`,
      "journal j on q",
      [
        "There is no part `q` here or in the files that are used: write `p`, or an entry of that name.",
      ],
    ],
    [
      SHOP,
      "journal j on q",
      [
        "There is no part `q` here or in the files that are used: write its entry, `part NAME`, or name another.",
      ],
    ],
    [
      `${SHOP}part part-a\n`,
      "journal j on part-b",
      [
        "There is no part `part-b` here or in the files that are used: did you mean `part-a`?",
        "  fix: Write `part-a`",
        '    14-20 "part-a"',
      ],
    ],
    [
      `${SHOP}part p\nhole h in p\nbush b in h\n`,
      "press z of bush b in bore b",
      [
        "Here stands a hole, and `bore b` is none: write `h`, or another hole.",
        "  fix: Write `h`",
        '    22-28 "h"',
      ],
    ],
    [
      `${SHOP}part p\nhole h in p\nbush b in h\n`,
      "press z of bush b in bore h",
      [
        "Here stands a hole, and `bore h` is none: did you mean `hole h`?",
        "  fix: Write `hole h`",
        '    22-28 "hole h"',
      ],
    ],
    [
      `${SHOP}part p\nhole h in p\n`,
      "bush b in p",
      [
        "`p` is a part, and here stands a hole: write `h`, or another hole.",
        "  see 3:6-7: part p is here.",
        "  fix: Write `h`",
        '    11-12 "h"',
      ],
    ],
    [
      `${SHOP}part p
`,
      "bush b in p",
      [
        "`p` is a part, and here stands a hole: name one, or write it.",
        "  see 3:6-7: part p is here.",
      ],
    ],
    // each kind is said where there are two, and an entry is no other of its own kind
    [
      `${SHOP}part p
hole h in p
bush c in h
`,
      "bore b in h",
      [
        "`h` is a hole, and here stands a bush or a part: write `bush c` or `part p`, or another bush or part.",
        "  see 4:6-7: hole h is here.",
        "  fix: Write `bush c`",
        '    11-12 "bush c"',
        "  fix: Write `part p`",
        '    11-12 "part p"',
      ],
    ],
    [
      `${SHOP}reamer r
gauge g
`,
      "  set with r",
      [
        "`r` is a reamer, and here stands a gauge: name one, or write it.",
        "  see 3:8-9: reamer r is here.",
      ],
    ],
    // a place of a form, left as it was offered
    [
      `${SHOP}part p
`,
      "journal j on PART",
      [
        "`PART` is only a place to fill in: write `p`, or another part.",
        "  fix: Write `p`",
        '    14-18 "p"',
      ],
    ],
    [
      SHOP,
      "journal j on PART",
      ["`PART` is only a place to fill in: name one, or write it."],
    ],
    [
      `${SHOP}part p
hole h in p
`,
      "bore b in bush NAME",
      ["`NAME` is only a place to fill in: name one, or write it."],
    ],
    [
      `${SHOP}part p
`,
      "  material NAME",
      [
        '`NAME` is only a place to fill in: name one, such as those that "thou explain material" lists.',
      ],
    ],
    [
      `${SHOP}part p
`,
      "journal j on HOLE",
      [
        "There is no part `HOLE` here or in the files that are used: write `p`, or an entry of that name.",
      ],
    ],
    [
      `${SHOP}concession c
`,
      "  allows CODE on shop bench",
      [
        "`CODE` is only a place to fill in: write there the finding that is meant.",
      ],
    ],
    [
      `${SHOP}step s
`,
      "  caution NAME",
      [
        "`NAME` is only a place to fill in: write there the caution that is meant.",
      ],
    ],
    [
      `${SHOP}part left\nhole lefty in left\n`,
      "bush b in left",
      [
        "`left` is a part, and here stands a hole: did you mean `lefty`?",
        "  see 3:6-10: part left is here.",
        "  fix: Write `lefty`",
        '    11-15 "lefty"',
      ],
    ],
  ])("%s%s", (under, line, told) => {
    expect(said(CODE, line, { under })).toEqual(told);
  });

  test("is chosen from five that there are at the most", () => {
    const parts = (count: number): string =>
      SHOP +
      Array.from(
        { length: count },
        (_, at) => `part p${"abcdef".charAt(at)}xyz${String(at)}q\n`,
      ).join("");
    expect(said(CODE, "journal j on zz", { under: parts(5) })[0]).toMatch(
      /: write `paxyz0q`, .* or `pexyz4q`, or an entry of that name\.$/u,
    );
    expect(said(CODE, "journal j on zz", { under: parts(6) })[0]).toMatch(
      /: write its entry, `part NAME`, or name another\.$/u,
    );
  });

  test("of a finding or a caution lists them where they are few", () => {
    expect(
      said(CODE, "  caution nonesuch", { under: `${SHOP}step s\n` })[0],
    ).toMatch(
      /^There is no caution `nonesuch`\. It is one of reamer-one-way, .*, closed-cavity, first-run\.$/u,
    );
  });
});

describe("a file that is used", () => {
  const use = (
    line: string,
    units = "  units mm\n",
    code = "file-missing",
    others: Readonly<Record<string, string>> = {},
  ): readonly string[] =>
    toldIn(`job j\n  use ${line}\n${units}`, code, others);

  test.each([
    ["Crib.thou", ["crib.thou", "job.thou"], ["crib.thou"]],
    ["../cribs/Crib.thou", ["crib.thou"], ["../cribs/crib.thou"]],
    ["..\\cribs\\Crib", ["crib.thou"], ["..\\cribs\\crib.thou"]],
    ["crib.THOU", ["crib.thou"], ["crib.thou"]],
    ["winhc.thou", ["winch.thou", "pump.thou"], ["winch.thou"]],
    [
      "crib-a.thou",
      ["crib-s.thou", "crib-b.thou"],
      ["crib-s.thou", "crib-b.thou"],
    ],
    // what every name ends with makes none alike
    ["trim.thou", ["crib.thou"], []],
    // it is there, and can't be read
    ["crib.thou", ["crib.thou", "cribs.thou"], []],
    // nor is it itself
    ["jobs.thou", ["job.thou"], []],
    ["crib.thou", ['"crib.thou'], []],
  ])(
    "and is not there, %s, is told with what is: %j",
    (written, there, meant) => {
      const project = createProject({ root: "" });
      project.setFile(
        "a/b/job.thou",
        readLines(`job j\n  units mm\n  use "${written}"\n`),
      );
      for (const each of project.missingUses("a/b/job.thou"))
        project.setFile(each, null, there);
      const [finding] = project.check("a/b/job.thou").findings;
      expect(finding?.code).toBe("file-missing");
      expect(finding?.message.includes("did you mean")).toBe(0 < meant.length);
      for (const each of meant)
        expect(finding?.message).toContain(`\`${each}\``);
      const texts = finding?.fixes.flatMap(({ edits }) =>
        edits.map(({ text }) => text),
      );
      expect(texts).toEqual(meant.map((each) => `"${each}"`));
    },
  );

  test("and is not there is written with its ending, or begun as a crib in the unit of the job", () => {
    expect(use('"no-such"')).toEqual([
      "2:7-16 error file-missing of job j: There is no file `no-such`, looked for at no-such: the names in it are not known until it is there.",
      '  fix: Write "no-such.thou"',
      '    2:7-16 "\\"no-such.thou\\""',
    ]);
    expect(use('"crib.txt"')[1]).toBe('  fix: Write "crib.thou"');
    expect(use('"a.b/crib"')[1]).toBe('  fix: Write "a.b/crib.thou"');
    expect(use('"folder/none.THOU"').slice(1)).toEqual([
      "  fix: Begin `folder/none.THOU` as a crib",
      '    makes folder/none.THOU "shop none\\n  units mm\\n"',
    ]);
    expect(use('"none.thou"', "  units inch\n")[2]).toBe(
      '    makes none.thou "shop none\\n  units inch\\n"',
    );
    expect(use('"none.thou"', "")).toHaveLength(1);
    expect(
      toldIn('job j\r\n  use "none.thou"\r\n  units mm\r\n', "file-missing")[2],
    ).toBe('    makes none.thou "shop none\\r\\n  units mm\\r\\n"');
  });

  test("and lies outside, or uses this one, or is this one", () => {
    expect(use('"../../out.thou"')).toEqual([
      "2:7-23 error file-missing of job j: `../../out.thou` leads out of the folder that these records are in: bring the file into it, and write the path from this file.",
    ]);
    expect(use('"job.thou"', "", "use-loop")).toEqual([
      "2:7-17 error use-loop of job j: This file uses itself: take the line out.",
      "  fix, safe: Make this line a comment",
      '    2:3-3 "# "',
    ]);
    expect(
      use('"crib.thou"', "", "use-loop", {
        "crib.thou": 'shop c\n  use "job.thou"\n',
      }),
    ).toEqual([
      "2:7-18 error use-loop of job j: `crib.thou` uses this file in its turn, and a file can't rest on one that rests on it: take out one of the two.",
      "  fix: Make this line a comment",
      '    2:3-3 "# "',
    ]);
    expect(
      use('"crib.thou"', "", "file-missing", { "crib.thou": "shop c\n" }),
    ).toEqual([]);
  });

  test("that was left as the form has it is one to fill in", () => {
    expect(use('"FILE"')).toEqual([
      "2:7-13 error file-missing of job j: `FILE` is only a place to fill in: write there the record that this one uses, with its path from this file.",
    ]);
  });
});

describe("the head of a file", () => {
  const CODE = "fact-missing";
  const head = (text: string, path = "job.thou"): readonly string[] =>
    toldIn(text, CODE, {}, path);

  test("that has no job is begun with one, named after its file, with the line ends and the mark that it has", () => {
    const titles = (name: string): readonly string[] =>
      ["job", "shop"].flatMap((kind) =>
        ["inches", "mm"].map(
          (unit) => `  fix: Begin with \`${kind} ${name}\`, lengths in ${unit}`,
        ),
      );
    const told = head("# a remark\n\npart a\n");
    expect(told[0]).toBe(
      "3:6-7 warning fact-missing of part a: This file has no job and no shop, so that it is not known what its lengths are in or which files it uses: begin it with `job NAME`, or `shop NAME` for a crib.",
    );
    expect(told.filter((line) => line.startsWith("  fix"))).toEqual(
      titles("job"),
    );
    expect(told[2]).toBe('    3:1-1 "job job\\n  units inch\\n\\n"');
    expect(head("\u{FEFF}part a\n")[2]).toBe(
      '    1:2-2 "job job\\n  units inch\\n\\n"',
    );
    expect(head("part a\r\n")[2]).toBe(
      '    1:1-1 "job job\\r\\n  units inch\\r\\n\\r\\n"',
    );
  });

  test("that may be a job which can't be read lacks none, and so does an empty file", () => {
    for (const text of [
      "",
      "# a remark\n",
      "jbo winch\npart a\n",
      "job\npart a\n",
      "shop\npart a\n",
    ])
      expect(head(text)).toEqual([]);
  });

  test("that does not say its units is told where bare lengths stand, and only there", () => {
    const told = head(
      "job winch\npart shaft\njournal a on shaft\n  length 1.25\n",
    );
    expect(told).toEqual([
      "1:5-10 warning fact-missing of job winch: Lengths stand here without a unit, and this job does not say which they are in, so none of them is used: write `units inch` or `units mm`.",
      "  fix: Write `units inch`",
      '    1:10-10 "\\n  units inch"',
      "  fix: Write `units mm`",
      '    1:10-10 "\\n  units mm"',
    ]);
    expect(
      head("job winch\npart shaft\njournal a on shaft\n  length 1.25 in\n"),
    ).toEqual([]);
    expect(
      head(
        "job winch\n  units inhc\npart shaft\njournal a on shaft\n  length 1.25\n",
      ),
    ).toEqual([]);
    expect(
      head(
        "job winch\n  unts inch\npart shaft\njournal a on shaft\n  length 1.25\n",
      ),
    ).toEqual([]);
  });
});

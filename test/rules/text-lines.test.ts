// What is said of a line that a newcomer writes as it is spoken in the shop, and what its fixes make of it.
import { describe, expect, test } from "vitest";
import { theOne } from "./found.ts";
import { HEAD, JOURNAL, said } from "./said-of-line.ts";

describe("a line as it is spoken", () => {
  const CODE = "line-damaged";

  test("with what it is and what is known of it goes onto two lines", () => {
    expect(said(CODE, "reamer r-1  size 0.8755", { under: HEAD })).toEqual([
      "`size` is a fact of this reamer, and a fact stands on a line of its own, indented below.",
      "  fix, safe: Put `size 0.8755` on a line of its own",
      '    11-24 "\\n  size 0.8755"',
    ]);
    // what could not be read below is not put there
    expect(said(CODE, "reamer r-1 size large", { under: HEAD })).toEqual([
      "`size` is a fact of this reamer, and a fact stands on a line of its own, indented below.",
    ]);
  });

  test("a word that is right is not asked about, and a name that is one lacks something else", () => {
    expect(
      said(CODE, "  oil iso-vg-68", {
        under: `${HEAD}fit a of journal a in bore b\n`,
      }),
    ).toEqual([
      "This line breaks off after `iso-vg-68`. It is written `oil NAME at TEMPERATURE`.",
    ]);
    expect(said(CODE, "  read 0.8743 with mic\u20111")).toEqual([
      "The dash here is not the keyboard's, as in pasted text: write `-`.",
      "  fix, safe: Write `-`",
      '    23-24 "-"',
    ]);
  });

  test.each<readonly [string, string, readonly string[]]>([
    [
      "  size #7",
      "reamer r\n",
      [
        "What stands behind a `#` is a remark, and so nothing follows `size`: write `size no 7`.",
        "  fix: Write `size no 7`",
        '    3-10 "size no 7"',
      ],
    ],
    [
      "  size # 0.8755  # as bought ",
      "reamer r\n",
      [
        "What stands behind a `#` is a remark, and so nothing follows `size`: write `size 0.8755`.",
        "  fix: Write `size 0.8755`",
        '    3-16 "size 0.8755"',
      ],
    ],
    [
      "  size #large",
      "reamer r\n",
      [
        "What stands behind a `#` is a remark, and so nothing follows `size`: write it without the `#`. It is written `size VALUE`.",
      ],
    ],
    [
      "  size # not measured yet",
      "reamer r\n",
      ["This line breaks off after `size`. It is written `size VALUE`."],
    ],
    [
      "  note #3 is worn",
      "reamer r\n",
      [
        'What stands behind a `#` is a remark, and so nothing follows `note`: write `note "#3 is worn"`.',
        '  fix: Write `note "#3 is worn"`',
        '    3-18 "note \\"#3 is worn\\""',
      ],
    ],
    [
      "  note # 3 is worn",
      "reamer r\n",
      ['This line breaks off after `note`. It is written `note "TEXT"`.'],
    ],
    [
      "part #3",
      "",
      [
        "What stands behind a `#` is a remark, and so nothing follows `part`: write `part p-3`.",
        "  fix: Write `part p-3`",
        '    1-8 "part p-3"',
      ],
    ],
    [
      "  read 0.8743 with #3 at 68 F",
      "part p\njournal j on p\n",
      [
        "What stands behind a `#` is a remark, and so nothing follows `with`: write `with g-3 at 68 F`.",
        "  fix: Write `with g-3 at 68 F`",
        '    15-30 "with g-3 at 68 F"',
      ],
    ],
    // one that says all that it has to may have any remark
    ["  size 0.8755 #7", "reamer r\n", []],
  ])("behind a `#`: %s", (line, under, told) => {
    expect(said(CODE, line, { under: HEAD + under })).toEqual(told);
  });

  test.each([
    ["  read 0.8743 using mic-1", "using", "15-20", "with"],
    ["  read 0.8743 in via mic-1", "via", "18-21", "with"],
    ["  read 0.8743 gauge mic-1", "gauge", "15-20", "with"],
    ["  read 0.8743 temp 68 F", "temp", "15-19", "at"],
    ["  read 0.8743 pos 1.5", "pos", "15-18", "station"],
    ["  read 0.8743 position 1.5", "position", "15-23", "station"],
    ["  read 0.8743 dated 2026-11-02", "dated", "15-20", "on"],
    ["  read 0.8743 operator AK", "operator", "15-23", "by"],
    ["  read 0.8743 inspector AK", "inspector", "15-24", "by"],
  ])("with another word for a clause's: %s", (line, word, place, meant) => {
    expect(said(CODE, line)).toEqual([
      `\`${word}\` does not fit here: did you mean \`${meant}\`?`,
      `  fix: Write \`${meant}\``,
      `    ${place} "${meant}"`,
    ]);
  });

  test("is told at the word that was taken as a unit, where that is none", () => {
    expect(said(CODE, "  read 0.8743 foo 68")).toEqual([
      "`foo` is no unit, and no word that fits here: write `on`, `by`, `as`, `at`, `with` or `station`.",
    ]);
    expect(said(CODE, "  finish 32 rms")).toEqual([
      "`rms` is no unit, and no word that fits here: write `Ra` or `Rz`.",
    ]);
    expect(said(CODE, "  finish 32 uin")).toEqual([
      "This line breaks off after `uin`. It is written `finish VALUE Ra|Rz`.",
    ]);
    expect(said(CODE, "  finish 32")).toEqual([
      "This line breaks off after `32`. It is written `finish VALUE Ra|Rz`.",
    ]);
    expect(said(CODE, "  read 0.8743 mm 68")).toEqual([
      "A word is missing before `68`: write `on`, `by`, `as`, `at`, `with` or `station`.",
    ]);
    expect(said(CODE, "  read 0.8743 as finish")).toEqual([
      "`finish` does not fit here: did you mean `finished`?",
      "  fix: Write `finished`",
      '    18-24 "finished"',
    ]);
    expect(said(CODE, "  read 0.8743 as found")).toEqual([
      "`found` does not fit here: write `bought`, `pressed`, `roughed`, `finished` or `run`.",
    ]);
  });

  test("of what a concession is on is told of the line to fill in", () => {
    expect(said(CODE, "concession loose on fit a", { under: HEAD })).toEqual([
      "What a concession is on stands below it with the finding that it allows, as in `allows fit-loose on fit a`.",
      "  fix: Put `allows CODE on fit a` on a line of its own",
      '    17-26 "\\n  allows CODE on fit a"',
    ]);
  });

  test.each(["\u{FEFF}", "\u{200B}", "\u{3000}"])(
    "behind a character that does not show (%j) is told of that",
    (unseen) => {
      expect(said("word-unknown", `  ${unseen}length 1.250`)).toEqual([
        "A character that does not show stands before the first word of this line, as in pasted text: take it out.",
        "  fix, safe: Take it out",
        '    3-4 ""',
      ]);
    },
  );

  test("in a record with the line ends of another system keeps them", () => {
    const job = `${HEAD}reamer r-1  size 0.8755\n`.replaceAll("\n", "\r\n");
    expect(
      theOne(job, CODE).fixes.flatMap(({ edits }) =>
        edits.map(({ text }) => text),
      ),
    ).toEqual(["\r\n  size 0.8755"]);
    // a last line without an end, alone in its entry, shows none to go by
    expect(
      theOne(job.trimEnd(), CODE).fixes.flatMap(({ edits }) =>
        edits.map(({ text }) => text),
      ),
    ).toEqual(["\r\n  size 0.8755"]);
  });

  test.each([
    ["read 0.5 wiht mic-1 at 68 F", "wiht", "with", "12-16"],
    ["read near 0.5 station 7/8 wiht mic-1", "wiht", "with", "29-33"],
    ["read 0.5 0.501 ta 70 F", "ta", "at", "18-20"],
    ["read 0.5 bu AK on 2026-11-02", "bu", "by", "12-14"],
    ['limits 0.5 to 0.6 form "x"', "form", "from", "21-25"],
  ])(
    "behind a number, a misspelt word is told, and not what follows it: %s",
    (line, word, meant, place) => {
      expect(said(CODE, `  ${line}`)).toEqual([
        `\`${word}\` does not fit here: did you mean \`${meant}\`?`,
        `  fix: Write \`${meant}\``,
        `    ${place} "${meant}"`,
      ]);
    },
  );

  test.each([
    ["fit a of shaft a in bore a", "shaft", "journal", "10-15"],
    ["fit a of journal a in bearing a", "bearing", "bore", "23-30"],
    ["press a of bushing a in hole a", "bushing", "bush", "12-19"],
    ["press a of bush a in housing a", "housing", "hole", "22-29"],
  ])(
    "the trade's word for what is named is told with the language's: %s",
    (line, word, meant, place) => {
      expect(said(CODE, line, { under: HEAD })).toEqual([
        `\`${word}\` does not fit here: did you mean \`${meant}\`?`,
        `  fix: Write \`${meant}\``,
        `    ${place} "${meant}"`,
      ]);
    },
  );

  test("behind a number, a unit is no misspelt word", () => {
    for (const unit of ["in", "mm", "um"])
      expect(said(CODE, `  read 0.5 ${unit} mic-1`)).toEqual([
        "`mic-1` does not fit here: write `on`, `by`, `as`, `at`, `with` or `station`.",
      ]);
  });

  test("with a size below zero is asked about, and not worked with", () => {
    expect(said(CODE, "  length -1.25")).toEqual([
      "`length` takes nothing below zero, and this is `-1.25`: write `1.25`, if that was meant.",
      "  fix: Write `1.25`",
      '    10-15 "1.25"',
    ]);
    expect(
      said(CODE, "  read near 0.8743 \u22120.8742 station -3")[0],
    ).toContain("this is `\u22120.8742`");
    // what may be below zero, and nought with a sign
    for (const line of [
      "  limits 0.8745 +0 -0.0005",
      "  read near 0.8743 station -3 at -5 C",
      "  runout -0",
    ])
      expect(said(CODE, line)).toEqual([]);
    expect(said(CODE, "  adds -0.0001", { under: `${HEAD}gauge g\n` })).toEqual(
      [],
    );
  });

  test.each([
    ["material m", "expansion 0.01 um/m-K", "0.01 um/m-K"],
    ["material m", "expansion 1170 um/m-K", "1170 um/m-K"],
    ["material m", "modulus 30 psi", "30 psi"],
    ["material m", "modulus 14500 GPa", "14500 GPa"],
    ["material m", "poisson 0.9", "0.9"],
    ["material m", "poisson 30", "30"],
    ["material m", "yield 10 psi", "10 psi"],
    ["material m", "yield 370 GPa", "370 GPa"],
    ["oil o", "viscosity 46 cSt at 900 C, 6.8 cSt at 100 C", "900 C"],
    ["oil o", "viscosity 46 cSt at 40 C, 6.8 cSt at 1000 F", "1000 F"],
    ["oil o", "viscosity 46 cSt at -120 C, 6.8 cSt at 100 C", "-120 C"],
    ["oil o", "viscosity 0.01 cSt at 40 C, 6.8 cSt at 100 C", "0.01 cSt"],
    ["oil o", "viscosity 2e6 cP at 40 C, 6.8 cP at 100 C", "2e6 cP"],
    ["oil o", "density 870 g/cm3", "870 g/cm3"],
    ["oil o", "density 0.87 kg/m3", "0.87 kg/m3"],
  ])(
    "with a figure that nothing has is asked about: %s, %s",
    (head, line, at) => {
      const [sentence, ...more] = said(CODE, `  ${line}`, {
        under: `${HEAD}${head}\n`,
      });
      expect(more).toEqual([]);
      expect(sentence).toContain(
        `\`${at}\` can't be what \`${line.split(" ")[0] ?? ""}\` says, since `,
      );
    },
  );

  test.each([
    ["material m", "expansion 0.1 um/m-K"],
    ["material m", "expansion 500 um/m-K"],
    ["material m", "modulus 1 MPa"],
    ["material m", "modulus 1300 GPa"],
    ["material m", "poisson 0"],
    ["material m", "poisson 0.5"],
    ["material m", "yield 0.1 MPa"],
    ["material m", "yield 10 GPa"],
    ["oil o", "viscosity 1e6 cSt at -100 C, 0.1 cSt at 400 C"],
    ["oil o", "viscosity 1e6 cP at -148 F, 0.1 cP at 752 F"],
    ["oil o", "density 0.5 g/cm3"],
    ["oil o", "density 2500 kg/m3"],
    ["job x", "temperature -273.15 C"],
    ["job x", "temperature -459.67 F"],
  ])(
    "with the last figure that something may have is read: %s, %s",
    (head, line) => {
      expect(said(CODE, `  ${line}`, { under: `${HEAD}${head}\n` })).toEqual(
        [],
      );
    },
  );

  test.each([
    ["job x", "temperature -273.2 C", "-273.2 C"],
    ["journal j on shaft", "read 0.8743 0.8742 at -460 F", "-460 F"],
    [
      "fit f of journal front in bore b",
      "hot shaft 150 F, case -500 F",
      "-500 F",
    ],
    ["fit f of journal front in bore b", "oil sae-30 at -300 C", "-300 C"],
  ])(
    "with a temperature below absolute zero is asked about: %s, %s",
    (head, line, at) => {
      expect(said(CODE, `  ${line}`, { under: `${HEAD}${head}\n` })).toEqual([
        `\`${at}\` is no temperature, since nothing is colder than -273.15 C (-459.67 F): write what it is.`,
      ]);
    },
  );

  test.each([
    ["fit f of journal front in bore b", "runs -240 rpm"],
    ["fit f of journal front in bore b", "oscillates -30 deg, 20 per min"],
    ["fit f of journal front in bore b", "oscillates 30 deg, -20 per min"],
    ["fit f of journal front in bore b", "feed pressure -30 psi"],
    ["fit f of journal front in bore b", "cooled case -0.2 sq-m, air 20 C"],
    ["line l", "speed -10 m/min"],
    ["material m", "poisson -0.3"],
    ["material m", "expansion -11.7 um/m-K"],
    ["journal j on shaft", "swing -0.0006 on vee 60 deg, 3 lobes"],
    ["oil o", "viscosity -46 cSt at 40 C, 6.8 cSt at 100 C"],
  ])("with a number below zero is asked about: %s, %s", (head, line) => {
    expect(said(CODE, `  ${line}`, { under: `${HEAD}${head}\n` })[0]).toMatch(
      /takes nothing below zero, and this is `-\d/u,
    );
  });

  test.each([
    ["journal j on shaft", "length 0"],
    ["journal j on shaft", "limits 0 to 0.8745"],
    ["journal j on shaft", "read near 0.8743 0.000 at 0 C"],
    ["hole h in case", "boss .0 in"],
    ["fit f of journal front in bore b", "runs 0 rpm"],
    ["reamer r", "flutes 0 straight"],
    ["material m", "expansion 0 um/m-K"],
    ["fit f of journal front in bore b", "feed pressure 0 psi"],
    ["material m", "modulus 0e6 psi"],
    ["material m", "yield 0.000e-3 psi"],
    ["material m", "yield -0E+2 psi"],
    ["journal j on shaft", "limits -0 to 0.8745"],
    ["journal j on shaft", "limits 0/8 to 7/8"],
    ["journal j on shaft", "length 0 0/8"],
    ["journal j on shaft", "length 00-0/8"],
    ["journal j on shaft", "read near 0.8743 .0e0 at 0 C"],
  ])("with a size of zero is asked about: %s, %s", (head, line) => {
    const [sentence, ...fixes] = said(CODE, `  ${line}`, {
      under: `${HEAD}${head}\n`,
    });
    expect(sentence).toMatch(
      /takes what is above zero, and this is `[-+]?[.0]+(?:[ -]0)?(?:\/8)?(?:e[-+]?\d)?`: write what it is, or leave the line out until it is known\.$/iu,
    );
    expect(fixes).toEqual([]);
  });

  test.each([
    ["journal j on shaft", "runout 0"],
    ["journal j on shaft", "limits 0.8745 +0 -0.0005"],
    ["journal j on shaft", "read near 0.8743 station 0 at 0 C"],
    ["journal j on shaft", "limits 0.8742 +/- 0"],
    ["journal j on shaft", "read near 10.0 20.00 100"],
    ["fit f of journal front in bore b", "oil sae-30 at 0 C"],
    ["fit f of journal front in bore b", "load 0 lbf"],
    ["fit f of journal front in bore b", "cooled case 0.2 sq-m, air 0 C"],
    ["oil o", "viscosity 100 cSt at 0 C, 46 cSt at 40 C"],
    ["part p", "joint gasket 0"],
    ["reamer r", "stock 0 to 0.012"],
  ])("may be zero: %s, %s", (head, line) => {
    expect(said(CODE, `  ${line}`, { under: `${HEAD}${head}\n` })).toEqual([]);
  });

  test("with an alloy's number alone is offered the alloys of that number", () => {
    const part = `${HEAD}part shaft\n`;
    expect(said(CODE, "  material 4140", { under: part })).toEqual([
      "`4140` is no name, since a name begins with a letter: did you mean `steel-4140`?",
      "  fix: Write `steel-4140`",
      '    12-16 "steel-4140"',
    ]);
    expect(said(CODE, "  material 932", { under: part })[0]).toContain(
      "did you mean `bronze-c932`?",
    );
    expect(said(CODE, "  material SAE 660", { under: part })).toEqual([
      "`SAE 660` is no name, since a name is one word: did you mean `bronze-c932`?",
      "  fix: Write `bronze-c932`",
      '    12-19 "bronze-c932"',
    ]);
    // nor is a number behind the name
    expect(
      said(CODE, "  oil sae-30 100 F", {
        under: `${HEAD}fit f of journal front in bore b\n`,
      })[0],
    ).not.toContain("iso-vg-100");
    // a gauge's number is no alloy's
    expect(said(CODE, "  read 0.8743 with 4140")[0]).not.toContain("steel");
  });

  test("with the other name of a unit system is offered the unit", () => {
    const fixes = (word: string): readonly string[] =>
      said(CODE, `  units ${word}`, { under: "job j\n" }).slice(0, 2);
    expect(fixes("imperial")).toEqual([
      "`imperial` does not fit here: did you mean `inch`?",
      "  fix: Write `inch`",
    ]);
    expect(fixes("metric")).toEqual([
      "`metric` does not fit here: did you mean `mm`?",
      "  fix: Write `mm`",
    ]);
  });

  test("that breaks off after a name is not told that the name was meant to be a word", () => {
    expect(
      said(CODE, "  bore front", { under: `${JOURNAL}line shaft\n` }),
    ).toEqual([
      "This line breaks off after `front`. It is written `bore NAME from Z to Z`.",
    ]);
  });
});

// What hover says where: cursor fixtures. Figures are worked out by hand beside each, or are a standard's; how they are come by is tested
// with the engineering.
import { describe, expect, test } from "vitest";
import { CAUTIONS, LIMIT_OF_RECORD } from "../../server/model/cautions.ts";
import { RESULT_KINDS } from "../../server/model/result-kinds.ts";
import { hoverAt } from "../../server/ide/hover.ts";
import { RESULT_NAMES, resultName } from "../../server/model/result-kinds.ts";
import { atCaret, CRIB, JOB, slice } from "./caret.ts";

function hover(marked: string): { markdown: string; over: string } {
  const { open, position, text } = atCaret(marked, { "crib.thou": CRIB });
  const found = hoverAt(open, position);
  return {
    markdown: found?.markdown ?? "",
    over: found === undefined ? "" : slice(text, found.range),
  };
}

const said = (marked: string): string => hover(marked).markdown;

/** The job with the caret in the first place of these words. */
function job(words: string): string {
  const plain = words.replace("|", "");
  if (!JOB.includes(plain)) throw new Error(`no ${plain}`);
  return JOB.replace(plain, words);
}

/** Rows of a table by their first cell. */
function row(markdown: string, first: string): readonly string[] {
  const line = markdown
    .split("\n")
    .find((each) => each.startsWith(`| ${first} |`));
  return (
    line
      ?.split("|")
      .slice(1, -1)
      .map((cell) => cell.trim()) ?? []
  );
}

describe("where there is nothing to say", () => {
  test.each([
    ["a blank", "part a\n |  dowels 2\n"],
    ["a comment", "part a # a p|art\n"],
    ["a text", 'part a\n  note "limits |0.5"\n'],
    ["what nobody can read", "part a\n  dowels 2 of no|thing\n"],
    ["an unknown word", "jur|nal a on b\n"],
    ["past the end", "part a   |\n"],
  ])("%s", (_, marked) => {
    expect(said(marked)).toBe("");
  });
});

describe("an entry", () => {
  test("a measured journal: what it is, its size at 20 °C, verdict, guard, working and what was assumed", () => {
    const { markdown, over } = hover(job("jour|nal front on"));
    expect(over).toBe("journal front");
    expect(markdown).toMatch(
      /^\*\*journal front\*\* on part layshaft, steel-4140: where a shaft runs\./,
    );
    expect(markdown).toContain(
      "Limits: 0.8740 to 0.8745 in, from yard drawing L-204",
    );
    // 72 °F is 2.22 K over 20 °C; 0.87428 in · 12.3e-6 · 2.22 = 0.000024 in comes off: 0.87426 in. 68 °F is 20 °C.
    expect(row(markdown, "size")).toEqual([
      "size",
      "0.87426 to 0.87435 in",
      "measured",
      "in",
    ]);
    expect(markdown).toMatch(
      /held back by 0\.0000\d+ in \(k = 1\.6\d, 95 % conformance, ISO 14253-1\)/,
    );
    expect(markdown).toMatch(/Working:[^]*JCGM 100/);
    expect(markdown).toContain("- Sizes are at 20 °C (ISO 1).");
    expect(markdown).toContain(
      "- The expansion of material steel-4140 is the shipped value.",
    );
  });

  test("what is only drawn is predicted", () => {
    expect(row(said(job("journal re|ar on")), "size")).toEqual([
      "size",
      "0.8740 to 0.8745 in",
      "predicted",
    ]);
  });

  test("what is unknown says what would settle it", () => {
    const markdown = said("job j\n  units mm\npart s\njour|nal a on s\n");
    expect(row(markdown, "size")).toEqual([
      "size",
      "unknown",
      "needs a reading of journal a",
    ]);
  });

  test("a fit: what is wanted, its clearance with the working, and that it is diametral", () => {
    const markdown = said(job("fi|t front of"));
    expect(markdown).toMatch(
      /^\*\*fit front\*\* of journal front in bore front: a running fit\./,
    );
    expect(markdown).toContain("Wanted: 0.0008 to 0.0016 in");
    const [label, value, how] = row(markdown, "clearance (diametral)");
    expect([label, how]).toEqual(["clearance (diametral)", "predicted"]);
    expect(markdown).toContain(`= ${value?.split(" ")[0] ?? "?"} in`);
  });

  test("oversize taken as zero is said on the bore that is cut", () => {
    const bare = CRIB.replaceAll(/ {2}oversize .*\n/g, "");
    const { open, position } = atCaret(job("bo|re front in"), {
      "crib.thou": bare,
    });
    expect(hoverAt(open, position)?.markdown).toMatch(
      /No oversize is written .* taken as zero/,
    );
    expect(said(job("bo|re front in"))).not.toContain("oversize is written");
  });

  test("a reading without a temperature: taken at the job's, or as at 20 °C where the job has none", () => {
    const record = (temperature: string): string =>
      `job j\n  units mm\n${temperature}part s\n  material steel-4140\njournal |a on s\n  read 25.010 25.012\n`;
    expect(said(record(""))).toContain(
      "have no temperature, and the job has none: taken as read at 20 °C",
    );
    expect(said(record("  temperature 30 C\n"))).toContain(
      "taken at the job's, 30 °C (86 °F)",
    );
    expect(
      said(
        "job j\n  units mm\npart s\njournal |a on s\n  read 25.010 at 20 C\n",
      ),
    ).not.toContain("taken");
  });

  test("a step: what is done, what it waits for, and the cautions of a cut without being asked", () => {
    const markdown = said(job("step re|am\n"));
    expect(markdown).toContain("Ream from the pilot, forward turns only");
    expect(markdown).toContain("**waits: step mark to be done**");
    for (const title of [
      "A reamer turns one way",
      "A hand reamer takes no power",
      "Chips and oil",
      "Compressed air",
      "Lead and beryllium",
    ])
      expect(markdown).toContain(`**${title}.**`);
    expect(markdown).not.toContain("**Pressing.**");
    expect(markdown).toContain(LIMIT_OF_RECORD);
  });

  test("a press into a blind hole: press, cavity, heat and cold; of a porous bush neither cold nor solvent", () => {
    const markdown = said(job("step press|-in"));
    for (const title of [
      "Pressing",
      "A closed cavity",
      "Hot parts",
      "Frozen parts",
    ])
      expect(markdown).toContain(`**${title}.**`);
    const porous = JOB.replace(
      "material bronze-c932",
      "construction porous\n  material sae-841",
    );
    const found = said(porous.replace("step press-in", "step press|-in"));
    expect(found).toContain("**An oil-filled bush.**");
    expect(found).not.toContain("**Frozen parts.**");
  });

  test("a first run, heat and lifting bring theirs by the step's words", () => {
    expect(said("job j\nstep fir|st-run\n")).toContain("**First run.**");
    expect(
      said('job j\nstep s|\n  do "Warm the case in the oven"\n'),
    ).toContain("**Hot parts.**");
    expect(said('job j\nstep s|\n  do "Lift the shaft out"\n')).toContain(
      "**Lifting.**",
    );
    expect(said('job j\nstep s|\n  do "Measure the journals"\n')).not.toContain(
      "Cautions",
    );
  });

  test("a job says what is next", () => {
    expect(said(job("job win|ch-layshaft"))).toContain("Next: step mark");
  });

  test("the second of a name says that the first counts", () => {
    expect(said("part a\npart |a\n")).toContain("the first of them counts");
  });

  test("a kind without a name says how it is written", () => {
    expect(said("fi|t\n")).toContain("`fit NAME of JOURNAL in BORE`");
  });
});

describe("a line", () => {
  const WHOLE = JOB.replace(
    "\nline layshaft",
    "\nfit rear of journal rear in bore rear\n  want 0.0008 to 0.0016\nline layshaft",
  );

  test("the window, the reamers of the crib in order, sizes to buy and to have ground", () => {
    const markdown = said(
      WHOLE.replace("line layshaft\n  bore", "line lay|shaft\n  bore"),
    );
    // largest journal + least wanted: 0.8745 + 0.0008; smallest journal + most wanted: 0.8740 + 0.0016
    expect(markdown).toContain(
      "**0.87530 to 0.87560 in** (predicted: not every journal is measured)",
    );
    const [name, cuts, rear, front, , chance, serves] = row(
      markdown,
      "reamer r-8755",
    );
    expect([name, serves]).toEqual(["reamer r-8755", "at its likeliest cut"]);
    expect(cuts).toMatch(/^0\.8753\d to 0\.8756\d in$/);
    expect(rear).toMatch(/^0\.0008\d to 0\.0016\d in$/);
    expect(front).toMatch(/^0\.00\d+ to 0\.00\d+ in$/);
    expect(chance).toMatch(/^\d\d %$/);
    expect(row(markdown, "reamer r-875").at(-1)).toBe("**no**");
    // likeliest at 0.8753 in, on the very end of what is wanted
    expect(row(markdown, String.raw`7/8 in \*`).at(-1)).toBe(
      "at its likeliest cut",
    );
    expect(markdown).toMatch(/To have ground: 0\.875\d in/);
    expect(markdown).toContain("oversize taken as zero");
    expect(markdown).toContain("**A reamer turns one way.**");
  });

  // the check values of the engineering page: a reamer of 0.8110 in without oversize over journals of 0.80995 and 0.8097 in leaves 0.00105
  // and 0.0013 in (0.8110 − 0.80995, 0.8110 − 0.8097)
  test("a worked example", () => {
    const markdown = said(
      "job j\n  units inch\npart s\npart c\n" +
        "journal a on s\n  read 0.80995\njournal b on s\n  read 0.80970\nbore a in part c\nbore b in part c\n" +
        "fit a of journal a in bore a\n  want 0.0008 to 0.0015\nfit b of journal b in bore b\n  want 0.0008 to 0.0015\n" +
        "line |l\n  bore a from 0 to 1\n  bore b from 2 to 3\nreamer r\n  size 0.8110\n",
    );
    const cells = row(markdown, String.raw`reamer r \*`);
    expect(cells.slice(0, 4)).toEqual([
      String.raw`reamer r \*`,
      "0.8110 in",
      "0.00105 in",
      "0.00130 in",
    ]);
    expect(cells.at(-1)).toBe("yes");
    expect(markdown).toContain("(measured)");
  });

  test("no size for both: who conflicts, by how much, and the ways out", () => {
    const markdown = said(
      "job j\n  units inch\npart s\npart c\n" +
        "journal a on s\n  read 0.8100\njournal b on s\n  read 0.8080\nbore a in part c\nbore b in part c\n" +
        "fit a of journal a in bore a\n  want 0.0008 to 0.0012\nfit b of journal b in bore b\n  want 0.0008 to 0.0012\n" +
        "line |l\n  bore a from 0 to 1\n  bore b from 2 to 3\n",
    );
    // a wants 0.8108 to 0.8112, b 0.8088 to 0.8092: they lie 0.0016 in apart, halfway is 0.8100
    expect(markdown).toContain("**No one size suits the line**");
    expect(markdown).toContain("journal a and journal b conflict by 0.0016 in");
    expect(markdown).toContain(
      "Take 2 reamers: 0.8088 to 0.8092 in for journal b; 0.8108 to 0.8112 in for journal a.",
    );
    expect(markdown).toContain("Size down journal a by 0.0016 in or more.");
    expect(markdown).toContain(
      "Accept what 0.8100 in gives: 0.0000 in at journal a, 0.0020 in at journal b; 0.0008 in past what is wanted.",
    );
  });

  test("what it still needs", () => {
    expect(said(job("line lay|shaft\n  bore"))).toMatch(
      /unknown; needs .*bore rear/,
    );
  });
});

describe("a reference", () => {
  test("says what it means, briefly", () => {
    const { markdown, over } = hover(job("of journal fr|ont in"));
    expect(over).toBe("journal front");
    expect(markdown).toContain("**journal front**");
    expect(markdown).not.toContain("Working");
  });

  test("a reamer in a line: what it measures and would leave there", () => {
    const markdown = said(job("ream with r-87|55"));
    // (0.87538 + 0.87540)/2
    expect(markdown).toContain("0.87539 in measured, mean of 2 readings");
    expect(markdown).toMatch(
      /It would leave:\n\n- bore rear: 0\.8753\d to 0\.8756\d in, predicted/,
    );
  });

  test("a gauge: its facts, and what it was set with", () => {
    expect(said(job("with mi|c-1 at 72"))).toMatch(
      /- kind micrometer\n- resolution 0\.00001/,
    );
    expect(
      said(
        "shop s\n  units inch\ngauge a\n  uncertainty 0.0001\ngauge |b\n  set with a\n",
      ),
    ).toContain("Set with gauge a: U 0.0001 in");
  });

  test("a shipped material: each value in both systems with its source, and that it is shipped", () => {
    const markdown = said(job("material bron|ze-c932"));
    // 18.0 um/m-K is 10.0 uin/in-F, for a kelvin is 1.8 degrees Fahrenheit
    expect(row(markdown, "expansion").slice(0, 3)).toEqual([
      "expansion",
      "10.0 uin/in-F",
      "18.0 um/m-K",
    ]);
    expect(row(markdown, "expansion").at(-1)).toMatch(/^shipped: \S/);
    expect(markdown).toContain("Shipped with the tool");
    expect(markdown).toContain("a material shipped with the tool");
  });

  test("one of the crib's: what is written, and no more", () => {
    const markdown = said(
      'job j\n  units mm\n  use "crib.thou"\npart a\n  material bronze-|local\n',
    );
    expect(row(markdown, "expansion")).toEqual([
      "expansion",
      "18.0 um/m-K",
      "10.0 uin/in-F",
      "written",
    ]);
    expect(row(markdown, "modulus")).toEqual([]);
  });

  test("a shipped oil: its grade's band", () => {
    // ISO 3448: a grade is within 10 % of its number at 40 °C
    const markdown = said("fit a of b in c\n  oil iso-vg-|46 at 40 C\n");
    expect(row(markdown, "viscosity at 40 °C").slice(1, 3)).toEqual([
      "46.0 cSt",
      "41.4 to 50.6",
    ]);
  });

  test("a name that means several things, another kind, or nothing", () => {
    expect(said("bush a in x\npart a\nbore b in |a\n")).toContain(
      "Several entries have this name: bush a, part a",
    );
    expect(said("part a\nfit f of a|  in b\n")).toContain(
      "part a is no journal",
    );
    expect(said("fit f of no|thing in b\n")).toContain(
      "No journal has this name",
    );
  });

  test("a step of a route", () => {
    expect(
      said('route r\n  step ma|rk\nstep mark\n  do "Mark it"\n'),
    ).toContain("Mark it");
  });
});

describe("words", () => {
  test("a fact: what it means and how it is written", () => {
    const { markdown, over } = hover(job("ru|ns 240"));
    expect(over).toBe("runs");
    expect(markdown).toBe("**runs**: Speed of rotation.\n\n`runs SPEED`");
  });

  test.each([
    [job("verdict guar|ded"), "ISO 14253-1"],
    [job("depth 1.350 bl|ind"), "It has a bottom."],
    [job("load 180 lbf ste|ady"), "keeps its direction"],
    ["step s\n  caution frozen|-parts\n", "liquid nitrogen"],
    ["job j\n  warn fit-t|ight at 1\n", "**fit-tight**: a finding (error)"],
    [job('use "cr|ib.thou"'), "shop harbour"],
    ['job j\n  use "mis|sing.thou"\n', "is not there"],
    [job("read ne|ar"), "3 readings at 20 °C"],
  ])("%#", (marked, words) => {
    expect(said(marked)).toContain(words);
  });
});

describe("numbers and units", () => {
  // 1 in = 25.4 mm, 1 lbf = 4.4482216152605 N, °C = (°F − 32)/1.8, 1 psi = 1 lbf/in²: exact by definition
  test.each([
    ["inch", "length 1.25|0", "1.250 in (the file's unit) = 31.75 mm"],
    [
      "inch",
      "limits 0.87|43 to 0.8745",
      "0.8743 in (the file's unit) = 22.207 mm",
    ],
    [
      "inch",
      "limits 0.8740 to 0.87|432",
      "0.87432 in (the file's unit) = 22.2077 mm",
    ],
    ["inch", "limits 7/|8 to 1", "7/8 in (the file's unit) = 22.225 mm"],
    ["mm", "limits 25.|40 to 25.41", "25.40 mm (the file's unit) = 1.0000 in"],
    ["mm", "limits 0.|6 to 1.2 thou", "0.6 thou = 15 um"],
    ["mm", "limits 1.1875 in +/- 3| tenths", "3 tenths = 8 um"],
    ["inch", "finish 16| uin Ra", "16 uin = 0.41 um"],
    [
      "inch",
      "read 0.8742 0.87|43 at 68 F",
      "0.8743 in (the file's unit) = 22.207 mm",
    ],
    ["inch", "read 0.8742 at 6|8 F", "68 F = 20 C"],
  ])("%s: %s", (units, line, expected) => {
    expect(
      said(`job j\n  units ${units}\njournal a on b\n  ${line}\n`),
    ).toContain(expected);
  });

  test.each([
    ["fit a of b in c\n  load 18|0 lbf\n", "180 lbf = 800 N"],
    ["fit a of b in c\n  runs 24|0 rpm\n", "240 rpm = 4.00 turns a second"],
    ["fit a of b in c\n  hot shaft -4|0 F\n", "-40 F = -40 C"],
    ["part a\n  bolts 1|8 lbf-ft\n", "18 lbf-ft = 24 N-m"],
    ["material a\n  modulus 14.5|e6 psi\n", "14.5e6 psi = 100000 MPa"],
    ["material a\n  expansion 18.|0 um/m-K\n", "18.0 um/m-K = 10.0 uin/in-F"],
    ["part a\n  bolts 18 lbf|-ft\n", "1 lbf-ft = 1.35582 N-m"],
    ["part a\n  joint gasket 4 th|ou\n", "1 thou = 25.4 um"],
    [
      "fit a of b in c\n  hot shaft 140 |F\n",
      "degree Fahrenheit; a unit of temperature",
    ],
  ])("%s", (marked, expected) => {
    expect(said(marked)).toContain(expected);
  });

  test("a bare length in a file without a unit says nothing", () => {
    expect(said("journal a on b\n  length 1.2|5\n")).toBe("");
  });

  test("a reading away from 20 °C: what it is there, and why", () => {
    // 0.87432 · 12.3e-6/K · 4 °F/1.8 = 0.0000239 in off
    const found = said(job("read near 0.87|432"));
    expect(found).toContain(
      "At 20 °C: 0.87430 in (read at 72 °F, material steel-4140 grows 12.3 um/m-K (shipped value))",
    );
    expect(said(job("read far  0.87|435".replace("  ", " ")))).not.toContain(
      "At 20 °C",
    );
  });

  test("a gauge that reads many: the narrowest tolerances first, and how many more", () => {
    // ratio T/(2U): 0.00040/(2 · 0.00004) = 5 at the narrowest, 0.00051/(2 · 0.00004) = 6.375 at the twelfth
    const widths = [7, 3, 11, 0, 14, 5, 9, 1, 13, 4, 8, 2, 12, 6, 10];
    const features = widths.map(
      (width) =>
        `journal j${String(width)} on a\n  limits 0.80000 to ${(0.8004 + width / 1e5).toFixed(5)}\n  read 0.8002 with g at 68 F\n`,
    );
    const text = `job j\n  units inch\ngauge |g\n  uncertainty 0.00004\npart a\n${features.join("")}`;
    const rows = said(text)
      .split("\n")
      .filter((line) => line.startsWith("| tolerance to uncertainty"));
    expect(rows.map((line) => /journal j(\d+)/u.exec(line)?.[1])).toEqual(
      Array.from({ length: 12 }, (_, index) => String(index)),
    );
    expect(rows[0]).toContain("| 5.0, good |");
    expect(rows[11]).toContain("| 6.4, good |");
    expect(said(text)).toContain("and 3 more, none of a narrower tolerance.");
    // what is shown of many is what is shown of them where they are few
    const few = said(text.replace(features.slice(0, 3).join(""), ""));
    expect(few).not.toContain("more, none of");
    for (const line of rows.filter((each) => !/ j(?:7|3|11),? /u.test(each)))
      expect(few.split("\n")).toContain(line);
  });

  test("a gauge's correction, and a need where the growth can't be known", () => {
    expect(
      said(
        "job j\n  units mm\ngauge g\n  adds -0.01\njournal a on b\n  read 25.0|00 with g at 20 C\npart b\n",
      ),
    ).toContain("At 20 °C: 24.990 mm (gauge g adds -0.01");
    expect(
      said(
        "job j\n  units mm\npart b\njournal a on b\n  read 25.0|00 at 30 C\n",
      ),
    ).toContain("At 20 °C: needs the material of part b");
  });
});

describe("a class of size", () => {
  // 25 H7: 0/+21 µm, 25 f7: −20/−41 µm: Machine Drawing (Narayana, Kannaiah, Reddy), tables 15.1 to 15.4, as printed in
  // test/core/fits/printed-iso.ts
  test("its limits at the size, in both systems", () => {
    const markdown = said(
      "job j\n  units inch\nhole a in b\n  limits 25 mm H|7\n",
    );
    expect(row(markdown, "hole")).toEqual([
      "hole",
      "25.000 to 25.021 mm",
      "0.98425 to 0.98508 in",
    ]);
  });

  test("a fit's: hole, shaft and clearance", () => {
    const markdown = said(
      "job j\n  units mm\nfit a of b in c\n  want 25 H7/|f7\n",
    );
    expect(row(markdown, "hole")[1]).toBe("25.000 to 25.021 mm");
    expect(row(markdown, "shaft")[1]).toBe("24.959 to 24.980 mm");
    expect(row(markdown, "clearance (diametral)")[1]).toBe("0.020 to 0.062 mm");
  });

  test("an inch class on a journal: the shaft counts", () => {
    const markdown = said(
      "job j\n  units inch\njournal a on b\n  limits 0.875 RC|4\n",
    );
    expect(markdown).toContain("ANSI B4.1");
    expect(row(markdown, "shaft, which counts here")).not.toEqual([]);
  });

  test("one that is none", () => {
    expect(
      said("job j\n  units mm\nhole a in b\n  limits 25 mm Q|7\n"),
    ).toMatch(/no deviation letters/);
  });
});

test("every kind of result has a name of its own", () => {
  expect(Object.keys(RESULT_NAMES)).toEqual(Object.keys(RESULT_KINDS));
  const names = Object.keys(RESULT_KINDS).map(resultName);
  expect(new Set(names).size).toBe(names.length);
});

test("the cautions are the closed list of the language, each with a title and a text of its own", () => {
  expect(CAUTIONS.map((each) => each.name)).toEqual(
    (
      "reamer-one-way hand-reamer-no-power chips-and-oil rotating-work compressed-air solvent hot-parts frozen-parts press-work " +
      "lead-and-beryllium old-gaskets oil-filled-bush lifting stored-load closed-cavity first-run"
    ).split(" "),
  );
  expect(new Set(CAUTIONS.map((each) => each.text)).size).toBe(CAUTIONS.length);
  // US 29 CFR 1910.242(b) and 1917.154 (seen): reduced to less than 30 psi, with chip guarding and protective equipment
  expect(CAUTIONS.find((each) => each.name === "compressed-air")?.text).toMatch(
    /under 30 psi .*chip guard.*eye protection/,
  );
});

describe("advice, which nobody has to take", () => {
  const RUNNING = `job winch-9
  units mm
part shaft
part case
journal one on shaft
  length 25
  limits 24.98 to 24.98
bore one in case
  length 25
fit one of journal one in bore one
  RUNS
  wa|nt 0.02 to 0.05
`;

  test("over a fit's `want`: classes, the shop rule, and what the film still needs", () => {
    const markdown = said(RUNNING.replace("RUNS", "runs 600 rpm"));
    // H7/f7 at 25 mm: +21 and 0 over -20 and -41 µm (ISO 286-2)
    expect(row(markdown, "H7/f7")).toEqual([
      "H7/f7",
      "0.020 to 0.062 mm",
      "ISO 286-2\\:2010",
    ]);
    // a thousandth of 24.98 mm
    expect(row(markdown, "one thou an inch of diameter, 1 in 1000")[1]).toBe(
      "0.025 mm",
    );
    // 0.8·(π·0.02498·10)^¼ ‰ of 24.98 mm
    expect(
      row(
        markdown,
        "0.8 per mille times the fourth root of the speed in m/s",
      )[1],
    ).toBe("0.019 mm");
    expect(markdown).not.toContain("RC4");
    expect(markdown).toMatch(/The film's own range needs .*oil of fit one/);
  });

  test("over a fit that wants nothing yet it stands below what is known", () => {
    const markdown = said(
      RUNNING.replace("  wa|nt 0.02 to 0.05\n", "")
        .replace("RUNS", "runs 600 rpm")
        .replace("fit one", "f|it one"),
    );
    expect(markdown.indexOf("| clearance (diametral)")).toBeLessThan(
      markdown.indexOf("What may be wanted here"),
    );
    expect(markdown.indexOf("| clearance (diametral)")).toBeGreaterThan(0);
  });

  test("an inch job is told the inch classes", () => {
    const markdown = said(
      RUNNING.replace("RUNS", "runs 600 rpm")
        .replace("units mm", "units inch")
        .replace("24.98 to 24.98", "0.984 to 0.984")
        .replace("length 25\n  limits", "length 1\n  limits"),
    );
    // RC4 from 0.71 to 1.19 in: 0.8 to 2.8 thou (ANSI B4.1, table of running fits)
    expect(row(markdown, "RC4")[1]).toBe("0.0008 to 0.0028 in");
    expect(row(markdown, "H7/f7")).toEqual([]);
  });

  test("where the film cannot be full, it says why", () => {
    expect(
      said(
        RUNNING.replace(
          "RUNS",
          "runs 600 rpm\n  load 600 N steady\n  oil iso-vg-68 at 40 C\n  feed drip",
        ),
      ),
    ).toContain("No range of the film: drip does not keep the gap filled");
  });

  test("over a line: how fast to ream, by hand as turns", () => {
    const { markdown } = hover(job("li|ne layshaft"));
    expect(markdown).toContain("How fast to ream (advice;");
    // common practice: 10 to 30 turns a minute
    expect(markdown).toContain("10 to 30 rpm");
  });
});

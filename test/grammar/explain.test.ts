// Why a line can't be read, and what would mend it: each trap that the language page refuses "with the fix", and more. What is expected here
// is the language page's word, not another program's. Every mend is put in and read again.
import { describe, expect, test } from "vitest";
import { LONGEST_BODY } from "../../grammar/by-ohm.ts";
import { explainDamage, type Damage } from "../../grammar/explain.ts";
import { mendDashed } from "../../grammar/range-forms.ts";
import { readsWhole, withMend } from "../../grammar/asked.ts";
import { parseBody } from "../../grammar/parse.ts";
import { ENTRIES } from "../../grammar/vocabulary.ts";

const FORMS = new Map(
  ENTRIES.flatMap((entry) => [
    [entry.rule, entry.form] as const,
    ...entry.facts.map((fact) => [fact.rule, fact.form] as const),
  ]),
);

function explain(rule: string, body: string): Damage {
  const { damagedAt } = parseBody(body, rule);
  if (damagedAt === undefined) throw new Error(`${body} reads`);
  return explainDamage(body, rule, damagedAt, FORMS.get(rule) ?? "");
}

/** The whole line as it is mended. */
function mended(rule: string, body: string): string | undefined {
  const damage = explain(rule, body);
  return damage.mended === undefined
    ? undefined
    : withMend(body, { ...damage, text: damage.mended });
}

describe("mends that read", () => {
  test.each([
    // fractions in readings, which are decimals
    ["ReadFact", "read near 7/8", "read near 0.875"],
    ["ReadFact", "read near 1-3/16 with mic-1", "read near 1.1875 with mic-1"],
    ["ReadFact", "read 0.874 1/128", "read 0.874 0.0078125"],
    // values of a reading
    ["ReadFact", "read near 0.8743, 0.8742", "read near 0.8743 0.8742"],
    ["ReadFact", "read 0.8743; 0.8742 at 68 F", "read 0.8743 0.8742 at 68 F"],
    // letters for digits, wherever a number stands
    ["ReadFact", "read O.87430", "read 0.87430"],
    ["ReadFact", "read near O.87430 in", "read near 0.87430 in"],
    ["ReadFact", "read 0.8743O in", "read 0.87430 in"],
    ["ReadFact", "read 0.8743 0.8742 l.0002", "read 0.8743 0.8742 1.0002"],
    ["ReadFact", "read l2 O.5 o.5 0.5O mm", "read l2 0.5 0.5 0.50 mm"],
    ["ReadFact", "read 0.8743 at 6O F", "read 0.8743 at 60 F"],
    ["RepeatFact", "repeat I.O002", "repeat 1.0002"],
    ["BushReadFact", "read od O.25", "read od 0.25"],
    ["StackReadFact", "read l2 O.25", "read l2 0.25"],
    ["PlusFact", "plus l2 O.25", "plus l2 0.25"],
    ["LimitsFact", "limits O.8740 to O.8745", "limits 0.8740 to 0.8745"],
    ["LimitsFact", "limits 0.8745 +O -.OOO5", "limits 0.8745 +0 -.0005"],
    ["NominalFact", "nominal l 3/l6", "nominal 1 3/16"],
    ["BoltsFact", "bolts 1O lbf-ft", "bolts 10 lbf-ft"],
    ["LineBoreFact", "bore l from O to l.25", "bore l from 0 to 1.25"],
    ["ShimsFact", "shims O.1, 0.2, o.5 mm", "shims 0.1, 0.2, 0.5 mm"],
    ["DowelsFact", "dowels l", "dowels 1"],
    ["SizeFact", "size no 1O", "size no 10"],
    ["GradeFact", "grade SAE 3O", "grade SAE 30"],
    ["DoneFact", "done 2O26-l1-05 by AK", "done 2026-11-05 by AK"],
    // ranges
    ["LimitsFact", "limits 24.959 - 24.980", "limits 24.959 to 24.980"],
    ["LimitsFact", "limits 0.8740 ... 0.8745", "limits 0.8740 to 0.8745"],
    ["LimitsFact", "limits 0.8740 0.8745", "limits 0.8740 to 0.8745"],
    ["LimitsFact", "limits 22.207,22.208", "limits 22.207 to 22.208"],
    ["LimitsFact", "limits 0.8745/0.8740", "limits 0.8740 to 0.8745"],
    ["LimitsFact", "limits 7/8 - 15/16", "limits 7/8 to 15/16"],
    ["LimitsFact", "limits 22.1 mm thru 22.2 mm", "limits 22.1 mm to 22.2 mm"],
    ["WantFact", "want 1 - 2 thou", "want 1 to 2 thou"],
    [
      "BoltsFact",
      "bolts 18 lbf-ft - 20 lbf-ft",
      "bolts 18 lbf-ft to 20 lbf-ft",
    ],
    ["LineBoreFact", "bore rear from 5.5 - 6.75", "bore rear from 5.5 to 6.75"],
    ["LimitsFact", "limits 0.8745 -0.0005", "limits 0.8745 +0 -0.0005"],
    ["LimitsFact", "limits 0.8745 +0.0005", "limits 0.8745 +0.0005 -0"],
    ["LimitsFact", "limits 0.8745 + 0 - 0.0005", "limits 0.8745 +0 -0.0005"],
    ["LimitsFact", "limits 0.8742 +- 0.0003", "limits 0.8742 +/- 0.0003"],
    ["LimitsFact", "limits 25 mm H 7", "limits 25 mm H7"],
    ["WantFact", "want 25 mm H7 / f7", "want 25 mm H7/f7"],
    [
      "LimitsFact",
      "limits 0.8740 to 0.8745 drawing L-204",
      'limits 0.8740 to 0.8745 from "drawing L-204"',
    ],
    // texts
    ["TitleFact", 'title "Winch 3', 'title "Winch 3"'],
    ["TitleFact", "title Winch 3", 'title "Winch 3"'],
    ["TitleFact", "title \u{201C}Winch 3\u{201D}", 'title "Winch 3"'],
    ["NoteFact", "note 'dressed the face'", 'note "dressed the face"'],
    ["UseFact", "use crib.thou", 'use "crib.thou"'],
    [
      "WhyFact",
      "why spare is late by AK on 2026-11-06",
      'why "spare is late" by AK on 2026-11-06',
    ],
    // names
    ["JournalEntry", "journal 3rd on shaft", "journal j-3rd on shaft"],
    ["ReamerEntry", "reamer 8755", "reamer r-8755"],
    ["ReamFact", "ream with 8755", "ream with r-8755"],
    ["HoleEntry", "hole in in case", "hole in-1 in case"],
    ["JournalEntry", "journal on shaft", "journal journal-1 on shaft"],
    ["StepEntry", "step after", "step after-1"],
    ["PartEntry", "part lay shaft", "part lay-shaft"],
    ["PartEntry", 'part "lay shaft"', "part lay-shaft"],
    ["JournalEntry", "journal front_1 on s", "journal front-1 on s"],
    ["JournalEntry", "journal front end on s", "journal front-end on s"],
    ["ReadFact", "read 0.8743 with mic 1", "read 0.8743 with mic-1"],
    ["ReadFact", "read front end 0.8743", "read front-end 0.8743"],
    ["MaterialFact", "material steel 4140", "material steel-4140"],
    // small words
    ["JournalEntry", "journal front in shaft", "journal front on shaft"],
    ["BushEntry", "bush front hole front", "bush front in hole front"],
    ["ReamFact", "ream r-8755", "ream with r-8755"],
    ["OilFact", "oil sae-30 120 F", "oil sae-30 at 120 F"],
    ["OilFact", "oil sae-30 @ 120 F", "oil sae-30 at 120 F"],
    ["HeldFact", 'held "peg"', 'held by "peg"'],
    ["WarnFact", "warn stock-thin 0.003", "warn stock-thin at 0.003"],
    ["CutFact", "cut 0.8752 to 0.8757", "cut to 0.8752 to 0.8757"],
    ["JointFact", "joint 0.004", "joint gasket 0.004"],
    ["LimitsFact", "limits: 0.8740 to 0.8745", "limits 0.8740 to 0.8745"],
    ["UnitsFact", "units = mm", "units mm"],
    // lists
    ["AfterFact", "after press-in and bolt-up", "after press-in, bolt-up"],
    ["AfterFact", "after press-in bolt-up", "after press-in, bolt-up"],
    [
      "OscillatesFact",
      "oscillates 30 deg 20 per min",
      "oscillates 30 deg, 20 per min",
    ],
    // signatures
    ["OpenedFact", "opened AK 2026-11-02", "opened by AK on 2026-11-02"],
    ["DoneFact", "done 2026-11-05 AK", "done 2026-11-05 by AK"],
    // scales
    ["GradeFact", "grade 46", "grade ISO VG 46"],
    ["GradeFact", "grade 30", "grade SAE 30"],
    ["SizeFact", "size number 7", "size no 7"],
  ])("%s: %s", (rule, body, whole) => {
    expect(mended(rule, body)).toBe(whole);
    expect(readsWhole(whole, { rule })).toBe(true);
  });
});

test.each([
  ["24.959-24.980", "24.959 to 24.980", true],
  ["0.8740..0.8745", "0.8740 to 0.8745", true],
  ["24.980\u{2013}24.959 mm", "24.959 to 24.980 mm", false],
  ["0.8745-0.0005", "0.8745 +0 -0.0005", false],
])("a dash that the grammar reads: %s", (text, whole, safe) => {
  expect(mendDashed(text)).toMatchObject({ mended: whole, safe });
});

test.each([
  ...["in", "inch", "inches", "mm", "cm", "m", "thou", "thous", "mil", "mils"],
  ...["tenth", "tenths", "um", "micron", "microns", "millimetre", "micrometre"],
])(
  "a unit stays with its size, and is no word of where it is from: %s",
  (unit) => {
    expect(mended("LimitsFact", `limits 1.10 - 1.20 ${unit} drawing L-2`)).toBe(
      `limits 1.10 to 1.20 ${unit} from "drawing L-2"`,
    );
  },
);

test.each(["H 7", "js 7", "JS 11"])(
  "a class stays whole before where it is from: %s",
  (word) => {
    expect(mended("LimitsFact", `limits 25 mm ${word} drawing L-2`)).toBe(
      `limits 25 mm ${word.replace(" ", "")} from "drawing L-2"`,
    );
  },
);

test.each(["H7", "h 7", "JS6", "JS 6"])(
  "a class behind two sizes is no word of where they are from: %s",
  (word) => {
    const { message } = explain("LimitsFact", `limits 24.96 to 24.98 ${word}`);
    expect(message).not.toContain("Where limits are from");
  },
);

test.each(["MM", "Inches"])(
  "a unit in capitals stays with its size too: %s",
  (unit) => {
    expect(
      mended("LimitsFact", `limits 1.10 to 1.20 ${unit} drawing L-2`),
    ).toBe(`limits 1.10 to 1.20 ${unit} from "drawing L-2"`);
  },
);

test("a dash behind a number with a sign may be a sign as well: no mend is offered", () => {
  expect(mendDashed("-0.001-0.002")).toEqual({
    message: "A range is written with `to`.",
  });
});

test("what has letters for digits is named from its first word to its last, and no comma with it", () => {
  const place = (rule: string, body: string): string => {
    const { start, end } = explain(rule, body);
    return body.slice(start, end);
  };
  expect(place("LimitsFact", "limits O.8740 to O.8745 in")).toBe(
    "O.8740 to O.8745",
  );
  expect(place("ShimsFact", "shims O.1, 0.2")).toBe("O.1");
  expect(explain("ReadFact", "read O.87430").message).toBe(
    "`O.87430` has a letter where a digit belongs: write `0.87430`.",
  );
});

test.each([
  ["ReadFact", "read O 0.87430"],
  ["ReadFact", "read l2 0.87430 with mic-l"],
  ["ReadFact", "read O .8743"],
  ["PlusFact", "plus I 0.250"],
  ["JournalEntry", "journal lO on O"],
  ["LineBoreFact", "bore O from 0 to 1"],
  ["SizeFact", "size letter O"],
  ["SerialFact", "serial O.87-l"],
  ["LotFact", "lot Ol.5"],
])("a name is no number with letters: %s %s", (rule, body) => {
  expect(readsWhole(body, { rule })).toBe(true);
});

test("a line that is too long is not looked into, and up to there it is", () => {
  const text = (length: number): string =>
    `note ${"x".repeat(length - "note ".length)}`;
  expect(explain("NoteFact", text(LONGEST_BODY)).message).toMatch(
    /^Here comes a text in quotes/u,
  );
  expect(explain("NoteFact", text(LONGEST_BODY + 1))).toEqual({
    start: LONGEST_BODY,
    end: LONGEST_BODY + 1,
    message:
      "This line has 2,001 characters, and a line is read up to 2,000: shorten it, or make several of it.",
  });
});

test("a place of the form that was left as it was offered is told as that", () => {
  expect(explain("OdFact", "od LOW to HIGH").message).toMatch(
    /^`LOW` is only a place to fill in: write there what the job has\. It is written /u,
  );
  expect(explain("OdFact", "od 36.02 to HIGH").message).toMatch(
    /^`HIGH` is only a place to fill in/u,
  );
  expect(explain("LineBoreFact", "bore front from Z to 4").message).toMatch(
    /^`Z` is only a place to fill in/u,
  );
  // one that was read, as a place or as a material
  expect(explain("ReadFact", "read VALUES").message).toMatch(
    /^`VALUES` is only a place to fill in/u,
  );
  const left = explain("OversizeFact", "oversize LOW to HIGH");
  expect([left.start, left.end]).toEqual([9, 12]);
  expect(left.message).toMatch(/^`LOW` is only a place to fill in/u);
  expect(explain("LineBoreFact", "bore Z form 0 to 4").mended).toBe("from");
  // before what else might be meant: a signature without its by
  expect(explain("DueFact", "due DATE").message).toMatch(
    /^`DATE` is only a place to fill in/u,
  );
  // what is written as it stands is no place
  expect(explain("GradeFact", "grade ISO VG NUMBER").message).toMatch(
    /^`NUMBER` is only a place to fill in/u,
  );
  expect(explain("GradeFact", "grade ISO VG x").message).not.toMatch(
    /place to fill in/u,
  );
});

test.each([
  ["read near 0.87432x 0.87428 0.87430", "read near 0.87432 0.87428 0.87430"],
  ["read 22.20 × 22.21x22.22 with mic-1", "read 22.20 22.21 22.22 with mic-1"],
  ["read 0.87432* 0.87428", "read 0.87432 0.87428"],
  ["read .87432,.87428", "read .87432 .87428"],
  ["read 0.87432 and 0.87428", "read 0.87432 0.87428"],
  ["read 0.87432- 0.87428 & 0.87430", "read 0.87432 0.87428 0.87430"],
])("a sign between readings goes, and no reading with it: %s", (line, as) => {
  expect(explain("ReadFact", line).message).toMatch(
    /^Values of a reading are parted by blanks alone: write /u,
  );
  expect(mended("ReadFact", line)).toBe(as);
});

test.each(["68 degrees F", "68 deg. F", "68\u00B0 F", "68deg F"])(
  "degrees need no word beside their letter: %s",
  (written) => {
    expect(mended("ReadFact", `read 0.8743 with mic-1 at ${written}`)).toBe(
      "read 0.8743 with mic-1 at 68 F",
    );
  },
);

test("two gauges are no gauge of one name", () => {
  const { mended: joined, message } = explain(
    "ReadFact",
    "read 0.8743 with mic-1 and mic-2",
  );
  expect(joined).toBeUndefined();
  expect(message).toMatch(/^`and` does not fit here/u);
});

test("so many times a reading is no sign between readings", () => {
  expect(explain("ReadFact", "read 0.87432 x 2").message).toMatch(
    /is two figures/u,
  );
});

test("a word after all that a line holds is a remark", () => {
  const { mended: remark, start } = explain("VentedFact", "vented yes");
  expect(remark).toBe("# yes");
  expect(start).toBe(7);
  // one letter may be a unit or a slip, and what begins with a digit is no word
  expect(explain("VentedFact", "vented y").mended).toBeUndefined();
  expect(explain("VentedFact", "vented 3rd").mended).toBeUndefined();
});

describe("words of a closed choice are given to whoever shows the message", () => {
  test.each([
    ["SplitFact", "split acros", ["along", "across"]],
    ["UnitsFact", "units inches", ["inch", "mm"]],
    ["LoadFact", "load 180 lbf steadily", ["steady", "reversing", "shock"]],
    [
      "ReadFact",
      "read 0.8743 as presed",
      ["bought", "pressed", "roughed", "finished", "run"],
    ],
  ])("%s: %s", (rule, body, choices) => {
    expect(explain(rule, body).choices).toEqual(choices);
  });
});

describe("faults with a code of their own", () => {
  test.each([
    ["OpenedFact", "opened 2 Nov 2026", "date-wrong", "2 Nov 2026"],
    ["ReadFact", "read 0.5 on Nov 2, 2026", "date-wrong", "Nov 2, 2026"],
    ["DoneFact", "done today", "date-wrong", "today"],
    ["DueFact", "due 2026-11-05T10:00", "date-wrong", "2026-11-05T10:00"],
    ["LengthFact", "length 1,250,000", "number-comma", "1,250,000"],
  ])("%s: %s", (rule, body, code, text) => {
    const damage = explain(rule, body);
    expect(damage.code).toBe(code);
    expect(body.slice(damage.start, damage.end)).toBe(text);
  });
});

describe("nothing is offered where more than one mend makes sense, or none", () => {
  test.each([
    ["ReadFact", "read near 1/3"],
    ["LimitsFact", "limits 0.874"],
    ["LimitsFact", "limits H7"],
    ["LimitsFact", "limits 0.8740 to"],
    ["FinishFact", "finish 16"],
    ["HotFact", "hot 140 F"],
    ["CutTemperatureFact", "temperature 75 F"],
    ["DowelsFact", "dowels two"],
    ["LimitsFact", "limits 0.8740 to 0.8745 to 0.8750"],
    // a name may be meant, and what is no number with digits either
    ["PlusFact", "plus O.250"],
    ["ReadFact", "read lo"],
    ["DowelsFact", "dowels lo-l"],
  ])("%s: %s", (rule, body) => {
    const damage = explain(rule, body);
    expect(damage.mended).toBeUndefined();
    expect(damage.message).toMatch(/^[\p{Lu}`].*\.$/u);
  });
});

test("a mend is sure only where nothing else can be meant", () => {
  const isSafe = (rule: string, body: string): boolean =>
    explain(rule, body).safe === true;
  expect(isSafe("LimitsFact", "limits 24.959 - 24.980")).toBe(true);
  expect(isSafe("TitleFact", "title Winch 3")).toBe(true);
  expect(isSafe("LimitsFact", "limits 0.8740 0.8745")).toBe(false);
  expect(isSafe("LimitsFact", "limits 24.980 - 24.959")).toBe(false);
  expect(isSafe("LimitsFact", "limits 0.8745 -0.0005")).toBe(false);
  expect(isSafe("ReadFact", "read near 7/8")).toBe(false);
  expect(isSafe("ReadFact", "read near O.8743")).toBe(false);
  expect(isSafe("ReamFact", "ream with 8755")).toBe(false);
});

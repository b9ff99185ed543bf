// The traps of numbers, word for word: fractions and commas in readings, grades and sizes without their scale; and a kind that is misspelt
// before a name.
import { describe, expect, test } from "vitest";
import { explainDamage, type Damage } from "../../grammar/explain.ts";
import { parseBody } from "../../grammar/parse.ts";

function explain(rule: string, body: string): Damage {
  const { damagedAt } = parseBody(body, rule);
  if (damagedAt === undefined) throw new Error(`${body} reads`);
  return explainDamage(body, rule, damagedAt, "");
}

/** Where it is, what is said, and what stands there once mended, with `!` where that is sure. */
function said(rule: string, body: string): readonly string[] {
  const { start, end, message, mended, safe } = explain(rule, body);
  return [
    body.slice(start, end),
    message,
    ...(mended === undefined ? [] : [`${mended}${safe === true ? "!" : ""}`]),
  ];
}

describe("a fraction in a reading", () => {
  const NEVER =
    "A reading is a decimal, as the gauge shows it, never a fraction";

  test.each([
    ["ReadFact", "read near 7/8", "7/8", "0.875"],
    ["ReadFact", "read near 1 3/16", "1 3/16", "1.1875"],
    ["ReadFact", "read near 1-3/16 with mic-1", "1-3/16", "1.1875"],
    ["RepeatFact", "repeat 7/8", "7/8", "0.875"],
    ["BushReadFact", "read od 7/8", "7/8", "0.875"],
    ["StackReadFact", "read spacer 7/8", "7/8", "0.875"],
    ["ReadFact", "read 0.874 1/128", "1/128", "0.0078125"],
  ])("%s: %s", (rule, body, fraction, decimal) => {
    expect(said(rule, body)).toEqual([
      fraction,
      `${NEVER}: ${fraction} is ${decimal}.`,
      decimal,
    ]);
  });

  test("that has no end, or no meaning, is none of a decimal", () => {
    expect(said("ReadFact", "read near 1/3")).toEqual(["1/3", `${NEVER}.`]);
    expect(said("ReadFact", "read near 1/0")).toEqual(["1/0", `${NEVER}.`]);
    expect(said("ReadFact", "read near 1/1024")).toEqual([
      "1/1024",
      `${NEVER}.`,
    ]);
  });

  test("is looked for where the line stops, and in readings alone", () => {
    expect(explain("ReadFact", "read 0.874 with mic 7/8 x").message).not.toBe(
      "",
    );
    expect(explain("RoundFact", "round 7/8 7/8").message).not.toContain(
      "never a fraction",
    );
  });
});

describe("commas in a reading", () => {
  test.each([
    ["read near 0.8743, 0.8742", "0.8743, 0.8742", "0.8743 0.8742"],
    ["read near 0.8743 , 0.8742", "0.8743 , 0.8742", "0.8743 0.8742"],
    ["read 0.8743; 0.8742 at 68 F", "0.8743; 0.8742", "0.8743 0.8742"],
    ["read 0.8743;0.8742", "0.8743;0.8742", "0.8743 0.8742"],
    ["read .8743, .8742, .8741", ".8743, .8742, .8741", ".8743 .8742 .8741"],
  ])("%s", (body, text, mended) => {
    expect(said("ReadFact", body)).toEqual([
      text,
      `Values of a reading are parted by blanks, not by commas: write \`${mended}\`.`,
      `${mended}!`,
    ]);
  });

  test("are no mend where the line would not read without them", () => {
    expect(
      said("ReadFact", "read 0.8743, 0.8742 nonsense with")[2],
    ).toBeUndefined();
  });
});

describe("a grade without its scale", () => {
  const grade = (text: string): readonly string[] =>
    said("GradeFact", `grade ${text}`);

  // SAE J300 and J306, of which none is a grade of ISO 3448
  test.each([20, 30, 40, 50, 60, 80, 85, 90, 110, 140, 190])(
    "%i is SAE's",
    (number) => {
      expect(grade(String(number))).toEqual([
        String(number),
        `A grade says by which scale: \`SAE ${String(number)}\`.`,
        `SAE ${String(number)}`,
      ]);
    },
  );

  // ISO 3448
  test.each([
    2, 3, 5, 7, 10, 15, 22, 32, 46, 68, 100, 150, 220, 320, 460, 680, 1000,
    1500, 2200, 3200,
  ])("%i is ISO's", (number) => {
    expect(grade(String(number))).toEqual([
      String(number),
      `A grade says by which scale: \`ISO VG ${String(number)}\`.`,
      `ISO VG ${String(number)}`,
    ]);
  });

  test("that no scale has is not guessed", () => {
    for (const number of ["0", "33", "45", "5000"])
      expect(grade(number), number).toEqual([
        number,
        "A grade says by which scale, as `ISO VG 46` or `SAE 30`, and no scale has this one.",
      ]);
  });

  test("is ISO's where half of its name stands", () => {
    for (const text of ["VG 46", "ISO 46", "VG46", "ISO-46", "vg 46"])
      expect(grade(text), text).toEqual([
        text,
        "This grade is written `ISO VG 46`.",
        "ISO VG 46",
      ]);
    expect(explain("GradeFact", "grade 46 x").message).not.toContain(
      "by which scale",
    );
    expect(explain("OilFact", "oil 46").message).not.toContain(
      "by which scale",
    );
  });
});

describe("a number size", () => {
  test.each(["number", "num", "nr", "nr.", "no.", "Number", "NR"])(
    "%s 7",
    (word) => {
      expect(said("SizeFact", `size ${word} 7`)).toEqual([
        `${word} 7`,
        "A number size is written `no 7`.",
        "no 7!",
      ]);
    },
  );

  test("stands behind `size` of a reamer and nowhere else", () => {
    expect(said("SizeFact", "size  number  27")).toEqual([
      "number  27",
      "A number size is written `no 27`.",
      "no 27!",
    ]);
    expect(explain("SizeFact", "size number 7 8").message).not.toContain(
      "A number size is written",
    );
    expect(explain("SizeFact", "size number").message).not.toContain(
      "A number size is written",
    );
    expect(explain("LimitsFact", "limits number 7").message).not.toContain(
      "A number size is written",
    );
  });
});

describe("a kind before a name", () => {
  const fit = (kind: string): string | undefined =>
    explain("FitEntry", `fit front of ${kind} front in bore front`).mended;

  test("that is one letter off is the kind", () => {
    for (const kind of [
      "jurnal",
      "ournal",
      "journa",
      "journall",
      "jjournal",
      "jounnal",
      "kournal",
      "journak",
      "jour-nal",
    ])
      expect(fit(kind), kind).toBe("journal");
  });

  test("that is farther off may be a name of several words", () => {
    for (const kind of ["jrnal", "jounrla", "shaft", "journey"])
      expect(fit(kind), kind).not.toBe("journal");
  });
});

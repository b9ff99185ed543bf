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

  test("in a record with the line ends of another system keeps them", () => {
    const job = `${HEAD}reamer r-1  size 0.8755\n`.replaceAll("\n", "\r\n");
    expect(
      theOne(job, CODE).fixes.flatMap(({ edits }) =>
        edits.map(({ text }) => text),
      ),
    ).toEqual(["\r\n  size 0.8755"]);
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

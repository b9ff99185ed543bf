// What is offered for a comma in a number, and for letters at its end.
import { describe, expect, test } from "vitest";
import { check, codes, FIT, withFix } from "./check-job.ts";
import { said } from "./said-of-line.ts";

test("a reading that nothing is as large as is taken for none", () => {
  expect(said("line-damaged", "  read near 0.8743 87432")).toEqual([
    "`87432` can't be what was read, since nothing is 100 m (3937 in) across: look at its decimal point and its unit.",
  ]);
  expect(said("line-damaged", "  read 100000 mm")).toEqual([]);
  expect(said("line-damaged", "  read 100001 mm")).not.toEqual([]);
});

describe("a comma in a number", () => {
  const offered = (fact: string): readonly string[] =>
    check(`job j\n  units mm\npart s\n  ${fact}\n`)
      .filter((finding) => finding.code === "number-comma")
      .flatMap(({ fixes }) =>
        fixes.map((fix) => `${fix.edits[0]?.text ?? ""}${fix.safe ? "!" : ""}`),
      );
  test.each([
    ["0,874", ["0.874!"]],
    ["1,25", ["1.25!"]],
    ["1,250", ["1.250", "1250"]],
    ["1,250.5", ["1250.5!"]],
    ["1.250,5", ["1250.5!"]],
    ["1,250,000", ["1250000!"]],
    ["1.2,3.4", []],
  ])("%s", (number, fixes) => {
    expect(offered(`joint gasket ${number} mm`)).toEqual(fixes);
  });

  test("in a list or a reading it may part two", () => {
    const fixes = (head: string, fact: string): readonly string[] =>
      check(`job j\n  units mm\npart s\n${head}\n  ${fact}\n`)
        .filter((finding) => finding.code === "number-comma")
        .flatMap((finding) =>
          finding.fixes.map((fix) => fix.edits[0]?.text ?? ""),
        );
    expect(fixes("stack e", "shims 0.1,0.2 mm")).toEqual(["0.1, 0.2"]);
    expect(fixes("stack e", "shims 1,2 mm")).toEqual(["1.2", "1, 2"]);
    expect(fixes("journal a on s", "read 22.208,22.207")).toEqual([
      "22.208 22.207",
    ]);
    expect(fixes("bush a in b", "od 22.207,22.208")).toEqual([
      "22.207 to 22.208",
    ]);
  });
});

describe("two figures where one belongs", () => {
  const told = (fact: string): readonly string[] =>
    check(`job j\n  units mm\npart s\njournal a on s\n  ${fact}\n`)
      .filter(({ level }) => level === "error")
      .flatMap(({ code, message, fixes }) => [
        code,
        message,
        ...fixes.map((fix) => fix.edits[0]?.text ?? ""),
      ]);

  test.each([
    ["30 x 2", "30 # x 2"],
    ["30x2", "30 # x2"],
    ["30 x2", "30 # x2"],
    ["30 mm X20", "30 mm # X20"],
    ["30x200", "30 # x200"],
    ["30mmx2", "30mm # x2"],
    ["30x45deg", "30 # x45deg"],
    ["30\u{D7}2", "30 # \u{D7}2"],
  ])("%s is told alike, however close they stand", (written, mended) => {
    expect(told(`length ${written}`)).toEqual([
      "line-damaged",
      `\`${written}\` is two figures, one by the other or one so many times, and here stands one: write that, and the rest behind a \`#\`, as in \`${mended}\`.`,
      mended,
    ]);
  });

  test("a word that ends alike is a unit that is none", () => {
    expect(told("length 30 max2")[0]).toBe("unit-wrong");
  });

  test("where a class can stand, x6 is one", () => {
    expect(told("limits 25 x6")).toEqual([]);
  });
});

describe("letters at the end of a number, which read as a unit", () => {
  const found = (fact: string): readonly string[] =>
    check(`job j\n  units mm\n  ${fact}\n`).flatMap(({ code, fixes }) => [
      code,
      ...fixes.map(
        (fix) => `${fix.edits[0]?.text ?? ""}${fix.safe ? "!" : ""}`,
      ),
    ]);
  test.each([
    ["temperature 2O", ["line-damaged", "20"]],
    ["temperature 2OC", ["line-damaged", "20C"]],
    ["temperature 2lC", ["line-damaged", "21C"]],
    ["warn stock-thin at 0.O", ["line-damaged", "0.0"]],
    ["warn stock-thin at 0.1OOmm", ["line-damaged", "0.100mm"]],
  ])("%s", (fact, said) => {
    expect(found(fact)).toEqual(said);
  });

  test("what is a unit, or stands apart, is looked at as a unit", () => {
    expect(found("temperature 2 O")[0]).toBe("unit-wrong");
    expect(found("temperature 2Ohm")[0]).toBe("unit-wrong");
    expect(codes(check(`job j\n  units inch\n${FIT}  load 18lbf\n`))).toEqual(
      [],
    );
  });

  test("the other end of the range is told of no unit that it lacks, and the mended line is whole", () => {
    const text = `job j\n  units inch\npart shaft\njournal a on shaft\n  limits 0.874O to 0.8745\n`;
    const [only, ...rest] = check(text);
    expect(rest).toEqual([]);
    const whole = withFix(text, only?.fixes[0]);
    expect(whole).toContain("limits 0.8740 to 0.8745\n");
    expect(codes(check(whole))).toEqual([]);
  });
});

// Hover on days, counts, members, signatures; and that no word of the sample records is passed over in silence. Weekdays are those of
// Debian's `date`, and the number size is that of the shipped table, which its own tests hold against a published one.
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { readLines } from "../../grammar/lines.ts";
import { tokenize } from "../../grammar/tokens.ts";
import { hoverAt } from "../../server/ide/hover.ts";
import { createFiles } from "../../server/model/project.ts";
import { JOB } from "./caret.ts";
import { said } from "./hover-said.ts";

const STACK = `job j
  units inch
part case
  material aluminium-356-t6
stack float
  plus width 6.000 to 6.002 of case
  minus ring 0.2500
  read width 6.0011 6.0012
`;

describe("marks", () => {
  test.each([
    [
      "a day",
      JOB.replace("2026-11-04", "2026-1|1-04"),
      "**2026-11-04**: Wednesday 4 November 2026",
    ],
    [
      "a leap day",
      "step a\n  done 2000-0|2-29\n",
      "**2000-02-29**: Tuesday 29 February 2000",
    ],
    ["a day that does not exist", "step a\n  done 2026-0|2-30\n", ""],
    [
      "who has signed, as a name",
      JOB.replace("by AK", "by A|K"),
      "Signed by **AK**",
    ],
    [
      "who has signed, in quotes",
      JOB.replace('"Bench 2"', '"Be|nch 2"'),
      'Signed by **"Bench 2"**',
    ],
    [
      "where a figure comes from",
      JOB.replace("yard drawing", "yard dra|wing"),
      "Where the figure comes from.",
    ],
    ["flutes", "reamer r\n  flutes |6 straight\n", "**6** flutes"],
    ["one dowel", "part a\n  dowels |1\n", "**1** dowel"],
    [
      "a grade",
      "oil o\n  grade ISO VG 4|6\n",
      "**ISO VG 46**: 46 cSt at 40 °C, a tenth more or less (ISO 3448)",
    ],
    [
      "a number size",
      "shop s\n  units inch\nreamer r\n  size no |7\n",
      "**no 7**: 0.2010 in",
    ],
    [
      "a threshold without a unit",
      "job j\n  units inch\n  warn pilot-slack at 0.00|2\n",
      "0.002 in (the file's unit) = 0.051 mm",
    ],
    [
      "a member of one value",
      STACK.replace("minus ring", "minus ri|ng"),
      "**ring**: `0.2500 in` measured; it takes from the float",
    ],
    [
      "a member as it was read",
      STACK.replace("read width", "read wid|th"),
      "**width** of part case: `6.0011 to 6.0012 in` measured; it adds to the float",
    ],
  ])("%s", (_, marked, expected) => {
    expect(said(marked)).toBe(expected);
  });

  test("a due date says how far it is from the job", () => {
    // 2 November 2026 to 14 May 2027: 28 + 31 + 31 + 28 + 31 + 30 + 14 days
    const crib = "gauge mic-1\n  due 2027-0|5-14\n";
    expect(said(`job j\n  opened 2026-11-02\n${crib}`)).toBe(
      "**2027-05-14**: Friday 14 May 2027, 193 days after the job was opened (2026-11-02)",
    );
    expect(said(`job j\n  opened 2027-05-15\n${crib}`)).toMatch(
      /, 1 day before the job was opened/,
    );
    expect(said(crib)).toBe("**2027-05-14**: Friday 14 May 2027");
  });
});

test("every word, number, name and mark of the samples has something to say, but for free texts", () => {
  const root = "samples/shop";
  const files = createFiles({ root });
  const paths = readdirSync(root).map((name) => `${root}/${name}`);
  for (const path of paths)
    files.setFile(path, readLines(readFileSync(path, "utf8")));
  const silent: string[] = [];
  let words = 0;
  for (const path of paths) {
    const open = files.open(path);
    if (open === undefined) throw new Error(`${path} is not there`);
    open.file.lines.lines.forEach((line, at) => {
      for (const { kind, start, end } of tokenize(line.body)) {
        if (kind === "blank") continue;
        words++;
        const character = line.indent + start + (start + 1 < end ? 1 : 0);
        if (hoverAt(open, { line: at, character }) === undefined)
          silent.push(`${line.word} ${line.body.slice(start, end)}`);
      }
    });
  }
  expect(words).toBeGreaterThan(1000);
  expect(silent.filter((each) => !/^(?:title|do|note) "/u.test(each))).toEqual(
    [],
  );
});

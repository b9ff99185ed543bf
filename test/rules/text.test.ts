// What the pages of text findings don't show: one fault gives one message, and what a file as a whole lacks.
import { describe, expect, test } from "vitest";
import { readLines } from "../../grammar/lines.ts";
import { createProject } from "../../server/rules/check.ts";
import { check, codes, FIT, withFix } from "./check-job.ts";

describe("one fault, one message", () => {
  test("an unknown opener keeps its name under every kind, and its facts to itself", () => {
    const text = `job j\n  units inch\n${FIT.replace("journal front on", "jurnal front on")}`;
    expect(codes(check(text))).toEqual(["5 word-unknown"]);
  });

  test("a damaged opening line keeps its name", () => {
    const text = `job j\n  units inch\n${FIT.replace("journal front on", "journal front in")}`;
    expect(codes(check(text))).toEqual(["5 line-damaged"]);
  });

  test.each([
    ["journal on front on shaft", "line-damaged"],
    ["journal", "line-damaged"],
    ["journal 3rd on shaft", "line-damaged"],
    ["journal journal front on shaft", "line-damaged"],
    ["1journal front on shaft", "word-unknown"],
    ["the journal front on shaft", "word-unknown"],
    ["front on shaft", "word-unknown"],
  ])("an opening line that has lost its name: %s", (head, code) => {
    const text = `job j\n  units inch\n${FIT.replace("journal front on shaft", head)}`;
    expect(codes(check(text))).toEqual([`5 ${code}`]);
  });

  test("what is silent follows an edit of that line", () => {
    const project = createProject({ root: "" });
    const found = (head: string): readonly string[] => {
      project.setFile(
        "job.thou",
        readLines(
          `job j\n  units inch\n${FIT.replace("journal front on shaft", head)}`,
        ),
      );
      return codes(project.check("job.thou").findings);
    };
    expect(found("the journal front on shaft")).toEqual(["5 word-unknown"]);
    expect(found("the journal rear on shaft")).toEqual([
      "5 word-unknown",
      "9 name-unknown",
    ]);
    expect(found("the journal front on shaft")).toEqual(["5 word-unknown"]);
  });

  test("names inside a missing file are not reported one by one", () => {
    const text = `job j\n  units inch\n  use "crib.thou"\npart shaft\njournal a on shaft\n  read 0.5 with mic-1\n  repeat 0.5 with mic-2\n`;
    expect(codes(check(text, { "crib.thou": null }))).toEqual([
      "3 file-missing",
    ]);
    expect(codes(check(text, { "crib.thou": "shop s\n" }))).toEqual([
      "6 name-unknown",
      "7 name-unknown",
    ]);
  });

  test("a job that can't be read is not also missing, nor are its units", () => {
    expect(codes(check(`jbo j\n  units inch\n${FIT}`))).toEqual([
      "1 word-unknown",
    ]);
    expect(codes(check(`job j\n  units inhc\n${FIT}`))).toEqual([
      "2 line-damaged",
    ]);
    expect(codes(check(`job j\n  eunits inch\n${FIT}`))).toEqual([
      "2 word-unknown",
    ]);
    expect(codes(check(`job j\n${FIT}`))).toEqual(["1 fact-missing"]);
  });

  test("what stands under a line that lost its indent waits for that line", () => {
    const text = `job j\n  units inch\npart case\nmaterial aluminium-356-t6\n  split across\n  bolts 18 lbf-ft\n`;
    const [only, ...rest] = check(text);
    expect(only?.code).toBe("word-misplaced");
    expect(rest).toEqual([]);
    expect(codes(check(withFix(text, only?.fixes[0])))).toEqual([]);
  });

  test("in a crib a material in column 1 is an entry", () => {
    const text = `shop s\n  units inch\nmaterial bronze-of-the-yard\n  expansion 18 um/m-K\n`;
    expect(codes(check(text))).toEqual([]);
  });
});

describe("files", () => {
  test("an empty file and one of comments want nothing", () => {
    expect(check("")).toEqual([]);
    expect(check("\n# nothing yet\n\n")).toEqual([]);
  });

  test("a file without a job is given one, with the line ends that it has", () => {
    const text = "# notes\r\npart shaft\r\n";
    const [finding] = check(text);
    expect(finding?.code).toBe("fact-missing");
    const whole = withFix(text, finding?.fixes[0]);
    expect(whole).toContain("units inch\r\n");
    expect(codes(check(whole))).toEqual([]);
  });

  test.each([
    ["\\n, where it has none", "part shaft", "\n"],
    ["\\n", "part shaft\n", "\n"],
    ["\\r\\n", "part shaft\r\npart case", "\r\n"],
    ["\\r", "# notes\rpart shaft", "\r"],
  ])("what a file is begun with ends its lines in %s", (_, text, eol) => {
    const texts = check(text)[0]?.fixes.flatMap(({ edits }) =>
      edits.map((edit) => edit.text),
    );
    expect(texts).toHaveLength(4);
    expect(texts?.[0]).toBe(`job job${eol}  units inch${eol}${eol}`);
    for (const each of texts ?? [])
      expect(each.split(/\r\n|\n|\r/u).slice(2)).toEqual(["", ""]);
  });

  test("units are written under the job, and the lengths count again", () => {
    const text = `job j # mine\n${FIT}`;
    const [finding] = check(text);
    expect(finding?.fixes.map((fix) => fix.title)).toEqual([
      "Write `units inch`",
      "Write `units mm`",
    ]);
    expect(codes(check(withFix(text, finding?.fixes[0])))).toEqual([]);
  });

  test("lengths with units need no word of the job's", () => {
    const text = "job j\npart shaft\njournal a on shaft\n  length 25 mm\n";
    expect(codes(check(text))).toEqual([]);
  });

  test("two cribs that share names are told where the second is used", () => {
    const crib = (name: string): string =>
      `shop ${name}\n  units inch\ngauge mic-1\n  resolution 0.0001\n`;
    const findings = check(`job j\n  units inch\n  use "a.thou", "b.thou"\n`, {
      "a.thou": crib("a"),
      "b.thou": crib("b"),
    });
    expect(codes(findings)).toEqual(["3 name-twice"]);
    expect(findings[0]?.message).toContain("gauge mic-1");
    expect(findings[0]?.place.start).toBe(16);
  });

  test("a step of a job is no double of the crib's, whether it follows a route or not", () => {
    const crib =
      'shop s\n  units inch\nstep mark\n  do "Mark it"\nroute r\n  step mark\n';
    const job = (follow: string): string =>
      `job j\n  units inch\n  use "crib.thou"\n${follow}step mark\n  done 2026-11-05\n`;
    expect(codes(check(job("  follow r\n"), { "crib.thou": crib }))).toEqual(
      [],
    );
    expect(codes(check(job(""), { "crib.thou": crib }))).toEqual([]);
    expect(
      codes(check(`${job("")}step mark\n`, { "crib.thou": crib })),
    ).toEqual(["6 name-twice"]);
  });
});

// What the pages of text findings don't show: one fault gives one message, what is offered for words, dates, numbers and units, and that
// no text, however broken, brings a fix that makes it worse.
import { distance } from "fastest-levenshtein";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readLines } from "../../grammar/lines.ts";
import type { Finding, Fix } from "../../server/model/result.ts";
import { createProject } from "../../server/rules/check.ts";
import { UNITS, unitOf } from "../../server/core/quantity/units.ts";
import { readNumber } from "../../server/core/quantity/exact.ts";
import { readDate } from "../../server/rules/text/date-wrong.ts";
import { nearest } from "../../server/rules/text/near.ts";
import { unitMeant, usualUnits } from "../../server/rules/text/unit-names.ts";
import { allPages } from "./pages.ts";

/** Findings of a job; other files by name, `null` for one that is missing. */
function check(
  job: string,
  others: Readonly<Record<string, string | null>> = {},
): readonly Finding[] {
  const project = createProject({ root: "" });
  project.setFile("job.thou", readLines(job));
  for (const [name, text] of Object.entries(others))
    project.setFile(name, text === null ? null : readLines(text));
  return project.check("job.thou").findings;
}

function codes(findings: readonly Finding[]): readonly string[] {
  return findings
    .filter((finding) => finding.level !== "hint")
    .map((finding) => `${finding.place.line + 1} ${finding.code}`);
}

function withFix(text: string, fix: Fix | undefined): string {
  const lines = text.split("\n");
  const edits = [...(fix?.edits ?? [])].sort(
    (a, b) => b.place.line - a.place.line || b.place.start - a.place.start,
  );
  for (const { place, text: written } of edits) {
    const line = lines[place.line] ?? "";
    lines[place.line] =
      line.slice(0, place.start) + written + line.slice(place.end);
  }
  return lines.join("\n");
}

const FIT = `part shaft
part case
journal front on shaft
  limits 0.8740 to 0.8745
bore front in case
  limits 0.8755 to 0.8760
fit front of journal front in bore front
  want 0.0008 to 0.0024
`;

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

describe("a material by a part of its name", () => {
  test.each([
    ["cast-iron", "`iron-grey`, `iron-grey-class-40` or `iron-ductile`"],
    ["aluminum-a380", "`aluminium-a380`"],
    ["aluminum", "`aluminium-356-t6`, `aluminium-319` or `aluminium-a380`"],
    ["phosphor-bronze", "`bronze-c932`, `bronze-c936` or `bronze-c937`"],
  ])("%s", (name, meant) => {
    const [finding] = check(`job j\npart case\n  material ${name}\n`);
    expect(finding?.message).toContain(`did you mean ${meant}?`);
  });

  test("what has no part in common is offered where it is listed", () => {
    const [finding] = check("job j\npart case\n  material granite\n");
    expect(finding?.message).toContain("thou explain material");
    expect(finding?.fixes ?? []).toEqual([]);
  });
});

describe("did you mean", () => {
  const words = ["limits", "length", "read", "repeat", "runout", "taper"];
  test.each([
    ["limts", ["limits"]],
    ["raed", ["read"]],
    ["Limits", ["limits"]],
    ["lim", ["limits"]],
    ["run-out", ["runout"]],
    ["zzzzz", []],
    ["x", []],
  ])("%s", (word, near) => {
    expect(nearest(word, words)).toEqual(near);
  });

  test("gives none farther than another, by the distance of Levenshtein", () => {
    fc.assert(
      fc.property(
        fc.stringMatching(/^[a-z]{2,9}$/),
        fc.array(fc.stringMatching(/^[a-z]{2,9}$/), { minLength: 1 }),
        (word, candidates) => {
          const found = nearest(word, candidates);
          const least = Math.min(
            ...candidates.map((each) => distance(word, each)),
          );
          // what is nearest by plain distance is among them, unless a swap or a beginning is nearer
          for (const each of found)
            expect(
              distance(word, each) <= Math.max(least, 1) ||
                distance(word, each) === 2 ||
                each.startsWith(word),
            ).toBe(true);
          expect(found.length).toBeLessThanOrEqual(3);
        },
      ),
    );
  });

  test("words legal here come before those of other places", () => {
    const [first, second] = check(
      `job j\n  units inch\npart shaft\njournal a on shaft\n  bolts 18 lbf-ft\n  finnish 16 uin Ra\n`,
    );
    expect(first?.message).toBe(
      "`bolts` is a fact of part and line, not of journal: it stands under a part or a line.",
    );
    expect(second?.message).toBe(
      "A journal has no fact `finnish`: did you mean `finish`?",
    );
  });

  test("the shop's other words are known", () => {
    const [finding] = check(
      `job j\n  units inch\nbushing front in hole front\n`,
    );
    expect(finding?.message).toContain("did you mean `bush`?");
    expect(finding?.fixes.every((fix) => fix.safe)).toBe(false);
  });
});

describe("dates", () => {
  test.each([
    ["2026/11/02", ["2026-11-02"], true],
    ["2026-1-5", ["2026-01-05"], true],
    ["20261102", ["2026-11-02"], true],
    ["2 Nov 2026", ["2026-11-02"], true],
    ["November 2nd, 2026", ["2026-11-02"], true],
    ["2026-11-02T10:30", ["2026-11-02"], true],
    ["13/2/2026", ["2026-02-13"], true],
    ["2.11.2026", ["2026-11-02"], false],
    ["11/2/2026", ["2026-02-11", "2026-11-02"], false],
    ["2026-13-05", ["2026-05-13"], false],
    ["2026-13-45", [], false],
    ["2026-02-30", [], false],
    ["2025-02-29", [], false],
    ["today", [], false],
  ])("%s", (written, dates, sure) => {
    const read = readDate(written);
    expect(read.dates).toEqual(dates);
    if (0 < dates.length) expect(read.sure).toBe(sure);
  });

  test("every day that there is is found in each way of writing it, and no day that there is not is offered", () => {
    const day = fc.date({
      min: new Date("1990-01-01"),
      max: new Date("2099-12-31"),
      noInvalidDate: true,
    });
    fc.assert(
      fc.property(day, (date) => {
        const iso = date.toISOString().slice(0, 10);
        const [year = "", month = "", last = ""] = iso.split("-");
        const [m, d] = [Number(month), Number(last)];
        const inWords = new Intl.DateTimeFormat("en-GB", {
          dateStyle: "long",
          timeZone: "UTC",
        }).format(date);
        for (const written of [
          `${year}/${m}/${d}`,
          `${d}.${m}.${year}`,
          `${d}/${m}/${year}`,
          `${m}/${d}/${year}`,
          inWords,
        ]) {
          const { dates } = readDate(written);
          expect(dates).toContain(iso);
          for (const each of dates)
            expect(new Date(each).toISOString().slice(0, 10)).toBe(each);
        }
      }),
    );
  });
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

describe("units", () => {
  test("every unit in other capitals is told from the rest, or asked about", () => {
    for (const { symbol, dimension } of UNITS) {
      const { words } = unitMeant(symbol.toUpperCase(), [dimension]);
      if (unitOf(symbol.toUpperCase())?.dimension !== dimension)
        expect(words, symbol).toContain(symbol);
    }
  });

  test("units that are offered can be written", () => {
    for (const { dimension } of UNITS) {
      for (const system of ["inch", "mm"]) {
        const units = usualUnits([dimension], system);
        expect(units.length).toBeGreaterThan(0);
        for (const unit of units)
          expect(unitOf(unit)?.dimension).toBe(dimension);
      }
    }
  });

  test.each([
    ["mils", "length", ["thou", "mm"], false],
    ["inches", "length", ["in"], true],
    ["microns", "length", ["um"], true],
    ["ft-lb", "torque", ["lbf-ft"], true],
    ["Nm", "torque", ["N-m"], true],
    ["RPM", "rotation", ["rpm"], true],
    ["rev/min", "rotation", ["rpm"], true],
    ["degF", "temperature", ["F"], true],
    ["sfm", "speed", ["ft/min"], true],
    ["mpa", "pressure", ["MPa"], true],
    ["kg", "force", [], false],
  ] as const)("%s as %s", (word, dimension, words, same) => {
    const meant = unitMeant(word, [dimension]);
    expect(meant.words).toEqual(words);
    expect(meant.same).toBe(same);
  });

  test("the job's own unit comes first, and one unit alone is sure", () => {
    const fixes = (units: string, fact: string): readonly string[] =>
      check(`job j\n  units ${units}\n  ${fact}\n`).flatMap((finding) =>
        finding.fixes.map((fix) => `${fix.title}${fix.safe ? "!" : ""}`),
      );
    expect(fixes("inch", "temperature 68")[0]).toBe("Write `68 F`");
    expect(fixes("mm", "temperature 20")[0]).toBe("Write `20 C`");
    const [runs] = check(`job j\n  units inch\n${FIT}  runs 240\n`).filter(
      (finding) => finding.code === "unit-missing",
    );
    expect(runs?.fixes.map((fix) => [fix.edits[0]?.text, fix.safe])).toEqual([
      [" rpm", true],
    ]);
  });

  test("the deviation that has no unit is named, not the one that has", () => {
    const [finding] = check(
      "job j\n  units inch\npart a\njournal a on a\n  limits 25 mm +0.021 mm -0.007\n",
    );
    expect(finding?.code).toBe("unit-missing");
    expect(finding?.message).toContain("-0.007");
    expect(finding?.message).not.toContain("+0.021");
  });

  test("a record that says no unit of its own is offered none but the one that is written", () => {
    const [finding] = check(
      "job j\nstack e\n  plus a 1 mm\n  shims 0.1 mm, 0.2\n",
    );
    expect(finding?.fixes.map(({ title }) => title)).toEqual([
      "Write `0.2 mm`",
    ]);
  });

  test("each bare number of a list gets its unit", () => {
    const text =
      "job j\n  units inch\nstack e\n  plus a 1\n  shims 0.1 mm, 0.2, 0.5\n";
    const [finding] = check(text);
    expect(finding?.code).toBe("unit-missing");
    const whole = withFix(text, finding?.fixes[0]);
    expect(whole).toContain("shims 0.1 mm, 0.2 mm, 0.5 mm");
    expect(codes(check(whole))).toEqual([]);
  });
});

describe("any text", () => {
  const lines = allPages()
    .flatMap((page) => page.samples)
    .flatMap((sample) => sample.files)
    .flatMap((file) => file.text.split("\n"))
    .filter((line) => line.trim() !== "");
  const pieces = [
    ...["0", "1", "8", ".", ",", "-", "+", "/", " ", '"', "#", "(", "'"],
    ...["to", "in", "at", "mm", "H7", "\u{B0}", "\u{2013}", "  ", "7/8"],
  ];
  const broken = fc
    .tuple(
      fc.constantFrom(...lines),
      fc.nat(40),
      fc.nat(4),
      fc.constantFrom("", ...pieces),
    )
    .map(
      ([line, at, cut, piece]) =>
        line.slice(0, at) + piece + line.slice(at + cut),
    );
  const file = fc
    .array(broken, { minLength: 1, maxLength: 12 })
    .map((all) => `job j\n  units inch\n${all.join("\n")}\n`);

  test("is checked without a throw; findings and fixes lie inside it, and a sure fix never adds an error of its line", () => {
    fc.assert(
      fc.property(file, (text) => {
        const all = text.split("\n");
        const found = check(text);
        for (const { place, message, fixes } of found) {
          const line = all[place.line] ?? "";
          expect(place.start).toBeLessThanOrEqual(place.end);
          expect(place.end).toBeLessThanOrEqual(line.length);
          expect(message).not.toMatch(/undefined|NaN|\[object/);
          for (const { edits } of fixes) {
            for (const edit of edits) {
              const target = all[edit.place.line] ?? "";
              expect(edit.place.start).toBeLessThanOrEqual(edit.place.end);
              expect(edit.place.end).toBeLessThanOrEqual(target.length);
            }
          }
        }
        for (const finding of found) {
          for (const fix of finding.fixes.filter((each) => each.safe)) {
            const after = check(withFix(text, fix));
            const at = (each: Finding): boolean =>
              each.place.line === finding.place.line &&
              each.code === finding.code;
            expect(
              after.filter(at).length,
              `${fix.title} in ${all[finding.place.line] ?? ""}`,
            ).toBeLessThan(found.filter(at).length);
          }
        }
      }),
      { numRuns: 150 },
    );
  });

  test("after any run of edits the findings are those of the text read afresh", () => {
    const heads = [
      ...["journal front on shaft", "jurnal front on shaft", "journal on"],
      ...["the journal front on shaft", "journal journal front on shaft"],
      ...["journal rear on shaft", "  journal front on shaft", "part front"],
      ...["front on shaft", "bore front in case", "step front", "# nothing"],
    ];
    const withHeads = fc
      .array(fc.constantFrom(...heads), { minLength: 2, maxLength: 4 })
      .map(
        (some) =>
          `job j\n  units inch\n${some.join("\n")}\n${FIT}step s\n  checks front\n  after front\n`,
      );
    const versions = fc.array(withHeads, { minLength: 2, maxLength: 5 });
    fc.assert(
      fc.property(versions, (texts) => {
        const project = createProject({ root: "" });
        for (const text of texts) {
          project.setFile("job.thou", readLines(text));
          expect(project.check("job.thou").findings).toEqual(check(text));
        }
      }),
    );
  });

  test("what is offered for a number is a number", () => {
    fc.assert(
      fc.property(
        fc.stringMatching(/^\d{1,4}(\.\d{1,3})?,\d{1,4}(\.\d{1,3})?$/),
        (number) => {
          const found = check(
            `job j\n  units mm\npart s\n  joint gasket ${number} mm\n`,
          ).filter((finding) => finding.code === "number-comma");
          expect(found.length).toBe(1);
          for (const fix of found[0]?.fixes ?? [])
            expect(readNumber(fix.edits[0]?.text ?? "")).toBeDefined();
        },
      ),
    );
  });
});

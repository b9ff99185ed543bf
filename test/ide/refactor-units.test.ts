// A file in the other unit: exact against the definition of the inch (25.4 mm, international yard and pound agreement, 1959), there and
// back to the same text, and with the same results.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readLines } from "../../grammar/lines.ts";
import { inOther, otherUnits } from "../../server/ide/refactor-units.ts";
import type { Result } from "../../server/model/result.ts";
import { createProject } from "../../server/rules/check.ts";
import { samples } from "../samples.ts";
import { opened } from "./opened.ts";
import { rewritten } from "./rewritten.ts";

const other = (text: string): string | undefined => {
  const found = otherUnits(opened(text));
  return found === undefined ? undefined : rewritten(text, found);
};
const JOB = "job j\n  units inch\npart p\njournal a on p\n";
const oneFact = (fact: string, units = "inch"): string | undefined =>
  other(`${JOB.replace("inch", units)}  ${fact}\n`)
    ?.split("\n")
    .at(-2)
    ?.trim();

describe("digits", () => {
  test.each([
    ["1", "25.4"],
    ["0.8740", "22.19960"],
    ["-0.0005", "-0.01270"],
    ["+0.0002", "+0.00508"],
    ["0", "0"],
    ["0.0000", "0.0000"],
  ])("%s in is %s mm, and back", (inch, mm) => {
    expect(inOther(inch, "inch")).toBe(mm);
    expect(inOther(mm, "mm")).toBe(inch);
  });

  test.each(["7/8", "1 3/16", "1e-3", ".875", "00.5", "5."])(
    "%s keeps its unit",
    (text) => {
      expect(inOther(text, "inch")).toBeUndefined();
    },
  );

  test.each(["25", "25.00", "12.7", "24.980"])(
    "%s mm has no inch digits that lead back to it",
    (text) => {
      expect(inOther(text, "mm")).toBeUndefined();
    },
  );

  test("any inch decimal comes back as it was, and is 25.4 times as many", () => {
    fc.assert(
      fc.property(
        fc.bigInt({ min: 0n, max: 10n ** 7n }),
        fc.integer({ min: 0, max: 8 }),
        fc.constantFrom("", "+", "-", "\u{2212}"),
        (digits, decimals, sign) => {
          const all = digits.toString().padStart(decimals + 1, "0");
          const text =
            sign +
            (decimals === 0
              ? all
              : `${all.slice(0, -decimals)}.${all.slice(-decimals)}`);
          const mm = inOther(text, "inch") ?? "";
          expect(inOther(mm, "mm")).toBe(text);
          expect(Number(mm.replace("\u{2212}", "-"))).toBeCloseTo(
            25.4 * Number(text.replace("\u{2212}", "-")),
            6,
          );
        },
      ),
    );
  });
});

describe("facts", () => {
  test.each([
    ["limits 0.8740 to 0.8745", "limits 22.19960 to 22.21230"],
    ["limits 0.8745 +0 -0.0005", "limits 22.21230 +0 -0.01270"],
    ["limits 0.8742 +/- 0.0003", "limits 22.20468 +/- 0.00762"],
    ["limits 1.1875 +/- 3 tenths", "limits 30.16250 +/- 3 tenths"],
    ["limits 7/8 to 1 3/16", "limits 7/8 to 1 3/16 in"],
    ["limits 7/8 +0 -0.0005", "limits 7/8 in +0 in -0.0005 in"],
    ["limits 0.875 RC4", "limits 0.875 in RC4"],
    ["limits 25 mm h7", "limits 25 h7"],
    ["limits 1 to 2 thou", "limits 1 to 2 thou"],
    [
      "read near 0.87432 0.87428 with mic at 68 F",
      "read near 0.87432 0.87428 in with mic at 68 F",
    ],
    ["length 1.250  # over all", "length 31.7500  # over all"],
    ["finish 16 uin Ra", "finish 16 uin Ra"],
    ['note "0.8740 as bought"', 'note "0.8740 as bought"'],
  ])("%s becomes %s", (inch, mm) => {
    expect(oneFact(inch.replace(" with mic", ""))).toBe(
      mm.replace(" with mic", ""),
    );
  });

  test.each([
    ["limits 24.980 to 25.010", "limits 24.980 to 25.010 mm"],
    ["limits 25 +0.021 -0", "limits 25 mm +0.021 mm -0 mm"],
    ["limits 25 mm +0.021 -0", "limits 25 mm +0.021 mm -0 mm"],
    ["limits 25.4 h7", "limits 25.4 mm h7"],
    ["round 0", "round 0"],
  ])("in mm, %s becomes %s", (mm, inch) => {
    expect(oneFact(mm, "mm")).toBe(inch);
  });

  test("what keeps its unit is counted, and layout and comments stay", () => {
    const text = `# bench 2\njob j\n\tunits   inch  # as drawn\n\npart p\njournal a on p\n    limits   0.8740  to 0.8745\n  length 7/8\n  read 0.8742 0.8743\n`;
    const found = otherUnits(opened(text));
    expect(found?.title).toBe(
      "Write this file's lengths in mm; 2 lines keep their in",
    );
    expect(found === undefined ? "" : rewritten(text, found)).toBe(
      text
        .replace("inch ", "mm ")
        .replace("0.8740  to 0.8745", "22.19960  to 22.21230")
        .replace("7/8", "7/8 in")
        .replace("0.8742 0.8743", "0.8742 0.8743 in"),
    );
  });

  test("not offered while a line can't be read, or where the unit is not said", () => {
    expect(other(`${JOB}  limits 0.8740 0.8745\n`)).toBeUndefined();
    expect(other(`${JOB}  limts 0.8740\n`)).toBeUndefined();
    expect(other(JOB.replace("  units inch\n", ""))).toBeUndefined();
    expect(other(`${JOB}  length 1.0\n  length 2.0\n`)).toBeUndefined();
  });

  test("thresholds and bounds: a bare one is a length only where the finding takes one", () => {
    const text = (warn: string): string =>
      `job j\n  units inch\n  warn ${warn}\npart p\n`;
    expect(other(text("stock-thin at 0.003"))).toContain("at 0.0762");
    expect(other(text("press-yields at 1.5"))).toContain("at 1.5");
    expect(other(text("out-of-round at 40 %"))).toContain("at 40 %");
    const allowing = (code: string, up: string): string =>
      `${JOB}concession c\n  allows ${code} on journal a\n  up to ${up}\n`;
    expect(other(allowing("taper", "0.0005"))).toContain("up to 0.01270");
    expect(other(allowing("gauge-coarse", "3"))).toContain("up to 3\n");
    // it may be a thickness or a ratio, and only the finding could tell
    expect(other(allowing("film-thin", "3"))).toBeUndefined();
  });
});

/** A result without what is said in words. */
function bare({
  entry,
  kind,
  of,
  case: number,
  low,
  nominal,
  high,
  unit,
  status,
  verdict,
}: Result): object {
  return {
    entry,
    kind,
    of,
    case: number,
    low,
    nominal,
    high,
    unit,
    status,
    verdict,
  };
}

const shop = samples.filter(({ path }) => path.startsWith("shop/"));

/** The results of one sample, with another text in its place. */
function resultsOf(path: string, text: string): readonly object[] {
  const project = createProject({ root: "" });
  for (const each of shop)
    project.setFile(
      each.path,
      readLines(each.path === path ? text : each.text),
    );
  return project.check(path).results.map(bare);
}

describe.each(shop.map(({ path, text }) => [path, text] as const))(
  "%s",
  (path, text) => {
    const project = createProject({ root: "" });
    for (const each of shop) project.setFile(each.path, readLines(each.text));
    const open = project.open(path);
    const there = open === undefined ? undefined : otherUnits(open);
    const moved = there === undefined ? "" : rewritten(text, there);

    test("the other way round has the same results", () => {
      expect(there).toBeDefined();
      expect(moved).not.toBe(text);
      expect(resultsOf(path, moved)).toEqual(resultsOf(path, text));
    });

    test("and leads back to the same text", () => {
      const back = createProject({ root: "" });
      for (const each of shop)
        back.setFile(
          each.path,
          readLines(each.path === path ? moved : each.text),
        );
      const again = back.open(path);
      const found = again === undefined ? undefined : otherUnits(again);
      expect(found === undefined ? "" : rewritten(moved, found)).toBe(
        // a unit that says what the file says already does not come back
        text.replace(/^( {2}shims .*) mm$/mu, "$1"),
      );
    });
  },
);

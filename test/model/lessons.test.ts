// What a record makes of the lessons that it uses. Figures are worked out here by hand; Student's t is the two decimals of JCGM 100:2008,
// table G.2 at 95 % (8 degrees of freedom 2.31, 6 degrees 2.45), the values that test/checks holds the quantile against.
import { describe, expect, test } from "vitest";
import { hoverAt } from "../../server/ide/hover.ts";
import type { FileCheck, Result } from "../../server/model/result.ts";
import { createProject } from "../../server/rules/check.ts";
import { readLines } from "../../grammar/lines.ts";
import { atCaret } from "../ide/caret.ts";

const THOU = 25.4e-6;

const crib = (oversize = ""): string => `shop harbour
  units inch
gauge mic-1
  kind micrometer
  resolution 0.00001
gauge mic-2
  kind micrometer
  resolution 0.00001
reamer r-8755
  size 0.8755
${oversize}`;

const JOB = `job winch-3
  units inch
  use "crib.thou"
  use "learned.thou"
part layshaft
  material steel-4140
part case
  material aluminium-356-t6
journal front on layshaft
  limits 0.8740 to 0.8745
  read 0.87430 0.87432 with mic-2
hole front in case
  boss 1.75
  read 1.00000 1.00002
bush front in hole front
  material bronze-c932
  construction solid
  lot K3
  od 1.0010 to 1.0011
  id 0.8715 to 0.8720
bore front in bush front
press front of bush front in hole front
fit front of journal front in bore front
  want 0.0008 to 0.0020
line layshaft
  bore front from 0 to 1.25
  ream with r-8755
`;

const OVERSIZE = `lesson r-8755-in-bronze
  reamer r-8755 in bronze-c932
  oversize mean 0.31 thou spread 0.08 thou from 9
`;
const closes = (about: string, says: string): string =>
  `lesson bush-${String(about.length)}-${String(says.length)}\n  bush bronze-c932 ${about}\n  closes ${says}\n`;

function check(lessons: string, oversize = "", job = JOB): FileCheck {
  const project = createProject({ root: "" });
  project.setFile("crib.thou", readLines(crib(oversize)));
  project.setFile(
    "learned.thou",
    readLines(`shop learned\n  units inch\n  use "crib.thou"\n${lessons}`),
  );
  project.setFile("job.thou", readLines(job));
  return project.check("job.thou");
}

function of({ results }: FileCheck, entry: string, kind: string): Result {
  const found = results.find(
    (each) => each.entry === entry && each.kind === kind,
  );
  if (found === undefined) throw new Error(`no ${kind} of ${entry}`);
  return found;
}

const cutIn = (found: FileCheck): Result =>
  of(found, "line layshaft", "cut-size");
const workingOf = (result: Result): string =>
  result.working.map((each) => each.with).join("\n");

/** What hover says in the job where some words of it have the caret, of these lessons. */
function hoverOver(
  words: string,
  marked: string,
  lessons: string,
  oversize = "",
): string {
  const { open, position } = atCaret(JOB.replace(words, marked), {
    "crib.thou": crib(oversize),
    "learned.thou": `shop learned\n  units inch\n  use "crib.thou"\n${lessons}`,
  });
  return hoverAt(open, position)?.markdown ?? "";
}

/** The number lies between these. */
function within(value: number | null, low: number, high: number): void {
  expect(value).not.toBeNull();
  expect(value).toBeGreaterThan(low);
  expect(value).toBeLessThan(high);
}

describe("a learned oversize", () => {
  const next = 0.08 * THOU * Math.sqrt(1 + 1 / 9);

  test("counts where none is written: its mean, and the next cut at 95 %", () => {
    const cut = cutIn(check(OVERSIZE));
    const middle = 0.8755 * 0.0254 + 0.31 * THOU;
    expect(Math.abs((cut.nominal ?? 0) - middle)).toBeLessThan(1e-12);
    within((cut.high ?? 0) - middle, 2.305 * next, 2.315 * next);
    within(middle - (cut.low ?? 0), 2.305 * next, 2.315 * next);
    expect(cut.status).toBe("predicted");
    expect(workingOf(cut)).toContain(
      "oversize as learned: mean 0.00031 in, spread 0.00008 in, of 9 cuts (lesson r-8755-in-bronze)",
    );
    // the chance has the spread of the cut
    const chance = (lessons: string): Result =>
      of(check(lessons), "line layshaft", "chance");
    expect(chance(OVERSIZE).status).toBe("predicted");
    expect(chance("").nominal).not.toBe(chance(OVERSIZE).nominal);
    expect(workingOf(of(check(OVERSIZE), "bore front", "size"))).toContain(
      "oversize as learned",
    );
  });

  test("is said over the reamer, and where it does not count", () => {
    const said = (lessons: string, oversize = ""): string =>
      hoverOver(
        "ream with r-8755",
        "ream with |r-8755",
        lessons,
        oversize,
      ).replaceAll("\\", "");
    const words =
      "in bronze-c932: mean 0.00031 in, spread 0.00008 in, of 9 cuts (lesson r-8755-in-bronze)";
    expect(said(OVERSIZE)).toContain("Learned oversize:");
    expect(said(OVERSIZE)).toContain(words);
    expect(said(OVERSIZE)).not.toContain("not used");
    expect(said(OVERSIZE, "  oversize +0.0001 to +0.0002\n")).toContain(
      `${words}; not used, since the crib writes an oversize`,
    );
    const single = OVERSIZE.replace("spread 0.08 thou from 9", "from 1");
    expect(said(single)).toContain(
      "in bronze-c932: 0.00031 in, of a single cut, which has no spread (lesson r-8755-in-bronze); not used",
    );
    expect(said("")).not.toContain("Learned");
  });

  test.each([
    "  oversize bronze-c932 +0.0001 to +0.0002\n",
    "  oversize +0.0001 to +0.0002\n",
  ])("gives way to one that is written: %s", (written) => {
    const cut = cutIn(check(OVERSIZE, written));
    expect(cut).toEqual(cutIn(check("", written)));
    expect(workingOf(cut)).not.toContain("learned");
  });

  test("of another material is none", () => {
    const other = OVERSIZE.replace("in bronze-c932", "in steel-4140");
    expect(cutIn(check(other))).toEqual(cutIn(check("")));
    expect(workingOf(cutIn(check(other)))).toContain("taken as zero");
  });

  test("of the later last day counts where there are two, whichever stands first", () => {
    const older = `${OVERSIZE}  between 2019-03-04 and 2020-01-01\n`;
    const newer = `${OVERSIZE.replace("0.31", "0.52").replace("in-bronze", "again")}  between 2019-03-04 and 2026-11-05\n`;
    for (const both of [older + newer, newer + older])
      expect(
        Math.abs(
          (cutIn(check(both)).nominal ?? 0) - (0.8755 * 0.0254 + 0.52 * THOU),
        ),
      ).toBeLessThan(1e-12);
  });

  test("of one last day, or of none, the first counts; of any day one before one of none", () => {
    const [one, other] = [
      OVERSIZE,
      OVERSIZE.replace("0.31", "0.52").replace("in-bronze", "again"),
    ];
    const counts = (lessons: string): number =>
      Math.round(
        ((cutIn(check(lessons)).nominal ?? 0) - 0.8755 * 0.0254) / (THOU / 100),
      );
    const day = "  between 2019-03-04 and 2020-01-01\n";
    expect([counts(one + other), counts(other + one)]).toEqual([31, 52]);
    expect(counts(one + day + other + day)).toBe(31);
    expect(counts(other + day + one + day)).toBe(52);
    expect(counts(one + other + day)).toBe(52);
    expect(counts(other + day + one)).toBe(52);
  });

  test("of a single cut has no spread: it does not count, and that is said", () => {
    const cut = cutIn(
      check(OVERSIZE.replace("spread 0.08 thou from 9", "from 1")),
    );
    expect(cut.nominal).toBe(cutIn(check("")).nominal);
    expect(workingOf(cut)).toContain(
      "lesson r-8755-in-bronze is of a single cut, which has no spread",
    );
  });

  test.each([
    ["its figures", "spread 0.08 thou from 9", "spread from nine"],
    ["what it is about", "reamer r-8755 in", "reamer r-8755 of"],
    ["its name", "lesson r-8755-in-bronze", "lesson 8755"],
  ])(
    "whose line can't be read says nothing, and nothing is taken for it: %s",
    (_, good, bad) => {
      const found = check(OVERSIZE.replace(good, bad));
      expect(of(found, "bore front", "size").status).toBe("unknown");
      expect(
        found.results.filter(
          ({ kind, of: tool, status }) =>
            kind === "cut-size" &&
            tool === "reamer r-8755" &&
            status !== "unknown",
        ),
      ).toEqual([]);
      // a written one does not wait for it
      const written = "  oversize +0.0001 to +0.0002\n";
      expect(cutIn(check(OVERSIZE.replace(good, bad), written))).toEqual(
        cutIn(check("", written)),
      );
    },
  );
});

describe("a learned closure", () => {
  const KIND = "solid 1.001 in by 0.872 in";
  const pressed = (lessons: string, job?: string): Result =>
    of(check(lessons, "", job), "press front", "bore-after-press");
  const closure = (lessons: string): Result =>
    of(check(lessons), "press front", "bore-closure");
  const lame = closure("");

  test("is Lamé's times the mean, and its range reaches to the next bush at 95 %", () => {
    const lessons = closes(KIND, "0.93 spread 0.04 from 7");
    const found = closure(lessons);
    const reach = 0.04 * Math.sqrt(1 + 1 / 7);
    expect((found.nominal ?? 0) / (lame.nominal ?? 1)).toBeCloseTo(0.93, 9);
    within(
      (found.high ?? 0) / (lame.high ?? 1),
      0.93 + 2.445 * reach,
      0.93 + 2.455 * reach,
    );
    within(
      (found.low ?? 0) / (lame.low ?? 1),
      0.93 - 2.455 * reach,
      0.93 - 2.445 * reach,
    );
    const bore = pressed(lessons);
    expect(bore.status).toBe("predicted");
    // the bore is id less closure, at its worst ends
    expect(
      Math.abs((bore.high ?? 0) - (0.872 * 0.0254 - (found.low ?? 0))),
    ).toBeLessThan(1e-12);
    expect(
      Math.abs((bore.low ?? 0) - (0.8715 * 0.0254 - (found.high ?? 0))),
    ).toBeLessThan(1e-12);
    expect(bore.working.map(({ source }) => source)).toContain(
      "lesson bush-26-23",
    );
    expect(workingOf(bore)).toContain("mean 0.930, spread 0.040, of 7 bushes");
  });

  test("of the bush's own lot goes before that of all lots; of another lot it is none", () => {
    const all = closes(KIND, "0.93 spread 0.04 from 7");
    const own = closes(`${KIND} lot K3`, "1.21 spread 0.04 from 7");
    const other = closes(`${KIND} lot K4`, "1.21 spread 0.04 from 7");
    expect((closure(all + own).nominal ?? 0) / (lame.nominal ?? 1)).toBeCloseTo(
      1.21,
      9,
    );
    expect(closure(all + other)).toEqual(closure(all));
    expect(closure(other)).toEqual(lame);
  });

  test("of the nearest size counts, whichever stands first; of one more than a hundredth off none does", () => {
    const near = closes(
      "solid 1.002 in by 0.872 in",
      "0.93 spread 0.04 from 7",
    );
    const far = closes(
      "solid 1.006 in by 0.872 in",
      "1.21 spread 0.04 from 17",
    );
    const inner = closes(
      "solid 1.001 in by 0.866 in",
      "1.21 spread 0.04 from 117",
    );
    for (const lessons of [near + far, far + near, inner + near, near + inner])
      expect((closure(lessons).nominal ?? 0) / (lame.nominal ?? 1)).toBeCloseTo(
        0.93,
        9,
      );
    expect((closure(far).nominal ?? 0) / (lame.nominal ?? 1)).toBeCloseTo(
      1.21,
      9,
    );
    // 1.0098 in is 1.020 in less a hundredth of it: that is one size, and what is further off is none
    const larger = JOB.replace("1.0010 to 1.0011", "1.0097 to 1.0099").replace(
      "1.00000 1.00002",
      "1.00890 1.00892",
    );
    const learnedOf = (od: string): boolean =>
      of(
        check(
          closes(`solid ${od} in by 0.872 in`, "1.21 spread 0.04 from 7"),
          "",
          larger,
        ),
        "press front",
        "bore-closure",
      ).working.some(({ formula }) => formula.startsWith("C as learned"));
    expect(["1.0200", "1.0201"].map(learnedOf)).toEqual([true, false]);
    // 1.00105 in is the middle of what the bush may be: 1.012 in is 1.1 % over
    expect(
      closure(closes("solid 1.012 in by 0.872 in", "1.21 spread 0.04 from 7")),
    ).toEqual(lame);
  });

  test("is predicted however well this bush and its hole were read", () => {
    const read = JOB.replace(
      "od 1.0010 to 1.0011",
      "read od 1.00105 1.00104",
    ).replace("id 0.8715 to 0.8720", "read id 0.8718 0.8719");
    const statusOf = (lessons: string): string =>
      of(check(lessons, "", read), "press front", "bore-closure").status;
    expect(statusOf("")).toBe("measured");
    expect(statusOf(closes(KIND, "0.93 spread 0.04 from 7"))).toBe("predicted");
  });

  test.each([
    ["another construction", "wrapped 1.001 in by 0.872 in"],
    ["another outside diameter", "solid 1.020 in by 0.872 in"],
    ["another bore", "solid 1.001 in by 0.860 in"],
  ])("of %s is none", (_, kind) => {
    expect(closure(closes(kind, "0.93 spread 0.04 from 7"))).toEqual(lame);
  });

  test.each([
    ["0.93 from 1", "a single bush, which has no spread"],
    ["0.93 spread 0.4 from 2", "the next may close by any share"],
  ])("%s is too little to use, and that is said", (says, words) => {
    const found = closure(closes(KIND, says));
    expect([found.low, found.nominal, found.high]).toEqual([
      lame.low,
      lame.nominal,
      lame.high,
    ]);
    expect(workingOf(found)).toContain(words);
  });

  test("whose line can't be read leaves the closure unsaid", () => {
    const found = closure(closes(KIND, "0.93 spread of 7"));
    expect(found.status).toBe("unknown");
  });

  test("is none in a blind hole, where Lamé gives a range and no one closure", () => {
    const blind = JOB.replace(
      "  boss 1.75\n",
      "  boss 1.75\n  depth 1.35 blind\n",
    );
    const lessons = closes(KIND, "0.93 spread 0.04 from 7");
    expect(pressed("", blind).status).toBe("predicted");
    expect(pressed(lessons, blind)).toEqual(pressed("", blind));
    expect(pressed(lessons)).not.toEqual(pressed(""));
  });
});

describe("a learned difference of two gauges", () => {
  const READS = `lesson mic-2-against-mic-1
  gauge mic-2 against mic-1
  reads +0.05 thou spread 0.04 thou from 12
  between 2019-03-04 and 2026-11-05
`;
  const hover = (lessons: string, gauge: string): string =>
    hoverOver("with mic-2", `with |${gauge}`, lessons);

  test("changes no result", () => {
    expect(check(READS)).toEqual(check(""));
  });

  test("is said over either gauge, with what can be said of it", () => {
    for (const gauge of ["mic-1", "mic-2"]) {
      const said = hover(READS, gauge).replaceAll("\\", "");
      expect(said).toContain("Learned, and not added to any reading:");
      expect(said).toContain(
        "gauge mic-2 reads over gauge mic-1: mean 0.00005 in, spread 0.00004 in, of 12 days, 2019-03-04 to 2026-11-05; difference",
      );
    }
    expect(
      hover(READS.replace("+0.05", "+0.01"), "mic-2").replaceAll("\\", ""),
    ).toContain("within what chance explains (99 %)");
    expect(hover("", "mic-2")).not.toContain("Learned");
  });
});

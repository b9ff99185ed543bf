// What stands about what a step works on is told wherever the step is called next, and blocks nothing.
import { describe, expect, test } from "vitest";
import { readLines } from "../../grammar/lines.ts";
import { createNextSteps, waitsOf } from "../../server/cli/next-steps.ts";
import { benchOf } from "../../server/ide/bench.ts";
import { headlineText } from "../../server/ide/headline.ts";
import { entryHover } from "../../server/ide/hover-entry.ts";
import { overviewOf } from "../../server/ide/overview.ts";
import { resultsOf } from "../../server/model/results.ts";
import { createProject } from "../../server/rules/check.ts";
import { jobSheet } from "../../server/sheet/job-sheet.ts";
import { toldIn } from "./found.ts";

const JOB = `job winch-3
  units inch
part layshaft
  material steel-1045
part case
  material iron-grey
journal front on layshaft
  limits 0.8740 to 0.8745
  read 0.8742 0.8742
hole front in case
  limits 1.0000 to 1.0005
  boss 1.6
  depth 1.2 blind
  read 1.0002 at 68 F
bush front in hole front
  material bronze-c932
  od 1.0006 to 1.0009
  id 0.8758 to 0.8760
  length 1.0
press front of bush front in hole front
  want 0.0002 to 0.0009
bore front in bush front
fit front of journal front in bore front
  want 0.0002 to 0.0020
step press-in
  presses press front
  do "Press the bush home"
`;
const VENTED = JOB.replace("blind", "blind\n  vented");

function openOf(
  text: string,
): NonNullable<ReturnType<ReturnType<typeof createProject>["open"]>> {
  const project = createProject({ root: "" });
  project.setFile("job.thou", readLines(text));
  const open = project.open("job.thou");
  if (open === undefined) throw new Error("the record is not there");
  return open;
}

const nextOf = (text: string): readonly string[] => toldIn(text, "step-open");
const said = (text: string): string | undefined => nextOf(text)[0];

describe("the hint of the next step", () => {
  test("is bare where nothing stands", () => {
    expect(nextOf(VENTED)).toEqual([
      "26:6-14 hint step-open of step press-in: Next is press-in: Press the bush home.",
    ]);
  });

  test("counts what stands about a press, its bush and its hole, and leads to each", () => {
    expect(nextOf(JOB)).toEqual([
      "25:6-14 hint step-open of step press-in: Next is press-in: Press the bush home. Look first: 1 warning stands about what it works on.",
      "  see 10:6-11: vent-missing at hole front",
    ]);
    const heavy = JOB.replace("1.0006 to 1.0009", "1.0055 to 1.0060");
    const [message, ...see] = nextOf(
      heavy.replace("want 0.0002 to 0.0009\n", "\n"),
    );
    expect(message).toMatch(
      /Look first: \d errors? and \d warnings stand about what it works on\.$/,
    );
    expect(see[0]).toContain("press-heavy at press front");
    expect(see.join("\n")).toContain("press-yields at press front");
    expect(see.at(-1)).toContain("vent-missing at hole front");
  });

  test("counts a line that can't be read", () => {
    expect(nextOf(VENTED.replace("length 1.0", "length one")).slice(1)).toEqual(
      ["  see 16:6-11: line-damaged at bush front"],
    );
  });

  test("counts the fit in the bush that is pressed, and that a step checks", () => {
    const tight = VENTED.replace(
      "want 0.0002 to 0.0020",
      "want 0.0015 to 0.0020",
    ).replace(
      "bore front in bush front",
      "bore front in bush front\n  read 0.8750 0.8750",
    );
    expect(nextOf(tight)[1]).toContain("fit-tight at fit front");
    const checks = tight.replace("presses press front", "checks fit front");
    expect(nextOf(checks)[1]).toContain("fit-tight at fit front");
    expect(
      nextOf(tight.replace("presses press front", "checks hole front")),
    ).toHaveLength(1);
  });

  test("does not count what is signed for, nor what stands elsewhere", () => {
    const heavy = VENTED.replace(
      "1.0006 to 1.0009",
      "1.0020 to 1.0021",
    ).replace("  want 0.0002 to 0.0009\n", "");
    const signed = `${heavy}concession heavy
  allows press-heavy on press front
  up to 0.0020
  why "the bush is in hand" by AK on 2026-11-02
`;
    expect(nextOf(heavy).join()).toContain("press-heavy at press front");
    expect(nextOf(signed).join()).not.toContain("press-heavy");
    const other = `${VENTED}journal rear on layshaft\n  limits 0.8740 to 0.8745\n  read 0.8760\n`;
    expect(said(other)).toBe(said(VENTED));
  });
});

describe("where a step is called next", () => {
  const open = openOf(JOB);
  const clear = openOf(VENTED);
  const words = "1 warning stands about what it works on";
  const plainly = (html: string): string =>
    html.replace(/<[^>]*>/g, " ").replace(/\s+/g, " ");
  const next = ({ sections }: ReturnType<typeof benchOf>): string =>
    plainly(sections.find(({ key }) => key === "next")?.html ?? "");

  test("the bench view says that nothing is in its way only where nothing stands", () => {
    expect(next(benchOf(clear, 0, 800, String))).toContain(
      ": nothing in the record is in its way",
    );
    const view = benchOf(open, 0, 800, String);
    expect(next(view)).not.toContain("in its way");
    expect(next(view)).toContain("step press-in : look first");
    expect(next(view)).toContain(
      `${words}: hole front : warning vent-missing. hole front is blind and not vented`,
    );
    expect(view.places["hole front"]?.line).toBe(9);
  });

  test("the words beside it lead there", () => {
    const at = (each: typeof open): string =>
      headlineText(
        each,
        each.file.entries.findIndex(({ ref }) => ref === "step press-in"),
      );
    expect(at(clear)).toBe("next");
    expect(at(open)).toBe("next, but look first: vent-missing at hole front");
  });

  test("the hovers of the step and of the job", () => {
    const step = entryHover(open.shop, "step press-in", true);
    expect(step).toContain(`Look first: ${words}:`);
    expect(step).toContain("is blind and not vented");
    expect(entryHover(clear.shop, "step press-in", true)).not.toContain(
      "Look first",
    );
    expect(entryHover(open.shop, "job winch-3", true)).toContain(
      `Next: step press-in (look first: ${words}: vent-missing at hole front).`,
    );
  });

  test("the overview, with a line for each", () => {
    const seen = overviewOf(open, {}, String);
    expect(seen.next).toBe(
      `Next: step press-in, but look first: ${words}: vent-missing at hole front.`,
    );
    const [item] = seen.groups[0]?.children ?? [];
    expect(item).toMatchObject({
      state: "look-first",
      detail: `look first: ${words}`,
      children: [{ label: "vent-missing at hole front", place: { line: 9 } }],
    });
    expect(overviewOf(clear, {}, String).next).toBe("Next: step press-in.");
  });

  test("the job sheet", () => {
    const sheet = (text: string): string => {
      const project = createProject({ root: "" });
      project.setFile("job.thou", readLines(text));
      const each = openOf(text);
      return plainly(
        jobSheet(each, project.check("job.thou"), {
          date: "2026-11-27",
          version: "1",
          nameOf: String,
          versioned: { state: "none", because: "" },
        }),
      );
    };
    expect(
      sheet(JOB).split(`${words}: vent-missing at hole front`),
    ).toHaveLength(3);
    expect(sheet(VENTED)).not.toContain("stands about");
  });

  test("the end of a check in the terminal", () => {
    const end = (text: string): readonly string[] => {
      const project = createProject({ root: "" });
      project.setFile("job.thou", readLines(text));
      const steps = createNextSteps();
      const waits = waitsOf({
        path: "/job.thou",
        name: "job.thou",
        lineTexts: {},
        isEmpty: false,
        check: project.check("job.thou"),
      });
      if (waits !== undefined) steps.add(waits);
      return steps.lines({
        summary: {
          files: 1,
          errors: 0,
          warnings: 0,
          information: 0,
          hints: 0,
          accepted: 0,
        },
        problems: [],
        usedWithErrors: [],
      });
    };
    expect(end(JOB)).toEqual([
      "Next: step press-in, but look first at vent-missing at hole front.",
    ]);
    expect(end(VENTED)).toEqual(["Next: step press-in."]);
  });

  test("and the step is not held back by it", () => {
    const [ready] = resultsOf(open.shop, "step press-in");
    expect(ready).toMatchObject({ kind: "ready", text: "next", nominal: 1 });
  });
});

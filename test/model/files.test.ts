// Which files a record rests on, what is read of a file that is too long, and what can be done about a use that leads back.
import { describe, expect, test } from "vitest";
import { editLines, readLines } from "../../grammar/lines.ts";
import { MOST_LINES, readFile } from "../../server/model/file-entries.ts";
import { createFiles } from "../../server/model/project.ts";
import { createProject } from "../../server/rules/check.ts";

describe("what a record rests on", () => {
  const files = createFiles({ root: "/" });
  files.setFile(
    "/job.thou",
    readLines('job a\n  units mm\n  use "crib.thou"\n  use "gone.thou"\n'),
  );
  files.setFile(
    "/crib.thou",
    readLines('shop c\n  units mm\n  use "tools.thou"\n'),
  );
  files.setFile("/tools.thou", readLines("shop t\n  units mm\n"));
  files.setFile("/gone.thou", null);

  test("every file that it uses, however far, nearest first, and not itself; whether it is there", () => {
    expect(files.restsOn("/job.thou")).toEqual([
      { path: "/crib.thou", isText: true },
      { path: "/gone.thou", isText: false },
      { path: "/tools.thou", isText: true },
    ]);
    expect(files.restsOn("/tools.thou")).toEqual([]);
  });

  test("only what was not asked for yet is missing, not what was asked for and is not there", () => {
    expect(files.missingUses("/job.thou")).toEqual([]);
    files.dropFile("/gone.thou");
    expect(files.missingUses("/job.thou")).toEqual(["/gone.thou"]);
    files.setFile("/gone.thou", null);
  });
});

describe("what a record no longer has is no longer known", () => {
  const HEAD = "job a\n  units mm\n";
  /** Sizes of all journals after each of these states, given one after the other to one project, and to a new one. */
  function sizes(
    ...states: readonly Readonly<Record<string, string>>[]
  ): readonly (readonly string[])[] {
    const said = (project: ReturnType<typeof createProject>): string[] =>
      project
        .check("/job.thou")
        .results.map(({ entry, kind, text }) => `${entry} ${kind} ${text}`);
    const kept = createProject({ root: "/" });
    return states.map((files) => {
      const fresh = createProject({ root: "/" });
      for (const [path, text] of Object.entries(files))
        for (const project of [kept, fresh])
          project.setFile(path, readLines(text));
      const [now, afresh] = [said(kept), said(fresh)];
      expect(now).toEqual(afresh);
      return now;
    });
  }
  const CRIB = { "/c.thou": "shop c\n  units mm\npart shaft\n" };
  const journal = (name: string, more = ""): string =>
    `journal ${name} on shaft\n  limits 25.00 to 25.02\n${more}`;

  test("where its last file is no longer used", () => {
    const more = { "/d.thou": `shop d\n  units mm\n${journal("a")}` };
    const job = (use: string): string =>
      `${HEAD}  use "c.thou"${use}\nbore b in shaft\n  limits 25.05 to 25.06\nfit a of journal a in bore b\n`;
    const [before, after] = sizes(
      { "/job.thou": job(', "d.thou"'), ...CRIB, ...more },
      { "/job.thou": job(""), ...CRIB, ...more },
    );
    expect(before).toContain("fit a clearance 0.030 to 0.060 mm");
    expect(before).not.toEqual(after);
  });

  test("where the last entry of its kind is taken out, or two change places", () => {
    const job = (...journals: readonly string[]): string =>
      `${HEAD}  use "c.thou"\n${journals.join("")}bore b in shaft\n  limits 25.05 to 25.06\nline l\n  bore b from 0 to 10\n`;
    const fit = (name: string): string =>
      `fit ${name} of journal ${name} in bore b\n  want 0.01 to 0.10\n`;
    const [a, b] = [journal("a", fit("a")), journal("b", fit("b"))];
    const states = [[a, b], [a], [], [b], [b, a], [a, b]].map((all) => ({
      "/job.thou": job(...all),
      ...CRIB,
    }));
    const [both, one, none] = sizes(...states);
    expect(both).toContain("fit b clearance 0.030 to 0.060 mm");
    expect(one).not.toEqual(both);
    expect(none?.join("\n")).not.toContain("fit");
  });
});

describe("a file that is too long", () => {
  const HEAD = "job a\n  units mm\n";
  const PART = "part x\n  dowels 2\n";
  /** The job and a part, which are four lines, and comments up to so many lines, the last of them in a part of its own. */
  const ofLines = (count: number): string =>
    `${HEAD}${PART}${"#\n".repeat(count - 6)}part y\n  dowels 4`;
  const read = (count: number) =>
    readFile("/job.thou", readLines(ofLines(count)), undefined);

  test("is read whole at the most lines that are read", () => {
    const { entries, isWhole, openings } = read(MOST_LINES);
    expect(isWhole).toBe(true);
    expect(entries.map(({ ref }) => ref)).toEqual([
      "job a",
      "part x",
      "part y",
    ]);
    expect(openings).toEqual(entries.slice(0, 1));
    expect(entries.flatMap(({ problems }) => problems)).toEqual([]);
  });

  test("of one more the entry that goes past them is not read, and says so with its count", () => {
    const { entries, isWhole, openings, context } = read(MOST_LINES + 1);
    expect(isWhole).toBe(false);
    expect(context).toMatchObject({ system: "mm", isJob: true });
    expect(entries.slice(0, -1).map(({ ref }) => ref)).toEqual([
      "job a",
      "part x",
    ]);
    expect(openings).toEqual(entries.slice(0, 1));
    const last = entries.at(-1);
    expect(last?.facts).toEqual([]);
    expect(last?.problems.map(({ data }) => data.message)).toEqual([
      "This file has 50,001 lines, and a file is read up to its line 50,000: nothing is known from this entry on. Take what stands from here into files of its own; a `use` under the job brings them together.",
    ]);
  });

  test("has its last entry read that ends at the last line that is read", () => {
    const lines = (comments: number) =>
      readLines(
        `${HEAD}part x\n${"#\n".repeat(comments)}  dowels 2\npart y\n  dowels 4\n`,
      );
    const refs = (comments: number): readonly string[] =>
      readFile("/job.thou", lines(comments), undefined)
        .entries.filter(({ problems }) => problems.length === 0)
        .map(({ ref }) => ref);
    expect(refs(MOST_LINES - 4)).toEqual(["job a", "part x"]);
    expect(refs(MOST_LINES - 3)).toEqual(["job a"]);
  });

  test("takes its unit from an opening that is read, not from a job further on", () => {
    const { context } = readFile(
      "/crib.thou",
      readLines(
        `shop s\n  units inch\npart x\n${"#\n".repeat(MOST_LINES)}${HEAD}`,
      ),
      undefined,
    );
    expect(context).toMatchObject({ system: "inch", isJob: false });
  });

  test("is read as from nothing once it is short enough again", () => {
    const long = read(MOST_LINES + 1);
    const lines = editLines(long.lines, {
      start: { line: 4, character: 0 },
      end: { line: 5, character: 0 },
      text: "",
    });
    const now = readFile("/job.thou", lines, long);
    const afresh = readFile("/job.thou", lines, undefined);
    expect(now.isWhole).toBe(true);
    expect(now.entries.map(({ ref, problems }) => [ref, problems])).toEqual(
      afresh.entries.map(({ ref, problems }) => [ref, problems]),
    );
  });
});

test("a use that leads back is made a comment only where its line uses nothing else", () => {
  const fixes = (use: string): readonly (readonly [string, boolean])[] => {
    const project = createProject({ root: "/" });
    project.setFile("/job.thou", readLines(`job a\n  units mm\n  ${use}\n`));
    project.setFile("/crib.thou", readLines("shop c\n  units mm\n"));
    const loops = project
      .check("/job.thou")
      .findings.filter(({ code }) => code === "use-loop");
    expect(loops).toHaveLength(1);
    return loops.flatMap((loop) =>
      loop.fixes.map(({ title, safe }) => [title, safe] as const),
    );
  };
  expect(fixes('use "job.thou"')).toEqual([["Make this line a comment", true]]);
  expect(fixes('use "job.thou", "crib.thou"')).toEqual([]);
});

// Whatever is done to a record: nothing throws, what can't be read is said where it stands, what doesn't rest on it stays, and a file
// that follows edits says what a file read afresh says.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  editLines,
  readLines,
  type Edit,
  type FileLines,
} from "../../grammar/lines.ts";
import type { FileCheck } from "../../server/model/result.ts";
import { createProject, type Project } from "../../server/rules/check.ts";
import { samples, soundSamples } from "../samples.ts";
import {
  findingsBy,
  joinedTo,
  opened,
  restsOn,
  resultsBy,
  textOf,
  touched,
  webOf,
  wholeLine,
  type Web,
} from "./damage.ts";

function shopOf(all: typeof samples): Project {
  const project = createProject({ root: "/" });
  for (const { path, text } of all)
    project.setFile(`/${path}`, readLines(text));
  return project;
}

/** A sample that lies open, to be changed and put back. */
interface Bench {
  readonly project: Project;
  readonly path: string;
  readonly lines: FileLines;
  readonly before: FileCheck;
  readonly web: Web;
}

function benchOf(path: string): Bench {
  const project = shopOf(path.startsWith("broken/") ? samples : soundSamples);
  const full = `/${path}`;
  const before = project.check(full);
  const open = opened(project, full);
  return {
    project,
    path: full,
    lines: open.file.lines,
    before,
    web: webOf(open),
  };
}

/** Changes the sample, looks at all that must hold, and puts it back. */
function change(bench: Bench, edit: Edit): void {
  const { project, path, lines } = bench;
  project.setFile(path, editLines(lines, edit));
  const after = project.check(path);
  damageIsSaid(bench, after);
  restStays(bench, after);
  project.setFile(path, lines);
}

/** A fact without a value has a finding on its line: nothing is lost in silence. */
function damageIsSaid({ project, path }: Bench, after: FileCheck): void {
  const { file } = opened(project, path);
  const said = new Set(after.findings.map(({ place }) => place.line));
  file.entries.forEach((entry, index) => {
    const start = file.lines.starts[index] ?? 0;
    for (const { value, span, word } of entry.facts) {
      if (value !== undefined) continue;
      const here = entry.problems.filter(
        (problem) => problem.span.line === span.line,
      );
      // a file that has lost its unit says so once, and of two equal facts the second is marked
      const isSaidElsewhere =
        here.length === 0
          ? entry.problems.some(({ code }) => code === "fact-twice")
          : here.every(({ code }) => code === "units-unwritten");
      expect([word, isSaidElsewhere || said.has(start + span.line)]).toEqual([
        word,
        true,
      ]);
    }
  });
}

/** Results and findings of what rests on nothing that changed are what they were. */
function restStays(bench: Bench, after: FileCheck): void {
  const web = webOf(opened(bench.project, bench.path));
  const changes = touched(bench.web, web);
  // under a word that is not known there may be anything, and the opening line is everybody's
  const isEverybodys = (ref: string): boolean =>
    ref === "" || ref.startsWith("job ") || ref.startsWith("shop ");
  if ([...changes].some(isEverybodys)) return;
  const meets = (refs: ReadonlySet<string> | undefined): boolean =>
    refs === undefined || [...changes].some((ref) => refs.has(ref));

  const [old, fresh] = [resultsBy(bench.before), resultsBy(after)];
  for (const [ref, results] of old) {
    if (meets(restsOn(bench.web, ref)) || meets(restsOn(web, ref))) continue;
    const now = fresh.get(ref);
    const other = [...results].filter(
      ([kind, said]) => now?.get(kind) !== said,
    );
    expect([ref, ...other.map(([kind]) => kind)]).toEqual([ref]);
    expect(now?.size).toBe(results.size);
  }
  const said = findingsBy(bench.before);
  for (const finding of findingsBy(after)) {
    if (said.has(finding)) continue;
    const ref = finding.slice(0, finding.indexOf(":"));
    // what is next, and who has signed for what, may follow from anything
    if (/^(?:step|concession|job) /.test(ref)) continue;
    const near = new Set([...joinedTo(bench.web, ref), ...joinedTo(web, ref)]);
    expect([finding, [...changes], meets(near)]).toEqual([
      finding,
      [...changes],
      true,
    ]);
  }
}

function sameAsAfresh(
  project: Project,
  path: string,
  all: typeof samples = soundSamples,
): void {
  const text = textOf(opened(project, path).file.lines);
  const afresh = shopOf(all);
  afresh.setFile(path, readLines(text));
  expect(project.check(path)).toEqual(afresh.check(path));
}

/** The same damage at every run; with any other it was run some thousand times. */
const SEED = 20261102;

const WINCH = "shop/winch.thou";
const winch = benchOf(WINCH);
const lineCount = winch.lines.lines.length;

const PIECES = [
  ...["", "x", "9", " ", "\n", ",", ".", '"', "#", "-", "/", "in", "mm", "to"],
  ...["\u{0}", "\u{D800}", "\u{FEFF}", "\r", "  read near 0.87", "part x\n"],
];

describe("the winch", () => {
  test("without any one of its lines", () => {
    for (let line = 0; line < lineCount - 1; line++)
      change(winch, wholeLine(line));
  });

  test("with any characters put in, taken out or changed", () => {
    const edit = fc.record({
      line: fc.nat(lineCount - 1),
      character: fc.nat(40),
      length: fc.nat(3),
      text: fc.constantFrom(...PIECES),
    });
    fc.assert(
      fc.property(edit, ({ line, character, length, text }) => {
        change(winch, {
          start: { line, character },
          end: { line, character: character + length },
          text,
        });
      }),
      { seed: SEED, numRuns: 100 },
    );
  });

  test("after runs of edits it says what it says read afresh", () => {
    const edit = fc.record({
      line: fc.nat(lineCount - 1),
      character: fc.nat(30),
      lines: fc.nat(2),
      length: fc.nat(5),
      text: fc.constantFrom(
        ...PIECES,
        "journal rear on layshaft\n",
        "  read 0.8743 0.8742 with mic-1\n",
        "step ream\n",
        "bore front in case\n",
        "use",
        "units mm",
      ),
    });
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 6 }), (edits) => {
        const { project, path, lines: first } = winch;
        let now = first;
        for (const { line, character, lines, length, text } of edits) {
          now = editLines(now, {
            start: { line, character },
            end: { line: line + lines, character: character + length },
            text,
          });
          project.setFile(path, now);
          project.check(path);
        }
        sameAsAfresh(project, path);
        project.setFile(path, first);
      }),
      { seed: SEED, numRuns: 15 },
    );
    // put back, it says what it said at first
    expect(winch.project.check(winch.path)).toEqual(winch.before);
  });
});

describe("any sample", () => {
  const benches = samples
    .filter(({ path }) => path !== WINCH)
    .map(({ path }) => benchOf(path));

  test("without one of its lines", () => {
    for (const bench of benches) {
      const last = bench.lines.lines.length - 1;
      // each line of the small ones, and as many of the large
      const by = Math.max(1, Math.floor(last / 10));
      for (let line = 0; line < last; line += by)
        change(bench, wholeLine(line));
    }
  });

  test("up to any place", () => {
    fc.assert(
      fc.property(
        fc.nat(benches.length - 1),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (index, share) => {
          const bench = benches[index];
          if (bench === undefined) return;
          const text = textOf(bench.lines);
          const prefix = text.slice(0, Math.floor(share * text.length));
          bench.project.setFile(bench.path, readLines(prefix));
          const after = bench.project.check(bench.path);
          damageIsSaid(bench, after);
          bench.project.setFile(bench.path, bench.lines);
        },
      ),
      { seed: SEED, numRuns: 80 },
    );
  });

  test("with any characters put in, taken out or changed, and as it would be afresh", () => {
    fc.assert(
      fc.property(
        fc.nat(benches.length - 1),
        fc.nat(200),
        fc.nat(30),
        fc.nat(3),
        fc.constantFrom(...PIECES),
        (index, at, character, length, text) => {
          const bench = benches[index];
          if (bench === undefined) return;
          const line = at % bench.lines.lines.length;
          const edit = {
            start: { line, character },
            end: { line, character: character + length },
            text,
          };
          change(bench, edit);
          bench.project.setFile(bench.path, editLines(bench.lines, edit));
          if (bench.path.startsWith("/broken/"))
            sameAsAfresh(bench.project, bench.path, samples);
          bench.project.setFile(bench.path, bench.lines);
        },
      ),
      { seed: SEED, numRuns: 80 },
    );
  });

  test("is checked without a throw, and twice alike", () => {
    for (const { project, path, before } of benches)
      expect(project.check(path)).toEqual(before);
  });
});

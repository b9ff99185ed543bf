// Whatever is done to a record: nothing throws, what can't be read is said where it stands, what doesn't depend on it stays, and a file
// that follows edits says what a file read afresh says.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { editLines, readLines, type Edit } from "../../grammar/lines.ts";
import type { FileCheck } from "../../server/model/result.ts";
import type { OpenFile } from "../../server/model/project.ts";
import { createProject, type Project } from "../../server/rules/check.ts";
import { samples, soundSamples } from "../samples.ts";

function shopWith(path: string, text: string): Project {
  const project = createProject({ root: "/" });
  for (const sample of soundSamples)
    project.setFile(`/${sample.path}`, readLines(sample.text));
  project.setFile(path, readLines(text));
  return project;
}

function opened(project: Project, path: string): OpenFile {
  const open = project.open(path);
  if (open === undefined) throw new Error(`${path} is not there`);
  return open;
}

/** What each entry is written as; entries of one reference together. */
function texts({ file }: OpenFile): ReadonlyMap<string, string> {
  const all = new Map<string, string>();
  for (const { ref, block } of file.entries)
    all.set(
      ref,
      `${all.get(ref) ?? ""}${block.lines.map((line) => line.body).join("\n")}\n`,
    );
  return all;
}

/** Everything that an entry rests on: itself, what it refers to, what those refer to, and the job. */
function restsOn({ shop, file }: OpenFile, ref: string): ReadonlySet<string> {
  const found = new Set<string>([ref]);
  const names = [...shop.files].flatMap((each) => each.entries);
  for (const each of found) {
    for (const entry of names.filter((other) => other.ref === each)) {
      for (const site of entry.refs)
        for (const kind of site.kind === undefined ? site.takes : [site.kind])
          found.add(`${kind} ${site.name}`);
    }
  }
  for (const { ref: opening, kind } of file.entries)
    if (kind === "job" || kind === "shop") found.add(opening);
  return found;
}

/** Kinds whose results hang on nothing but what they refer to. */
const SELF_CONTAINED = /^(?:journal|hole|stack) /;

function resultsBy({ results }: FileCheck): ReadonlyMap<string, string> {
  const all = new Map<string, string>();
  for (const result of results)
    all.set(
      result.entry,
      `${all.get(result.entry) ?? ""}${JSON.stringify(result)}`,
    );
  return all;
}

/** Changes a sample in a project that holds it, and looks at all that must hold. */
function changed(
  project: Project,
  path: string,
  text: string,
  edit: Edit,
): void {
  project.setFile(path, readLines(text));
  const open = opened(project, path);
  const [before, was] = [project.check(path), texts(open)];
  const rested = new Map(
    [...was.keys()].map((ref) => [ref, restsOn(open, ref)]),
  );
  project.setFile(path, editLines(open.file.lines, edit));
  const after = project.check(path);
  const now = texts(opened(project, path));

  // a line that can't be read is said to be one, where it stands
  const { file } = opened(project, path);
  file.entries.forEach((entry, index) => {
    const start = file.lines.starts[index] ?? 0;
    for (const fact of entry.facts) {
      if (fact.value !== undefined) continue;
      const said = entry.problems.some(
        (problem) =>
          problem.span.line === fact.span.line || problem.code === "fact-twice",
      );
      const here = entry.problems.filter(
        (problem) => problem.span.line === fact.span.line,
      );
      // a file that has lost its unit says so once, not at each length
      const silent =
        0 < here.length &&
        here.every((problem) => problem.code === "units-unwritten");
      const found = after.findings.some(
        (finding) =>
          silent ||
          finding.code === "fact-twice" ||
          finding.place.line === start + fact.span.line,
      );
      expect([fact.word, said, found]).toEqual([fact.word, true, true]);
    }
  });

  // what rests on nothing that changed stays
  const touched = new Set(
    [...was.keys(), ...now.keys()].filter(
      (ref) => was.get(ref) !== now.get(ref),
    ),
  );
  const [old, fresh] = [resultsBy(before), resultsBy(after)];
  for (const [ref, results] of old) {
    if (
      !SELF_CONTAINED.test(ref) ||
      [...touched].some(
        (each) => rested.get(ref)?.has(each) === true || each === "",
      )
    )
      continue;
    expect([ref, fresh.get(ref)]).toEqual([ref, results]);
  }
}

function sameAsAfresh(project: Project, path: string): void {
  const text = opened(project, path)
    .file.lines.lines.map((line) => line.text + line.eol)
    .join("");
  expect(project.check(path)).toEqual(shopWith(path, text).check(path));
}

const winch = soundSamples.find((sample) => sample.path === "shop/winch.thou");
const path = "/shop/winch.thou";
const text = winch?.text ?? "";
const lineCount = text.split("\n").length;

describe("the winch", () => {
  test("without any one of its lines", () => {
    const project = shopWith(path, text);
    for (let line = 0; line < lineCount - 1; line++) {
      changed(project, path, text, {
        start: { line, character: 0 },
        end: { line: line + 1, character: 0 },
        text: "",
      });
      if (line % 12 === 0) sameAsAfresh(project, path);
    }
  });

  test("up to any place", () => {
    fc.assert(
      fc.property(fc.nat(text.length), (length) => {
        const project = shopWith(path, text.slice(0, length));
        project.check(path);
      }),
      { numRuns: 25 },
    );
  });

  test("with any characters put in, taken out or changed", () => {
    const project = shopWith(path, text);
    const change = fc.record({
      line: fc.nat(lineCount - 1),
      character: fc.nat(40),
      length: fc.nat(3),
      text: fc.constantFrom(
        "",
        "x",
        "9",
        " ",
        "\n",
        ",",
        ".",
        '"',
        "#",
        "-",
        "/",
        "in",
        "mm",
        "to",
        "\u{0}",
        "\u{D800}",
        "\u{FEFF}",
        "\r",
        "  read near 0.87",
        "part x\n",
      ),
    });
    fc.assert(
      fc.property(change, ({ line, character, length, text: piece }) => {
        changed(project, path, text, {
          start: { line, character },
          end: { line, character: character + length },
          text: piece,
        });
      }),
      { numRuns: 150 },
    );
  });

  test("after runs of edits it says what it says read afresh", () => {
    const edit = fc.record({
      line: fc.nat(lineCount - 1),
      character: fc.nat(30),
      lines: fc.nat(2),
      length: fc.nat(5),
      text: fc.constantFrom(
        "",
        "x",
        "1",
        "\n",
        "  ",
        '"',
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
        const project = shopWith(path, text);
        for (const { line, character, lines, length, text: piece } of edits) {
          const { file } = opened(project, path);
          project.setFile(
            path,
            editLines(file.lines, {
              start: { line, character },
              end: { line: line + lines, character: character + length },
              text: piece,
            }),
          );
          project.check(path);
        }
        sameAsAfresh(project, path);
      }),
      { numRuns: 25 },
    );
  });
});

test("every sample, sound or damaged, is checked without a throw, and twice alike", () => {
  const project = createProject({ root: "/" });
  for (const sample of samples)
    project.setFile(`/${sample.path}`, readLines(sample.text));
  for (const sample of samples)
    expect(project.check(`/${sample.path}`)).toEqual(
      project.check(`/${sample.path}`),
    );
});

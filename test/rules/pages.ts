// Reads the page of a finding: its title, its level, and its samples with the findings that are marked in them. What a mark says of the
// line above it:
//
//     limits 0.8745 to 0.8740
//     #      ^^^^^^^^^^^^^^^^ range-reversed
//
// A `#` that touches the carets counts as the first of them, so that the first word of a line can be marked too. Several codes may stand
// after one row of carets, and several marks under one line.
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { readLines } from "../../grammar/lines.ts";
import { createProject, type Project } from "../../server/rules/check.ts";

export interface Page {
  readonly code: string;
  readonly title: string;
  readonly level: string;
  readonly samples: readonly Sample[];
}

export interface Sample {
  readonly kind: "good" | "bad";
  /** The line of the page that it begins on, from 1. */
  readonly line: number;
  /** The job's own first; `use` finds the others by their names. */
  readonly files: readonly SampleFile[];
}

export interface SampleFile {
  readonly name: string;
  readonly text: string;
  readonly marks: readonly Mark[];
}

/** Where a finding is to be, in lines and characters from 0. */
export interface Mark {
  readonly code: string;
  readonly line: number;
  readonly start: number;
  readonly end: number;
}

/** What a file is called that the fence gives no name. */
export const FIRST = "job.thou";

/** A sample's files in a project of their own; what they use besides is not there. */
export function projectOf(
  files: readonly Pick<SampleFile, "name" | "text">[],
): Project {
  const project = createProject({ root: "" });
  for (const { name, text } of files) project.setFile(name, readLines(text));
  for (const { name } of files)
    for (const missing of project.missingUses(name))
      project.setFile(missing, null);
  return project;
}

const folder = import.meta.dirname;

export function allPages(): readonly Page[] {
  return readdirSync(folder)
    .filter((file) => file.endsWith(".md"))
    .sort()
    .map((file) =>
      readPage(
        file.slice(0, -".md".length),
        readFileSync(path.join(folder, file), "utf8"),
      ),
    );
}

function readPage(code: string, text: string): Page {
  const lines = text.split("\n");
  return {
    code,
    title: /^# (.*)$/.exec(lines[0] ?? "")?.[1] ?? "",
    level: /^Level: (\w+)/m.exec(text)?.[1] ?? "",
    samples: samplesIn(lines),
  };
}

/** A fence without a file's name begins a sample; one with a name adds a file to the sample before it. */
function samplesIn(lines: readonly string[]): readonly Sample[] {
  const samples: { kind: "good" | "bad"; line: number; files: SampleFile[] }[] =
    [];
  let fence: { kind: "good" | "bad"; name: string; from: number } | undefined;
  lines.forEach((line, index) => {
    const opening = /^```thou (good|bad)(?: (\S+))?$/.exec(line);
    if (fence === undefined && opening !== null) {
      fence = {
        kind: opening[1] === "good" ? "good" : "bad",
        name: opening[2] ?? FIRST,
        from: index + 1,
      };
    } else if (fence !== undefined && line === "```") {
      const file = fileOf(fence.name, lines.slice(fence.from, index));
      const before = samples.at(-1);
      if (fence.name === FIRST || before === undefined)
        samples.push({ kind: fence.kind, line: fence.from, files: [file] });
      else before.files.push(file);
      fence = undefined;
    }
  });
  return samples;
}

const MARK = /^\s*#( *)(\^+)((?: [a-z]+(?:-[a-z]+)*)+)$/;

function fileOf(name: string, lines: readonly string[]): SampleFile {
  const marks: Mark[] = [];
  let above = -1;
  lines.forEach((line, index) => {
    const found = MARK.exec(line);
    if (found === null) {
      above = index;
      return;
    }
    const [, gap = "", carets = "", codes = ""] = found;
    const end = line.indexOf("^") + carets.length;
    const start = gap === "" ? line.indexOf("#") : line.indexOf("^");
    for (const code of codes.trim().split(" "))
      marks.push({ code, line: above, start, end });
  });
  return { name, text: lines.map((line) => `${line}\n`).join(""), marks };
}

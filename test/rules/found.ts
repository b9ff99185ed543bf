// The findings of a job and the files beside it, for tests of what rules say.
import { readLines } from "../../grammar/lines.ts";
import type { Finding, Place } from "../../server/model/result.ts";
import { createProject } from "../../server/rules/check.ts";

/** The findings of one code in a job, in the order of its lines; other files by their paths. */
export function foundIn(
  job: string,
  code: string,
  others: Readonly<Record<string, string>> = {},
  path = "job.thou",
): readonly Finding[] {
  const project = createProject({ root: "" });
  project.setFile(path, readLines(job));
  for (const [name, text] of Object.entries(others))
    project.setFile(name, readLines(text));
  for (const missing of project.missingUses(path))
    project.setFile(missing, null);
  return project.check(path).findings.filter((each) => each.code === code);
}

/** What they say. */
export function messages(...of: Parameters<typeof foundIn>): readonly string[] {
  return foundIn(...of).map(({ message }) => message);
}

/** The one finding of a code. */
export function theOne(...of: Parameters<typeof foundIn>): Finding {
  const [finding, other] = foundIn(...of);
  if (finding === undefined || other !== undefined)
    throw new Error(`not one ${of[1]}`);
  return finding;
}

const at = ({ file, line, start, end }: Place, first: string): string =>
  `${file === first ? "" : `${file} `}${String(line + 1)}:${String(start + 1)}-${String(end + 1)}`;

/** All that a finding says, a line each: its place and sentence, the other half, and what its fixes write. `first` is the file that needs no name. */
export function told(
  { level, code, place, message, entry, accepted, related, fixes }: Finding,
  first = "job.thou",
): readonly string[] {
  return [
    `${at(place, first)} ${level} ${code} of ${entry ?? "no entry"}${accepted === null ? "" : `, accepted by ${accepted}`}: ${message}`,
    ...related.map((each) => `  see ${at(each.place, first)}: ${each.message}`),
    ...fixes.flatMap(({ title, safe, edits, creates = [] }) => [
      `  fix${safe ? ", safe" : ""}: ${title}`,
      ...edits.map(
        (edit) => `    ${at(edit.place, first)} ${JSON.stringify(edit.text)}`,
      ),
      ...creates.map(
        ({ file, text }) => `    makes ${file} ${JSON.stringify(text)}`,
      ),
    ]),
  ];
}

/** What is told of one code in a job. */
export function toldIn(...of: Parameters<typeof foundIn>): readonly string[] {
  return foundIn(...of).flatMap((each) => told(each));
}

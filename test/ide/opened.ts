// A record opened with the files that it uses, for tests of the ide.
import { readLines } from "../../grammar/lines.ts";
import type { OpenFile } from "../../server/model/project.ts";
import { createProject } from "../../server/rules/check.ts";

const ROOT = "/shop";
export const JOB_PATH = `${ROOT}/job.thou`;

/** @param others further files of the folder, by name */
export function opened(
  text: string,
  others: Readonly<Record<string, string>> = {},
): OpenFile {
  const project = createProject({ root: ROOT });
  project.setFile(JOB_PATH, readLines(text));
  for (const [name, other] of Object.entries(others))
    project.setFile(`${ROOT}/${name}`, readLines(other));
  const open = project.open(JOB_PATH);
  if (open === undefined) throw new Error("the record is not there");
  return open;
}

// The findings of a job and the files beside it, for tests of what rules say.
import { readLines } from "../../grammar/lines.ts";
import type { Finding } from "../../server/model/result.ts";
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

/** The one finding of a code. */
export function theOne(...of: Parameters<typeof foundIn>): Finding {
  const [finding, other] = foundIn(...of);
  if (finding === undefined || other !== undefined)
    throw new Error(`not one ${of[1]}`);
  return finding;
}

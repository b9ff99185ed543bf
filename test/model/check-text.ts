// Checks one text as a job of its own, for tests of the model.
import { readLines } from "../../grammar/lines.ts";
import type { FileCheck, Result } from "../../server/model/result.ts";
import { createProject } from "../../server/rules/check.ts";

export function checkText(text: string): FileCheck {
  const project = createProject({ root: "" });
  project.setFile("job.thou", readLines(text));
  return project.check("job.thou");
}

/** The first result of a kind; of one case or reference where they are given. */
export function resultOf(
  { results }: FileCheck,
  entry: string,
  kind: string,
  more: Partial<Pick<Result, "of" | "case">> = {},
): Result | undefined {
  return results.find(
    (each) =>
      each.entry === entry &&
      each.kind === kind &&
      (more.of === undefined || each.of === more.of) &&
      (more.case === undefined || each.case === more.case),
  );
}

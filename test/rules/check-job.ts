// A text checked as a job, and with one of its fixes.
import { readLines } from "../../grammar/lines.ts";
import type { Finding, Fix } from "../../server/model/result.ts";
import { createProject } from "../../server/rules/check.ts";

/** Findings of a job; other files by name, `null` for one that is missing. */
export function check(
  job: string,
  others: Readonly<Record<string, string | null>> = {},
): readonly Finding[] {
  const project = createProject({ root: "" });
  project.setFile("job.thou", readLines(job));
  for (const [name, text] of Object.entries(others))
    project.setFile(name, text === null ? null : readLines(text));
  return project.check("job.thou").findings;
}

/** Line and code of each but the hints. */
export function codes(findings: readonly Finding[]): readonly string[] {
  return findings
    .filter((finding) => finding.level !== "hint")
    .map((finding) => `${finding.place.line + 1} ${finding.code}`);
}

/** The text with a fix of its one file. */
export function withFix(text: string, fix: Fix | undefined): string {
  const lines = text.split("\n");
  const edits = [...(fix?.edits ?? [])].sort(
    (a, b) => b.place.line - a.place.line || b.place.start - a.place.start,
  );
  for (const { place, text: written } of edits) {
    const line = lines[place.line] ?? "";
    lines[place.line] =
      line.slice(0, place.start) + written + line.slice(place.end);
  }
  return lines.join("\n");
}

/** A journal that is to run in a bore. */
export const FIT = `part shaft
part case
journal front on shaft
  limits 0.8740 to 0.8745
bore front in case
  limits 0.8755 to 0.8760
fit front of journal front in bore front
  want 0.0008 to 0.0024
`;

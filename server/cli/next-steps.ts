// What to do once a check has been read: mend the first error, take the next step of the job, or measure what is missing. It gathers while
// files are checked and keeps only that.
import type { Finding, Need } from "../model/result.ts";
import { inOrder, type CheckedFile, type Outcome } from "./report.ts";
import { shown } from "./terminal-text.ts";

export interface NextSteps {
  add(file: CheckedFile): void;
  lines(outcome: Outcome): readonly string[];
}

interface Waiting {
  readonly name: string;
  readonly steps: readonly string[];
  readonly needs: readonly string[];
}

/** More files, or more needs of one file, are only counted. */
const MOST_FILES = 8;
const MOST_NEEDS = 3;

export function createNextSteps(): NextSteps {
  let first: { readonly finding: Finding; readonly name: string } | undefined;
  const waiting: Waiting[] = [];
  return {
    add(file) {
      const open = inOrder(file.check.findings).filter(
        (finding) => finding.accepted === null,
      );
      const error = open.find((finding) => finding.level === "error");
      if (error !== undefined) first ??= { finding: error, name: file.name };
      const steps = open
        .filter((finding) => finding.code === "step-open")
        .map(stepNamed);
      const needs = mostWanted(
        file.check.results
          // what blocks a step is in its `needs` as well; the step that is next says more
          .filter((result) => result.status === "unknown")
          .flatMap((result) => result.needs),
      );
      if (0 < steps.length + needs.length)
        waiting.push({ name: file.name, steps, needs });
    },
    lines: (outcome) => [
      ...(first === undefined
        ? waitingLines(waiting)
        : [errorLine(first.finding, first.name)]),
      ...outcome.usedWithErrors.map(usedLine),
    ],
  };
}

/** A step that only the crib's route has is told at the job's `follow`: its name stands in the sentence alone. */
function stepNamed({ entry, message }: Finding): string {
  const [, name] = /^Next is ([\p{L}\d-]+)/u.exec(message) ?? [];
  if (entry?.startsWith("step ") !== true && name !== undefined)
    return `step ${name}`;
  return entry ?? message;
}

function errorLine({ code, place }: Finding, name: string): string {
  return shown(
    `Next: mend ${name}:${place.line + 1}:${place.start + 1}; "thou explain ${code}" says how.`,
  );
}

function usedLine({
  name,
  errors,
}: {
  readonly name: string;
  readonly errors: number;
}): string {
  return shown(
    `${name} is used here and has ${errors === 1 ? "an error" : `${errors} errors`} of its own: "thou check ${name}" shows it.`,
  );
}

function waitingLines(waiting: readonly Waiting[]): readonly string[] {
  const one = waiting.length === 1;
  const lines = waiting.slice(0, MOST_FILES).map(({ name, steps, needs }) => {
    if (0 < steps.length)
      return shown(`${one ? "Next" : `${name}: next`}: ${steps.join("; ")}.`);
    const who = one ? "Next: it" : name;
    const more = needs.length - MOST_NEEDS;
    return shown(
      `${who} needs ${needs.slice(0, MOST_NEEDS).join("; ")}${0 < more ? `; and ${more} more` : ""}.`,
    );
  });
  const rest = waiting.length - MOST_FILES;
  return 0 < rest
    ? [
        ...lines,
        `And ${rest} more ${rest === 1 ? "file waits" : "files wait"} for something.`,
      ]
    : lines;
}

/** Each need once; first those that would settle most results. */
function mostWanted(needs: readonly Need[]): readonly string[] {
  const count = new Map<string, number>();
  for (const need of needs)
    count.set(need.text, (count.get(need.text) ?? 0) + 1);
  return [...count].sort(([, a], [, b]) => b - a).map(([text]) => text);
}

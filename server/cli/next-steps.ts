// What to do once a check has been read: mend the first error, take the next step of the job, or measure what is missing. It gathers while
// files are checked and keeps only that.
import type { Need } from "../model/result.ts";
import {
  inOrder,
  type CheckedFile,
  type Outcome,
  type Waits,
} from "./report.ts";
import { shown } from "./terminal-text.ts";

export interface NextSteps {
  add(waits: Waits): void;
  lines(outcome: Outcome): readonly string[];
}

/** More files, or more needs of one file, are only counted. */
const MOST_FILES = 8;
const MOST_NEEDS = 3;

export function createNextSteps(): NextSteps {
  let first: string | undefined;
  const waiting: Waits[] = [];
  let more = 0;
  return {
    add(waits) {
      if (waits.error !== undefined)
        first ??= errorLine(waits.name, waits.error);
      if (waits.steps.length + waits.needed === 0) return;
      if (waiting.length < MOST_FILES) waiting.push(waits);
      else more++;
    },
    lines: (outcome) => [
      ...(first === undefined ? waitingLines(waiting, more) : [first]),
      ...outcome.usedWithErrors.map(usedLine),
    ],
  };
}

/** What is left to do in one file; undefined where that is nothing. */
export function waitsOf({ name, check }: CheckedFile): Waits | undefined {
  const open = inOrder(check.findings).filter(
    (finding) => finding.accepted === null,
  );
  const error = open.find((finding) => finding.level === "error");
  const steps = open
    .filter((finding) => finding.code === "step-open")
    .map(({ step, entry, message, related }) => {
      const name = step ?? entry ?? message;
      return related.length === 0
        ? name
        : `${name}, but look first at ${[...new Set(related.map((each) => each.message))].join(", ")}`;
    });
  const needs = mostWanted(
    check.results
      // what blocks a step is in its `needs` as well; the step that is next says more
      .filter((result) => result.status === "unknown")
      .flatMap((result) => result.needs),
  );
  if (error === undefined && steps.length + needs.length === 0)
    return undefined;
  return {
    name,
    error:
      error === undefined
        ? undefined
        : {
            code: error.code,
            line: error.place.line + 1,
            column: error.place.start + 1,
          },
    steps,
    needs: needs.slice(0, MOST_NEEDS),
    needed: needs.length,
  };
}

function errorLine(
  name: string,
  { code, line, column }: NonNullable<Waits["error"]>,
): string {
  return shown(
    `Next: mend ${name}:${line}:${column}; "thou explain ${code}" says how.`,
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

function waitingLines(
  waiting: readonly Waits[],
  rest: number,
): readonly string[] {
  const one = waiting.length === 1;
  const lines = waiting.map(({ name, steps, needs, needed }) => {
    if (0 < steps.length)
      return shown(`${one ? "Next" : `${name}: next`}: ${steps.join("; ")}.`);
    const who = one ? "Next: it" : name;
    const more = needed - needs.length;
    return shown(
      `${who} needs ${needs.join("; ")}${0 < more ? `; and ${more} more` : ""}.`,
    );
  });
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

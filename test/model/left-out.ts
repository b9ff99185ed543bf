// What becomes of the results of records where one fact or one entry is left out, or its line can't be read.
import { editLines, readLines, type FileLines } from "../../grammar/lines.ts";
import type { Result } from "../../server/model/result.ts";
import type { Shop } from "../../server/model/shop.ts";
import { createProject } from "../../server/rules/check.ts";
import type { Sample } from "../samples.ts";

/** The line after a fact, or after all of an entry. */
function endOf({ lines }: FileLines, number: number): number {
  if (lines[number]?.indent !== 0) return number + 1;
  const next = lines.findIndex(
    ({ indent, body }, at) => number < at && indent === 0 && body !== "",
  );
  return next === -1 ? lines.length : next;
}

function nameOf({ entry, kind, of, case: number }: Result): string {
  return [entry, kind, of ?? [], number ?? []].flat().join(" ");
}

/** What can't be said any more of each line that is edited, and what is then said otherwise of any, each once. */
export interface LeftOut {
  readonly unknown: readonly string[];
  readonly otherwise: readonly string[];
}

/** @param more what else is said of an entry, beside its results */
export function leftOut(
  samples: readonly Sample[],
  more: (shop: Shop, ref: string) => readonly string[] = () => [],
): LeftOut {
  const project = createProject({ root: "/" });
  for (const { path, text } of samples)
    project.setFile(`/${path}`, readLines(text));
  const unknown: string[] = [];
  const otherwise: string[] = [];
  for (const { path, text } of samples) {
    const whole = readLines(text);
    const seen = new Set<string>();
    const note = (how: string): void => {
      // which results say the same
      const by = new Map<string, string[]>();
      for (const result of project.check(`/${path}`).results) {
        const { text, status, verdict } = result;
        const isKnown = status !== "unknown";
        const what = nameOf(result);
        const line = isKnown
          ? `${what} = ${text} [${status}, ${verdict}]`
          : `${what} ${text}`;
        if (seen.has(line)) continue;
        if (isKnown) otherwise.push(`${path}, ${how}: ${line}`);
        else by.set(text, [...(by.get(text) ?? []), what]);
        // what a fact settles is told of each fact that does, all else once
        if (isKnown || how === "whole") seen.add(line);
      }
      const open = project.open(`/${path}`);
      for (const { ref } of open?.file.entries ?? [])
        for (const each of open === undefined ? [] : more(open.shop, ref)) {
          const line = `${ref} ${each}`;
          if (!seen.has(line)) otherwise.push(`${path}, ${how}: ${line}`);
          seen.add(line);
        }
      for (const [text, all] of by)
        unknown.push(`${path}, ${how}: ${text}: ${all.join(", ")}`);
    };
    note("whole");
    whole.lines.forEach((line, number) => {
      const { indent, body, word } = line;
      if (body === "") return;
      const start = { line: number, character: 0 };
      const after = { line: endOf(whole, number), character: 0 };
      const end = { line: number, character: indent + body.length };
      for (const [how, edit] of [
        ["without", { start, end: after, text: "" }],
        ["damaged", { start: end, end, text: " ?" }],
      ] as const) {
        project.setFile(`/${path}`, editLines(whole, edit));
        note(`${how} ${word} at ${String(number + 1)}`);
      }
    });
    project.setFile(`/${path}`, whole);
  }
  return { unknown, otherwise };
}

// What becomes of the results where one fact or one entry of a sample is left out, or its line can't be read: what can't be said any more, word for
// word, and what is then said otherwise, in golden files (`npm test -- -u` writes them anew; read the difference before they are committed).
// That it is right, no golden file says; that a damaged line changes only what hangs on it is damage.test.ts's.
import { expect, test } from "vitest";
import { editLines, readLines, type FileLines } from "../../grammar/lines.ts";
import type { Result } from "../../server/model/result.ts";
import { createProject } from "../../server/rules/check.ts";
import { soundSamples } from "../samples.ts";

/** The line after a fact, or after all of an entry. */
function endOf({ lines }: FileLines, number: number): number {
  if (lines[number]?.indent !== 0) return number + 1;
  const next = lines.findIndex(
    ({ indent, body }, at) => number < at && indent === 0 && body !== "",
  );
  return next === -1 ? lines.length : next;
}

function said(result: Result): string {
  const { entry, kind, of, case: number, text, status, verdict } = result;
  const what = [entry, kind, of ?? [], number ?? []].flat().join(" ");
  return status === "unknown"
    ? `${what} ${text}`
    : `${what} = ${text} [${status}, ${verdict}]`;
}

test("each fact and each entry left out, and each line damaged", async () => {
  const project = createProject({ root: "/" });
  for (const { path, text } of soundSamples)
    project.setFile(`/${path}`, readLines(text));
  const unknown: string[] = [];
  const otherwise: string[] = [];
  for (const { path, text } of soundSamples) {
    const whole = readLines(text);
    const seen = new Set<string>();
    const note = (how: string): void => {
      for (const result of project.check(`/${path}`).results) {
        const line = said(result);
        if (seen.has(line)) continue;
        const isKnown = result.status !== "unknown";
        (isKnown ? otherwise : unknown).push(`${path}, ${how}: ${line}`);
        // what a fact settles is told of each fact that does, all else once
        if (isKnown || how === "whole") seen.add(line);
      }
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
  await expect(`${unknown.join("\n")}\n`).toMatchFileSnapshot(
    "../fixtures/without.txt",
  );
  await expect(`${otherwise.join("\n")}\n`).toMatchFileSnapshot(
    "../fixtures/otherwise.txt",
  );
});

// What the samples of the pages say, word for word, in a golden file a code (`npm test -- -u` writes them anew; read the difference before it
// is committed): each finding's sentence, its place, the other half, and what its fixes write; and each result with what it still needs. That
// they are right, no golden file says: the figures are held by the tests of the core and of the model.
import { describe, expect, test } from "vitest";
import type { Result } from "../../server/model/result.ts";
import { told } from "./found.ts";
import { allPages, projectOf, type Sample } from "./pages.ts";

function resultSaid(result: Result): string {
  const { entry, kind, of, case: number, text, unit, status, verdict } = result;
  const what = [kind, of, number === null ? null : `case ${String(number)}`]
    .filter((part) => part !== null)
    .join(" ");
  const needs = result.needs.map(
    ({ ref, fact, text: need }) => `; needs ${need} (${fact} of ${ref})`,
  );
  return `  ${entry}: ${what} = ${text} [${unit}, ${status}, ${verdict}]${needs.join("")}`;
}

/** All that is said of a sample that bears on the page, each file checked as its own; elsewhere than on its own page a finding has its own. */
function saidOf({ files }: Sample, code: string): readonly string[] {
  const project = projectOf(files);
  return files.flatMap(({ name }) => {
    const { findings, results } = project.check(name);
    return [
      ...findings
        .filter((each) => each.code === code)
        .flatMap((each) => told(each).map((line) => `  ${line}`)),
      ...results.map(resultSaid),
    ];
  });
}

describe.each(allPages())("$code", ({ code, samples }) => {
  test("says what it said", async () => {
    const lines = samples.flatMap((sample, index) => [
      `${sample.kind} sample ${String(index + 1)}`,
      ...saidOf(sample, code),
    ]);
    await expect(`${lines.join("\n")}\n`).toMatchFileSnapshot(
      `../fixtures/said/${code}.txt`,
    );
  });
});

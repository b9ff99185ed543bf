// How the results of all pages' samples were worked out and what they rest on that nobody wrote, word for word, each line once, in a golden file
// (`npm test -- -u` writes it anew; read the difference before it is committed). What the results come to is test/rules/said.test.ts's, and that
// it is right no golden file says.
import { expect, test } from "vitest";
import { assumptionsOf } from "../../server/model/assumptions.ts";
import { resultsOf } from "../../server/model/results.ts";
import { allPages, projectOf, type Sample } from "../rules/pages.ts";

/** The lines of a sample, each file a job of its own. */
function workedIn({ files }: Sample): readonly string[] {
  const project = projectOf(files);
  return files.flatMap(({ name }) => {
    const open = project.open(name);
    return (open?.file.entries ?? []).flatMap(({ ref }) => {
      if (open === undefined || ref === "") return [];
      const results = resultsOf(open.shop, ref);
      return [
        ...results.flatMap(({ kind, working }) =>
          working.map(
            ({ formula, with: numbers, source }) =>
              `${kind}: ${[formula, numbers, source].join(" | ")}`,
          ),
        ),
        ...assumptionsOf(open.shop, ref, results).map(
          (each) => `${ref.split(" ")[0] ?? ""} rests on: ${each}`,
        ),
      ];
    });
  });
}

test("no step of a working is without this job's numbers", () => {
  const bare = allPages()
    .flatMap(({ samples }) => samples.flatMap(workedIn))
    .filter((line) => line.includes(" |  | "));
  expect(bare).toEqual([]);
});

test("every working, and what each entry rests on", async () => {
  const lines = new Set(
    allPages().flatMap(({ samples }) => samples.flatMap(workedIn)),
  );
  await expect(`${[...lines].sort().join("\n")}\n`).toMatchFileSnapshot(
    "../fixtures/worked.txt",
  );
});

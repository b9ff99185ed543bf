// What the lines of a file have wrong by themselves is found before any shop knows the file, and is part of all that is found of it.
import { expect, test } from "vitest";
import { readLines } from "../../grammar/lines.ts";
import { createProject, lineFindingsIn } from "../../server/rules/check.ts";
import { samples } from "../samples.ts";
import { allPages, projectOf } from "./pages.ts";

const pages = allPages().flatMap(({ code, samples: ofPage }) =>
  ofPage.map((sample) => ({
    name: `the ${sample.kind} sample of ${code} at line ${sample.line}`,
    project: projectOf(sample.files),
    files: sample.files.map(({ name }) => name),
  })),
);

const broken = samples.map(({ path: file, text }) => {
  const project = createProject({ root: "" });
  project.setFile(file, readLines(text));
  return { name: file, project, files: [file] };
});

test.each([...pages, ...broken])(
  "of $name, as they are found with all",
  ({ project, files }) => {
    for (const file of files) {
      const alone = project.look(file);
      expect(alone?.shop).toBeUndefined();
      const ofLines = alone === undefined ? [] : lineFindingsIn(alone.file);
      expect(project.check(file).findings).toEqual(
        expect.arrayContaining([...ofLines]),
      );
    }
  },
);

test("a file that is not there has none", () => {
  expect(createProject({ root: "" }).look("job.thou")).toBeUndefined();
});

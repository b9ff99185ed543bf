// What is said of each damaged sample, in one golden list (`npm test -- -u` writes it anew; read the difference before it is committed).
import { expect, test } from "vitest";
import { readLines } from "../grammar/lines.ts";
import { createProject } from "../server/rules/check.ts";
import { samples } from "./samples.ts";

const broken = samples.filter((sample) => sample.path.startsWith("broken/"));

test("every damaged sample says what it said, and only the harmless say nothing", async () => {
  const project = createProject({ root: "/broken" });
  for (const { path, text } of broken)
    project.setFile(`/${path}`, readLines(text));
  const lines = broken.flatMap(({ path }) => {
    for (const missing of project.missingUses(`/${path}`))
      project.setFile(missing, null);
    const { findings } = project.check(`/${path}`);
    return [
      path,
      ...findings.map(
        ({ level, code, place, message }) =>
          `  ${String(place.line + 1)}:${String(place.start + 1)}-${String(place.end + 1)} ${level} ${code}: ${message.length < 300 ? message : `${message.slice(0, 300)}…`}`,
      ),
    ];
  });
  const quiet = broken
    .filter(({ path }) =>
      project
        .check(`/${path}`)
        .findings.every((finding) => finding.level === "hint"),
    )
    .map(({ path }) => path);
  expect(quiet).toEqual([
    "broken/blanks.thou",
    "broken/comments-only.thou",
    "broken/empty.thou",
    "broken/line-ends-mixed.thou",
    "broken/names-of-objects.thou",
  ]);
  await expect(`${lines.join("\n")}\n`).toMatchFileSnapshot(
    "fixtures/broken.txt",
  );
});

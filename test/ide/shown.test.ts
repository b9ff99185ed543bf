// What the hover shows over every word of the samples that a shop would keep, and over the openings of the entries of all pages' samples, word for
// word, each line once, in a golden file (`npm test -- -u` writes it anew; read the difference before it is committed). That it is right, no golden
// file says.
import { expect, test } from "vitest";
import { readLines } from "../../grammar/lines.ts";
import { tokenize } from "../../grammar/tokens.ts";
import { hoverAt } from "../../server/ide/hover.ts";
import type { OpenFile } from "../../server/model/project.ts";
import { createProject, type Project } from "../../server/rules/check.ts";
import { allPages } from "../rules/pages.ts";
import { soundSamples } from "../samples.ts";

/** Lines of the hovers of a record. @param isAsked says of which lines: of each word, or of the first one alone */
function shownIn(
  open: OpenFile | undefined,
  isAsked: "every word" | "openings",
): readonly string[] {
  if (open === undefined) return [];
  return open.file.lines.lines.flatMap(({ indent, body }, line) =>
    tokenize(body)
      .filter(
        ({ kind, start }) =>
          kind !== "blank" &&
          (isAsked === "every word" || (indent === 0 && start === 0)),
      )
      .flatMap(
        ({ start }) =>
          hoverAt(open, { line, character: indent + start })?.markdown.split(
            "\n",
          ) ?? [],
      ),
  );
}

function opened(project: Project, path: string): OpenFile | undefined {
  for (const missing of project.missingUses(path))
    project.setFile(missing, null);
  return project.open(path);
}

test("the hovers of the samples say what they said", async () => {
  const shop = createProject({ root: "" });
  for (const { path, text } of soundSamples)
    shop.setFile(path, readLines(text));
  const lines = new Set(
    soundSamples.flatMap(({ path }) =>
      shownIn(opened(shop, path), "every word"),
    ),
  );
  for (const { files } of allPages().flatMap(({ samples }) => samples)) {
    const alone = createProject({ root: "" });
    for (const { name, text } of files) alone.setFile(name, readLines(text));
    for (const { name } of files)
      for (const each of shownIn(opened(alone, name), "openings"))
        lines.add(each);
  }
  await expect(`${[...lines].sort().join("\n")}\n`).toMatchFileSnapshot(
    "../fixtures/hovers.txt",
  );
});

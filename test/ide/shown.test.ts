// What the hover shows over every word of the samples that a shop would keep, and over the openings of the entries of all pages' samples, word for
// word, each line once, in a golden file (`npm test -- -u` writes it anew; read the difference before it is committed). That it is right, no golden
// file says.
import { expect, test } from "vitest";
import { tokenize } from "../../grammar/tokens.ts";
import { hoverAt } from "../../server/ide/hover.ts";
import type { OpenFile } from "../../server/model/project.ts";
import { allPages, projectOf } from "../rules/pages.ts";
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

test("the hovers of the samples say what they said", async () => {
  const shop = projectOf(
    soundSamples.map(({ path, text }) => ({ name: path, text })),
  );
  const lines = new Set(
    soundSamples.flatMap(({ path }) => shownIn(shop.open(path), "every word")),
  );
  for (const { files } of allPages().flatMap(({ samples }) => samples)) {
    const alone = projectOf(files);
    for (const { name } of files)
      for (const each of shownIn(alone.open(name), "openings")) lines.add(each);
  }
  await expect(`${[...lines].sort().join("\n")}\n`).toMatchFileSnapshot(
    "../fixtures/hovers.txt",
  );
});

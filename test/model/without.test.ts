// What can't be said where one fact of a sample is left out, or can't be read, word for word, each line once, in a golden file (`npm test -- -u`
// writes it anew; read the difference before it is committed). That it is right, no golden file says; that a damaged line changes only what hangs
// on it is damage.test.ts's.
import { expect, test } from "vitest";
import { editLines, readLines } from "../../grammar/lines.ts";
import { createProject } from "../../server/rules/check.ts";
import { soundSamples } from "../samples.ts";

test("each fact left out, and each damaged", async () => {
  const project = createProject({ root: "/" });
  for (const { path, text } of soundSamples)
    project.setFile(`/${path}`, readLines(text));
  const lines: string[] = [];
  const unknown = (path: string): ReadonlySet<string> =>
    new Set(
      project
        .check(`/${path}`)
        .results.filter(({ status }) => status === "unknown")
        .map(
          ({ entry, kind, of, text }) =>
            `${entry} ${[kind, of ?? []].flat().join(" ")} ${text}`,
        ),
    );
  for (const { path, text } of soundSamples) {
    const whole = readLines(text);
    const always = unknown(path);
    lines.push(...[...always].map((each) => `${path}, whole: ${each}`));
    whole.lines.forEach((line, number) => {
      const { indent, body, word } = line;
      if (indent === 0 || body === "") return;
      const start = { line: number, character: 0 };
      const after = { line: number + 1, character: 0 };
      const end = { line: number, character: indent + body.length };
      for (const [how, edit] of [
        ["without", { start, end: after, text: "" }],
        ["damaged", { start: end, end, text: " ?" }],
      ] as const) {
        project.setFile(`/${path}`, editLines(whole, edit));
        for (const each of unknown(path))
          if (!always.has(each))
            lines.push(
              `${path}, ${how} ${word} at ${String(number + 1)}: ${each}`,
            );
      }
    });
    project.setFile(`/${path}`, whole);
  }
  await expect(`${lines.join("\n")}\n`).toMatchFileSnapshot(
    "../fixtures/without.txt",
  );
});

// The mutants of stretches of lines, all of them in the code at once behind a switch that one variable of the environment turns: the
// instrumenter of Stryker writes them. Which tests come by which, and what comes of it, is asked.mjs's.
import { readFile, writeFile } from "node:fs/promises";
import { createRequire } from "node:module";
import path from "node:path";
import { pathToFileURL } from "node:url";

/** The package that finds the mutants, of one version, so that a seed means the same mutants wherever it is given. */
export const INSTRUMENTER = "@stryker-mutator/instrumenter@9.6.1";

const silent = { debug() {}, info() {}, isDebugEnabled: () => false };

/** Puts into the files of a folder the mutants that lie wholly in the stretches (`file`, first and last line from 1), and lists them. */
export async function putIn(folder, stretches) {
  const needed = createRequire(path.join(folder, "package.json"));
  const { Instrumenter } = await import(
    pathToFileURL(needed.resolve("@stryker-mutator/instrumenter")).href
  );
  const files = [];
  for (const name of new Set(stretches.map(({ file }) => file)))
    files.push({
      name,
      content: await readFile(path.join(folder, name), "utf8"),
      mutate: stretches
        .filter(({ file }) => file === name)
        .map(({ from, to }) => ({
          start: { line: from - 1, column: 0 },
          end: { line: to - 1, column: Infinity },
        })),
    });
  const result = await new Instrumenter(silent).instrument(files, {
    plugins: null,
    ignorers: [],
    excludedMutations: [],
  });
  for (const { name, content } of result.files)
    await writeFile(path.join(folder, name), content);
  const texts = new Map(files.map(({ name, content }) => [name, content]));
  return result.mutants
    .filter(({ status }) => status !== "Ignored")
    .map(({ id, fileName, location, replacement, mutatorName }) => ({
      ...{ id, file: fileName, replacement, mutatorName },
      ...cutOf(texts.get(fileName).split("\n"), location),
      changed: () => changed(texts.get(fileName), location, replacement),
    }));
}

/** The text of a file with what a mutant puts in the place of what it changes. */
function changed(text, { start, end }, replacement) {
  const lines = text.split("\n");
  const before = [...lines.slice(0, start.line), ""].join("\n");
  const after = ["", ...lines.slice(end.line + 1)].join("\n");
  return `${before}${lines[start.line].slice(0, start.column)}${replacement}${lines[end.line].slice(end.column)}${after}`;
}

/** The line (from 1) that a mutant begins in, its text and that of the line before, and what of it is changed, "" where that spans lines. */
function cutOf(lines, { start, end }) {
  const text = lines[start.line];
  return {
    line: start.line + 1,
    text: text.trim(),
    before: (lines[start.line - 1] ?? "").trim(),
    was: start.line === end.line ? text.slice(start.column, end.column) : "",
    rest: text.slice(start.column),
  };
}

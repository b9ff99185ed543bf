// Writes the files that are made from others; `--check` fails, with their names, where one is stale.
//   node .config/generate.mjs [--check]
import { readFile, writeFile } from "node:fs/promises";
import { grammar } from "ohm-js";

/** The compiled grammar: read at start in a few milliseconds, where compiling takes some two hundred. */
async function grammarBundle() {
  const source = await readFile("grammar/thou.ohm", "utf8");
  const recipe = grammar(source.replace(/^\s*\/\/.*\n/gm, "")).toRecipe();
  return `// Made from thou.ohm by npm run generate: do not edit.
const recipe: readonly unknown[] = ${recipe};
export default recipe;
`;
}

/** file -> function that gives its text */
const made = {
  "grammar/thou.ohm-bundle.ts": grammarBundle,
};

let stale = 0;
for (const [file, text] of Object.entries(made)) {
  const now = await readFile(file, "utf8").catch(() => undefined);
  const want = await text();
  if (now === want) continue;
  if (process.argv.includes("--check")) {
    console.error(`${file} is stale: run npm run generate`);
    stale++;
  } else await writeFile(file, want);
}
process.exit(stale ? 1 : 0);

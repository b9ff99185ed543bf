// Writes the files that are made from others; `--check` fails, with their names, where one is stale.
//   node .config/generate.mjs [--check]
import { readFile, writeFile } from "node:fs/promises";

/** file -> function that gives its text */
const made = {};

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

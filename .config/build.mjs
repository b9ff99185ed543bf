// Bundles what ships into dist/: the extension, the language server and the command line (bundles.mjs says how).
//   node .config/build.mjs [--watch] [--maps]
import { build, context } from "esbuild";
import { rm, writeFile } from "node:fs/promises";
import { bundles } from "./bundles.mjs";
import { licencesOf } from "./licences.mjs";

const maps = process.argv.includes("--maps");
const all = bundles("dist").map((each) => ({
  ...each,
  // names of functions are not kept: each that is made while it runs would be given its own, which is a tenth of a check's time. Leaving all names
  // as they are costs a third more bytes in session.js and a quarter in cli.cjs (15 % packed), and a check of a few records took a tenth longer.
  // `--maps` builds what is to be read while it fails
  minify: !maps,
  sourcemap: maps,
  metafile: true,
}));

await rm("dist", { recursive: true, force: true });
if (process.argv.includes("--watch"))
  for (const each of all) await (await context(each)).watch();
else {
  const built = await Promise.all(all.map((each) => build(each)));
  const inputs = Object.assign(
    {},
    ...built.map((each) => each.metafile.inputs),
  );
  await writeFile("dist/licences.txt", await licencesOf({ inputs }));
}

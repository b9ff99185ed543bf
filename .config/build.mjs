// Bundles what ships into dist/: the extension, the language server and the command line.
//   node .config/build.mjs [--watch] [--maps]
import { build, context } from "esbuild";
import { rm, writeFile } from "node:fs/promises";
import { licencesOf } from "./licences.mjs";

const options = {
  entryPoints: {
    client: "client/main.node.ts",
    server: "server/main.node.ts",
    cli: "server/cli/main.ts",
  },
  outdir: "dist",
  outExtension: { ".js": ".cjs" },
  bundle: true,
  platform: "node",
  format: "cjs",
  target: "node20",
  external: ["vscode"],
  minify: !process.argv.includes("--maps"),
  keepNames: true,
  sourcemap: process.argv.includes("--maps"),
  legalComments: "none",
  logLevel: "warning",
};

await rm("dist", { recursive: true, force: true });
if (process.argv.includes("--watch")) await (await context(options)).watch();
else {
  const { metafile } = await build({ ...options, metafile: true });
  await writeFile("dist/licences.txt", await licencesOf(metafile));
}

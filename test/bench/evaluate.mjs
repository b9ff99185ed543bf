// How long reading and evaluating a record takes, cold and after one keystroke, by hand: `node test/bench/evaluate.mjs [SIZE…]`.
// Every figure stands beside one of the same run: splitting the same text into lines, which any tool must do. Trust the ratios.
import { build } from "esbuild";
import { spawnSync } from "node:child_process";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { CRIB, longRecord } from "./long-record.mjs";

const SIZES = [200, 2_000, 20_000];

if (process.argv[2] === "--one")
  await measure(process.argv[3], Number(process.argv[4]));
else {
  const sizes = process.argv.slice(2).map(Number);
  const folder = await mkdtemp(path.join(tmpdir(), "thou-bench-"));
  const bundle = path.join(folder, "model.mjs");
  await build({
    stdin: {
      contents:
        'export { createProject } from "./server/rules/check.ts"; export { readLines, editLines } from "./grammar/lines.ts";',
      resolveDir: path.resolve(import.meta.dirname, "../.."),
      loader: "ts",
    },
    bundle: true,
    format: "esm",
    platform: "node",
    banner: {
      js: 'import { createRequire } from "node:module"; const require = createRequire(import.meta.url);',
    },
    outfile: bundle,
  });
  console.log(
    "| lines | entries | findings | cold, ms | of it reading lines | × splitting | keystroke p50, ms | p95 | × splitting | MB |",
  );
  console.log("|---|---|---|---|---|---|---|---|---|---|");
  // each size in a process of its own, so that none finds the other's lines read
  for (const size of sizes.length === 0 ? SIZES : sizes) {
    const { stdout, stderr } = spawnSync(
      process.execPath,
      ["--expose-gc", import.meta.filename, "--one", bundle, String(size)],
      { encoding: "utf8" },
    );
    process.stdout.write(stdout || stderr);
  }
  await rm(folder, { recursive: true });
}

async function measure(bundle, size) {
  const { createProject, readLines, editLines } = await import(
    pathToFileURL(bundle).href
  );
  const text = longRecord(size);
  const split = median(
    Array.from({ length: 5 }, () =>
      timed(() => text.split(/\r\n|\n|\r/).length),
    ),
  );
  const project = createProject({ root: "/" });
  project.setFile("/crib.thou", readLines(CRIB));
  let lines;
  const reading = timed(() => (lines = readLines(text)));
  let result;
  const cold =
    reading +
    timed(() => {
      project.setFile("/job.thou", lines);
      result = project.check("/job.thou");
    });
  // one digit of a reading in the middle, there and back
  const at = lines.lines.findIndex(
    (line, index) => lines.lines.length / 2 < index && line.word === "read",
  );
  const character = lines.lines[at].text.search(/\d\.\d+/) + 5;
  const keystrokes = [];
  for (let n = 0; n < 60; n++) {
    const edit = {
      start: { line: at, character },
      end: { line: at, character: character + (n % 2) },
      text: n % 2 ? "" : "1",
    };
    keystrokes.push(
      timed(() => {
        lines = editLines(lines, edit);
        project.setFile("/job.thou", lines);
        result = project.check("/job.thou");
      }),
    );
  }
  const sorted = keystrokes.slice(10).sort((a, b) => a - b);
  global.gc();
  const entries = lines.blocks.length;
  const cells = [
    lines.lines.length,
    entries,
    result.findings.length,
    cold.toFixed(0),
    reading.toFixed(1),
    (cold / split).toFixed(0),
    sorted[25].toFixed(2),
    sorted[47].toFixed(2),
    (sorted[25] / split).toFixed(1),
    (process.memoryUsage().heapUsed / 1e6).toFixed(0),
  ];
  console.log(`| ${cells.join(" | ")} |`);
}

function timed(work) {
  const start = performance.now();
  work();
  return performance.now() - start;
}

function median(values) {
  return [...values].sort((a, b) => a - b)[values.length >> 1];
}

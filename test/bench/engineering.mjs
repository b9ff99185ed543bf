// How long the engineering takes where there is much of it, by hand: `node test/bench/engineering.mjs`. Beside each figure stands one of the
// same run: a bare loop over the same arithmetic, with no checks, no objects and no reasons. Trust the ratios.
import { build } from "esbuild";
import { spawnSync } from "node:child_process";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";

const root = path.resolve(import.meta.dirname, "../..");
const folder = await mkdtemp(path.join(tmpdir(), "thou-bench-"));
const core = await bundled(
  "core.mjs",
  'export { rankReamers } from "./server/core/line/reamer-ranking.ts"; export { filmAtEccentricity, filmAtSommerfeld } from "./server/core/film/film-point.ts"; export { solveReynolds } from "./server/core/film/reynolds.ts";',
);

console.log("| what | each, µs | bare loop, µs | ratio |");
console.log("|---|---|---|---|");
reamerChoice();
filmPoints();
solver();
await limits();
await rm(folder, { recursive: true });

/** 8 bores and 200 reamers, ranked. */
function reamerChoice() {
  const bores = Array.from({ length: 8 }, (_, index) => ({
    journal: {
      least: 0.0222 - index * 1e-7,
      greatest: 0.0222 + index * 1e-7,
      wanted: { low: 20e-6, high: 45e-6 },
    },
  }));
  const oversize = { kind: "written", low: 1e-6, high: 6e-6 };
  const reamers = Array.from({ length: 200 }, (_, index) => {
    const size = 0.02215 + index * 5e-7;
    return {
      size: { kind: "written", low: size, high: size },
      cuts: [{ oversize }],
    };
  });
  const ours = median(() => {
    const found = core.rankReamers(bores, reamers);
    if (!found.valid || found.value.length !== 200)
      throw new Error("not ranked");
  });
  const bare = median(() => {
    const out = [];
    for (let r = 0; r < 200; r++) {
      const nominal = reamers[r].size.low + (oversize.low + oversize.high) / 2;
      const spread = (oversize.high - oversize.low) / 6;
      let margin = Infinity;
      let least = -Infinity;
      let most = Infinity;
      for (let b = 0; b < 8; b++) {
        const { least: smallest, greatest: largest, wanted } = bores[b].journal;
        const low = largest + wanted.low;
        const high = smallest + wanted.high;
        margin = Math.min(margin, nominal - low, high - nominal);
        least = Math.max(least, (low - nominal) / spread);
        most = Math.min(most, (high - nominal) / spread);
      }
      out.push([normal(most) - normal(least), margin, r]);
    }
    out.sort((one, other) => other[0] - one[0] || other[1] - one[1]);
    if (out.length !== 200) throw new Error("not ranked");
  });
  row("a reamer for 8 bores out of 200", ours, bare);
}

/** A film by the table, from its eccentricity and from its Sommerfeld number, against cubics over the same seven columns. */
function filmPoints() {
  const points = 2_000;
  const at = (n) => ({
    length: 0.3 + (n % 40) / 40,
    eccentricity: 0.1 + (n % 80) / 100,
  });
  const byEccentricity = median(() => {
    for (let n = 0; n < points; n++) {
      const { length, eccentricity } = at(n);
      if (!core.filmAtEccentricity(length, eccentricity).valid)
        throw new Error("refused");
    }
  });
  const bySommerfeld = median(() => {
    for (let n = 0; n < points; n++) {
      const { length } = at(n);
      if (!core.filmAtSommerfeld(length, 0.05 + (n % 50) / 50).valid)
        throw new Error("refused");
    }
  });
  const table = new Float64Array(4 * 4 * 7).map((_, index) => Math.sin(index));
  let sum = 0;
  const bare = median(() => {
    for (let n = 0; n < points; n++) {
      const { length, eccentricity } = at(n);
      const x = Math.log2(length) % 1;
      const y = eccentricity % 1;
      for (let field = 0; field < 7; field++) {
        let column = 0;
        for (let i = 0; i < 4; i++) {
          let value = 0;
          for (let j = 0; j < 4; j++)
            value += table[(i * 4 + j) * 7 + field] * weight(j, y);
          column += value * weight(i, x);
        }
        sum += Math.exp(column);
      }
    }
  });
  if (Number.isNaN(sum)) throw new Error("no numbers");
  row(
    "a film point by its eccentricity",
    byEccentricity / points,
    bare / points,
  );
  row(
    "a film point by its Sommerfeld number",
    bySommerfeld / points,
    bare / points,
  );
}

/** The solver itself beside the table: what the table saves. */
function solver() {
  const solved = median(() => {
    core.solveReynolds(0.5, 0.6, { around: 128, along: 16 });
  }, 5);
  const tabled = median(() => {
    for (let n = 0; n < 1_000; n++) core.filmAtEccentricity(0.5, 0.6);
  });
  row(
    "the equation solved on 128 by 16, beside a point of the table",
    solved,
    tabled / 1_000,
  );
}

/** `thou limits -` on 1,000 lines beside the same command on one. */
async function limits() {
  const outfile = path.join(folder, "cli.cjs");
  await build({
    entryPoints: [path.join(root, "server/cli/main.ts")],
    outfile,
    bundle: true,
    platform: "node",
    format: "cjs",
    minify: true,
    logLevel: "warning",
  });
  const lines = Array.from(
    { length: 1_000 },
    (_, n) => `${10 + (n % 400)} ${["H7", "f7", "g6", "H8/e8"][n % 4]}`,
  );
  const timeOf = (input) =>
    median(() => {
      const { status, stderr } = spawnSync(
        process.execPath,
        [outfile, "limits", "-"],
        { input },
      );
      if (status !== 0) throw new Error(String(stderr));
    }, 7);
  const many = timeOf(`${lines.join("\n")}\n`);
  const one = timeOf(`${lines[0]}\n`);
  const start = median(() => {
    spawnSync(process.execPath, [outfile, "--version"]);
  }, 7);
  console.log(
    `\n\`thou limits -\`: 1,000 lines ${(many / 1e3).toFixed(0)} ms, one line ${(one / 1e3).toFixed(0)} ms, ×${(many / one).toFixed(2)}; the command alone ${(start / 1e3).toFixed(0)} ms`,
  );
}

function weight(index, t) {
  let product = 1;
  for (let k = 0; k < 4; k++)
    if (k !== index) product *= (t + 1 - k) / (index - k);
  return product;
}

/** Normal distribution; Abramowitz and Stegun 26.2.17. */
function normal(x) {
  const t = 1 / (1 + 0.2316419 * Math.abs(x));
  const tail =
    0.3989423 *
    Math.exp((-x * x) / 2) *
    t *
    (0.3193815 +
      t * (-0.3565638 + t * (1.781478 + t * (-1.821256 + t * 1.330274))));
  return 0 < x ? 1 - tail : tail;
}

async function bundled(name, contents) {
  const outfile = path.join(folder, name);
  await build({
    stdin: { contents, resolveDir: root, loader: "ts" },
    bundle: true,
    format: "esm",
    platform: "node",
    banner: {
      js: 'import { createRequire } from "node:module"; const require = createRequire(import.meta.url);',
    },
    outfile,
  });
  return import(pathToFileURL(outfile).href);
}

/** The median of several runs, µs, after as many to warm up. */
function median(run, times = 25) {
  const taken = [];
  for (let n = 0; n < 2 * times; n++) {
    const began = performance.now();
    run();
    if (times <= n) taken.push((performance.now() - began) * 1e3);
  }
  return taken.sort((a, b) => a - b)[Math.floor(times / 2)];
}

function row(what, ours, bare) {
  console.log(
    `| ${what} | ${ours.toPrecision(3)} | ${bare.toPrecision(3)} | ×${(ours / bare).toPrecision(2)} |`,
  );
}

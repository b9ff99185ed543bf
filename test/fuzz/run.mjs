// The fuzzer by hand: `node test/fuzz/run.mjs --minutes N --seed S [--aim reading|server|cli] [--one SEED]`. It prints how many inputs there
// were, what they crashed, and the slowest; it ends with 1 where anything crashed.
import { build } from "esbuild";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { parseArgs } from "node:util";

const test = path.resolve(import.meta.dirname, "..");
const { values } = parseArgs({
  options: {
    minutes: { type: "string", default: "1" },
    seed: { type: "string", default: "1" },
    aim: { type: "string", multiple: true },
    one: { type: "string" },
  },
});

const folder = await mkdtemp(path.join(tmpdir(), "thou-fuzz-"));
process.on("uncaughtException", (error) => {
  console.log("uncaught:", error);
  process.exitCode = 1;
});
try {
  const outfile = path.join(folder, "fuzz.mjs");
  await build({
    entryPoints: [path.join(test, "fuzz/fuzz.ts")],
    bundle: true,
    format: "esm",
    platform: "node",
    external: ["@duckdb/node-api"],
    logLevel: "warning",
    banner: {
      js: 'import { createRequire as makeRequire } from "node:module"; const require = makeRequire(import.meta.url);',
    },
    outfile,
  });
  const { AIMS, fuzz, one } = await import(pathToFileURL(outfile).href);
  const aims = values.aim ?? Object.keys(AIMS);
  if (values.one !== undefined)
    for (const aim of aims)
      console.log(aim, await one(test, aim, Number(values.one)));
  else {
    const end = Date.now() + Number(values.minutes) * 60_000;
    const seen = new Set();
    const { tried, crashes } = await fuzz({
      test,
      seed: Number(values.seed),
      aims,
      goesOn: () => Date.now() < end,
      told: (crash) => {
        const head = crash.why.split("\n")[0].slice(0, 120);
        if (seen.has(head)) return;
        seen.add(head);
        console.log(
          `${crash.aim} seed ${crash.seed} from ${crash.from}: ${crash.why.slice(0, 1500)}\n`,
        );
      },
    });
    for (const [aim, { inputs, asked, slowest }] of Object.entries(tried))
      console.log(
        `${aim}: ${inputs} inputs, ${asked} asked, slowest ${Math.round(slowest.milliseconds)} ms (seed ${slowest.seed}, ${slowest.length} characters)`,
      );
    console.log(
      `${crashes.length} crashes, ${Math.round(process.memoryUsage().rss / 1e6)} MB`,
    );
    if (0 < crashes.length) process.exitCode = 1;
  }
} finally {
  await rm(folder, { recursive: true });
}

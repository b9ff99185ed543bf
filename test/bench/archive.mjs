// What an archive of records costs: a check from nothing with one thread and with two, a check where answers are kept and 0, 1 or 100 records
// have changed, the first export and one after a single change. Each is a process of its own over the bundled command; the time is the
// wall's, the memory is the largest resident set that the system saw of the process and its threads. It writes docs/scale.md, with its chart.
//   node test/bench/archive.mjs [--write] [RECORDS...]     200 2000 10000 where left off
import { spawn } from "node:child_process";
import {
  mkdir,
  mkdtemp,
  readFile,
  rm,
  symlink,
  writeFile,
} from "node:fs/promises";
import { cpus, loadavg, tmpdir } from "node:os";
import path from "node:path";
import { build } from "esbuild";

const words = process.argv.slice(2);
const isWriting = words.includes("--write");
const sizes = words.filter((word) => word !== "--write").map(Number);
const here = await mkdtemp(path.join(tmpdir(), "thou-scale-"));

const common = {
  bundle: true,
  platform: "node",
  target: "node20",
  logLevel: "warning",
};
await build({
  ...common,
  entryPoints: ["server/cli/main.ts"],
  outfile: path.join(here, "cli.cjs"),
  format: "cjs",
  external: ["@duckdb/node-api"],
  minify: true,
  keepNames: true,
});
await build({
  ...common,
  entryPoints: ["test/history/shop-history.ts"],
  outfile: path.join(here, "history.mjs"),
  format: "esm",
});
await symlink(
  path.resolve("node_modules"),
  path.join(here, "node_modules"),
  "dir",
);
const { shopHistory } = await import(path.join(here, "history.mjs"));

/** The process says at its end how much memory it had at most, in a file: its own streams are the command's. */
await writeFile(
  path.join(here, "peak.cjs"),
  `if (require("node:worker_threads").isMainThread) process.on("exit", () =>
    require("node:fs").writeFileSync(process.env.THOU_PEAK, String(process.resourceUsage().maxRSS)));`,
);

async function write(folder, file, text) {
  const at = path.join(folder, file);
  await mkdir(path.dirname(at), { recursive: true });
  await writeFile(at, text);
}

async function archive(records) {
  const folder = path.join(here, `shop-${records}`);
  const history = shopHistory(7, { records });
  for (const each of history.cribs) await write(folder, each.path, each.text);
  const paths = [];
  for (const each of history.records) {
    await write(folder, each.path, each.versions.at(-1).text);
    paths.push(path.join(folder, each.path));
  }
  return { folder, paths };
}

/** Seconds and MB of one run. */
async function run(cwd, ...args) {
  const peak = path.join(here, "peak");
  const started = performance.now();
  const code = await new Promise((resolve, reject) => {
    spawn(
      process.execPath,
      [
        "--require",
        path.join(here, "peak.cjs"),
        path.join(here, "cli.cjs"),
        ...args,
      ],
      {
        cwd,
        stdio: ["ignore", "ignore", "inherit"],
        env: {
          ...process.env,
          NODE_OPTIONS: "",
          THOU_CACHE: "",
          THOU_PEAK: peak,
        },
      },
    )
      .on("error", reject)
      .on("close", resolve);
  });
  // 1: the shop of the bench has findings on purpose
  if (code !== 0 && code !== 1)
    throw new Error(`${args.join(" ")}: exit ${code}`);
  const seconds = (performance.now() - started) / 1000;
  return { seconds, megabytes: Number(await readFile(peak, "utf8")) / 1024 };
}

/** A remark more in each of so many records, spread over all. */
async function change(paths, count) {
  for (let index = 0; index < count; index++) {
    const at = paths[Math.floor((index * paths.length) / count)];
    await writeFile(at, `${await readFile(at, "utf8")}# looked at\n`);
  }
}

const JSON_FORM = ["--format", "json"];
const rows = [];
for (const records of sizes.length === 0 ? [200, 2000, 10000] : sizes) {
  const { folder, paths } = await archive(records);
  const cache = path.join(here, `cache-${records}`);
  const out = path.join(here, `archive-${records}`);
  const measure = async (what, ...args) => {
    const { seconds, megabytes } = await run(folder, ...args);
    rows.push({ records, what, seconds, megabytes });
    console.log(
      `${records} records, ${what}: ${seconds.toFixed(1)} s, ${megabytes.toFixed(0)} MB`,
    );
  };
  await measure("check, 1 thread", "check", ...JSON_FORM, "--jobs", "1");
  await measure("check, 2 threads", "check", ...JSON_FORM, "--jobs", "2");
  await run(folder, "check", ...JSON_FORM, "--jobs", "2", "--cache", cache);
  for (const changed of [0, 1, 100]) {
    await change(paths, changed);
    await measure(
      `check, answers kept, ${changed} changed`,
      "check",
      ...JSON_FORM,
      "--jobs",
      "2",
      "--cache",
      cache,
    );
  }
  await measure("export, first", "export", "--out", out);
  await change(paths, 1);
  await measure("export, 1 changed", "export", "--out", out);
  for (const each of [folder, cache, out]) await rm(each, { recursive: true });
}
await rm(here, { recursive: true });

/** Bars, as long as the time that a thousand records took: alike where the cost is linear. */
function chart() {
  const perThousand = ({ seconds, records }) => (seconds * 1000) / records;
  const most = Math.max(...rows.map(perThousand));
  return rows.map((row) => {
    const bar = "#".repeat(
      Math.max(1, Math.round((perThousand(row) / most) * 40)),
    );
    return `${String(row.records).padStart(6)} ${row.what.padEnd(33)} ${bar} ${perThousand(row).toFixed(1)}`;
  });
}

const page = `# What many records cost

Written by \`node test/bench/archive.mjs --write\`. The records are those of the made-up harbour of the tests (about 3 kB each, a
crib for every 60). Each line is one run of the bundled command, as a process of its own, to JSON that goes nowhere. Time is the wall's;
memory is the largest resident set that the system saw, with all threads. Measured once, on ${cpus().length} cores that had other work
beside it (load ${loadavg()[1].toFixed(1)} over the last five minutes): take the times as what they can be at worst, and the
proportions for what they say. The runs that change records do it before the clock starts.

| records | what | time, s | memory, MB |
| ---: | --- | ---: | ---: |
${rows.map(({ records, what, seconds, megabytes }) => `| ${records} | ${what} | ${seconds.toFixed(1)} | ${megabytes.toFixed(0)} |`).join("\n")}

Seconds for a thousand records:

\`\`\`text
${chart().join("\n")}
\`\`\`

With \`thou check --cache FOLDER\` the records are all read, and their answers all written, but only what has changed, or uses what has, is
worked out. Sizes that are not in the table were not run; \`node test/bench/archive.mjs 100000\` runs a hundred thousand.

The folder holds one answer for each path that was ever checked, at most 32 MB each and about 9 kB for the records above, and the next
answer takes its place. It can be removed at any time. An answer is taken only where the tool, the record and every file that the record
uses, however far, are what they were, byte for byte; one that is damaged is worked out anew. THOU_CACHE names a folder for every check.
`;
if (isWriting) await writeFile("docs/scale.md", page);
else console.log(page);

// What an archive of records costs: a check from nothing with one thread and with two, a check where answers are kept and none, one in a hundred
// or 100 of the records have changed, the first export and one after a single change. Each is a process of its own over the bundled command;
// what it took is asked of the system: the time of the wall and of the processors, and the largest resident set, with all threads.
// With --write what was measured is kept in archive.json, a size in the place of the same size, and docs/scale.md is made from that; without,
// it is printed and nothing is touched.
//   node test/bench/archive.mjs [--write] [RECORDS...]     nothing is measured where no size is named
// Past 10,000 records one run from nothing is made, with one thread, and no export: it takes long enough.
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
import { format } from "prettier";
import { commandLine } from "../../.config/bundles.mjs";
import { scaleChart } from "./scale-chart.mjs";
import { scalePage } from "./scale-page.mjs";

const KEPT = "test/bench/archive.json";
const words = process.argv.slice(2);
const isWriting = words.includes("--write");
const sizes = words.filter((word) => word !== "--write").map(Number);
const here = await mkdtemp(path.join(tmpdir(), "thou-scale-"));

await build(commandLine(here));
await build({
  entryPoints: ["test/history/shop-history.ts"],
  outfile: path.join(here, "history.mjs"),
  bundle: true,
  platform: "node",
  format: "esm",
});
await symlink(
  path.resolve("node_modules"),
  path.join(here, "node_modules"),
  "dir",
);
const { shopHistory } = await import(path.join(here, "history.mjs"));

/** The process says at its end what it took, in a file: its own streams are the command's. */
await writeFile(
  path.join(here, "peak.cjs"),
  `if (require("node:worker_threads").isMainThread) process.on("exit", () =>
    require("node:fs").writeFileSync(process.env.THOU_PEAK, JSON.stringify(process.resourceUsage())));`,
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
  await rm(peak, { force: true });
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
  // where the process did not get to its end there is no such file
  const used = JSON.parse(await readFile(peak, "utf8"));
  return {
    seconds,
    processor: (used.userCPUTime + used.systemCPUTime) / 1e6,
    megabytes: used.maxRSS / 1024,
  };
}

/** A remark more in each of so many records, spread over all. */
async function change(paths, count) {
  for (let index = 0; index < count; index++) {
    const at = paths[Math.floor((index * paths.length) / count)];
    await writeFile(at, `${await readFile(at, "utf8")}# looked at\n`);
  }
}

/** The runs of one size. */
async function measured(records) {
  const { folder, paths } = await archive(records);
  const cache = path.join(here, `cache-${records}`);
  const out = path.join(here, `archive-${records}`);
  const isLarge = 10_000 < records;
  const rows = [];
  const measure = async (what, ...args) => {
    const row = { records, what, ...(await run(folder, ...args)) };
    // what else the machine had to do, over the last minutes
    rows.push({ ...row, load: loadavg()[1], cores: cpus().length });
    console.log(
      `${records} records, ${what}: ${row.seconds.toFixed(1)} s, ${row.processor.toFixed(1)} s of processors, ${row.megabytes.toFixed(0)} MB`,
    );
  };
  const check = (what, jobs, ...more) =>
    measure(what, "check", "--format", "json", "--jobs", jobs, ...more);
  const keep = ["--cache", cache];
  if (!isLarge) {
    await check("from nothing, 1 thread", "1");
    await check("from nothing, 2 threads", "2");
  }
  await check("from nothing, 1 thread, answers kept", "1", ...keep);
  await check("none changed", "2", ...keep);
  await change(paths, records / 100);
  await check("1 in 100 changed", "2", ...keep);
  await change(paths, 100);
  await check("100 changed", "2", ...keep);
  if (!isLarge) {
    await measure("first export", "export", "--out", out);
    await change(paths, 1);
    await measure("export, 1 changed", "export", "--out", out);
  }
  for (const each of [folder, cache, out])
    await rm(each, { recursive: true, force: true });
  return rows;
}

let kept = JSON.parse(await readFile(KEPT, "utf8").catch(() => "[]"));
for (const records of sizes) {
  const rows = await measured(records);
  kept = [...kept.filter((row) => row.records !== records), ...rows].sort(
    (a, b) => a.records - b.records,
  );
  if (isWriting)
    await writeFile(
      KEPT,
      await format(JSON.stringify(kept), { parser: "json" }),
    );
}
await rm(here, { recursive: true });

async function heldRows() {
  return JSON.parse(await readFile("test/bench/held.json", "utf8"));
}

if (isWriting) {
  await writeFile("docs/scale.md", scalePage(kept, await heldRows()));
  await writeFile("docs/pictures/scale.svg", scaleChart(kept));
}

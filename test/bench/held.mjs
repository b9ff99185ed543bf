// What a check holds for each record that it is about: the heap after all that was let go of is collected, as the last record is written, over
// records of two lines, so that nothing but their number differs. The largest resident set beside it has what was not collected yet.
// With --write it is kept in held.json, from which docs/scale.md is made by archive.mjs.
//   node test/bench/held.mjs [--write] RECORDS...
import { spawn } from "node:child_process";
import { mkdir, mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { build } from "esbuild";
import { format } from "prettier";
import { commandLine } from "../../.config/bundles.mjs";

const words = process.argv.slice(2);
const here = await mkdtemp(path.join(tmpdir(), "thou-held-"));
await build(commandLine(here));
await writeFile(
  path.join(here, "held.cjs"),
  `const { stdout } = process;
  const write = stdout.write.bind(stdout);
  let left = Number(process.env.THOU_RECORDS);
  let held;
  stdout.write = (text, ...more) => {
    if (text.startsWith('{"file"') && --left === 0) {
      gc();
      gc();
      held = process.memoryUsage();
    }
    return write(text, ...more);
  };
  process.on("exit", () => {
    const most = process.resourceUsage().maxRSS / 1024;
    process.stderr.write(JSON.stringify({ heap: held.heapUsed, beside: held.external, most }));
  });`,
);

async function held(records) {
  const cwd = path.join(here, `shop-${records}`);
  for (let at = 0; at < records; at++) {
    const folder = path.join(cwd, `shop-${1000 + Math.floor(at / 60)}/2024`);
    if (at % 60 === 0) await mkdir(folder, { recursive: true });
    await writeFile(
      path.join(folder, `winch-${100 + (at % 60)}.thou`),
      "job winch\n  units mm\n",
    );
  }
  const child = spawn(
    process.execPath,
    [
      "--expose-gc",
      "--require",
      path.join(here, "held.cjs"),
      path.join(here, "cli.cjs"),
      "check",
      "--format",
      "json",
      "--jobs",
      "1",
    ],
    {
      cwd,
      stdio: ["ignore", "ignore", "pipe"],
      env: {
        ...process.env,
        NODE_OPTIONS: "",
        THOU_CACHE: "",
        THOU_RECORDS: String(records),
      },
    },
  );
  let said = "";
  for await (const piece of child.stderr) said += piece;
  await rm(cwd, { recursive: true });
  return { records, ...JSON.parse(said) };
}

const rows = [];
for (const records of words.filter((word) => word !== "--write").map(Number)) {
  rows.push(await held(records));
  console.log(rows.at(-1));
}
await rm(here, { recursive: true });
if (words.includes("--write"))
  await writeFile(
    "test/bench/held.json",
    await format(JSON.stringify(rows), { parser: "json" }),
  );

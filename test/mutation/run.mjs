// Mutation testing by hand: `node test/mutation/run.mjs ROOM… [--lines N] [--seed S]`. A copy of the tree in a folder of its own is mutated at
// seeded stretches of lines by Stryker, which is installed there and nowhere else, and the room's tests are run on each mutant. It prints how
// many were killed and each that lived; those that EXPLAINED gives a reason for are counted apart.
//   THOU_MUTATION_DIR   where the copy stands; kept between runs when given, so that nothing is installed twice
import { execFileSync, spawnSync } from "node:child_process";
import { cp, mkdir, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { parseArgs } from "node:util";
import { EXPLAINED } from "./explained.mjs";

const STRYKER = "9.6.1";

/** The rooms, and the tests that are to find what is wrong in them. */
const ROOMS = {
  grammar: ["test/grammar", "test/docs", "test/rules/text.test.ts"],
  "server/core": ["test/core", "test/checks", "test/oracle"],
  "server/model": ["test/model", "test/rules", "test/samples.test.ts"],
  "server/rules": [
    "test/rules",
    "test/samples.test.ts",
    "test/samples-broken.test.ts",
  ],
};

/** How many lines stand in one stretch: a mutant counts when the whole of what it changes lies in it. */
const STRETCH = 8;

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    lines: { type: "string", default: "240" },
    seed: { type: "string", default: "1" },
    workers: { type: "string", default: "2" },
  },
});
const root = path.resolve(import.meta.dirname, "../..");
const rooms = positionals.length === 0 ? Object.keys(ROOMS) : positionals;
for (const room of rooms)
  if (!Object.hasOwn(ROOMS, room))
    throw new Error(
      `${room} is not among the rooms: ${Object.keys(ROOMS).join(", ")}.`,
    );

const git = (...args) =>
  execFileSync("git", args, { cwd: root, encoding: "utf8" })
    .split("\0")
    .filter((name) => name !== "");

/** The same numbers from the same seed, from 0 to 1. */
function drawing(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** Stretches of lines over a room's files, drawn without putting back. */
async function stretches(room) {
  const all = [];
  for (const file of git("ls-files", "-z", room)) {
    if (!file.endsWith(".ts") || /bundle|\.d\.ts$|pages\.ts$/u.test(file))
      continue;
    const count = (await readFile(path.join(root, file), "utf8")).split(
      "\n",
    ).length;
    for (let from = 1; from <= count; from += STRETCH)
      all.push(`${file}:${from}-${Math.min(count, from + STRETCH - 1)}`);
  }
  const draw = drawing(Number(values.seed));
  const drawn = [];
  while (drawn.length * STRETCH < Number(values.lines) && 0 < all.length)
    drawn.push(...all.splice(Math.floor(draw() * all.length), 1));
  return drawn;
}

const given = process.env.THOU_MUTATION_DIR;
const folder = given ?? (await mkdtemp(path.join(tmpdir(), "thou-mutation-")));
const run = (command, args) => {
  const { status } = spawnSync(command, args, {
    cwd: folder,
    stdio: ["ignore", "inherit", "inherit"],
  });
  if (status !== 0)
    throw new Error(`${command} ${args.join(" ")} ended with ${status}.`);
};

try {
  for (const file of git("ls-files", "-z")) {
    await mkdir(path.dirname(path.join(folder, file)), { recursive: true });
    await cp(path.join(root, file), path.join(folder, file));
  }
  const kit = path.join(
    folder,
    "node_modules/@stryker-mutator/core/package.json",
  );
  if ((await readFile(kit, "utf8").catch(() => "")) === "") {
    run("npm", ["ci", "--no-audit", "--no-fund"]);
    run("npm", [
      "install",
      "--no-save",
      "--no-audit",
      "--no-fund",
      ...["core", "vitest-runner"].map(
        (each) => `@stryker-mutator/${each}@${STRYKER}`,
      ),
    ]);
  }
  for (const room of rooms) await mutate(room);
} finally {
  if (given === undefined) await rm(folder, { recursive: true });
}

async function mutate(room) {
  const report = path.join(folder, "mutation.json");
  await rm(report, { force: true });
  await writeFile(
    path.join(folder, "mutation.vitest.config.ts"),
    `export default { test: { include: ${JSON.stringify(
      ROOMS[room].map((each) =>
        each.endsWith(".ts") ? each : `${each}/**/*.test.ts`,
      ),
    )}, setupFiles: ["test/seed.ts"], testTimeout: 60_000 } };\n`,
  );
  await writeFile(
    path.join(folder, "stryker.config.json"),
    JSON.stringify({
      testRunner: "vitest",
      vitest: { configFile: "mutation.vitest.config.ts", related: false },
      plugins: ["@stryker-mutator/vitest-runner"],
      coverageAnalysis: "perTest",
      concurrency: Number(values.workers),
      mutate: await stretches(room),
      reporters: ["json"],
      jsonReporter: { fileName: "mutation.json" },
      tempDirName: ".mutating",
      timeoutMS: 20_000,
      allowConsoleColors: false,
      ignorePatterns: [".editor*", "dist", ".shots"],
    }),
  );
  const began = Date.now();
  run("node", ["node_modules/@stryker-mutator/core/bin/stryker.js", "run"]);
  tell(room, JSON.parse(await readFile(report, "utf8")), Date.now() - began);
}

function tell(room, { files }, took) {
  const counts = { killed: 0, explained: 0, lived: 0 };
  for (const [file, { source, mutants }] of Object.entries(files)) {
    const lines = source.split("\n");
    for (const { location, replacement, status, mutatorName } of mutants) {
      if (status === "CompileError" || status === "Ignored") continue;
      if (
        status === "Killed" ||
        status === "Timeout" ||
        status === "RuntimeError"
      ) {
        counts.killed++;
        continue;
      }
      const { start, end } = location;
      const text = lines[start.line - 1].trim();
      const reason = EXPLAINED.find(
        (each) =>
          each.file === file &&
          text.includes(each.text) &&
          (each.by === undefined || each.by === replacement),
      );
      if (reason !== undefined) {
        counts.explained++;
        continue;
      }
      counts.lived++;
      const was =
        start.line === end.line
          ? lines[start.line - 1].slice(start.column - 1, end.column - 1)
          : `${lines[start.line - 1].slice(start.column - 1)} …`;
      console.log(
        `  ${file}:${start.line} ${status === "NoCoverage" ? "(no test comes here) " : ""}${mutatorName}: ${was}  →  ${String(replacement).replaceAll(/\s+/gu, " ").slice(0, 100)}`,
      );
    }
  }
  const all = counts.killed + counts.explained + counts.lived;
  const share = (count) => `${((100 * count) / all).toFixed(1)} %`;
  console.log(
    `${room}: ${all} mutants in ${values.lines} lines, seed ${values.seed}: ${counts.killed} killed (${share(counts.killed)}), ${counts.explained} explained (${share(counts.explained)}), ${counts.lived} lived; ${Math.round(took / 1000)} s`,
  );
}

// Mutation testing by hand: `node test/mutation/run.mjs ROOM… [--lines N] [--seed S]`. A copy of the tree in a folder of its own is mutated at
// seeded stretches of lines by Stryker, which is installed there and nowhere else, and the room's own tests are run on each mutant. What
// outlives them, or ends none of them in time, is run once more against the tests of the rooms above that show what this one says, with three
// times as long to end. It prints how many were killed by which, how many of those by never ending, and each that lived; those that EXPLAINED
// gives a reason for are counted apart.
//   THOU_MUTATION_DIR   where the copy stands; kept between runs when given, so that nothing is installed twice
import { execFileSync, spawnSync } from "node:child_process";
import { cp, mkdir, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { parseArgs } from "node:util";
import { evenFrom } from "../seeded.mjs";
import { EXPLAINED } from "./explained.mjs";

const STRYKER = "9.6.1";

/** The quick ones of what shows a person what the model and the rules say. */
const SHOWN = [
  "test/ide/code-actions.test.ts",
  "test/ide/hints.test.ts",
  "test/ide/hover.test.ts",
  "test/sheet",
  "test/compare",
];
const SAMPLES = ["test/samples.test.ts", "test/samples-broken.test.ts"];

/** The rooms, the tests that are to find what is wrong in them, and those of other rooms that may. */
const ROOMS = {
  grammar: {
    own: ["test/grammar"],
    others: [
      "test/docs",
      "test/rules/text.test.ts",
      "test/model/facts.test.ts",
      "test/ide/code-actions.test.ts",
      "test/ide/completion.test.ts",
      "test/ide/hover.test.ts",
      "test/ide/selection.test.ts",
    ],
  },
  "server/core": {
    own: ["test/core", "test/checks", "test/oracle"],
    others: [],
  },
  "server/model": {
    own: ["test/model", "test/rules/said.test.ts", ...SAMPLES],
    others: ["test/rules", ...SHOWN],
  },
  "server/rules": {
    own: ["test/rules", ...SAMPLES],
    others: ["test/model", ...SHOWN],
  },
};

/** Tests that came to an end in time and found nothing, or never came to it. */
const HAS_LIVED = ["Survived", "NoCoverage"];

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

/** Stretches of lines over a room's files, drawn without putting back. */
async function stretches(room) {
  const all = [];
  for (const file of git("ls-files", "-z", room)) {
    if (
      !file.endsWith(".ts") ||
      /bundle|\.d\.ts$|pages\.ts$|grammar\/examples\.ts$/u.test(file)
    )
      continue;
    const count = (await readFile(path.join(root, file), "utf8")).split(
      "\n",
    ).length;
    for (let from = 1; from <= count; from += STRETCH)
      all.push(`${file}:${from}-${Math.min(count, from + STRETCH - 1)}`);
  }
  const draw = evenFrom(Number(values.seed));
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
  const began = Date.now();
  const { own, others } = ROOMS[room];
  const all = await outcomes(await stretches(room), own, 20_000);
  const left = all.filter(
    ({ status }) => status !== "Killed" && status !== "CompileError",
  );
  const again =
    others.length === 0 || left.length === 0
      ? []
      : await outcomes(left.map(placeOf), others, 60_000);
  const statuses = new Map(again.map((each) => [keyOf(each), each.status]));
  tell(
    room,
    all.map((each) => ({ ...each, above: statuses.get(keyOf(each)) })),
    Date.now() - began,
  );
}

/** What became of each mutant of some stretches under some tests, with the file and the text that it changes. */
async function outcomes(stretches, tests, timeoutMS) {
  const report = path.join(folder, "mutation.json");
  await rm(report, { force: true });
  await writeFile(
    path.join(folder, "mutation.vitest.config.ts"),
    `export default { test: { include: ${JSON.stringify(
      tests.map((each) =>
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
      mutate: stretches,
      reporters: ["json"],
      jsonReporter: { fileName: "mutation.json" },
      tempDirName: ".mutating",
      timeoutMS,
      dryRunTimeoutMinutes: 60,
      allowConsoleColors: false,
      ignorePatterns: [".editor*", "dist", ".shots"],
    }),
  );
  run("node", ["node_modules/@stryker-mutator/core/bin/stryker.js", "run"]);
  const { files } = JSON.parse(await readFile(report, "utf8"));
  return Object.entries(files).flatMap(([file, { source, mutants }]) =>
    mutants
      .filter(({ status }) => status !== "Ignored")
      .map(({ location, replacement, status, mutatorName }) => ({
        ...{ file, location, replacement, status, mutatorName },
        lines: source.split("\n"),
      })),
  );
}

/** A mutant's place as Stryker takes it: lines from 1, columns from 0. */
function placeOf({ file, location: { start, end } }) {
  return `${file}:${start.line}:${start.column - 1}-${end.line}:${end.column - 1}`;
}

function keyOf(mutant) {
  return `${placeOf(mutant)} ${mutant.mutatorName} ${mutant.replacement}`;
}

function tell(room, mutants, took) {
  const counts = { killed: 0, above: 0, stuck: 0, explained: 0, lived: 0 };
  for (const mutant of mutants) {
    const { file, location, replacement, mutatorName, lines } = mutant;
    const { status, above = status } = mutant;
    if (status === "CompileError") continue;
    if (status === "Killed") counts.killed++;
    else if (above === "Killed") counts.above++;
    else if (!HAS_LIVED.includes(above)) {
      counts.stuck++;
      console.log(`  ${file}:${location.start.line} never ends: ${above}`);
    } else if (isExplained(mutant)) counts.explained++;
    else {
      counts.lived++;
      const { start, end } = location;
      const was =
        start.line === end.line
          ? lines[start.line - 1].slice(start.column - 1, end.column - 1)
          : `${lines[start.line - 1].slice(start.column - 1)} …`;
      console.log(
        `  ${file}:${start.line} ${status === "NoCoverage" && above === "NoCoverage" ? "(no test comes here) " : ""}${mutatorName}: ${was}  →  ${String(replacement).replaceAll(/\s+/gu, " ").slice(0, 100)}`,
      );
    }
  }
  const { killed, above, stuck, explained, lived } = counts;
  const all = killed + above + stuck + explained + lived;
  const share = (count) => `${((100 * count) / all).toFixed(1)} %`;
  console.log(
    `${room}: ${all} mutants in ${values.lines} lines, seed ${values.seed}: ${killed + above + stuck} killed (${share(killed + above + stuck)}: ${killed} by the room's own tests, ${above} by those above, ${stuck} that never end), ${explained} explained (${share(explained)}), ${lived} lived; ${Math.round(took / 1000)} s`,
  );
}

function isExplained({ file, location, replacement: by, lines }) {
  const { start, end } = location;
  const text = lines[start.line - 1].trim();
  const before = (lines[start.line - 2] ?? "").trim();
  const was =
    start.line === end.line
      ? lines[start.line - 1].slice(start.column - 1, end.column - 1)
      : "";
  return EXPLAINED.some(
    (each) => file.startsWith(each.file) && each.is({ was, text, before, by }),
  );
}

// Mutation testing by hand: `node test/mutation/run.mjs ROOM… [--lines N] [--seed S]`. A copy of the tree in a folder of its own gets the
// mutants of seeded stretches of lines that the compiler lets pass, and the room's own tests are asked of each; what outlives them, the tests of
// other rooms that show what this one says. It prints each that lived as soon as it did, and then how many were killed by which, how many of
// those by never ending; those that EXPLAINED gives a reason for are counted apart.
//   THOU_MUTATION_DIR   where the copy stands; kept between runs when given, so that nothing is installed twice
import { execFileSync, spawnSync } from "node:child_process";
import {
  cp,
  mkdir,
  mkdtemp,
  readFile,
  rm,
  stat,
  writeFile,
} from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { parseArgs } from "node:util";
import { evenFrom } from "../seeded.mjs";
import { asked, walked } from "./asked.mjs";
import { compilerOf } from "./compiler.mjs";
import { EXPLAINED } from "./explained.mjs";
import { INSTRUMENTER, putIn } from "./mutants.mjs";

/** What hover says of entries, lines, references, numbers and words. */
const HOVER = [
  "test/ide/hover.test.ts",
  "test/ide/hover-advice.test.ts",
  "test/ide/hover-class.test.ts",
  "test/ide/hover-line.test.ts",
  "test/ide/hover-quantity.test.ts",
  "test/ide/hover-reference.test.ts",
  "test/ide/hover-words.test.ts",
];
/** The quick ones of what shows a person what the model and the rules say. */
const SHOWN = [
  "test/ide/code-actions.test.ts",
  "test/ide/hints.test.ts",
  ...HOVER,
  "test/ide/shown.test.ts",
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
      "test/rules/any-text.test.ts",
      "test/rules/dates.test.ts",
      "test/rules/did-you-mean.test.ts",
      "test/rules/text.test.ts",
      "test/rules/text-numbers.test.ts",
      "test/rules/units-offered.test.ts",
      "test/model/facts.test.ts",
      "test/ide/code-actions.test.ts",
      "test/ide/completion.test.ts",
      ...HOVER,
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

const IS_FOUND = new Set(["killed", "stuck"]);

/** How many lines stand in one stretch: a mutant counts when the whole of what it changes lies in it. */
const STRETCH = 8;

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    lines: { type: "string", default: "240" },
    seed: { type: "string", default: "1" },
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
      /bundle|\.d\.ts$|pages\.ts$|grammar\/(?:examples|usual-shapes)\.ts$/u.test(
        file,
      )
    )
      continue;
    const count = (await readFile(path.join(root, file), "utf8")).split(
      "\n",
    ).length;
    for (let from = 1; from <= count; from += STRETCH)
      all.push({ file, from, to: Math.min(count, from + STRETCH - 1) });
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
  await copy();
  const kit = path.join(folder, "node_modules/@stryker-mutator/instrumenter");
  if ((await stat(kit).catch(() => undefined)) === undefined) {
    run("npm", ["ci", "--no-audit", "--no-fund"]);
    run("npm", [
      ...["install", "--no-save", "--no-audit", "--no-fund"],
      INSTRUMENTER,
    ]);
  }
  for (const room of rooms) await mutate(room);
} finally {
  if (given === undefined) await rm(folder, { recursive: true });
}

/** Anew for each room, so that the switch of one room's mutant turns none of another's. */
async function copy() {
  for (const file of git("ls-files", "-z")) {
    await mkdir(path.dirname(path.join(folder, file)), { recursive: true });
    await cp(path.join(root, file), path.join(folder, file));
  }
}

/** The files of tests that some paths name. */
function testsIn(paths) {
  // of no path git would list all
  const files = paths.length === 0 ? [] : git("ls-files", "-z", "--", ...paths);
  return files.filter((file) => file.endsWith(".test.ts"));
}

async function mutate(room) {
  const began = Date.now();
  await copy();
  const [own, others] = [ROOMS[room].own, ROOMS[room].others].map(testsIn);
  const mutants = await putIn(folder, await stretches(room));
  const tests = await walked(folder, [...new Set([...own, ...others])]);
  const among = (files) => tests.filter(({ file }) => files.includes(file));
  const refuses = compilerOf(root);
  const counts = {
    ...{ own: 0, above: 0, stuck: 0 },
    ...{ refused: 0, explained: 0, lived: 0 },
  };
  const outcomes = [];
  for (const mutant of mutants) {
    if (refuses(mutant.file, mutant.changed())) {
      counts.refused++;
      continue;
    }
    let found = await asked(folder, mutant, among(own));
    let by = "own";
    if (!IS_FOUND.has(found.status)) {
      by = "above";
      const above = await asked(folder, mutant, among(others));
      if (above.status !== "unmet") found = above;
    }
    if (found.status === "stuck") by = "stuck";
    else if (found.status !== "killed")
      by = isExplained(mutant) ? "explained" : "lived";
    counts[by]++;
    outcomes.push({ ...mutant, ...found, counted: by });
    if (by === "lived" || by === "stuck") console.log(said(mutant, found));
  }
  await writeFile(
    path.join(folder, `mutation.${room.replace("/", "-")}.json`),
    JSON.stringify(outcomes, undefined, 1),
  );
  tell(room, counts, Date.now() - began);
}

function said({ file, line, mutatorName, was, rest, replacement }, { status }) {
  const note = { stuck: "(never ends) ", unmet: "(no test comes here) " };
  return `  ${file}:${line} ${note[status] ?? ""}${mutatorName}: ${was === "" ? `${rest} …` : was}  →  ${replacement.replaceAll(/\s+/gu, " ").slice(0, 100)}`;
}

function tell(room, counts, took) {
  const { own, above, stuck, refused, explained, lived } = counts;
  const killed = own + above + stuck;
  const all = killed + explained + lived;
  const share = (count) => `${((100 * count) / all).toFixed(1)} %`;
  console.log(
    `${room}: ${all} mutants in ${values.lines} lines, seed ${values.seed}, beside ${refused} that the compiler refuses: ${killed} killed (${share(killed)}: ${own} by the room's own tests, ${above} by those above, ${stuck} that never end), ${explained} explained (${share(explained)}), ${lived} lived; ${Math.round(took / 1000)} s`,
  );
}

function isExplained({ file, was, text, before, replacement: by }) {
  return EXPLAINED.some(
    (each) => file.startsWith(each.file) && each.is({ was, text, before, by }),
  );
}

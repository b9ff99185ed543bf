// Whether tests find a mutant: each is asked of a process of its own, so that what a file of tests works out while it is loaded is worked out
// from the changed code as well. Only the files of tests that come by the changed place are run, those that come by it most often for their
// time first, up to the first test that fails. They are run one after the other with the same sources; where none fails, those that were spared the
// changed place by an answer kept from a file before are run once more, each with sources of its own.
import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { readFile, rm, writeFile } from "node:fs/promises";
import path from "node:path";

/**
 * A process that takes this many times as long as the tests take on unchanged code, and half a minute more, never ends. It is the time that the
 * processor gives it, so that what else the machine does makes no difference.
 */
const PATIENCE = 4;

/**
 * Runs files of tests one after the other, each with the sources loaded anew or all with the same, which takes a third of the time; undefined
 * when they came to no end in time.
 */
async function runTests(
  folder,
  tests,
  { mutant = "", bail = 0, seconds = 3600, setup = [], isolate = false },
) {
  const config = path.join(folder, "mutation.vitest.config.mjs");
  const report = path.join(folder, "mutation.report.json");
  await rm(report, { force: true });
  await writeFile(
    config,
    `const order = ${JSON.stringify(tests)};
const place = ({ moduleId }) => order.findIndex((each) => moduleId.endsWith("/" + each));
class InOrder {
  shard(files) { return files; }
  sort(files) { return [...files].sort((one, other) => place(one) - place(other)); }
}
export default { test: {
  include: order, setupFiles: ${JSON.stringify(["test/seed.ts", ...setup])}, testTimeout: 0, hookTimeout: 0,
  pool: "threads", fileParallelism: false, isolate: ${isolate}, sequence: { sequencer: InOrder }, bail: ${bail},
  update: "none", experimental: { fsModuleCache: true },
  reporters: ["json"], outputFile: "mutation.report.json",
} };\n`,
  );
  const { signal, stderr } = spawnSync(
    "sh",
    [
      ...["-c", `ulimit -t ${Math.ceil(seconds)} && exec "$@"`, "sh"],
      ...[process.execPath, "node_modules/vitest/vitest.mjs"],
      ...["run", "--config", config],
    ],
    {
      cwd: folder,
      env: { ...process.env, CI: "1", __STRYKER_ACTIVE_MUTANT__: mutant },
      encoding: "utf8",
    },
  );
  if (signal === "SIGXCPU" || signal === "SIGKILL") return undefined;
  const text = await readFile(report, "utf8").catch(() => {
    throw new Error(`the tests did not report: ${stderr}`);
  });
  return JSON.parse(text).testResults.map(
    ({ name, status, startTime, endTime }) => ({
      file: path.relative(folder, name),
      status,
      seconds: (endTime - startTime) / 1000,
    }),
  );
}

const [SETUP, HITS] = ["mutation.setup.mjs", "mutation.hits.jsonl"];
/** Of a file of tests, how often it has come by each mutant: while it was loaded, and then in its tests. */
const SETUP_TEXT = `import { appendFileSync } from "node:fs";
import { afterAll, beforeAll, expect } from "vitest";
const counts = () => ({ ...globalThis.__stryker__?.mutantCoverage?.static });
let loaded;
beforeAll(() => { loaded = counts(); });
afterAll(() => appendFileSync("${HITS}", JSON.stringify({
  test: expect.getState().testPath, loaded, hits: counts(),
}) + "\\n"));
`;

/**
 * Of every file of tests, on unchanged code, how long it takes among the others and alone, how often it comes by each mutant, and which it comes
 * by less often among the others, because something kept an answer that those were given. A file that puts another package in a package's place
 * is run alone only.
 */
export async function walked(folder, tests) {
  await writeFile(path.join(folder, SETUP), SETUP_TEXT);
  const alone = await counted(folder, tests, true);
  const shared = tests.filter(
    (file) =>
      !readFileSync(path.join(folder, file), "utf8").includes("vi.mock("),
  );
  const among = await counted(folder, shared, false);
  return tests.map((file) => {
    const [one, other] = [alone.get(file), among.get(file)];
    const spared = Object.keys(one.hits).filter(
      (id) =>
        other === undefined ||
        (other.inTests[id] ?? 0) < (one.inTests[id] ?? 0),
    );
    return {
      file,
      ...{ isAlone: other === undefined, seconds: (other ?? one).seconds },
      ...{ secondsAlone: one.seconds, hits: one.hits },
      spared: new Set(spared),
    };
  });
}

async function counted(folder, tests, isolate) {
  await rm(path.join(folder, HITS), { force: true });
  const run = await green(folder, tests, { setup: [SETUP], isolate });
  const found = new Map(run.map((each) => [each.file, each]));
  const lines = await readFile(path.join(folder, HITS), "utf8");
  for (const line of lines.trim().split("\n")) {
    const { test, loaded, hits } = JSON.parse(line);
    const inTests = Object.fromEntries(
      Object.entries(hits).map(([id, count]) => [
        id,
        count - (loaded?.[id] ?? 0),
      ]),
    );
    Object.assign(found.get(path.relative(folder, test)), { hits, inTests });
  }
  for (const each of run) {
    each.hits ??= {};
    each.inTests ??= {};
  }
  return found;
}

async function green(folder, tests, how) {
  const run = (await runTests(folder, tests, how)) ?? [];
  const red = run.filter(({ status }) => status !== "passed");
  if (run.length !== tests.length || 0 < red.length)
    throw new Error(
      `tests fail on unchanged code: ${red.map(({ file }) => file).join(", ")}`,
    );
  return run;
}

/** What some walked files of tests say of a mutant: `killed` and by which, `stuck`, `lived`, or `unmet` where none comes by it. */
export async function asked(folder, { id }, tests) {
  const often = (each) => each.hits[id] / (each.seconds + 0.2);
  const meet = tests
    .filter(({ hits }) => 0 < (hits[id] ?? 0))
    .sort((one, other) => often(other) - often(one));
  if (meet.length === 0) return { status: "unmet" };
  const spared = meet.filter((each) => each.spared.has(id));
  const shared = meet.filter(({ isAlone }) => !isAlone);
  // the first by itself: where it never ends, all of them are not waited for
  for (const [files, isolate] of [
    [shared.slice(0, 1), false],
    [shared.slice(1), false],
    [spared, true],
  ]) {
    if (files.length === 0) continue;
    const found = await judged(folder, id, files, isolate);
    if (found.status !== "lived") return found;
  }
  return { status: "lived" };
}

async function judged(folder, id, tests, isolate) {
  const seconds = tests.map((each) =>
    isolate ? each.secondsAlone + 2 : each.seconds,
  );
  const run = await runTests(
    folder,
    tests.map(({ file }) => file),
    {
      ...{ mutant: id, bail: 1, isolate },
      seconds: seconds.reduce((sum, each) => sum + PATIENCE * each, 30),
    },
  );
  if (run === undefined) return { status: "stuck" };
  const red = run.find(({ status }) => status === "failed");
  if (red !== undefined) return { status: "killed", by: red.file };
  if (run.length !== tests.length)
    throw new Error(`not every file of tests was run on mutant ${id}.`);
  return { status: "lived" };
}

// Lessons from end to end: a made-up shop learns from its first jobs, and the later ones, as they stood before the work, use what was written.
// What was then read is held against what was foretold. The seeds were not used while the rules were made, nor by learn-history.test.ts;
// whoever tunes any of these takes a new block. THOU_TEST_SHOPS sets how many shops: the block goes on from its first seed.
//
// Asked for: of what is foretold at 95 % each, 88 % holds what was read. Four shops give some 90 of each, so that chance alone would miss
// this once in 300 times; presses are foretold at the worst ends of all sizes, and so hold more.
import { beforeAll, expect, test } from "vitest";
import { readLines } from "../../grammar/lines.ts";
import type { FileCheck, Result } from "../../server/model/result.ts";
import { learnedCrib } from "../../server/records/learned-crib.ts";
import { evidenceIn, lessonsOf } from "../../server/records/lessons.ts";
import { createProject } from "../../server/rules/check.ts";
import { shopHistory } from "../history/shop-history.ts";
import { truthsOf } from "../history/truths.ts";

const FIRST_SEED = 81_001;
const SHOPS = Number(process.env.THOU_TEST_SHOPS ?? "4");
/** Of 60 jobs: those that are learned from, and the rest that are foretold. */
const LEARNED_FROM = 48;

interface Foretold {
  readonly what: string;
  readonly low: number;
  readonly high: number;
  readonly read: number;
  /** The middle of what is foretold without the lessons. */
  readonly bare: number;
}

const cuts: Foretold[] = [];
const presses: Foretold[] = [];
let assumed = 0;

function shop(seed: number): void {
  const history = shopHistory(seed, { records: 60 });
  const project = createProject({ root: "" });
  for (const { path, text } of history.cribs)
    project.setFile(path, readLines(text));
  const records = [...history.records];
  const check = (path: string, text: string): FileCheck => {
    project.setFile(path, readLines(text));
    return project.check(path);
  };
  const evidence = records.slice(0, LEARNED_FROM).map(({ path, versions }) => {
    project.setFile(path, readLines(versions.at(-1)?.text ?? ""));
    const open = project.open(path);
    if (open === undefined) throw new Error(path);
    return evidenceIn(open);
  });
  const learned = learnedCrib(lessonsOf(evidence), ["crib.thou"]);
  project.setFile("shop-0001/learned.thou", readLines(learned));
  // a reamer that wears goes on wearing after it was learned from
  const worn = truthsOf(seed, 0).reamers.find(({ perCut }) => 0 < perCut);
  for (const record of records.slice(LEARNED_FROM)) {
    if (record.flaw !== undefined) continue;
    const [opened, pressedText, reamed] = record.versions.map(({ text }) =>
      text.replace(
        '  use "../crib.thou"\n',
        '  use "../crib.thou"\n  use "../learned.thou"\n',
      ),
    );
    const bare = check(record.path, record.versions[0]?.text ?? "");
    const before = check(record.path, opened ?? "");
    for (const end of ["front", "rear"]) {
      const found = (
        from: FileCheck,
        entry: string,
        kind: string,
      ): Result | undefined =>
        from.results.find((each) => each.entry === entry && each.kind === kind);
      const size = found(before, `bore ${end}`, "size");
      const said = size?.working.map((each) => each.with).join(" ") ?? "";
      if (!said.includes("oversize as learned")) assumed++;
      if (!said.includes(worn?.reamer ?? "none"))
        cuts.push({
          what: `${record.path} ${end}: ${said}`,
          low: size?.low ?? NaN,
          high: size?.high ?? NaN,
          bare: found(bare, `bore ${end}`, "size")?.nominal ?? NaN,
          read: boreRead(
            reamed ?? "",
            end,
            /^ {2}read (?:near|far) (.*?) with/u,
          ),
        });
      const after = found(before, `press ${end}`, "bore-after-press");
      if (after?.working.some(({ source }) => source.startsWith("lesson ")))
        presses.push({
          what: `${record.path} press ${end}`,
          low: after.low ?? NaN,
          high: after.high ?? NaN,
          bare: found(bare, `press ${end}`, "bore-after-press")?.nominal ?? NaN,
          read: boreRead(
            pressedText ?? "",
            end,
            /^ {2}read (.*?) with.* as pressed/u,
          ),
        });
    }
  }
}

/** The mean of the readings of a bore, m, by the record's own text. */
function boreRead(text: string, end: string, line: RegExp): number {
  const size = text.includes("\n  units inch\n") ? 0.0254 : 0.001;
  const [, block = ""] = text.split(`\nbore ${end}`);
  const values: number[] = [];
  for (const each of block.split("\n").slice(1)) {
    if (!each.startsWith("  ")) break;
    const isPressed = each.includes("as pressed");
    const found = line.exec(each)?.[1];
    if (found === undefined || (isPressed && !line.source.includes("pressed")))
      continue;
    values.push(...found.trim().split(" ").map(Number));
  }
  return (size * values.reduce((sum, value) => sum + value, 0)) / values.length;
}

beforeAll(() => {
  for (let each = 0; each < SHOPS; each++) shop(FIRST_SEED + each);
}, 600_000);

const missed = (all: readonly Foretold[]): readonly Foretold[] =>
  all.filter(({ low, high, read }) => !(low <= read && read <= high));

/** The middle of what is foretold is off by this much on the whole, m. */
function offBy(
  all: readonly Foretold[],
  foretold: (one: Foretold) => number,
): number {
  const squares = all.map((one) => (one.read - foretold(one)) ** 2);
  return Math.sqrt(
    squares.reduce((sum, square) => sum + square, 0) / squares.length,
  );
}
const learnedMiddle = ({ low, high }: Foretold): number => (low + high) / 2;
const bareMiddle = ({ bare }: Foretold): number => bare;

test("what a steady reamer cuts lies where its lesson foretells", () => {
  expect(cuts.length).toBeGreaterThan(12 * SHOPS);
  expect(cuts.filter(({ read }) => Number.isNaN(read))).toEqual([]);
  expect(assumed).toBe(0);
  // without the lessons it would be off by what these reamers cut over their size, several times its spread
  expect(2 * offBy(cuts, learnedMiddle)).toBeLessThan(offBy(cuts, bareMiddle));
  const wrong = missed(cuts);
  expect(
    1 - wrong.length / cuts.length,
    wrong.map(({ what }) => what).join("\n"),
  ).toBeGreaterThanOrEqual(0.88);
});

test("what a pressed bush leaves lies where its lesson foretells", () => {
  expect(presses.length).toBeGreaterThan(12 * SHOPS);
  expect(presses.filter(({ read }) => Number.isNaN(read))).toEqual([]);
  const wrong = missed(presses);
  expect(
    1 - wrong.length / presses.length,
    wrong.map(({ what }) => what).join("\n"),
  ).toBeGreaterThanOrEqual(0.88);
});

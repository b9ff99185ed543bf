// What is said of the order of the work, beyond what the pages' samples show: rings of steps, steps done too early, and what is next.
import { describe, expect, test } from "vitest";
import type { Finding } from "../../server/model/result.ts";
import { foundIn, messages, toldIn } from "./found.ts";

const HEAD = "job winch\n  units inch\n";

describe("a ring of steps", () => {
  const CODE = "step-loop";
  const step = (name: string, ...after: readonly string[]): string =>
    `step ${name}\n${after.map((each) => `  after ${each}\n`).join("")}`;

  test("is told once, at the first that the job writes, and its fix takes that one step out of its `after`", () => {
    expect(
      toldIn(
        `${HEAD}${step("a", "x, c")}${step("b", "a")}${step("c", "b, x")}${step("x")}`,
        CODE,
      ),
    ).toEqual([
      "4:12-13 error step-loop of step a: These steps can never start: step a waits for step c waits for step b waits for step a. Take one `after` out.",
      "  see 7:6-7: step c",
      "  see 5:6-7: step b",
      "  fix: Wait no longer for step c",
      '    4:10-13 ""',
    ]);
  });

  test("leaves what else stands in the `after`, with its comma, and makes a line that had nothing else a comment", () => {
    const fix = (...after: readonly string[]): readonly string[] =>
      toldIn(
        `${HEAD}${step("a", ...after)}${step("b", "a")}${step("x")}${step("y")}`,
        CODE,
      ).slice(2);
    const title = "  fix: Wait no longer for step b";
    expect(fix("b")).toEqual([title, '    4:3-3 "# "']);
    expect(fix("b, x")).toEqual([title, '    4:9-12 ""']);
    expect(fix("x, b, y")).toEqual([title, '    4:10-13 ""']);
    expect(fix("x, y", "b")).toEqual([title, '    5:3-3 "# "']);
  });

  test("of one step waits for itself", () => {
    expect(toldIn(HEAD + step("d", "d"), CODE)).toEqual([
      "4:9-10 error step-loop of step d: This step waits for itself: take it out of its `after`.",
      "  fix: Wait no longer for step d",
      '    4:3-3 "# "',
    ]);
  });

  /** The names of a ring's steps, the least first. */
  const ringOf = ({ entry, message }: Finding): string => {
    const all = [...message.matchAll(/step (\w) waits/gu)].map(
      ([, name]) => name,
    );
    if (all.length === 0) return entry?.replace("step ", "") ?? "";
    const from = all.indexOf([...all].sort()[0]);
    return [...all.slice(from), ...all.slice(0, from)].join();
  };

  test("is told where three steps wait in a ring, whichever wait for which, and none is told twice", () => {
    const names = ["a", "b", "c"];
    for (let waits = 0; waits < 2 ** 9; waits++) {
      const after = names.map((_, one) =>
        names.filter((__, other) => (waits >> (3 * one + other)) & 1),
      );
      const isRing = (ring: readonly string[]): boolean =>
        ring.every((name, index) =>
          after[names.indexOf(name)]?.includes(
            ring[(index + 1) % ring.length] ?? "",
          ),
        );
      const rings = [["a"], ["b"], ["c"], ["a", "b"], ["a", "c"], ["b", "c"]]
        .concat([names, ["a", "c", "b"]])
        .filter(isRing)
        .map((ring) => ring.join());
      const text =
        HEAD +
        names.map((name, at) => step(name, ...(after[at] ?? []))).join("");
      const told = foundIn(text, CODE).map(ringOf);
      expect(told, text).toEqual([...new Set(told)]);
      expect(rings, text).toEqual(expect.arrayContaining(told));
      expect(told.length === 0, text).toBe(rings.length === 0);
    }
  });

  const crib = (
    route: string,
    steps: string,
  ): Readonly<Record<string, string>> => ({
    "crib.thou": `shop harbour\n  units inch\n${steps}route r\n${route}`,
  });
  const FOLLOWS = `${HEAD}  use "crib.thou"\n  follow r\n`;

  test("that only the crib has is told at the job's `follow`, and has no fix there", () => {
    expect(
      toldIn(
        FOLLOWS,
        CODE,
        crib("  step a\n  step b\n", step("a", "b") + step("b", "a")),
      ),
    ).toEqual([
      "4:10-11 error step-loop of job winch: These steps can never start: step a waits for step b waits for step a. Take one `after` out, or change the route.",
      "  see crib.thou 3:6-7: step a",
      "  see crib.thou 5:6-7: step b",
    ]);
  });

  test("that a route closes begins at the job's own step, and names the route as a way out", () => {
    const steps = ["a", "b", "c", "d"].map((name) => step(name)).join("");
    expect(
      toldIn(
        `${FOLLOWS}${step("c", "d")}${step("b", "c")}`,
        CODE,
        crib("  step b\n  step d\n  step c\n", steps),
      ),
    ).toEqual([
      "8:9-10 error step-loop of step b: These steps can never start: step b waits for step c waits for step d waits for step b. Take one `after` out, or change the route.",
      "  see 5:6-7: step c",
      "  see crib.thou 6:6-7: step d",
      "  fix: Wait no longer for step c",
      '    8:3-3 "# "',
    ]);
    // only the route says that it waits, so that no `after` is to blame
    expect(
      toldIn(
        `${FOLLOWS}${step("a", "b")}`,
        CODE,
        crib("  step a\n  step b\n", steps),
      ),
    ).toHaveLength(4);
    expect(
      toldIn(
        `${FOLLOWS}step b\n`,
        CODE,
        crib("  step a\n  step b\n", step("a", "b") + step("b")),
      ),
    ).toEqual([
      "5:6-7 error step-loop of step b: These steps can never start: step b waits for step a waits for step b. Take one `after` out, or change the route.",
      "  see crib.thou 3:6-7: step a",
    ]);
  });
});

describe("a step that is done", () => {
  const CODE = "step-early";
  const told = (first: string, second: string): readonly string[] =>
    toldIn(`${HEAD}step a\n${first}step b\n  after a\n${second}`, CODE);
  const done = (day: string): string => `  done by AK on 2026-11-${day}\n`;

  test("before one that it comes after is told which, and how that one stands", () => {
    expect(told("", done("05"))).toEqual([
      "6:3-27 error step-early of step b: This is done, and step a, which it comes after, is not done. Do that first, or correct the order.",
      "  see 3:6-7: step a",
    ]);
    expect(told("  found failed\n", done("05"))[0]).toContain(
      "step a, which it comes after, has failed. Do that first",
    );
    expect(told(done("05"), done("04"))).toEqual([
      "7:3-27 error step-early of step b: This was done on 2026-11-04, before step a on 2026-11-05, which it comes after.",
      "  see 3:6-7: step a",
    ]);
  });

  test("on the same day or later is in order, and of a day that is not known nothing is said", () => {
    for (const [first, second] of [
      [done("05"), done("05")],
      [done("05"), done("06")],
      [done("05"), "  done by AK\n"],
      ["  done by AK\n", done("05")],
      ["  done by AK on 2026-11-50\n", done("05")],
      [done("05"), ""],
      ["", ""],
    ] as const)
      expect(told(first, second)).toEqual([]);
    expect(toldIn(`${HEAD}step b\n  after zz\n${done("05")}`, CODE)).toEqual(
      [],
    );
  });
});

describe("what is next", () => {
  const CODE = "step-open";

  test("is told with what it is, as a sentence that ends once", () => {
    expect(
      messages(
        `${HEAD}step a\n  do "Measure it!"\nstep b\n  do "Measure it"\nstep c\nstep d\n  after c\nstep e\n  done by AK on 2026-11-05\n`,
        CODE,
      ),
    ).toEqual([
      "Next is a: Measure it!",
      "Next is b: Measure it.",
      "Next is c.",
    ]);
  });

  test("is a step that failed, which stays open", () => {
    expect(
      toldIn(`${HEAD}step a\n  found failed\nstep b\n  after a\n`, CODE),
    ).toEqual([
      "3:6-7 warning step-open of step a: This step has failed and stays open: put it right, and what comes after it can go on.",
    ]);
  });

  test("is told at the job's `follow` where only the crib has the step, and names it", () => {
    const crib = {
      "crib.thou":
        'shop harbour\n  units inch\nstep a\n  do "First"\nstep b\nroute r\n  step a\n  step b\n',
    };
    const job = `${HEAD}  use "crib.thou"\n  follow r\n`;
    expect(toldIn(job, CODE, crib)).toEqual([
      "4:10-11 hint step-open of job winch: Next is a: First.",
    ]);
    expect(foundIn(job, CODE, crib).map(({ step }) => step)).toEqual([
      "step a",
    ]);
    expect(
      toldIn(`${job}step a\n  done by AK on 2026-11-05\n`, CODE, crib),
    ).toEqual(["4:10-11 hint step-open of job winch: Next is b."]);
    // a step of the job is its own place
    expect(toldIn(`${job}step a\n  do "First"\n`, CODE, crib)).toEqual([
      "5:6-7 hint step-open of step a: Next is a: First.",
    ]);
    expect(toldIn(job.replace("  follow r\n", ""), CODE, crib)).toEqual([]);
  });
});

describe("the gate", () => {
  const CODE = "cut-unchecked";
  const JOB = `${HEAD}part shaft
part case
journal front on shaft
bore front in case
  limits 0.8750 to 0.8760
fit front of journal front in bore front
  want 0.0010 to 0.0020
line layshaft
  bore front from 0 to 1
hole front in case
bush front in hole front
press front of bush front in hole front
`;

  test("is told before a cut, at what was done all the same, and not of a step that waits for another", () => {
    expect(
      toldIn(
        `${JOB}step ream
  cuts layshaft
step done
  cuts layshaft
  done by AK on 2026-11-05
step later
  after ream
  cuts layshaft
`,
        CODE,
      ),
    ).toEqual([
      "15:6-10 error cut-unchecked of step ream: Don't cut yet: journal front is not measured.",
      "  see 5:9-14: journal front is not measured",
      "19:3-27 error cut-unchecked of step done: This is done, though journal front is not measured. Put that right before the work goes on.",
      "  see 5:9-14: journal front is not measured",
    ]);
    expect(messages(`${JOB}step ream\n  cuts layshaft\n`, "step-open")).toEqual(
      [],
    );
  });

  test("is told before a press, of all that it waits for", () => {
    expect(toldIn(`${JOB}step press\n  presses front\n`, CODE)).toEqual([
      "15:6-11 error cut-unchecked of step press: Don't press yet: hole front is not measured; bush front has neither limits nor a reading of its od.",
      "  see 12:6-11: hole front is not measured",
      "  see 13:6-11: bush front has neither limits nor a reading of its od",
    ]);
  });
});

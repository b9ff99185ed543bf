// Files that use one another in any number and in any circle: a record rests on so many of them and no more, and says so. No clock is read:
// what grew with the square of the uses took minutes for these numbers, and the test's own time would run out.
import fc from "fast-check";
import { expect, test } from "vitest";
import { giveUses } from "../../server/model/give-uses.ts";
import { readLines } from "../../grammar/lines.ts";
import {
  MOST_FILES,
  MOST_LINES_TOGETHER,
  resolvePath,
} from "../../server/model/uses.ts";
import { createFiles } from "../../server/model/project.ts";
import { createProject } from "../../server/rules/check.ts";

interface Tried {
  readonly given: number;
  /** Code, line and sentence of each finding. */
  readonly findings: readonly (readonly [string, number, string])[];
}

/** Checks /job.thou with all of these that it asks for. */
async function tried(files: Readonly<Record<string, string>>): Promise<Tried> {
  const project = createProject({ root: "/" });
  const give = (path: string): void => {
    const text = Object.hasOwn(files, path) ? files[path] : undefined;
    project.setFile(path, text === undefined ? null : readLines(text));
  };
  give("/job.thou");
  let given = 0;
  await giveUses(project, "/job.thou", (path) => {
    give(path);
    given++;
  });
  return {
    given,
    findings: project
      .check("/job.thou")
      .findings.map(({ code, place, message }) => [code, place.line, message]),
  };
}

const HEAD = "job a\n  units mm\n";
const uses = (names: readonly string[]): string =>
  names.map((name) => `  use "${name}"\n`).join("");
const crib = (name: string, rest = ""): string =>
  `shop ${name}\n  units mm\n${rest}`;
const counted = (number: number, name: (at: number) => string): string[] =>
  Array.from({ length: number }, (_, at) => name(at));

/** @param files so many beside the job, each with these lines, all used by the job */
function fan(files: number, lines = ""): Readonly<Record<string, string>> {
  const names = counted(files, (at) => `c${at}.thou`);
  return {
    "/job.thou": `${HEAD}${uses(names)}part x\njournal j on x\n  read 25 with mic-99\n`,
    ...Object.fromEntries(
      names.map((name, at) => [`/${name}`, crib(`c${at}`, lines)]),
    ),
  };
}

const BEYOND =
  /^`c\d+\.thou` leads to more than a record is read with, 200 files and 100,000 lines: what stands in the rest is not known\./u;

test("as many files as a record is read with are read, and what none of them has is said", async () => {
  const { given, findings } = await tried(fan(MOST_FILES - 1));
  expect(given).toBe(MOST_FILES - 1);
  expect(findings.map(([code]) => code)).toEqual(["name-unknown"]);
});

test("of one more nothing is known, at the line that uses it, and no name is faulted that may stand there", async () => {
  const { findings } = await tried(fan(MOST_FILES));
  expect(findings.map(([code, line]) => [code, line])).toEqual([
    ["file-missing", 2 + MOST_FILES - 1],
  ]);
  expect(findings[0]?.[2]).toMatch(BEYOND);
});

test("of very many only about as many are asked for as are read", async () => {
  expect((await tried(fan(5000))).given).toBeLessThan(MOST_FILES + 10);
});

test("of long ones only so many that their lines together are not too many", async () => {
  const lines = 49_990;
  const read = Math.floor(MOST_LINES_TOGETHER / lines);
  const { given, findings } = await tried(fan(40, "\n".repeat(lines)));
  expect(given).toBeLessThan(read + 10);
  expect(findings.map(([code, line]) => [code, line])).toEqual([
    ["file-missing", 2 + read - 1],
  ]);
});

test("where the rest is led to by way of others, the record says by which of its own", async () => {
  const names = counted(MOST_FILES, (at) => `d${at}.thou`);
  const { findings } = await tried({
    "/job.thou": `${HEAD}  use "few.thou"\n  use "c1.thou"\npart x\n`,
    "/few.thou": crib("few"),
    "/c1.thou": crib("c1", uses(names)),
    ...Object.fromEntries(
      names.map((name, at) => [`/${name}`, crib(`d${at}`)]),
    ),
  });
  expect(findings.map(([code, line]) => [code, line])).toEqual([
    ["file-missing", 3],
  ]);
  expect(findings[0]?.[2]).toMatch(BEYOND);
});

test("two files that use each other twenty thousand times", async () => {
  const many = 20_000;
  const { given, findings } = await tried({
    "/job.thou": HEAD + uses(counted(many, () => "crib.thou")),
    "/crib.thou": crib("c", uses(counted(many, () => "job.thou"))),
  });
  expect(given).toBe(1);
  expect(findings).toHaveLength(many);
  expect(new Set(findings.map(([code]) => code))).toEqual(
    new Set(["use-loop"]),
  );
});

test("a use closes a circle where what it leads to leads back, followed one by one", () => {
  const uses8 = fc.array(fc.array(fc.nat(7), { maxLength: 4 }), {
    minLength: 8,
    maxLength: 8,
  });
  fc.assert(
    fc.property(uses8, (of) => {
      const files = createFiles({ root: "/" });
      const name = (at: number): string => `c${at}.thou`;
      of.forEach((to, at) => {
        files.setFile(
          `/${name(at)}`,
          readLines(crib(`c${at}`, uses(to.map(name)))),
        );
      });
      of.forEach((_, at) => {
        for (const { path, state } of files.open(`/${name(at)}`)?.uses ?? []) {
          const reached = new Set([path]);
          for (const each of reached)
            for (const further of of[Number(each?.slice(2, 3))] ?? [])
              reached.add(`/${name(further)}`);
          expect(state).toBe(reached.has(`/${name(at)}`) ? "loop" : "there");
        }
      });
    }),
    { numRuns: 300 },
  );
});

test("twenty thousand files that are not there are not all looked for", async () => {
  const names = counted(20_000, (at) => `gone-${at}.thou`);
  const { given, findings } = await tried({ "/job.thou": HEAD + uses(names) });
  expect(given).toBe(MOST_FILES - 1);
  expect(findings).toHaveLength(MOST_FILES);
  expect(findings.at(-1)?.[2]).toMatch(
    /^`gone-199\.thou` leads to more than a record is read with/u,
  );
});

test("as many files as are read, each of which uses all", async () => {
  const names = ["job.thou", ...counted(MOST_FILES - 1, (at) => `c${at}.thou`)];
  const { given, findings } = await tried(
    Object.fromEntries(
      names.map((name) => [
        `/${name}`,
        (name === "job.thou" ? HEAD : crib(name.replace(".thou", ""))) +
          uses(names),
      ]),
    ),
  );
  expect(given).toBe(MOST_FILES - 1);
  expect(findings).toHaveLength(names.length);
});

test.each([
  "/crib.thou",
  "\\\\crib.thou",
  "C:/crib.thou",
  "file:///yard/crib.thou",
  "https://example.org/crib.thou",
  "../crib.thou",
  "jobs/../../crib.thou",
  "../yard-2/crib.thou",
  "",
])("%j leads to no file, on a disk or by address", (written) => {
  expect(resolvePath("/yard/job.thou", written, "/yard")).toBeUndefined();
  expect(
    resolvePath("file:///yard/job.thou", written, "file:///yard"),
  ).toBeUndefined();
});

test("a path of many ways of writing leads to one file, by address with its signs written out", () => {
  for (const written of [
    "../crib a.thou",
    "..\\crib a.thou",
    "./.././crib a.thou",
    "x//../../crib a.thou",
  ]) {
    expect(resolvePath("/yard/jobs/a.thou", written, "/yard/")).toBe(
      "/yard/crib a.thou",
    );
    expect(
      resolvePath("file:///yard/jobs/a.thou", written, "file:///yard"),
    ).toBe("file:///yard/crib%20a.thou");
  }
  // without a folder that it has to stay in
  expect(resolvePath("job.thou", "", "")).toBeUndefined();
  expect(resolvePath("job.thou", "crib.thou", "")).toBe("crib.thou");
  expect(resolvePath("job.thou", "../crib.thou", "")).toBeUndefined();
});

test("a use that leads out of the folder has no file looked for, and one that leads back to its own neither", () => {
  const files = createFiles({ root: "/yard" });
  files.setFile(
    "/yard/job.thou",
    readLines('job a\n  use "../crib.thou", "job.thou"\n'),
  );
  expect(files.missingUses("/yard/job.thou")).toEqual([]);
  expect(files.restsOn("/yard/job.thou")).toEqual([]);
  expect(files.open("/yard/job.thou")?.uses.map(({ state }) => state)).toEqual([
    "outside",
    "loop",
  ]);
});

test("what stays in the folder leads there", () => {
  expect(resolvePath("/yard/jobs/a.thou", "../crib.thou", "/yard")).toBe(
    "/yard/crib.thou",
  );
});

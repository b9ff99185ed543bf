// `thou check --cache`: what is worked out again and what is not; that no one can tell from the answer whether it was kept; and that nothing
// which happens to the folder is more than work done once more.
import { execFileSync } from "node:child_process";
import {
  mkdir,
  readdir,
  readFile,
  rm,
  symlink,
  truncate,
  utimes,
  writeFile,
} from "node:fs/promises";
import path from "node:path";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { createProject } from "../../server/rules/check.ts";
import { folderWith, thou, type Ran } from "./in-process.ts";

const FORMATS = ["text", "json", "sarif"] as const;

function crib(size: string, uses = ""): string {
  return `shop yard
  units inch
${uses}
reamer r-875
  size ${size}
  oversize bronze-c932 +0.0001 to +0.0003
`;
}

function job(name: string, bore: string, uses = "crib.thou"): string {
  return `job ${name}
  units inch
  use "${uses}"
part shaft
  material steel-1045
part case
  material iron-grey
journal drive on shaft
  limits 0.8738 to 0.8745
hole drive in case
bush drive in hole drive
  material bronze-c932
bore drive in bush drive
  read ${bore} ${bore} at 20 C
fit drive of journal drive in bore drive
  want 0.0008 to 0.0012
line drive
  bore drive from 0 to 1.25
  ream with r-875
`;
}

const SHOP = {
  "a.thou": job("a", "0.8752"),
  "b.thou": job("b", "0.8753", "far.thou"),
  "c.thou": "job c\n  units inch\n",
  "crib.thou": crib("0.8750"),
  "far.thou": crib("0.8755", '  use "crib.thou"'),
};

/** Which records were worked out, by their names, and what was said. */
async function checked(
  cwd: string,
  words: readonly string[],
  parts: { readonly commandFile?: string } = {},
): Promise<Ran & { readonly worked: readonly string[] }> {
  const worked: string[] = [];
  const ran = await thou(["check", ...words], {
    cwd,
    parts: {
      ...parts,
      createProject: () => {
        const project = createProject({ root: "" });
        return {
          ...project,
          check(at) {
            worked.push(path.basename(at, ".thou"));
            return project.check(at);
          },
        };
      },
    },
  });
  return { ...ran, worked };
}

const KEEP = ["--cache", ".answers"];

async function entries(cwd: string): Promise<readonly string[]> {
  const home = path.join(cwd, ".answers/answers");
  const all = await readdir(home, { recursive: true, withFileTypes: true });
  return all
    .filter((each) => each.isFile())
    .map(({ parentPath, name }) => path.join(parentPath, name));
}

describe("what is worked out", () => {
  test("all at first, nothing then; a record that changed, or all that use what changed, however far", async () => {
    const cwd = await folderWith(SHOP);
    const plain = await checked(cwd, []);
    expect(plain.worked).toEqual(["a", "b", "c", "crib", "far"]);
    const work = async (): Promise<readonly string[]> => {
      const now = await checked(cwd, KEEP);
      const without = await checked(cwd, []);
      expect({ ...now, worked: [] }).toEqual({ ...without, worked: [] });
      return now.worked;
    };
    expect(await work()).toEqual(["a", "b", "c", "crib", "far"]);
    expect(await work()).toEqual([]);
    await writeFile(path.join(cwd, "c.thou"), "job c\n  units mm\n");
    expect(await work()).toEqual(["c"]);
    await writeFile(path.join(cwd, "crib.thou"), crib("0.8760"));
    expect(await work()).toEqual(["a", "b", "crib", "far"]);
    await rm(path.join(cwd, "crib.thou"));
    expect(await work()).toEqual(["a", "b", "far"]);
    expect(await work()).toEqual([]);
    await writeFile(path.join(cwd, "crib.thou"), crib("0.8760"));
    // what was kept of the crib itself holds again
    expect(await work()).toEqual(["a", "b", "far"]);
    expect(await entries(cwd)).toHaveLength(5);
  });

  test("nothing in a circle of files that use one another; all of it where one of them changed", async () => {
    const round = ["a-one", "a-two", "a-three"];
    const files = Object.fromEntries(
      round.map((name, at) => [
        `${name}.thou`,
        job(name, "0.8752", `${round[(at + 1) % 3] ?? ""}.thou`),
      ]),
    );
    const cwd = await folderWith({
      ...files,
      // of no circle themselves
      "other.thou": "job other\n  units inch\n",
      "rests.thou": job("rests", "0.8752", "a-two.thou"),
      "self.thou": job("self", "0.8752", "self.thou"),
    });
    // the second comes right after the first, which it rests on
    const all = ["a-one", "a-three", "a-two", "other", "rests", "self"];
    expect((await checked(cwd, KEEP)).worked).toEqual(all);
    expect((await checked(cwd, KEEP)).worked).toEqual([]);
    await writeFile(
      path.join(cwd, "a-two.thou"),
      job("a-two", "0.8753", "a-three.thou"),
    );
    const now = await checked(cwd, KEEP);
    expect(now.worked).toEqual(["a-one", "a-three", "a-two", "rests"]);
    expect(now.out).toBe((await checked(cwd, [])).out);
    expect((await checked(cwd, KEEP)).worked).toEqual([]);
  });

  test("all again by another build of the tool", async () => {
    const cwd = await folderWith({ ...SHOP, one: "1", two: "2" });
    const by = async (file: string) =>
      (await checked(cwd, KEEP, { commandFile: path.join(cwd, file) })).worked
        .length;
    expect([await by("one"), await by("one"), await by("two")]).toEqual([
      5, 0, 5,
    ]);
    // a build that can't be told is never taken for another
    expect([await by("none"), await by("none")]).toEqual([5, 5]);
  });

  test("THOU_CACHE names a folder for every check, --no-cache goes before it", async () => {
    const cwd = await folderWith(SHOP);
    const env = { THOU_CACHE: ".answers" };
    await thou(["check", "--no-cache"], { cwd, env });
    expect(await readdir(cwd)).not.toContain(".answers");
    await thou(["check"], { cwd, env });
    expect(await readdir(cwd)).toContain(".answers");
  });

  test("a crib that can't be read is said at each check", async () => {
    const cwd = await folderWith(SHOP);
    await checked(cwd, KEEP);
    await writeFile(path.join(cwd, "crib.thou"), new Uint8Array([0xff, 0x41]));
    for (let time = 0; time < 2; time++) {
      const { err, code } = await checked(cwd, ["a.thou", ...KEEP]);
      expect([code, err]).toEqual([
        2,
        expect.stringContaining("crib.thou cannot be read: it is not UTF-8"),
      ]);
    }
  });
});

/** An edit: a file that gets another text, or goes. */
const TEXTS = [
  ...Object.values(SHOP),
  job("a", "0.8762"),
  job("a", "0.8752", "far.thou"),
  job("a", "0.8752", "a.thou"),
  crib("0.8750", '  use "far.thou"'),
  crib("0.9", '  use "none.thou"'),
  "fit ( of\n\u{202e}",
  "",
];

test("property: after any edits of records and cribs the kept answer is the one that is worked out", async () => {
  const edit = fc.record({
    name: fc.constantFrom(...Object.keys(SHOP), "none.thou"),
    text: fc.option(
      fc.constantFrom<string | Uint8Array>(...TEXTS, new Uint8Array([0xff])),
    ),
  });
  await fc.assert(
    fc.asyncProperty(
      fc.array(
        fc.record({
          edits: fc.array(edit, { minLength: 1, maxLength: 3 }),
          format: fc.constantFrom(...FORMATS),
          asked: fc.constantFrom([], ["a.thou"], ["crib.thou", "b.thou"]),
        }),
        { minLength: 2, maxLength: 6 },
      ),
      async (steps) => {
        const cwd = await folderWith(SHOP);
        await checked(cwd, KEEP);
        for (const { edits, format, asked } of steps) {
          for (const { name, text } of edits) {
            const at = path.join(cwd, name);
            if (text === null) await rm(at, { force: true });
            else await writeFile(at, text);
          }
          const words = [...asked, "--format", format];
          const kept = await checked(cwd, [...words, ...KEEP]);
          const { worked: all, ...fresh } = await checked(cwd, words);
          expect({ ...kept, worked: [] }).toEqual({ ...fresh, worked: [] });
          // and once more, where all is kept
          const again = await checked(cwd, [...words, ...KEEP]);
          expect(again.out).toBe(fresh.out);
          // what can't be read has to be said again, and so what rests on it is worked out
          if (fresh.err === "") expect(again.worked).toEqual([]);
          expect(again.worked.length).toBeLessThanOrEqual(all.length);
        }
      },
    ),
    { numRuns: 15, seed: 6 },
  );
}, 60_000);

test("what is said of a crib that is not there follows what lies beside it, answers kept or not", async () => {
  const cwd = await folderWith({
    "job.thou": 'job j\n  units inch\n  use "cribs/Bench.thou"\n',
    "cribs/bench.thou": "shop bench\n  units inch\n",
    "cribs/pump.thou": "shop pump\n  units inch\n",
  });
  const said = async (): Promise<string> => {
    const kept = await checked(cwd, ["job.thou", ...KEEP]);
    expect((await checked(cwd, ["job.thou"])).out).toBe(kept.out);
    return kept.out.replaceAll(/\s+/gu, " ");
  };
  const meant = "did you mean `cribs/bench.thou`?";
  expect(await said()).toContain(meant);
  expect(await said()).toContain(meant);
  await rm(path.join(cwd, "cribs/bench.thou"));
  expect(await said()).not.toContain("did you mean");
});

describe("what happens to the folder", () => {
  const damages: readonly (readonly [
    string,
    (file: string, other: string) => Promise<unknown>,
  ])[] = [
    ["cut short", (file) => truncate(file, 40)],
    ["empty", (file) => truncate(file, 0)],
    [
      "one bit changed",
      async (file) => {
        const bytes = await readFile(file);
        bytes[bytes.length >> 1] = (bytes[bytes.length >> 1] ?? 0) ^ 1;
        await writeFile(file, bytes);
      },
    ],
    ["a text of someone else", (file) => writeFile(file, "{}\n")],
    [
      "the answer of another record",
      async (file, other) => {
        await writeFile(file, await readFile(other));
      },
    ],
    [
      "a folder in its place",
      async (file) => {
        await rm(file);
        await mkdir(file);
      },
    ],
    [
      "a link to itself",
      async (file) => {
        await rm(file);
        await symlink(file, file);
      },
    ],
    [
      "a pipe that nobody writes to",
      async (file) => {
        await rm(file);
        execFileSync("mkfifo", [file]);
      },
    ],
  ];

  test.each(damages)(
    "an answer that is %s is worked out anew",
    async (_, damage) => {
      const cwd = await folderWith(SHOP);
      const plain = await checked(cwd, ["--format", "json"]);
      await checked(cwd, KEEP);
      const files = await entries(cwd);
      for (const [index, file] of files.entries())
        await damage(file, files[(index + 1) % files.length] ?? "");
      const after = await checked(cwd, ["--format", "json", ...KEEP]);
      expect(after.out).toBe(plain.out);
      expect(after.code).toBe(plain.code);
      expect(after.worked.length).toBe(5);
      // at most one sentence, where it could not be put right
      expect(after.err.match(/thou:/gu) ?? []).toHaveLength(
        after.err === "" ? 0 : 1,
      );
    },
  );

  test("one that can't be written to: one sentence, and the same answer", async () => {
    const cwd = await folderWith(SHOP);
    const plain = await checked(cwd, []);
    await checked(cwd, KEEP);
    await rm(path.join(cwd, ".answers/answers"), { recursive: true });
    await writeFile(path.join(cwd, ".answers/answers"), "");
    const blocked = await checked(cwd, KEEP);
    expect([blocked.out, blocked.code]).toEqual([plain.out, plain.code]);
    expect(blocked.err.replaceAll(/\s+/gu, " ")).toMatch(
      /^thou: answers cannot be kept in \.answers: .*\. The check does without\. $/u,
    );
    // SARIF says nothing of it: it is not about the check
    const sarif = await checked(cwd, ["--format", "sarif", ...KEEP]);
    expect(sarif.out).toBe((await checked(cwd, ["--format", "sarif"])).out);
  });

  test("one that is someone else's is left alone, one that is a file as well", async () => {
    const cwd = await folderWith({ ...SHOP, "letters/one.txt": "x" });
    const plain = await checked(cwd, []);
    for (const [name, why] of [
      ["letters", "letters holds other files and no answers of thou check"],
      [
        "letters/one.txt",
        "answers cannot be kept in letters/one.txt: a file of that name is there already.",
      ],
    ] as const) {
      const ran = await checked(cwd, ["--cache", name]);
      expect([ran.out, ran.code]).toEqual([plain.out, plain.code]);
      expect(ran.err.replaceAll(/\s+/gu, " ")).toContain(why);
    }
    expect(await readdir(path.join(cwd, "letters"))).toEqual(["one.txt"]);
  });

  test("one that would lie under a file, or where the system makes no folders", async () => {
    const cwd = await folderWith({ ...SHOP, "letters/one.txt": "x" });
    const plain = await checked(cwd, []);
    const nowhere =
      process.platform === "linux"
        ? ([["/proc/thou/answers", "there is no such file or folder"]] as const)
        : [];
    for (const [name, why] of [
      ["letters/one.txt/a/b", "a part of its path is a file, not a folder"],
      ...nowhere,
    ] as const) {
      const ran = await checked(cwd, ["--cache", name]);
      expect([ran.out, ran.code]).toEqual([plain.out, plain.code]);
      expect(ran.err.replaceAll(/\s+/gu, " ")).toContain(
        `answers cannot be kept in ${name}: ${why}.`,
      );
    }
  });

  test("two checks at once share it", async () => {
    const cwd = await folderWith(SHOP);
    const plain = await checked(cwd, []);
    const both = await Promise.all([checked(cwd, KEEP), checked(cwd, KEEP)]);
    for (const ran of both)
      expect([ran.out, ran.err, ran.code]).toEqual([plain.out, "", plain.code]);
    expect((await checked(cwd, KEEP)).worked).toEqual([]);
    expect(await readdir(path.join(cwd, ".answers/writing"))).toEqual([]);
  });

  test("what a killed check left half written goes once it is old", async () => {
    const cwd = await folderWith(SHOP);
    await checked(cwd, KEEP);
    const writing = path.join(cwd, ".answers/writing");
    await writeFile(path.join(writing, "old"), "");
    await writeFile(path.join(writing, "new"), "");
    await utimes(path.join(writing, "old"), 0, 0);
    await checked(cwd, KEEP);
    expect(await readdir(writing)).toEqual(["new"]);
  });
});

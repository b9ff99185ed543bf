// Which files a command is about, against a plain walk that asks the system where each file really is; and the list that holds their names.
import { mkdirSync, readdirSync, realpathSync, statSync } from "node:fs";
import { mkdir, symlink, writeFile } from "node:fs/promises";
import path from "node:path";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { findFiles } from "../../server/cli/find-files.ts";
import { createNames } from "../../server/cli/name-list.ts";
import { folderWith } from "./in-process.ts";

const FOLDERS = ["", "a", "a/b", "a-b", "c", ".h", "node_modules"];
const NAMES = ["x.thou", "y.thou", "é.thou", "🔩.thou", ".z.thou", "note.txt"];
const files = FOLDERS.flatMap((folder) =>
  NAMES.map((name) => path.posix.join(folder, name)),
);
const TARGETS = [...FOLDERS.map((each) => each || "."), ...files];

/** Every file that is asked for, or is a record in a folder asked for or below, or that a link there leads to: by its real path. */
function reallyIn(at: string, seen = new Set<string>()): Set<string> {
  const real = realpathSync(at);
  if (seen.has(real)) return seen;
  seen.add(real);
  if (!statSync(real).isDirectory()) return seen;
  for (const name of readdirSync(real)) {
    if (name.startsWith(".") || name === "node_modules") continue;
    const next = path.join(real, name);
    if (name.endsWith(".thou") || statSync(next).isDirectory())
      reallyIn(next, seen);
  }
  return seen;
}

test("property: each file once, by a name that leads to it, in the order of the bytes of the names", async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.uniqueArray(fc.constantFrom(...files), { maxLength: 12 }),
      fc.array(
        fc.tuple(
          fc.constantFrom("l.thou", "a/l.thou", "c/l", "a/b/l", "l"),
          fc.constantFrom(...TARGETS),
        ),
        { maxLength: 3 },
      ),
      fc.array(fc.constantFrom(...TARGETS), { minLength: 1, maxLength: 3 }),
      async (there, links, asked) => {
        const cwd = realpathSync(
          await folderWith(
            Object.fromEntries(there.map((at) => [at, "job\n"])),
          ),
        );
        for (const folder of FOLDERS)
          mkdirSync(path.join(cwd, folder), { recursive: true });
        const isThere = (at: string): boolean =>
          FOLDERS.includes(at === "." ? "" : at) || there.includes(at);
        for (const [from, to] of links)
          if (isThere(to))
            await symlink(path.join(cwd, to), path.join(cwd, from)).catch(
              // two draws may be of one name
              () => undefined,
            );
        const words = asked.filter(isThere);
        if (words.length === 0) return;
        const found = await findFiles(words, cwd);
        const list = [...found.files];
        expect(found.problems).toEqual([]);
        expect(found.files).toHaveLength(list.length);
        expect(found.files.slice(0, 2)).toEqual(list.slice(0, 2));
        expect(
          found.files.slice(Math.max(0, list.length - 1), list.length + 5),
        ).toEqual(list.slice(-1));
        for (const { path: at, name } of list)
          expect(at).toBe(path.join(cwd, name));
        const real = list.map((file) => realpathSync(file.path));
        const all = new Set<string>();
        for (const word of words) reallyIn(path.join(cwd, word), all);
        expect(real.sort()).toEqual(
          [...all].filter((at) => statSync(at).isFile()).sort(),
        );
        const names = list.map(({ name }) => Buffer.from(name));
        expect(names).toEqual([...names].sort((a, b) => Buffer.compare(a, b)));
      },
    ),
    { numRuns: 150, seed: 11 },
  );
}, 60_000);

test("a folder that can't be looked into is said, and all others are gone through", async () => {
  const cwd = await folderWith({ "b/x.thou": "", "x.thou": "" });
  await mkdir(path.join(cwd, "a"));
  await symlink("a.thou", path.join(cwd, "a/a.thou"));
  await writeFile(path.join(cwd, "a/b.thou"), "");
  const found = await findFiles([".", "none"], cwd);
  expect([...found.files].map(({ name }) => name)).toEqual([
    "a/b.thou",
    "b/x.thou",
    "x.thou",
  ]);
  expect(found.problems).toEqual([
    "none cannot be read: there is no such file or folder.",
    "a/a.thou cannot be read: its links lead in a circle.",
  ]);
});

describe("a list of names", () => {
  test("gives back each name, in the order of the bytes", () => {
    fc.assert(
      fc.property(
        fc.array(fc.string({ unit: "binary", maxLength: 40 }), {
          maxLength: 200,
        }),
        (all) => {
          const names = createNames();
          for (const name of all) names.add(name);
          const list = names.sorted();
          expect(
            Array.from({ length: list.length }, (_, at) => list.at(at)),
          ).toEqual(
            [...all].sort((a, b) =>
              Buffer.compare(Buffer.from(a), Buffer.from(b)),
            ),
          );
        },
      ),
      { seed: 3 },
    );
  });
});

// `thou check -`: a record that another program writes says what the file says that it stands for.
import { readFile } from "node:fs/promises";
import path from "node:path";
import { expect, test } from "vitest";
import { createProject } from "../../server/rules/check.ts";
import { folderWith, thou, type Ran, type World } from "./in-process.ts";

const SHOP = path.join(import.meta.dirname, "../../samples/shop");
const parts = {
  createProject: () => createProject({ root: "/" }),
};
const check = async (
  words: readonly string[],
  world: Omit<World, "parts">,
): Promise<Ran> => thou(["check", ...words], { ...world, parts });

test.each(["text", "json", "sarif"])(
  "a record with those that it uses, as %s",
  async (format) => {
    const stdin = await readFile(path.join(SHOP, "winch.thou"), "utf8");
    const asked = ["--format", format];
    const ofFile = await check(["winch.thou", ...asked], { cwd: SHOP });
    expect(ofFile.code).toBe(1);
    expect(
      await check(["-", "--as", "winch.thou", ...asked], { cwd: SHOP, stdin }),
    ).toEqual(ofFile);
  },
);

test.each([
  [".", "winch.thou"],
  ["", "winch.thou"],
  ["jobs", "jobs/winch.thou"],
])("a record stands for no folder: --as %j", async (as, file) => {
  const cwd = await folderWith({ "jobs/a.thou": "job a\n" });
  expect(
    await check(["-", "--as", as], { cwd, stdin: "job a\n", columns: 200 }),
  ).toEqual({
    code: 2,
    out: "",
    err: `thou: --as takes the file that the record stands for, such as ${file}, and not a folder.\n`,
  });
});

test("what stands on the disk in its place is not looked at, and without a place it belongs here", async () => {
  const cwd = await folderWith({
    "a.thou": "job a\n",
    "crib.thou": "reamer r-1\n  size 0.875 in\n",
  });
  const stdin = 'job a\n  use "crib.thou"\n  use "gone.thou"\n';
  const inItsPlace = await check(["-", "--as", "a.thou", "--brief"], {
    cwd,
    stdin,
  });
  expect(inItsPlace.out).toContain("a.thou:3:7 error file-missing");
  expect(inItsPlace.out).not.toContain("crib.thou");
  const here = await check(["-", "--brief"], { cwd, stdin });
  expect(here).toEqual({
    ...inItsPlace,
    out: inItsPlace.out.replaceAll("a.thou:3", "-:3"),
  });
});

test("bytes that are no UTF-8 are told", async () => {
  const cwd = await folderWith({});
  expect(
    await check(["-"], { cwd, stdin: new Uint8Array([0x61, 0xff]) }),
  ).toMatchObject({
    code: 2,
    err: "thou: - cannot be read: it is not UTF-8 at line 1, column 2 (byte 0xFF); save it as UTF-8.\n",
  });
});

test.each([
  [["-", "a.thou"], "together with files"],
  [["-", "--staged"], "leave --staged and --changed-since off"],
  [["-", "--changed-since", "main"], "leave --staged and --changed-since off"],
  [["a.thou", "--as", "b.thou"], "give - as the only path"],
])("%j cannot be asked", async (words, said) => {
  const cwd = await folderWith({ "a.thou": "job a\n" });
  const ran = await check(words, { cwd, stdin: "" });
  expect(ran.code).toBe(2);
  expect(ran.err).toContain(said);
  expect(ran.out).toBe("");
});

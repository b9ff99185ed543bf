// What each folder's project is given: the file that is asked for, all that it uses, what has changed since, and nothing twice.
import { expect, test } from "vitest";
import { readLines } from "../../grammar/lines.ts";
import { createRoots } from "../../server/lsp/roots.ts";
import { CRIB, JOB } from "./winch.ts";

const FOLDER = "file:///shop";
const URI = `${FOLDER}/winch.thou`;
const CRIB_URI = `${FOLDER}/crib.thou`;

function roots() {
  const texts = new Map([
    [URI, JOB],
    [CRIB_URI, CRIB],
  ]);
  const beside = new Set<string>();
  const made = createRoots();
  const asked: string[] = [];
  const open = async (path = URI) => {
    const wanted: string[] = [];
    const found = await made.open(
      FOLDER,
      path,
      {
        linesOf: (each) => {
          asked.push(each);
          const text = texts.get(each);
          return Promise.resolve(text === undefined ? null : readLines(text));
        },
        besideOf: () => Promise.resolve([...beside]),
      },
      (paths) => wanted.push(...paths),
    );
    return {
      files: found?.shop.files.map((each) => each.path),
      wanted,
      asked: asked.splice(0),
      beside: found?.besideOf(CRIB_URI),
    };
  };
  return { made, open, texts, beside };
}

test("a record is read with what it uses, once", async () => {
  const { made, open } = roots();
  const both = [URI, CRIB_URI];
  const first = await open();
  expect(first.files?.toSorted()).toEqual(both.toSorted());
  expect(first).toMatchObject({ wanted: [CRIB_URI], asked: both });
  expect(await open()).toMatchObject({ wanted: [], asked: [] });
  expect(made.given()).toEqual(both);
});

test("what is not there is looked for once, and is there when it has come", async () => {
  const { made, open, texts, beside } = roots();
  texts.delete(CRIB_URI);
  expect(await open()).toEqual({
    files: [URI],
    wanted: [CRIB_URI],
    asked: [URI, CRIB_URI],
    beside: [],
  });
  // what comes beside it, or goes, may be what was meant
  beside.add("crip.thou");
  made.stale(`${FOLDER}/below/crip.thou`);
  expect((await open()).beside).toEqual([]);
  made.stale(`${FOLDER}/crip.thou`);
  expect((await open()).beside).toEqual(["crip.thou"]);
  expect((await open()).asked).toEqual([]);
  texts.set(CRIB_URI, CRIB);
  made.stale(CRIB_URI);
  const now = await open();
  expect(now.asked).toEqual([CRIB_URI]);
  expect(now.files).toHaveLength(2);
  expect(now.beside).toEqual([]);
  expect((await open(`${FOLDER}/none.thou`)).files).toBeUndefined();
});

test("new lines go to whoever had the old ones, and are not asked for again", async () => {
  const { made, open } = roots();
  made.changed(URI, readLines("")); // nobody has it
  expect(made.given()).toEqual([]);
  await open();
  made.stale(URI);
  made.changed(URI, readLines(JOB.replace('  use "crib.thou"\n', "")));
  expect(await open()).toMatchObject({ files: [URI], wanted: [], asked: [] });
});

test("a folder goes with its last file, unless it is to be kept", async () => {
  const { made, open } = roots();
  await open();
  made.drop(CRIB_URI, (folder, given) => {
    expect([folder, ...given]).toEqual([FOLDER, URI]);
    return true;
  });
  expect(made.given()).toEqual([URI]);
  // its use of the crib is as good as new
  expect((await open()).asked).toEqual([CRIB_URI]);
  made.drop(URI, () => false);
  expect(made.given()).toEqual([]);
});

test("a file looked at by itself is given its own lines and no others, and has no shop before it was opened", async () => {
  const { made, open } = roots();
  const look = () => made.look(FOLDER, URI, readLines(JOB));
  expect(look()?.file.entries.length).toBeGreaterThan(5);
  expect(look()?.shop).toBeUndefined();
  expect(made.given()).toEqual([URI]);
  expect((await open()).asked).toEqual([CRIB_URI]);
  expect(look()?.shop).toBeDefined();
});

// The overview through the protocol: it follows what is typed, in the record and in its crib, keeps to the levels that are set, and answers
// whatever it is asked. What it says is tested with the ide.
import { expect, test } from "vitest";
import type { Overview } from "../../server/protocol/overview.ts";
import { rangeOf, type Editor } from "./editor.ts";
import { serveHere } from "./in-process.ts";
import { CRIB, JOB } from "./winch.ts";

const FOLDER = "file:///shop";
const URI = `${FOLDER}/winch.thou`;
const CRIB_URI = `${FOLDER}/crib.thou`;

async function shop() {
  const here = serveHere(new Map([[CRIB_URI, CRIB]]));
  await here.editor.start([FOLDER]);
  await here.editor.open(URI, JOB);
  return here;
}

const ask = (editor: Editor, uri: unknown = URI): Promise<Overview | null> =>
  editor.request("thou/overview", { uri });

test("it follows the record and its crib as they are typed", async () => {
  const { editor } = await shop();
  expect((await ask(editor))?.summary).toBe("1 to measure, 3 in tolerance");
  const reading = rangeOf(JOB, "0.87432 0.87428 0.87430");
  await editor.change(URI, { range: reading, text: "0.87470" });
  expect((await ask(editor))?.summary).toMatch(/\bout\b/);
  await editor.change(URI, { text: JOB });
  await editor.open(CRIB_URI, CRIB.replace("size 0.8755", "size 0.8765"));
  expect((await ask(editor))?.summary).toMatch(/^1 out/);
});

test("its places are addresses that the editor knows", async () => {
  const { editor } = await shop();
  const overview = await ask(editor);
  const fits = overview?.groups.find(({ label }) => label === "Running fits");
  expect(fits?.children).toMatchObject([
    {
      label: "fit front",
      place: { uri: URI, line: rangeOf(JOB, "fit front").start.line },
    },
  ]);
});

test("a record on the disk is answered, one that is not there is null, and so is whatever is no address", async () => {
  const { editor } = await shop();
  expect((await ask(editor, CRIB_URI))?.name).toBe("shop harbour");
  for (const uri of [`${FOLDER}/none.thou`, "", 7, null, {}])
    expect(await ask(editor, uri)).toBeNull();
  expect(await editor.request("thou/overview", null)).toBeNull();
});

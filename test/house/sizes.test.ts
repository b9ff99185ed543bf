// A file holds one idea, in about 300 lines. One that is far longer stands here with what it is: a table, or one machine that would be no
// clearer in pieces.
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { expect, test } from "vitest";

const root = path.join(import.meta.dirname, "..", "..");

/** Past so many lines a file is split, or has its reason here. */
const MOST = 400;

const LONG: Readonly<Record<string, string>> = {
  "grammar/thou.ohm-bundle.ts": "made from the grammar",
  "grammar/examples.ts": "made from the grammar",
  "grammar/usual-shapes.ts": "made from the grammar",
  "grammar/vocabulary.ts": "the one table of entries and facts",
  "server/rules/pages.ts": "made from the pages of findings",
  "server/model/facts.ts": "one reader for each rule of a fact, in a table",
  "server/archive/schema.ts": "the one table of tables and columns",
};

test("no file is far longer than one idea takes, but for those with a reason", () => {
  const long = ["grammar", "server", "client"].flatMap((room) =>
    readdirSync(path.join(root, room), { recursive: true, encoding: "utf8" })
      .map((file) => `${room}/${file.replaceAll("\\", "/")}`)
      .filter((file) => file.endsWith(".ts"))
      .filter((file) => {
        const text = readFileSync(path.join(root, file), "utf8");
        return MOST < text.split("\n").length || file in LONG;
      }),
  );
  expect(long.toSorted()).toEqual(Object.keys(LONG).toSorted());
});

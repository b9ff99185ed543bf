// A file holds one idea, in about 300 lines. One that is far longer stands here with what it is: a table, or one machine that would be no
// clearer in pieces. So it is with functions: one that does a thing is short, one that keeps a state together with the functions that change it
// may be somewhat longer, and a longer one stands here with its reason.
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import ts from "typescript";
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

/** Past so many lines a function is split, or has its reason below. */
const MOST_OF_ONE = 80;
/** The same for one that holds others, each of which can be read alone. */
const MOST_WITH_OTHERS = 100;
/** A function within another counts as one to be read alone if it takes so many lines. */
const ONE_TO_READ = 4;

const LONG_FUNCTIONS: Readonly<Record<string, string>> = {
  "server/lsp/requests.ts answerRequests": "a list of requests and answers",
  "server/lsp/session.ts createSession":
    "puts the parts of the session together",
};

const files = ["grammar", "server", "client"].flatMap((room) =>
  readdirSync(path.join(root, room), { recursive: true, encoding: "utf8" })
    .map((file) => `${room}/${file.replaceAll("\\", "/")}`)
    .filter((file) => file.endsWith(".ts"))
    .map((file) => ({
      file,
      text: readFileSync(path.join(root, file), "utf8"),
    })),
);

test("no file is far longer than one idea takes, but for those with a reason", () => {
  const long = files
    .filter(({ file, text }) => MOST < text.split("\n").length || file in LONG)
    .map(({ file }) => file);
  expect(long.toSorted()).toEqual(Object.keys(LONG).toSorted());
});

/** The functions of a file that have a body of statements, with their lines, and whether they hold two or more others. */
function functionsOf(file: string, text: string) {
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
  const found: { name: string; lines: number; holds: boolean }[] = [];
  const lineAt = (offset: number): number =>
    source.getLineAndCharacterOfPosition(offset).line;
  /** Gives how many functions to be read alone it has found. */
  function look(node: ts.Node): number {
    let within = 0;
    ts.forEachChild(node, (child) => {
      within += look(child);
    });
    if (!hasBody(node)) return within;
    const lines = lineAt(node.end) - lineAt(node.getStart(source)) + 1;
    found.push({ name: nameOf(node), lines, holds: 2 <= within });
    return within + (ONE_TO_READ <= lines ? 1 : 0);
  }
  look(source);
  return found;
}

function hasBody(node: ts.Node): boolean {
  return (
    ts.isFunctionLike(node) &&
    "body" in node &&
    node.body !== undefined &&
    ts.isBlock(node.body)
  );
}

function nameOf(node: ts.Node): string {
  const named = [node, node.parent].find(
    (each): each is ts.NamedDeclaration => "name" in each,
  );
  return named?.name?.getText() ?? "without a name";
}

test("no function is longer than can be read at once, but for those with a reason", () => {
  const all = files
    .filter(({ file }) => !(LONG[file] ?? "").startsWith("made from"))
    .filter(({ text }) => MOST_OF_ONE < text.split("\n").length)
    .flatMap(({ file, text }) =>
      functionsOf(file, text).map((each) => ({
        ...each,
        name: `${file} ${each.name}`,
      })),
    );
  // else the look at them is broken
  expect(all.length).toBeGreaterThan(1000);
  const long = all
    .filter(
      ({ lines, holds }) => (holds ? MOST_WITH_OTHERS : MOST_OF_ONE) < lines,
    )
    .map(({ name, lines }) =>
      name in LONG_FUNCTIONS ? name : `${name}, ${String(lines)} lines`,
    );
  expect(long.toSorted()).toEqual(Object.keys(LONG_FUNCTIONS).toSorted());
});

// What the page of the bench view is told, and what is kept of it.
import { expect, test } from "vitest";
import type { ToPage } from "../../client/bench-page/messages.ts";
import { createSaid } from "../../client/bench-said.ts";
import { readLines } from "../../grammar/lines.ts";
import { benchOf } from "../../server/ide/bench.ts";
import { createProject } from "../../server/rules/check.ts";
import { CRIB, JOB } from "../lsp/winch.ts";

const FOLDER = "file:///shop";
const URI = `${FOLDER}/winch.thou`;

function view() {
  const project = createProject({ root: FOLDER });
  project.setFile(`${FOLDER}/crib.thou`, readLines(CRIB));
  project.setFile(URI, readLines(JOB));
  const open = project.open(URI);
  if (open === undefined) throw new Error("the job is not there");
  return benchOf(open, 0, 600, (path) => path);
}

function said() {
  const told: ToPage[] = [];
  return { said: createSaid((message) => told.push(message)), told };
}

test("before anything is drawn, nothing is old and nothing comes again", () => {
  const { said: page, told } = said();
  page.again();
  expect(told).toEqual([]);
  expect(page.placeOf("fit front")).toBeUndefined();
  page.nothing();
  page.old("The Thou server is not running.", true);
  expect(told).toEqual([
    {
      type: "nothing",
      notice: "Open a record (a file that ends in .thou) to see its job here.",
    },
    { type: "old", notice: "The Thou server is not running.", restart: true },
  ]);
});

test("what was drawn last comes again as it was, leads to its lines, and is said to be old", () => {
  const { said: page, told } = said();
  const drawn = view();
  page.view(URI, "winch.thou", drawn);
  page.old("The record is not there any more.", false);
  page.again();
  const shown = { type: "view", uri: URI, file: "winch.thou", view: drawn };
  expect(told).toEqual([
    shown,
    {
      type: "old",
      notice:
        "The record is not there any more. What you see is old: the last that was drawn.",
      restart: false,
    },
    shown,
  ]);
  expect(page.placeOf("fit front")).toMatchObject({ uri: URI });
  expect(page.placeOf("fit rear")).toBeUndefined();
});

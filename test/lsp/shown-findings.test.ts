// A finding is shown as it was, until its level is another; one that leads to another file is shown afresh, since the editor may know that
// file by another address.
import { expect, test } from "vitest";
import { readLines } from "../../grammar/lines.ts";
import type { Levels } from "../../server/ide/levels.ts";
import { clientOf } from "../../server/lsp/client.ts";
import { createShow } from "../../server/lsp/shown-findings.ts";
import { createProject, findingsIn } from "../../server/rules/check.ts";
import { FULL } from "./editor.ts";
import { CRIB, JOB } from "./winch.ts";

const FOLDER = "file:///shop";
const URI = `${FOLDER}/winch.thou`;

function findings(text: string) {
  const project = createProject({ root: FOLDER });
  project.setFile(`${FOLDER}/crib.thou`, readLines(CRIB));
  project.setFile(URI, readLines(text));
  const open = project.open(URI);
  return open === undefined ? [] : findingsIn(open);
}

function showing() {
  let levels: Levels = {};
  let prefix = "";
  const show = createShow(
    {
      client: clientOf(FULL),
      uriOf: (path) => prefix + path,
      versionOf: () => null,
    },
    () => levels,
  );
  return {
    show,
    set: (now: Levels) => {
      levels = now;
    },
    rename: (now: string) => {
      prefix = now;
    },
  };
}

test("the same finding is the same object as long as the levels are the same", () => {
  const [finding] = findings(JOB.replace("want", "wnat"));
  if (finding === undefined) throw new Error("nothing is found");
  const { show, set } = showing();
  const first = show(finding);
  expect(first).toMatchObject({
    diagnostic: { code: "word-unknown", severity: 1 },
    isFault: true,
  });
  expect(show(finding)).toBe(first);
  set({ "word-unknown": "hint" });
  expect(show(finding)?.diagnostic.severity).toBe(4);
  set({ "word-unknown": "off" });
  expect(show(finding)).toBeUndefined();
  expect(show(finding)).toBeUndefined();
});

test("where another file is the other half, its address is asked for each time", () => {
  const coarse = findings(
    JOB.replace("0.0008 to 0.0016", "0.00141 to 0.00142"),
  ).find(({ code }) => code === "gauge-coarse");
  if (coarse === undefined) throw new Error("it is not found");
  const { show, rename } = showing();
  const where = () =>
    show(coarse)?.diagnostic.relatedInformation?.map(
      ({ location }) => location.uri,
    );
  expect(where()).toEqual([`${FOLDER}/crib.thou`]);
  rename("other:");
  expect(where()).toEqual([`other:${FOLDER}/crib.thou`]);
});

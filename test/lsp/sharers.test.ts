// Who shares a name: of a crib's, every record that uses the crib; of a job's, nobody that is not open. What was opened for it is let go.
import { expect, test } from "vitest";
import { NEVER } from "../../server/lsp/clock.ts";
import { createRecordPaths } from "../../server/lsp/record-paths.ts";
import { withSharers } from "../../server/lsp/sharers.ts";
import { createWorkspace } from "../../server/lsp/workspace.ts";
import { rangeOf } from "./editor.ts";
import { createClock, filesIn } from "./in-process.ts";
import { CRIB, JOB } from "./winch.ts";

const FOLDER = "file:///shop";
const CRIB_URI = `${FOLDER}/crib.thou`;
const URI = `${FOLDER}/winch.thou`;

function shop() {
  const clock = createClock();
  const files = filesIn(
    new Map([
      [CRIB_URI, CRIB],
      [URI, JOB],
      [`${FOLDER}/pump.thou`, JOB],
      [`${FOLDER}/alone.thou`, "job alone\n  units inch\n"],
    ]),
  );
  const workspace = createWorkspace(files);
  workspace.setFolders([FOLDER]);
  const records = createRecordPaths(true, workspace, files, clock);
  const askers = (uri: string, text: string, piece: string) =>
    withSharers(
      { textDocument: { uri }, position: rangeOf(text, piece).start },
      NEVER,
      { workspace, records, clock },
      (open, others) => [open, ...others].map(({ path }) => path),
    );
  return { workspace, askers };
}

test("a name of the crib is shared by the records that use it, and they are let go again", async () => {
  const { workspace, askers } = shop();
  expect(await askers(URI, JOB, "r-8755")).toEqual([
    URI,
    CRIB_URI,
    `${FOLDER}/pump.thou`,
  ]);
  // the one that was asked for is whoever asked's to let go
  workspace.releaseIfClosed(URI);
  expect(workspace.known().filter((path) => path.includes("pump"))).toEqual([]);
});

test("a name of a job is the job's alone", async () => {
  const { askers } = shop();
  expect(await askers(URI, JOB, "front")).toEqual([URI]);
});

test("where the record is not there nobody is asked", async () => {
  const { askers } = shop();
  expect(await askers(`${FOLDER}/gone.thou`, JOB, "front")).toBeNull();
});

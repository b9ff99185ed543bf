// Runs the host tests (host/) in the extension host of a real workbench, and reads the report that they write. The other
// way to run the same module, in a desktop editor, is run-electron-tests.mjs.
import { readFile } from "node:fs/promises";
import path from "node:path";
import { openPage } from "./window.mjs";
import { startServer, within } from "./workbench.mjs";

/**
 * @param {object} o
 * @param {string} o.editor   folder of the editor
 * @param {string} o.folder   folder of records to open, as a copy
 * @param {string} o.develop  extension development folder
 * @param {string} [o.vsix]   package to install first
 * @param {string} o.tests    the bundled host tests
 * @param {string} o.scratch  folder for the report
 * @param {number} o.limit    seconds that the tests may take
 */
export async function runExtensionTests(o) {
  const report = path.join(o.scratch, "host-report.jsonl");
  let server, fault;
  try {
    server = await startServer({
      editor: o.editor,
      folder: o.folder,
      vsix: o.vsix,
      testing: true,
      env: { THOU_TEST_REPORT: report },
    });
    const { outcome } = await openPage(server, {
      develop: o.develop,
      tests: o.tests,
    });
    const end = await within(o.limit, "the host tests", outcome);
    if (end instanceof Error) fault = end;
  } catch (error) {
    fault = error;
  }
  const outcome = await readReport(report, fault);
  if (server && (outcome.fault || outcome.failed > 0))
    console.error(await server.logs());
  await server?.close();
  return outcome;
}

/**
 * Prints what the tests wrote and counts it. A test that began and did not end counts as failed; whether fewer ran than
 * there are is for the caller to judge, with `declared`.
 */
export async function readReport(file, fault) {
  const text = await readFile(file, "utf8").catch(() => "");
  const lines = text.split("\n").filter(Boolean);
  const outcome = { declared: 0, passed: 0, failed: 0, fault };
  let running;
  for (const line of lines.map((each) => JSON.parse(each))) {
    if (line.declared !== undefined) {
      outcome.declared = line.declared;
      console.log(`# ${line.editor}`);
    } else if (line.started !== undefined) {
      running = line.started;
    } else {
      running = undefined;
      if (line.error === null) outcome.passed++;
      else outcome.failed++;
      console.log(
        `${line.error === null ? "ok" : "not ok"} - ${line.name} (${line.milliseconds} ms)`,
      );
      if (line.error !== null) console.error(line.error);
    }
  }
  if (running !== undefined) {
    outcome.failed++;
    console.log(`not ok - ${running} (it did not end)`);
  }
  if (outcome.declared === 0)
    outcome.fault ??= new Error("the host tests did not start");
  return outcome;
}

// Runs the same host tests in a desktop editor by @vscode/test-electron, which downloads one: for machines that reach
// that download. Chosen by THOU_TEST_ELECTRON=1 and never fallen back from. The checks of the page need the workbench in
// a browser and are not run this way.
//
// THOU_TEST_ELECTRON_PATH names an editor that is there already: then nothing is downloaded.
import { cp, mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { downloadAndUnzipVSCode, runTests } from "@vscode/test-electron";
import { readReport } from "./run-extension-tests.mjs";
import { within } from "./workbench.mjs";

/**
 * @param {object} o
 * @param {string} o.version  release of VS Code
 * @param {string} o.folder   folder of records to open, as a copy
 * @param {string} o.develop  extension development folder
 * @param {string} o.tests    the bundled host tests
 * @param {string} o.scratch  folder for the report
 * @param {number} o.limit    seconds that the tests may take
 */
export async function runElectronTests(o) {
  const report = path.join(o.scratch, "host-report.jsonl");
  if (
    process.platform === "linux" &&
    !process.env.DISPLAY &&
    !process.env.WAYLAND_DISPLAY
  ) {
    return readReport(
      report,
      new Error(
        "THOU_TEST_ELECTRON: no display; on a machine without one use xvfb-run -a",
      ),
    );
  }

  let vscodeExecutablePath = process.env.THOU_TEST_ELECTRON_PATH;
  if (!vscodeExecutablePath) {
    try {
      vscodeExecutablePath = await downloadAndUnzipVSCode({
        version: o.version,
        cachePath: path.join(tmpdir(), "thou-vscode-test"),
      });
    } catch (cause) {
      const sentence = `THOU_TEST_ELECTRON: VS Code ${o.version} could not be downloaded, so no test ran`;
      return readReport(report, new Error(sentence, { cause }));
    }
  }

  // Short, for the editor puts a socket into its user data and the path of a socket may have a hundred characters.
  const scratch = await mkdtemp(path.join(tmpdir(), "thou-"));
  let fault, running;
  try {
    const folder = path.join(scratch, path.basename(o.folder));
    await cp(o.folder, folder, { recursive: true });
    running = runTests({
      vscodeExecutablePath,
      extensionDevelopmentPath: o.develop,
      extensionTestsPath: o.tests,
      extensionTestsEnv: { THOU_TEST_REPORT: report },
      launchArgs: [
        folder,
        `--user-data-dir=${path.join(scratch, "data")}`,
        `--extensions-dir=${path.join(scratch, "extensions")}`,
        "--disable-extensions",
        "--disable-gpu",
      ],
    });
    await within(o.limit, "the host tests", running);
  } catch (error) {
    fault = error;
    await end(running);
  }
  const outcome = await readReport(report, fault);
  // Where a test failed the editor ends with a code of its own: the report has said why already.
  if (0 < outcome.failed && fault?.code !== undefined)
    outcome.fault = undefined;
  await rm(scratch, { recursive: true, force: true, maxRetries: 5 }).catch(
    () => {},
  );
  return outcome;
}

/** Ends an editor that may still run. `runTests` hands out no process: it listens for this signal instead. */
async function end(running) {
  const stay = () => {}; // unless another listens too, it takes this process down as well
  process.on("SIGINT", stay);
  process.emit("SIGINT", "SIGINT", 2);
  await within(10, "the editor's end", Promise.resolve(running)).catch(
    () => {},
  );
  process.off("SIGINT", stay);
}

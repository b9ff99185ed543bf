// Tests the extension in a real editor: `npm run test:editor`. It makes what is needed (prepare.mjs), runs the host tests
// and the checks of the page, and says in one last line how many passed and failed.
//
//   node test/editor/run.mjs [--new] [--develop] [--only WORDS]
//     --new      the newer editor, to be run before a release
//     --only     only the checks of the page, and the way through a job, whose names have these words, for whoever is at work on them
//     --develop  host tests against this folder and not against the package
//   THOU_EDITOR_DIR        where the editor is or shall be installed (default .editor, with --new .editor-new)
//   THOU_SHOTS             where the screenshots go (default .shots)
//   THOU_TEST_ELECTRON=1   host tests in a desktop editor (run-electron-tests.mjs), no checks of the page
//
// Exit code 0: all passed; 1: something failed; 2: it did not start, or took too long.
import { rmSync } from "node:fs";
import { mkdtemp } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { parseArgs } from "node:util";
import {
  buildBundles,
  bundleHostTests,
  editors,
  emptyExtension,
  installEditor,
  packageVsix,
  root,
  shop,
} from "./prepare.mjs";

// The lists of tests count themselves; these say how many there are to be at least, so that a list that lost some is
// found out. Raise them with each test that is added.
const atLeast = {
  host: 16,
  page: 34,
  print: 14,
  journey: 1,
  web: 10,
  restricted: 4,
};
const hostLimit = 480; // seconds: enough for every test to run out of its own time
const limit = 960; // seconds for all of it, about three times what it takes

const { values: options } = parseArgs({
  options: {
    new: { type: "boolean", default: false },
    develop: { type: "boolean", default: false },
    only: { type: "string" },
  },
});
const chosen = options.new ? editors.new : editors.usual;
const inElectron = process.env.THOU_TEST_ELECTRON === "1";
const began = Date.now();
let now = "the start";
const heading = (text) => {
  now = text;
  console.log(`\n== ${text} (${Math.round((Date.now() - began) / 1000)} s)`);
};

const total = { passed: 0, failed: 0, fault: false };
/** Adds what a run of tests came to; tests that are there and did not run have failed. */
function add(outcome, least) {
  const missing =
    Math.max(outcome.declared, least) - outcome.passed - outcome.failed;
  if (0 < missing)
    console.log(
      `not ok - ${missing} of ${Math.max(outcome.declared, least)} tests did not run`,
    );
  if (outcome.fault) console.error(outcome.fault);
  total.passed += outcome.passed;
  total.failed += outcome.failed + Math.max(0, missing);
  total.fault ||= outcome.fault !== undefined;
}

const scratch = await mkdtemp(path.join(tmpdir(), "thou-editor-run-"));
process.on("exit", () => rmSync(scratch, { recursive: true, force: true })); // Ctrl-C ends here too
setTimeout(() => {
  console.error(`not ok - took more than ${limit} s, stopped in: ${now}`);
  console.log(`${total.passed} passed, ${total.failed + 1} failed`);
  process.exit(2);
}, limit * 1000).unref();
try {
  heading(
    inElectron
      ? `VS Code ${chosen.vscode} by @vscode/test-electron`
      : `the editor, VS Code ${chosen.vscode}`,
  );
  const editor = inElectron ? undefined : await installEditor(chosen);
  heading("bundles");
  await buildBundles();
  const tests = await bundleHostTests(scratch);
  const host = { folder: shop, tests, scratch, limit: hostLimit };

  if (inElectron) {
    heading("host tests against this folder");
    const { runElectronTests } = await import("./run-electron-tests.mjs");
    add(
      await runElectronTests({
        ...host,
        version: chosen.vscode,
        develop: root,
      }),
      atLeast.host,
    );
    console.log(
      "# the checks of the page belong to the workbench in a browser and were not asked for",
    );
  } else if (options.only !== undefined) {
    const { runPageChecks } = await import("./run-page-checks.mjs");
    const { pageChecks } = await import("./ui-check.mjs");
    const { NAME, runJourney } = await import("./journey-check.mjs");
    const vsix = await packageVsix(scratch);
    const { only } = options;
    heading(`checks of the page with "${only}"`);
    const checks = pageChecks.filter(({ name }) => name.includes(only));
    const shots = path.resolve(root, process.env.THOU_SHOTS || ".shots");
    const prefix = options.new ? "new-" : "";
    const isJourney = NAME.includes(only);
    if (isJourney) add(await runJourney({ editor, vsix, shots, prefix }), 1);
    if (!isJourney || 0 < checks.length)
      add(
        await runPageChecks({
          editor,
          vsix,
          folder: shop,
          shots,
          prefix,
          checks,
        }),
        1,
      );
  } else {
    const { runExtensionTests } = await import("./run-extension-tests.mjs");
    const { runPageChecks } = await import("./run-page-checks.mjs");
    const vsix = await packageVsix(scratch);
    heading(
      `host tests against ${options.develop ? "this folder" : "the package"}`,
    );
    const tested = options.develop
      ? { develop: root }
      : { vsix, develop: await emptyExtension(scratch) };
    add(await runExtensionTests({ ...host, editor, ...tested }), atLeast.host);
    heading("checks of the page, with the package installed");
    const shots = path.resolve(root, process.env.THOU_SHOTS || ".shots");
    const prefix = options.new ? "new-" : "";
    add(
      await runPageChecks({ editor, vsix, folder: shop, shots, prefix }),
      atLeast.page,
    );
    heading("in a folder that nobody trusts");
    const { runRestrictedChecks } = await import("./restricted-check.mjs");
    add(
      await runRestrictedChecks({ editor, vsix, folder: shop, shots, prefix }),
      atLeast.restricted,
    );
    heading("from an empty folder to a reamer and a sheet");
    const { runJourney } = await import("./journey-check.mjs");
    add(await runJourney({ editor, vsix, shots, prefix }), atLeast.journey);
    heading("sheets on paper");
    const { runPrintChecks } = await import("./print-checks.mjs");
    add(await runPrintChecks({ shots, prefix }), atLeast.print);
    heading("checks in the browser's own extension host");
    const { runWebChecks } = await import("./run-web-checks.mjs");
    add(
      await runWebChecks({ editor, vsix, shots, prefix, scratch }),
      atLeast.web,
    );
  }
} catch (error) {
  console.error(error);
  total.fault = true;
}
// What kept the tests from starting is a failure too, or the last line would say "0 failed".
if (total.fault && total.failed === 0) total.failed = 1;
heading("done");
console.log(`${total.passed} passed, ${total.failed} failed`);
process.exit(total.fault ? 2 : total.failed > 0 ? 1 : 0);

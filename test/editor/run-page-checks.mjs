// Runs the checks of the page (ui-check.mjs) one after another on one workbench with the package installed, and counts them.
import { mkdir, readdir, rm } from "node:fs/promises";
import path from "node:path";
import { record } from "./prepare.mjs";
import { pageChecks, readLandmarks, readyFolder } from "./ui-check.mjs";
import { openPage } from "./window.mjs";
import { startServer } from "./workbench.mjs";

/**
 * Runs the checks with the package installed, on a copy of the folder.
 *
 * @param {{ editor: string, vsix: string, folder: string, shots: string, prefix: string }} o
 */
export async function runPageChecks({ editor, vsix, folder, shots, prefix }) {
  const outcome = {
    declared: pageChecks.length,
    passed: 0,
    failed: 0,
    fault: undefined,
  };
  await mkdir(shots, { recursive: true });
  for (const file of await readdir(shots)) {
    if (file.startsWith(`${prefix}failed-`)) await rm(path.join(shots, file)); // of a run before
  }
  let server;
  try {
    server = await startServer({ editor, vsix, folder, before: readyFolder });
    const at = await readLandmarks(server.folder);
    const { page, refused } = await openPage(server, { open: record });
    const shoot = (name) =>
      page.screenshot({
        path: path.join(shots, `${prefix}${name}.png`),
        animations: "disabled", // at their end, or a hover is half faded in
      });
    for (const [index, { name, check }] of pageChecks.entries()) {
      const began = Date.now();
      try {
        await check({ page, at, server, refused, shoot });
        outcome.passed++;
        console.log(`ok - ${name} (${Date.now() - began} ms)`);
      } catch (error) {
        outcome.failed++;
        console.log(`not ok - ${name} (${Date.now() - began} ms)`);
        console.error(error);
        await shoot(`failed-${index + 1}`).catch(() => {});
      }
    }
  } catch (error) {
    outcome.fault = error;
  }
  if (server && (outcome.fault || outcome.failed > 0))
    console.error(await server.logs());
  await server?.close();
  return outcome;
}

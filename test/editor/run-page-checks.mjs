// Runs the checks of the page (ui-check.mjs) one after another on one workbench with the package installed, and counts them.
import { mkdir, readdir, rm } from "node:fs/promises";
import path from "node:path";
import { newOutcome, runChecks, shooter } from "./checks.mjs";
import { record } from "./prepare.mjs";
import { pageChecks, readLandmarks, readyFolder } from "./ui-check.mjs";
import { openPage } from "./window.mjs";
import { startServer } from "./workbench.mjs";

/**
 * Runs the checks with the package installed, on a copy of the folder.
 *
 * @param {{ editor: string, vsix: string, folder: string, shots: string, prefix: string, checks?: typeof pageChecks }} o
 */
export async function runPageChecks({
  editor,
  vsix,
  folder,
  shots,
  prefix,
  checks = pageChecks,
}) {
  const outcome = newOutcome(checks);
  await mkdir(shots, { recursive: true });
  for (const file of await readdir(shots)) {
    if (file.startsWith(`${prefix}failed-`)) await rm(path.join(shots, file)); // of a run before
  }
  let server;
  try {
    server = await startServer({ editor, vsix, folder, before: readyFolder });
    const at = await readLandmarks(server.folder);
    const { page, refused } = await openPage(server, { open: record });
    const shoot = shooter(page, shots, prefix);
    const given = { page, at, server, refused };
    await runChecks(checks, { given, shoot, outcome });
  } catch (error) {
    outcome.fault = error;
  }
  if (server && (outcome.fault || outcome.failed > 0))
    console.error(await server.logs());
  await server?.close();
  return outcome;
}

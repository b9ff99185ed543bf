// The way of a person who has an empty folder and a job: a new job by the keyboard, its journal read with a gauge that types, the reamer
// that serves, the bench view, and the sheet for the wall. Screenshots of each stage are kept beside the others.
import assert from "node:assert/strict";
import { mkdtemp, readFile, readdir, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { enterThrough, titleOf } from "./guided.mjs";
import { goTo, runCommand, until } from "./page.mjs";
import { openPage } from "./window.mjs";
import { startServer } from "./workbench.mjs";

/**
 * Walks the way once, on a workbench of its own.
 *
 * @param {{ editor: string, vsix: string, shots: string, prefix: string }} o
 */
export async function runJourney({ editor, vsix, shots, prefix }) {
  const outcome = { declared: 1, passed: 0, failed: 0, fault: undefined };
  const folder = await mkdtemp(path.join(tmpdir(), "yard-"));
  const began = Date.now();
  let server;
  let page;
  const shoot = (name) =>
    page.screenshot({
      path: path.join(shots, `${prefix}journey-${name}.png`),
      animations: "disabled",
    });
  try {
    server = await startServer({ editor, vsix, folder, inPlace: true });
    ({ page } = await openPage(server));
    await walk(page, folder, shoot);
    outcome.passed++;
    console.log(
      `ok - from an empty folder to a reamer and a sheet (${Date.now() - began} ms)`,
    );
  } catch (error) {
    outcome.failed++;
    console.log(
      `not ok - from an empty folder to a reamer and a sheet (${Date.now() - began} ms)`,
    );
    console.error(error);
    if (page) await shoot("failed").catch(() => {});
    if (server) console.error(await server.logs());
  } finally {
    await server?.close();
    await rm(folder, { recursive: true, force: true });
  }
  return outcome;
}

async function walk(page, folder, shoot) {
  // nothing is there: the overview says what to do first
  await page.locator('.activitybar [aria-label^="Thou"]').first().click();
  await page.locator(".sidebar", { hasText: /new job/i }).waitFor();
  await shoot("1-empty");

  await runCommand(page, "Thou: New Job");
  await enterThrough(page, async () => {
    const names = await readdir(folder);
    return names.includes("new-job.thou") && names.includes("crib.thou");
  });
  await page.locator(".tab.active", { hasText: "new-job.thou" }).waitFor();
  await runCommand(page, "Notifications: Clear All Notifications");
  const record = async () =>
    readFile(path.join(folder, "new-job.thou"), "utf8");
  const journal = /^journal (\S+)/m.exec(await record());
  assert.ok(journal, "the new record has a journal");
  await shoot("2-new-job");

  // two places, two values each, as a gauge types them
  const lines = (await record()).split("\n");
  const at = lines.findIndex((each) => each.startsWith(journal[0]));
  await goTo(page, at + 1);
  await runCommand(page, "Thou: Take Readings");
  await enterThrough(page, async () =>
    (await titleOf(page)).includes("angle 1 of"),
  );
  await shoot("3-readings");
  const size = nominalOf(await record());
  for (let n = 0; n < 24; n++) {
    const before = await titleOf(page);
    if (before === "" || !/angle \d+ of/.test(before)) break;
    await page.keyboard.type((size - 0.0001 * (n % 2)).toFixed(4));
    await page.keyboard.press("Enter");
    await until(
      "the next question",
      async () => ((await titleOf(page)) === before ? undefined : true),
      10,
    ).catch(async () => {
      // a value that is asked about counts once it is typed again
      await page.keyboard.press("Escape");
    });
  }
  await enterThrough(page, async () => {
    const text = await page
      .locator(".editor-instance .view-lines")
      .first()
      .innerText();
    return text.replaceAll("\u00a0", " ").includes(" read ");
  });
  await runCommand(page, "File: Save");
  await runCommand(page, "Notifications: Clear All Notifications");
  await shoot("4-read");

  // which reamer: the hover over the line says
  await runCommand(page, "Thou: Show Bench View");
  await until("the bench view", async () => {
    const frames = page.frames();
    for (const frame of frames) {
      const text = await frame
        .evaluate(() => document.body?.innerText ?? "")
        .catch(() => "");
      if (/reamer/i.test(text) && frame !== page.mainFrame()) return true;
    }
    return undefined;
  });
  await shoot("5-bench");

  await page.locator(".tab", { hasText: "new-job.thou" }).first().click();
  await runCommand(page, "Thou: Make Job Sheet");
  const sheet = await until("the sheet", async () =>
    (await readdir(folder)).find((name) => name.endsWith(".html")),
  );
  const html = await readFile(path.join(folder, sheet), "utf8");
  assert.match(html, /<svg/);
  assert.match(html, /Job sheet/i);
  await shoot("6-sheet");
}

/** The size that the new record's journal is to have, in the record's unit. */
function nominalOf(text) {
  const number = /^ {2}nominal ([\d.]+)/m.exec(text);
  assert.ok(number, "the journal's size");
  return Number(number[1]);
}

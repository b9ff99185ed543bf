// What a person has in a folder that nobody has said to trust: the editor says that it is restricted, all that only reads and writes records is
// there, and what runs another program says why it does not. On a workbench of its own, which asks about trust as a person's does.
import assert from "node:assert/strict";
import { newOutcome, runChecks, shooter } from "./checks.mjs";
import {
  drawnText,
  errorSquigglesOn,
  goTo,
  hoverOver,
  leaveHover,
  runCommand,
  until,
} from "./page.mjs";
import { record } from "./prepare.mjs";
import { readLandmarks, readyFolder } from "./ui-check.mjs";
import { openPage } from "./window.mjs";
import { startServer } from "./workbench.mjs";

const COMPARE = "Thou: Compare with Last Commit";

export const restrictedChecks = [
  {
    name: "a folder that nobody trusts is opened restricted, and its record in the language Thou",
    async check({ page }) {
      await page
        .locator(".statusbar-item", { hasText: "Restricted Mode" })
        .waitFor({ timeout: 120_000 });
      await page.locator(".statusbar-item", { hasText: /^Thou$/ }).waitFor();
    },
  },
  {
    name: "restricted, the record has its hints, findings, hovers and counts",
    async check({ page, at, shoot }) {
      await goTo(page, at.fit);
      await until("a clearance", async () =>
        /\d \S+, (?:measured|predicted)/.test(
          (await drawnText(page, at.fit)) ?? "",
        )
          ? true
          : undefined,
      );
      await until("a squiggle", async () =>
        (await errorSquigglesOn(page, at.fault)).length === 1
          ? true
          : undefined,
      );
      await hoverOver(page, at.fault, "wnat", "did you mean");
      await leaveHover(page);
      await page
        .locator(".statusbar-item", { hasText: /\d to measure\b/ })
        .first()
        .click();
      await page
        .locator(".pane-body .monaco-list-row", { hasText: "fit front" })
        .first()
        .waitFor();
      await shoot("record");
    },
  },
  {
    name: "restricted, a fault is mended from the light bulb, by the keyboard",
    async check({ page, at }) {
      await goTo(page, at.fault, 4);
      await page.keyboard.press("Control+Period");
      await page
        .locator(".action-widget .monaco-list-row", { hasText: "want" })
        .first()
        .waitFor();
      await page.keyboard.press("Enter");
      await until("no squiggle", async () =>
        (await errorSquigglesOn(page, at.fault)).length === 0
          ? true
          : undefined,
      );
    },
  },
  {
    name: "restricted, comparing runs no git and says why, and trusting the folder is a click away",
    async check({ page, shoot }) {
      await runCommand(page, COMPARE);
      const toast = page
        .locator(".notifications-toasts .notification-list-item")
        .first();
      await toast.waitFor();
      assert.match(
        await toast.innerText(),
        /not trusted, so nothing was compared: comparing runs git/,
      );
      await shoot("compare");
      await toast
        .locator(".monaco-button", { hasText: "Manage Trust" })
        .click();
      const trust = page.locator(".workspace-trust-editor");
      await trust.waitFor();
      await shoot("trust");
      await trust
        .locator(".monaco-button", { hasText: /^Trust$/ })
        .first()
        .click();
      await page
        .locator(".statusbar-item", { hasText: "Restricted Mode" })
        .waitFor({ state: "detached" });
      // newer editors show it in a box over all else
      const over = page.locator(".monaco-modal-editor-block");
      if (await over.isVisible()) {
        await over.locator(".codicon-close").last().click();
        await over.waitFor({ state: "hidden" });
      }
      await page.locator(".tab", { hasText: record }).first().click();
      await runCommand(page, COMPARE);
      await toast.waitFor();
      // no repository is there: that is said now, and no word of trust
      assert.doesNotMatch(await toast.innerText(), /trust/i);
    },
  },
];

/** @param {{ editor: string, vsix: string, folder: string, shots: string, prefix: string }} o */
export async function runRestrictedChecks({
  editor,
  vsix,
  folder,
  shots,
  prefix,
}) {
  const outcome = newOutcome(restrictedChecks);
  let server;
  try {
    server = await startServer({
      editor,
      vsix,
      folder,
      before: readyFolder,
      restricted: true,
    });
    const at = await readLandmarks(server.folder);
    const { page } = await openPage(server, { open: record });
    const shoot = shooter(page, shots, `${prefix}restricted-`);
    await runChecks(restrictedChecks, { given: { page, at }, shoot, outcome });
  } catch (error) {
    outcome.fault = error;
  }
  if (server && (outcome.fault || 0 < outcome.failed))
    console.error(await server.logs());
  await server?.close();
  return outcome;
}

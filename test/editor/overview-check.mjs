// What a person sees of the overview, the status bar and the walkthrough: checks of the page, in the list of ui-check.mjs.
import assert from "node:assert/strict";
import { goTo, runCommand, until } from "./page.mjs";

const status = (page) =>
  page.locator(".statusbar-item", { hasText: /\d (?:in|out|to measure)\b/ });
const row = (page, text) =>
  page.locator(".pane-body .monaco-list-row", { hasText: text });

export const overviewChecks = [
  {
    name: "the status bar counts the record in words, also for those who hear it",
    async check({ page }) {
      const item = status(page).first();
      await item.waitFor();
      assert.match(await item.innerText(), /\d in\b/);
      const label = await item.locator("a").first().getAttribute("aria-label");
      assert.match(
        label,
        /^Record winch-layshaft: .*\d to measure.*Next: step/,
      );
    },
  },
  {
    name: "a click on the count opens the overview, with verdicts as words",
    async check({ page, shoot }) {
      await status(page).first().click();
      await row(page, "fit front").first().waitFor();
      const said = async (label) =>
        (await row(page, label).first().getAttribute("aria-label")) ?? "";
      assert.match(await said("fit rear"), /^fit rear, unsure, predicted, \d/);
      assert.match(
        await said("journal front"),
        /^journal front, in, measured, \d/,
      );
      assert.match(await said("step ream"), /^step ream, waits: 1 in the way/);
      assert.match(await said("journal rear is"), /^journal rear is not meas/);
      await shoot("overview");
    },
  },
  {
    name: "a click on an entry of the overview goes to its line",
    async check({ page, at }) {
      await goTo(page, 1);
      await row(page, "fit front").first().click();
      const line = 1 + at.lines.findIndex((each) => /^fit front\b/.test(each));
      await page
        .locator(".statusbar-item", { hasText: `Ln ${line}, Col` })
        .waitFor();
    },
  },
];

export const walkthroughChecks = [
  {
    name: "the walkthrough opens, and its sample is worked out without being saved",
    async check({ page, shoot }) {
      await runCommand(page, "Thou: Getting Started");
      await page
        .locator(".step-title", { hasText: "Open a job to try things on" })
        .first()
        .waitFor();
      await shoot("walkthrough");
      await page
        .locator(
          ".getting-started-step a, .getting-started-step button, .step-description-container a",
          { hasText: "Open a Sample Job" },
        )
        .first()
        .click();
      await until("the sample's overview", async () => {
        const label = await status(page)
          .first()
          .locator("a")
          .first()
          .getAttribute("aria-label");
        return /capstan-pinion: 1 unsure, 1 to measure/.test(label ?? "")
          ? true
          : undefined;
      });
      await shoot("sample");
    },
  },
];

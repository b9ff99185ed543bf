// Guided work where there is no disk: in the browser's own extension host, from an empty folder in memory to a record, its readings, the
// picture and the sheet, as a person does it at the keyboard. Each check goes on where the one before it ended.
import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { closeBench } from "./bench-check.mjs";
import { boxWith, enterThrough, gauge, saidBy, titleOf } from "./guided.mjs";
import { goTo, runCommand, until } from "./page.mjs";

const RECORD = "new-job.thou";

/** The frame of the bench view, once it shows something. */
const benchFrame = (page) =>
  until("the bench view", async () => {
    for (const frame of page.frames()) {
      const pictures = await frame
        .locator("#sections section svg")
        .count()
        .catch(() => 0);
      if (0 < pictures) return frame;
    }
    return undefined;
  });

const lineOf = (text, pattern) => {
  const at = text.split("\n").findIndex((each) => pattern.test(each));
  assert.ok(0 <= at, `a line like ${pattern}`);
  return at + 1;
};

async function clearNotifications(page) {
  await runCommand(page, "Notifications: Clear All Notifications");
}

export const webGuideChecks = [
  {
    name: "in a browser an empty folder that lies on no disk is told what to do first",
    async check({ page, shoot }) {
      await page.locator('.activitybar [aria-label^="Thou"]').first().click();
      await page
        .locator(".sidebar", { hasText: "No record is open" })
        .waitFor();
      await page
        .locator(".sidebar .monaco-button", { hasText: "Start a New Job" })
        .waitFor();
      await shoot("1-empty");
    },
  },
  {
    name: "in a browser a new job by Enter alone stands in the folder, with the crib that it uses",
    async check({ page, written, shoot }) {
      await runCommand(page, "Thou: New Job");
      await boxWith(page, "New job");
      await enterThrough(
        page,
        async () => written.has(RECORD) && written.has("crib.thou"),
      );
      assert.match(written.get(RECORD), /^job new-job\n/);
      assert.match(written.get(RECORD), /\n {2}use "crib\.thou"\n/);
      assert.match(written.get("crib.thou"), /\ngauge /);
      await page.locator(".tab.active", { hasText: RECORD }).waitFor();
      await page
        .locator(".statusbar-item", { hasText: /\d to measure\b/ })
        .waitFor();
      await clearNotifications(page);
      await shoot("2-new-job");
    },
  },
  {
    name: "in a browser readings that a gauge types, one of them taken back, stand in the record that is saved",
    async check({ page, written, shoot }) {
      const before = written.get(RECORD);
      const journal = /^journal (\S+)/m.exec(before)[1];
      const size = Number(/^ {2}nominal ([\d.]+)/m.exec(before)[1]);
      await goTo(page, lineOf(before, /^journal /));
      await runCommand(page, "Thou: Take Readings");
      await enterThrough(page, async () =>
        (await titleOf(page)).includes("angle 1 of"),
      );
      const first = (size - 0.0003).toFixed(4);
      const wrong = (size - 0.0004).toFixed(4);
      const second = (size - 0.0002).toFixed(4);
      await boxWith(page, "place near, angle 1 of 3");
      await gauge(page, `+${first}\t`, `Here so far: ${first} in.`);
      await gauge(page, wrong, "angle 3 of 3");
      await gauge(page, "u", "angle 2 of 3");
      assert.match(await saidBy(page), new RegExp(`${first} in`));
      await gauge(page, second, "out-of-round 0.0001 in");
      await shoot("3-readings");
      await page.keyboard.press("Escape");
      await page
        .locator(".notifications-toasts", { hasText: "Written." })
        .waitFor();
      await runCommand(page, "File: Save");
      const text = await until("the saved readings", () => {
        const now = written.get(RECORD);
        return now === before ? undefined : now;
      });
      const added = text
        .split("\n")
        .filter((each) => !before.split("\n").includes(each));
      assert.equal(added.length, 1, added.join("\n"));
      assert.match(
        added[0],
        new RegExp(`^ {2}read near ${first} ${second}(?: with \\S+)? `),
      );
      assert.ok(!text.includes(` ${wrong} `), "what was taken back is gone");
      // it stands under its journal
      const lines = text.split("\n");
      const opener = lines
        .slice(0, lines.indexOf(added[0]))
        .findLast((each) => /^\S/.test(each));
      assert.match(opener, new RegExp(`^journal ${journal}\\b`));
      await clearNotifications(page);
      await shoot("4-read");
    },
  },
  {
    name: "in a browser the bench view draws the job, and a name in it leads to its line",
    async check({ page, written, shoot }) {
      const text = written.get(RECORD);
      await goTo(page, 1);
      await runCommand(page, "Thou: Show Bench View");
      const frame = await benchFrame(page);
      const fit = /^fit (\S+)/m.exec(text);
      const picture = frame
        .locator(`section[data-key="${fit[0]}"] svg`)
        .first();
      await picture.waitFor();
      assert.match(await picture.getAttribute("aria-label"), /: clearance /);
      // its style has come, from where a browser has the extension's files
      const look = await frame
        .locator("section button[data-ref]")
        .first()
        .evaluate((button) => getComputedStyle(button).textDecorationLine);
      assert.equal(look, "underline");
      const bore = /^fit .* in bore (\S+)/m.exec(text)?.[1] ?? fit[1];
      await picture
        .locator("text", { hasText: `bore ${bore}` })
        .first()
        .click();
      const line = lineOf(text, new RegExp(`^bore ${bore}\\b`));
      await page
        .locator(".statusbar-item", { hasText: `Ln ${line}, Col` })
        .waitFor();
      await shoot("5-bench");
      await closeBench(page);
    },
  },
  {
    name: "in a browser the job sheet is written into the folder, and the message tells the way from there to paper",
    async check({ page, written, shoot }) {
      await page.locator(".tab", { hasText: RECORD }).first().click();
      await runCommand(page, "Thou: Make Job Sheet");
      const toast = page.locator(".notifications-toasts", {
        hasText: "Job sheet written to new-job-sheet.html.",
      });
      await toast.waitFor();
      assert.match(await toast.innerText(), /Download/);
      await shoot("6-sheet");
      const sheet = written.get("new-job-sheet.html");
      assert.match(sheet, /Job sheet/i);
      assert.match(sheet, /<svg/);
      // the way that the message names is there, by the keyboard
      await toast
        .locator(".monaco-button", { hasText: "Show in Explorer" })
        .click();
      await page
        .locator(".explorer-folders-view .monaco-list-row.focused", {
          hasText: "new-job-sheet.html",
        })
        .waitFor();
      const item = page.locator(".context-view .action-item", {
        hasText: "Download...",
      });
      // a menu that has only just opened takes no click yet
      const download = await until("the sheet is downloaded", async () => {
        if (!(await item.isVisible())) await page.keyboard.press("Shift+F10");
        await item.waitFor({ timeout: 3000 });
        await shoot("7-download");
        const [begun] = await Promise.all([
          page.waitForEvent("download", { timeout: 5000 }),
          item.click({ timeout: 3000 }),
        ]);
        return begun;
      });
      assert.equal(
        await readFile(await download.path(), "utf8"),
        sheet,
        "the download is the sheet",
      );
      await clearNotifications(page);
    },
  },
];

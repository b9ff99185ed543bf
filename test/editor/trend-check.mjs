// What a person sees of the trend of a record's sizes: a check of the page, in the list of ui-check.mjs. The other records of the part are
// written into the folder for it, and taken away again.
import assert from "node:assert/strict";
import { mkdir, rm, writeFile } from "node:fs/promises";
import path from "node:path";
import { record } from "./prepare.mjs";
import { runCommand, until } from "./page.mjs";

const COMMAND = "Thou: Show Trend";
const SERIAL = "W3-L";
const JOURNAL = "journal front";
/** Visits to one layshaft, each with a fifth of a thou worn off; the last is the record in front. */
const VISITS = [
  ["2023-06-01", "0.87424", "0.87423"],
  ["2024-06-03", "0.87405", "0.87403"],
  ["2025-06-02", "0.87383", "0.87382"],
  ["2026-06-01", "0.87364", "0.87362"],
];
const nameOf = ([date]) => `visit-${date}.thou`;

function textOf([date, one, other]) {
  return `job visit-${date}
  units inch
part layshaft
  serial ${SERIAL}
${JOURNAL} on layshaft
  limits 0.8740 to 0.8745
  service-limit 0.8730
  read ${one} ${other} as run by AK on ${date}
journal rear on layshaft
  limits 0.8740 to 0.8745
  read ${other} ${one} as run by AK on ${date}
`;
}

export const trendChecks = [
  {
    name: "the trend of a size is chosen from a list and drawn beside the record, over all records of its part",
    async check({ page, server, shoot }) {
      const folder = path.join(server.folder, "visits");
      await listNow(page);
      await mkdir(folder);
      try {
        // at once, before any editor could watch the new folder
        await Promise.all(
          VISITS.map((each) =>
            writeFile(path.join(folder, nameOf(each)), textOf(each)),
          ),
        );
        const front = nameOf(VISITS.at(-1));
        await openFile(page, front);
        const row = page.locator(".quick-input-list .monaco-list-row", {
          hasText: `serial ${SERIAL}: ${JOURNAL}`,
        });
        await until("the list of sizes with the earlier visits", async () => {
          await runCommand(page, COMMAND);
          await row.first().waitFor({ timeout: 5000 });
          if (/4 days with readings/.test(await row.first().innerText()))
            return true;
          await page.keyboard.press("Escape");
          return undefined;
        });
        await shoot("trend-list");
        await row.first().click();
        const frame = await trendFrame(page);
        const text = await frame.locator("body").innerText();
        const title = new RegExp(`serial ${SERIAL}: ${JOURNAL}`, "g");
        assert.equal(text.match(title)?.length, 1, text);
        assert.equal(text.match(/ a year \(/g)?.length, 1, text);
        for (const each of VISITS)
          assert.match(text, new RegExp(`${each[0]}.*${nameOf(each)}`));
        const box = await frame.locator("figure svg").boundingBox();
        assert.ok(box && 250 < box.width && 100 < box.height, "it is drawn");
        // nothing of the page was kept out by its own policy
        const look = await frame.evaluate(() => ({
          caption: getComputedStyle(document.querySelector("caption"))
            .textAlign,
          wide: document.documentElement.scrollWidth - window.innerWidth,
        }));
        assert.equal(look.caption, "left");
        assert.ok(look.wide <= 0, `${look.wide} px stand out of the page`);
        await shoot("trend");
        // with the keys in the panel the record beside it is still the one that is meant
        await frame.locator("body").click();
        await until("the list of sizes, asked for from the panel", async () => {
          await runCommand(page, COMMAND);
          // soon or not at all: a panel that takes the keys late closes the list
          await row.first().waitFor({ timeout: 5000 });
          return true;
        });
        await page.keyboard.press("Escape");
        await closeTab(page, "Trend: ");
        await closeTab(page, front);
        await page.locator(".tab.active", { hasText: record }).waitFor();
      } finally {
        await rm(folder, { recursive: true });
      }
    },
  },
];

/** Has the server list the records, so that what comes later is not found only because nobody looked before. */
async function listNow(page) {
  const box = page.locator(".quick-input-widget");
  await until("the list of all records", async () => {
    await page.keyboard.press("Control+KeyT");
    await box
      .locator("input[type=text]")
      .first()
      .fill("#visit-", { timeout: 3000 });
    await box
      .locator(".monaco-list-row", { hasText: "No matching" })
      .waitFor({ timeout: 8000 });
    return true;
  });
  await page.keyboard.press("Escape");
}

/** Opens a file by its name, through the box that Ctrl+P opens. */
async function openFile(page, name) {
  const box = page.locator(".quick-input-widget input[type=text]").first();
  const row = page.locator(".quick-input-list .monaco-list-row", {
    hasText: name,
  });
  await until(`${name} is open`, async () => {
    await page.keyboard.press("Control+KeyP");
    await box.fill(name, { timeout: 3000 });
    await row.first().click({ timeout: 3000 });
    await page
      .locator(".tab.active", { hasText: name })
      .first()
      .waitFor({ timeout: 5000 });
    return true;
  });
}

/** The frame that the trend's page stands in. */
function trendFrame(page) {
  return until("the trend's page", async () => {
    for (const frame of page.frames()) {
      const figures = await frame
        .locator("figure svg")
        .count()
        .catch(() => 0);
      if (0 < figures) return frame;
    }
    return undefined;
  });
}

/** By its tab: a command that was run lately comes first for others that begin alike. */
async function closeTab(page, title) {
  const tab = page.locator(".tab", { hasText: title });
  await tab.first().click({ button: "middle" });
  await tab.first().waitFor({ state: "detached" });
}

// What a person sees with the package installed: the checks of the page, and the fault that is put into the record for
// them. Each check waits for what it wants; how the page is driven is page.mjs, and run-page-checks.mjs runs them.
import assert from "node:assert/strict";
import { readFile, writeFile } from "node:fs/promises";
import path from "node:path";
import { benchChecks } from "./bench-check.mjs";
import { compareChecks } from "./compare-check.mjs";
import { guideChecks } from "./guide-checks.mjs";
import { lightBulbChecks } from "./light-bulb-checks.mjs";
import {
  boxOf,
  coloursOf,
  drawnText,
  errorSquigglesOn,
  goTo,
  hoverOver,
  leaveHover,
  runCommand,
  until,
} from "./page.mjs";
import { trendChecks } from "./trend-check.mjs";
import { overviewChecks, walkthroughChecks } from "./overview-check.mjs";
import { record, root } from "./prepare.mjs";
import { showTheme, themes, writeSettings } from "./themes.mjs";

/** A clearance as a hint shows it: a number with a unit of length. */
const length = /\d[\d.]*\s?(?:thou|tenths?|in|"|µm|um|mm)(?![a-z])/;
const misspelt = { word: "want", as: "wnat", code: "word-unknown" };

/** Reads from the record, after its one word has been misspelt, the lines (from 1) that the checks look at. */
export async function readLandmarks(folder) {
  const text = await readFile(path.join(folder, record), "utf8");
  const lines = text.split(/\r?\n/);
  const numberOf = (pattern, from = 1) => {
    const index = lines.findIndex(
      (line, each) => from - 1 <= each && pattern.test(line),
    );
    assert.ok(0 <= index, `${record} has a line like ${pattern}`);
    return index + 1;
  };
  const fault = numberOf(new RegExp(`^\\s+${misspelt.as}\\b`));
  const fit =
    lines.slice(0, fault).findLastIndex((line) => line.startsWith("fit ")) + 1;
  const [, name, journal] =
    /^fit (\S+) of (?:journal )?(\S+) in /.exec(lines[fit - 1] ?? "") ?? [];
  assert.ok(
    name && journal,
    `${record}: the misspelt word stands under a fit of a journal in a bore`,
  );
  const reading = numberOf(
    /^\s+read\s.*\d\.\d/,
    numberOf(new RegExp(`^journal ${journal}\\b`)),
  );
  return { lines, fit, fault, name, reading };
}

/** Readies the copy of the shop that the page opens. */
export async function readyFolder(folder) {
  await misspell(folder);
  await writeSettings(folder, themes[0].theme);
}

/** Misspells the first fact `want` of a fit so that there is a fault to show. */
async function misspell(folder) {
  const file = path.join(folder, record);
  const text = await readFile(file, "utf8");
  const fit = text.search(/^fit /m);
  const damaged = text
    .slice(fit)
    .replace(new RegExp(`^(\\s+)${misspelt.word}\\b`, "m"), `$1${misspelt.as}`);
  assert.notEqual(
    damaged,
    text.slice(fit),
    `${record} has a fit with a fact ${misspelt.word}`,
  );
  await writeFile(file, text.slice(0, fit) + damaged);
}

/** What the command box calls a command of the extension. */
async function titleOf(command) {
  const manifest = JSON.parse(
    await readFile(path.join(root, "package.json"), "utf8"),
  );
  const known = manifest.contributes?.commands ?? [];
  const { category, title } =
    known.find((each) => each.command === command) ?? {};
  assert.ok(title, `package.json contributes the command ${command}`);
  return category ? `${category}: ${title}` : title;
}

const hintDrawn = ({ page, at }, differentFrom) =>
  until("a clearance drawn beside the fit", async () => {
    const drawn = await drawnText(page, at.fit);
    return drawn &&
      drawn !== at.lines[at.fit - 1] &&
      drawn !== differentFrom &&
      length.test(drawn)
      ? drawn
      : undefined;
  });

const squiggleDrawn = ({ page, at }) =>
  until(`a squiggle under ${misspelt.as}`, async () => {
    const word = await boxOf(page, at.fault, misspelt.as);
    if (!word) return undefined;
    const inside = (mark) =>
      word.x - 3 < mark.x && mark.x + mark.width < word.x + word.width + 3;
    return (await errorSquigglesOn(page, at.fault)).some(inside) || undefined;
  });

/** The checks in their order; each gets { page, at, server, refused, shoot }. */
export const pageChecks = [
  {
    name: "the record opens in the language Thou",
    async check({ page, at }) {
      await page
        .locator(".editor-instance .monaco-editor .view-line")
        .first()
        .waitFor({ timeout: 120_000 });
      await page.locator(".statusbar-item", { hasText: /^Thou$/ }).waitFor();
      await goTo(page, at.fit);
    },
  },
  {
    name: "a clearance with its unit is drawn beside the fit",
    async check(view) {
      const drawn = await hintDrawn(view);
      assert.doesNotMatch(
        view.at.lines[view.at.fit - 1],
        length,
        "the line alone does not look like a clearance",
      );
      console.log(`    ${drawn}`);
    },
  },
  {
    name: "the words of a reading are drawn in colours",
    async check({ page, at }) {
      await goTo(page, at.reading);
      await until(
        "two colours",
        async () =>
          2 <= ((await coloursOf(page, at.reading)) ?? 0) || undefined,
      );
      await goTo(page, at.fit);
    },
  },
  {
    name: "an error squiggle is drawn under the misspelt word and no further",
    check: squiggleDrawn,
  },
  {
    name: "hovering over the misspelt word tells what is meant",
    async check({ page, at }) {
      assert.match(
        await hoverOver(page, at.fault, misspelt.as, misspelt.code),
        new RegExp(`\\b${misspelt.word}\\b`),
      );
      await leaveHover(page);
    },
  },
  {
    name: "hovering over the fit's name shows its clearance",
    async check({ page, at }) {
      assert.match(
        await hoverOver(page, at.fit, at.name, /clearance/i),
        length,
      );
      await leaveHover(page);
    },
  },
  {
    name: "the Problems panel lists the fault with source, code and place",
    async check({ page, at }) {
      await page.keyboard.press("Control+Shift+KeyM");
      const row = page.locator(".markers-panel .monaco-list-row", {
        hasText: misspelt.code,
      });
      await row.first().waitFor();
      const text = (await row.first().innerText()).replaceAll("\u00a0", " ");
      const column = at.lines[at.fault - 1].indexOf(misspelt.as) + 1;
      assert.match(text, /\bthou\b/);
      assert.match(text, new RegExp(`Ln ${at.fault}, Col ${column}\\b`));
    },
  },
  ...overviewChecks,
  ...themes.map((each) => ({
    name: `hint and squiggle are drawn in the theme ${each.theme}`,
    async check(view) {
      const { page, at } = view;
      await showTheme(page, view.server.folder, each);
      await goTo(page, at.fit);
      await hintDrawn(view);
      await squiggleDrawn(view);
      await view.shoot(each.shot);
      await hoverOver(page, at.fit, at.name, /clearance/i);
      await view.shoot(`${each.shot}-hover`);
      await leaveHover(page);
    },
  })),
  {
    name: "typing another reading changes the clearance beside the fit, undoing brings it back",
    async check(view) {
      const { page, at } = view;
      await goTo(page, at.fit);
      const before = await hintDrawn(view);
      const reading = at.lines[at.reading - 1];
      const [number] = /\d*\.\d+/.exec(reading.slice(reading.indexOf("read")));
      const digit = reading.indexOf(number) + number.length - 2; // the last but one: enough to show, not to alarm
      await goTo(page, at.reading, digit + 2);
      await page.keyboard.press("Backspace");
      await page.keyboard.type(reading[digit] === "9" ? "1" : "9");
      await goTo(page, at.fit);
      const after = await hintDrawn(view, before);
      console.log(`    ${after}`);
      await goTo(page, at.reading);
      await until("the undone reading", async () => {
        if ((await drawnText(page, at.reading))?.startsWith(reading.trimEnd()))
          return true;
        await page.keyboard.press("Control+KeyZ");
        return undefined;
      });
      await goTo(page, at.fit);
      await until(
        "the clearance of before",
        async () => (await drawnText(page, at.fit)) === before || undefined,
      );
    },
  },
  {
    name: "the page of the finding at the caret opens beside the record",
    async check({ page, at }) {
      const column = at.lines[at.fault - 1].indexOf(misspelt.as) + 1;
      await goTo(page, at.fault, column);
      await runCommand(page, await titleOf("thou.explainFinding"));
      await until(
        "a preview with the finding's code",
        async () => {
          const bodies = page.frames().map((frame) => frame.locator("body"));
          const texts = await Promise.all(
            bodies.map((body) =>
              body.innerText({ timeout: 2000 }).catch(() => ""),
            ),
          );
          return (
            texts.slice(1).some((text) => text.includes(misspelt.code)) ||
            undefined
          );
        },
        60,
      );
      await runCommand(page, "View: Close Editor"); // back to the record, in its whole width
    },
  },
  ...lightBulbChecks,
  ...benchChecks,
  ...compareChecks,
  ...trendChecks,
  ...guideChecks,
  ...walkthroughChecks,
  {
    name: "the editor complains of nothing",
    async check({ page }) {
      const toasts = await page
        .locator(".notifications-toasts .notification-list-item")
        .allInnerTexts();
      assert.deepEqual(toasts, []);
    },
  },
  {
    name: "the page asks for nothing outside this machine",
    check({ refused }) {
      assert.deepEqual([...refused], []);
    },
  },
];

// The light bulb by the keyboard: what it offers, and a refactoring whose places are walked with Tab. Each check leaves the record as it was.
import assert from "node:assert/strict";
import { drawnText, goTo, until } from "./page.mjs";

const rows = (page) => page.locator(".action-widget .monaco-list-row.action");

/** Opens the light bulb's menu at the caret, and gives what it offers, in its order. */
export async function openMenu(page) {
  await until("the menu of the light bulb", async () => {
    await page.keyboard.press("Control+Period");
    await rows(page).first().waitFor({ timeout: 3000 });
    return true;
  });
  return (await rows(page).allInnerTexts()).map((text) =>
    text.replaceAll("\u00a0", " ").trim(),
  );
}

/** Chooses an item of the open menu with the arrow keys. */
export async function chooseByKeys(page, pattern) {
  await until(`${pattern} has the focus`, async () => {
    const focused = page.locator(".action-widget .monaco-list-row.focused");
    if (pattern.test(await focused.innerText({ timeout: 2000 }))) return true;
    await page.keyboard.press("ArrowDown");
    return undefined;
  });
  await page.keyboard.press("Enter");
}

export const lightBulbChecks = [
  {
    name: "the light bulb at a fit offers what is nearest, in a list that a person can take in",
    async check({ page, at, shoot }) {
      await goTo(page, at.fit, 5);
      const offered = await openMenu(page);
      await shoot("light-bulb-fit");
      console.log(
        `    ${offered.length} offered\n      ${offered.join("\n      ")}`,
      );
      assert.ok(offered.some((each) => /^Want \d/.test(each)));
      assert.ok(offered.length <= 12, `${offered.length} are too many`);
      await page.keyboard.press("Escape");
    },
  },
  {
    name: "the light bulb at a misspelt word offers its mending first",
    async check({ page, at, shoot }) {
      await goTo(page, at.fault, 4);
      const [first] = await openMenu(page);
      assert.match(first, /want/);
      await shoot("light-bulb-fault");
      await page.keyboard.press("Escape");
    },
  },
  {
    name: "rows for readings come from the light bulb, and Tab leads through their values and gauges",
    async check({ page, at, shoot }) {
      const journal =
        1 + at.lines.findIndex((line) => line.startsWith("journal rear "));
      await goTo(page, journal, 9);
      await openMenu(page);
      await shoot("light-bulb-journal");
      await chooseByKeys(
        page,
        /Add rows for readings of journal rear near and far/,
      );
      const next =
        journal +
        1 +
        at.lines.slice(journal).findIndex((line) => !/^\s+\S/.test(line));
      const drawn = async (line) =>
        ((await drawnText(page, line)) ?? "").trim();
      await until(
        "the rows",
        async () => /^read near VALUES/.test(await drawn(next)) || undefined,
      );
      await shoot("tab-stops");
      await page.keyboard.type("0.87431 0.87433");
      await page.keyboard.press("Tab"); // to the gauge
      await page.keyboard.press("Tab"); // to the next row's values
      await page.keyboard.type("0.87434 0.87436");
      await page.keyboard.press("Tab");
      await page.keyboard.press("Tab");
      // newer editors draw a hint with no blank before it
      await until(
        "both rows as typed",
        async () =>
          (/^read near 0\.87431 0\.87433 with mic-1(?!\d)/.test(
            await drawn(next),
          ) &&
            /^read far 0\.87434 0\.87436 with mic-1(?!\d)/.test(
              await drawn(next + 1),
            )) ||
          undefined,
      );
      await shoot("tab-stops-walked");
      await page.keyboard.press("Escape");
      await until("the record of before", async () => {
        if ((await drawn(next)) === "") return true;
        await page.keyboard.press("Control+KeyZ");
        return undefined;
      });
    },
  },
];

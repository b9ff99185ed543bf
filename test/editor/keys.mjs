// What a person does who has a keyboard and nothing else: every step is keys, and what is looked at only tells when the next may follow.
import { until } from "./page.mjs";

const widget = ".quick-input-widget";
const field = `${widget} input[type=text]`;

/** Counts from now on what a mouse, a finger or a pen does to the page; the function that it gives tells how much that was. */
export async function countPointers(page) {
  await page.evaluate(() => {
    window.thouPointed = 0;
    for (const kind of ["pointerdown", "mousedown", "wheel", "touchstart"])
      window.addEventListener(kind, () => window.thouPointed++, true);
  });
  return () => page.evaluate(() => window.thouPointed);
}

/** Runs a command by its title from the box that F1 opens. */
export function runByKeys(page, title) {
  return until(`${title} is run`, async () => {
    await page.keyboard.press("F1");
    await inBox(page, 5000);
    await page.keyboard.press("Control+KeyA");
    await page.keyboard.type(`>${title}`);
    await page
      .locator(".quick-input-list .monaco-list-row.focused", { hasText: title })
      .first()
      .waitFor({ timeout: 5000 });
    await page.keyboard.press("Enter");
    return true;
  });
}

/** Puts the caret at a line, from 1. */
export function goByKeys(page, line) {
  return until(`line ${line} is gone to`, async () => {
    await page.keyboard.press("Control+KeyG");
    await inBox(page, 5000);
    await page.keyboard.press("Control+KeyA");
    await page.keyboard.type(`:${line}`);
    await page.keyboard.press("Enter");
    await page
      .locator(".statusbar-item", { hasText: `Ln ${line}, Col` })
      .waitFor({ timeout: 3000 });
    return true;
  });
}

/**
 * Waits until something is asked and answers it.
 *
 * @param {string} asked  words of the question
 * @param {object} [how]
 * @param {string} [how.typed]  what is typed: a text, or what of a list is looked for
 * @param {string} [how.row]    the row that then has to be the chosen one
 * @param {readonly string[]} [how.keys]  keys that are pressed before Enter
 */
export async function answer(page, asked, { typed, row, keys = [] } = {}) {
  await until(`the question "${asked}"`, async () => {
    const box = page.locator(widget).first();
    if (!(await box.isVisible())) return undefined;
    const said = (await box.innerText()).replaceAll("\u00a0", " ");
    const held = await page.locator(field).first().getAttribute("placeholder");
    return `${held ?? ""} ${said}`.includes(asked) || undefined;
  });
  await inBox(page, 30_000);
  if (typed !== undefined) await page.keyboard.type(typed);
  for (const key of keys) await page.keyboard.press(key);
  if (row !== undefined)
    await page
      .locator(".quick-input-list .monaco-list-row.focused", { hasText: row })
      .first()
      .waitFor();
  await page.keyboard.press("Enter");
}

/** The box takes keys once its text field has the focus. */
function inBox(page, timeout) {
  return page.waitForFunction(
    (selector) => document.activeElement?.closest(selector) !== null,
    widget,
    { timeout },
  );
}

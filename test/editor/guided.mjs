// The boxes that ask a person one thing after another, as a person answers them at the keyboard. It knows the editor's boxes and no question.
import { until } from "./page.mjs";

const widget = ".quick-input-widget";

/** The title of the box that is open; empty where none is. */
export async function titleOf(page) {
  const title = page.locator(`${widget} .quick-input-title`).first();
  return (await title.isVisible()) ? title.innerText() : "";
}

/** All that the open box says; empty where none is. */
export async function saidBy(page) {
  const box = page.locator(widget).first();
  return (await box.isVisible())
    ? (await box.innerText()).replaceAll("\u00a0", " ")
    : "";
}

/** Waits until the box has a title with these words and takes keys. */
export async function boxWith(page, words) {
  await page
    .locator(`${widget} .quick-input-title`, { hasText: words })
    .first()
    .waitFor();
  // the box takes keys once its text field has the focus
  await page.waitForFunction(
    (selector) => document.activeElement?.closest(selector) !== null,
    widget,
  );
}

/** Types a reading as a gauge does, and waits until the box says what follows. */
export async function gauge(page, typed, words) {
  await page.keyboard.type(typed);
  await page.keyboard.press("Enter");
  await page.locator(widget, { hasText: words }).first().waitFor();
}

/** Presses Enter at every question until `isDone`. */
export async function enterThrough(page, isDone) {
  let asked;
  let pressed = 0;
  await until(
    "the end of the questions",
    async () => {
      if (await isDone()) return true;
      const now = await askedNow(page);
      // again where a box was not yet ready to take it
      if (now !== "" && (now !== asked || pressed + 3000 < Date.now())) {
        asked = now;
        pressed = Date.now();
        await page.keyboard.press("Enter");
      }
      return undefined;
    },
    90,
  );
}

async function askedNow(page) {
  const box = page.locator(widget).first();
  if (!(await box.isVisible())) return "";
  const field = page.locator(`${widget} input[type=text]`).first();
  const placeholder = await field.getAttribute("placeholder").catch(() => "");
  return `${await titleOf(page)} ${placeholder ?? ""}`;
}

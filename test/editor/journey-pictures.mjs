// Pictures of a job that is under way, in the editor's themes and in a wide and a narrow window, for people to look at; what can be told
// without looking is told here: no picture is wider than its place, and no heading is cut.
import assert from "node:assert/strict";
import { benchFrame } from "./bench-check.mjs";
import { runCommand, until } from "./page.mjs";
import { showTheme, themes } from "./themes.mjs";

const WIDTHS = [1280, 800];
/** No picture is drawn narrower; it shrinks. */
const LEAST = 250;

export async function picturesInThemes(page, folder, shoot) {
  const { height } = page.viewportSize();
  await runCommand(page, "Notifications: Clear All Notifications");
  await runCommand(page, "Thou: Show Overview");
  const frame = await benchFrame(page);
  for (const theme of themes) {
    await showTheme(page, folder, theme);
    for (const width of WIDTHS) {
      await page.setViewportSize({ width, height });
      await until(`pictures that fit at ${width}`, async () => {
        const { room, wide, drawn } = await extentOf(frame);
        // drawn for this width, and not a wide one that has shrunk
        return (
          (0 < wide && wide <= room && drawn <= Math.max(room, LEAST)) ||
          undefined
        );
      });
      const { headings } = await extentOf(frame);
      assert.ok(headings.includes("journal") && !headings.includes("…"));
      await shoot(`${theme.shot}-${width}`);
      await showSection(frame, "fit front");
      await shoot(`${theme.shot}-${width}-fit`);
      await showSection(frame, "line layshaft");
      await shoot(`${theme.shot}-${width}-line`);
      await showSection(frame, "next");
    }
    await page.setViewportSize({ width: WIDTHS[0], height });
    await runCommand(page, "Thou: Take Readings");
    await page
      .locator(".quick-input-widget", { hasText: "hole front" })
      .waitFor();
    await shoot(`${theme.shot}-asked`);
    await page.keyboard.press("Escape");
  }
}

function showSection(frame, key) {
  return frame
    .locator(`section[data-key="${key}"]`)
    .evaluate((section) => section.scrollIntoView());
}

function extentOf(frame) {
  return frame.evaluate(() => ({
    room: document.querySelector("main").clientWidth,
    wide: Math.max(
      0,
      ...[...document.querySelectorAll(".picture svg")].map(
        (svg) => svg.getBoundingClientRect().width,
      ),
    ),
    drawn: Math.max(
      0,
      ...[...document.querySelectorAll(".picture svg")].map((svg) =>
        Number(svg.getAttribute("width")),
      ),
    ),
    headings: [...document.querySelectorAll("svg text[font-weight=bold]")]
      .map(({ textContent }) => textContent)
      .join(" "),
  }));
}

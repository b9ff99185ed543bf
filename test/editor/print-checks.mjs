// Prints the sheets of the samples as a person would: by the command that was built, through Chromium, on A4 and on Letter. It holds that
// nothing is wider than the paper, that the pages are not too many, that no narrow screen has to scroll the page sideways, and that a page
// asks for nothing; it keeps a picture of each first page to be looked at. What stands on a sheet is for the tests of the sheet.
import { execFile } from "node:child_process";
import { mkdir, readdir } from "node:fs/promises";
import path from "node:path";
import { promisify } from "node:util";
import { root, shop } from "./prepare.mjs";
import { startBrowser } from "./window.mjs";

const MARGINS = 24; // mm, both sides: @page in server/sheet/style.ts
const PIXELS = 96 / 25.4; // CSS pixels in a mm
const PAPERS = { A4: 210, Letter: 215.9 }; // width in mm: ISO 216; ANSI/ASME Y14.1 size A, 8.5 in
const MOST_PAGES = 20;
/** CSS pixels: a telephone's screen, and a window of 1280 at 200 % (WCAG 2.2, 1.4.10: no scrolling both ways at 320) */
const SCREENS = [320, 640];

/** @param {{ shots: string, prefix: string }} o */
export async function runPrintChecks({ shots, prefix }) {
  const records = (await readdir(shop)).filter((name) =>
    name.endsWith(".thou"),
  );
  const checks = records.flatMap((record) =>
    [false, true].map((blank) => ({ record, blank })),
  );
  const outcome = {
    declared: checks.length,
    passed: 0,
    failed: 0,
    fault: undefined,
  };
  await mkdir(shots, { recursive: true });
  let browser;
  try {
    browser = await startBrowser();
    for (const { record, blank } of checks) {
      const name = `${blank ? "the measuring sheet" : "the job sheet"} of ${record} prints`;
      try {
        const counts = await printed(browser, record, blank, (what) =>
          path.join(shots, `${prefix}sheet-${what}.png`),
        );
        outcome.passed++;
        console.log(`ok - ${name}: ${counts}`);
      } catch (error) {
        outcome.failed++;
        console.log(`not ok - ${name}`);
        console.error(error);
      }
    }
  } catch (error) {
    outcome.fault = error;
  }
  await browser?.close();
  return outcome;
}

async function printed(browser, record, blank, shot) {
  const { stdout: html } = await promisify(execFile)(
    process.execPath,
    [
      path.join(root, "dist/cli.cjs"),
      "sheet",
      path.join(shop, record),
      ...(blank ? ["--blank"] : []),
    ],
    { maxBuffer: 1 << 26 },
  );
  const page = await browser.newPage();
  try {
    const asked = [];
    await page.route(
      (url) => url.protocol !== "data:",
      (route) => {
        asked.push(route.request().url());
        return route.abort();
      },
    );
    const said = [];
    page.on("console", (message) => said.push(message.text()));
    page.on("pageerror", (error) => said.push(String(error)));
    await page.setContent(html);
    await page.emulateMedia({ media: "print" });
    const counts = [];
    for (const [format, width] of Object.entries(PAPERS)) {
      await page.setViewportSize({
        width: Math.floor((width - MARGINS) * PIXELS),
        height: 1000,
      });
      const wide = await page.evaluate(tooWide);
      if (wide.length > 0)
        throw new Error(`wider than ${format}: ${wide.join("; ")}`);
      const pages = pagesIn(await page.pdf({ format }));
      if (!(1 <= pages && pages <= MOST_PAGES))
        throw new Error(`${pages} pages on ${format}`);
      counts.push(`${pages} on ${format}`);
    }
    await page.emulateMedia({ media: "screen" });
    for (const width of SCREENS) {
      await page.setViewportSize({ width, height: 800 });
      const wide = await page.evaluate(
        () => document.documentElement.scrollWidth,
      );
      if (width < wide)
        throw new Error(`the page is ${wide} wide on a screen of ${width}`);
    }
    if (asked.length + said.length > 0)
      throw new Error(`it asks or says: ${[...asked, ...said].join("; ")}`);
    const name = record.replace(/\.thou$/, blank ? "-blank" : "");
    await page.screenshot({ path: shot(name) });
    return counts.join(", ");
  } finally {
    await page.close();
  }
}

/** Pages of a PDF: Chromium writes each page's dictionary as it is. */
function pagesIn(pdf) {
  return pdf.toString("latin1").match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;
}

/** In the page: what stands out of the paper, or out of what holds it. */
function tooWide() {
  const most = document.documentElement.clientWidth;
  return [...document.body.querySelectorAll("*")]
    .filter((element) => {
      if (element.closest("svg") !== element && element.closest("svg"))
        return false;
      const { right, left } = element.getBoundingClientRect();
      return (
        most + 1 < right ||
        left < -1 ||
        (element instanceof HTMLElement &&
          element.clientWidth > 0 &&
          element.clientWidth + 1 < element.scrollWidth)
      );
    })
    .map(
      (element) =>
        `${element.tagName} ${element.textContent.trim().slice(0, 40)}`,
    )
    .slice(0, 5);
}

// Checks the extension where there is no Node: in the extension host of the browser, its server in a worker, on records that lie on no disk.
// What each feature gives is for the other tests; here it is that all of them are there.
import { mkdir, readdir, readFile } from "node:fs/promises";
import path from "node:path";
import { newOutcome, runChecks, shooter } from "./checks.mjs";
import {
  drawnText,
  errorSquigglesOn,
  goTo,
  hoverOver,
  leaveHover,
  until,
} from "./page.mjs";
import { record, shop, unpackVsix } from "./prepare.mjs";
import { webGuideChecks } from "./web-guide-checks.mjs";
import { serveInBrowser } from "./web-server.mjs";
import { openPage } from "./window.mjs";
import { startServer } from "./workbench.mjs";

/** The record has its first wish misspelt. */
const misspelt = (text) => text.replace(/^ {2}want /m, "  wnat ");
const length = /\d \S+, (?:measured|predicted)/;

export const webChecks = [
  {
    name: "in a browser the extension and its server are loaded from the bundles for it, and from no other",
    async check({ page, asked }) {
      await page
        .locator(".statusbar-item", { hasText: /^Thou$/ })
        .waitFor({ timeout: 60_000 });
      const wanted = ["client.browser.js", "server.browser.js", "session.js"];
      await until("the bundles are loaded", () =>
        wanted.every((name) => asked.includes(`/extension/dist/${name}`))
          ? true
          : undefined,
      );
      const others = asked.filter((file) => /\.cjs\b/.test(file));
      if (0 < others.length) throw new Error(`${others.join(", ")} was loaded`);
    },
  },
  {
    name: "in a browser a clearance stands beside a fit, reckoned with the crib that nobody has opened",
    async check({ page, line }) {
      const fit = line(/^fit front /);
      await goTo(page, fit);
      await until("a clearance", async () =>
        length.test((await drawnText(page, fit)) ?? "") ? true : undefined,
      );
    },
  },
  {
    name: "in a browser a misspelt word is underlined, and hovering over it tells what is meant",
    async check({ page, line }) {
      const fault = line(/^ {2}wnat /);
      await goTo(page, fault);
      await until("a squiggle", async () =>
        (await errorSquigglesOn(page, fault)).length === 1 ? true : undefined,
      );
      await hoverOver(page, fault, "wnat", "did you mean");
      await leaveHover(page);
    },
  },
  {
    name: "in a browser records that are not open are checked, too",
    async check({ page }) {
      await page.keyboard.press("Control+Shift+KeyM");
      await page
        .locator(".markers-panel .monaco-list-row", {
          hasText: "hot-case.thou",
        })
        .first()
        .waitFor();
      await page.keyboard.press("Control+Shift+KeyM");
    },
  },
  {
    name: "in a browser mending the word takes the underline away",
    async check({ page, line }) {
      const fault = line(/^ {2}wnat /);
      await goTo(page, fault, 3);
      for (let key = 0; key < 4; key++) await page.keyboard.press("Delete");
      await page.keyboard.type("want");
      await page.keyboard.press("Escape");
      await page.keyboard.press("ArrowDown");
      await until("no squiggle", async () =>
        (await errorSquigglesOn(page, fault)).length === 0 ? true : undefined,
      );
    },
  },
];

/**
 * Newer editors take an extension of their own away where this one is set, some seconds after the start, and start all extensions anew for it:
 * without those that the page names, which no server has installed. What is tested here would be gone, sooner or later.
 */
const settings = { "chat.disableAIFeatures": undefined };

/** What is opened, and what is looked at in it. Each session has a workbench of its own. */
const sessions = [
  {
    name: "web",
    open: record,
    checks: webChecks,
    async files() {
      const names = (await readdir(shop)).filter((name) =>
        name.endsWith(".thou"),
      );
      const texts = await Promise.all(
        names.map((name) => readFile(path.join(shop, name), "utf8")),
      );
      return Object.fromEntries(
        names.map((name, index) => [
          name,
          name === record ? misspelt(texts[index]) : texts[index],
        ]),
      );
    },
  },
  { name: "web-empty", checks: webGuideChecks, files: async () => ({}) },
];

/** @param {{ editor: string, vsix: string, shots: string, prefix: string, scratch: string }} o */
export async function runWebChecks({ editor, vsix, shots, prefix, scratch }) {
  const outcome = newOutcome(sessions.flatMap(({ checks }) => checks));
  await mkdir(shots, { recursive: true });
  try {
    const extension = await unpackVsix(vsix, scratch);
    for (const session of sessions)
      await runSession(session, { editor, extension, shots, prefix, outcome });
  } catch (error) {
    outcome.fault = error;
  }
  return outcome;
}

async function runSession(
  { name: session, open, checks, files: read },
  { editor, extension, shots, prefix, outcome },
) {
  const files = await read();
  const lines = (files[open] ?? "").split("\n");
  const line = (pattern) => {
    const at = lines.findIndex((each) => pattern.test(each));
    if (at < 0) throw new Error(`no line like ${pattern}`);
    return at + 1;
  };
  let server;
  try {
    server = await startServer({ editor, folder: shop, settings });
    const front = await serveInBrowser({ server, extension, files, open });
    server.alsoClose(() => front.close());
    const { authority, address, asked, written } = front;
    const { page } = await openPage({ ...server, authority, address });
    const shoot = shooter(page, shots, `${prefix}${session}-`);
    const given = { page, asked, written, line };
    await runChecks(checks, { given, shoot, outcome });
    await shoot("last").catch(() => {});
  } finally {
    await server?.close();
  }
}

// A window on a running editor: shows the workbench of a server (workbench.mjs) in Chromium, without leave to reach any
// other host. What is done in it and read from it is page.mjs.
import { existsSync } from "node:fs";
import path from "node:path";
import { chromium } from "playwright-core";

export function startBrowser() {
  return chromium.launch({
    executablePath: process.env.CHROMIUM || onPath("chromium"),
    // No sandbox: root and most containers have none to offer, and the page shows nothing but our own.
    args: ["--no-sandbox", "--disable-dev-shm-usage", "--disable-gpu"],
    handleSIGINT: false, // the server's closing ends the browser too
    handleSIGTERM: false,
    handleSIGHUP: false,
  });
}

/**
 * Shows the workbench of a server in Chromium and waits until it stands.
 *
 * @param {Awaited<ReturnType<typeof import("./workbench.mjs").startServer>>} server
 * @param {object} [o]
 * @param {string} [o.open]     file to open, relative to the folder
 * @param {string} [o.develop]  extension development folder
 * @param {string} [o.tests]    module whose `run` the extension host calls
 */
export async function openPage(server, o = {}) {
  const browser = await startBrowser();
  server.alsoClose(() => browser.close());

  const page = await browser.newPage({
    viewport: { width: 1280, height: 800 },
    reducedMotion: "reduce",
  });
  page.setDefaultTimeout(30_000);
  page.setDefaultNavigationTimeout(120_000);
  const refused = new Set();
  await page.route(
    (url) => url.protocol.startsWith("http") && url.host !== server.authority,
    (route) => {
      refused.add(new URL(route.request().url()).host);
      return route.abort();
    },
  );

  // The workbench calls these two where it was given tests; the second carries their outcome.
  let tell;
  const testsDone = new Promise((resolve) => (tell = resolve));
  await page.exposeFunction("codeAutomationLog", () => {});
  await page.exposeFunction("codeAutomationExit", (code) => tell(code));
  const crashed = new Promise((resolve) =>
    page.once("crash", () => resolve(new Error("the page crashed"))),
  );

  const payload = [];
  if (o.develop)
    payload.push(["extensionDevelopmentPath", server.remote(o.develop)]);
  if (o.tests) payload.push(["extensionTestsPath", server.remote(o.tests)]);
  if (o.open)
    payload.push(["openFile", server.remote(path.join(server.folder, o.open))]);
  await page.goto(server.address(payload));
  await page.waitForSelector(".monaco-workbench", { timeout: 120_000 });
  /** Resolves with the exit code of the tests, or with the error that kept them from ending. */
  const outcome = Promise.race([testsDone, crashed, server.ended]);
  return { page, refused, outcome };
}

function onPath(name) {
  const places = (process.env.PATH ?? "")
    .split(path.delimiter)
    .map((place) => path.join(place, name));
  const found = places.find((file) => existsSync(file));
  if (!found)
    throw new Error(
      `${name} is not on the PATH: run test/editor/install-editor.sh, or set CHROMIUM`,
    );
  return found;
}

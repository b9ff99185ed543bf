// Makes the picture that the README shows, in the real editor: `node test/editor/picture.mjs`. Look at it before it is committed.
import { mkdir, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { drawnText, goTo, until } from "./page.mjs";
import {
  buildBundles,
  editors,
  installEditor,
  packageVsix,
  record,
  root,
  shop,
} from "./prepare.mjs";
import { smallPicture } from "./small-picture.mjs";
import { openPage } from "./window.mjs";
import { startServer } from "./workbench.mjs";

const pictures = path.join(root, "docs/pictures");
await mkdir(pictures, { recursive: true });
const editor = await installEditor(editors.usual);
await buildBundles();
const scratch = await mkdtemp(path.join(tmpdir(), "thou-package-"));
let server;
try {
  server = await startServer({
    editor,
    folder: shop,
    vsix: await packageVsix(scratch),
  });
  const text = await readFile(path.join(server.folder, record), "utf8");
  const lines = text.split("\n");
  const fit = 1 + lines.findIndex((line) => line.startsWith("fit front"));
  const { page } = await openPage(server, { open: record });
  await page.setViewportSize({ width: 1280, height: 760 });
  await goTo(page, fit);
  await until("the hint beside the fit", async () =>
    /\d in, /.test((await drawnText(page, fit)) ?? "") ? true : undefined,
  );
  const count = page.locator(".statusbar-item", { hasText: "to measure" });
  await count.first().click();
  await page
    .locator(".pane-body .monaco-list-row", { hasText: "fit front" })
    .first()
    .waitFor();
  await page.mouse.move(4, 400);
  await writeFile(
    path.join(pictures, "winch.png"),
    smallPicture(await page.screenshot()),
  );
} finally {
  await server?.close();
  await rm(scratch, { recursive: true, force: true });
}

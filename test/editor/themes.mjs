// The editor's themes that the pictures are taken in, and how one is set.
import { mkdir, writeFile } from "node:fs/promises";
import path from "node:path";
import { until } from "./page.mjs";

export const themes = [
  { shot: "light", theme: "Default Light Modern", mark: ".vs" },
  { shot: "dark", theme: "Default Dark Modern", mark: ".vs-dark" },
  { shot: "high-contrast", theme: "Default High Contrast", mark: ".hc-black" },
  {
    shot: "high-contrast-light",
    theme: "Default High Contrast Light",
    mark: ".hc-light",
  },
];

/** Sets a theme as a setting of the opened folder, which an open editor follows; the user's own it reads at its start. */
export async function writeSettings(folder, theme) {
  const settings = {
    "workbench.colorTheme": theme,
    "files.exclude": { ".vscode": true },
  };
  await mkdir(path.join(folder, ".vscode"), { recursive: true });
  await writeFile(
    path.join(folder, ".vscode/settings.json"),
    JSON.stringify(settings),
  );
}

/** Sets a theme and waits until the page shows it. */
export async function showTheme(page, folder, { theme, mark }) {
  await until(`the theme ${theme}`, async () => {
    await writeSettings(folder, theme); // again where the editor missed that the file changed
    const shown = page.locator(`.monaco-workbench${mark}`);
    await shown.waitFor({ timeout: 8000 });
    return true;
  });
}

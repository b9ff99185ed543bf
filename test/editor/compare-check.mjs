// What a person sees of comparing a record with the last commit: a check of the page, in the list of ui-check.mjs. The folder becomes a
// repository for it and is none afterwards.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { readFile, rm } from "node:fs/promises";
import path from "node:path";
import { record, shop } from "./prepare.mjs";
import { runCommand, until } from "./page.mjs";

export const compareChecks = [
  {
    name: "a record is compared with the last commit, and a click leads to the entry",
    async check({ page, at, server, shoot }) {
      const whole = await readFile(path.join(shop, record));
      await commitAs(server.folder, whole);
      try {
        await runCommand(page, "Thou: Compare with Last Commit");
        const preview = await previewWith(page, "since the last commit");
        const text = await preview.locator("body").innerText();
        assert.match(text, /HEAD \([\da-f]{12}\) on main/);
        assert.match(text, new RegExp(`fit ${at.name}`));
        assert.match(text, /new error word-unknown/);
        await shoot("compare");
        await preview.locator("h3 a", { hasText: `fit ${at.name}` }).click();
        await page
          .locator(".statusbar-item", { hasText: `Ln ${at.fit}, Col` })
          .waitFor();
        await runCommand(page, "View: Close Editors in Other Groups"); // the record again, in its whole width
      } finally {
        await rm(path.join(server.folder, ".git"), {
          recursive: true,
          force: true,
        });
      }
    },
  },
];

/** The frame of the Markdown preview that has these words. */
function previewWith(page, words) {
  return until(`a preview with ${words}`, async () => {
    for (const frame of page.frames()) {
      const text = await frame
        .locator("body")
        .innerText()
        .catch(() => "");
      if (frame !== page.mainFrame() && text.includes(words)) return frame;
    }
    return undefined;
  });
}

/** Makes the folder a repository whose one commit has the record as it ships; what lies in the folder stays as it is. */
async function commitAs(folder, bytes) {
  const git = (words, input) =>
    execFileSync(
      "git",
      [
        "-c",
        "user.name=Harbour",
        "-c",
        "user.email=harbour@localhost",
        ...words,
      ],
      { cwd: folder, input, encoding: "utf8" },
    ).trim();
  git(["init", "--quiet", "--initial-branch=main"]);
  git(["add", "--all"]);
  const blob = git(["hash-object", "-w", "--stdin"], bytes);
  git(["update-index", "--cacheinfo", `100644,${blob},${record}`]);
  git(["commit", "--quiet", "--message", "as it ships"]);
}

// What a person sees of comparing a record with the last commit: a check of the page, in the list of ui-check.mjs. The folder becomes a
// repository for it and is none afterwards.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { readFile, rm } from "node:fs/promises";
import path from "node:path";
import { record, shop } from "./prepare.mjs";
import { goTo, runCommand, until } from "./page.mjs";

const COMMAND = "Thou: Compare with Last Commit";

export const compareChecks = [
  {
    name: "without a repository, comparing says so",
    async check({ page, at }) {
      await goTo(page, at.reading);
      await runCommand(page, COMMAND);
      await page
        .locator(".notification-toast", {
          hasText: "this folder is not under version control",
        })
        .waitFor();
      await runCommand(page, "Notifications: Clear All Notifications");
    },
  },
  {
    name: "a record is compared with the last commit, and a click leads to the entry",
    async check({ page, at, server, shoot }) {
      const whole = await readFile(path.join(shop, record));
      await commitAs(server.folder, whole);
      try {
        await runCommand(page, COMMAND);
        const preview = await previewWith(page, "since the last commit");
        const text = await preview.locator("body").innerText();
        assert.match(text, /HEAD \([\da-f]{12}\) on main/);
        assert.match(text, new RegExp(`fit ${at.name}`));
        assert.match(text, /new error word-unknown/);
        assert.match(text, /no fact wnat: did you mean want\?/);
        await shoot("compare");
        await preview.locator("h3 a", { hasText: `fit ${at.name}` }).click();
        await page
          .locator(".statusbar-item", { hasText: `Ln ${at.fit}, Col` })
          .waitFor();
        await closePreview(page);
      } finally {
        await rm(path.join(server.folder, ".git"), {
          recursive: true,
          force: true,
        });
      }
    },
  },
  {
    name: "a reading that is typed shows in the next comparison, as worse",
    async check({ page, at, server, shoot }) {
      const whole = await readFile(path.join(server.folder, record));
      await commitAs(server.folder, whole);
      const isTyped = async () => {
        const text = await page
          .locator(".editor-instance .view-lines")
          .first()
          .innerText();
        return text.includes("0.87332");
      };
      try {
        const [size] = /\d\.\d+/.exec(at.lines[at.reading - 1]);
        const end = at.lines[at.reading - 1].indexOf(size) + size.length;
        await goTo(page, at.reading, end + 1);
        // the digits after the point, one by one, since editors differ in what a word is: a thousandth of an inch under what was read
        const digits = size.length - size.indexOf(".") - 1;
        for (let n = 0; n < digits; n++)
          await page.keyboard.press("Shift+ArrowLeft");
        await page.keyboard.type("87332");
        await runCommand(page, COMMAND);
        const preview = await previewWith(page, "→ 0.87332");
        const text = await preview.locator("body").innerText();
        const journal = at.lines
          .slice(0, at.reading)
          .findLast((each) => each.startsWith("journal "));
        const [name] = /^journal \S+/.exec(journal);
        assert.match(text, new RegExp(`${name} size: .* → 0\\.87332`));
        assert.match(text, new RegExp(`new error \\S+ at ${name}`));
        await shoot("compare-unsaved");
      } finally {
        await rm(path.join(server.folder, ".git"), {
          recursive: true,
          force: true,
        });
      }
      await closePreview(page);
      await goTo(page, at.reading);
      await until("the record of before", async () => {
        if (!(await isTyped())) return true;
        await page.keyboard.press("Control+KeyZ");
        return undefined;
      });
      // the editor in a browser saves by itself after a while
      await until("the file of before", async () => {
        const now = await readFile(path.join(server.folder, record));
        return now.equals(whole) || undefined;
      });
    },
  },
];

/** Closes the comparison, so that the record has its whole width again; by its tab, since a command that was run lately comes first for others that begin alike. */
async function closePreview(page) {
  const tab = page.locator(".tab", { hasText: "since the last commit" });
  await tab.first().click({ button: "middle" });
  await tab.first().waitFor({ state: "detached" });
  await page.locator(".tab.active", { hasText: record }).first().click();
}

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

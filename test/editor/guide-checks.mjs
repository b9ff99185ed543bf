// Guided work as a person does it at the keyboard: readings that a gauge types, and a new job by Enter alone. Each check leaves the folder
// and the page as it found them.
import assert from "node:assert/strict";
import { readFile, readdir, rm } from "node:fs/promises";
import path from "node:path";
import { boxWith, gauge } from "./guided.mjs";
import { goTo, runCommand, until } from "./page.mjs";
import { record } from "./prepare.mjs";

const widget = ".quick-input-widget";

export const guideChecks = [
  {
    name: "readings that a gauge types, with its tab, its comma and a slip, stand in the record",
    async check({ page, at }) {
      const journal = at.lines.findIndex((line) =>
        line.startsWith("journal rear "),
      );
      await goTo(page, journal + 1);
      await runCommand(page, "Thou: Take Readings");
      for (const words of [
        "What is read?",
        "Which gauge reads it?",
        "How warm are part and gauge?",
        "Where is journal rear read?",
      ]) {
        await until(`the question ${words}`, async () => {
          const field = page.locator(`${widget} input[type=text]`).first();
          const asked = await field.getAttribute("placeholder");
          const text = await page.locator(widget).first().innerText();
          return asked === words || text.includes(words) || undefined;
        });
        await page.keyboard.press("Enter");
      }
      await boxWith(page, "place near, angle 1 of 3");
      await gauge(page, "+0.87432\t", "Here so far: 0.87432 in.");
      await gauge(page, "22.207", "Does the gauge show millimetres?");
      await gauge(page, "0,87428", "out-of-round 0.00004 in");
      await gauge(page, "0.87430 in", "place far, angle 1 of 3");
      await gauge(page, "u", "place near, angle 3 of 3");
      // another gauge, by the keyboard: what was taken stays
      await gauge(page, "g", "mic-1");
      await page.keyboard.press("Escape");
      await boxWith(page, "place near, angle 3 of 3");
      await page.keyboard.press("Escape");
      await until("the line in the record", async () => {
        const text = await page
          .locator(".editor-instance .view-lines")
          .first()
          .innerText();
        return (
          text
            .replaceAll("\u00a0", " ")
            .includes("read near 0.87432 0.87428 with mic-1 on ") || undefined
        );
      });
      await runCommand(page, "Notifications: Clear All Notifications");
      await goTo(page, journal + 1);
      await page.keyboard.press("Control+KeyZ");
      await until("the record of before", async () => {
        const text = await page
          .locator(".editor-instance .view-lines")
          .first()
          .innerText();
        return text
          .replaceAll("\u00a0", " ")
          .includes("read near 0.87432 0.87428 with mic-1 on ")
          ? undefined
          : true;
      });
    },
  },
  {
    name: "a swing by keyboard alone: lobes, vee, gauge, places, and it stands in the record",
    async check({ page, at }) {
      const journal = at.lines.findIndex((line) =>
        line.startsWith("journal front "),
      );
      const shown = async () =>
        (
          await page.locator(".editor-instance .view-lines").first().innerText()
        ).replaceAll("\u00a0", " ");
      const line = "swing near 0.0006 on vee 60 deg, 3 lobes with dti-1 on ";
      await goTo(page, journal + 1);
      await runCommand(page, "Thou: Take Readings");
      for (const [words, typed] of [
        ["What is read?", "journal front, its swing"],
        ["how often does the pointer rise?", "3"],
        ["How is journal front turned?", ""],
        ["Which gauge shows the swing?", "dti-1"],
        ["Where is journal front turned?", ""],
      ]) {
        await until(`the question ${words}`, async () => {
          const field = page.locator(`${widget} input[type=text]`).first();
          const asked = (await field.getAttribute("placeholder")) ?? "";
          const text = await page.locator(widget).first().innerText();
          return asked.includes(words) || text.includes(words) || undefined;
        });
        await page.keyboard.type(typed);
        await page.keyboard.press("Enter");
      }
      await boxWith(page, "place near, swing on vee 60 deg, 3 lobes");
      await gauge(page, "0.8743", "far for a pointer to swing");
      await gauge(page, "0.0006", "Radial roundness 0.00020 in");
      await gauge(page, "0.0003", "all taken");
      // the box takes no second end of line from a gauge for a person's Enter: half a second must have passed
      await page.waitForTimeout(700);
      await page.keyboard.press("Enter");
      await until("the box that asks what now", async () => {
        const field = page.locator(`${widget} input[type=text]`).first();
        return (
          (await field.getAttribute("placeholder")) === "What now?" || undefined
        );
      });
      await page.keyboard.press("Escape");
      await until(
        "the line in the record",
        async () => (await shown()).includes(line) || undefined,
      );
      await runCommand(page, "Notifications: Clear All Notifications");
      await goTo(page, journal + 1);
      await page.keyboard.press("Control+KeyZ");
      await until("the record of before", async () =>
        (await shown()).includes(line) ? undefined : true,
      );
    },
  },
  {
    name: "a new job by Enter alone stands in the folder, and nothing that was there has changed",
    async check({ page, server }) {
      const { folder } = server;
      const before = await readdir(folder);
      const crib = await readFile(path.join(folder, "crib.thou"), "utf8");
      await runCommand(page, "Thou: New Job");
      await boxWith(page, "New job");
      let asked = "";
      let pressed = 0;
      const made = await until(
        "the new record",
        async () => {
          const fresh = (await readdir(folder)).filter(
            (name) => !before.includes(name),
          );
          if (0 < fresh.length) return fresh;
          const text = await page
            .locator(`${widget} .quick-input-titlebar`)
            .first()
            .innerText();
          const number = /\((\d+)\/\d+\)/.exec(text)?.[1];
          // again where a box was not yet ready to take it
          const isDue = number !== asked || pressed + 3000 < Date.now();
          if (number !== undefined && isDue) {
            asked = number;
            pressed = Date.now();
            await page.keyboard.press("Enter");
          }
          return undefined;
        },
        90,
      );
      assert.deepEqual(made, ["new-job.thou"]);
      const text = await readFile(path.join(folder, "new-job.thou"), "utf8");
      assert.match(text, /^job new-job\n/);
      assert.match(text, /\n {2}use "crib\.thou"\n/);
      assert.equal(
        await readFile(path.join(folder, "crib.thou"), "utf8"),
        crib,
      );
      await page.locator(".tab.active", { hasText: "new-job.thou" }).waitFor();
      await runCommand(page, "Notifications: Clear All Notifications");
      await runCommand(page, "View: Close Editor");
      await page.locator(".tab.active", { hasText: record }).waitFor();
      await rm(path.join(folder, "new-job.thou"));
    },
  },
];

// What a person sees of the bench view: checks of the page, in the list of ui-check.mjs. They open the panel and close it again.
import assert from "node:assert/strict";
import { goTo, runCommand, until } from "./page.mjs";

const TITLE = "Thou: Show Bench View";

/** The frame that the bench's page stands in, once it shows something. */
export function benchFrame(page) {
  return until(
    "the bench view",
    async () => {
      for (const frame of page.frames()) {
        const sections = await frame
          .locator("#sections section")
          .count()
          .catch(() => 0);
        if (0 < sections) return frame;
      }
      return undefined;
    },
    60,
  );
}

const pictureOf = (frame, ref) =>
  frame.locator(`section[data-key="${ref}"] svg`).first();

function saysOf(frame, ref) {
  return pictureOf(frame, ref).getAttribute("aria-label");
}

/** Takes typing back, step by step, until what is shown is as wanted; the text wraps here, so its lines can't be read off the page. */
function undo(page, what, isAsWanted) {
  return until(what, async () => {
    await page.keyboard.press("Control+KeyZ");
    await page.waitForTimeout(1500);
    return (await isAsWanted()) || undefined;
  });
}

export async function closeBench(page) {
  const tab = page.locator(".tab", { hasText: "Thou Bench" });
  await tab.hover();
  await tab.locator(".tab-actions .action-label").first().click();
  await tab.waitFor({ state: "detached" });
}

export const benchChecks = [
  {
    name: "the bench view opens beside the text: the job in pictures, what is next and what is in its way",
    async check({ page, at, shoot }) {
      await goTo(page, at.fit);
      await runCommand(page, TITLE);
      const frame = await benchFrame(page);
      assert.match(await frame.locator("h1").innerText(), /\w/);
      const next = await frame.locator('section[data-key="next"]').innerText();
      assert.match(next, /step ream: waits; don't cut yet/);
      assert.match(next, /journal rear is not measured/);
      assert.match(next, /A reamer turns one way/);
      for (const ref of ["line layshaft", "fit rear"]) {
        const box = await pictureOf(frame, ref).boundingBox();
        assert.ok(
          box && 250 < box.width && 200 < box.height,
          `${ref} is drawn`,
        );
      }
      // nothing of the page was kept out by its own policy
      const look = await frame.evaluate(() => {
        const button = document.querySelector("section button[data-ref]");
        return {
          sheets: document.styleSheets.length,
          link: getComputedStyle(button).textDecorationLine,
          ground: getComputedStyle(document.body).backgroundColor,
        };
      });
      assert.equal(look.link, "underline");
      assert.notEqual(look.ground, "rgba(0, 0, 0, 0)");
      await shoot("bench");
    },
  },
  {
    name: "typing changes the picture, keeps the place that is scrolled to, and undoing brings it back",
    async check({ page, at }) {
      const frame = await benchFrame(page);
      const fit = at.lines[at.fit - 1].split(" ").slice(0, 2).join(" ");
      const before = await saysOf(frame, fit);
      const reading = at.lines[at.reading - 1];
      const [number] = /\d*\.\d+/.exec(reading.slice(reading.indexOf("read")));
      const digit = reading.indexOf(number) + number.length - 2;
      await goTo(page, at.reading, digit + 2);
      const journal = await until("the journal at the caret", async () =>
        (await frame.locator("section h2").allInnerTexts()).find((text) =>
          text.includes("journal front"),
        ),
      );
      await frame.evaluate(() => window.scrollTo(0, 200));
      /** Where the page stands, and how far below its top edge the heading of the journal. */
      const placeOf = async () => ({
        scrolled: await frame.evaluate(() => window.scrollY),
        top: Math.round(
          (
            await frame
              .locator("section h2", { hasText: journal })
              .first()
              .boundingBox()
          ).y,
        ),
      });
      const place = await placeOf();
      assert.ok(0 < place.scrolled, "there is something to scroll");
      await page.keyboard.press("Backspace");
      await page.keyboard.type(reading[digit] === "9" ? "1" : "9");
      await until(
        "another picture",
        async () => (await saysOf(frame, fit)) !== before || undefined,
      );
      // what is read stays where it is, even where something above it has grown
      const now = await placeOf();
      assert.ok(
        now.scrolled === place.scrolled || Math.abs(now.top - place.top) < 3,
        JSON.stringify({ place, now }),
      );
      await undo(
        page,
        "the picture of before",
        async () => (await saysOf(frame, fit)) === before,
      );
    },
  },
  {
    name: "a line that can't be read leaves its picture standing, marked as old",
    async check({ page, at, shoot }) {
      const frame = await benchFrame(page);
      const fit = at.lines[at.fit - 1].split(" ").slice(0, 2).join(" ");
      const before = await saysOf(frame, fit);
      const reading = at.lines[at.reading - 1];
      const point = reading.indexOf(".") + 1;
      await goTo(page, at.reading, point);
      // in one go: a reading without its point can be read, and would be drawn
      await page.keyboard.press("Shift+ArrowRight");
      await page.keyboard.type(",");
      const section = frame.locator(`section[data-key="${fit}"]`);
      await until(
        "the mark",
        async () =>
          /^Old: /m.test(await section.innerText({ timeout: 2000 })) ||
          undefined,
      );
      assert.equal(await saysOf(frame, fit), before);
      assert.match(
        await frame.locator('section[data-key="damaged"]').innerText(),
        /can't be read/,
      );
      await shoot("bench-old");
      await undo(
        page,
        "a picture that is not old",
        async () =>
          (await section.locator(".old-mark").count()) === 0 &&
          (await saysOf(frame, fit)) === before,
      );
    },
  },
  {
    name: "Enter on a name of the bench view goes to its line, and so does a click on a picture",
    async check({ page, at }) {
      const frame = await benchFrame(page);
      const lineOf = (ref) =>
        1 + at.lines.findIndex((each) => new RegExp(`^${ref}\\b`).test(each));
      const isAt = (ref, timeout) =>
        page
          .locator(".statusbar-item", { hasText: `Ln ${lineOf(ref)}, Col` })
          .waitFor({ timeout });
      await goTo(page, 1);
      await frame
        .locator('section[data-key="next"] button[data-ref="journal rear"]')
        .first()
        .focus();
      await page.keyboard.press("Enter");
      await isAt("journal rear");
      // the caret has moved, so the view is drawn anew: a press that falls into that lets go over another place
      await until("the line of the bore", async () => {
        await frame
          .locator('section[data-key="fit rear"] svg text', {
            hasText: "bore rear",
          })
          .first()
          .click();
        return isAt("bore rear", 2000).then(
          () => true,
          () => undefined,
        );
      });
    },
  },
  {
    name: "the bench view fits a narrow panel, and its panel comes back after the window is loaded again",
    async check({ page, at, server, shoot }) {
      const size = page.viewportSize();
      await page.keyboard.press("Control+KeyB"); // the side bar away
      await page.setViewportSize({ width: 800, height: size.height });
      const narrow = await benchFrame(page);
      await until("a narrow picture", async () => {
        const [room, wide] = await narrow.evaluate(() => [
          document.querySelector("main").clientWidth,
          Math.max(
            ...[...document.querySelectorAll(".picture svg")].map(
              (svg) => svg.getBoundingClientRect().width,
            ),
          ),
        ]);
        return room < 420 && wide <= Math.max(room, 300) ? true : undefined;
      });
      await shoot("bench-narrow");
      // a bullet stands at the first row of a link of several: where a sign stands that no line breaks behind
      const away = await narrow.evaluate(() => {
        const link = document.querySelector("li > button");
        const name = link.textContent;
        link.textContent = `${name} `.repeat(9);
        const sign = document.createElement("span");
        sign.textContent = "\u2060";
        link.before(sign);
        const [top, first] = [sign, link].map(
          (each) => each.getBoundingClientRect().top,
        );
        sign.remove();
        link.textContent = name;
        return top - first;
      });
      assert.ok(Math.abs(away) < 6, `the bullet is ${away} px away`);
      await page.setViewportSize(size);
      await page.keyboard.press("Control+KeyB");
      // without a file to open the window shows what it showed before; it keeps that as it goes, if it goes by its own command
      await page.evaluate(
        (address) => history.replaceState(null, "", address),
        server.address(),
      );
      await Promise.all([
        page.waitForEvent("load"),
        runCommand(page, "Developer: Reload Window"),
      ]);
      const frame = await benchFrame(page);
      assert.match(
        await frame.locator('section[data-key="line layshaft"]').innerText(),
        /Which reamer/,
      );
      await closeBench(page);
      await page.locator(".tab", { hasText: "winch" }).first().click();
      await goTo(page, at.fit);
    },
  },
];

// What a person does with the workbench's page and what stands on it: going to a line, pointing at a word, typing, and
// reading what is drawn. It finds things by line number and text, waits for conditions, and asserts nothing about Thou.
const editorSelector = ".editor-instance .monaco-editor";

/** Asks `probe` until it gives something other than undefined; the last thing it threw is the reason of a failure. */
export async function until(what, probe, seconds = 30) {
  const end = Date.now() + seconds * 1000;
  for (;;) {
    let reason;
    try {
      const value = await probe();
      if (value !== undefined) return value;
    } catch (error) {
      reason = error;
    }
    if (end < Date.now())
      throw new Error(`timed out after ${seconds} s: ${what}`, {
        cause: reason,
      });
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
}

/** Puts the caret at a line and column, both from 1, through the box that Ctrl+G opens. */
export async function goTo(page, line, column = 1) {
  const box = page.locator(".quick-input-widget input[type=text]").first();
  await until(`line ${line} is gone to`, async () => {
    await page.keyboard.press("Control+KeyG");
    await box.waitFor({ timeout: 3000 });
    // soon or not at all: a box that closed under it is opened anew
    await box.fill(`:${line}:${column}`, { timeout: 3000 });
    await page.keyboard.press("Enter");
    await page
      .locator(".statusbar-item", { hasText: `Ln ${line}, Col ${column}` })
      .waitFor({ timeout: 3000 });
    return true;
  });
}

/** Runs a command by its title, through the box that F1 opens. */
export async function runCommand(page, title) {
  const box = page.locator(".quick-input-widget input[type=text]").first();
  const row = page.locator(".quick-input-list .monaco-list-row", {
    hasText: title,
  });
  await until(`${title} is run`, async () => {
    await page.keyboard.press("F1");
    // soon or not at all: a window that is still loading closes the box, or does not know the command yet
    await box.fill(`>${title}`, { timeout: 3000 });
    await row.first().click({ timeout: 5000 });
    return true;
  });
}

/** The text drawn on a line, hints included, blanks made plain and places to break left out; undefined where the line is not in view. */
export function drawnText(page, line) {
  return inLine(page, line, (element) =>
    element.textContent
      .replaceAll("\u00a0", " ")
      .replaceAll("\u200b", "")
      .trimEnd(),
  );
}

/** How many different colours the words of a line are drawn in, those of its hints left out. */
export function coloursOf(page, line) {
  return inLine(page, line, (element) => {
    const isToken = (span) =>
      [...span.classList].every((name) => name.startsWith("mtk")); // a hint has more classes
    const words = [...element.querySelectorAll("span > span")].filter(
      (span) => isToken(span) && /\w/.test(span.textContent),
    );
    return new Set(words.map((span) => getComputedStyle(span).color)).size;
  });
}

/** Where a word is drawn on a line: x, y, width and height in the page. */
export function boxOf(page, line, word) {
  return inLine(
    page,
    line,
    (element, wanted) => {
      const text = element.textContent.replaceAll("\u00a0", " ");
      const begin = text.search(new RegExp(`(?<![\\w-])${wanted}(?![\\w-])`));
      if (begin < 0) return undefined;
      const range = document.createRange();
      const walker = document.createTreeWalker(element, NodeFilter.SHOW_TEXT);
      let before = 0;
      while (walker.nextNode()) {
        const node = walker.currentNode;
        for (const [place, set] of [
          [begin, "setStart"],
          [begin + wanted.length, "setEnd"],
        ]) {
          if (before <= place && place <= before + node.length)
            range[set](node, place - before);
        }
        before += node.length;
      }
      const { x, y, width, height } = range.getBoundingClientRect();
      return width > 0 ? { x, y, width, height } : undefined;
    },
    word,
  );
}

/** Where the error squiggles are drawn that begin at the height of a line. */
export async function errorSquigglesOn(page, line) {
  const box = await inLine(page, line, (element) =>
    element.getBoundingClientRect().toJSON(),
  );
  if (!box) return [];
  const all = await page.$$eval(
    `${editorSelector} .view-overlays .squiggly-error`,
    (marks) => marks.map((mark) => mark.getBoundingClientRect().toJSON()),
  );
  return all.filter((mark) => Math.abs(mark.y - box.y) < box.height / 2);
}

/** Points at a word until a hover box with the text is shown, and gives the hover's text. */
export function hoverOver(page, line, word, expected) {
  const hover = page
    .locator(".monaco-hover:not(.hidden)", { hasText: expected })
    .first();
  return until(`a hover with ${expected} over ${word}`, async () => {
    const box = await boxOf(page, line, word);
    if (!box) return undefined;
    // From elsewhere and in steps: the editor opens a hover for a mouse that comes and then rests.
    await page.mouse.move(box.x + 300, box.y + 100);
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2, {
      steps: 5,
    });
    await hover.waitFor({ timeout: 5000 });
    return (await hover.innerText()).replaceAll("\u00a0", " ");
  });
}

/** Takes the mouse away and waits until no hover box is left. */
export async function leaveHover(page) {
  await page.mouse.move(640, 1);
  await page.keyboard.press("Escape");
  await page.waitForFunction(() =>
    [...document.querySelectorAll(".monaco-hover")].every(
      (hover) =>
        hover.classList.contains("hidden") ||
        hover.getBoundingClientRect().height === 0,
    ),
  );
}

/** Runs `read` in the page on the element that draws a line of the editor; undefined where it is not in view. */
async function inLine(page, line, read, argument) {
  const handle = await page.evaluateHandle(
    ([selector, wanted]) => {
      const editor = document.querySelector(selector);
      const numbers = [
        ...(editor?.querySelectorAll(".margin-view-overlays .line-numbers") ??
          []),
      ];
      const number = numbers.find(
        (each) => each.textContent.trim() === String(wanted),
      );
      if (!number) return undefined;
      // The lines are in no order in the page: the one beside the number is the one.
      const top = number.getBoundingClientRect().top;
      const lines = [...editor.querySelectorAll(".view-lines .view-line")];
      return lines.find(
        (each) => Math.abs(each.getBoundingClientRect().top - top) < 3,
      );
    },
    [editorSelector, line],
  );
  return handle.asElement()?.evaluate(read, argument);
}

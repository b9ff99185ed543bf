// Runs checks of a page one after another, counts them, and keeps a picture of the page where one fails.

/** What a run of checks comes to; `fault` is what kept them from running. */
export function newOutcome(checks) {
  return { declared: checks.length, passed: 0, failed: 0, fault: undefined };
}

/**
 * @param {{ name: string, check: (given: object) => unknown }[]} checks
 * @param {object} o
 * @param {object} o.given  what each check is given
 * @param {(name: string) => Promise<unknown>} o.shoot
 * @param {{ passed: number, failed: number }} o.outcome  is counted up
 */
export async function runChecks(checks, { given, shoot, outcome }) {
  for (const [index, { name, check }] of checks.entries()) {
    const began = Date.now();
    try {
      await check({ ...given, shoot });
      outcome.passed++;
      console.log(`ok - ${name} (${Date.now() - began} ms)`);
    } catch (error) {
      outcome.failed++;
      console.log(`not ok - ${name} (${Date.now() - began} ms)`);
      console.error(error);
      await shoot(`failed-${index + 1}`).catch(() => {});
    }
  }
}

/** Takes pictures of a page into a folder, under a name with a beginning of its own. */
export function shooter(page, shots, beginning) {
  return (name) =>
    page.screenshot({
      path: `${shots}/${beginning}${name}.png`,
      animations: "disabled", // at their end, or a hover is half faded in
    });
}

// How the findings of a long record are worked out: with pauses, after each of which the record is looked at as it then is, and until nobody
// waits any longer.
import { expect, test } from "vitest";
import { CancellationTokenSource } from "vscode-jsonrpc";
import { readLines } from "../../grammar/lines.ts";
import { NEVER, type Clock } from "../../server/lsp/clock.ts";
import { createWorkingOut } from "../../server/lsp/working-out.ts";
import { createProject } from "../../server/rules/check.ts";

const URI = "file:///shop/long.thou";

function record(journals: number) {
  const project = createProject({ root: "file:///shop" });
  const set = (count: number) => {
    const all = Array.from(
      { length: count },
      (_, index) => `journal j${index} on shaft\n  limits 0.8740 to 0.8745\n`,
    );
    project.setFile(URI, readLines(`part shaft\n${all.join("")}`));
  };
  set(journals);
  return { set, open: () => Promise.resolve(project.open(URI)) };
}

/** A clock on which every look costs 20 ms, and each pause does something. */
function pausing(during: (pause: number) => void) {
  let [looks, pauses] = [0, 0];
  const clock: Clock = {
    now: () => (looks += 20),
    today: () => "2026-11-05",
    after(_, call) {
      during(++pauses);
      setImmediate(call);
      return () => undefined;
    },
  };
  return { clock, pauses: () => pauses };
}

test("a short record is worked out without a pause, and one that is not there is nothing", async () => {
  const { clock, pauses } = pausing(() => undefined);
  const { workedOut, takesLong } = createWorkingOut(() => 0, clock);
  const { open } = record(20);
  const found = await workedOut(open, NEVER);
  expect(found && takesLong(found)).toBe(false);
  expect(await workedOut(() => Promise.resolve(undefined), NEVER)).toBe(
    undefined,
  );
  expect(pauses()).toBe(0);
});

test("a long one with pauses, once: from then on it takes no longer than its edits do", async () => {
  const { clock, pauses } = pausing(() => undefined);
  const { workedOut, takesLong } = createWorkingOut(() => 0, clock);
  const { open } = record(150);
  const before = await open();
  expect(before && takesLong(before)).toBe(true);
  const found = await workedOut(open, NEVER);
  expect(pauses()).toBe(found?.file.entries.length);
  expect(found && takesLong(found)).toBe(false);
  await workedOut(open, NEVER);
  expect(pauses()).toBe(found?.file.entries.length);
});

test("a change during a pause is taken in, also one that leaves nothing to do", async () => {
  const long = record(150);
  let revision = 0;
  const { clock } = pausing((pause) => {
    if (pause !== 5) return;
    revision++;
    long.set(2);
  });
  const { workedOut } = createWorkingOut(() => revision, clock);
  const found = await workedOut(long.open, NEVER);
  expect(found?.file.entries).toHaveLength(3);
});

test("called off, it ends at the next pause, and the record is still to be worked out", async () => {
  const source = new CancellationTokenSource();
  const { clock, pauses } = pausing((pause) => {
    if (pause === 3) source.cancel();
  });
  const { workedOut, takesLong } = createWorkingOut(() => 0, clock);
  const { open } = record(150);
  await expect(workedOut(open, source.token)).rejects.toMatchObject({
    name: "Cancelled",
  });
  expect(pauses()).toBe(3);
  const now = await open();
  expect(now && takesLong(now)).toBe(true);
});

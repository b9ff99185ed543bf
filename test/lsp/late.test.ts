// What is loaded when it is first needed: loaded once, tried again where that failed, told of nothing before it is there.
import { expect, test } from "vitest";
import { createLate } from "../../server/lsp/late.ts";

function late(load: () => Promise<string>) {
  const log: string[] = [];
  const told: string[] = [];
  const made = createLate(
    load,
    (name) => ({ hear: (what: string) => told.push(`${name}: ${what}`) }),
    (sentence) => log.push(sentence),
  );
  const tell = (what: string) => {
    made.tell(`telling of ${what}`, (to) => {
      to.hear(what);
    });
  };
  return { made, log, told, tell };
}

test("it is loaded once, whoever asks, and hears what comes after it has begun", async () => {
  let loads = 0;
  const { made, told, tell } = late(() => {
    loads++;
    return Promise.resolve("session");
  });
  expect(made.now()).toBeUndefined();
  tell("one");
  const [first, second] = await Promise.all([made.begun(), made.begun()]);
  tell("two");
  expect(second).toBe(first);
  expect(made.now()).toBe(first);
  expect(await made.begun()).toBe(first);
  expect(loads).toBe(1);
  expect(told).toEqual(["session: two"]);
});

test("what can't be loaded fails all who wait, and is tried again for the next", async () => {
  let loads = 0;
  const { made } = late(() =>
    loads++ === 0
      ? Promise.reject(new Error("cut short"))
      : Promise.resolve("session"),
  );
  const both = [made.begun(), made.begun()];
  for (const each of both) await expect(each).rejects.toThrow("cut short");
  expect(made.now()).toBeUndefined();
  expect(await made.begun()).toBe(made.now());
  expect(loads).toBe(2);
});

test("what it throws when it is told is logged by its name", async () => {
  const { made, log, told, tell } = late(() => Promise.resolve("session"));
  await made.begun();
  made.tell("closing", () => {
    throw new Error("injected");
  });
  tell("the next");
  expect(log).toEqual([expect.stringMatching(/^closing failed: Error: inj/)]);
  expect(told).toEqual(["session: the next"]);
});

// How many crashes are borne within how long, and what is said of each.
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { createCrashes } from "../../client/crashes.ts";

beforeEach(() => {
  vi.useFakeTimers({ toFake: ["Date"] });
});
afterEach(() => {
  vi.useRealTimers();
});

const passed = (seconds: number) => {
  vi.setSystemTime(Date.now() + 1000 * seconds);
};

test("three within three minutes are borne, by number, and the fourth is not", () => {
  const crashes = createCrashes();
  for (const number of [1, 2, 3]) {
    const { isBorne, sentence } = crashes.happened();
    expect(isBorne).toBe(true);
    expect(sentence).toContain(`this was number ${String(number)}.`);
    passed(59);
  }
  expect(crashes.happened()).toEqual({
    isBorne: false,
    sentence:
      "The Thou server stopped 4 times within three minutes and was not started again, so findings and clearances are out of date or missing. The log says why.",
  });
});

test("one that lies three minutes back counts no longer, nor does any once they are forgiven", () => {
  const crashes = createCrashes();
  crashes.happened();
  crashes.happened();
  crashes.happened();
  passed(180);
  expect(crashes.happened()).toMatchObject({ isBorne: true });
  crashes.happened();
  crashes.happened();
  crashes.forgive();
  expect(crashes.happened().sentence).toContain("number 1.");
});

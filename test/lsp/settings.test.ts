// The settings as they were last told: whatever comes in counts as far as it is of its kind, and a change is told where there is one.
import { expect, test } from "vitest";
import { createToldSettings } from "../../server/lsp/settings.ts";

function settings() {
  const warned: string[] = [];
  let changes = 0;
  const told = createToldSettings(
    (problem) => warned.push(problem),
    () => changes++,
  );
  return { told, warned, changes: () => changes };
}

const SHIPPED = {
  hints: true,
  lenses: false,
  waitWhileTyping: true,
  wholeWorkspace: true,
  levels: {},
  problems: [],
};

test("before anything is told, and after nonsense, they are those that are shipped", () => {
  const { told, changes } = settings();
  expect(told.now()).toEqual(SHIPPED);
  for (const section of [null, undefined, 7, "on", [], { hints: "off" }]) {
    told.take(section);
    expect(told.now()).toEqual(SHIPPED);
  }
  expect(changes()).toBe(0);
});

test("each is taken by itself, and what is no longer set is as shipped again", () => {
  const { told, changes } = settings();
  told.take({ hints: { enabled: false }, lenses: { enabled: true } });
  expect(told.now()).toEqual({ ...SHIPPED, hints: false, lenses: true });
  told.take({ findings: { waitWhileTyping: false, wholeWorkspace: false } });
  expect(told.now()).toEqual({
    ...SHIPPED,
    waitWhileTyping: false,
    wholeWorkspace: false,
  });
  told.take({ findings: { levels: { "fit-tight": "hint" } } });
  expect(told.now()).toEqual({ ...SHIPPED, levels: { "fit-tight": "hint" } });
  expect(changes()).toBe(3);
  told.take({ findings: { levels: { "fit-tight": "hint" } } });
  expect(changes()).toBe(3);
});

test("what can't be taken is told once as long as it stays set, and again when it comes back", () => {
  const { told, warned } = settings();
  const wrong = { findings: { levels: { "fit-tihgt": "off" } } };
  told.take(wrong);
  told.take(wrong);
  expect(warned.length).toBe(1);
  told.take({});
  told.take(wrong);
  expect(warned.length).toBe(2);
});

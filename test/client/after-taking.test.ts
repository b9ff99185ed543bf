// The box that leads on once readings are written: what they came to can be read whole in it. The editor's box is stood in for here.
import { expect, test, vi } from "vitest";
import { chooseAfter } from "../../client/after-taking.ts";
import type { TakingPrompt } from "../../server/protocol/guide.ts";

const { shown } = vi.hoisted(() => ({
  shown: [] as { readonly label: string; readonly detail?: string }[],
}));

vi.mock("vscode", () => ({
  QuickPickItemKind: { Separator: -1 },
  window: {
    showQuickPick: (items: typeof shown) => {
      shown.push(...items);
      return Promise.resolve(undefined);
    },
  },
}));

test("a row of the box does not wrap, so what the readings come to stands in rows that fit, each sentence from its own on", async () => {
  const summary =
    "journal front: 6 readings. Mean 0.87455 in at 20 °C, out-of-round 0.00010 in, taper 0.00000 in. Unsure whether within 0.8740 to 0.8745 in: the readings are too near a limit for what their gauge is sure of.";
  await chooseAfter({
    title: "journal front: all taken",
    summary,
    after: [
      { does: "see", target: null, label: "Show the bench view", below: "" },
    ],
  } as unknown as TakingPrompt);
  const labels = shown.map(({ label }) => label);
  expect(labels.slice(0, 3)).toEqual([
    "Show the bench view",
    "Back to the record",
    "written",
  ]);
  const rows = labels.slice(3);
  expect(rows.join(" ")).toBe(summary);
  expect(rows[0]).toBe("journal front: 6 readings.");
  expect(rows[1]).toMatch(/^Mean 0\.87455 in/);
  for (const row of rows) expect(row.length).toBeLessThanOrEqual(60);
});

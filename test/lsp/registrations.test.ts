// What the editor is asked to tell of: what it says it can, and nothing else.
import { expect, test } from "vitest";
import { askToBeTold } from "../../server/lsp/registrations.ts";

/** What is registered where the editor can do this; an editor that refuses is none to stop for. */
async function registered(
  watches: boolean,
  configurationChanges: boolean,
  refuses = false,
) {
  const asked: unknown[] = [];
  const log: string[] = [];
  const client = {
    register: ({ method }: { method: string }, options: unknown) => {
      asked.push([method, options]);
      return refuses
        ? Promise.reject(new Error("refused"))
        : Promise.resolve({ dispose: () => undefined });
    },
  };
  askToBeTold(
    { client } as unknown as Parameters<typeof askToBeTold>[0], // all that is called of it
    { watches, configurationChanges },
    (sentence) => log.push(sentence),
  );
  await new Promise(setImmediate);
  return { asked, log };
}

test("an editor that can tell of nothing is asked for nothing", async () => {
  expect(await registered(false, false)).toEqual({ asked: [], log: [] });
});

test("files by their names, and whatever comes or goes, since a folder may hold some", async () => {
  const { asked } = await registered(true, false);
  expect(asked).toEqual([
    [
      "workspace/didChangeWatchedFiles",
      {
        watchers: [
          { globPattern: "**/*.thou" },
          { globPattern: "**/*", kind: 1 + 4 },
        ],
      },
    ],
  ]);
});

test("settings, of our own section alone; a refusal is logged", async () => {
  const { asked, log } = await registered(false, true, true);
  expect(asked).toEqual([
    ["workspace/didChangeConfiguration", { section: "thou" }],
  ]);
  expect(log).toEqual([
    expect.stringMatching(/^asking to be told of settings failed: /),
  ]);
});

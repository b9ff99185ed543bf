// Which finding "Explain This Finding" means: the one at the caret, or one of a list. The editor's window is stood in for here.
import { beforeEach, expect, test, vi } from "vitest";
import type { ActiveRecord } from "../../client/active-record.ts";
import { chooseFinding } from "../../client/finding-at-caret.ts";

const { window, said, offered, diagnostics } = vi.hoisted(() => {
  const window: { activeTextEditor: unknown } = { activeTextEditor: undefined };
  const said: string[] = [];
  const offered: string[][] = [];
  const diagnostics: unknown[] = [];
  return { window, said, offered, diagnostics };
});

vi.mock("vscode", () => ({
  window: Object.assign(window, {
    showInformationMessage: (text: string) => said.push(text),
    showQuickPick: (choices: readonly { label: string }[]) => {
      offered.push(choices.map(({ label }) => label));
      return Promise.resolve(choices.at(-1));
    },
  }),
  languages: { getDiagnostics: () => diagnostics },
}));

const winch = { languageId: "thou", uri: {} };

function finding(code: string, line: number): unknown {
  return {
    source: "thou",
    code,
    message: code,
    range: {
      start: {
        line,
        compareTo: (other: { line: number }) => line - other.line,
      },
      contains: (caret: { line: number }) => caret.line === line,
    },
  };
}

const caretAt = (line: number, document: unknown = winch): void => {
  window.activeTextEditor = { document, selection: { active: { line } } };
};

function at(document: unknown): ActiveRecord {
  return { document: () => document } as unknown as ActiveRecord;
}

beforeEach(() => {
  said.length = offered.length = 0;
  diagnostics.splice(
    0,
    Infinity,
    finding("fit-loose", 7),
    finding("name-unknown", 3),
  );
});

test("the finding at the caret is meant, and without one any of the record, in the order of its lines", async () => {
  caretAt(7);
  expect(await chooseFinding(at(winch))).toBe("fit-loose");
  expect(offered).toEqual([]);
  caretAt(1);
  await chooseFinding(at(winch));
  expect(offered).toEqual([["name-unknown", "fit-loose"]]);
});

test("while a page has the keys, as the walkthrough has, the findings of the record beside it are offered", async () => {
  window.activeTextEditor = undefined;
  expect(await chooseFinding(at(winch))).toBe("fit-loose");
  expect(offered).toEqual([["name-unknown", "fit-loose"]]);
  expect(said).toEqual([]);
});

test("where there is nothing to explain it is said why", async () => {
  window.activeTextEditor = undefined;
  expect(await chooseFinding(at(undefined))).toBeUndefined();
  diagnostics.length = 0;
  expect(await chooseFinding(at(winch))).toBeUndefined();
  expect(said).toEqual([
    "Open a record and put the caret on a finding.",
    "This record has no findings.",
  ]);
});

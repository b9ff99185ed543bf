// Which record the person is at, while editors, panels and lists take the caret. The editor's window is stood in for here.
import { beforeEach, expect, test, vi } from "vitest";
import { followActiveRecord } from "../../client/active-record.ts";

interface Editor {
  readonly document: { languageId: string; uri: { scheme: string } };
}

const { window, told } = vi.hoisted(() => {
  const window: {
    activeTextEditor: Editor | undefined;
    visibleTextEditors: readonly Editor[];
  } = { activeTextEditor: undefined, visibleTextEditors: [] };
  const told: Record<string, (what: unknown) => void> = {};
  return { window, told };
});

vi.mock("vscode", () => {
  const on =
    (event: string) =>
    (does: (what: unknown) => void): { dispose: () => void } => {
      told[event] = does;
      return { dispose: () => undefined };
    };
  return {
    Disposable: { from: () => ({ dispose: () => undefined }) },
    EventEmitter: class {
      fire = vi.fn();
    },
    window: Object.assign(window, {
      onDidChangeActiveTextEditor: on("active"),
    }),
    workspace: {
      onDidCloseTextDocument: on("closed"),
      onDidOpenTextDocument: on("opened"),
    },
  };
});

const editorOf = (languageId: string, scheme = "file"): Editor => ({
  document: { languageId, uri: { scheme } },
});
const winch = editorOf("thou");
const log = editorOf("log", "output");

function activate(editor: Editor | undefined): void {
  window.activeTextEditor = editor;
  told.active?.(editor);
}

beforeEach(() => {
  window.activeTextEditor = undefined;
  window.visibleTextEditors = [];
});

test("a record stays the one that the person is at while a panel, a list or a log has the caret", () => {
  const record = followActiveRecord();
  activate(winch);
  for (const other of [undefined, log]) {
    activate(other);
    expect(record.document()).toBe(winch.document);
  }
  activate(editorOf("plaintext"));
  expect(record.document()).toBeUndefined();
});

test("at the start a record that stands beside a log is the one", () => {
  window.activeTextEditor = log;
  window.visibleTextEditors = [log, winch];
  expect(followActiveRecord().document()).toBe(winch.document);
});

test("a record that is closed while a log has the caret is gone", () => {
  const record = followActiveRecord();
  activate(winch);
  activate(log);
  told.closed?.(winch.document);
  expect(record.document()).toBeUndefined();
});

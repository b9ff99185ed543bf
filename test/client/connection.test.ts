// What the extension does when its server dies: starts it again, says so in the log and in the status, and after too many deaths says so to
// the person, who can start it again. The editor and the library's client are stood in for here; the real ones are for the tests in the editor.
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { connect, type Launch } from "../../client/connection.ts";

const { item, shown } = vi.hoisted(() => ({
  item: { text: "", busy: false, dispose: () => undefined },
  shown: {
    errors: [] as string[],
    choose: undefined as ((choice: string) => void) | undefined,
  },
}));
vi.mock("vscode", () => ({
  languages: { createLanguageStatusItem: () => item },
  LanguageStatusSeverity: { Information: 0, Error: 2 },
  window: {
    showErrorMessage: (sentence: string) => {
      shown.errors.push(sentence);
      return new Promise((resolve) => {
        shown.choose = resolve;
      });
    },
  },
  workspace: {
    workspaceFolders: [],
    onDidChangeWorkspaceFolders: () => ({ dispose: () => undefined }),
  },
}));
vi.mock("vscode-languageclient", () => ({
  CloseAction: { DoNotRestart: 1 },
  ErrorAction: { Continue: 1, Shutdown: 2 },
  RevealOutputChannelOn: { Never: 4 },
  State: { Stopped: 1, Starting: 3, Running: 2 },
}));

/** Servers that come up at once, and die when they are told to. */
function servers() {
  const log: string[] = [];
  const note = (sentence: string) => log.push(sentence);
  const dying: (() => void)[] = [];
  const launch = ((options: Parameters<Launch>[0]) => {
    const client = {
      state: 3,
      start: () => {
        client.state = 2;
        return Promise.resolve();
      },
      stop: () => Promise.resolve(),
      error: note,
      registerFeature: () => undefined,
      onRequest: () => undefined,
      sendRequest: (name: string) =>
        Promise.resolve(`${name} by server ${dying.length}`),
    };
    dying.push(() => void options.errorHandler?.closed());
    return { client, kill: () => undefined };
  }) as unknown as Launch; // only what the connection calls is there
  const connection = connect(launch, {
    error: note,
    warn: note,
    info: note,
    show: () => undefined,
  } as unknown as Parameters<typeof connect>[1]);
  return {
    connection,
    log,
    started: () => dying.length,
    die: () => dying.at(-1)?.(),
  };
}

beforeEach(() => {
  vi.useFakeTimers({ toFake: ["Date"] });
  shown.errors.length = 0;
});
afterEach(() => {
  vi.useRealTimers();
});

const page = { code: "fit-tight" };

test("a server that dies is started again, and says so; what is asked meanwhile is answered by the new one", async () => {
  const { connection, log, started, die } = servers();
  expect(await connection.ready).toBe(true);
  expect(item.text).toBe("Server is running");
  die();
  expect(item.text).toBe("Server is starting");
  expect(log).toEqual([
    "The server is running.",
    "The server stopped by itself and is started again. It may do so 3 times within three minutes; this was number 1.",
  ]);
  expect(await connection.ask("thou/page", page)).toBe("thou/page by server 2");
  expect(item.text).toBe("Server is running");
  expect(started()).toBe(2);
  expect(shown.errors).toEqual([]);
});

test("one that dies again and again is left, the person is told, and can start it", async () => {
  const { connection, started, die } = servers();
  await connection.ready;
  for (let time = 0; time < 4; time++) {
    die();
    await new Promise(setImmediate);
  }
  expect(started()).toBe(4);
  expect(item.text).toBe("Server has stopped");
  expect(shown.errors).toEqual([
    "The Thou server stopped 4 times within three minutes and was not started again, so findings and clearances are out of date or missing. The log says why.",
  ]);
  shown.choose?.("Restart Server");
  await new Promise(setImmediate);
  expect(started()).toBe(5);
  expect(await connection.ask("thou/page", page)).toBe("thou/page by server 5");
});

test("deaths that lie far apart are each borne", async () => {
  const { connection, started, die } = servers();
  await connection.ready;
  for (let time = 0; time < 6; time++) {
    vi.setSystemTime(Date.now() + 70_000);
    die();
    await new Promise(setImmediate);
  }
  expect(started()).toBe(7);
  expect(shown.errors).toEqual([]);
});

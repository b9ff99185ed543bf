// Whose files the server reads: the disk's where there is one and the file lies on it, else the editor's where it offers them. Folders that lie
// on no disk are served like any other.
import { expect, test } from "vitest";
import type { WorkspaceDiagnosticReport } from "vscode-languageserver";
import { filesOf, type FileAccess } from "../../server/lsp/files.ts";
import { READING } from "./bundled-worker.ts";
import { FULL, labelOf, rangeOf } from "./editor.ts";
import { serveHere } from "./in-process.ts";
import { CRIB, JOB } from "./winch.ts";

const FOLDER = "vscode-vfs://github/harbour/records";

/** A server with nothing on its disk, and an editor that has these files; it notes what it is asked. */
function browsed(files: Readonly<Record<string, string>>) {
  const here = serveHere();
  const asked: string[] = [];
  here.editor.connection.onRequest(
    "thou/readFile",
    ({ uri }: { uri: string }) => {
      asked.push(uri);
      const text = files[uri];
      return text === undefined ? null : { text };
    },
  );
  here.editor.connection.onRequest(
    "thou/findRecords",
    ({ folder }: { folder: string }) => ({
      uris: Object.keys(files).filter((uri) => uri.startsWith(`${folder}/`)),
    }),
  );
  return { ...here, asked };
}

test("a job of a folder that lies on no disk is given the crib that the editor reads", async () => {
  const { editor, asked } = browsed({ [`${FOLDER}/crib.thou`]: CRIB });
  await editor.start([FOLDER], READING);
  const uri = `${FOLDER}/jobs/winch.thou`;
  await editor.open(uri, JOB.replace("crib.thou", "../crib.thou"));
  expect(await editor.codes(uri)).toEqual(["step-open"]);
  const { line } = rangeOf(JOB, "fit front").start;
  expect((await editor.hints(uri, line, line)).map(labelOf).join()).toBe(
    "0.00128 to 0.00142 in, predicted, in tolerance",
  );
  // once: it is kept until it changes
  expect(asked).toEqual([`${FOLDER}/crib.thou`]);
});

test("a crib that is not there is told with the one beside it", async () => {
  const { editor } = browsed({
    [`${FOLDER}/cribs/of%20Winches.thou`]: CRIB,
    [`${FOLDER}/cribs/below/of-winches.thou`]: CRIB,
  });
  await editor.start([FOLDER], READING);
  const uri = `${FOLDER}/winch.thou`;
  await editor.open(
    uri,
    'job j\n  units inch\n  use "cribs/Of winches.thou"\n',
  );
  const [finding] = await editor.findings(uri);
  expect(finding?.message).toMatch(
    /: did you mean .cribs\/of Winches\.thou.\? The names in it/u,
  );
});

test("records of such a folder that are not open are reported on, and names are looked for in them", async () => {
  const { editor } = browsed({
    [`${FOLDER}/crib.thou`]: CRIB,
    [`${FOLDER}/winch.thou`]: JOB,
    [`${FOLDER}/broken.thou`]: "job broken\n  units inhc\n",
  });
  await editor.start([FOLDER], READING);
  const { items } = await editor.request<WorkspaceDiagnosticReport>(
    "workspace/diagnostic",
    { previousResultIds: [] },
  );
  const codes = Object.fromEntries(
    items.map((each) => [
      each.uri.slice(FOLDER.length),
      each.kind === "full" ? each.items.map(({ code }) => code) : each.kind,
    ]),
  );
  expect(codes).toEqual({
    "/broken.thou": ["line-damaged"],
    "/crib.thou": [],
    "/winch.thou": ["step-open"],
  });
  await editor.open(`${FOLDER}/crib.thou`, CRIB);
  const found = await editor.request<readonly { uri: string }[]>(
    "textDocument/references",
    {
      textDocument: { uri: `${FOLDER}/crib.thou` },
      position: rangeOf(CRIB, "r-8755").start,
      context: { includeDeclaration: false },
    },
  );
  expect(found.map(({ uri }) => uri)).toEqual([`${FOLDER}/winch.thou`]);
});

test("a crib that has changed there is read again when the editor says so", async () => {
  const files = { [`${FOLDER}/crib.thou`]: CRIB };
  const { editor, clock } = browsed(files);
  await editor.start([FOLDER], READING);
  const uri = `${FOLDER}/winch.thou`;
  await editor.open(uri, JOB);
  expect(await editor.codes(uri)).toEqual(["step-open"]);
  files[`${FOLDER}/crib.thou`] = CRIB.replace("gauge mic-1", "gauge mic-2");
  await editor.notify("workspace/didChangeWatchedFiles", {
    changes: [{ uri: `${FOLDER}/crib.thou`, type: 2 }],
  });
  expect(await editor.codes(uri)).toContain("name-unknown");
  clock.pass(1000);
  await editor.until("asking to ask again", () =>
    editor.told.refreshed.includes("diagnostic"),
  );
});

test("an editor that offers no files, and one that fails to read, are served what is open", async () => {
  for (const capabilities of [FULL, READING]) {
    const { editor } = serveHere();
    await editor.start([FOLDER], capabilities); // it answers neither request
    const uri = `${FOLDER}/winch.thou`;
    await editor.open(uri, JOB);
    expect(await editor.codes(uri)).toContain("file-missing");
    await editor.open(`${FOLDER}/crib.thou`, CRIB);
    expect(await editor.codes(uri)).toEqual(["step-open"]);
    expect(editor.told.logged).toEqual([]);
  }
});

test("each file is read by the one who has it", async () => {
  const named = (name: string): FileAccess => ({
    read: (uri) => Promise.resolve(`${name} ${uri}`),
    async *records(folder) {
      yield await Promise.resolve(`${folder}/${name}.thou`);
    },
  });
  const editor = {
    sendRequest<R>(method: string, params: unknown): Promise<R> {
      const answer =
        method === "thou/readFile"
          ? { text: `editor ${JSON.stringify(params)}` }
          : { uris: ["editor.thou"] };
      return Promise.resolve(answer as R); // as the protocol has it
    },
  };
  const all = async (files: FileAccess, folder: string) => {
    const found: string[] = [];
    for await (const uri of files.records(folder)) found.push(uri);
    return found;
  };
  const both = filesOf(named("disk"), editor);
  expect(await both.read("file:///a")).toBe("disk file:///a");
  expect(await both.read("vfs:///a")).toBe('editor {"uri":"vfs:///a"}');
  expect(await all(both, "file:///a")).toEqual(["file:///a/disk.thou"]);
  expect(await all(both, "vfs:///a")).toEqual(["editor.thou"]);
  const noDisk = filesOf(undefined, editor);
  expect(await noDisk.read("file:///a")).toBe('editor {"uri":"file:///a"}');
  const noEditor = filesOf(named("disk"), undefined);
  expect(await noEditor.read("vfs:///a")).toBe("disk vfs:///a");
  const neither = filesOf(undefined, undefined);
  expect(await neither.read("file:///a")).toBeUndefined();
  expect(await all(neither, "file:///a")).toEqual([]);
});

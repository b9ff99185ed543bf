// What is offered without a finding, through the protocol: in the kinds that are asked for, with tab stops and new files only for an editor
// that can take them.
import { describe, expect, test } from "vitest";
import type { CodeAction } from "vscode-languageserver";
import { FULL, rangeOf, type Editor } from "./editor.ts";
import { serveHere } from "./in-process.ts";

const FOLDER = "file:///shop";
const URI = `${FOLDER}/winch.thou`;
const JOB = `job winch-9
  units inch
part shaft
part case
journal one on shaft
  limits 0.9995 to 1.0005
bore one in case
fit one of journal one in bore one
reamer r-1
  size 1.0020
step mark
`;
const ABLE = {
  ...FULL,
  workspace: {
    ...FULL.workspace,
    workspaceEdit: {
      documentChanges: true,
      resourceOperations: ["create"],
      snippetEditSupport: true,
    },
  },
};

async function shop(capabilities: object): Promise<Editor> {
  const { editor } = serveHere();
  await editor.start([FOLDER], capabilities);
  await editor.open(URI, JOB);
  return editor;
}

async function actions(
  editor: Editor,
  piece: string,
  only?: readonly string[],
): Promise<readonly CodeAction[]> {
  const { start } = rangeOf(JOB, piece);
  return editor.request<CodeAction[]>("textDocument/codeAction", {
    textDocument: { uri: URI },
    range: { start, end: start },
    context: { diagnostics: [], ...(only === undefined ? {} : { only }) },
  });
}

describe("an editor that can do everything", () => {
  test("is offered each kind by itself", async () => {
    const editor = await shop(ABLE);
    const kinds = async (piece: string, only: string): Promise<unknown> => [
      ...new Set(
        (await actions(editor, piece, [only])).map((each) => each.kind),
      ),
    ];
    expect(await kinds("limits", "refactor")).toEqual(["refactor.rewrite"]);
    expect(await kinds("reamer", "refactor.extract")).toEqual([
      "refactor.extract",
    ]);
    expect(await kinds("fit one", "quickfix")).toEqual(["quickfix"]);
    expect(await kinds("fit one", "source.fixAll")).toEqual([]);
  });

  test("is sent tab stops and new files", async () => {
    const editor = await shop(ABLE);
    const rows = (await actions(editor, "journal")).find(({ title }) =>
      title.includes("readings"),
    );
    expect(rows?.edit?.documentChanges).toMatchObject([
      {
        textDocument: { uri: URI },
        edits: [
          {
            snippet: {
              kind: "snippet",
              value: "  read near ${1:VALUES}\n  read far ${2:VALUES}\n",
            },
          },
        ],
      },
    ]);
    const moved = (await actions(editor, "reamer")).find(({ title }) =>
      title.startsWith("Move"),
    );
    expect(moved?.edit?.documentChanges).toMatchObject([
      {
        kind: "create",
        uri: `${FOLDER}/crib.thou`,
        options: { overwrite: false },
      },
      {
        textDocument: { uri: `${FOLDER}/crib.thou`, version: null },
        edits: [{ newText: expect.stringContaining("reamer r-1") as unknown }],
      },
      { textDocument: { uri: URI } },
    ]);
  });

  test("the day is the editor's own", async () => {
    const editor = await shop(ABLE);
    expect(
      (await actions(editor, "step mark")).map(({ title }) => title),
    ).toContain("It is done today: ‘done 2026-11-05’");
  });

  test("a clearance of the advice stands among the quick fixes, with its source", async () => {
    const editor = await shop(ABLE);
    const found = (await actions(editor, "fit one", ["quickfix"])).find(
      ({ title }) => title.includes("shop rule"),
    );
    expect(found).toMatchObject({
      title:
        "Want 0.0010 to 0.0020 in: shop rule, one to two thou an inch (common practice, no source)",
      kind: "quickfix",
    });
  });
});

test("an editor that can't is sent comments in place of tab stops, and no new file", async () => {
  const editor = await shop(FULL);
  const rows = (await actions(editor, "journal")).find(({ title }) =>
    title.includes("readings"),
  );
  expect(rows?.edit?.documentChanges).toMatchObject([
    {
      edits: [{ newText: "  # read near VALUES\n  # read far VALUES\n" }],
    },
  ]);
  expect(
    (await actions(editor, "reamer")).map(({ title }) => title),
  ).not.toContainEqual(expect.stringMatching(/^Move/));
});

// The lines of a file: an open document's before the disk's, which is read once until it is said to have changed.
import { expect, test } from "vitest";
import { readLines, type FileLines } from "../../grammar/lines.ts";
import { createTexts } from "../../server/lsp/texts.ts";
import { filesIn } from "./in-process.ts";

const URI = "file:///shop/a.thou";

function texts(disk: Map<string, string>) {
  const files = filesIn(disk);
  const asked: string[] = [];
  const made = createTexts({
    ...files,
    read: (uri) => {
      asked.push(uri);
      return files.read(uri);
    },
  });
  const open = (text: string) => {
    made.open.set(URI, {
      uri: URI,
      version: 1,
      lines: readLines(text),
      typedOn: undefined,
    });
  };
  const read = async () => said(await made.linesOf(URI));
  return { made, asked, open, read };
}

function said(lines: FileLines | null): string | null {
  return lines === null
    ? null
    : lines.lines.map(({ text, eol }) => text + eol).join("");
}

test("the disk is read once, a file that is not there among them, and again once it may have changed", async () => {
  const disk = new Map<string, string>();
  const { made, asked, read } = texts(disk);
  expect(await Promise.all([read(), read()])).toEqual([null, null]);
  disk.set(URI, "job a\n");
  expect(await read()).toBeNull();
  expect(made.read()).toEqual([URI]);
  made.forget(URI);
  expect(made.read()).toEqual([]);
  expect(await read()).toBe("job a\n");
  expect(asked).toEqual([URI, URI]);
});

test("an open document is asked in its place, also one that is opened while the disk is read", async () => {
  const { made, asked, open, read } = texts(new Map([[URI, "job a\n"]]));
  const reading = read();
  open("job b\n");
  expect(await reading).toBe("job b\n");
  expect(await read()).toBe("job b\n");
  expect(asked).toEqual([URI]);
  made.open.delete(URI);
  expect(await read()).toBe("job a\n");
});

test("an open document that lies elsewhere now is found there, and no longer where it lay", async () => {
  const { made, open, read } = texts(new Map());
  open("job a\n");
  made.moveOpen((uri) => uri.replace("shop", "other"));
  expect([...made.open.keys()]).toEqual(["file:///other/a.thou"]);
  expect(await read()).toBeNull();
});

// Messages over streams, against the base protocol of LSP 3.17: a header of fields, each ended by \r\n, an empty line, then as many bytes of
// UTF-8 as Content-Length says.
import { PassThrough, Writable } from "node:stream";
import { expect, test } from "vitest";
import type { Message } from "vscode-languageserver/node";
import { readerOf, writerOf } from "../../server/main.stdio.ts";

const message = (method: string, text = ""): Message =>
  ({ jsonrpc: "2.0", method, params: { text } }) as Message;

const bytesOf = (each: Message, header = ""): Buffer => {
  const body = Buffer.from(JSON.stringify(each));
  return Buffer.concat([
    Buffer.from(`${header}Content-Length: ${body.length}\r\n\r\n`),
    body,
  ]);
};

/** What is read of bytes that come in such pieces, and what is said to be wrong with them. */
async function read(pieces: readonly Buffer[]) {
  const stream = new PassThrough();
  const reader = readerOf(stream);
  const [taken, faults]: [Message[], string[]] = [[], []];
  reader.onError((error) => faults.push(error.message));
  const closed = new Promise<void>((resolve) => {
    reader.onClose(resolve);
  });
  reader.listen((each) => taken.push(each));
  for (const piece of pieces) stream.write(piece);
  stream.end();
  await closed;
  return { taken, faults };
}

// a character of one, two, three and four bytes, and the sign that ends a header
const SENT = [
  message("first", "Ø 0.8744 in, 20 °C, ≥ 2 µm, \u{1F527}"),
  message("second", "\r\n\r\nContent-Length: 3\r\n\r\n"),
  message("third"),
];

test("messages are the same however their bytes are cut", async () => {
  const all = Buffer.concat(SENT.map((each) => bytesOf(each)));
  for (const size of [1, 2, 3, 7, 50, 100, all.length]) {
    const pieces: Buffer[] = [];
    for (let at = 0; at < all.length; at += size)
      pieces.push(all.subarray(at, at + size));
    expect(await read(pieces)).toEqual({ taken: SENT, faults: [] });
  }
});

test("a header may have other fields, in any letters", async () => {
  const [first] = SENT as [Message];
  const type =
    "Content-Type: application/vscode-jsonrpc; charset=utf-8\r\n" as const;
  const lower = Buffer.from(
    bytesOf(first, type)
      .toString("utf8")
      .replace("Content-Length", "content-length"),
  );
  expect(await read([lower])).toEqual({ taken: [first], faults: [] });
});

test("what is no message is told, and the next one is read", async () => {
  const [first, second] = SENT as [Message, Message];
  const { taken, faults } = await read([
    bytesOf(first),
    Buffer.from("Content-Type: text/plain\r\n\r\n"),
    Buffer.from("Content-Length: 5\r\n\r\n{no}!"),
    bytesOf(second),
  ]);
  expect(taken).toEqual([first, second]);
  expect(faults).toHaveLength(2);
});

test("a message is written in one piece, and reads as it was", async () => {
  const pieces: Buffer[] = [];
  const stream = new Writable({
    write(chunk: Buffer, _encoding, done) {
      pieces.push(chunk);
      done();
    },
  });
  const writer = writerOf(stream);
  for (const each of SENT) await writer.write(each);
  expect(pieces).toEqual(SENT.map((each) => bytesOf(each)));
  expect(await read(pieces)).toEqual({ taken: SENT, faults: [] });
});

test("a stream that can't be written fails the message and says so", async () => {
  const stream = new Writable({
    write(_chunk, _encoding, done) {
      done(new Error("the pipe is gone"));
    },
  });
  const writer = writerOf(stream);
  const [first] = SENT as [Message];
  const faults: string[] = [];
  writer.onError(([error]) => faults.push(error.message));
  await expect(writer.write(first)).rejects.toThrow("the pipe is gone");
  expect(faults).toContain("the pipe is gone");
});

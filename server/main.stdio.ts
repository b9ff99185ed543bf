// Messages over the standard streams of a process, in the base protocol of LSP: a header with the length, then the message as JSON. Each
// is written in one piece, since every write of a pipe wakes the reader, and every one of a chunk is taken at once, without a turn of the
// loop between them: with the keystroke of a short record, half of what it costs is its messages.
import {
  AbstractMessageReader,
  AbstractMessageWriter,
  type DataCallback,
  type Message,
  type MessageReader,
  type MessageWriter,
} from "vscode-languageserver/node";

const END_OF_HEADER = "\r\n\r\n";
const LENGTH = /^content-length:[ \t]*(\d+)[ \t]*$/im;

export function readerOf(stream: NodeJS.ReadableStream): MessageReader {
  return new StreamReader(stream);
}

export function writerOf(stream: NodeJS.WritableStream): MessageWriter {
  return new StreamWriter(stream);
}

class StreamReader extends AbstractMessageReader {
  readonly #stream: NodeJS.ReadableStream;
  /** What has come and is not taken yet, as it came: a long message comes in many chunks. */
  #chunks: Buffer[] = [];
  #size = 0;
  /** How much must have come before it is worth a look. */
  #wanted = 1;

  constructor(stream: NodeJS.ReadableStream) {
    super();
    this.#stream = stream;
  }

  listen(callback: DataCallback): { dispose(): void } {
    const take = (chunk: Buffer): void => {
      this.#chunks.push(chunk);
      this.#size += chunk.length;
      while (this.#wanted <= this.#size) {
        const message = this.#next();
        if (message !== undefined) callback(message);
      }
    };
    this.#stream.on("data", take);
    this.#stream.on("error", (error) => {
      this.fireError(error);
    });
    this.#stream.on("close", () => {
      this.fireClose();
    });
    return { dispose: () => this.#stream.off("data", take) };
  }

  /** Takes a message off what has come, or says how much more it wants. */
  #next(): Message | undefined {
    const [first, another] = this.#chunks;
    const all =
      first === undefined || another !== undefined
        ? Buffer.concat(this.#chunks)
        : first;
    const header = all.indexOf(END_OF_HEADER);
    if (header === -1) {
      this.#keep(all, all.length + 1);
      return undefined;
    }
    const start = header + END_OF_HEADER.length;
    const length = LENGTH.exec(all.toString("latin1", 0, header))?.[1];
    if (length === undefined) {
      this.#keep(all.subarray(start), 1);
      this.fireError(new Error("A header without a Content-Length."));
      return undefined;
    }
    const end = start + Number(length);
    if (all.length < end) {
      this.#keep(all, end);
      return undefined;
    }
    this.#keep(all.subarray(end), 1);
    try {
      // whatever it is, the connection looks what kind of message it is
      return JSON.parse(all.toString("utf8", start, end)) as Message;
    } catch (error) {
      this.fireError(error);
      return undefined;
    }
  }

  #keep(rest: Buffer, wanted: number): void {
    this.#chunks = rest.length === 0 ? [] : [rest];
    this.#size = rest.length;
    this.#wanted = wanted;
  }
}

class StreamWriter extends AbstractMessageWriter implements MessageWriter {
  readonly #stream: NodeJS.WritableStream;
  #failures = 0;

  constructor(stream: NodeJS.WritableStream) {
    super();
    this.#stream = stream;
    stream.on("error", (error) => {
      this.fireError(error);
    });
    stream.on("close", () => {
      this.fireClose();
    });
  }

  write(message: Message): Promise<void> {
    const body = JSON.stringify(message);
    const whole = `Content-Length: ${Buffer.byteLength(body)}${END_OF_HEADER}${body}`;
    return new Promise((resolve, reject) => {
      this.#stream.write(whole, "utf8", (error) => {
        if (error === undefined || error === null) {
          resolve();
          return;
        }
        this.fireError(error, message, ++this.#failures);
        reject(error);
      });
    });
  }

  end(): void {
    this.#stream.end();
  }
}

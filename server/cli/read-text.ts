// Bytes to text: UTF-8 and nothing else, or the place where it is not. It opens no file.

export type TextRead =
  | { readonly ok: true; readonly text: string }
  /** `because` ends the sentence "FILE cannot be read: …". */
  | { readonly ok: false; readonly because: string };

/** Bytes as text; a byte order mark stays, as its first character, where `keepMark` says so. */
export function readText(bytes: Uint8Array, keepMark: boolean): TextRead {
  try {
    return {
      ok: true,
      text: new TextDecoder("utf-8", {
        fatal: true,
        ignoreBOM: keepMark,
      }).decode(bytes),
    };
  } catch {
    return { ok: false, because: notUtf8(bytes) };
  }
}

function notUtf8(bytes: Uint8Array): string {
  const [first, second] = bytes;
  if (
    (first === 0xff && second === 0xfe) ||
    (first === 0xfe && second === 0xff)
  )
    return "it is in UTF-16; save it as UTF-8";
  const before = textBeforeFault(bytes);
  const lines = before.split(/\r\n|\n|\r/);
  const at = Buffer.byteLength(before);
  const byte = (bytes[at] ?? 0).toString(16).toUpperCase().padStart(2, "0");
  const column = (lines.at(-1)?.replace(/^\u{FEFF}/u, "").length ?? 0) + 1;
  return `it is not UTF-8 at line ${lines.length}, column ${column} (byte 0x${byte}); save it as UTF-8`;
}

/** The longest text that stands before the first byte which is out of place: a half character at its end is left out. */
function textBeforeFault(bytes: Uint8Array): string {
  let low = 0;
  let high = bytes.length;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (decodes(bytes.subarray(0, middle)) === undefined) high = middle - 1;
    else low = middle;
  }
  return decodes(bytes.subarray(0, low)) ?? "";
}

function decodes(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(
      bytes,
      { stream: true },
    );
  } catch {
    return undefined;
  }
}

// A name as a part of an address. What addresses mean is whoever uses them's.

/** Escaped; half a character, which has no form in an address, goes in as the sign for what can't be read (U+FFFD). */
export function inAddress(part: string): string {
  return encodeURIComponent(part.replace(/\p{Cs}/gu, "\u{FFFD}"));
}

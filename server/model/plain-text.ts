// Text from a record, a name or an argument as it may be shown anywhere: what could steer a terminal or turn the reading direction is
// written out. It shortens nothing.

/** Controls, format characters (those that turn the reading direction among them), lone surrogates, line separators. */
const UNSAFE = /[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu;

/** The text with every such character written out: `\x1b`, `\u{202e}`. */
export function shown(text: string): string {
  return text.replace(UNSAFE, escaped);
}

function escaped(character: string): string {
  const code = character.codePointAt(0) ?? 0;
  const digits = code.toString(16);
  return digits.length <= 2
    ? `\\x${digits.padStart(2, "0")}`
    : `\\u{${digits}}`;
}

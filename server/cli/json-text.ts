// JSON that can be looked at in a terminal: the standard escapes the first 32 controls and leaves the others raw, and here those are escaped
// too. What is read back is the same.

/** Controls past the first 32, format characters, line separators, as UTF-16 units. */
const RAW = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu;

/** @param indent blanks a level; none for one line */
export function jsonText(value: unknown, indent = 0): string {
  return JSON.stringify(value, null, indent).replace(RAW, (character) =>
    character === "\n"
      ? character
      : character
          .split("")
          .map(
            (unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, "0")}`,
          )
          .join(""),
  );
}

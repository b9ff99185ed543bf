// Where a hint may go on in the next line. The editor takes every blank of a hint for one that must not be broken, so that in a narrow editor
// a hint goes on in the middle of a number; and it sets a gap into a text of more than fifty signs, wherever that falls.

/** As much of the editor's own part of a label as matters here. */
interface Part {
  value: string;
}

/** No sign, no width: a line may end at it. */
const BREAK = "\u200B";

/** Blanks that a line may end after: not between a number and its unit, and none that is seen to already. */
const BLANKS = /(?<!\d) (?!\u200B)| (?=to )/gu;

/** The longest text that the editor draws in one piece is longer by a little. */
const LONGEST = 45;

/**
 * The parts of a label with places to break it, long ones in several.
 * @param like makes a part that leads where another does
 */
export function withBreaks<P extends Part>(
  parts: readonly P[],
  like: (part: P, value: string) => P,
): P[] {
  return parts.flatMap((part) => {
    const pieces = piecesOf(part.value.replaceAll(BLANKS, ` ${BREAK}`));
    return pieces.map((value) => like(part, value));
  });
}

function piecesOf(text: string): readonly string[] {
  const pieces: string[] = [];
  for (const word of text.split(/(?<=\u200B)/u)) {
    const last = pieces.at(-1);
    if (last !== undefined && last.length + word.length <= LONGEST)
      pieces[pieces.length - 1] = last + word;
    else pieces.push(word);
  }
  return pieces;
}

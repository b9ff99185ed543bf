// Text as a terminal shows it: how wide it is and where it breaks; what must never reach it raw is model/plain-text.ts's. It knows nothing
// of findings.
import { shown } from "../model/plain-text.ts";

export { shown };

const TAKES_NO_ROOM = /^\p{M}$/u;
/** East Asian wide and full-width blocks (Unicode UAX #11, in whole blocks), and what is drawn as an emoji by itself. */
const TAKES_TWO =
  /^(?:[\u{1100}-\u{115F}\u{2E80}-\u{303E}\u{3041}-\u{A4CF}\u{A960}-\u{A97F}\u{AC00}-\u{D7A3}\u{F900}-\u{FAFF}\u{FE30}-\u{FE6F}\u{FF01}-\u{FF60}\u{FFE0}-\u{FFE6}\u{1F200}-\u{1F2FF}\u{20000}-\u{3FFFD}]|\p{Emoji_Presentation})$/u;

function widthOfCharacter(character: string): number {
  if (character < "\u{300}") return 1;
  if (TAKES_NO_ROOM.test(character)) return 0;
  return TAKES_TWO.test(character) ? 2 : 1;
}

/** Columns that a text takes; it must be free of controls. */
export function widthOf(text: string): number {
  let width = 0;
  for (const character of text) width += widthOfCharacter(character);
  return width;
}

/** The text with blanks after it up to a width. */
export function padded(text: string, width: number): string {
  return text + " ".repeat(Math.max(0, width - widthOf(text)));
}

/**
 * A number stays with the unit or the word `to` after it only by luck; a word longer than the width stays whole.
 * @param measure of a text that holds marks which are not shown
 */
export function wrap(
  text: string,
  width: number,
  measure = widthOf,
): readonly string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(/ +/)) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (line !== "" && width < measure(longer)) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  lines.push(line);
  return lines;
}

/** Wrapped text with its own indent for the first line and for those below. */
export function wrapIndented(
  text: string,
  columns: number,
  first: string,
  rest = first,
  measure = widthOf,
): string {
  const room = columns - Math.max(widthOf(first), widthOf(rest));
  return wrap(text, Math.max(room, 20), measure)
    .map((line, index) => (index === 0 ? first : rest) + line)
    .join("\n");
}

const TAB = 4;

export interface Excerpt {
  readonly text: string;
  readonly underline: string;
}

/**
 * A line of a file with a mark under a span of it (UTF-16 offsets, end exclusive). Tabs go to the next multiple of four columns, controls
 * are written out, and of a line that is wider than the room only the part around the span is shown.
 */
export function excerptOf(
  line: string,
  start: number,
  end: number,
  room: number,
): Excerpt {
  const cells = cellsOf(
    line.replace(/[ \t\u{A0}]+$/u, (blanks, at: number) =>
      blanks.slice(0, Math.max(0, end - at)),
    ),
  );
  const from = columnAt(cells, start);
  const to = Math.max(columnAt(cells, end), from + 1);
  const total = cells.reduce((sum, cell) => sum + widthOf(cell.shown), 0);
  const marks = (left: number, right: number): string =>
    " ".repeat(Math.max(0, from - left)) +
    "^".repeat(Math.max(1, Math.min(to, right) - Math.max(from, left)));
  if (total <= room)
    return {
      text: cells.map((cell) => cell.shown).join(""),
      underline: marks(0, Math.max(total, to)),
    };
  const left =
    to < room
      ? 0
      : Math.max(0, Math.min(from - Math.floor(room / 4), total - room + 1));
  return cut(cells, left, room, marks);
}

function cut(
  cells: readonly Cell[],
  left: number,
  room: number,
  marks: (left: number, right: number) => string,
): Excerpt {
  // one column at either end is kept for the sign that more stands there
  const first = 0 < left ? left + 1 : 0;
  const last = left + room - 1;
  const kept = cells.filter(
    (cell) => first <= cell.column && cell.column + widthOf(cell.shown) <= last,
  );
  const shift = (kept[0]?.column ?? first) - left;
  const text =
    (0 < left ? "\u{2026}" + " ".repeat(Math.max(0, shift - 1)) : "") +
    kept.map((cell) => cell.shown).join("");
  const end =
    (kept.at(-1)?.column ?? first) + widthOf(kept.at(-1)?.shown ?? "");
  const more = cells.at(-1) !== kept.at(-1);
  return { text: text + (more ? "\u{2026}" : ""), underline: marks(left, end) };
}

interface Cell {
  readonly offset: number;
  readonly column: number;
  readonly shown: string;
}

function cellsOf(line: string): readonly Cell[] {
  const cells: Cell[] = [];
  let offset = 0;
  let column = 0;
  for (const character of line) {
    const text =
      character === "\t" ? " ".repeat(TAB - (column % TAB)) : shown(character);
    cells.push({ offset, column, shown: text });
    offset += character.length;
    column += widthOf(text);
  }
  return cells;
}

function columnAt(cells: readonly Cell[], offset: number): number {
  const cell = cells.findLast((each) => each.offset <= offset);
  if (cell === undefined) return 0;
  return cell === cells.at(-1) && cell.offset < offset
    ? cell.column + widthOf(cell.shown)
    : cell.column;
}

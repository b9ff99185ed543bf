// Breaks a record: bytes that were flipped or lost on the way, pieces that stand twice or in the wrong place, characters that programs
// stumble over. What came in is a sound text; what goes out may be anything that a file can hold.
import type { Random } from "./random.ts";

/** Characters and words that programs stumble over. */
const ODD: readonly string[] = [
  ...["\u{0}", "\u{1b}[31m", "\u{7f}", "\u{9b}", "\u{85}", "\u{b}", "\u{c}"],
  ...["\r", "\n", "\r\n", "\n\r", "\u{2028}", "\u{2029}", "\t", "\u{a0}"],
  ...["\u{FEFF}", "\u{D800}", "\u{DC00}", "\u{202e}", "\u{2066}", "\u{200b}"],
  ...["\u{FFFD}", "\u{FFFF}", "\u{1F529}", "\u{10FFFF}", "e\u{301}", "İ", "ß"],
  ...["__proto__", "constructor", "toString", "hasOwnProperty", "prototype"],
  ...[
    '"',
    "'",
    "`",
    "#",
    ",",
    ".",
    "-",
    "+",
    "/",
    "\\",
    "±",
    "°",
    "%",
    "<",
    "&",
  ],
  ...["0", "-0", "1e308", "1e-320", "9".repeat(40), "0.".padEnd(60, "3")],
  ...["1/0", "NaN", "Infinity", "  ", "to", "in", "on", "of", "with", "at"],
  ...['use "../../x.thou"', "\n  read 0.87\n", "\njob again\n", "\npart p\n"],
  ...["](command:x)", "<img src=x>", "=1+1", "file:///etc/passwd", "%", "%ff"],
  ...["${x}", "$1", "|", "---", "* ", "> ", "\n\n\n\n"],
];

type Blow = (text: string, random: Random, others: readonly string[]) => string;

function span(text: string, random: Random, most: number): [number, number] {
  const start = random.below(text.length + 1);
  return [start, Math.min(text.length, start + random.below(most + 1))];
}

const putIn: Blow = (text, random) => {
  const [start] = span(text, random, 0);
  return text.slice(0, start) + random.pick(ODD) + text.slice(start);
};

const takeOut: Blow = (text, random) => {
  const [start, end] = span(text, random, random.pick([1, 5, 200]));
  return text.slice(0, start) + text.slice(end);
};

const flipBit: Blow = (text, random) => {
  const at = random.below(text.length);
  const unit = text.charCodeAt(at);
  return Number.isNaN(unit)
    ? text
    : text.slice(0, at) +
        String.fromCharCode(unit ^ (1 << random.below(8))) +
        text.slice(at + 1);
};

const splice: Blow = (text, random, others) => {
  const other = random.pick(others);
  const [start, end] = span(text, random, 300);
  const [from, to] = span(other, random, 300);
  return text.slice(0, start) + other.slice(from, to) + text.slice(end);
};

const twice: Blow = (text, random) => {
  const [start, end] = span(text, random, 400);
  const piece = text.slice(start, end).repeat(1 + random.below(3));
  return text.slice(0, end) + piece + text.slice(end);
};

const swapWords: Blow = (text, random) => {
  const words = text.split(/(\s+)/u);
  const [a, b] = [random.below(words.length), random.below(words.length)];
  [words[a], words[b]] = [words[b] ?? "", words[a] ?? ""];
  return words.join("");
};

const changeNumber: Blow = (text, random) => {
  const numbers = [...text.matchAll(/\d+(?:\.\d+)?/gu)];
  if (numbers.length === 0) return text;
  const { index, 0: number } = random.pick(numbers);
  const other = random.pick([
    "0",
    "1",
    "-1",
    "1e9",
    "0.0000001",
    "99999",
    "00",
  ]);
  return text.slice(0, index) + other + text.slice(index + number.length);
};

const swapLines: Blow = (text, random) => {
  const lines = text.split("\n");
  const [a, b] = [random.below(lines.length), random.below(lines.length)];
  [lines[a], lines[b]] = [lines[b] ?? "", lines[a] ?? ""];
  return lines.join("\n");
};

const dropLines: Blow = (text, random) => {
  const lines = text.split("\n");
  lines.splice(random.below(lines.length), 1 + random.below(4));
  return lines.join("\n");
};

const cutOff: Blow = (text, random) => text.slice(0, random.below(text.length));

const mixLineEnds: Blow = (text, random) =>
  text.replaceAll("\n", () => random.pick(["\n", "\r\n", "\r", "\u{2028}"]));

const oneLongLine: Blow = (text, random) => {
  const [start, end] = span(text, random, 60);
  const piece = text.slice(start, end).replaceAll(/[\r\n]/gu, " ");
  return text.slice(0, end) + piece.repeat(50) + text.slice(end);
};

/** Those that leave something to be read stand more often. */
const BLOWS: readonly Blow[] = [
  ...[putIn, putIn, putIn, takeOut, takeOut, flipBit, splice, splice, twice],
  ...[swapWords, swapWords, changeNumber, changeNumber, swapLines, dropLines],
  ...[cutOff, mixLineEnds, oneLongLine],
];

/** A text after one blow or several. @param others texts that pieces are taken from */
export function damaged(
  text: string,
  random: Random,
  others: readonly string[],
): string {
  let now = text;
  for (let left = 1 + random.below(5); 0 < left; left--)
    now = random.pick(BLOWS)(now, random, others);
  return now.slice(0, 200_000);
}

/** A text as bytes of which some may be no UTF-8. */
export function bytesOf(text: string, random: Random): Uint8Array {
  const bytes = Buffer.from(text, random.chance(0.05) ? "utf16le" : "utf8");
  if (random.chance(0.2) && 0 < bytes.length)
    for (let left = 1 + random.below(4); 0 < left; left--) {
      const at = random.below(bytes.length);
      bytes[at] = (bytes[at] ?? 0) ^ (1 << random.below(8));
    }
  return random.chance(0.05)
    ? bytes.subarray(0, random.below(bytes.length))
    : bytes;
}

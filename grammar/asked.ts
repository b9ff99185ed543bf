// Asks thou.ohm about a line that can't be read: whether it reads with a change, and what it would take where reading stopped; and the
// words at a place.
import { keepIn } from "./kept.ts";
import { expectAfter, isRead, parseBody } from "./parse.ts";
import { shapeOf } from "./shape.ts";
import { isBlank } from "./tokens.ts";

/** What thou.ohm would take where reading stopped. */
export interface Expected {
  /** Words that may stand there as they are, those of a closed choice among them. */
  readonly words: readonly string[];
  /** A comma may stand there. */
  readonly comma: boolean;
  /** The line may end there. */
  readonly end: boolean;
  /** What else may stand there: "a reamer", "a text in quotes". */
  readonly described: readonly string[];
}

/** Where a word of the body starts and ends. */
export interface WordSpan {
  readonly start: number;
  readonly end: number;
}

/** The word that holds an offset, or the next one; both ends are the body's length where none follows. */
export function wordAt(body: string, offset: number): WordSpan {
  let start = offset;
  while (isBlank(body[start])) start++;
  if (start === body.length) return { start, end: start };
  const end = body.slice(start).search(/[ \t\u{A0}]|$/u) + start;
  while (0 < start && !isBlank(body[start - 1])) start--;
  return { start, end };
}

/** What stands there. */
export function textAt(body: string, { start, end }: WordSpan): string {
  return body.slice(start, end);
}

/** The word before an offset; undefined where there is none. */
export function wordBefore(body: string, offset: number): WordSpan | undefined {
  let end = offset;
  while (isBlank(body[end - 1])) end--;
  return end === 0 ? undefined : { ...wordAt(body, end - 1), end };
}

/** A piece of a body, and what stands in its place. */
export interface Change extends WordSpan {
  readonly text: string;
}

export function withMend(body: string, { start, end, text }: Change): string {
  return body.slice(0, start) + text + body.slice(end);
}

/** How a body is read. */
export interface Asked {
  /** Of thou.ohm. */
  readonly rule: string;
  /**
   * The line that is explained as far as its first fault, and where reading of it stopped: then a change counts that lets reading go past
   * that, though another fault follows.
   */
  readonly firstFault?: { readonly body: string; readonly stoppedAt: number };
}

/** Whether the rule reads the body; as far as its first fault, or reads on past all that is changed in it. */
export function reads(body: string, { rule, firstFault }: Asked): boolean {
  if (firstFault === undefined) return isRead(body, rule);
  const { damagedAt } = parseBody(body, rule);
  if (damagedAt === undefined) return true;
  // what breaks off lacks something, and what is cut off is no change
  if (damagedAt === body.length) return false;
  const left = body.length - damagedAt;
  return (
    left < firstFault.body.length - firstFault.stoppedAt &&
    firstFault.body.endsWith(body.slice(-left))
  );
}

/** Whether a line is to be read as a reading, be it of a journal, a bush or a stack. */
export function isReading({ rule }: Asked): boolean {
  return READING.test(rule);
}

const READING = /(?:Read|Repeat)Fact/;

/** Whether the rule reads the whole body, as far as its first fault or not. */
export function readsWhole(body: string, { rule }: Asked): boolean {
  return isRead(body, rule);
}

/** Whether it reads the whole body with a change: one so small that it is not guessed where another fault follows. */
export function readsWholeWith(
  body: string,
  change: Change,
  asked: Asked,
): boolean {
  return readsWhole(withMend(body, change), asked);
}

/** Whether it reads the body with a change. */
export function readsWith(body: string, change: Change, asked: Asked): boolean {
  return reads(withMend(body, change), asked);
}

/** Whether a rule reads the body with a change, or stops behind where it stopped: another fault may follow. */
export function readsOnWith(
  body: string,
  change: Change,
  rule: string,
  stoppedAt: number,
): boolean {
  return readsWith(body, change, { rule, firstFault: { body, stoppedAt } });
}

const MOST_SHAPES = 2_000;
const expectations = new Map<string, Expected>();

/** What may stand where reading stopped. Lines of one shape stop alike, so that each shape is asked about once. */
export function expectedIn(body: string, { rule }: Asked): Expected {
  const key = `${rule} ${shapeOf(body).key}`;
  const known = expectations.get(key);
  if (known !== undefined) return known;
  const { words, described } = expectAfter(body, rule);
  const expected: Expected = {
    words: [
      ...words.filter((word) => /\p{L}{2}/u.test(word)),
      ...described.flatMap((each) => choicesIn(each)),
    ],
    comma: words.includes(","),
    end: described.includes("end of input"),
    described: described.filter(
      (each) => each !== "end of input" && choicesIn(each).length === 0,
    ),
  };
  keepIn(expectations, MOST_SHAPES, key, expected);
  return expected;
}

const STAGES = ["bought", "pressed", "roughed", "finished", "run"];

/** The words of a closed choice, which thou.ohm describes as "hand or machine". */
function choicesIn(description: string): readonly string[] {
  if (description === "a stage") return STAGES;
  return /^\w+(?:, \w+)* or \w+$/.test(description)
    ? description.split(/, | or /)
    : [];
}

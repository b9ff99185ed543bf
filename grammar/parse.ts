// Reads one line's body into a tree, with as little of Ohm as can be: a line whose shape was read before, or is a usual one, costs no parse. It
// never throws, and it never looks at another line.
import {
  expectAfresh,
  LONGEST_BODY,
  parseAfresh,
  recover,
  type Expectation,
  type Parsed,
} from "./by-ohm.ts";
import { keepIn } from "./kept.ts";
import { fill, templateOf, unpacked } from "./template.ts";
import { shapeOf, widerKeys, type Shape } from "./shape.ts";
import type { Node } from "./tree.ts";
import { usualShapes } from "./usual-shapes.ts";

const MOST_LINES = 10_000;
const MOST_SHAPES = 5_000;
/** Lines that only Ohm could read. To fill in a shape again costs less than to keep every line that a record has. */
const byOhm = new Map<string, Parsed>();
const shapes = new Map<string, Node>();
const usual = new Map(Object.entries(usualShapes));

/** Reads a body by a start rule of thou.ohm. A longer one than LONGEST_BODY is damaged where that ends. */
export function parseBody(body: string, rule: string): Parsed {
  if (LONGEST_BODY < body.length)
    return {
      rule,
      tree: recover(body.slice(0, LONGEST_BODY), rule),
      damagedAt: LONGEST_BODY,
    };
  const shape = shapeOf(body);
  const key = `${rule} ${shape.key}`;
  const template = knownTemplate(key);
  return template === undefined
    ? parseByOhm(body, rule, shape, key)
    : { rule, tree: fill(template, shape), damagedAt: undefined };
}

function parseByOhm(
  body: string,
  rule: string,
  shape: Shape,
  key: string,
): Parsed {
  const line = `${rule} ${body}`;
  const known = byOhm.get(line);
  if (known !== undefined) return known;
  const parsed = parseAfresh(body, rule);
  const template =
    parsed.damagedAt === undefined ? templateOf(parsed.tree, shape) : undefined;
  if (template === undefined) keepIn(byOhm, MOST_LINES, line, parsed);
  else keepIn(shapes, MOST_SHAPES, key, template);
  return parsed;
}

/** The template of a shape that was seen or is shipped; undefined of any other. */
function knownTemplate(key: string): Node | undefined {
  return shapes.get(key) ?? usualTemplate(key);
}

/** The template of a shape that is shipped, so that the first line of it needs no parse either. */
function usualTemplate(key: string): Node | undefined {
  const packed =
    usual.get(key) ??
    usual.get(widerKeys(key).find((each) => usual.has(each)) ?? "");
  if (packed === undefined) return undefined;
  const template = unpacked(packed);
  keepIn(shapes, MOST_SHAPES, key, template);
  return template;
}

/** Shapes that no rule they were asked of reads. */
const unread = new Map<string, true>();

/** Whether a rule reads a body. Lines of one shape are read alike or not at all, so that each shape is asked about once. */
export function isRead(body: string, rule: string): boolean {
  if (LONGEST_BODY < body.length) return false;
  const shape = shapeOf(body);
  const key = `${rule} ${shape.key}`;
  if (unread.has(key)) return false;
  if (
    knownTemplate(key) !== undefined ||
    parseByOhm(body, rule, shape, key).damagedAt === undefined
  )
    return true;
  keepIn(unread, MOST_SHAPES, key, true);
  return false;
}

/** A sign that nothing of thou.ohm takes. At the end of a text, reading stops at it and says what it would have taken. */
export const STOP = "\u{1}";

const expectations = new Map<string, Expectation>();

/** What may follow a text that breaks off, in the words of thou.ohm. */
export function expectAfter(text: string, rule: string): Expectation {
  // what is expected within a word hangs on its letters; what is expected after the last one, on the shape
  if (!text.endsWith(STOP) || LONGEST_BODY < text.length)
    return expectAfresh(text, rule);
  const key = `${rule} ${shapeOf(text).key}`;
  const end = text.length - STOP.length;
  const known = expectations.get(key);
  if (known !== undefined) return { ...known, at: end };
  const found = expectAfresh(text, rule);
  if (found.at === end) keepIn(expectations, MOST_SHAPES, key, found);
  return found;
}

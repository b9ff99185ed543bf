// What a word was perhaps meant to be.
import { distance } from "fastest-levenshtein";

/** How many letters may differ in a word of this length: one of four or five, since with two another word is as likely. */
function most(length: number): number {
  return length === 1 ? 0.5 : Math.max(1, Math.floor(length / 3));
}

/**
 * The candidates nearest to a word, all equally near, at most three; none where nothing is near. Case counts least, two letters
 * changed about count as one, and a word broken off after three letters or more stands for what it begins. A short word is near only to
 * what a slip of the hand makes it of.
 */
export function nearest(
  word: string,
  candidates: readonly string[],
): readonly string[] {
  let least = most(word.length);
  let found: string[] = [];
  for (const candidate of new Set(candidates)) {
    const apart = between(word, candidate);
    if (least < apart) continue;
    if (apart < least) {
      least = apart;
      found = [];
    }
    found.push(candidate);
  }
  return found.slice(0, 3);
}

/** The files of a folder whose names are nearest to one that is not there; none where it is there. What a name ends with counts for nothing. */
export function nearestFiles(
  name: string,
  there: readonly string[],
): readonly string[] {
  if (there.includes(name)) return [];
  const near = nearest(stemOf(name), there.map(stemOf));
  return there.filter((each) => near.includes(stemOf(each))).slice(0, 3);
}

/** `a` of `a.thou`, and of `a.thuo`. */
function stemOf(name: string): string {
  return name.replace(/(?<=.)\.[^.]*$/u, "");
}

function between(word: string, candidate: string): number {
  const [a, b] = [word.toLowerCase(), candidate.toLowerCase()];
  if (a === b) return word === candidate ? 0 : 0.5;
  if (areSwapped(a, b) || (3 <= a.length && b.startsWith(a))) return 1;
  if (a.length <= SHORT) return isSlip(a, b) ? 1 : Infinity;
  return distance(a, b);
}

/** So short a word is one letter away from many that nobody meant: only what a hand does by mistake counts. */
const SHORT = 4;

/** Whether a hand that meant one word left a letter out, put one in twice or its neighbour beside it, or met the next key. */
function isSlip(written: string, meant: string): boolean {
  let at = 0;
  while (at < meant.length && written.charAt(at) === meant.charAt(at)) at++;
  const [put, due] = [written.charAt(at), meant.charAt(at)];
  switch (written.length - meant.length) {
    case -1:
      return written.slice(at) === meant.slice(at + 1);
    case 0:
      return (
        written.slice(at + 1) === meant.slice(at + 1) &&
        (areNextKeys(put, due) ||
          // a word by its sound
          (SHORT <= written.length && isVowel(put) && isVowel(due)))
      );
    case 1:
      return (
        written.slice(at + 1) === meant.slice(at) &&
        ([written.charAt(at - 1), written.charAt(at + 1)].some(
          (beside) => beside === put || areNextKeys(beside, put),
        ) ||
          // more than one of them
          (at === meant.length && put === "s"))
      );
    default:
      return false;
  }
}

/** Rows of keys, each half a key to the right of the one above it; letters that change places from country to country are taken as they mostly lie. */
const KEY_ROWS = ["1234567890", "qwertyuiop", "asdfghjkl", "zxcvbnm"];

function areNextKeys(one: string, other: string): boolean {
  const [a, b] = [placeOfKey(one), placeOfKey(other)];
  if (a === undefined || b === undefined) return false;
  const [down, across] = [b.row - a.row, b.column - a.column];
  return down === 0
    ? Math.abs(across) === 1
    : Math.abs(down) === 1 && (across === 0 || across === -down);
}

function placeOfKey(
  key: string,
): { readonly row: number; readonly column: number } | undefined {
  const row =
    key === "" ? -1 : KEY_ROWS.findIndex((keys) => keys.includes(key));
  return row === -1
    ? undefined
    : { row, column: KEY_ROWS[row]?.indexOf(key) ?? 0 };
}

function isVowel(letter: string): boolean {
  return /^[aeiouy]$/u.test(letter);
}

/** The first of these answers that is not empty; those behind it are not asked. */
export function firstFound<T>(
  ...answers: readonly (() => readonly T[])[]
): readonly T[] {
  for (const answer of answers) {
    const found = answer();
    if (0 < found.length) return found;
  }
  return [];
}

/**
 * The candidates that share a part of a name written with hyphens, at most three, those with most in common first: `cast-iron` for
 * `iron-grey`, `bronze` for `tin-bronze`.
 */
export function namesInCommon(
  name: string,
  candidates: readonly string[],
): readonly string[] {
  const parts = partsOf(name);
  const common = (candidate: string): number =>
    partsOf(candidate).filter((part) =>
      parts.some((other) => areSpeltAlike(part, other)),
    ).length;
  return [...new Set(candidates)]
    .filter((candidate) => 0 < common(candidate))
    .sort((a, b) => common(b) - common(a))
    .slice(0, 3);
}

/** `aluminum` is `aluminium`. */
function areSpeltAlike(a: string, b: string): boolean {
  return a === b || (6 <= Math.min(a.length, b.length) && distance(a, b) < 2);
}

/** Of letters, three at least: a number or a letter that is the same says nothing. */
function partsOf(name: string): readonly string[] {
  return name
    .toLowerCase()
    .split("-")
    .filter((part) => /^\p{L}{3,}$/u.test(part));
}

/** `raed` for `read` */
function areSwapped(a: string, b: string): boolean {
  if (a.length !== b.length) return false;
  let at = 0;
  while (at < a.length && a.charAt(at) === b.charAt(at)) at++;
  return (
    a.slice(0, at) + a.charAt(at + 1) + a.charAt(at) + a.slice(at + 2) === b
  );
}

/** Words of the trade that the language has under another name. What fits the place is chosen from them. */
const OTHER_NAMES: Readonly<Record<string, readonly string[]>> = {
  shaft: ["journal", "part"],
  axle: ["journal", "part"],
  spindle: ["part"],
  case: ["part"],
  housing: ["hole", "part"],
  casting: ["part"],
  component: ["part"],
  bearing: ["bush", "bore"],
  bushing: ["bush"],
  sleeve: ["bush"],
  liner: ["bush"],
  gage: ["gauge"],
  micrometer: ["gauge"],
  mic: ["gauge"],
  tool: ["reamer"],
  lubricant: ["oil"],
  grease: ["feed", "oil"],
  operation: ["step"],
  op: ["step"],
  task: ["step"],
  record: ["job"],
  order: ["job"],
  crib: ["shop"],
  using: ["with"],
  gauge: ["with"],
  pos: ["station"],
  position: ["station"],
  dated: ["on"],
  inspector: ["by"],
  operator: ["by"],
  via: ["with"],
  deviation: ["concession"],
  waiver: ["concession"],
  clearance: ["want", "fit"],
  interference: ["want", "press"],
  endplay: ["want", "stack"],
  target: ["want"],
  diameter: ["limits", "size", "od", "read"],
  dia: ["limits", "size", "od", "read"],
  size: ["limits", "od", "size"],
  tolerance: ["limits"],
  tol: ["limits"],
  limit: ["limits"],
  nominal: ["limits", "size"],
  od: ["limits", "size"],
  id: ["limits"],
  measured: ["read"],
  measure: ["read"],
  reading: ["read"],
  roughness: ["finish"],
  surface: ["finish"],
  ra: ["finish"],
  runout: ["runout"],
  radius: ["fillet"],
  depth: ["reaches", "depth"],
  torque: ["bolts"],
  gasket: ["joint"],
  dowel: ["dowels"],
  speed: ["runs", "speed"],
  rpm: ["runs"],
  turns: ["runs"],
  rotates: ["runs"],
  spins: ["runs"],
  force: ["load"],
  lubrication: ["feed"],
  temp: ["temperature", "hot", "at"],
  clamped: ["bolts"],
  accuracy: ["uncertainty", "mpe"],
  include: ["use"],
  import: ["use"],
  comment: ["note"],
  remark: ["note"],
  name: ["title"],
  description: ["title", "do", "note"],
  date: ["opened", "done", "calibrated"],
  unit: ["units"],
  signed: ["why", "done"],
  reason: ["why"],
  "young's": ["modulus"],
  cte: ["expansion"],
  bevel: ["chamfer"],
  lead: ["chamfer"],
  tip: ["point"],
  made: ["material"],
  of: ["material"],
  alloy: ["material"],
  metal: ["material"],
  imperial: ["inch"],
  inches: ["inch"],
  metric: ["mm"],
  millimetres: ["mm"],
  millimeters: ["mm"],
};

/** The words that the trade's word stands for, of those that fit. */
export function otherNames(
  word: string,
  fitting: readonly string[],
): readonly string[] {
  const key = word.toLowerCase();
  const names = Object.hasOwn(OTHER_NAMES, key) ? OTHER_NAMES[key] : undefined;
  return (names ?? []).filter(
    (name) => name !== word && fitting.includes(name),
  );
}

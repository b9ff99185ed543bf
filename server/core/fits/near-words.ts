// Owns the guesses at what class a wrong word was meant to be: other case, a leading zero, a grade too high, letters that the
// standard leaves out, a blank, number and letters turned about. Whether a guess reads as a class is class-words.ts's to say.
import { inchSeries } from "./b4-1.ts";
import { holeJRows, shaftJRows, shaftLetters } from "./iso-286-tables.ts";

const parts = /^([A-Za-z]+)(\d+)$/;

/** Candidates for a wrong class word, likeliest first. They need not read, and may repeat. */
export function nearWords(word: string): readonly string[] {
  const [first = "", second] = word.split("/");
  return second === undefined ? nearSingles(word) : nearFits(first, second);
}

function nearFits(first: string, second: string): readonly string[] {
  const holes = [first, first.toUpperCase(), ...nearSingles(first)];
  const shafts = [second, second.toLowerCase(), ...nearSingles(second)];
  const inch = holes.concat(shafts).filter((each) => inchOf(each.slice(0, 2)));
  const fits = holes.flatMap((hole) =>
    shafts.map((shaft) => `${hole}/${shaft}`),
  );
  return [`${second}/${first}`, ...fits, ...inch];
}

function nearSingles(word: string): readonly string[] {
  const closed = word.replace(/[^A-Za-z0-9]+/g, "");
  const turned = closed.replace(/^(\d+)([A-Za-z]+)$/, "$2$1");
  const stroked = closed.replace(/^([A-Za-z]+\d+)([A-Za-z]+\d+)$/, "$1/$2");
  const [, letters, digits] = parts.exec(turned) ?? [];
  const read = letters === undefined || digits === undefined;
  const named = read
    ? withNumbers(closed)
    : [...nearInch(letters, digits), ...nearIso(letters, digits)];
  return [closed, turned, stroked, ...named];
}

function nearInch(letters: string, digits: string): readonly string[] {
  const series = letters.toUpperCase();
  const count = inchOf(series);
  if (count === undefined) return [];
  return [`${series}${Math.min(Math.max(Number(digits), 1), count)}`];
}

function nearIso(letters: string, digits: string): readonly string[] {
  // 18 is the coarsest grade that there is: it stands in only for one that is higher still
  const grades = [
    digits,
    String(Number(digits)),
    ...(18 < Number(digits) ? ["18"] : []),
  ];
  const small = letters.toLowerCase();
  const rows =
    small === "j"
      ? [...(letters === "J" ? holeJRows : shaftJRows).keys()].map(String)
      : [];
  // J and j stand in three or four grades only; what was meant beside them is mostly JS or js
  const known = small === "j" ? ["js", "j"] : lettersFor(small);
  return known.flatMap((each) =>
    [...(each === "j" ? rows : []), ...grades].flatMap((grade) =>
      cased(each, letters).map((form) => form + grade),
    ),
  );
}

/** In the case of the letters that it stands for, or in both where these mix. */
function cased(small: string, letters: string): readonly string[] {
  if (letters === letters.toLowerCase()) return [small];
  return letters === letters.toUpperCase()
    ? [small.toUpperCase()]
    : [small.toUpperCase(), small];
}

/** The letters themselves where the standard has them, else those just before and after: ISO 286 leaves out i, l, o, q and w. */
function lettersFor(small: string): readonly string[] {
  const known: readonly string[] = shaftLetters;
  if (small.length !== 1 || known.includes(small)) return [small];
  const code = small.charCodeAt(0);
  return [code - 1, code + 1]
    .map((each) => String.fromCharCode(each))
    .filter((each) => known.includes(each));
}

function withNumbers(letters: string): readonly string[] {
  const count = inchOf(letters.toUpperCase());
  if (count === undefined)
    return ["7", "6", "8", "9", "11"].map((grade) => `${letters}${grade}`);
  return Array.from(
    { length: count },
    (_, index) => `${letters.toUpperCase()}${index + 1}`,
  );
}

/** How many classes the inch series of that name has. */
function inchOf(letters: string): number | undefined {
  return [...inchSeries].find(([series]) => series === letters)?.[1];
}

// Says in the shop's words why a line can't be read, where, and what would mend it. It knows the traps that people fall into by name; for
// the rest it looks for the one small change that helps, and shows how the line is written.
import { letterForDigit } from "./digit-letters.ts";
import {
  concessionOn,
  factAfterFact,
  factOnOpening,
  placeAfterPlace,
} from "./explain-facts.ts";
import {
  bareSignature,
  dateInWords,
  gradeAsName,
  wordAsName,
} from "./explain-names.ts";
import {
  commaAfterPlace,
  commasInNumber,
  commasInReading,
  fractionInReading,
  gluedFraction,
  gradeAlone,
  namedSize,
  signBetweenReadings,
  timesAnother,
  twoNumbersInOne,
  unitOfEachReading,
} from "./explain-numbers.ts";
import {
  blankAtPoint,
  drawingSign,
  groupedDigits,
  wideDigits,
} from "./explain-signs.ts";
import { veeAsSpoken } from "./explain-swing.ts";
import {
  markAfterWord,
  markAtEnd,
  notKnownYet,
  otherQuotes,
  otherRemark,
  poundSign,
  unclosedText,
} from "./explain-marks.ts";
import { pasted } from "./explain-pasted.ts";
import { rangeTrap } from "./explain-range.ts";
import { IS_CLASS } from "./range-forms.ts";
import { onGauge, toleranceOfReading } from "./explain-reading.ts";
import {
  commaForWord,
  missingComma,
  missingCommas,
  needlessComma,
  nothingMore,
} from "./explain-commas.ts";
import {
  doubledWord,
  gluedWord,
  needlessWord,
  pointInUnit,
  shorthand,
  spokenWord,
  wordRunOn,
} from "./explain-words.ts";
import {
  expectedIn,
  reads,
  readsWhole,
  wordAt,
  wordBefore,
  type Asked,
} from "./asked.ts";
import { mendOf, type Mend } from "./mend.ts";
import { LONGEST_BODY } from "./by-ohm.ts";
import { CLAUSE_WORDS, placesOf } from "./vocabulary.ts";

export interface Damage {
  /** Offsets in the line's body. */
  readonly start: number;
  readonly end: number;
  /** Where the fault has a code of its own: then its rule has the sentence, and reads what stands between `start` and `end`. */
  readonly code?: "date-wrong" | "number-comma";
  readonly message: string;
  /** The piece between `start` and `end` as it should stand, where only one mend makes sense. */
  readonly mended?: string;
  /** The mend can't be wrong. */
  readonly safe?: boolean;
  /** What stands between `start` and `end` is a fact, and belongs on a line of its own. */
  readonly below?: string;
  /** What stands between `start` and `end` is no unit of this, as thou.ohm calls it: "area". */
  readonly unit?: string;
  /** The entry of this kind is named there, and `mended` takes the first word for a part of its name. */
  readonly kind?: string;
  /** Nothing stands behind it, though the line can't end there: a number's unit may be a word that belongs there, misspelt. */
  readonly isEnd?: boolean;
  /** Words that fit there: whoever shows the message may find the one that was meant. */
  readonly choices?: readonly string[];
}

/** Why a body can't be read by a rule, given where reading stopped and how the line is written. */
export function explainDamage(
  body: string,
  rule: string,
  stoppedAt: number,
  form: string,
): Damage {
  const asked = { rule };
  const explained =
    tooLong(body) ??
    leftOpen(body, stoppedAt, form) ??
    trap(body, asked, stoppedAt);
  if (explained !== undefined) return explained;
  return (
    (stoppedAt < body.length ? firstOfTwo(body, rule, stoppedAt) : undefined) ??
    endsEarly(body, asked, stoppedAt, form) ??
    stopped(body, asked, stoppedAt, form)
  );
}

/** The traps that people fall into, and the one small change that lets the line be read. */
function trap(
  body: string,
  asked: Asked,
  stoppedAt: number,
): Damage | undefined {
  return (
    pasted(body, asked) ??
    markAfterWord(body, asked) ??
    otherQuotes(body, asked) ??
    unclosedText(body) ??
    doubledWord(body, asked) ??
    shorthand(body, asked) ??
    gluedWord(body, asked) ??
    poundSign(body, asked) ??
    markAtEnd(body, asked) ??
    otherRemark(body, asked) ??
    notKnownYet(body, asked) ??
    letterForDigit(body, asked.rule, stoppedAt) ??
    signBetweenReadings(body, asked) ??
    timesAnother(body, asked) ??
    toleranceOfReading(body, asked) ??
    drawingSign(body, asked) ??
    wideDigits(body, asked) ??
    blankAtPoint(body, asked) ??
    fractionInReading(body, asked, stoppedAt) ??
    gluedFraction(body, asked) ??
    unitOfEachReading(body, asked) ??
    commaAfterPlace(body, asked) ??
    commasInReading(body, asked, stoppedAt) ??
    commasInNumber(body, stoppedAt) ??
    twoNumbersInOne(body, asked, stoppedAt) ??
    commaForWord(body, asked, stoppedAt) ??
    wordAsName(body, asked, stoppedAt) ??
    factOnOpening(body, asked, stoppedAt) ??
    factAfterFact(body, asked) ??
    placeAfterPlace(body, asked) ??
    concessionOn(body, asked) ??
    dateInWords(body, stoppedAt) ??
    onGauge(body, asked, stoppedAt) ??
    bareSignature(body, asked) ??
    gradeAsName(body, asked, stoppedAt) ??
    gradeAlone(body) ??
    veeAsSpoken(body, asked) ??
    namedSize(body) ??
    rangeTrap(body, asked, stoppedAt) ??
    spokenWord(body, asked, stoppedAt) ??
    needlessComma(body, asked, stoppedAt) ??
    missingComma(body, asked, stoppedAt) ??
    missingCommas(body, asked, stoppedAt) ??
    needlessWord(body, asked, stoppedAt) ??
    wordRunOn(body, asked, stoppedAt) ??
    groupedDigits(body, asked) ??
    pointInUnit(body, asked, stoppedAt) ??
    mended(body, asked, stoppedAt)
  );
}

/** The first of two faults of a line. What is said of it can't be sure: the line does not read yet. */
function firstOfTwo(
  body: string,
  rule: string,
  stoppedAt: number,
): Damage | undefined {
  const first = trap(
    body,
    { rule, firstFault: { body, stoppedAt } },
    stoppedAt,
  );
  return first === undefined ? undefined : { ...first, safe: false };
}

function written(form: string): string {
  return ` It is written \`${form}\`.`;
}

/** What follows would try to mend it, again and again. */
function tooLong(body: string): Damage | undefined {
  if (body.length <= LONGEST_BODY) return undefined;
  const count = (number: number): string => number.toLocaleString("en-US");
  return {
    start: LONGEST_BODY,
    end: body.length,
    message: `This line has ${count(body.length)} characters, and a line is read up to ${count(LONGEST_BODY)}: shorten it, or make several of it.`,
  };
}

const WHY: Readonly<
  Record<Mend["sort"], (mend: Mend, word: string, rule: string) => string>
> = {
  insert: ({ text }, word) =>
    `A word is missing before \`${word}\`: write \`${text}\`.`,
  replace: ({ text }, word) =>
    `\`${word}\` does not fit here: write \`${text}\`.`,
  comma: ({ text }) => `A comma parts what stands in a row: write \`${text}\`.`,
  quote: ({ text }) => `A text stands in double quotes: write \`${text}\`.`,
  join: ({ text }) => `A name is one word: write \`${text}\`.`,
  name: ({ text }, word) =>
    `\`${word}\` is no name, since a name begins with a letter: \`${text}\`, if its entry is called that.`,
  comment: ({ text }, _, rule) => nothingMore(rule, text),
};

/** Facts that are a text and nothing else, so that whatever stands there is the text. */
const TEXT_ONLY = /(?:Note|Title|Do)Fact/;

function mended(
  body: string,
  asked: Asked,
  stoppedAt: number,
): Damage | undefined {
  const mend = mendOf(body, asked, stoppedAt);
  if (mend === undefined) return undefined;
  return {
    start: mend.start,
    end: mend.end,
    message: WHY[mend.sort](mend, body.slice(mend.start, mend.end), asked.rule),
    mended: mend.text,
    safe: mend.sort === "quote" && TEXT_ONLY.test(asked.rule),
    ...(mend.kind === undefined ? {} : { kind: mend.kind }),
  };
}

/** A place of the form that was left as it was offered; one that was read, as a name or as a place, is known by the line's stopping after it. */
function leftOpen(
  body: string,
  stoppedAt: number,
  form: string,
): Damage | undefined {
  const places = placesOf(form);
  const before = wordBefore(body, stoppedAt);
  const place = [
    // a bore may well be called Z
    ...(before === undefined || before.end - before.start < 2 ? [] : [before]),
    wordAt(body, stoppedAt),
  ].find(({ start, end }) => places.includes(body.slice(start, end)));
  if (place === undefined) return undefined;
  return {
    ...place,
    message: `\`${body.slice(place.start, place.end)}\` is only a place to fill in: write there what the job has.${written(form)}`,
  };
}

function endsEarly(
  body: string,
  asked: Asked,
  stoppedAt: number,
  form: string,
): Damage | undefined {
  const last = wordBefore(body, body.length);
  if (stoppedAt < body.length || last === undefined) return undefined;
  return {
    ...last,
    message: `This line breaks off after \`${body.slice(last.start)}\`.${written(form)}`,
    isEnd: true,
    // a word of a choice that is misspelt was read as a unit; what was read as a name is one
    choices: /^\d/.test(body.slice(last.start))
      ? []
      : expectedIn(body, asked).words.filter((word) =>
          reads(body.slice(0, last.start) + word, asked),
        ),
  };
}

function stopped(
  body: string,
  asked: Asked,
  stoppedAt: number,
  form: string,
): Damage {
  const { start, end } = wordAt(body, behindComma(body, stoppedAt));
  const word = body.slice(start, end);
  const { words, described } = expectedIn(body, asked);
  const place = { start, end };
  const canEnd = (): boolean =>
    readsWhole(body.slice(0, start).trimEnd(), asked);
  // only a range goes on, and nothing says that one was meant
  const isOver = words.every((each) => each === "to") && canEnd();
  if (0 < words.length && described.length === 0 && !isOver) {
    const message = /^[\d.+"-]/.test(word)
      ? `A word is missing before \`${word}\`: write ${oneOf(words)}.`
      : `\`${word}\` does not fit here: write ${oneOf(words)}.`;
    return { ...place, message, choices: words };
  }
  const [only, other] = described;
  if (only !== undefined && other === undefined && words.length === 0) {
    if (IS_CLASS.test(word) && only === "a unit of length")
      return {
        ...place,
        message: `\`${word}\` is a class, and here stands one size: a class stands in \`limits\`.${written(form)}`,
      };
    const unit =
      LIKE_UNIT.test(word) && !CLAUSE_WORDS.includes(word)
        ? /^a unit of (.+)$/u.exec(only)?.[1]
        : undefined;
    return {
      ...place,
      message: `Here comes ${only}, and \`${word}\` is none.${written(form)}`,
      ...(unit === undefined ? {} : { unit }),
    };
  }
  // what a line can end before may be a remark; a number is one of another fact
  const isRemark =
    REMARK.test(body.slice(start)) && !asked.rule.endsWith("Entry") && canEnd();
  return isRemark
    ? {
        start,
        end: body.length,
        message: `\`${word}\` does not fit here, and a remark goes behind a \`#\`.${written(form)}`,
        mended: `# ${body.slice(start)}`,
      }
    : {
        ...place,
        message: `\`${word}\` does not fit here.${written(form)}`,
      };
}

/** `long`, `after grinding`; a word that opens a clause and no more of it, or a figure behind it, is none. */
const REMARK = new RegExp(
  String.raw`^(?!(?:${CLAUSE_WORDS.join("|")})(?:\s*$|\s+\S*\d))\p{L}{2}`,
  "u",
);

/** `load 4 kN, foo`: what is wrong there is not the word before the comma. */
function behindComma(body: string, stoppedAt: number): number {
  const isBehindWord = /[^\s,],$/u.test(body.slice(0, stoppedAt + 1));
  const { start } = wordAt(body, stoppedAt + 1);
  return isBehindWord && start < body.length ? start : stoppedAt;
}

/** `m2`, `1/K`, `1e-6/K`: `14,5e6` is a number gone wrong, and `-` no word. */
const LIKE_UNIT = /^(?:\p{L}|\d?(?:e-?\d+)?\/\p{L})/u;

/** "`a`, `b` or `c`" */
function oneOf(words: readonly string[]): string {
  const marked = words.map((word) => `\`${word}\``);
  return marked.join(", ").replace(/, (?=[^,]*$)/u, " or ");
}

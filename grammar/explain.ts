// Says in the shop's words why a line can't be read, and where. It knows the traps that people fall into by name; for the rest it
// shows how the line is written.
import { endOfText, isBlank, tokenize } from "./tokens.ts";
import { CLAUSE_WORDS } from "./vocabulary.ts";

export interface Damage {
  /** Offsets in the line's body. */
  readonly start: number;
  readonly end: number;
  readonly message: string;
  /** The piece between `start` and `end` as it should stand, where only one mend makes sense. */
  readonly mended?: string;
}

/** Why a body can't be read by a rule, given where reading stopped and how the line is written. */
export function explainDamage(
  body: string,
  rule: string,
  stoppedAt: number,
  form: string,
): Damage {
  return (
    unclosedText(body) ??
    fractionInReading(body, rule, stoppedAt) ??
    wordAsName(body, rule) ??
    oneSizeForRange(body, rule, stoppedAt) ??
    endsEarly(body, stoppedAt, form) ??
    stopped(body, stoppedAt, form)
  );
}

function written(form: string): string {
  return form === "" ? "" : ` It is written \`${form}\`.`;
}

function unclosedText(body: string): Damage | undefined {
  for (let at = body.indexOf('"'); at !== -1; at = body.indexOf('"', at + 1)) {
    if (0 < at && !isBlank(body[at - 1]) && body[at - 1] !== ",") continue;
    const end = endOfText(body, at);
    if (end === undefined) {
      return {
        start: at,
        end: body.length,
        message: "This text has no closing quote: put one at its end.",
      };
    }
    at = end - 1;
  }
  return undefined;
}

function fractionInReading(
  body: string,
  rule: string,
  stoppedAt: number,
): Damage | undefined {
  if (!/Read|Repeat/.test(rule)) return undefined;
  const fraction = /(?<![\w./])(?:(\d+)[ -]+)?(\d+)\/(\d+)/.exec(body);
  if (fraction === null || fraction.index + fraction[0].length < stoppedAt)
    return undefined;
  const start = fraction.index;
  const value =
    Number(fraction[1] ?? 0) + Number(fraction[2]) / Number(fraction[3]);
  const shown = Number.isFinite(value)
    ? ` For ${fraction[0]} that would be ${String(Number(value.toFixed(6)))}.`
    : "";
  return {
    start,
    end: start + fraction[0].length,
    message: `A reading is a decimal, as the gauge shows it, never a fraction.${shown}`,
  };
}

/** The second word of an opening line is its name: a clause word or a word that begins with a digit can't be one. */
function wordAsName(body: string, rule: string): Damage | undefined {
  if (!rule.endsWith("Entry")) return undefined;
  const [, second] = tokenize(body).filter((token) => token.kind !== "blank");
  if (second === undefined) return undefined;
  const end = body.slice(second.start).search(/[ \t\u{A0}]|$/u) + second.start;
  const word = body.slice(second.start, end);
  if (CLAUSE_WORDS.includes(word)) {
    return {
      start: second.start,
      end,
      message: `A name is missing here: \`${word}\` opens a clause and can't be a name.`,
    };
  }
  if (/^\p{L}[\p{L}\d-]*$/u.test(word)) return undefined;
  return {
    start: second.start,
    end,
    message: `\`${word}\` can't be a name: a name is letters, digits and hyphens, and begins with a letter.`,
  };
}

function oneSizeForRange(
  body: string,
  rule: string,
  stoppedAt: number,
): Damage | undefined {
  if (
    stoppedAt < body.length ||
    !/^(?:Limits|Want|WantHot|Stock|Expands|Cut)Fact$/.test(rule)
  )
    return undefined;
  const single = /^\S+\s+(?:to\s+)?([\d./+-]+.*)$/u.exec(body);
  if (single === null) return undefined;
  const start = body.indexOf(single[1] ?? "");
  return {
    start,
    end: body.length,
    message:
      "One size is not a range: write `LOW to HIGH`, a size with its deviations, or a size and a class.",
  };
}

function endsEarly(
  body: string,
  stoppedAt: number,
  form: string,
): Damage | undefined {
  if (stoppedAt < body.length) return undefined;
  const last = tokenize(body).at(-1);
  return {
    start: last?.start ?? 0,
    end: body.length,
    message: `This line breaks off after \`${body.slice(last?.start ?? 0)}\`.${written(form)}`,
  };
}

function stopped(body: string, stoppedAt: number, form: string): Damage {
  let start = stoppedAt;
  while (isBlank(body[start])) start++;
  const end = body.slice(start).search(/[ \t\u{A0}]|$/u) + start;
  // where reading stops inside a word, the whole word is what a person sees
  while (0 < start && !isBlank(body[start - 1])) start--;
  return {
    start,
    end,
    message: `\`${body.slice(start, end)}\` does not fit here.${written(form)}`,
  };
}

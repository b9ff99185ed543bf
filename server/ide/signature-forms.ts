// The forms that a line may be written in, and the parts of each that are filled in one after another. The first form is the table's of
// the grammar; what else the line may look like stands here. Where the caret is in a form is signature-place.ts's.
import { examples } from "../../grammar/examples.ts";
import type {
  EntryKind,
  EntrySpec,
  FactSpec,
} from "../../grammar/vocabulary.ts";
import { sideOf } from "../model/ranges.ts";

/** A part of a form that is filled in, with the words that lead to it: `with GAUGE`. */
export interface Part {
  /** Where it stands in the form's text. */
  readonly start: number;
  readonly end: number;
  /** What is to be filled in: "GAUGE", "blind|through", "TEXT". */
  readonly name: string;
  /** Words before it, and after the last of its group. */
  readonly lead: readonly string[];
  readonly trail: readonly string[];
  readonly choices: readonly string[];
  /** It may be left off. */
  readonly isOptional: boolean;
  /** A comma stands before it. */
  readonly afterComma: boolean;
  readonly isText: boolean;
  readonly isNumber: boolean;
}

export interface Form {
  readonly text: string;
  readonly parts: readonly Part[];
}

/** How a fact or an opening line may be written, the usual form first. */
export function formsOf(
  spec: EntrySpec | FactSpec,
  kind: EntryKind,
): readonly Form[] {
  const word = "word" in spec ? spec.word : spec.kind;
  const texts = [
    spec.form,
    ...rangeForms(spec.form, spec.rule, kind, word),
    ...(OTHERS[spec.rule] ?? []),
  ];
  return [...new Set(texts)].map(formOf);
}

/** The grammar's examples of a line that opens with this word. */
export function examplesOf(rule: string, word: string): readonly string[] {
  return (examples[rule] ?? []).filter(
    (each) => each === word || each.startsWith(`${word} `),
  );
}

/** Forms that no table has. */
const OTHERS: Readonly<Record<string, readonly string[]>> = {
  DepthFact: ["depth through"],
  FeedFact: ["feed pressure PRESSURE"],
  CooledFact: ["cooled case, air TEMPERATURE"],
  JointFact: ["joint bare"],
  SetFact: ["set with GAUGE"],
  GradeFact: ["grade SAE GRADE"],
  SizeFact: ["size no NUMBER", "size letter LETTER"],
  LineBoreFact: ["bore NAME from Z to Z centre X, Y to X, Y"],
  FinishFact: ["finish Ra|Rz VALUE"],
  SwingFact: [
    "swing [PLACE] VALUE on vee ANGLE between, COUNT lobes [with GAUGE] [as STAGE] [by WHO on DATE]",
    "swing [PLACE] VALUE on three points, COUNT lobes [with GAUGE] [as STAGE] [by WHO on DATE]",
  ],
  OpenedFact: ["opened by WHO on DATE"],
  DoneFact: ["done by WHO on DATE"],
};

/** Facts that take limits written as a size with its deviations. */
const DEVIATED = new Set([
  "LimitsFact",
  "OdFact",
  "IdFact",
  "SizeFact",
  "CutFact",
  "PlusFact",
  "MinusFact",
]);

/** Limits as a size with two deviations, a size with one either way, and a class where one may stand. */
function rangeForms(
  form: string,
  rule: string,
  kind: EntryKind,
  word: string,
): readonly string[] {
  const range = /LOW to HIGH|(?<=^size )VALUE|(?<=^service-limit )SIZE/;
  if (!range.test(form)) return [];
  const as = (text: string): string => form.replace(range, text);
  return [
    ...(DEVIATED.has(rule)
      ? [as("LOW to HIGH"), as("SIZE +UPPER -LOWER"), as("MIDDLE +/- HALF")]
      : []),
    ...(sideOf(kind, word) === undefined ? [] : [as("SIZE CLASS")]),
  ];
}

const PIECE =
  /(?<open>\[)|(?<close>\])|(?<comma>,)|"(?<text>[A-Z]+)"|(?<choice>[\w-]+(?:\|[\w-]+)+(?: NAME)?)|[+-]?(?<capital>[A-Z]{2,}|[XYZ])(?![\w-])|(?<word>\S+?)(?=[\s,\]]|$)/g;

/** Capital words that are written as they stand. */
const KEPT = new Set(["ISO", "VG", "SAE"]);

/** What no number begins. */
const NAMES = new Set([
  "NAME",
  "PART",
  "JOURNAL",
  "HOLE",
  "BUSH",
  "BORE",
  "LINE",
  "PRESS",
  "STEP",
  "ROUTE",
  "REAMER",
  "ENTRY",
  "GAUGE",
  "PLACE",
  "STAGE",
  "WHO",
  "CODE",
  "MATERIAL",
  "CLASS",
  "LETTER",
]);

interface PlacedWord {
  readonly word: string;
  readonly start: number;
}

/** Takes a form apart. */
export function formOf(text: string): Form {
  const parts: Part[] = [];
  let lead: PlacedWord[] = [];
  let isOptional = false;
  let afterComma = false;
  const close = (): void => {
    const last = parts.at(-1);
    const end = lead.at(-1);
    if (last !== undefined && end !== undefined)
      parts[parts.length - 1] = {
        ...last,
        end: end.start + end.word.length,
        trail: lead.map(({ word }) => word),
      };
    lead = [];
  };
  // the first word is the fact's own
  const rest = /^\S+/.exec(text)?.[0].length ?? 0;
  for (const match of text.slice(rest).matchAll(PIECE)) {
    const start = rest + match.index;
    const {
      open,
      close: closing,
      comma,
      text: quoted,
      choice,
      capital,
    } = match.groups ?? {};
    const filled = quoted ?? choice ?? capital;
    if (open !== undefined) {
      // words before what may be left off end the part before it: `COUNT lobes [with GAUGE]`
      if (0 < parts.length) close();
      isOptional = true;
    } else if (closing !== undefined) {
      close();
      isOptional = false;
    } else if (comma !== undefined) {
      close();
      afterComma = true;
    } else if (filled === undefined || KEPT.has(filled))
      lead.push({ word: match[0], start });
    else {
      const isChoice = choice !== undefined && !choice.endsWith(" NAME");
      parts.push({
        start: lead[0]?.start ?? start,
        end: start + match[0].length,
        name: filled,
        lead: lead.map(({ word }) => word),
        trail: [],
        choices: isChoice ? choice.split("|") : [],
        isOptional,
        afterComma,
        isText: match[0].startsWith('"'),
        isNumber: capital !== undefined && !NAMES.has(capital),
      });
      lead = [];
      afterComma = false;
    }
  }
  if (parts.length === 0 && 0 < lead.length)
    return { text, parts: wordsAlone(lead) };
  close();
  return { text, parts };
}

/** `depth through`: nothing is filled in. */
function wordsAlone(words: readonly PlacedWord[]): readonly Part[] {
  const [first] = words;
  const last = words.at(-1);
  return first === undefined || last === undefined
    ? []
    : [
        {
          start: first.start,
          end: last.start + last.word.length,
          name: last.word,
          lead: [],
          trail: [],
          choices: [last.word],
          isOptional: false,
          afterComma: false,
          isText: false,
          isNumber: false,
        },
      ];
}

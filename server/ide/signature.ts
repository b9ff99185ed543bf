// How the line at the caret is written: its forms, the part that is being written, what that part means, and an example.
import {
  type EntrySpec,
  type FactSpec,
  lineSpec,
} from "../../grammar/vocabulary.ts";
import type { OpenFile } from "../model/project.ts";
import { blocks, code } from "../markup/markdown.ts";
import { choiceMeaning } from "./hover-words.ts";
import { spotAt, type Position } from "./position.ts";
import {
  examplesOf,
  formsOf,
  type Form,
  type Part,
} from "./signature-forms.ts";
import { partMeaning } from "./signature-words.ts";
import { placeIn } from "./signature-place.ts";

export interface Signature {
  /** "limits LOW to HIGH [from "SOURCE"]" */
  readonly label: string;
  /** Markdown: what the line says, and an example. */
  readonly markdown: string;
  readonly parameters: readonly Parameter[];
}

export interface Parameter {
  /** Where it stands in the label, end exclusive. */
  readonly start: number;
  readonly end: number;
  /** One line of Markdown; "" where the word says it all. */
  readonly markdown: string;
}

export interface SignatureHelp {
  readonly signatures: readonly Signature[];
  readonly active: number;
  /** The parameter of the active one that the caret is in. */
  readonly parameter: number;
}

/** The forms of the line at a position; undefined where no fact or entry is being written, or nothing is left to write. */
export function signatureAt(
  open: OpenFile,
  position: Position,
): SignatureHelp | undefined {
  const spot = spotAt(open, position);
  const spec =
    spot === undefined
      ? undefined
      : lineSpec(spot.kind, spot.line.word, spot.isHead);
  if (spot?.kind === undefined || spec === undefined) return undefined;
  const { line, kind } = spot;
  const before = line.text.slice(line.indent, spot.position.character);
  // the fact's own word is completion's
  if (spot.where === "comment" || !/^\S+[ \t\u{A0}]/u.test(before))
    return undefined;
  const forms = formsOf(spec, kind);
  const active = likeliest(forms, line.body, before);
  const found = forms[active];
  const place = found === undefined ? undefined : placeIn(found, before);
  // nobody needs help with words of their own
  if (place?.part === undefined || place.isInText) return undefined;
  const examples = examplesOf(spec.rule, line.word);
  const shown = new Map(
    [...examples]
      .reverse()
      .map((example) => [likeliest(forms, example, example), example]),
  );
  return {
    signatures: forms.map((form, index) =>
      signatureOf(form, spec, shown.get(index)),
    ),
    active,
    parameter: place.part,
  };
}

/** The form that a line goes against least: whole, then as far as the caret; the earlier one where two are as good. */
export function likeliest(
  forms: readonly Form[],
  body: string,
  before: string,
): number {
  let best = 0;
  let least = Infinity;
  forms.forEach((form, index) => {
    const misfits =
      placeIn(form, body).misfits + placeIn(form, before).misfits / 100;
    if (misfits < least) {
      best = index;
      least = misfits;
    }
  });
  return best;
}

function signatureOf(
  { text, parts }: Form,
  spec: EntrySpec | FactSpec,
  example: string | undefined,
): Signature {
  return {
    label: text,
    markdown: blocks(
      spec.means,
      example === undefined ? "" : `For example ${code(example)}`,
    ),
    parameters: parts.map((part) => ({
      start: part.start,
      end: part.end,
      markdown: meaningOf(part, spec.rule),
    })),
  };
}

function meaningOf({ name, choices, isOptional }: Part, rule: string): string {
  const means =
    choices.length === 0
      ? partMeaning(name, rule)
      : choices
          .flatMap((choice) => {
            const said = choiceMeaning(choice);
            return said === undefined ? [] : [`${code(choice)} ${said}`];
          })
          .join(" ");
  return isOptional ? `${means} May be left off.`.trim() : means;
}

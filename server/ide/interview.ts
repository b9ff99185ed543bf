// Asks one thing after another. An interview is a generator that yields what it asks and is given what was answered; it is run from its
// beginning over all answers so far each time, so that going back is leaving off the last, and nothing is kept between two requests.
import { plain } from "../markup/markdown.ts";
import type { Answer, Choice, Next, Question } from "../protocol/guide.ts";

interface About {
  readonly key: string;
  readonly title: string;
  readonly about: string;
  readonly isKept?: boolean;
}

export type Ask =
  | (About & {
      readonly kind: "pick";
      readonly choices: readonly Choice[];
      readonly many: boolean;
    })
  | (About & {
      readonly kind: "text";
      readonly value: string;
      readonly fault: string | null;
    });

export type Interview<T> = Generator<Ask, T, readonly string[]>;

/** Why an answer is not taken, in a sentence. */
export interface Fault {
  readonly fault: string;
}

/** Asks for one of several; an answer that is none of them is as the one offered. */
export function* askOne(
  about: About,
  choices: readonly Choice[],
): Interview<string> {
  const given = yield { ...about, kind: "pick", choices, many: false };
  const usual = choices.find((each) => each.picked) ?? choices[0];
  return choices.some(({ value }) => value === given[0])
    ? (given[0] ?? "")
    : (usual?.value ?? "");
}

/** Asks for any of several, in their order. */
export function* askMany(
  about: About,
  choices: readonly Choice[],
): Interview<readonly string[]> {
  const given = yield { ...about, kind: "pick", choices, many: true };
  return choices
    .map(({ value }) => value)
    .filter((value) => given.includes(value));
}

/** Asks for a text until it can be read. */
export function* askText<T>(
  about: About,
  value: string,
  read: (text: string) => { readonly value: T } | Fault,
): Interview<T> {
  let fault: string | null = null;
  let shown = value;
  for (;;) {
    const given = yield { ...about, kind: "text", value: shown, fault };
    const found = read((given[0] ?? "").trim());
    if ("value" in found) return found.value;
    fault = plain(found.fault);
    shown = given[0] ?? "";
  }
}

export function choice(
  value: string,
  label: string,
  more: {
    readonly beside?: string;
    readonly below?: string;
    readonly picked?: boolean;
  } = {},
): Choice {
  const { beside = "", below = "", picked = false } = more;
  return { value, label, beside, below, picked };
}

/** More questions than any interview has: an interview that goes on is a fault. */
const MOST = 500;

/** Where an interview stands after these answers: at its next question, or at its end. */
export function interviewed<T>(
  begin: () => Interview<T>,
  answers: readonly Answer[],
): Next | { readonly value: T } {
  const interview = begin();
  let accepted = 0;
  let isAgain = false;
  let asked = interview.next();
  for (const answer of answers) {
    if (asked.done === true) break;
    const key: string = asked.value.key;
    if (answer.key !== key) break;
    const next = interview.next(answer.values);
    asked = next;
    isAgain = isRefused(next, key);
    if (isAgain) break;
    accepted++;
  }
  if (asked.done === true) return { value: asked.value };
  const { isKept = false, ...ask } = asked.value;
  const step = accepted + 1;
  return {
    question: {
      ...ask,
      isKept,
      step,
      of: isAgain
        ? stepsAsFirstAsked(begin, answers.slice(0, accepted))
        : Math.max(step, stepsToTheEnd(interview, asked.value, accepted)),
    },
    accepted,
  };
}

/** A question that is asked again shows what was refused, and from that nobody could go on. */
function stepsAsFirstAsked<T>(
  begin: () => Interview<T>,
  accepted: readonly Answer[],
): number {
  const before = interviewed(begin, accepted);
  return "question" in before ? before.question.of : accepted.length;
}

function isRefused<T>(
  { done, value }: IteratorResult<Ask, T>,
  key: string,
): boolean {
  if (done === true) return false;
  return value.key === key && value.kind === "text" && value.fault !== null;
}

/** How many questions there are if the rest is answered as offered. */
function stepsToTheEnd<T>(
  interview: Interview<T>,
  from: Ask,
  accepted: number,
): number {
  let steps = accepted;
  let ask = from;
  while (steps < MOST) {
    steps++;
    const next = interview.next(asOffered(ask));
    // what is offered may not do, as where a name must be typed: then nobody knows what follows
    if (next.done === true || isRefused(next, ask.key)) return steps;
    ask = next.value;
  }
  return steps;
}

/** What whoever only presses Enter answers. */
export function asOffered(
  ask: Pick<Question, "kind"> & Partial<Question>,
): readonly string[] {
  if (ask.kind === "text") return [ask.value ?? ""];
  const choices = ask.choices ?? [];
  const picked = choices.filter((each) => each.picked);
  if (ask.many === true) return picked.map(({ value }) => value);
  const first = picked[0] ?? choices[0];
  return first === undefined ? [] : [first.value];
}

/** The answers that came from an editor, as far as they are such. */
export function answersFrom(given: unknown): readonly Answer[] {
  if (!Array.isArray(given)) return [];
  return (given as readonly unknown[]).flatMap((each) => {
    if (typeof each !== "object" || each === null) return [];
    if (!("key" in each) || !("values" in each)) return [];
    const { key, values } = each;
    return typeof key === "string" && Array.isArray(values)
      ? [
          {
            key,
            values: values.filter(
              (value): value is string => typeof value === "string",
            ),
          },
        ]
      : [];
  });
}

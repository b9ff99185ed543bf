// A value that is known, or the facts that would make it known. Never null for "cannot say".
import type { Need, Status, Working } from "./result.ts";

export interface Unknown {
  readonly known: false;
  /** The facts that would settle it. */
  readonly needs: readonly Need[];
  /** The text it needs is damaged, which is said there. */
  readonly silent: boolean;
  /** Why the method does not hold here. */
  readonly because?: string;
  /** What sort of reason that is, as in core/answer.ts. */
  readonly sort?: "no-film";
}

export type Known<T> = { readonly known: true; readonly value: T } | Unknown;

export function known<T>(value: T): Known<T> {
  return { known: true, value };
}

/** Unknown, for want of these facts. */
export function unknown(...needs: readonly Need[]): Unknown {
  return { known: false, needs, silent: false };
}

/** Unknown, because a line that it needs is damaged: nothing more is said. */
export const SILENT: Unknown = { known: false, needs: [], silent: true };

/** Unknown, because the method does not hold here; a sentence part that completes "not valid here, because …". */
export function outside(because: string, sort?: "no-film"): Unknown {
  return {
    known: false,
    needs: [],
    silent: false,
    because,
    ...(sort === undefined ? {} : { sort }),
  };
}

export function need(ref: string, fact: string, text: string): Need {
  return { ref, fact, text };
}

/** That a reading of it be written. @param how in words that follow it; @param of what of it, where that is not all */
export function readingOf(ref: string, how = "", of = ref): Need {
  return need(ref, "read", `a reading of ${of}${how}`);
}

/** What is missing, each thing once; needs of which one will do are one thing. */
export function missing(
  needs: readonly Need[],
): readonly (readonly [Need, ...Need[]])[] {
  const things: [Need, ...Need[]][] = [];
  for (const each of needs) {
    const before = things.at(-1);
    if (each.instead === true && before !== undefined) before.push(each);
    else things.push([each]);
  }
  const texts = things.map(textOf);
  return things.filter(
    (thing, index) => texts.indexOf(textOf(thing)) === index,
  );
}

/** "a reading of bore rear or the reamer of line layshaft", "the load of fit rear" */
export function missingTexts(needs: readonly Need[]): readonly string[] {
  return missing(needs).map(textOf);
}

/** "a reading of bore rear, the load of fit rear"; "" where nothing is missing. */
export function missingText(needs: readonly Need[]): string {
  const texts = missingTexts(needs);
  return texts.join(texts.some((text) => text.includes(",")) ? "; " : ", ");
}

/** "needs a reading of bore rear, the load of fit rear"; "" where nothing is missing. */
export function neededText(needs: readonly Need[]): string {
  const text = missingText(needs);
  return text === "" ? "" : `needs ${text}`;
}

function textOf(thing: readonly Need[]): string {
  return thing.map(({ text }) => text).join(" or ");
}

/** All of them, or everything that is missing. */
export function everyKnown<T>(all: readonly Known<T>[]): Known<readonly T[]> {
  const values: T[] = [];
  for (const each of all) {
    if (!each.known) return lacking(...all);
    values.push(each.value);
  }
  return known(values);
}

/** All that is missing of these, of which one at least is not known. */
export function lacking(...all: readonly Known<unknown>[]): Unknown {
  const missed = all.filter((each) => !each.known);
  const because = missed.find((each) => each.because !== undefined)?.because;
  return {
    known: false,
    needs: missed.flatMap((each) => each.needs),
    silent: missed.some((each) => each.silent),
    ...(because === undefined ? {} : { because }),
  };
}

/** The ends of a quantity, SI, and the likeliest of what lies between. */
export interface Extent {
  readonly low: number;
  readonly nominal: number;
  readonly high: number;
}

/** A range with what it rests on: the common shape of what the evaluation gives. */
export interface Estimate extends Extent {
  readonly status: Exclude<Status, "unknown">;
  /** The step of the last known digit, in m, for display. */
  readonly step: number | undefined;
  readonly working: readonly Working[];
}

/** Predicted as soon as any part is. */
export function statusOf(
  ...parts: readonly { readonly status: Status }[]
): Exclude<Status, "unknown"> {
  return parts.some((part) => part.status !== "measured")
    ? "predicted"
    : "measured";
}

// A full reference taken apart: "fit front" is a fit called front.
import type { EntryKind } from "../../grammar/vocabulary.ts";

export function kindOf(ref: string): EntryKind {
  return ref.slice(0, ref.indexOf(" ")) as EntryKind; // a reference begins with its kind
}

export function nameOf(ref: string): string {
  return ref.slice(ref.indexOf(" ") + 1);
}

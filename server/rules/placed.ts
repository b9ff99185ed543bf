// Gives a finding its place in a file: lines and characters, its own and those of what it points to and would change. Where entries lie is
// the shop's; what is found is the rules'.
import { eolOf } from "../../grammar/lines.ts";
import type { Entry } from "../model/entry.ts";
import type { FileEntries } from "../model/file-entries.ts";
import { shown } from "../model/plain-text.ts";
import type { Finding, Fix, Place, Related } from "../model/result.ts";
import type { Shop } from "../model/shop.ts";
import type { Span } from "../model/values.ts";
import type { DraftEdit, EntryFinding } from "./rule.ts";

/** Where the entries lie that a finding may point to. */
export type Whereabouts = Pick<Shop, "places" | "files">;

/** @param index the number of the entry in its file */
export function placed(
  { places, files }: Whereabouts,
  file: FileEntries,
  index: number,
  entry: Entry,
  found: EntryFinding,
): Finding {
  const own = { file, index };
  /** The file of an entry and its number there; what names none is of this one. */
  const whereIs = (ref: string | undefined): typeof own | undefined => {
    if (ref === undefined) return own;
    const place = places.get(ref);
    const other = place === undefined ? undefined : files[place.file];
    return place === undefined || other === undefined
      ? undefined
      : { file: other, index: place.index };
  };
  const related = (found.related ?? []).flatMap(
    ({ ref, span, message }): readonly Related[] => {
      const there = whereIs(ref);
      // what names no entry and gives no place points nowhere
      const where =
        span ??
        (ref === undefined
          ? undefined
          : there?.file.entries[there.index]?.nameSpan);
      return there === undefined || where === undefined
        ? []
        : [{ place: placeOf(there, where), message: readable(message) }];
    },
  );
  const edit = ({ ref, span, text }: DraftEdit): Fix["edits"] => {
    const there = whereIs(ref);
    if (there === undefined) return [];
    // an entry in the last line of a file has no line end to go by
    const eol = eolOf(there.file.lines);
    return [{ place: placeOf(there, span), text: text.replaceAll("\n", eol) }];
  };
  return {
    code: found.code,
    level: found.level,
    place: placeOf(own, found.span),
    message: readable(found.message),
    entry: entry.ref === "" ? null : entry.ref,
    ...(found.step === undefined ? {} : { step: found.step }),
    related,
    fixes: (found.fixes ?? []).map(({ title, safe, edits, creates }) => ({
      title: readable(title),
      safe,
      edits: edits.flatMap(edit),
      ...(creates === undefined ? {} : { creates }),
    })),
    accepted: found.accepted ?? null,
  };
}

function placeOf(
  { file, index }: { readonly file: FileEntries; readonly index: number },
  { line, start, end }: Span,
): Place {
  return {
    file: file.path,
    line: (file.lines.starts[index] ?? 0) + line,
    start,
    end,
  };
}

/** Past this what a message quotes is shown by its beginning. */
const LONG = 400;

/** Past this it ends, whatever it is made of: no sentence of a rule about a few entries is as long. */
const LONGEST = 1000;

/** A message that quotes a very long word or text shows its beginning, and one that quotes a control writes it out. */
function readable(text: string): string {
  const message = shown(text);
  if (message.length <= LONG) return message;
  const shortened = message.replace(/`([^`]{60})[^`]+`/gu, "`$1…`");
  return shortened.length <= LONGEST
    ? shortened
    : `${shortened.slice(0, LONGEST - 1).replace(/[\uD800-\uDBFF]$/u, "")}…`;
}

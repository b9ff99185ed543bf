// Gives a finding its place in a file: lines and characters, its own and those of what it points to and would change. Where entries lie is
// the shop's; what is found is the rules'.
import type { Entry } from "../model/entry.ts";
import { shown } from "../model/plain-text.ts";
import type { Finding, Fix, Place, Related } from "../model/result.ts";
import type { Shop } from "../model/shop.ts";
import type { Span } from "../model/values.ts";
import type { DraftEdit, EntryFinding } from "./rule.ts";

/** Where the entries lie that a finding may point to. */
export type Whereabouts = Pick<Shop, "places" | "files">;

/** @param start the line that the entry starts on, from 0 */
export function placed(
  { places, files }: Whereabouts,
  path: string,
  start: number,
  entry: Entry,
  found: EntryFinding,
): Finding {
  const at = (span: Span): Place => ({
    file: path,
    line: start + span.line,
    start: span.start,
    end: span.end,
  });
  const elsewhere = (
    ref: string | undefined,
    span: Span | undefined,
  ): Place | undefined => {
    if (ref === undefined) return span === undefined ? undefined : at(span);
    const place = places.get(ref);
    const file = place === undefined ? undefined : files[place.file];
    const other = place === undefined ? undefined : file?.entries[place.index];
    if (file === undefined || other === undefined || place === undefined)
      return undefined;
    const where = span ?? other.nameSpan;
    return {
      file: file.path,
      line: (file.lines.starts[place.index] ?? 0) + where.line,
      start: where.start,
      end: where.end,
    };
  };
  const related = (found.related ?? []).flatMap(
    ({ ref, span, message }): readonly Related[] => {
      const place = elsewhere(ref, span);
      return place === undefined ? [] : [{ place, message: readable(message) }];
    },
  );
  const edit = ({ ref, span, text }: DraftEdit): Fix["edits"] => {
    const place = elsewhere(ref, span);
    return place === undefined ? [] : [{ place, text }];
  };
  return {
    code: found.code,
    level: found.level,
    place: at(found.span),
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

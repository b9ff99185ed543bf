// A place of a form that was left as it was offered, where a name or a file may stand, so that it reads: `journal a on PART`, `use "FILE"`.
import { lineSpec, placesOf } from "../../../grammar/vocabulary.ts";
import type { Entry } from "../../model/entry.ts";
import type { Span } from "../../model/values.ts";

/** Whether a text is a place of its own line's form. */
export function isOpenPlace(
  { kind, block }: Entry,
  { line }: Span,
  text: string,
): boolean {
  const word = block.lines[line]?.word ?? "";
  const form = lineSpec(kind, word, line === 0)?.form;
  return form !== undefined && placesOf(form).includes(text);
}

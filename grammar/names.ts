// What a name is. The grammar's own rule is `nameShape`.
import { CLAUSE_WORDS } from "./vocabulary.ts";

const NAME = /^\p{L}[\p{L}\d-]*$/u;

/** Letters, digits and hyphens, beginning with a letter, and no word that opens a clause. */
export function isName(text: string): boolean {
  return NAME.test(text) && !CLAUSE_WORDS.includes(text);
}

/** A text brought into the form of a name, all else made hyphens; empty where it has no letter. It may be a word that opens a clause. */
export function nameOutOf(text: string): string {
  return text
    .normalize("NFC")
    .replaceAll(/[^\p{L}\d]+/gu, "-")
    .replaceAll(/^[-\d]+|-+$/gu, "");
}

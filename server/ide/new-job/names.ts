// Names, texts and names of files out of what a person typed: brought into the form that the language takes, or refused with a sentence.
import { nameOutOf } from "../../../grammar/names.ts";
import { ENTRY_KINDS } from "../../../grammar/vocabulary.ts";
import type { Fault } from "../interview.ts";

/** Words that open clauses, and the kinds of entries: a name that is one of them would read two ways. */
const TAKEN = new Set<string>([
  ..."in on of to from at with by after station per as".split(" "),
  ...ENTRY_KINDS,
]);

const LONGEST = 40;

/** A name as the language takes it, `what` being what is named: blanks and signs become hyphens. */
export function readName(
  text: string,
  what: string,
  taken: readonly string[] = [],
): { readonly value: string } | Fault {
  const name = nameOutOf(text);
  if (name === "")
    return {
      fault: `A name of ${what} has a letter in it: letters, digits and hyphens, beginning with a letter.`,
    };
  if (LONGEST < name.length)
    return {
      fault: `A name of ${what} has at most ${String(LONGEST)} characters.`,
    };
  if (TAKEN.has(name))
    return {
      fault: `\`${name}\` is a word of the language. Take another name.`,
    };
  const other = taken.find((each) => each.toLowerCase() === name.toLowerCase());
  if (other !== undefined)
    return {
      fault:
        other === name
          ? `\`${name}\` is taken already. Take another name.`
          : `\`${name}\` and \`${other}\` differ in capitals alone. Take another name.`,
    };
  return { value: name };
}

/** A text as it may stand between quotes: on one line, its own double quotes made single ones. */
export function quotedText(text: string): string {
  const plain = text
    .replaceAll(/[\p{Cc}\p{Zl}\p{Zp}]+/gu, " ")
    .replaceAll('"', "'")
    .trim();
  return `"${plain}"`;
}

/** Names that one sort of disk keeps for itself. */
const RESERVED = /^(?:con|prn|aux|nul|com\d|lpt\d)$/iu;

/** A name of a file that none in the folder has, whatever the case of its letters; without the ending. */
export function freeName(name: string, names: readonly string[]): string {
  const taken = new Set(names.map((each) => each.toLowerCase()));
  const base = RESERVED.test(name) ? `job-${name}` : name;
  let free = base;
  for (let number = 2; taken.has(`${free}.thou`.toLowerCase()); number++)
    free = `${base}-${String(number)}`;
  return free;
}

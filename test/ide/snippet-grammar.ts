// Reads a snippet by the grammar of the Language Server Protocol 3.17 (Snippet Syntax, Grammar), written from that grammar and apart from the
// code that makes snippets: tab stops, placeholders, choices, text with \$, \} and \\ set off; in choices \, and \| too.

export interface Stop {
  readonly number: number;
  /** The text of a placeholder, or the choices. */
  readonly choices: readonly string[];
  readonly isChoice: boolean;
}

/** Text and tab stops in their order. Throws where the grammar does not read it. */
export function readSnippet(snippet: string): readonly (string | Stop)[] {
  const pieces: (string | Stop)[] = [];
  let at = 0;
  let text = "";
  const take = (mark: string): void => {
    if (!snippet.startsWith(mark, at))
      throw new Error(`${mark} is missing at ${String(at)} of ${snippet}`);
    at += mark.length;
  };
  const int = (): number => {
    const digits = /^\d+/.exec(snippet.slice(at))?.[0];
    if (digits === undefined)
      throw new Error(`a number is missing at ${String(at)} of ${snippet}`);
    at += digits.length;
    return Number(digits);
  };
  const until = (ends: string, escapes: string): string => {
    let found = "";
    for (; at < snippet.length && !ends.includes(snippet[at] ?? ""); at++) {
      if (snippet[at] === "\\") {
        if (!escapes.includes(snippet[at + 1] ?? " "))
          throw new Error(`nothing to set off at ${String(at)} of ${snippet}`);
        at++;
      } else if (snippet[at] === "$")
        throw new Error(`a stop in a stop at ${String(at)} of ${snippet}`);
      found += snippet[at] ?? "";
    }
    return found;
  };
  while (at < snippet.length) {
    if (snippet[at] !== "$") {
      text += until("$", "$}\\");
      continue;
    }
    pieces.push(text);
    text = "";
    at++;
    if (snippet[at] !== "{") {
      pieces.push({ number: int(), choices: [], isChoice: false });
      continue;
    }
    take("{");
    const number = int();
    if (snippet[at] === "|") {
      take("|");
      const choices = [until(",|", "$}\\,|")];
      while (snippet[at] === ",") {
        take(",");
        choices.push(until(",|", "$}\\,|"));
      }
      take("|}");
      pieces.push({ number, choices, isChoice: true });
    } else {
      take(":");
      pieces.push({ number, choices: [until("}", "$}\\")], isChoice: false });
      take("}");
    }
  }
  return [...pieces, text];
}

// Colours one line with a TextMate grammar, as editors do, for as much of TextMate as ours uses: the pattern that matches furthest
// left wins, the first of those at one place, and a `begin` holds to the end of its line. Regular expressions are JavaScript's.

export interface Coloured {
  readonly text: string;
  readonly start: number;
  readonly scope: string;
}

interface Pattern {
  readonly name?: string;
  readonly match?: string;
  readonly begin?: string;
  readonly end?: string;
  readonly include?: string;
  readonly captures?: Captures;
  readonly beginCaptures?: Captures;
  readonly patterns?: readonly Pattern[];
}
type Captures = Readonly<Record<string, { readonly name: string }>>;

export interface Grammar {
  readonly scopeName: string;
  readonly patterns: readonly Pattern[];
  readonly repository: Readonly<Record<string, Pattern>>;
}

/** The coloured pieces of a line, in order; what no pattern takes is left out. */
export function tokenise(grammar: Grammar, line: string): readonly Coloured[] {
  const pieces: Coloured[] = [];
  let patterns = flatten(grammar, grammar.patterns);
  let at = 0;
  while (at < line.length) {
    const [pattern, match] = leftmost(patterns, line, at);
    if (pattern === undefined || match === undefined) break;
    const captures = pattern.captures ?? pattern.beginCaptures ?? {};
    if (pattern.name !== undefined)
      pieces.push({ text: match[0], start: match.index, scope: pattern.name });
    for (const [number, { name }] of Object.entries(captures)) {
      const span = match.indices?.[Number(number)];
      if (span !== undefined)
        pieces.push({ text: line.slice(...span), start: span[0], scope: name });
    }
    if (pattern.begin !== undefined) {
      if (pattern.end !== "$")
        throw new Error(
          "only patterns that hold to the end of the line are read",
        );
      patterns = flatten(grammar, pattern.patterns ?? []);
    }
    at = match.index + match[0].length;
    if (match[0] === "" && pattern.begin === undefined)
      throw new Error("a pattern takes nothing and would never end");
  }
  return pieces;
}

function flatten(
  grammar: Grammar,
  patterns: readonly Pattern[],
): readonly Pattern[] {
  return patterns.flatMap((pattern) => {
    if (pattern.include !== undefined) {
      const included = grammar.repository[pattern.include.replace(/^#/, "")];
      if (included === undefined)
        throw new Error(`${pattern.include} is not in the repository`);
      return flatten(grammar, [included]);
    }
    return pattern.match === undefined && pattern.begin === undefined
      ? flatten(grammar, pattern.patterns ?? [])
      : [pattern];
  });
}

const compiled = new Map<string, RegExp>();

function leftmost(
  patterns: readonly Pattern[],
  line: string,
  from: number,
): readonly [Pattern | undefined, RegExpExecArray | undefined] {
  let best: readonly [Pattern | undefined, RegExpExecArray | undefined] = [
    undefined,
    undefined,
  ];
  for (const pattern of patterns) {
    const source = pattern.match ?? pattern.begin ?? "";
    const expression = compiled.get(source) ?? new RegExp(source, "dgu");
    compiled.set(source, expression);
    expression.lastIndex = from;
    const match = expression.exec(line);
    if (
      match !== null &&
      (best[1] === undefined || match.index < best[1].index)
    )
      best = [pattern, match];
  }
  return best;
}

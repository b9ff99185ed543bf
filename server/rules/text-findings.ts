// What the text of an entry has wrong by itself.
import type { Entry } from "../model/entry.ts";
import type { EntryFinding } from "./rule.ts";
import { TEXT_RULES } from "./text/index.ts";

const BY_CODE = new Map(TEXT_RULES.map((rule) => [rule.code, rule]));

const textFindings = new WeakMap<Entry, readonly EntryFinding[]>();

/** What the text of one entry has wrong by itself. It hangs on nothing but the entry, so it is kept with it. */
export function findingsOfText(entry: Entry): readonly EntryFinding[] {
  const before = textFindings.get(entry);
  if (before !== undefined) return before;
  const found = entry.problems.flatMap((problem): readonly EntryFinding[] => {
    const rule = BY_CODE.get(problem.code);
    if (rule === undefined) return [];
    return [
      {
        code: rule.code,
        level: rule.level,
        span: problem.span,
        ...rule.draft(problem, entry),
      },
    ];
  });
  textFindings.set(entry, found);
  return found;
}

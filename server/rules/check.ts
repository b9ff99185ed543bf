// Runs the rules over a file and gives findings their places. Findings of an entry are remembered as results are: only what depends on an
// edit is looked at again.
import { query, type Shop, entryOf } from "../model/shop.ts";
import type { Entry } from "../model/entry.ts";
import type {
  FileCheck,
  Finding,
  Fix,
  Place,
  Related,
} from "../model/result.ts";
import {
  createFiles,
  resultsIn,
  type Files,
  type OpenFile,
} from "../model/project.ts";
import { shown } from "../model/plain-text.ts";
import type { Span } from "../model/values.ts";
import { fileDrafts } from "./file-rules.ts";
import { RULES, TEXT_RULES } from "./index.ts";
import { withConcessions } from "./concessions.ts";
import type { DraftEdit, EntryFinding } from "./rule.ts";

export type { EntryFinding };

export interface Project extends Files {
  /** Results and findings of one file, as a job or a crib of its own; nothing of a file that is not there. */
  check(path: string): FileCheck;
}

export function createProject(options: { readonly root: string }): Project {
  const files = createFiles(options);
  return {
    ...files,
    check(path) {
      const open = files.open(path);
      return open === undefined
        ? { findings: [], results: [] }
        : { findings: findingsIn(open), results: resultsIn(open) };
    },
  };
}

const TEXT_BY_CODE = new Map(TEXT_RULES.map((rule) => [rule.code, rule]));

/** What the text of one entry has wrong by itself. It hangs on nothing but the entry, so it is kept with it. */
const textFindings = new WeakMap<Entry, readonly EntryFinding[]>();

function findingsOfText(entry: Entry): readonly EntryFinding[] {
  const before = textFindings.get(entry);
  if (before !== undefined) return before;
  const found = entry.problems.flatMap((problem): readonly EntryFinding[] => {
    const rule = TEXT_BY_CODE.get(problem.code);
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

/** What the rules say of an entry by its name, before any concession. */
const findingsOfRules: (shop: Shop, ref: string) => readonly EntryFinding[] =
  query("findings", (shop, ref) => {
    const entry = entryOf(shop, ref);
    if (entry?.kind === undefined || entry.damaged) return [];
    const { kind } = entry;
    return RULES.filter((rule) => rule.about.includes(kind)).flatMap((rule) =>
      rule
        .check(shop, ref, entry, findingsOfRules)
        .map((draft): EntryFinding => ({
          code: rule.code,
          level: rule.level,
          ...draft,
        })),
    );
  });

/** The same with those that a concession accepts as information. */
const findingsOfMeaning = query<readonly EntryFinding[]>(
  "findings-after-concessions",
  (shop, ref) => withConcessions(shop, ref, findingsOfRules(shop, ref)),
);

/** All findings of an entry of the file, those of its text first. */
export function findingsOfEntry(
  { shop, file }: OpenFile,
  index: number,
): readonly EntryFinding[] {
  const entry = file.entries[index];
  if (entry === undefined) return [];
  const text = findingsOfText(entry);
  const place = shop.places.get(entry.ref);
  if (place?.file !== 0 || place.index !== index) return text;
  const meaning = findingsOfMeaning(shop, entry.ref);
  return meaning.length === 0 ? text : [...text, ...meaning];
}

/** Every finding of a file with its place, by line. */
export function findingsIn(open: OpenFile): readonly Finding[] {
  const { file, shop } = open;
  const findings: Finding[] = [];
  file.entries.forEach((entry, index) => {
    for (const found of findingsOfEntry(open, index))
      findings.push(
        placed(shop, file.path, file.lines.starts[index] ?? 0, entry, found),
      );
  });
  for (const { entry: index, ...draft } of fileDrafts(open)) {
    const entry = file.entries[index];
    if (entry !== undefined)
      findings.push(
        placed(shop, file.path, file.lines.starts[index] ?? 0, entry, draft),
      );
  }
  return findings.sort(
    (a, b) => a.place.line - b.place.line || a.place.start - b.place.start,
  );
}

function placed(
  shop: Shop,
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
    const place = shop.places.get(ref);
    const file = place === undefined ? undefined : shop.files[place.file];
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
      return place === undefined ? [] : [{ place, message: shown(message) }];
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

const LONGEST = 400;

/** A message that quotes a very long word or text shows its beginning, and one that quotes a control writes it out. */
function readable(text: string): string {
  const message = shown(text);
  if (message.length <= LONGEST) return message;
  const shortened = message.replace(/`([^`]{60})[^`]+`/gu, "`$1…`");
  return shortened.length <= LONGEST
    ? shortened
    : `${shortened.slice(0, LONGEST)}…`;
}

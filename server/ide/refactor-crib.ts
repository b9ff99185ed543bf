// Moves an entry that belongs in the crib out of a job: to a file that the job uses, or to a new crib beside it. Only where it means there
// what it means here: the same unit, and no name that is not known there.
import { eolOf, type Block } from "../../grammar/lines.ts";
import { given, type Entry } from "../model/entry.ts";
import type { FileEntries } from "../model/file-entries.ts";
import type { OpenFile } from "../model/project.ts";
import { resolve } from "../model/shop.ts";
import { rangeOfEntry, type Spot } from "./position.ts";
import {
  endOfFacts,
  isRead,
  type Refactoring,
  type RefactoringEdit,
} from "./refactoring.ts";

const KINDS: ReadonlySet<string> = new Set([
  "reamer",
  "pilot",
  "gauge",
  "material",
  "oil",
]);

export function toCrib(
  open: OpenFile,
  { entry, index }: Spot,
): readonly Refactoring[] {
  const { file, shop, uses } = open;
  const place = shop.places.get(entry.ref);
  if (
    !KINDS.has(entry.kind ?? "") ||
    !isRead(entry) ||
    place?.file !== 0 ||
    place.index !== index ||
    file.context.system === undefined
  )
    return [];
  const job = file.entries.findIndex(({ kind }) => kind === "job");
  if (job === -1) return [];
  if (uses.length === 0) return toNewCrib(open, entry, index, job);
  return uses.flatMap(({ path, state, written }): readonly Refactoring[] => {
    const crib = shop.files.find((each) => each.path === path);
    if (state !== "there" || crib === undefined) return [];
    if (!isSameThere(open, entry, crib)) return [];
    return [
      {
        title: `Move ${entry.ref} to \`${written}\``,
        kind: "extract",
        edits: [withoutEntry(file, index), intoCrib(crib, file, index)],
      },
    ];
  });
}

/** It means in the crib what it means here: its bare lengths, and every name in it. */
function isSameThere(
  { shop, file }: OpenFile,
  entry: Entry,
  crib: FileEntries,
): boolean {
  if (crib.context.system !== file.context.system) return false;
  // a name that several have is used as the first has it, and the first would be another
  if (crib.entries.some(({ ref }) => ref === entry.ref)) return false;
  return entry.refs.every((site) => {
    const found = resolve(shop, site);
    if (found.state === "shipped") return true;
    return (
      found.state === "found" &&
      (found.ref === entry.ref ||
        crib.entries.some(({ ref }) => ref === found.ref))
    );
  });
}

function toNewCrib(
  open: OpenFile,
  entry: Entry,
  index: number,
  job: number,
): readonly Refactoring[] {
  const { file, path, shop } = open;
  const own = entry.refs.every((site) => {
    const found = resolve(shop, site);
    return (
      found.state === "shipped" ||
      (found.state === "found" && found.ref === entry.ref)
    );
  });
  const opening = file.entries[job];
  if (!own || opening === undefined) return [];
  if (given(opening, "UseFact").state !== "absent") return [];
  const eol = eolOf(file.lines);
  const at = endOfFacts(file, job);
  return [
    {
      title: `Move ${entry.ref} to a new \`crib.thou\``,
      kind: "extract",
      edits: [
        {
          file: path,
          range: { start: at, end: at },
          text: `${eol}  use "crib.thou"`,
        },
        withoutEntry(file, index),
      ],
      creates: [
        {
          file: path.slice(0, path.lastIndexOf("/") + 1) + "crib.thou",
          text: `shop crib${eol}  units ${file.context.system ?? "mm"}${eol}${eol}${textOf(file, index, eol)}`,
        },
      ],
    },
  ];
}

/** The lines of an entry, with a line end after the last. */
function textOf(file: FileEntries, index: number, eol: string): string {
  return linesOf(file, index)
    .map(({ text }) => `${text.replace(/^\u{FEFF}/u, "")}${eol}`)
    .join("");
}

function linesOf(file: FileEntries, index: number): Block["lines"] {
  const { start, end } = rangeOfEntry(file, index);
  return file.lines.lines.slice(start.line, end.line + 1);
}

/** Takes an entry out, with the blank lines under it; at the end of the file with the line end above it. */
function withoutEntry(file: FileEntries, index: number): RefactoringEdit {
  const all = file.lines.lines;
  const { start, end } = rangeOfEntry(file, index);
  let after = end.line + 1;
  while (after < all.length && all[after]?.text.trim() === "") after++;
  const isLast = all.length <= after;
  const before = start.line - 1;
  return {
    file: file.path,
    range:
      isLast && 0 <= before
        ? {
            start: { line: before, character: all[before]?.text.length ?? 0 },
            end: { line: end.line, character: all[end.line]?.text.length ?? 0 },
          }
        : { start, end: { line: after, character: 0 } },
    text: "",
  };
}

/** After the last entry of its kind, else at the end. */
function intoCrib(
  crib: FileEntries,
  file: FileEntries,
  index: number,
): RefactoringEdit {
  const { kind } = file.entries[index] ?? {};
  const last = crib.entries.findLastIndex((each) => each.kind === kind);
  const eol = eolOf(crib.lines);
  const at = rangeOfEntry(
    crib,
    last === -1 ? crib.entries.length - 1 : last,
  ).end;
  return {
    file: crib.path,
    range: { start: at, end: at },
    text: `${eol}${eol}${textOf(file, index, eol).slice(0, -eol.length)}`,
  };
}

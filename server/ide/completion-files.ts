// Which files may be named after `use`: the records of the folder, by their path from this one, cribs first. The list of records is
// passed in; this file reads none.
import type { OpenFile } from "../model/project.ts";
import { resolvePath } from "../model/uses.ts";
import { completions, type Completion, type Offer } from "./completion-item.ts";
import { ruleOf, spotAt, type Position, type Range } from "./position.ts";
import { kindOf } from "../model/reference.ts";

/** A record that might be used. */
export interface UsableFile {
  readonly path: string;
  /** "shop harbour", "job winch-layshaft", or "". */
  readonly opens: string;
}

/** The text of a `use` that the caret is in, without its quotes; undefined elsewhere. */
export function usedFileAt(
  open: OpenFile,
  position: Position,
): Range | undefined {
  const spot = spotAt(open, position);
  if (spot === undefined || ruleOf(spot) !== "UseFact") return undefined;
  const { text, indent, comment } = spot.line;
  const { line, character } = spot.position;
  if (comment < character) return undefined;
  // a path has no quotes: an odd number of them before the caret opens one
  const quotes = [...text.slice(indent, character).matchAll(/"/g)];
  const last = quotes.at(-1);
  if (last === undefined || quotes.length % 2 === 0) return undefined;
  const start = indent + last.index + 1;
  const end = text.indexOf('"', character);
  return {
    start: { line, character: start },
    end: { line, character: end === -1 ? comment : end },
  };
}

/** @param root the folder that `use` must not lead out of */
export function fileOffers(
  open: OpenFile,
  range: Range,
  files: readonly UsableFile[],
  root: string,
): readonly Completion[] {
  const used = new Set(
    open.uses.flatMap(({ path, span, entry }) =>
      path === undefined || isHere(open, entry, span, range) ? [] : [path],
    ),
  );
  const offers = files.flatMap(({ path, opens }): readonly Offer[] => {
    if (path === open.path || used.has(path)) return [];
    const written = fromHere(open.path, path);
    // what can't be written so that it leads back there is not offered
    if (written.includes('"') || resolvePath(open.path, written, root) !== path)
      return [];
    const steps = written.split("/").length;
    return [
      {
        label: written,
        kind: "file",
        detail: opens,
        rank: (kindOf(opens) === "shop" ? 0 : 100) + steps,
      },
    ];
  });
  return completions(offers, range);
}

/** The text at the caret itself counts as not written yet. */
function isHere(
  { file }: OpenFile,
  entry: number,
  span: { readonly line: number; readonly start: number },
  { start }: Range,
): boolean {
  return (
    (file.lines.starts[entry] ?? 0) + span.line === start.line &&
    span.start <= start.character &&
    start.character <= span.start + 1
  );
}

/** "../crib.thou": the path of one file from another's folder. */
function fromHere(from: string, to: string): string {
  const here = from.split("/").slice(0, -1);
  const there = to.split("/");
  let same = 0;
  while (same < here.length && here[same] === there[same]) same++;
  return [
    ...here.slice(same).map(() => ".."),
    ...there.slice(same).map(decoded),
  ].join("/");
}

function decoded(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}

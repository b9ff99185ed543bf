// Which names a file mentions and which entries it opens, by name: what navigation and rename look up in place of the text. It is made
// once a file and state.
import { isIndented } from "../../grammar/lines.ts";
import { parseBody } from "../../grammar/parse.ts";
import { nodesIn } from "../../grammar/tree.ts";
import { factSpec } from "../../grammar/vocabulary.ts";
import { allOf, type Entry } from "../model/entry.ts";
import type { FileEntries } from "../model/file-entries.ts";
import type { OpenFile } from "../model/project.ts";
import type { RefSite, Span } from "../model/values.ts";
import {
  nodesAt,
  refAt,
  spotAt,
  touches,
  type Position,
  type Spot,
} from "./position.ts";

/** A place that names an entry. */
export interface Mention {
  /** Number of the entry that it stands in. */
  readonly index: number;
  readonly site: RefSite;
}

interface FileIndex {
  readonly mentions: ReadonlyMap<string, readonly Mention[]>;
  /** Numbers of the entries that open with a reference, "fit front". */
  readonly heads: ReadonlyMap<string, readonly number[]>;
}

const indexes = new WeakMap<FileEntries, FileIndex>();

export function mentionsOf(
  file: FileEntries,
  name: string,
): readonly Mention[] {
  return indexOf(file).mentions.get(name) ?? [];
}

export function headsOf(file: FileEntries, ref: string): readonly number[] {
  return indexOf(file).heads.get(ref) ?? [];
}

function indexOf(file: FileEntries): FileIndex {
  const before = indexes.get(file);
  if (before !== undefined) return before;
  const mentions = new Map<string, Mention[]>();
  const heads = new Map<string, number[]>();
  file.entries.forEach((entry, index) => {
    if (entry.ref !== "") push(heads, entry.ref, index);
    for (const site of sitesOf(entry))
      push(mentions, site.name, { index, site });
  });
  const made = { mentions, heads };
  indexes.set(file, made);
  return made;
}

function push<T>(map: Map<string, T[]>, key: string, value: T): void {
  const list = map.get(key);
  if (list === undefined) map.set(key, [value]);
  else list.push(value);
}

/** The references of an entry, and the steps that a route names. */
function sitesOf(entry: Entry): readonly RefSite[] {
  if (entry.kind !== "route") return entry.refs;
  const steps = allOf(entry, "RouteStepFact").flatMap(({ value }) =>
    value === undefined ? [] : [stepSite(value.name, value.span)],
  );
  return [...entry.refs, ...steps];
}

function stepSite(name: string, span: Span): RefSite {
  return { span, nameSpan: span, kind: undefined, name, takes: ["step"] };
}

/** What a name at a position stands for, before it is looked up. */
export type Named =
  | { readonly as: "entry"; readonly spot: Spot }
  | { readonly as: "reference"; readonly spot: Spot; readonly site: RefSite }
  | { readonly as: "local"; readonly spot: Spot; readonly local: Local }
  | {
      readonly as: "file";
      readonly spot: Spot;
      readonly path: string;
      readonly span: Span;
    };

/** A name that means something in its own entry only: a place that was read, a member of a stack. */
export interface Local {
  readonly type: "place" | "member";
  readonly name: string;
  readonly span: Span;
}

export function namedAt(open: OpenFile, position: Position): Named | undefined {
  const spot = spotAt(open, position);
  if (spot?.where !== "body") return undefined;
  const { entry } = spot;
  if (spot.isHead && entry.ref !== "" && touches(entry.nameSpan, spot))
    return { as: "entry", spot };
  const site =
    refAt(spot) ?? sitesOf(entry).find((each) => touches(each.span, spot));
  if (site !== undefined) return { as: "reference", spot, site };
  const node = nodesAt(spot).find(
    ({ type }) => type === "place" || type === "member",
  );
  if (node?.type === "place" || node?.type === "member") {
    const name = spot.line.body.slice(node.start, node.end);
    const span = {
      line: spot.number,
      start: spot.line.indent + node.start,
      end: spot.line.indent + node.end,
    };
    return { as: "local", spot, local: { type: node.type, name, span } };
  }
  const use = open.uses.find(
    (each) => each.entry === spot.index && touches(each.span, spot),
  );
  return use?.path === undefined || use.state !== "there"
    ? undefined
    : { as: "file", spot, path: use.path, span: use.span };
}

/** Every place or member that an entry names. */
export function localsOf(entry: Entry): readonly Local[] {
  const { kind } = entry;
  if (kind === undefined) return [];
  return entry.block.lines.flatMap((line, number) => {
    const rule = factSpec(kind, line.word)?.rule;
    if (rule === undefined || !isIndented(line) || !HAVE_LOCALS.has(rule))
      return [];
    return nodesIn(parseBody(line.body, rule).tree).flatMap(
      (node): readonly Local[] =>
        node.type !== "place" && node.type !== "member"
          ? []
          : [
              {
                type: node.type,
                name: line.body.slice(node.start, node.end),
                span: {
                  line: number,
                  start: line.indent + node.start,
                  end: line.indent + node.end,
                },
              },
            ],
    );
  });
}

const HAVE_LOCALS = new Set([
  "ReadFact",
  "RepeatFact",
  "BushReadFact",
  "StackReadFact",
  "SwingFact",
  "BoreSwingFact",
  "PlusFact",
  "MinusFact",
]);

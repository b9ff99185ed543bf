// What damage to a record may change and what it may not, for the tests that damage records: what each entry rests on, and which findings
// and results are new.
import {
  isIndented,
  type Edit,
  type FileLines,
  type Line,
} from "../../grammar/lines.ts";
import type { Entry } from "../../server/model/entry.ts";
import type { OpenFile } from "../../server/model/project.ts";
import type { FileCheck } from "../../server/model/result.ts";
import type { Project } from "../../server/rules/check.ts";

/** The entries of a job by reference, each with those of its name in the files that it uses. */
export interface Web {
  /** What each entry of the file itself is written as. */
  readonly texts: ReadonlyMap<string, string>;
  readonly refs: readonly string[];
  /** References from an entry, and to it. */
  readonly to: ReadonlyMap<string, readonly string[]>;
  readonly from: ReadonlyMap<string, readonly string[]>;
  /** The job's, and of the cribs'. */
  readonly openings: readonly string[];
}

export function webOf({ shop, file }: OpenFile): Web {
  const texts = new Map<string, string>();
  for (const { ref, block } of file.entries)
    texts.set(
      ref,
      `${texts.get(ref) ?? ""}${block.lines.map(shownLine).join("\n")}\n`,
    );
  const to = new Map<string, string[]>();
  const from = new Map<string, string[]>();
  const openings: string[] = [];
  const entries = shop.files.flatMap((each) => each.entries);
  for (const entry of entries) {
    if (entry.kind === "job" || entry.kind === "shop") openings.push(entry.ref);
    for (const named of namedBy(entry)) {
      to.set(entry.ref, [...(to.get(entry.ref) ?? []), named]);
      from.set(named, [...(from.get(named) ?? []), entry.ref]);
    }
  }
  return { texts, refs: entries.map(({ ref }) => ref), to, from, openings };
}

/** A line without its comment; whether it is set in counts, and by how much does not. */
function shownLine(line: Line): string {
  return `${isIndented(line) ? " " : ""}${line.body}`;
}

/** Every entry that a reference may mean. */
function namedBy({ refs }: Entry): readonly string[] {
  return refs.flatMap(({ kind, takes, name }) =>
    (kind === undefined ? takes : [kind]).map((each) => `${each} ${name}`),
  );
}

function kindOf(ref: string): string {
  return ref.slice(0, ref.indexOf(" "));
}

/**
 * All that the results of an entry may rest on, itself among them; undefined where that is everything. It knows the trade and not the
 * evaluation: a bore is as its line cuts it or as its press leaves it, a line is for the journals that run in it.
 */
export function restsOn(
  web: Web,
  ref: string,
): ReadonlySet<string> | undefined {
  const own = kindOf(ref);
  if (["job", "shop", "step", "gauge", "concession"].includes(own))
    return undefined;
  const found = new Set([ref, ...web.openings]);
  const naming = (named: string, kind: string): readonly string[] =>
    (web.from.get(named) ?? []).filter((each) => kindOf(each) === kind);
  for (const each of found) {
    const kind = kindOf(each);
    // another line is looked at for its tool alone, not for its other bores
    const isTool = (other: string): boolean =>
      kind !== "line" || each === ref || kindOf(other) !== "bore";
    const next = (web.to.get(each) ?? []).filter(isTool);
    if (kind === "bore") next.push(...naming(each, "line"));
    if (kind === "bush") next.push(...naming(each, "press"));
    if (own === "press" && kind === "bush") next.push(...naming(each, "bore"));
    if ((own === "press" || own === "line") && kind === "bore")
      next.push(...naming(each, "fit"));
    for (const other of next) found.add(other);
  }
  if (own === "line") for (const other of reamersOf(web)) found.add(other);
  return found;
}

/** The reamer of a line is looked for among all that there are. */
function reamersOf({ refs }: Web): readonly string[] {
  return refs.filter((ref) => kindOf(ref) === "reamer");
}

/** Kinds that many entries name and that join none of them to each other. */
const SHARED = ["part", "material", "oil", "gauge", "reamer", "pilot"];

/** All that the findings of an entry may rest on: whatever it is joined to by a reference, in either direction. */
export function joinedTo(web: Web, ref: string): ReadonlySet<string> {
  const found = new Set([ref, ...web.openings]);
  if (kindOf(ref) === "line")
    for (const other of reamersOf(web)) found.add(other);
  for (const each of found) {
    const kind = kindOf(each);
    const near = [
      ...(web.to.get(each) ?? []),
      ...(SHARED.includes(kind) && each !== ref
        ? []
        : (web.from.get(each) ?? [])),
    ];
    // a step comes after others, and is joined to what it cuts: nothing is joined through it
    if ((kind === "step" || kind === "concession") && each !== ref) continue;
    for (const other of near) found.add(other);
  }
  return found;
}

/** References whose text is not what it was. */
export function touched(before: Web, after: Web): ReadonlySet<string> {
  return new Set(
    [...before.texts.keys(), ...after.texts.keys()].filter(
      (ref) => before.texts.get(ref) !== after.texts.get(ref),
    ),
  );
}

/** What is said of each entry, without the lines that it stands on; of a name without what is offered for it. */
export function findingsBy({ findings }: FileCheck): ReadonlySet<string> {
  return new Set(
    findings.map(
      ({ entry, code, message }) =>
        `${entry ?? ""}: ${code}: ${code.startsWith("name-") ? "" : message}`,
    ),
  );
}

/** The results of each entry, by kind and by what they are of. */
export function resultsBy({
  results,
}: FileCheck): ReadonlyMap<string, ReadonlyMap<string, string>> {
  const all = new Map<string, Map<string, string>>();
  for (const result of results) {
    const own = all.get(result.entry) ?? new Map<string, string>();
    own.set(
      [result.kind, result.of, result.case].join(" "),
      JSON.stringify(result),
    );
    all.set(result.entry, own);
  }
  return all;
}

export function opened(project: Project, path: string): OpenFile {
  const open = project.open(path);
  if (open === undefined) throw new Error(`${path} is not there`);
  return open;
}

export function textOf({ lines }: FileLines): string {
  return lines.map((line) => line.text + line.eol).join("");
}

export function wholeLine(line: number): Edit {
  return {
    start: { line, character: 0 },
    end: { line: line + 1, character: 0 },
    text: "",
  };
}

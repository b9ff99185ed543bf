// A project that says what it is told to say: for tests of how the command line shows a check, whatever the model makes of the file.
import type { FileLines } from "../../grammar/lines.ts";
import type { CheckedProject } from "../../server/cli/io.ts";
import type {
  FileCheck,
  Finding,
  Place,
  Result,
} from "../../server/model/result.ts";

export interface FakeWorld {
  /** What a check says of a file, by the end of its path. */
  readonly checks: Readonly<
    Record<string, (path: string, lines: FileLines) => FileCheck>
  >;
  /** The ends of paths that a file uses, beside it, by the end of its own. */
  readonly uses?: Readonly<Record<string, readonly string[]>>;
}

export interface FakeProject extends CheckedProject {
  /** Everything that was asked of it, in order. */
  readonly calls: readonly string[];
}

export function createFakeProject(world: FakeWorld): FakeProject {
  const files = new Map<string, FileLines | null>();
  const calls: string[] = [];
  const nameOf = (path: string): string =>
    path.slice(path.lastIndexOf("/") + 1);
  const usesOf = (path: string): readonly string[] =>
    (world.uses?.[nameOf(path)] ?? []).map(
      (name) => path.slice(0, path.lastIndexOf("/") + 1) + name,
    );
  const reach = (path: string, seen: Set<string>): Set<string> => {
    for (const used of usesOf(path)) {
      if (seen.has(used)) continue;
      seen.add(used);
      reach(used, seen);
    }
    return seen;
  };
  return {
    calls,
    setFile(path, lines) {
      calls.push(`set ${nameOf(path)}${lines === null ? " null" : ""}`);
      files.set(path, lines);
    },
    dropFile(path) {
      calls.push(`drop ${nameOf(path)}`);
      files.delete(path);
    },
    close(path) {
      calls.push(`close ${nameOf(path)}`);
    },
    missingUses: (path) =>
      [...reach(path, new Set())].filter((used) => !files.has(used)),
    restsOn: (path) =>
      [...reach(path, new Set())].map((used) => ({
        path: used,
        isText: (files.get(used) ?? null) !== null,
      })),
    // only comparing and sheets open a record, and they are tested with the real one
    open: () => undefined,
    check(path) {
      calls.push(`check ${nameOf(path)}`);
      const lines = files.get(path);
      if (lines === undefined || lines === null)
        throw new Error(`${path} was never given`);
      return (
        world.checks[nameOf(path)]?.(path, lines) ?? {
          findings: [],
          results: [],
        }
      );
    },
  };
}

/** The place of some words in a line that holds them once. */
export function placeOf(path: string, lines: FileLines, words: string): Place {
  const line = lines.lines.findIndex((each) => each.text.includes(words));
  const start = lines.lines[line]?.text.indexOf(words);
  if (start === undefined) throw new Error(`"${words}" is not in ${path}`);
  return { file: path, line, start, end: start + words.length };
}

export function finding(
  place: Place,
  parts: Partial<Finding> & Pick<Finding, "code" | "level" | "message">,
): Finding {
  return {
    place,
    entry: null,
    related: [],
    fixes: [],
    accepted: null,
    ...parts,
  };
}

export function result(
  parts: Partial<Result> & Pick<Result, "entry" | "kind">,
): Result {
  return {
    of: null,
    case: null,
    low: null,
    nominal: null,
    high: null,
    unit: "m",
    status: "unknown",
    verdict: "none",
    text: "",
    working: [],
    needs: [],
    ...parts,
  };
}

// Two entries of one kind and name, in one file or over a job and the files that it uses; and a second job or shop in a file.
import type { Entry } from "../../model/entry.ts";
import { isOpening } from "../../model/file-entries.ts";
import type { OpenFile } from "../../model/project.ts";
import type { FileDraft } from "../file-rules.ts";
import type { DraftFix } from "../rule.ts";
import { allOf } from "./wording.ts";

export function namesTwice(open: OpenFile): readonly FileDraft[] {
  return [...secondOpenings(open), ...twins(open), ...twinsOfUsed(open)];
}

/** A file is one job or one crib. */
function secondOpenings({ file }: OpenFile): readonly FileDraft[] {
  // spares a look: of one opening nothing comes
  if (file.openings.length < 2) return [];
  const openings = file.entries.flatMap((entry, index) =>
    isOpening(entry) ? [{ entry, index }] : [],
  );
  const first =
    openings.find(({ entry }) => entry.kind === "job") ?? openings[0];
  if (first === undefined) return [];
  const { ref, kind } = first.entry;
  return openings.flatMap(({ entry, index }): readonly FileDraft[] =>
    // of the same name it is a twin
    index === first.index || entry.ref === ref
      ? []
      : [
          {
            entry: index,
            span: entry.nameSpan,
            message: `A file is one job or one shop, and this one is ${ref === "" ? `a ${kind ?? "job"}` : ref} already: write this one in a file of its own, and \`use\` it where it is needed.`,
            related:
              ref === "" ? [] : [{ ref, message: "The file begins here." }],
          },
        ],
  );
}

function twins(open: OpenFile): readonly FileDraft[] {
  const { shop, file } = open;
  // spares a look: where no name is twice, no entry has one that is
  if (shop.twins.size === 0) return [];
  const seen = new Set<string>();
  return file.entries.flatMap((entry, index): readonly FileDraft[] => {
    const { ref } = entry;
    if (!shop.twins.has(ref)) return [];
    if (!seen.has(ref)) {
      seen.add(ref);
      return inUsed(open, entry, index);
    }
    return [
      {
        entry: index,
        span: entry.nameSpan,
        message: `There is a ${ref} already, and only the first is used: give one of them another name.`,
        related: [{ ref, message: `The first ${ref}.` }],
        fixes: [anotherName(open, entry)],
      },
    ];
  });
}

/** Nothing refers to the second of a name, so that another name breaks nothing. */
function anotherName({ shop }: OpenFile, entry: Entry): DraftFix {
  const { kind = "", name = "" } = entry;
  let number = 2;
  while (shop.places.has(`${kind} ${name}-${number}`)) number++;
  return {
    title: `Call this one \`${name}-${number}\``,
    safe: false,
    edits: [{ span: entry.nameSpan, text: `${name}-${number}` }],
  };
}

/** The same name in a file that this one uses. */
function inUsed(
  open: OpenFile,
  entry: Entry,
  index: number,
): readonly FileDraft[] {
  // a crib keeps steps for the routes of the jobs that follow them: a job's step of the name adds to it, or is another
  if (entry.kind === "step") return [];
  const others = open.shop.files
    .slice(1)
    .filter((file) => file.entries.some((each) => each.ref === entry.ref));
  if (others.length === 0) return [];
  const paths = others.map((file) => `\`${shortPath(open.path, file.path)}\``);
  return [
    {
      entry: index,
      span: entry.nameSpan,
      message: `${allOf(paths)} ${paths.length === 1 ? "has" : "have"} a ${entry.ref} too, and only this one is used: give one of them another name.`,
    },
  ];
}

/** Two files that this one uses share names: it is said where the second is used, since each may be right by itself. */
function twinsOfUsed(open: OpenFile): readonly FileDraft[] {
  const { shop, uses } = open;
  if (shop.twins.size === 0 || uses.length < 2) return [];
  const owners = new Map<string, string>();
  const shared = new Map<
    string,
    { readonly refs: string[]; readonly by: string }
  >();
  for (const used of shop.files.slice(1)) {
    if (!uses.some((use) => use.path === used.path)) continue;
    for (const ref of new Set(used.entries.map((entry) => entry.ref))) {
      if (!shop.twins.has(ref)) continue;
      const owner = owners.get(ref);
      if (owner === undefined) owners.set(ref, used.path);
      else {
        const pair = shared.get(used.path) ?? { refs: [], by: owner };
        pair.refs.push(ref);
        shared.set(used.path, pair);
      }
    }
  }
  return uses.flatMap((use): readonly FileDraft[] => {
    const pair = use.path === undefined ? undefined : shared.get(use.path);
    if (pair === undefined) return [];
    shared.delete(use.path ?? "");
    const [first = "", ...rest] = pair.refs;
    const names =
      rest.length === 0 ? first : `${first} and ${rest.length} more`;
    return [
      {
        entry: use.entry,
        span: use.span,
        message: `\`${use.written}\` and \`${shortPath(open.path, pair.by)}\` both have ${names}, and only the first is used: give one of them another name.`,
      },
    ];
  });
}

/** A path as this file would write it, where it lies beside or below; else whole. */
function shortPath(from: string, path: string): string {
  const folder = from.slice(0, from.lastIndexOf("/") + 1);
  return path.startsWith(folder) ? path.slice(folder.length) : path;
}

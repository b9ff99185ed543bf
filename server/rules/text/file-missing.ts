// Files that a record uses and that are not there, lead out of the folder, or use it in their turn.
import { allOf } from "../../model/entry.ts";
import type { OpenFile, Use } from "../../model/project.ts";
import type { FileDraft } from "../file-rules.ts";
import type { DraftFix } from "../rule.ts";
import { nameFrom } from "./opening-missing.ts";

/** `file-missing` */
export function filesMissing(open: OpenFile): readonly FileDraft[] {
  return open.uses.flatMap((use): readonly FileDraft[] => {
    const { state, span, written, path } = use;
    if (state === "outside")
      return [
        {
          entry: entryOf(open, use),
          span,
          message: `\`${written}\` leads out of the folder that these records are in: bring the file into it, and write the path from this file.`,
        },
      ];
    if (state !== "missing") return [];
    const withEnding = /\.thou$/i.test(written)
      ? undefined
      : `"${written.replace(/\.[^./\\]*$/, "")}.thou"`;
    return [
      {
        entry: entryOf(open, use),
        span,
        message: `There is no file \`${written}\`, looked for at ${shownPath(path ?? written)}: the names in it are not known until it is there.`,
        fixes:
          withEnding === undefined
            ? emptyCrib(open, use)
            : [
                {
                  title: `Write ${withEnding}`,
                  safe: false,
                  edits: [{ span, text: withEnding }],
                },
              ],
      },
    ];
  });
}

/** A crib to write into, in the unit of the file that uses it. */
function emptyCrib({ file }: OpenFile, { path, written }: Use): DraftFix[] {
  const { system } = file.context;
  if (path === undefined || system === undefined) return [];
  const eol = file.lines.lines[0]?.eol ?? "\n";
  return [
    {
      title: `Begin \`${written}\` as a crib`,
      safe: false,
      edits: [],
      creates: [
        {
          file: path,
          text: `shop ${nameFrom(path)}${eol}  units ${system}${eol}`,
        },
      ],
    },
  ];
}

/** `use-loop` */
export function useLoops(open: OpenFile): readonly FileDraft[] {
  return open.uses.flatMap((use): readonly FileDraft[] => {
    if (use.state !== "loop") return [];
    const { span, written, path } = use;
    const fix: DraftFix = {
      title: "Make this line a comment",
      safe: path === open.path && isOnlyUse(open, use),
      edits: [{ span: lineStart(open, use), text: "# " }],
    };
    return [
      {
        entry: entryOf(open, use),
        span,
        message:
          path === open.path
            ? "This file uses itself: take the line out."
            : `\`${written}\` uses this file in its turn, and a file can't rest on one that rests on it: take out one of the two.`,
        fixes: isOnlyUse(open, use) ? [fix] : [],
      },
    ];
  });
}

/** The entry of the file that says it. */
function entryOf({ file }: OpenFile, use: Use): number {
  return Math.max(
    0,
    file.entries.findIndex(
      (entry) =>
        entry.ref === use.ref &&
        allOf(entry, "UseFact").some((fact) =>
          fact.value?.some((each) => each.span === use.span),
        ),
    ),
  );
}

function isOnlyUse(open: OpenFile, use: Use): boolean {
  const entry = open.file.entries[entryOf(open, use)];
  const fact =
    entry === undefined
      ? undefined
      : allOf(entry, "UseFact").find(
          (each) => each.span.line === use.span.line,
        );
  return fact?.value?.length === 1;
}

function lineStart(open: OpenFile, use: Use): Use["span"] {
  const line =
    open.file.entries[entryOf(open, use)]?.block.lines[use.span.line];
  const start = line?.indent ?? 0;
  return { line: use.span.line, start, end: start };
}

/** As a person reads it: a URI without its escapes. */
function shownPath(path: string): string {
  try {
    return decodeURIComponent(path.replace(/^file:\/\/(?=\/)/, ""));
  } catch {
    return path;
  }
}

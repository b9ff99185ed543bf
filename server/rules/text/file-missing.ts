// Files that a record uses and that are not there, lead out of the folder, use it in their turn, or are too many.
import { eolOf } from "../../../grammar/lines.ts";
import type { OpenFile } from "../../model/project.ts";
import { MOST_FILES, MOST_LINES_TOGETHER, type Use } from "../../model/uses.ts";
import { isRecordName, RECORD_ENDING } from "../../record-names.ts";
import type { FileDraft } from "../file-rules.ts";
import { commentOut } from "../fixes.ts";
import type { DraftFix } from "../rule.ts";
import { nearestFiles } from "./near.ts";
import { oneOf } from "./wording.ts";
import { isOpenPlace } from "./open-place.ts";
import { nameFrom } from "./opening-missing.ts";

/** `file-missing` */
export function filesMissing(open: OpenFile): readonly FileDraft[] {
  // what is too much is said once: it holds for all that follow
  const beyond = open.uses.find(({ state }) => state === "beyond");
  return open.uses.flatMap((use): readonly FileDraft[] => {
    const { state, span, written, path } = use;
    if (state === "outside")
      return [
        {
          entry: use.entry,
          span,
          message: `\`${written}\` leads out of the folder that these records are in: bring the file into it, and write the path from this file.`,
        },
      ];
    if (use === beyond)
      return [
        {
          entry: use.entry,
          span,
          message: `\`${written}\` leads to more than a record is read with, ${String(MOST_FILES)} files and ${MOST_LINES_TOGETHER.toLocaleString("en-US")} lines: what stands in the rest is not known. Use only the files that this job needs.`,
        },
      ];
    if (state !== "missing") return [];
    const entry = open.file.entries[use.entry];
    if (entry !== undefined && isOpenPlace(entry, span, written))
      return [
        {
          entry: use.entry,
          span,
          message: `\`${written}\` is only a place to fill in: write there the record that this one uses, with its path from this file.`,
        },
      ];
    const looked = `There is no file \`${written}\`, looked for at ${shownPath(path ?? written)}`;
    const near = nearOf(open, use);
    if (0 < near.length)
      return [
        {
          entry: use.entry,
          span,
          message: `${looked}: did you mean ${oneOf(near)}? The names in it are not known until it is found.`,
          fixes: near.map((each) => writeUse(use, each)),
        },
      ];
    return [
      {
        entry: use.entry,
        span,
        message: `${looked}: the names in it are not known until it is there.`,
        fixes: isRecordName(written.toLowerCase())
          ? emptyCrib(open, use)
          : [writeUse(use, written.replace(/\.[^./\\]*$/, "") + RECORD_ENDING)],
      },
    ];
  });
}

function writeUse({ span }: Use, path: string): DraftFix {
  const text = `"${path}"`;
  return { title: `Write ${text}`, safe: false, edits: [{ span, text }] };
}

/** The paths that may have been meant: of records in the folder that it was looked for in, this one apart. */
function nearOf(open: OpenFile, { path, written }: Use): readonly string[] {
  if (path === undefined) return [];
  const end = Math.max(written.lastIndexOf("/"), written.lastIndexOf("\\")) + 1;
  const own =
    folderOf(open.path) === folderOf(path)
      ? unescaped(open.path.slice(folderOf(path).length))
      : undefined;
  const beside = open.besideOf(path).filter((name) => name !== own);
  return (
    nearestFiles(written.slice(end), beside)
      // no path that is written has a quote in it
      .filter((name) => !name.includes('"'))
      .map((name) => written.slice(0, end) + name)
  );
}

/** With the slash at its end. */
function folderOf(path: string): string {
  return path.slice(0, path.lastIndexOf("/") + 1);
}

/** A crib to write into, in the unit of the file that uses it. */
function emptyCrib({ file }: OpenFile, { path, written }: Use): DraftFix[] {
  const { system } = file.context;
  if (path === undefined || system === undefined) return [];
  const eol = eolOf(file.lines);
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
    return [
      {
        entry: use.entry,
        span,
        message:
          path === open.path
            ? "This file uses itself: take the line out."
            : `\`${written}\` uses this file in its turn, and a file can't rest on one that rests on it: take out one of the two.`,
        fixes: use.isAlone
          ? [
              commentOut(
                lineStart(open, use),
                "Make this line a comment",
                path === open.path,
              ),
            ]
          : [],
      },
    ];
  });
}

function lineStart(open: OpenFile, use: Use): Use["span"] {
  const line = open.file.entries[use.entry]?.block.lines[use.span.line];
  const start = line?.indent ?? 0;
  return { line: use.span.line, start, end: start };
}

/** UTF-16 units of a path that are shown: no folder that people work in is as deep. */
const MOST_SHOWN = 250;

/** As a person reads it: a URI without its escapes; of a very long one the beginning and the end. */
function shownPath(path: string): string {
  const whole = unescaped(path);
  if (whole.length <= MOST_SHOWN) return whole;
  // no character is cut in two
  const begin = whole.slice(0, MOST_SHOWN / 2).replace(/\p{Cs}$/u, "");
  const end = whole.slice(-MOST_SHOWN / 2).replace(/^\p{Cs}/u, "");
  return `${begin}…${end}`;
}

function unescaped(path: string): string {
  try {
    return decodeURIComponent(path.replace(/^file:\/\/(?=\/)/, ""));
  } catch {
    return path;
  }
}

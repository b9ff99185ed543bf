// What the two words of `thou compare` mean: a file, a folder, or a state in version control; and the records that each side holds. It judges
// nothing.
import { stat } from "node:fs/promises";
import path from "node:path";
import { readLines, type FileLines } from "../../grammar/lines.ts";
import { openRevision, type Revision } from "../history/revision.ts";
import { readPlainFile } from "../plain-file.ts";
import { isRecordName } from "../record-names.ts";
import { whyNot } from "../why-not.ts";
import {
  findFiles,
  forward,
  isFolder,
  isRecordIn,
  isThere,
  nameFrom,
} from "./find-files.ts";
import { endWithNear } from "./near-file.ts";
import { STANDARD_INPUT, CannotRun, type Io } from "./io.ts";
import { readText } from "./read-text.ts";
import { shown } from "./terminal-text.ts";

/** One of the two states. Paths are absolute, with forward slashes. */
export interface Side {
  /** "HEAD~1 (3f2a…)", "the files as they are", or the names of two files or folders */
  readonly words: string;
  /** The records asked for, by their path. */
  readonly records: readonly string[];
  /** What names are told from: the folder asked for, or that of the file. */
  readonly base: string;
  readonly isFile: boolean;
  /** As it lies on the disk, and in no revision. */
  readonly isDisk: boolean;
  /** Undefined where there is no such file, or none that can be read: then `problems` says why. */
  read(file: string): Promise<FileLines | undefined>;
  readonly problems: Set<string>;
  /** The sentence for what a revision does not have. */
  readonly notThere?: string | undefined;
}

/** What was asked for, before it is looked at. */
interface Asked {
  readonly revision: Revision | undefined;
  /** Absolute; undefined where only a revision was named. */
  readonly at: string | undefined;
}

/** @param later undefined for the files as they are */
export async function sidesOf(
  earlier: string,
  later: string | undefined,
  { cwd, env }: Pick<Io, "cwd" | "env">,
): Promise<readonly [Side, Side]> {
  const one = await askedFor(earlier, cwd, env);
  const two =
    later === undefined
      ? { revision: undefined, at: undefined }
      : await askedFor(later, cwd, env, one.revision);
  if (later === undefined && one.revision === undefined)
    throw new CannotRun(
      `${shown(earlier)} is compared with what? Name a second file or folder, or a state in version control first: "thou compare HEAD ${shown(earlier)}".`,
    );
  // a side that names no place is about the other's
  const at = one.at ?? two.at ?? cwd;
  const sides = [
    await sideOf({ ...one, at: one.at ?? at }, cwd),
    await sideOf({ ...two, at: two.at ?? at }, cwd),
  ] as const;
  const isFound = sides.some(({ records }) => 0 < records.length);
  for (const [side, { at: named }] of [
    [sides[0], one],
    [sides[1], two],
  ] as const)
    // of a place that the other side names and has, it is what has come or gone since
    if (side.notThere !== undefined && !(isFound && named === undefined))
      side.problems.add(side.notThere);
  const isDisk = one.revision === undefined && two.revision === undefined;
  if (!isDisk || one.at === undefined || two.at === undefined) return sides;
  // where both are as they are, their names tell them apart
  return [
    { ...sides[0], words: nameFrom(cwd, one.at) || "." },
    { ...sides[1], words: nameFrom(cwd, two.at) || "." },
  ];
}

/**
 * A path that is there goes before a revision of that name; `REV:PATH` is a path at a revision.
 * @param before the earlier state: what it has and the disk has no more is gone, and no slip of the pen
 */
async function askedFor(
  word: string,
  cwd: string,
  env: Io["env"],
  before?: Revision,
): Promise<Asked> {
  if (word === "")
    throw new CannotRun(
      "an empty word names no state to compare: name a file, a folder, or a state in version control such as HEAD.",
    );
  if (word === STANDARD_INPUT)
    throw new CannotRun(
      "- would be standard input, which is not compared: keep it as a file, and name that.",
    );
  const at = path.resolve(cwd, word);
  // a repository without files of its own has a file of that name
  if (word !== "HEAD" && (await isThere(at)))
    return { revision: undefined, at };
  const colon = word.indexOf(":");
  const name = 0 < colon ? word.slice(0, colon) : word;
  const opened = await openRevision(cwd, name, env);
  if (!opened.ok) {
    if (before !== undefined && 0 < (await before.list(at)).length)
      return { revision: undefined, at };
    const end =
      colon <= 0 ? await endWithNear(at, (file) => nameFrom(cwd, file)) : ".";
    throw new CannotRun(
      colon <= 0 && isRecordName(word)
        ? `${shown(word)} cannot be read: ${await whyNotThere(at)}${end}`
        : `${shown(word)} is no file or folder here, and ${opened.because}${end}`,
    );
  }
  return {
    revision: opened.revision,
    at: 0 < colon ? path.resolve(cwd, word.slice(colon + 1) || ".") : undefined,
  };
}

/** Of a path that can't be looked at. */
async function whyNotThere(at: string): Promise<string> {
  return stat(at).then(() => "it is there only now", whyNot);
}

async function sideOf(
  { revision, at }: Asked & { readonly at: string },
  cwd: string,
): Promise<Side> {
  return revision === undefined
    ? diskSide(at, cwd)
    : revisionSide(revision, at, cwd);
}

async function diskSide(at: string, cwd: string): Promise<Side> {
  const isHere = await isThere(at);
  const found = isHere
    ? await findFiles([at], cwd)
    : { files: [], problems: [] };
  const records = [...found.files].map((file) => file.path);
  const problems = new Set(found.problems);
  // what is gone was what its name says
  const isOfFolder = isHere ? await isFolder(at) : !isRecordName(at);
  return {
    words: "the files as they are",
    records,
    base: forward(isOfFolder ? at : path.dirname(at)),
    isFile: !isOfFolder,
    isDisk: true,
    problems,
    async read(file) {
      try {
        const bytes = await readPlainFile(file);
        return bytes === undefined
          ? undefined
          : linesOf(bytes, nameFrom(cwd, file), problems);
      } catch (error) {
        // a crib that is missing is said in the record that uses it
        if (records.includes(file))
          problems.add(
            `${shown(nameFrom(cwd, file))} cannot be read: ${whyNot(error)}.`,
          );
        return undefined;
      }
    },
  };
}

async function revisionSide(
  revision: Revision,
  at: string,
  cwd: string,
): Promise<Side> {
  const problems = new Set<string>();
  const name = nameFrom(cwd, at) || ".";
  const inside = await revision.list(at);
  const isFile = inside.length === 1 && inside[0] === forward(at);
  return {
    words: revision.words,
    records: inside.filter((file) => isFile || isRecordIn(at, file)),
    base: forward(isFile || isRecordName(at) ? path.dirname(at) : at),
    isFile: isFile || (inside.length === 0 && isRecordName(at)),
    isDisk: false,
    problems,
    notThere:
      inside.length === 0
        ? `${shown(name)} is not there at ${shown(revision.words)}: nothing is compared with it.`
        : undefined,
    async read(file) {
      const bytes = await revision.read(file);
      return bytes === undefined
        ? undefined
        : linesOf(
            bytes,
            `${nameFrom(cwd, file)} at ${revision.words}`,
            problems,
          );
    },
  };
}

function linesOf(
  bytes: Uint8Array,
  name: string,
  problems: Set<string>,
): FileLines | undefined {
  const text = readText(bytes, false);
  if (text.ok) return readLines(text.text);
  problems.add(`${shown(name)} cannot be read: ${text.because}.`);
  return undefined;
}

// Which files a check is about: those that were asked for, or only those of them that have changed and those that use one that has; and where
// their text is read from. It judges nothing.
import path from "node:path";
import { readLines } from "../../grammar/lines.ts";
import {
  changesSince,
  stagedChanges,
  type Changed,
} from "../history/changed.ts";
import { isRecordName } from "../record-names.ts";
import {
  findFiles,
  forward,
  inByteOrder,
  isRecordIn,
  isThere,
  nameFrom,
  type FoundFile,
  type FoundFiles,
} from "./find-files.ts";
import { STANDARD_INPUT, CannotRun, type Context } from "./io.ts";
import { plainFromDisk, type ReadBytes } from "./load-files.ts";
import { createReadOnce } from "./read-once.ts";
import { readText } from "./read-text.ts";
import { recordOnStandardInput, refuseAs } from "./standard-input.ts";
import { shown } from "./terminal-text.ts";

export interface ScopeOptions {
  /** Where the record on standard input belongs. */
  readonly as?: string;
  readonly staged?: true;
  readonly changedSince?: string;
}

export interface Scope {
  readonly files: FoundFiles;
  /** Sentences about what could not be looked at. */
  readonly problems: readonly string[];
  /** Undefined for the disk. */
  readonly read: ReadBytes | undefined;
  /** The sentence for when there is no file, and nothing wrong with what was asked. */
  readonly noneSaid: string;
  /** Lets go of what was put aside; nothing is read after it. */
  readonly close: () => void;
}

export async function scopeOf(
  paths: readonly string[],
  options: ScopeOptions,
  context: Context,
): Promise<Scope> {
  const { cwd, env } = context.io;
  if (paths.includes(STANDARD_INPUT))
    return standardInput(paths, options, context.io);
  refuseAs(options.as);
  if (options.staged !== true && options.changedSince === undefined) {
    const found = await findFiles(paths, cwd);
    const where =
      paths.length === 0 ? "in this folder" : `in ${shown(paths.join(", "))}`;
    return {
      ...found,
      read: undefined,
      close: () => undefined,
      noneSaid: `there is no .thou file ${where}: "thou explain job" says how a record begins.`,
    };
  }
  const opened =
    options.changedSince === undefined
      ? await stagedChanges(cwd, env)
      : await changesSince(cwd, options.changedSince, env);
  if (!opened.ok)
    throw new CannotRun(
      `what has changed cannot be told: ${shown(opened.because)}.`,
    );
  return changedScope(paths, opened.changed, context);
}

async function standardInput(
  paths: readonly string[],
  options: ScopeOptions,
  io: Context["io"],
): Promise<Scope> {
  if (1 < paths.length)
    throw new CannotRun(
      "Standard input (-) cannot be checked together with files; give it alone.",
    );
  if (options.staged === true || options.changedSince !== undefined)
    throw new CannotRun(
      "Standard input (-) has no state in version control; leave --staged and --changed-since off.",
    );
  const { file, read } = await recordOnStandardInput(options.as, io);
  return {
    files: [file],
    problems: [],
    read,
    noneSaid: "",
    close: () => undefined,
  };
}

async function changedScope(
  paths: readonly string[],
  changed: Changed,
  context: Context,
): Promise<Scope> {
  // the disk gives a file as often as it is asked; each that version control gives is a process
  const once =
    changed.read === undefined ? undefined : createReadOnce(changed.read);
  const close = (): void => once?.close();
  try {
    const found = await filesOf(
      paths,
      changed,
      once?.read ?? plainFromDisk,
      context,
    );
    return {
      ...found,
      read: once?.read,
      noneSaid: `no record is among ${shown(changed.words)}, and none uses one that is.`,
      close,
    };
  } catch (error) {
    close();
    throw error;
  }
}

async function filesOf(
  paths: readonly string[],
  changed: Changed,
  read: ReadBytes,
  { io: { cwd }, parts }: Context,
): Promise<Pick<Scope, "files" | "problems">> {
  const asked = (paths.length === 0 ? ["."] : paths).map((each) => ({
    word: each,
    at: forward(path.resolve(cwd, each)),
  }));
  const wanted = (file: string): boolean =>
    asked.some(({ at }) => file === at || isRecordIn(at, file));
  const users = await usersOf(changed, read, parts);
  const files: FoundFile[] = [];
  for (const file of new Set([...changed.files, ...users]))
    // what is gone is in the findings of those that use it; those that do were read
    if (wanted(file) && (users.has(file) || (await read(file)) !== undefined))
      files.push({ path: file, name: nameFrom(cwd, file) });
  const problems = [
    ...changed.unsettled
      .filter(wanted)
      .map(
        (file) =>
          `${shown(nameFrom(cwd, file))} is in the middle of a merge: settle it and stage it, then check again.`,
      ),
    ...(await Promise.all(
      asked.map(async ({ word, at }) =>
        (await isThere(at)) || changed.files.some((file) => isBelow(file, at))
          ? []
          : [`${shown(word)} cannot be read: there is no such file or folder.`],
      ),
    ).then((each) => each.flat())),
  ];
  return {
    files: inByteOrder(files, (each) => each.name),
    problems,
  };
}

/** The records that use what has changed, however far: where a text names none of its files, the record need not be read. */
async function usersOf(
  changed: Changed,
  read: ReadBytes,
  parts: Context["parts"],
): Promise<ReadonlySet<string>> {
  const project = parts.createProject();
  const users = new Set<string>();
  const usesOf = new Map<string, readonly string[]>();
  for (let now = changed.files; 0 < now.length;) {
    const names = [...new Set(now.map((file) => path.posix.basename(file)))];
    const next: string[] = [];
    for (const file of await changed.mentioning(names)) {
      if (!isRecordName(file) || users.has(file)) continue;
      const uses = usesOf.get(file) ?? (await usesIn(file, read, project));
      if (uses.some((use) => now.some((each) => isBelow(use, each)))) {
        usesOf.delete(file);
        users.add(file);
        next.push(file);
      } else usesOf.set(file, uses);
    }
    now = next;
  }
  return users;
}

async function usesIn(
  file: string,
  read: ReadBytes,
  project: ReturnType<Context["parts"]["createProject"]>,
): Promise<readonly string[]> {
  const bytes = await read(file);
  const text = bytes === undefined ? undefined : readText(bytes, false);
  if (text?.ok !== true) return [];
  project.setFile(file, readLines(text.text));
  const uses = project.open(file)?.uses.flatMap((use) => use.path ?? []) ?? [];
  project.dropFile(file);
  return uses;
}

function isBelow(file: string, folder: string): boolean {
  return file === folder || file.startsWith(`${folder.replace(/\/$/u, "")}/`);
}

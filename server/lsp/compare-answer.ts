// The answer to `thou/compare`: a record as it stands in the editor, and as the last commit has it. What has changed is server/compare's to
// say, and what a commit holds is the host's; here the two are brought together, and what stands in the way is said.
import type { CancellationToken } from "vscode-languageserver";
import { compareRecords } from "../compare/changes.ts";
import { comparisonPage } from "../compare/page.ts";
import type { OpenFile } from "../model/project.ts";
import type { Compared } from "../protocol/compare.ts";
import { RECORD_ENDING } from "../record-names.ts";
import { pastRecord } from "./past-record.ts";
import { parentOf, pathOf } from "./paths.ts";
import { member } from "./settings.ts";
import { nameBeside } from "./sheet-answer.ts";

/** The last commit, as the host reads it; addresses are URIs. */
export interface LastCommit {
  readonly words: string;
  readonly notes: readonly string[];
  list(ending: string): Promise<readonly string[]>;
  read(uri: string): Promise<string | undefined>;
}

/** How a host opens it; `because` ends a sentence. */
export type OpenLastCommit = (
  uri: string,
) => Promise<
  | { readonly ok: true; readonly commit: LastCommit }
  | { readonly ok: false; readonly because: string }
>;

export interface CompareSources {
  readonly open: (
    uri: string,
    token: CancellationToken,
  ) => Promise<OpenFile | undefined>;
  /** Whether a file is there now. */
  readonly isThere: (uri: string) => Promise<boolean>;
  /** Undefined where there is no git to run, as in a browser. */
  readonly lastCommit: OpenLastCommit | undefined;
}

export async function compareAnswer(
  params: unknown,
  token: CancellationToken,
  sources: CompareSources,
): Promise<Compared> {
  const uri = member(params, "uri");
  const link = member(params, "link");
  if (typeof uri !== "string") return not("No record was named.");
  if (uri.startsWith("untitled:"))
    return not(
      "This record was never saved, so no commit has it. Save it and commit it; what changes after that can be compared.",
    );
  if (sources.lastCommit === undefined || !uri.startsWith("file:"))
    return not(
      'A record is compared with its last commit by git, and there is none where this record lies. Open a clone of the repository on a machine with git, or run "thou compare HEAD" in it.',
    );
  if (member(params, "isTrusted") !== true)
    return not(
      "This folder is not trusted, so nothing was compared: comparing runs git, and the settings of a repository can name programs that git runs.",
    );
  const now = await sources.open(uri, token);
  if (now === undefined)
    return not(
      "The record is not there any more, so there is nothing to compare.",
    );
  try {
    const opened = await sources.lastCommit(uri);
    if (!opened.ok) return not(`Nothing to compare with: ${opened.because}.`);
    return await compared(now, opened.commit, sources, {
      link: typeof link === "string" ? link : undefined,
    });
  } catch (error) {
    // a commit that lacks what it should have says so in a whole sentence
    if (error instanceof Error && error.name === "HistoryFault")
      return not(error.message);
    throw error;
  }
}

async function compared(
  now: OpenFile,
  commit: LastCommit,
  { isThere }: CompareSources,
  { link }: { readonly link: string | undefined },
): Promise<Compared> {
  const name = nameBeside(now.path, now.path);
  const found = await pastRecord(now.path, (each) => commit.read(each));
  const before = found ?? (await renamedTo(now, commit, isThere));
  if (before === undefined)
    return not(
      `${name} is not in the last commit, ${commit.words}: it is new, or both its name and that of its job have changed since. Commit it; what changes after that can be compared.`,
    );
  return {
    state: "compared",
    markdown: comparisonPage({
      name,
      between: commit.words,
      notes: commit.notes,
      movedFrom:
        before === found ? undefined : nameBeside(now.path, before.path),
      changes: compareRecords(before, now),
      lineOf(entry) {
        const at = now.shop.places.get(entry);
        return at?.file === 0 ? now.file.lines.starts[at.index] : undefined;
      },
      link,
    }),
  };
}

/** More records than this that went since the commit are not looked through. */
const MOST_GONE = 50;

/** The one record that went since the commit and has the job of this one; those beside it come first. */
async function renamedTo(
  now: OpenFile,
  commit: LastCommit,
  isThere: CompareSources["isThere"],
): Promise<OpenFile | undefined> {
  const job = jobOf(now);
  if (job === undefined) return undefined;
  const gone: string[] = [];
  for (const uri of await commit.list(RECORD_ENDING))
    if (!(await isThere(uri))) gone.push(pathOf(uri));
  const folder = parentOf(now.path);
  const nearest = [
    ...gone.filter((path) => parentOf(path) === folder),
    ...gone.filter((path) => parentOf(path) !== folder),
  ].slice(0, MOST_GONE);
  const same: OpenFile[] = [];
  for (const path of nearest) {
    const open = await pastRecord(path, (each) => commit.read(each));
    if (open !== undefined && jobOf(open) === job) same.push(open);
  }
  return same.length === 1 ? same[0] : undefined;
}

function jobOf({ file }: OpenFile): string | undefined {
  return file.entries.find(({ kind }) => kind === "job" || kind === "shop")
    ?.ref;
}

function not(because: string): Compared {
  return { state: "not", because };
}

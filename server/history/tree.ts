// Files as version control keeps them, of a commit or as they are staged: links and the repositories within a repository are followed. What
// lies outside has no history and is read as it lies.
import path from "node:path";
import { readPlainFile } from "../plain-file.ts";
import { faultOf, git, withoutRepository, type Env } from "./git.ts";
import type { Repository } from "./repository.ts";

/** What stands at a name. */
export interface Kept {
  readonly mode: string;
  readonly id: string;
}

const LINK = "120000";
const REPOSITORY = "160000";
/** More than any sound chain of links has. */
const MOST_LINKS = 20;

/**
 * The bytes of a file; undefined where it is not there, or is no plain file.
 * @param look what stands at each of the names, those that are there
 * @param words of the state, "HEAD (3f2a1b0c9d8e)"
 */
export async function readKept(
  file: string,
  repository: Repository,
  look: (names: readonly string[]) => Promise<ReadonlyMap<string, Kept>>,
  words: string,
  env: Env,
): Promise<Uint8Array | undefined> {
  let name = repository.nameOf(file);
  for (let links = 0; links <= MOST_LINKS; links++) {
    if (name === undefined) return readOutside(file);
    if (name === "") return undefined;
    const along = prefixesOf(name);
    const found = await look(along);
    // of a name and the folders above it one at most is a link or a repository
    const at = along.find((each) => {
      const mode = found.get(each)?.mode;
      return mode === LINK || mode === REPOSITORY || each === name;
    });
    const kept = at === undefined ? undefined : found.get(at);
    if (at === undefined || kept === undefined) return undefined;
    const rest = name.slice(at.length + 1);
    if (kept.mode === REPOSITORY)
      return rest === ""
        ? undefined
        : readWithin(path.join(repository.root, at), `${kept.id}:${rest}`, env);
    if (kept.mode !== LINK && !kept.mode.startsWith("100")) return undefined;
    const blob = await repository.git(["cat-file", "blob", kept.id]);
    if (!blob.ok) throw faultOf(blob, `${name} at ${words}`);
    if (kept.mode !== LINK) return blob.out;
    file = path.posix.join(targetOf(at, blob.out, repository), rest);
    name = repository.nameOf(file);
  }
  return undefined;
}

/** Where a link leads, as an absolute path. @param written what it holds */
function targetOf(
  link: string,
  written: Uint8Array,
  { fileOf }: Repository,
): string {
  const target = new TextDecoder().decode(written);
  return path.posix.isAbsolute(target)
    ? target
    : fileOf(path.posix.join(path.posix.dirname(link), target));
}

/** Names without the links that lead to another of them: a file goes by its own name. */
export async function withoutDoubles(
  found: ReadonlyMap<string, Kept>,
  repository: Repository,
): Promise<readonly string[]> {
  const names: string[] = [];
  for (const [name, { mode, id }] of found) {
    const blob =
      mode === LINK
        ? await repository.git(["cat-file", "blob", id])
        : undefined;
    const target =
      blob?.ok === true
        ? repository.nameOf(targetOf(name, blob.out, repository))
        : undefined;
    if (target === undefined || !found.has(target)) names.push(name);
  }
  return names;
}

/** "a", "a/b", "a/b/c" of "a/b/c" */
function prefixesOf(name: string): readonly string[] {
  const parts = name.split("/");
  return parts.map((_, index) => parts.slice(0, index + 1).join("/"));
}

/** Of a repository that is not checked out there is nothing to read. */
async function readWithin(
  folder: string,
  object: string,
  env: Env,
): Promise<Uint8Array | undefined> {
  const answer = await git(
    folder,
    ["cat-file", "blob", object],
    withoutRepository(env),
  );
  return answer.ok ? answer.out : undefined;
}

async function readOutside(file: string): Promise<Uint8Array | undefined> {
  try {
    return await readPlainFile(file);
  } catch {
    return undefined;
  }
}

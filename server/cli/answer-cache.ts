// Answers of earlier checks, kept in a folder: one file for each record, which the next answer takes the place of. It keeps and gives; what an
// answer rests on, and whether that is still so, is evaluate-record.ts's to ask.
//
// An answer is never taken on trust: a file that is cut short, changed, of another tool or of another version counts as not there. Nothing
// that goes wrong here is more than work done once more.
import { createHash, randomUUID } from "node:crypto";
import {
  readdir,
  readFile,
  rename,
  rm,
  stat,
  writeFile,
} from "node:fs/promises";
import path from "node:path";
import { gunzipSync, gzipSync } from "node:zlib";
import { makeFolder } from "../make-folder.ts";
import { whyNot } from "../why-not.ts";
import { hashOf } from "./hashes.ts";
import type { CheckedFile } from "./report.ts";
import type { RestsOn } from "./rests-on.ts";
import { shown } from "./terminal-text.ts";

/** What is kept of one record. */
export interface KeptAnswer {
  /** SHA-256 of the record's bytes. */
  readonly content: string;
  readonly uses: readonly RestsOn[];
  readonly check: CheckedFile["check"];
  readonly lineTexts: CheckedFile["lineTexts"];
  readonly isEmpty: CheckedFile["isEmpty"];
}

export interface AnswerCache {
  /** Undefined where none is kept that can be relied on. */
  get(record: string): Promise<KeptAnswer | undefined>;
  put(record: string, answer: KeptAnswer): Promise<void>;
}

export interface CacheOptions {
  /** Absolute. */
  readonly folder: string;
  /** Tells one build of the tool from another: what another worked out is not taken. */
  readonly build: string;
}

/** Raised when what is kept gets another form. */
const FORM = 4;
/** It says whose folder it is. */
const MARK = "thou-cache.json";
const ANSWERS = "answers";
const WRITING = "writing";
/** Bytes: an answer past this is worked out each time. */
const MOST = 32 * 1024 * 1024;
/** Milliseconds after which what was being written is a left-over of a check that was killed. */
const LEFT_OVER = 3_600_000;
const HASH_BYTES = 32;

/** Makes the folder where there is none. Gives the sentence why it cannot be used, undefined where it can. @param name as the user knows it */
export async function prepareCache(
  folder: string,
  name: string,
): Promise<string | undefined> {
  try {
    await makeFolder(folder);
    const names = await readdir(folder);
    const own = [MARK, ANSWERS, WRITING];
    // another check may be making it at this moment
    if (!names.includes(MARK) && names.some((each) => !own.includes(each)))
      return `${shown(name)} holds other files and no answers of thou check, and is left alone: name a new or an empty folder for --cache.`;
    await makeFolder(path.join(folder, ANSWERS));
    await makeFolder(path.join(folder, WRITING));
    await writeFile(
      path.join(folder, MARK),
      `${JSON.stringify({ thou: "answers of thou check; the folder can be removed at any time" })}\n`,
    );
    await clearLeftOvers(path.join(folder, WRITING));
    return undefined;
  } catch (error) {
    return `answers cannot be kept in ${shown(name)}: ${whyNot(error)}. The check does without.`;
  }
}

async function clearLeftOvers(folder: string): Promise<void> {
  for (const name of await readdir(folder)) {
    const at = path.join(folder, name);
    const since = await stat(at).then(
      ({ mtimeMs }) => mtimeMs,
      () => Infinity,
    );
    if (since + LEFT_OVER < Date.now()) await rm(at, { force: true });
  }
}

/** @param tell is told at most once, where an answer can't be written */
export function openCache(
  { folder, build }: CacheOptions,
  tell: (sentence: string) => void,
): AnswerCache {
  let isWritable = true;
  const made = new Set<string>();
  const fileOf = (record: string): string => {
    const hash = hashOf(record);
    return path.join(folder, ANSWERS, hash.slice(0, 2), hash.slice(2));
  };
  return {
    async get(record) {
      const kept = await keptIn(fileOf(record));
      return kept?.form === FORM &&
        kept.build === build &&
        kept.record === record &&
        isAnswer(kept)
        ? kept
        : undefined;
    },
    async put(record, { content, uses, check, lineTexts, isEmpty }) {
      if (!isWritable) return;
      const kept: Kept = {
        form: FORM,
        build,
        record,
        content,
        uses,
        check,
        lineTexts,
        isEmpty,
      };
      const text = Buffer.from(JSON.stringify(kept));
      if (MOST < text.length) return;
      const body = gzipSync(text, { level: 1 });
      const at = fileOf(record);
      const writing = path.join(folder, WRITING, randomUUID());
      try {
        if (!made.has(path.dirname(at))) await makeFolder(path.dirname(at));
        made.add(path.dirname(at));
        await writeFile(writing, Buffer.concat([digestOf(body), body]), {
          flag: "wx",
        });
        // in one go: whoever reads it meanwhile has the former answer or this one, whole
        await rename(writing, at);
      } catch (error) {
        isWritable = false;
        await rm(writing, { force: true }).catch(() => undefined);
        tell(
          `answers cannot be kept for the next check: ${whyNot(error)}. This check is not affected.`,
        );
      }
    },
  };
}

interface Kept extends KeptAnswer {
  readonly form: number;
  readonly build: string;
  readonly record: string;
}

/** What is kept, if its bytes have the hash that stands before them; undefined where they have not, or where there is nothing. */
async function keptIn(at: string): Promise<Partial<Kept> | undefined> {
  try {
    const what = await stat(at);
    if (!what.isFile() || MOST < what.size) return undefined;
    const bytes = await readFile(at);
    const body = bytes.subarray(HASH_BYTES);
    if (!bytes.subarray(0, HASH_BYTES).equals(digestOf(body))) return undefined;
    const text = gunzipSync(body, { maxOutputLength: MOST }).toString();
    const kept: unknown = JSON.parse(text);
    return typeof kept === "object" && kept !== null ? kept : undefined;
  } catch {
    return undefined;
  }
}

function isAnswer(kept: Partial<Kept>): kept is Kept {
  return (
    typeof kept.content === "string" &&
    Array.isArray(kept.uses) &&
    Array.isArray(kept.check?.findings) &&
    Array.isArray(kept.check.results) &&
    typeof kept.lineTexts === "object" &&
    typeof kept.isEmpty === "boolean"
  );
}

function digestOf(bytes: Uint8Array): Buffer {
  return createHash("sha256").update(bytes).digest();
}

// One record, from its file to what a check says of it: the one way that all commands over many records take. An answer that is kept is taken
// where nothing that it rests on has changed.
import { isEmpty, type FileLines } from "../../grammar/lines.ts";
import { whyNot } from "../why-not.ts";
import type { AnswerCache } from "./answer-cache.ts";
import { type FoundFile } from "./find-files.ts";
import { createFreshNames } from "./fresh-names.ts";
import { createHashes } from "./hashes.ts";
import type { CheckedProject } from "./io.ts";
import {
  createLoader,
  noneBeside,
  type Beside,
  type ReadBytes,
} from "./load-files.ts";
import { recordsBeside } from "./near-file.ts";
import type { CheckedFile } from "./report.ts";
import { areSame, restsOn } from "./rests-on.ts";
import { shown } from "./terminal-text.ts";

export interface Evaluator {
  /** Reads a record with all that it uses, and checks it; undefined where it can't be: the sentence has then gone to `tell`. */
  evaluate(file: FoundFile): Promise<CheckedFile | undefined>;
  /** Lets go of a record that no other uses, so that memory stays flat. */
  release(file: FoundFile): void;
  /** Files that others used and that are there, those left out that an answer named before. */
  newlyUsed(): readonly string[];
}

/** @param from the state that files are read in; the disk where none is given */
export function createEvaluator(
  project: CheckedProject,
  cwd: string,
  tell: (sentence: string) => void,
  from?: ReadBytes,
  beside?: Beside,
): Evaluator {
  const loader = createLoader(project, cwd, tell, from, beside);
  const judge = (
    path: string,
    name: string,
  ): CheckedFile["check"] | undefined => {
    try {
      return project.check(path);
    } catch (error) {
      tell(
        `${shown(name)} could not be checked, by a fault of thou itself: ${shown(String(error))}. Please report it with the file.`,
      );
      return undefined;
    }
  };
  return {
    async evaluate(file) {
      const lines = await loader.load(file);
      const check =
        lines === undefined ? undefined : judge(file.path, file.name);
      return lines === undefined || check === undefined
        ? undefined
        : {
            ...file,
            lineTexts: textsOf(lines, file.path, check),
            check,
            isEmpty: isEmpty(lines),
          };
    },
    release(file) {
      loader.release(file);
    },
    newlyUsed: () => loader.newlyUsed(),
  };
}

/** The same, with answers taken from a cache and kept in it. */
export function createCachedEvaluator(
  project: CheckedProject,
  cwd: string,
  tell: (sentence: string) => void,
  from: ReadBytes | undefined,
  cache: AnswerCache,
): Evaluator {
  const hashes = createHashes(from);
  const beside = from === undefined ? recordsBeside : noneBeside;
  const evaluator = createEvaluator(project, cwd, tell, hashes.read, beside);
  const used = createFreshNames();
  return {
    async evaluate(file) {
      let content: string | null;
      try {
        content = await hashes.take(file.path);
      } catch (error) {
        tell(`${shown(file.name)} cannot be read: ${whyNot(error)}.`);
        return undefined;
      }
      const kept = await cache.get(file.path);
      if (
        kept?.content === content &&
        (await areSame(kept.uses, hashes, beside))
      ) {
        for (const { path, content: there } of kept.uses)
          if (there !== null) used.add(path);
        const { lineTexts, check, isEmpty } = kept;
        return { ...file, lineTexts, check, isEmpty };
      }
      const checked = await evaluator.evaluate(file);
      const uses = await restsOn(file.path, project, hashes, beside);
      if (
        checked !== undefined &&
        content !== null &&
        // it was read again for another record, and had changed
        (hashes.taken(file.path) ?? content) === content
      )
        await cache.put(file.path, {
          content,
          uses,
          lineTexts: checked.lineTexts,
          check: checked.check,
          isEmpty: checked.isEmpty,
        });
      return checked;
    },
    release(file) {
      evaluator.release(file);
    },
    newlyUsed() {
      for (const path of evaluator.newlyUsed()) used.add(path);
      return used.take();
    },
  };
}

function textsOf(
  { lines }: FileLines,
  path: string,
  { findings }: CheckedFile["check"],
): CheckedFile["lineTexts"] {
  const texts: Record<number, string> = {};
  for (const { place } of findings) {
    const text = lines[place.line]?.text;
    if (place.file === path && text !== undefined) texts[place.line] = text;
  }
  return texts;
}

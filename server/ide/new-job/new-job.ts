// A new job from its answers: the next question, or the files. It reads and writes nothing itself.
import { readLines } from "../../../grammar/lines.ts";
import { readFile } from "../../model/file-entries.ts";
import type { Answer, NewJobAnswer } from "../../protocol/guide.ts";
import { interviewed } from "../interview.ts";
import { newJobQuestions } from "./questions.ts";
import { writeNewJob } from "./writer.ts";

export interface NewJobFacts {
  readonly answers: readonly Answer[];
  /** The names of the files in the folder; null where there is no folder. */
  readonly names: readonly string[] | null;
  /** The text of the folder's crib; null where it has none, or it can't be read. */
  readonly crib: string | null;
  /** ISO 8601 */
  readonly today: string;
}

export function newJob({
  answers,
  names,
  crib,
  today,
}: NewJobFacts): NewJobAnswer {
  const cribName =
    names?.find((each) => each.toLowerCase() === "crib.thou") ?? null;
  const system =
    crib === null
      ? undefined
      : readFile("crib.thou", readLines(crib), undefined).context.system;
  const known = { names: names ?? [], hasCrib: cribName !== null, system };
  const found = interviewed(() => newJobQuestions(known), answers);
  return "value" in found
    ? writeNewJob(found.value, { names, crib: cribName, today })
    : found;
}

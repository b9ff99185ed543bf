// A record as a past state has it, with all that it uses. Which states there are, and what they hold, is the host's.
import { readLines } from "../../grammar/lines.ts";
import { giveUses } from "../model/give-uses.ts";
import type { OpenFile } from "../model/project.ts";
import { createProject } from "../rules/check.ts";

/** Undefined where the record is not in the state. @param read undefined where a file is not in it */
export async function pastRecord(
  path: string,
  read: (path: string) => Promise<string | undefined>,
): Promise<OpenFile | undefined> {
  const project = createProject({ root: "" });
  const give = async (each: string): Promise<void> => {
    const text = await read(each);
    project.setFile(each, text === undefined ? null : readLines(text));
  };
  await give(path);
  await giveUses(project, path, give);
  return project.open(path);
}

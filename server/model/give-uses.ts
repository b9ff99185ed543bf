// All that a record uses, brought to a project. Where files come from is whoever gives them's.

/** Gives a project all that a file uses, however far. @param give gives it one file, `null` where it is not there */
export async function giveUses(
  project: { missingUses(path: string): readonly string[] },
  path: string,
  give: (used: string) => Promise<void> | void,
): Promise<void> {
  for (
    let missing = project.missingUses(path);
    0 < missing.length;
    missing = project.missingUses(path)
  )
    for (const each of missing) await give(each);
}

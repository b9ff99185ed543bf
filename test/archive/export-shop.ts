// An export without the command line: every record of a folder into an archive, over a disk that the test gives.
import { readdir, readFile } from "node:fs/promises";
import path from "node:path";
import { readLines } from "../../grammar/lines.ts";
import {
  openArchive,
  type ArchiveOptions,
  type Committed,
} from "../../server/archive/archive.ts";
import type { Disk } from "../../server/archive/disk.ts";
import { rowsOf, yearOf } from "../../server/archive/rows.ts";
import { createProject } from "../../server/rules/check.ts";

/** Takes all records anew, and out those that are gone. The content of a file stands for its hash. */
export async function exportShop(
  cwd: string,
  out: string,
  disk: Disk,
  more: Pick<ArchiveOptions, "full" | "holds"> = {},
): Promise<Committed> {
  const archive = await openArchive({
    folder: out,
    name: "archive",
    cwd,
    version: "test",
    disk,
    ...more,
  });
  try {
    const project = createProject({ root: "" });
    const names = (await readdir(cwd)).filter((name) => name.endsWith(".thou"));
    for (const name of names)
      project.setFile(
        path.join(cwd, name),
        readLines(await readFile(path.join(cwd, name), "utf8")),
      );
    for (const name of names) {
      const open = project.open(path.join(cwd, name));
      if (open === undefined) continue;
      const content = await readFile(path.join(cwd, name), "utf8");
      if (archive.known(name)?.content === content) continue;
      await archive.add(
        name,
        yearOf(open),
        rowsOf(
          open,
          project.check(path.join(cwd, name)),
          { name, content, uses: [], version: "test" },
          (file) => path.relative(cwd, file),
        ),
      );
    }
    for (const name of archive.names())
      if (!names.includes(name)) archive.drop(name);
    return await archive.commit();
  } finally {
    await archive.close();
  }
}

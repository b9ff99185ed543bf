// Puts a question to an archive: the tables of its state as views, the question's SQL over them, rows out. It writes nothing and takes no lock:
// an export that ends meanwhile is met by asking again.
import { shown } from "../model/plain-text.ts";
import { fileList, openEngine, type Answer, type Engine } from "./engine.ts";
import { ArchiveFault, reasonOf } from "./fault.ts";
import { partFile, readManifest, type Manifest } from "./layout.ts";
import { TABLES } from "./schema.ts";

const TRIES = 3;

/** @param name the folder as the user knows it */
export async function askArchive(
  folder: string,
  name: string,
  sql: string,
): Promise<Answer> {
  const engine = await openEngine(undefined);
  try {
    for (let tries = 1; ; tries++) {
      const manifest = await readManifest(folder, name);
      if (manifest === undefined)
        throw new ArchiveFault(
          `there is no archive in ${shown(name)}: "thou export --out ${shown(name)}" makes one, or --archive names another folder.`,
        );
      try {
        await makeViews(folder, manifest, engine);
        return await engine.rows(sql);
      } catch (error) {
        const isMoved =
          (await readManifest(folder, name))?.state !== manifest.state;
        if (isMoved && tries < TRIES) continue;
        throw new ArchiveFault(
          `the archive in ${shown(name)} cannot be read: ${reasonOf(error)}. "thou export" makes anew what is missing or damaged.`,
        );
      }
    }
  } finally {
    engine.close();
  }
}

async function makeViews(
  folder: string,
  { schema, state, parts }: Manifest,
  engine: Engine,
): Promise<void> {
  // an older archive has the tables of its day
  for (const { name } of TABLES.filter(({ since = 1 }) => since <= schema))
    await engine.run(
      `CREATE OR REPLACE VIEW "${name}" AS SELECT * FROM read_parquet(${fileList(
        parts.map((part) => partFile(folder, state, name, part)),
      )}, hive_partitioning = true, hive_types = {'year': INTEGER})`,
    );
}

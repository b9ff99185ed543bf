// `thou export`: the archive of records as Parquet. Which records are worked out anew is decided here, by the hashes of what they rest on; how
// the archive is kept is archive/'s.
import { Option, type Command } from "commander";
import { stat } from "node:fs/promises";
import path from "node:path";
import { showCount } from "../core/quantity/show.ts";
import { openArchive, type Archive } from "../archive/archive.ts";
import { ArchiveFault } from "../archive/fault.ts";
import { rowsOf, yearOf } from "../archive/rows.ts";
import { codeOf, whyNot } from "../why-not.ts";
import { createEvaluator, type Evaluator } from "./evaluate-record.ts";
import { findFiles, forward, nameFrom, type FoundFile } from "./find-files.ts";
import { createHashes, type Hashes } from "./hashes.ts";
import { CannotRun, type CheckedProject, type Context } from "./io.ts";
import { recordsBeside } from "./near-file.ts";
import { inOrder, levelOf, type CheckedFile } from "./report.ts";
import { areSame, restsOn } from "./rests-on.ts";
import { createTell } from "./tell.ts";
import { shown } from "./terminal-text.ts";
import { version } from "./version.ts";

export function addExport(program: Command, context: Context): void {
  program
    .command("export")
    .summary("keep what records come to as Parquet, to ask over many")
    .description(
      "Writes what thou check says of .thou files, and what is written in them, as tables in Parquet files: an archive that thou ask and any engine " +
        "that reads Parquet can be asked. A folder stands for every .thou file in it and below, as for thou check; without a path it is the folder " +
        "you are in. A record that has not changed since the last export, nor any file that it uses, is left as it is; one that is gone leaves the " +
        "archive.",
    )
    .argument("[paths...]", "files and folders")
    .addOption(
      new Option(
        "--out <folder>",
        "the archive: a new or an empty folder the first time",
      ).makeOptionMandatory(),
    )
    .addHelpText(
      "after",
      `
Exit code:
  0  the archive holds every record
  2  it could not run, or not on every file: what can be exported is
     exported all the same, and of the others the archive keeps what it
     held before

Examples:
  thou export jobs --out archive
  thou ask findings-by-month --archive archive`,
    )
    .action(async (paths: readonly string[], options: { out: string }) => {
      await exportRecords(paths, options.out, context);
    });
}

async function exportRecords(
  paths: readonly string[],
  out: string,
  context: Context,
): Promise<void> {
  const { io, parts } = context;
  const { tell } = createTell(context);
  const found = await findFiles(paths, io.cwd);
  found.problems.forEach(tell);
  let archive: Archive | undefined;
  try {
    archive = await openArchive({
      folder: path.resolve(io.cwd, out),
      name: out,
      cwd: io.cwd,
      version,
    });
    archive.problems.forEach(tell);
    const project = parts.createProject();
    const hashes = createHashes();
    const work: Work = {
      archive,
      project,
      hashes,
      evaluator: createEvaluator(
        project,
        io.cwd,
        tell,
        hashes.read,
        recordsBeside,
      ),
      naming: namingFrom(archive.namedFrom),
      tell,
    };
    let fresh = 0;
    const seen = new Set<string>();
    for (const file of found.files) {
      seen.add(work.naming(file.path));
      if (await bring(file, work)) fresh++;
    }
    const gone = await missing(
      archive,
      seen,
      (paths.length === 0 ? ["."] : paths).map((each) =>
        path.resolve(io.cwd, each),
      ),
      found.problems.length === 0,
    );
    for (const record of gone) archive.drop(record);
    const { records } = await archive.commit();
    const counts = [
      `${showCount(fresh, "record")} worked out`,
      `${found.files.length - fresh} left as they were`,
      ...(0 < gone.length ? [`${gone.length} taken out`] : []),
    ];
    io.stdout.write(
      `${counts.join(", ")}; the archive in ${shown(out)} holds ${showCount(records, "record")}.\n`,
    );
  } catch (error) {
    if (error instanceof ArchiveFault) throw new CannotRun(error.message);
    throw error;
  } finally {
    await archive?.close();
  }
}

interface Work {
  readonly archive: Archive;
  readonly project: CheckedProject;
  readonly hashes: Hashes;
  readonly evaluator: Evaluator;
  /** What the archive calls a file, by its path. */
  readonly naming: (path: string) => string;
  readonly tell: (sentence: string) => void;
}

function namingFrom(folder: string): (path: string) => string {
  return (file) => nameFrom(folder, file);
}

/** Brings one record up to date in the archive; true where that took working it out. */
async function bring(file: FoundFile, work: Work): Promise<boolean> {
  const { archive, project, hashes, evaluator, naming, tell } = work;
  const name = naming(file.path);
  const known = archive.known(name);
  const stays =
    known === undefined ? "" : " What the archive holds of it stays.";
  let content: string | null;
  try {
    content = await hashes.take(file.path);
  } catch (error) {
    tell(`${shown(file.name)} cannot be read: ${whyNot(error)}.${stays}`);
    return false;
  }
  if (
    known?.content === content &&
    known.version === version &&
    (await areSame(
      known.uses.map(({ name: used, ...rest }) => ({
        path: forward(path.resolve(archive.namedFrom, used)),
        ...rest,
      })),
      hashes,
      recordsBeside,
    ))
  )
    return false;
  const checked = await evaluator.evaluate(file);
  const open = project.open(file.path);
  if (checked !== undefined && open !== undefined && content !== null) {
    const used = await restsOn(file.path, project, hashes, recordsBeside);
    const uses = used.map(({ path: used, ...rest }) => ({
      name: naming(used),
      ...rest,
    }));
    const facts = { name, content, uses, version };
    await archive.add(
      name,
      yearOf(open),
      rowsOf(open, asReported(checked), facts, naming),
    );
  }
  evaluator.release(file);
  return checked !== undefined;
}

/** Findings in the order and with the levels of the reports. */
function asReported({ check }: CheckedFile): CheckedFile["check"] {
  return {
    findings: inOrder(check.findings).map((finding) => ({
      ...finding,
      level: levelOf(finding),
    })),
    results: check.results,
  };
}

/** Records of the archive that are no more: under a path that was asked for and is there, and not found. */
async function missing(
  archive: Archive,
  seen: ReadonlySet<string>,
  asked: readonly string[],
  isWhole: boolean,
): Promise<readonly string[]> {
  const roots: string[] = [];
  for (const root of asked) if (await mayBeThere(root)) roots.push(root);
  const gone: string[] = [];
  for (const name of archive.names()) {
    if (seen.has(name)) continue;
    const at = path.resolve(archive.namedFrom, name);
    const isUnder = roots.some(
      (root) => at === root || at.startsWith(`${root}${path.sep}`),
    );
    // where a folder could not be looked into, what is in it is not gone
    if (isUnder && (isWhole || !(await mayBeThere(at)))) gone.push(name);
  }
  return gone;
}

/** False where it is surely gone: what can't be looked at may be there. */
async function mayBeThere(at: string): Promise<boolean> {
  return stat(at).then(
    () => true,
    (error: unknown) => !["ENOENT", "ENOTDIR"].includes(codeOf(error) ?? ""),
  );
}

// The answer to `thou/sheet`: the pages are server/sheet's; here the question is read, and files get the names that a person knows.
import type { CancellationToken } from "vscode-languageserver";
import { resultsIn, type OpenFile } from "../model/project.ts";
import type { SheetVersioned } from "../protocol/sheet.ts";
import { findingsIn } from "../rules/check.ts";
import type { SheetFacts, Versioned } from "../sheet/facts.ts";
import { jobSheet } from "../sheet/job-sheet.ts";
import { measuringSheet } from "../sheet/measuring-sheet.ts";
import { parentOf, pathOf } from "./paths.ts";
import { member } from "./settings.ts";

/** What a sheet needs of the session. */
export interface SheetSources {
  readonly open: (
    uri: string,
    token: CancellationToken,
  ) => Promise<OpenFile | undefined>;
  readonly today: () => string;
  readonly version: string;
}

export async function sheetAnswer(
  params: unknown,
  token: CancellationToken,
  sources: SheetSources,
): Promise<{ readonly html: string } | null> {
  const uri = member(params, "uri");
  if (typeof uri !== "string") return null;
  const open = await sources.open(uri, token);
  if (open === undefined) return null;
  const nameOf = (path: string): string => nameBeside(open.path, path);
  const facts: SheetFacts = {
    date: sources.today(),
    version: sources.version,
    nameOf,
    versioned: versionedIn(member(params, "versioned"), open, nameOf),
  };
  const check = { findings: findingsIn(open), results: resultsIn(open) };
  const sheet = member(params, "blank") === true ? measuringSheet : jobSheet;
  return { html: sheet(open, check, facts) };
}

/** What the editor says of version control, if it says something that can be understood. */
function versionedIn(
  said: unknown,
  open: OpenFile,
  nameOf: (path: string) => string,
): Versioned {
  const { revision, changed }: Partial<Record<keyof SheetVersioned, unknown>> =
    {
      revision: member(said, "revision"),
      changed: member(said, "changed"),
    };
  if (!Array.isArray(changed))
    return {
      state: "none",
      because: "not known: the editor names no version control for the record",
    };
  const paths = new Set(
    changed.flatMap((each: unknown) =>
      typeof each === "string" ? [pathOf(each)] : [],
    ),
  );
  return {
    state: "known",
    revision: typeof revision === "string" ? revision : undefined,
    changed: open.shop.files
      .map(({ path }) => path)
      .filter((path) => paths.has(path))
      .map(nameOf),
  };
}

/** A path as it is said beside a record: "crib.thou", "../crib.thou"; the whole address where it is in another place altogether. */
export function nameBeside(record: string, path: string): string {
  const readable = (address: string): string => {
    try {
      return decodeURIComponent(address);
    } catch {
      return address;
    }
  };
  let folder = parentOf(record);
  for (let up = ""; folder !== ""; up += "../") {
    if (path.startsWith(`${folder}/`))
      return readable(up + path.slice(folder.length + 1));
    const above = parentOf(folder);
    // not past the scheme and the authority
    if (above === folder || above.endsWith("/")) break;
    folder = above;
  }
  return readable(path);
}

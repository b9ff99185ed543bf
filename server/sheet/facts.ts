// What a sheet has to be told by whoever makes it, since it opens no file and has no clock: the day, the names of the files, whether they
// are under version control. And what all of its parts share.
import type { System } from "../core/quantity/show.ts";
import { valueIn } from "../model/entry.ts";
import { settings } from "../model/evaluate/settings.ts";
import type { OpenFile } from "../model/project.ts";
import type { FileCheck } from "../model/result.ts";
import { openingEntry, type Shop } from "../model/shop.ts";

/** The start of what every sheet calls its maker: a file that has it is one of ours, and may be written anew. */
export const GENERATOR = "thou sheet";

export interface SheetFacts {
  /** The day that the sheet is made, ISO 8601. */
  readonly date: string;
  /** Version of the tool. */
  readonly version: string;
  /** A file's path as a person knows it. */
  readonly nameOf: (path: string) => string;
  readonly versioned: Versioned;
}

/** How the files stand in version control. */
export type Versioned =
  | { readonly state: "none"; readonly because: string }
  | {
      readonly state: "known";
      /** As the version control names it; undefined before the first commit. */
      readonly revision: string | undefined;
      /** Names of the files read that are not as they were committed. */
      readonly changed: readonly string[];
    };

/** A record with what was found in it, and the facts of the sheet. */
export interface Subject {
  readonly open: OpenFile;
  readonly shop: Shop;
  readonly system: System;
  readonly check: FileCheck;
  readonly facts: SheetFacts;
}

export function subjectOf(
  open: OpenFile,
  check: FileCheck,
  facts: SheetFacts,
): Subject {
  const { shop } = open;
  return { open, shop, system: settings(shop).system, check, facts };
}

/** The title of a job, else its name, else the file's. */
export function titleOf({ shop, open, facts }: Subject): string {
  const opening = openingEntry(shop);
  return (
    valueIn(opening, "TitleFact") ?? opening?.name ?? facts.nameOf(open.path)
  );
}

/** "job winch-layshaft"; the file's name where no job or crib opens it. */
export function jobName({ shop, open, facts }: Subject): string {
  const ref = openingEntry(shop)?.ref ?? "";
  return ref === "" ? facts.nameOf(open.path) : ref;
}

// Makes sheets of the samples and of records written in a test.
import { readLines } from "../../grammar/lines.ts";
import type { FileCheck } from "../../server/model/result.ts";
import type { OpenFile } from "../../server/model/project.ts";
import { createProject } from "../../server/rules/check.ts";
import type { SheetFacts } from "../../server/sheet/facts.ts";
import { jobSheet } from "../../server/sheet/job-sheet.ts";
import { measuringSheet } from "../../server/sheet/measuring-sheet.ts";
import { samples } from "../samples.ts";

export const FACTS: SheetFacts = {
  date: "2026-11-20",
  version: "9.8.7",
  nameOf: (path) => path.slice(1),
  versioned: { state: "known", revision: "0123456789ab", changed: [] },
};

export interface Made {
  readonly open: OpenFile;
  readonly check: FileCheck;
  readonly job: string;
  readonly blank: string;
}

const project = createProject({ root: "/" });
for (const { path, text } of samples)
  project.setFile(`/${path}`, readLines(text));

export function sheetsOfSample(path: string): Made {
  return made(project, `/${path}`, FACTS);
}

/** Sheets of a record of one file. */
export function sheetsOf(text: string, facts: Partial<SheetFacts> = {}): Made {
  const own = createProject({ root: "/" });
  own.setFile("/a.thou", readLines(text));
  return made(own, "/a.thou", { ...FACTS, ...facts });
}

function made(
  of: ReturnType<typeof createProject>,
  path: string,
  facts: SheetFacts,
): Made {
  const open = of.open(path);
  if (open === undefined) throw new Error(`${path} is not there`);
  const check = of.check(path);
  return {
    open,
    check,
    job: jobSheet(open, check, facts),
    blank: measuringSheet(open, check, facts),
  };
}

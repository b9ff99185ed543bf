// A job that reams two bores in line, with its crib, and what of its check the tests of a cut look at.
import { readLines } from "../../grammar/lines.ts";
import type { FileCheck, Result } from "../../server/model/result.ts";
import { createProject, type Project } from "../../server/rules/check.ts";

export const PATH = "/job.thou";

export function open(job: string, crib: string): Project {
  const project = createProject({ root: "/" });
  project.setFile(PATH, readLines(job));
  project.setFile("/crib.thou", readLines(crib));
  return project;
}

export function check(job: string, crib: string): FileCheck {
  return open(job, crib).check(PATH);
}

export function find(
  { results }: FileCheck,
  kind: string,
  of: string,
): Result | undefined {
  return results.find((result) => result.kind === kind && result.of === of);
}

/** In hundred-thousandths of an inch, rounded at a thousandth of one. */
export function ends(result: Result | undefined): readonly (number | null)[] {
  if (result === undefined) throw new Error("no such result");
  return [result.low, result.nominal, result.high].map((metres) =>
    metres === null ? null : Math.round((metres / 0.0254) * 1e8) / 1000,
  );
}

export function codes({ findings }: FileCheck): readonly string[] {
  return findings.map((finding) => finding.code);
}

export const CRIB = `shop harbour
  units inch

reamer r-8755
  size 0.8755
  oversize +0.0001 to +0.0003
  drive hand
  material hss
  chamfer 0.060
  point 0.020
  flutes 6 left

pilot p-871
  od 0.8710 to 0.8712
  length 1.0
pilot p-875
  od 0.8755
  length 4.5
`;

export const JOB = `job winch-3
  units inch
  use "crib.thou"
part layshaft
part case
  material bronze-c932

journal front on layshaft
  reaches 1.300
  limits 0.8740 to 0.8745
hole front in case
  depth 1.350 blind
bore front in case
  read 0.8714 0.8716 as roughed
bore rear in case
  read 0.8716 0.8718 as roughed
fit front of journal front in bore front
  want 0.0008 to 0.0020
fit rear of journal front in bore rear
  want 0.0008 to 0.0020

line layshaft
  bore rear from 3.5 to 5.0
  bore front from 0 to 1.5
  ream with r-8755
  pilot p-871 in bore front for bore rear
  pilot p-875 in bore rear for bore front
`;

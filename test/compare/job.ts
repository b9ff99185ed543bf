// The job whose two states the tests of comparing look at, and the comparing of two texts.
import {
  compareRecords,
  type RecordChanges,
} from "../../server/compare/changes.ts";
import { opened } from "../ide/caret.ts";

/** Its rear journal has a warning, which a concession accepts. */
export const JOB = `job winch-9
  units inch

part layshaft
part case

reamer r-875
  size 0.8750
  oversize +0.0001 to +0.0003
reamer r-876
  size 0.8760
  oversize +0.0001 to +0.0003

journal front on layshaft
  limits 0.8738 to 0.8745
  read near 0.8742 0.8741
journal rear on layshaft
  limits 0.8738 to 0.8740
  read near 0.8742 0.8741
bore front in case
bore rear in case
  read 0.8751
fit front of journal front in bore front
  want 0.0008 to 0.0016
fit rear of journal rear in bore rear
  want 0.0008 to 0.0016
line bores
  bore front from 0 to 1
  ream with r-875

concession worn
  allows reading-off-limits on journal rear
  up to 0.8742
  why "it runs cool" by AK on 2026-11-02
step strip
  done by AK on 2026-11-02
step ream
  do "By hand, in one pass"
  after strip
  cuts line bores
`;

/** Null stands for a state in which the record was not there. */
export function compare(
  before: string | null,
  after: string | null,
): RecordChanges {
  const open = (text: string | null) =>
    text === null ? undefined : opened({ "job.thou": text }, "job.thou");
  return compareRecords(open(before), open(after));
}

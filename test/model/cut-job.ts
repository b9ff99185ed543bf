// A job whose bore is still to be reamed, and what it is with one text of it another: the gate before a cut is tested on it, with concessions
// and without.

/** The reamer cuts 0.8751 to 0.8753; over the journal of 0.8741 that leaves 0.0010 to 0.0012. */
export const CUT = `
job winch-9
  units inch
part layshaft
part case
reamer r-875
  size 0.8750
  oversize +0.0001 to +0.0003
journal front on layshaft
  limits 0.8740 to 0.8745
  read 0.8741 at 68 F
bore front in case
fit front of journal front in bore front
  want 0.0008 to 0.0020
line bores
  bore front from 0 to 1
  ream with r-875
step ream
  cuts line bores
`;

/** A job with one text of it another. */
export function changed(job: string, from: string, to: string): string {
  if (!job.includes(from)) throw new Error(`no ${from}`);
  return job.replace(from, to);
}

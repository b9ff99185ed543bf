// On which day a reading without a day of its own came into a record: that of the first commit that has it. Readings are added to a record
// year after year, so the day of the commit at hand would make all of them one reading of that day.
import { allOf, type Entry, type Fact } from "../model/entry.ts";

/** The day of a commit, ISO 8601, and its twelve digits. */
export interface CommitDay {
  readonly date: string;
  readonly commit: string;
}

/** What the states of one record have shown so far, the oldest first: a reading by what is written of it, and when it came. */
export type Arrivals = Map<string, CommitDay>;

/**
 * When each undated reading of an entry came, by its fact; without one that is in no commit. What this state is the first to have is added to
 * `arrivals`. Of readings that are written alike the first is the oldest: a part that did not wear reads the same again.
 */
export function arrivalsOf(
  entry: Entry,
  arrivals: Arrivals,
  at: CommitDay | undefined,
): ReadonlyMap<Fact<"ReadFact">, CommitDay> {
  const came = new Map<Fact<"ReadFact">, CommitDay>();
  const alike = new Map<string, number>();
  for (const fact of allOf(entry, "ReadFact")) {
    const { value } = fact;
    if (value === undefined || value.signature.date !== undefined) continue;
    const written = JSON.stringify([
      entry.ref,
      value.place ?? "",
      value.stage ?? "finished",
      value.gauge?.name ?? "",
      value.values.map((each) => each.value),
    ]);
    const before = alike.get(written) ?? 0;
    alike.set(written, before + 1);
    const key = `${written} ${String(before)}`;
    const first = arrivals.get(key) ?? at;
    if (first === undefined) continue;
    arrivals.set(key, first);
    came.set(fact, first);
  }
  return came;
}

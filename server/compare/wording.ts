// A change in words: what both reports say alike. How it is laid out is theirs.
import { showCount } from "../core/quantity/show.ts";
import type { Change, FindingChange, RecordChanges } from "./changes.ts";
import { groupedBy } from "../model/groups.ts";
import { VERDICT_WORDS } from "../model/result-kinds.ts";
import type { Standing } from "./items.ts";

/** A record as it was compared: what it is called, and where it was found at each time. */
export interface ComparedRecord {
  /** What a person knows it by: its path from the folder compared. */
  readonly name: string;
  /** Its path at the earlier time, where it has moved since. */
  readonly movedFrom: string | undefined;
  readonly state: "changed" | "new" | "gone";
  readonly changes: RecordChanges;
}

/** "0.0010 to 0.0013 in, predicted, in tolerance"; "" where it was not there. What is measured is called so where the other is predicted. */
function standingWords(
  standing: Standing | null,
  other: Standing | null,
): string {
  if (standing === null) return "";
  const { text, status, verdict } = standing;
  return [
    status === "unknown" ? "unknown" : text,
    ...(status === "predicted" ||
    (status === "measured" && other?.status === "predicted")
      ? [status]
      : []),
    ...(verdict === "none" ? [] : [VERDICT_WORDS[verdict]]),
  ].join(", ");
}

/** Of a new entry or a gone one the word says it all. */
export function changeWords({ what, before, after }: Change): {
  readonly before: string;
  readonly after: string;
} {
  if (what === "entry")
    return {
      before: before === null ? "" : "there",
      after: after === null ? "gone" : "new",
    };
  return {
    before: before === null ? "not there" : standingWords(before, after),
    after: after === null ? "gone" : standingWords(after, before),
  };
}

/** "clearance", "hot-clearance case 2", "stock bore front" */
export function whatOf({ what, of, case: number }: Change): string {
  return [what, of, number === null ? null : `case ${String(number)}`]
    .filter((part) => part !== null)
    .join(" ");
}

/** "worse", "+0.0003 in", both or neither. */
export function tailOf({ tendency, moved }: Change): readonly string[] {
  return [
    ...(tendency === "neither" ? [] : [tendency]),
    ...(moved === "" ? [] : [moved]),
  ];
}

/** "new error fit-loose at fit front, accepted by concession loose" */
export function findingWords(
  { level, code, entry, accepted }: FindingChange,
  isNew: boolean,
): string {
  return [
    `${isNew ? "new" : "gone"} ${accepted === null ? level : "accepted"} ${code}`,
    entry === null ? "" : ` at ${entry}`,
    accepted === null ? "" : `, by concession ${accepted}`,
  ].join("");
}

/** Lines that are alike as one, with how often they stand: of a journal off its limits each value is found, and many read the same. */
export function onceEach(lines: readonly string[]): readonly string[] {
  return [...groupedBy(lines, (line) => line)].map(([line, { length }]) =>
    length === 1 ? line : `${line} (${String(length)} times)`,
  );
}

/** "2 records compared, 1 changed: 3 things are worse." */
export function summaryWords(
  compared: number,
  records: readonly ComparedRecord[],
): string {
  if (compared === 0) return "No record to compare.";
  const changed = records.length;
  const head = `${showCount(compared, "record")} compared`;
  return changed === 0
    ? `${head}: no change in what they come to.`
    : `${head}, ${String(changed)} changed: ${worseWords(records, compared)}.`;
}

/** "3 things are worse", "2 entries are gone; of what is left nothing is worse": what went is never passed over for good news. */
export function worseWords(
  records: readonly Pick<ComparedRecord, "state" | "changes">[],
  compared: number,
): string {
  const sum = (of: (record: (typeof records)[number]) => number): number =>
    records.reduce((total, record) => total + of(record), 0);
  const worse = sum(({ changes }) => changes.worse);
  const goneRecords = sum(({ state }) => (state === "gone" ? 1 : 0));
  const emptied = sum(({ changes }) => (changes.isEmptied ? 1 : 0));
  const goneEntries = sum(({ state, changes }) =>
    state === "gone" || changes.isEmptied
      ? 0
      : changes.changes.filter(
          ({ what, after }) => what === "entry" && after === null,
        ).length,
  );
  const gone = [
    ...(goneRecords === 0
      ? []
      : [showCount(goneRecords, "record is gone", "records are gone")]),
    ...(emptied === 0
      ? []
      : [showCount(emptied, "record is emptied", "records are emptied")]),
    ...(goneEntries === 0
      ? []
      : [showCount(goneEntries, "entry is gone", "entries are gone")]),
  ];
  if (0 < worse)
    return [
      showCount(worse, "thing is worse", "things are worse"),
      ...gone,
    ].join("; ");
  if (gone.length === 0) return "nothing is worse";
  return [
    ...gone,
    ...(goneRecords < compared ? ["of what is left nothing is worse"] : []),
  ].join("; ");
}

/** What became of a whole record, as its heading says it: ", new", ", moved from pump.thou"; "" where only something in it changed. @param written a name as the form has it */
export function stateWords(
  { state, movedFrom, changes }: ComparedRecord,
  written: (name: string) => string,
): string {
  if (state !== "changed") return `, ${state}`;
  return [
    movedFrom === undefined ? "" : `, moved from ${written(movedFrom)}`,
    changes.isEmptied ? ", emptied: it holds no entries any more" : "",
  ].join("");
}

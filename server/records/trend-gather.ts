// The sizes of many records gathered for their trends, state by state, with what has to be told of what was left out. Where the states come
// from is the caller's: the terminal reads folders and git, the language server what the editor has.
import { showCount } from "../core/quantity/show.ts";
import type { OpenFile } from "../model/project.ts";
import { pointsOnce } from "./points-once.ts";
import { pointsIn } from "./trend-points.ts";
import type { DatedSize, StatePoint, StatePoints } from "./trend-state.ts";
import type { Along } from "./trend.ts";
import type { Arrivals, CommitDay } from "./undated.ts";

/** The states of one record: the committed ones, the oldest first, then the one that lies there. */
export interface RecordGathering {
  readonly past: (open: OpenFile, committed: CommitDay) => void;
  /** A past state that can't be read; `because` is a sentence. */
  readonly leftOut: (commit: string, because: string) => void;
  readonly now: (open: OpenFile) => void;
}

export interface Gathering {
  /** @param file names the record in the points; `said`, in sentences */
  readonly record: (file: string, said?: string) => RecordGathering;
  readonly note: (sentence: string) => void;
  /** Each reading once. */
  readonly points: () => readonly DatedSize[];
  /** What has to be told beside the trends of these points, in whole sentences. */
  readonly notesOn: (
    points: readonly DatedSize[],
    along: Along,
  ) => readonly string[];
}

/** @param only the one entry that is asked for; all where none is */
export function createGathering(only?: string): Gathering {
  /** The sizes of each record whose last state is known, or a way to them. */
  const records: (() => readonly DatedSize[])[] = [];
  const once = createSharing();
  const notes = new Set<string>();
  const mixed = new Set<string>();
  let undated = 0;
  let damaged = 0;

  function record(file: string, said = file): RecordGathering {
    const arrivals: Arrivals = new Map();
    let states: (readonly StatePoint[])[] = [];
    const at = records.push(() => pointsOnce(states)) - 1;
    let harmed = 0;
    const take = (
      open: OpenFile,
      committed: CommitDay | undefined,
    ): StatePoints => {
      const found = pointsIn({ open, file, committed, arrivals });
      states.push(
        only === undefined
          ? found.points
          : found.points.filter(({ entry }) => entry === only),
      );
      return found;
    };
    return {
      past(open, committed) {
        if (0 < take(open, committed).damaged) harmed++;
      },
      leftOut(commit, because) {
        notes.add(`${said} at ${commit} is left out: ${because}`);
      },
      now(open) {
        if (0 < harmed)
          notes.add(
            `${showCount(harmed, "version")} of ${said} in git with lines of readings that can't be read: these lines are left out.`,
          );
        const found = take(open, undefined);
        undated += found.undated;
        damaged += found.damaged;
        for (const fit of found.mixed) mixed.add(`${said}: ${fit}`);
        // of thousands of records only what a trend takes is held
        const sizes = pointsOnce(states).map((point) => sizeOf(point, once));
        records[at] = () => sizes;
        states = [];
      },
    };
  }

  return {
    record,
    note(sentence) {
      notes.add(sentence);
    },
    points: () => records.flatMap((sizes) => sizes()),
    notesOn: (points, along) => [
      ...notes,
      ...(undated === 0
        ? []
        : [
            `${showCount(undated, "reading")} without a day, and in no commit that was read, left out: write \`on DATE\`.`,
          ]),
      ...(damaged === 0
        ? []
        : [
            `${showCount(damaged, "line")} with a reading can't be read, and left out.`,
          ]),
      ...[...mixed].map(
        (fit) =>
          `${fit} has no clearance of a day: readings without a day came with several commits, and count together. Write \`on DATE\`.`,
      ),
      ...withoutHours(points, along),
    ],
  };
}

type Sharing = <T extends string | undefined>(text: T) => T;

/** Texts that are alike as one: each record has its own, of the same few entries, gauges and days. */
function createSharing(): Sharing {
  const known = new Map<string | undefined, string | undefined>();
  return <T extends string | undefined>(text: T): T => {
    if (!known.has(text)) known.set(text, text);
    return known.get(text) as T; // it is the same text
  };
}

/** Key by key, so that nothing else that the point has is held with it. */
function sizeOf(point: StatePoint, once: Sharing): DatedSize {
  return {
    file: once(point.file),
    commit: once(point.commit),
    entry: once(point.entry),
    part: once(point.part),
    serial: once(point.serial),
    system: point.system,
    date: once(point.date),
    datedBy: point.datedBy,
    hours: point.hours,
    value: point.value,
    count: point.count,
    uncertainty: point.uncertainty,
    step: point.step,
    gauge: once(point.gauge),
    limit: point.limit,
    limitIs: point.limitIs,
    limits: once(point.limits),
    madeIn: once(point.madeIn),
  };
}

function withoutHours(
  points: readonly DatedSize[],
  along: Along,
): readonly string[] {
  const without =
    along === "hours"
      ? points.filter(({ hours }) => hours === undefined).length
      : 0;
  return without === 0
    ? []
    : [
        `${showCount(without, "size")} of days on which no hours are written, or two that differ, left out: write \`hours 12400 h on DATE\` in the job, as the hour meter showed that day.`,
      ];
}

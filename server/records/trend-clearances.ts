// The clearance of a fit as one state of a record has it, with its day.
import { clearance } from "../model/evaluate/fit.ts";
import { namedIn } from "../model/evaluate/index-of.ts";
import { settings } from "../model/evaluate/settings.ts";
import { wanted } from "../model/evaluate/wanted.ts";
import { entryOf } from "../model/shop.ts";
import type { Span } from "../model/values.ts";
import {
  hoursOn,
  partOf,
  serialOf,
  type RecordState,
  type StatePoint,
} from "./trend-state.ts";
import { arrivalsOf, type CommitDay } from "./undated.ts";

/**
 * The clearance as it is in this state, where both parts are read: dated by the later of the two. Readings of one part without a day count
 * together for its size ("mixed" where they came at several times: then the clearance is of no day).
 */
export function clearanceIn(
  state: RecordState,
  ref: string,
): StatePoint | "mixed" | undefined {
  const { shop } = state.open;
  const found = clearance(shop, ref);
  const [journal, bore] = namedIn(shop, ref);
  if (
    !found.known ||
    found.value.status !== "measured" ||
    journal === undefined ||
    bore === undefined
  )
    return undefined;
  const { nominal, budget, step } = found.value;
  const readings = [found.value.journal, found.value.bore].map((size) =>
    size.places.flatMap((place) => place.readings),
  );
  const came = [journal, bore].map((feature, index) =>
    (readings[index] ?? []).map(
      ({ date, span }) =>
        (date === undefined ? arrivalAt(state, feature, span) : undefined) ?? {
          date,
          commit: "",
        },
    ),
  );
  const commits = came.map((all) =>
    all.flatMap(({ commit }) => (commit === "" ? [] : [commit])),
  );
  if (commits.some((all) => 1 < new Set(all).size)) return "mixed";
  const date = latestOf(
    came.map((all) => latestOf(all.map((each) => each.date))),
  );
  if (date === undefined) return undefined;
  const newest = came.flat().filter((each) => each.date === date);
  const arrived = newest.every(({ commit }) => commit !== "")
    ? newest[0]?.commit
    : undefined;
  const part = partOf(shop, journal);
  const want = wanted(shop, ref);
  const most = want?.known === true ? want.value.high : undefined;
  return {
    file: state.file,
    stateDay: state.committed?.date,
    commit: arrived ?? state.committed?.commit,
    entry: ref,
    part: part ?? "",
    serial: serialOf(shop, part),
    system: settings(shop).system,
    date,
    datedBy: arrived === undefined ? "reading" : "commit",
    hours: hoursOn(shop, date),
    gauge: "",
    value: nominal,
    count: readings.flat().length,
    uncertainty: budget?.combined,
    step,
    limit: most,
    limitIs: most === undefined ? undefined : "wanted",
    limits: "",
    lines: readings.flatMap((all, index) =>
      all.map(({ values }) => JSON.stringify([index, values])),
    ),
    madeIn: state.file,
  };
}

/** When the undated reading that stands there in an entry came. */
function arrivalAt(
  state: RecordState,
  ref: string,
  span: Span,
): CommitDay | undefined {
  const entry = entryOf(state.open.shop, ref);
  if (entry === undefined) return undefined;
  const came = arrivalsOf(entry, state.arrivals, state.committed);
  return [...came].find(
    ([fact]) => fact.span.line === span.line && fact.span.start === span.start,
  )?.[1];
}

function latestOf(dates: readonly (string | undefined)[]): string | undefined {
  return dates.reduce(
    (a, b) => (a === undefined || b === undefined ? undefined : a < b ? b : a),
    dates[0],
  );
}

// The straight shaft through the bores of a line whose centres were checked: the clearance that is left at each, and what stops it.
import {
  straightShaft,
  type CheckedBore,
  type StraightShaft,
} from "../../core/line/straight-shaft.ts";
import { given } from "../entry.ts";
import {
  everyKnown,
  known,
  lacking,
  need,
  outside,
  SILENT,
  statusOf,
  unknown,
  type Extent,
  type Known,
} from "../known.ts";
import { finer } from "../ranges.ts";
import type { Status } from "../result.ts";
import { entryOf, query, type Shop } from "../shop.ts";
import { boreSize } from "./bore.ts";
import { fitsOfBore, namedIn } from "./index-of.ts";
import { lineBoresOf, type LineBore } from "./line-bores.ts";
import { lobesOfBoth } from "./roundness.ts";
import { sizeOf, type Size } from "./size.ts";

interface Seat {
  readonly line: LineBore;
  readonly bore: Size;
  readonly journal: Size;
  /** The fit that says which journal runs there. */
  readonly fit: string;
  /** m; undefined where none is written. */
  readonly runout: number | undefined;
  /** What lobes that two points don't see take, m: with the smallest bore and the largest journal alone. */
  readonly lobes: number;
}

/** The clearance left for the straight shaft where it lies, m, diametral. */
export interface SeatInLine extends Extent {
  readonly bore: string;
  readonly fit: string;
  /** At the tightest sizes: what the slope of the bore alone takes, m, and its axis' slope against the shaft's. */
  readonly lostToSlope: number;
  readonly slope: number;
  readonly runout: number | undefined;
  readonly step: number | undefined;
}

export interface InLine {
  readonly seats: readonly SeatInLine[];
  /** With the smallest bores and the largest journals, and the other way round. */
  readonly tightest: StraightShaft;
  readonly loosest: StraightShaft;
  readonly status: Exclude<Status, "unknown">;
}

function seatOf(shop: Shop, line: string, at: LineBore): Known<Seat> {
  const { bore, centres } = at;
  if (centres.length === 0)
    return unknown(
      need(line, "bore", `the \`centre\` of ${bore} in ${line}, once checked`),
    );
  const [fit] = fitsOfBore(shop, bore);
  if (fit === undefined)
    return unknown(need(bore, "fit", `a fit that runs in ${bore}`));
  const ref = namedIn(shop, fit)[0];
  const entry = ref === undefined ? undefined : entryOf(shop, ref);
  if (ref === undefined || entry === undefined) return SILENT;
  const journal = sizeOf(shop, ref);
  const size = boreSize(shop, bore);
  const runout = given(entry, "RunoutFact");
  if (runout.state === "damaged") return SILENT;
  if (!journal.known || !size.known) return lacking(journal, size);
  const lobes = lobesOfBoth(
    shop,
    { ref, size: journal.value },
    { ref: bore, size: size.value },
  );
  if (!lobes.known) return lobes;
  return known({
    line: at,
    bore: size.value,
    journal: journal.value,
    fit,
    runout: runout.state === "given" ? runout.value.value : undefined,
    lobes: lobes.value.journal.taken + lobes.value.bore.taken,
  });
}

function checked(
  { line, bore, journal, runout, lobes }: Seat,
  end: "low" | "nominal" | "high",
): CheckedBore {
  const other = { low: "high", nominal: "nominal", high: "low" } as const;
  const [from = { x: 0, y: 0 }, to = from] = line.centres;
  return {
    from: line.from,
    to: line.to,
    centreFrom: from,
    centreTo: to,
    bore: bore[end],
    journal: journal[other[end]] + (end === "low" ? lobes : 0),
    ...(runout === undefined ? {} : { runout }),
  };
}

/** Unknown until the centres of all its bores are checked. */
export const inLine = query<Known<InLine>>("in-line", (shop, line) => {
  const bores = lineBoresOf(shop, line);
  if (!bores.known) return bores;
  const all = everyKnown(bores.value.map((bore) => seatOf(shop, line, bore)));
  if (!all.known) return all;
  const seats = all.value;
  const [low, nominal, high] = [
    straightShaft(seats.map((seat) => checked(seat, "low"))),
    straightShaft(seats.map((seat) => checked(seat, "nominal"))),
    straightShaft(seats.map((seat) => checked(seat, "high"))),
  ];
  if (!low.valid) return outside(low.because);
  if (!nominal.valid) return outside(nominal.because);
  if (!high.valid) return outside(high.because);
  return known({
    seats: seats.map(({ line: { bore }, fit, runout, ...seat }, index) => {
      const tight = low.value.bores[index];
      const left = [low, nominal, high].map(
        ({ value }) => value.bores[index]?.effectiveClearance ?? 0,
      );
      return {
        bore,
        fit,
        // where the shaft lies changes with the sizes, so one bore may have more where all have less
        low: Math.min(...left),
        nominal: left[1] ?? 0,
        high: Math.max(...left),
        lostToSlope: tight?.lostToSlope ?? 0,
        slope: tight?.slope ?? 0,
        runout,
        step: finer(seat.bore.step, seat.journal.step),
      };
    }),
    tightest: low.value,
    loosest: high.value,
    status: statusOf(...seats.flatMap(({ bore, journal }) => [bore, journal])),
  });
});

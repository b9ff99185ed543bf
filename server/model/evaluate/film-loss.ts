// What takes from the least film of a fit: how its journal and bore stand to each other (where the line's centres were checked), and what they are
// out of round. How much that is of a film is core/film/film-ratio.ts's.
import { known, neededText, SILENT, type Known } from "../known.ts";
import { query, type Shop } from "../shop.ts";
import type { Clearance } from "./fit.ts";
import { inLine } from "./in-line.ts";
import { lineOfBore, namedIn } from "./index-of.ts";

/** Angle between a journal and its bore, and where that comes from or why it is not known. */
export interface Tilt {
  /** rad; undefined where it is not known: then nothing is taken off for it. */
  readonly angle: number | undefined;
  readonly said: string;
}

/** Of the straightest shaft in the line that the bore is on, against the bore's own axis, at the tightest sizes. */
const tiltOf = query<Known<Tilt>>("tilt", (shop, fit) => {
  const bore = namedIn(shop, fit)[1];
  if (bore === undefined) return SILENT;
  const line = lineOfBore(shop, bore);
  if (line === undefined) return notKnown(`${bore} is on no line`);
  const found = inLine(shop, line);
  if (!found.known) {
    // centres that can't be read might have tilted it
    if (found.silent && found.needs.length === 0) return SILENT;
    return notKnown(
      found.because ??
        (found.needs.some(({ fact }) => fact === "bore")
          ? `the centres of ${line} are not all checked`
          : `${line} ${neededText(found.needs)}`),
    );
  }
  const seat = found.value.seats.find((each) => each.fit === fit);
  return seat === undefined
    ? notKnown(`another fit stands for ${bore} in ${line}`)
    : known({
        angle: seat.slope,
        said: `of the straightest shaft through ${line} against ${bore}`,
      });
});

function notKnown(why: string): Known<Tilt> {
  return known({ angle: undefined, said: why });
}

export interface Loss {
  readonly tilt: Tilt;
  /** Radial, m: half of what each of the two surfaces is out of round by. The sizes are extremes, so taper is already in the clearance. */
  readonly form: number;
}

export function filmLossOf(
  shop: Shop,
  fit: string,
  { journal, bore }: Clearance,
): Known<Loss> {
  const tilt = tiltOf(shop, fit);
  return tilt.known
    ? known({
        tilt: tilt.value,
        form: ((journal.outOfRound ?? 0) + (bore.outOfRound ?? 0)) / 2,
      })
    : tilt;
}

// The pilots of a line: what each runs in at that moment, its slack there, and how far it lets the cut wander.
import {
  pilotGuide,
  pilotReach,
  type PilotGuide,
  type PilotReach,
} from "../../core/line/pilot.ts";
import type { Band } from "../../core/quantity/band.ts";
import {
  lengthDigits,
  showLength,
  showRange,
} from "../../core/quantity/show.ts";
import { allOf, given } from "../entry.ts";
import {
  known,
  lacking,
  need,
  outside,
  readingOf,
  SILENT,
  statusOf,
  unknown,
  type Estimate,
  type Known,
} from "../known.ts";
import { finer, finest } from "../ranges.ts";
import type { Working } from "../result.ts";
import { entryOf, query, refOf, type Shop } from "../shop.ts";
import { boreBeforeCut, type Before } from "./before-cut.ts";
import { boreSize, cutOf } from "./bore.ts";
import { lineOfBore } from "./index-of.ts";
import { lineBoresOf, type LineBore } from "./line-bores.ts";
import { readingsAt } from "./readings.ts";
import {
  lobesAt,
  lobesOf,
  lobesWorking,
  NO_LOBES,
  type Lobes,
} from "./roundness.ts";
import { settings } from "./settings.ts";
import { placesOf } from "./size.ts";

/** A `pilot` line of a line's entry. */
export interface PilotLine {
  /** Its number among the pilot lines of the entry, damaged ones among them. */
  readonly index: number;
  readonly pilot: string;
  /** The bore that it runs in. */
  readonly runsIn: string;
  /** The bore whose cut it guides. */
  readonly guides: string;
}

/** The pilot lines that can be read and whose names are known. */
export const pilotLinesOf = query<readonly PilotLine[]>(
  "pilot-lines",
  (shop, line) => {
    const entry = entryOf(shop, line);
    if (entry === undefined) return [];
    return allOf(entry, "LinePilotFact").flatMap(({ value }, index) => {
      const pilot = refOf(shop, value?.pilot);
      const runsIn = refOf(shop, value?.in);
      const guides = refOf(shop, value?.for);
      return pilot === undefined || runsIn === undefined || guides === undefined
        ? []
        : [{ index, pilot, runsIn, guides }];
    });
  },
);

export interface PilotSize extends Estimate {
  /** m; undefined where it is not written: then it is taken as long enough for its bore */
  readonly length: number | undefined;
}

/** The diameter of a pilot: read, else its od. */
const pilotSize = query<Known<PilotSize>>("pilot", (shop, ref) => {
  const entry = entryOf(shop, ref);
  if (entry === undefined || entry.damaged) return SILENT;
  const od = given(entry, "OdFact");
  const length = given(entry, "LengthFact");
  if (od.state === "damaged" || length.state === "damaged") return SILENT;
  const long = length.state === "given" ? length.value.low : undefined;
  const places = readingsAt(
    shop,
    allOf(entry, "ReadFact"),
    "finished",
    ["finished", "run", "bought"],
    // as a reamer, it is read cold in the crib
    () => unknown(readingOf(ref, " at 20 °C")),
  );
  if (!places.known) return places;
  const readings = places.value.flatMap((place) => place.readings);
  const values = readings.flatMap((reading) => reading.values);
  if (0 < values.length) {
    return known({
      low: Math.min(...values),
      nominal: values.reduce((sum, value) => sum + value, 0) / values.length,
      high: Math.max(...values),
      status: "measured",
      step: finest(readings),
      working: [],
      length: long,
    });
  }
  if (od.state === "absent")
    return unknown(need(ref, "od", `the od of ${ref}, or a reading of it`));
  const { low, high, step } = od.value;
  return known({
    low,
    nominal: (low + high) / 2,
    high,
    status: "predicted",
    step,
    working: [],
    length: long,
  });
});

/** The bore that a pilot runs in, as it is at that moment. */
interface BoreThen extends Estimate {
  /** Which moment that is, in words. */
  readonly moment: string;
  /** What lobes that two points don't see take of it. */
  readonly lobes: Lobes;
  /** Whose lobes they are: the bore's, or those of the hole that it is cut from. */
  readonly lobed: string;
}

function boreThen(
  shop: Shop,
  line: string,
  { runsIn, guides }: PilotLine,
): Known<BoreThen> {
  const bores = lineBoresOf(shop, line);
  if (!bores.known) return bores;
  const order = bores.value.map(({ bore }) => bore);
  const at = order.indexOf(runsIn);
  const places = placesOf(shop, runsIn);
  if (!places.known) return places;
  const isRead = 0 < places.value.length;
  const as = (
    size: Estimate,
    moment: string,
    lobes: Known<Lobes>,
    lobed = runsIn,
  ): Known<BoreThen> =>
    lobes.known ? known({ ...size, moment, lobes: lobes.value, lobed }) : lobes;
  const asItIs = (moment: string): Known<BoreThen> => {
    const size = boreSize(shop, runsIn);
    return size.known
      ? as(size.value, moment, lobesOf(shop, runsIn, size.value))
      : size;
  };
  if (at === -1) {
    // when another line cuts it is not said, so only a reading tells
    return isRead || lineOfBore(shop, runsIn) === undefined
      ? asItIs("as it is")
      : unknown(readingOf(runsIn));
  }
  if (!order.slice(at).includes(guides)) {
    const size = boreBeforeCut(shop, runsIn);
    return size.known
      ? as(
          size.value,
          "still uncut",
          lobesBefore(shop, size.value),
          size.value.form?.ref,
        )
      : size;
  }
  if (isRead) return asItIs("as cut");
  const cut = cutOf(shop, runsIn);
  if (cut === undefined)
    return unknown(need(line, "ream", `the reamer of ${line}`));
  return cut.known ? as(cut.value, "as just cut", known(NO_LOBES)) : cut;
}

function lobesBefore(shop: Shop, before: Before): Known<Lobes> {
  const { form } = before;
  if (form === undefined) return known(NO_LOBES);
  return form.stage === undefined
    ? lobesOf(shop, form.ref, before)
    : lobesAt(shop, form.ref, form.stage);
}

export interface Guide extends Estimate {
  /** Slack in the bore it runs in, m, at its least with what lobes take; below zero it does not go. */
  readonly slack: Band;
  readonly entry: PilotGuide["entry"];
  readonly bore: BoreThen;
  readonly pilot: PilotSize;
}

/** How the pilots of a line guide, in the order written, as the lines of pilotLinesOf. */
export const guidesOf = query<readonly Known<Guide>[]>("pilots", (shop, line) =>
  pilotLinesOf(shop, line).map((each) => guideOf(shop, line, each)),
);

/** How another pilot would guide in place of the one that a line names. */
export function guideWith(
  shop: Shop,
  line: string,
  each: PilotLine,
  pilot: string,
): Known<Guide> {
  return guideOf(shop, line, { ...each, pilot });
}

function guideOf(shop: Shop, line: string, each: PilotLine): Known<Guide> {
  // pilot-in-cut-bore says it
  if (each.runsIn === each.guides) return SILENT;
  const pilot = pilotSize(shop, each.pilot);
  const bore = boreThen(shop, line, each);
  const bores = lineBoresOf(shop, line);
  const runsIn = spanOf(line, bores, each.runsIn);
  const guides = spanOf(line, bores, each.guides);
  if (!pilot.known || !bore.known || !runsIn.known || !guides.known)
    return lacking(pilot, bore, runsIn, guides);
  const reach = pilotReach(runsIn.value, guides.value, pilot.value.length);
  if (!reach.valid) return outside(reach.because);
  const { taken, form } = bore.value.lobes;
  const lobes =
    form === undefined
      ? undefined
      : { count: form.swing.lobes, roundness: taken };
  const guide = (p: number, b: number): ReturnType<typeof pilotGuide> =>
    pilotGuide({ low: p, high: p }, { low: b, high: b }, reach.value, lobes);
  const most = pilotGuide(pilot.value, bore.value, reach.value, lobes);
  const nominal = guide(pilot.value.nominal, bore.value.nominal);
  const least = guide(pilot.value.high, bore.value.low);
  if (!most.valid) return outside(most.because);
  if (!nominal.valid || !least.valid) return SILENT;
  return known({
    low: least.value.offset,
    nominal: nominal.value.offset,
    high: most.value.offset,
    status: statusOf(pilot.value, bore.value),
    step: finer(pilot.value.step, bore.value.step),
    slack: most.value.slack,
    entry: most.value.entry,
    bore: bore.value,
    pilot: pilot.value,
    working: guideWorking(
      shop,
      each,
      pilot.value,
      bore.value,
      reach.value,
      most.value,
    ),
  });
}

/** Where a bore lies along its line, m. */
function spanOf(
  line: string,
  bores: Known<readonly LineBore[]>,
  ref: string,
): Known<Band> {
  if (!bores.known) return bores;
  const found = bores.value.find(({ bore }) => bore === ref);
  return found === undefined
    ? unknown(need(line, "bore", `where ${ref} lies on ${line}`))
    : known({ low: found.from, high: found.to });
}

function guideWorking(
  shop: Shop,
  names: PilotLine,
  pilot: PilotSize,
  bore: BoreThen,
  { engagedLength, overhang }: PilotReach,
  { slack, off, lean, offset }: PilotGuide,
): readonly Working[] {
  const { system } = settings(shop);
  const step = finer(pilot.step, bore.step);
  const { taken, form } = bore.lobes;
  const range = ({ low, high }: Guide["slack"]): string =>
    showRange(low, high, system, step);
  const show = (length: number): string => showLength(length, system, step);
  const slackOf = `slack = ${names.runsIn}, ${bore.moment}, − ${names.pilot}`;
  const reach = `engaged over ${lengthDigits(engagedLength, system)}, ${lengthDigits(overhang, system)} to the far end of ${names.guides}: up to ${show(offset)}, radial`;
  const before = [
    ...bore.working,
    ...lobesWorking(bore.lobed, bore.lobes, system),
  ];
  return form === undefined
    ? [
        ...before,
        {
          formula: slackOf,
          with: `${range(bore)} − ${range(pilot)} = ${range(slack)}`,
          source: "",
        },
        {
          formula: "offset = slack/2 + slack/engaged length · overhang",
          with: `slack up to ${show(Math.max(0, slack.high))}, ${reach}`,
          source: "geometry of a bar in a ring",
        },
      ]
    : [
        ...before,
        {
          formula: `${slackOf}, at its least also − what lobes take`,
          with: `${range(bore)} − ${range(pilot)}, at its least − ${lengthDigits(taken, system, finer(step, form.step))} = ${range(slack)}`,
          source: "",
        },
        {
          formula:
            "offset = off the bore's axis + lean/engaged length · overhang",
          with: `between ${form.swing.lobes} lobes off by up to ${show(off)}, leaning by up to ${show(lean)}, ${reach}`,
          source: "geometry of a bar in a curve of constant width",
        },
      ];
}

// What the picture of a fit shows, as data: the journal's and the bore's zones, their readings, the bore sizes that are wanted, and the
// clearances cold and hot. It draws nothing.
import type { Band } from "../core/quantity/band.ts";
import {
  showRange,
  showTemperature,
  showUncertainty,
  type System,
} from "../core/quantity/show.ts";
import { allOf, valueIn } from "../model/entry.ts";
import { boreSize } from "../model/evaluate/bore.ts";
import { clearance, clearanceVerdict } from "../model/evaluate/fit.ts";
import { namedIn } from "../model/evaluate/index-of.ts";
import {
  coldCases,
  hotCases,
  wantedWarm,
  type WarmCase,
} from "../model/evaluate/press-hot.ts";
import { journalAsMet } from "../model/evaluate/roundness.ts";
import { settings } from "../model/evaluate/settings.ts";
import { sizeOf, type Size } from "../model/evaluate/size.ts";
import { wanted } from "../model/evaluate/wanted.ts";
import type { Known } from "../model/known.ts";
import { entryOf, type Shop } from "../model/shop.ts";
import type { Bodies, LengthRange, SourcedRange } from "../model/values.ts";
import type { BandRow } from "./band-strip.ts";
import { nominalOf } from "./nominal.ts";
import { judgedWords, notKnown } from "./words.ts";

export interface Side {
  readonly ref: string | undefined;
  readonly size: Known<Size> | undefined;
  readonly limits: SourcedRange | undefined;
}

export interface FitZones {
  readonly system: System;
  readonly journal: Side;
  readonly bore: Side;
  /** The clearance that the fit wants; undefined where it writes none. */
  readonly want: Known<LengthRange> | undefined;
  /** Bore sizes that give every size of the journal, and its lobes, the wanted clearance, m; its low end above its high one where none does. */
  readonly window: Band | undefined;
  /** m; where a class tells it. */
  readonly nominal: number | undefined;
}

export function fitZones(shop: Shop, fit: string): FitZones {
  const [journalRef, boreRef] = namedIn(shop, fit);
  const journal = sideOf(shop, journalRef, sizeOf);
  const bore = sideOf(shop, boreRef, boreSize);
  const want = wanted(shop, fit);
  const met =
    journalRef === undefined ? undefined : journalAsMet(shop, journalRef);
  return {
    system: settings(shop).system,
    journal,
    bore,
    want,
    window:
      want?.known === true && met?.known === true
        ? {
            low: met.value.greatest + want.value.low,
            high: met.value.size.low + want.value.high,
          }
        : undefined,
    nominal:
      (bore.limits === undefined
        ? undefined
        : nominalOf(bore.limits, "hole")) ??
      (journal.limits === undefined
        ? undefined
        : nominalOf(journal.limits, "shaft")),
  };
}

function sideOf(
  shop: Shop,
  ref: string | undefined,
  size: (shop: Shop, ref: string) => Known<Size>,
): Side {
  return {
    ref,
    size: ref === undefined ? undefined : size(shop, ref),
    limits:
      ref === undefined ? undefined : valueIn(entryOf(shop, ref), "LimitsFact"),
  };
}

/** Clearances of a fit, at 20 °C and in each `hot` and `cold` line, against what is wanted then. */
export function clearanceRows(shop: Shop, fit: string): readonly BandRow[] {
  const { system } = settings(shop);
  const want = wanted(shop, fit);
  const found = clearance(shop, fit);
  const verdict = clearanceVerdict(shop, fit)?.verdict;
  const shown = want?.known === true ? want.value : undefined;
  const now: BandRow = {
    ref: fit,
    name: "at 20 °C",
    wanted: shown,
    band: found.known ? found.value : undefined,
    measured: found.known && found.value.status === "measured",
    wrong: verdict === "out",
    uncertainty:
      found.known && found.value.status === "measured"
        ? found.value.budget?.expanded
        : undefined,
    words: found.known
      ? `${showRange(found.value.low, found.value.high, system, found.value.step)}, ${judgedWords(found.value.status, verdict)}${uncertaintyWords(found.value.status, found.value.budget?.expanded, system)}`
      : notKnown(found),
  };
  return [
    now,
    ...warmRows(shop, fit, "hot", hotCases(shop, fit)),
    ...warmRows(shop, fit, "cold", coldCases(shop, fit)),
  ];
}

function uncertaintyWords(
  status: string,
  expanded: number | undefined,
  system: System,
): string {
  return status === "measured" && expanded !== undefined
    ? `, U ${showUncertainty(expanded, system)} (95\u00A0%)`
    : "";
}

function warmRows(
  shop: Shop,
  fit: string,
  when: "hot" | "cold",
  cases: readonly WarmCase[],
): readonly BandRow[] {
  const { system } = settings(shop);
  const want = wantedWarm(shop, fit);
  const entry = entryOf(shop, fit);
  const facts =
    entry === undefined
      ? []
      : allOf(entry, when === "hot" ? "HotFact" : "ColdFact");
  return cases.map(({ number, found }, index) => {
    const bodies = facts[index]?.value;
    const at = bodies === undefined ? "" : ` (${bodiesWords(bodies, system)})`;
    return {
      ref: fit,
      name: `${when}${1 < cases.length ? ` ${String(number)}` : ""}${at}`,
      wanted: want?.known === true ? want.value : undefined,
      band: found.known ? found.value : undefined,
      measured: found.known && found.value.status === "measured",
      wrong: found.known && found.value.verdict === "out",
      words: found.known
        ? `${showRange(found.value.low, found.value.high, system, found.value.step)}, ${judgedWords(found.value.status, found.value.verdict)}`
        : notKnown(found),
    };
  });
}

function bodiesWords(bodies: Bodies, system: System): string {
  return (["shaft", "bush", "case"] as const)
    .flatMap((body) => {
      const at = bodies[body];
      return at === undefined ? [] : [`${body} ${showTemperature(at, system)}`];
    })
    .join(", ");
}

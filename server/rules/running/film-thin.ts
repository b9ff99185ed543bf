// The oil film of a running fit is too thin to keep its surfaces apart, or there is none that carries.
import {
  regimeLimits,
  trumpler,
  trumplerLeastFilm,
} from "../../core/film/film-ratio.ts";
import { showPressures } from "../../core/quantity/show-force.ts";
import { showNumbers, showTemperature } from "../../core/quantity/show.ts";
import { showFilms } from "../../core/quantity/show-running.ts";
import {
  carriesNone,
  filmOf,
  type FitFilm,
} from "../../model/evaluate/film.ts";
import { filmRatioOf } from "../../model/evaluate/film-ratio.ts";
import { clearance } from "../../model/evaluate/fit.ts";
import { isRun, specificLoad } from "../../model/evaluate/running.ts";
import { settings } from "../../model/evaluate/settings.ts";
import type { Shop } from "../../model/shop.ts";
import { relatedSizes } from "../fits/related-sizes.ts";
import type { Rule } from "../rule.ts";
import { ownThreshold } from "../threshold.ts";

export const filmThin: Rule = {
  code: "film-thin",
  level: "warning",
  about: ["fit"],
  check(shop, ref, entry) {
    if (!isRun(shop, ref)) return [];
    const { system } = settings(shop);
    const film = filmOf(shop, ref);
    const gap = clearance(shop, ref);
    const none = carriesNone(film);
    if (none !== undefined)
      return [
        {
          span: entry.nameSpan,
          message: `No oil film carries this fit: ${none}. Take less load, a longer bearing, less clearance or a thicker oil, or a material that bears it by its PV alone.`,
        },
      ];
    if (!film.known || !gap.known) return [];
    const related = relatedSizes(shop, ref);
    const own = ownThreshold(shop, "film-thin");
    const lefts = film.value.all.map(({ left }) => left);
    const [low, high] = [Math.min(...lefts), Math.max(...lefts)];
    const least =
      own === undefined
        ? trumplerLeastFilm(gap.value.journal.nominal)
        : "length" in own
          ? own.length
          : 0;
    if (low < least) {
      const limit = showFilms(least, least, system);
      const isAlike = limit === showFilms(low, low, system);
      return [
        {
          span: entry.nameSpan,
          message: `The least oil film is ${showFilms(low, high, system)}${film.value.isWarm ? `, the least at ${film.value.worst.gap}` : ""}${isAlike ? `, a hair under ${limit}, which` : `, and ${limit}`} is the least to have at this size${own === undefined ? "" : " in this job"}. Take a thicker or cooler oil, less load, a longer bearing or less clearance.`,
          related,
          value: low,
        },
      ];
    }
    const ratio = filmRatioOf(shop, ref);
    const wanted =
      own === undefined ? regimeLimits.full : "share" in own ? own.share : 0;
    if (!ratio.known || wanted <= ratio.value.low)
      return own === undefined
        ? beyondTrumpler(shop, ref, film.value).map((message) => ({
            span: entry.nameSpan,
            message,
            related,
          }))
        : [];
    return [
      {
        span: entry.nameSpan,
        message: `The oil film is ${showNumbers(ratio.value.low, ratio.value.high)} times the roughness of its surfaces, and ${showNumbers(wanted, wanted)} is the least for a full film: lubrication is ${ratio.value.regime} at the least. Take smoother surfaces or a thicker oil.`,
        related,
        value: ratio.value.low,
        dimension: "ratio",
      },
    ];
  },
};

/** What Trumpler asks of a full film besides its thickness: the oil not too hot, and the start not too heavily loaded. */
function beyondTrumpler(
  shop: Shop,
  fit: string,
  { all }: FitFilm,
): readonly string[] {
  const { system } = settings(shop);
  // the gap is as warm as the mean of the oil that enters and that leaves; where the case cools it, all of it is as warm
  const hottest = Math.max(
    ...all.map(
      ({ film: { cooledBy, effectiveTemperature, oilRise } }) =>
        effectiveTemperature + (cooledBy === "case" ? 0 : oilRise / 2),
    ),
  );
  const load = specificLoad(shop, fit);
  const heat = trumpler.hottestOil;
  const start = trumpler.startLoad;
  return [
    ...(heat < hottest
      ? [
          `The oil leaves the film at up to ${showTemperature(hottest, system)}, and ${showTemperature(heat, system)} is the most that it bears for long. Let it enter cooler, or take more clearance, a thinner oil or less load.`,
        ]
      : []),
    ...(load.known && start * (1 + 1e-12) < load.value.high
      ? [
          `The film carries it running, but each start is on ${showPressures(load.value.high, load.value.high, system)} before there is one, and ${showPressures(start, start, system)} is the most to start on. Take a longer bearing, start it unloaded, or write \`warn film-thin at\` with the least film of this job where such starts are meant.`,
        ]
      : []),
  ];
}

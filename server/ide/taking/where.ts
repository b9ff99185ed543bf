// Asks where readings are taken: at which places along the length, at how many angles each, or one diameter again and again.
import type { Choice, TakingPlan } from "../../protocol/guide.ts";
import { askOne, choice, type Interview } from "../interview.ts";
import { readingsOf, type Target } from "./targets.ts";
import { capitalised } from "../../model/sentences.ts";
import { allOf } from "../../rules/text/wording.ts";

/** Over every question before readings. */
export const TITLE = "Take readings";

type Where = Pick<TakingPlan, "fact" | "places" | "each">;

export function* askWhere(target: Target): Interview<Where> {
  const { entry, ref, isSwing } = target;
  const ways = isSwing === true ? swingWays(target) : waysOf(target);
  const given = yield* askOne(
    {
      key: `where-${isSwing === true ? "swing" : entry.kind === "reamer" || entry.kind === "pilot" ? "tool" : "part"}`,
      title: TITLE,
      about: `Where is ${ref} ${isSwing === true ? "turned" : "read"}?`,
      isKept: true,
    },
    ways.map(({ choice: each }) => each),
  );
  const way = ways.find(({ choice: { value } }) => value === given) ?? ways[0];
  if (way === undefined) throw new Error("there is no way to read it"); // waysOf gives some
  return way.where;
}

interface Way {
  readonly choice: Choice;
  readonly where: Where;
}

/** A turn at each place that was read, or at one. */
function swingWays({ entry, side }: Target): readonly Way[] {
  const named = [
    ...new Set(readingsOf(entry, side).flatMap(({ place }) => place ?? [])),
  ];
  const places = named.length === 0 ? ["near", "far"] : named;
  const way = (at: readonly string[], picked: boolean): Way => ({
    where: { fact: "swing", places: at.length === 0 ? [null] : at, each: 1 },
    choice: choice(
      ["swing", ...at].join(" "),
      at.length === 0 ? "At one place" : capitalised(allOf(at)),
      {
        beside: at.length < 2 ? "one turn" : "one turn each",
        picked,
      },
    ),
  });
  return [way(places, true), way([], false)];
}

function waysOf({
  entry,
  side,
}: Pick<Target, "entry" | "side">): readonly Way[] {
  const named = [
    ...new Set(readingsOf(entry, side).flatMap(({ place }) => place ?? [])),
  ];
  const isTool = entry.kind === "reamer" || entry.kind === "pilot";
  const usual: readonly (readonly [readonly string[], number])[] = isTool
    ? [
        [[], 2],
        [[], 3],
      ]
    : [
        [["near", "far"], 3],
        [["near", "far"], 2],
        [["near", "middle", "far"], 3],
        [[], 3],
        [[], 1],
      ];
  const own: readonly (readonly [readonly string[], number])[] =
    named.length === 0 || named.join() === "near,far" ? [] : [[named, 3]];
  const reads = [...own, ...usual].map(([places, each], index) =>
    readWay(places, each, index === 0),
  );
  return entry.kind === "bush" || isTool ? reads : [...reads, repeatWay(5)];
}

function readWay(
  places: readonly string[],
  each: number,
  picked: boolean,
): Way {
  const where: Where = {
    fact: "read",
    places: places.length === 0 ? [null] : places,
    each,
  };
  const at = places.length === 0 ? "At one place" : capitalised(allOf(places));
  const angles =
    each === 1
      ? "one reading"
      : `${String(each)} angles${1 < places.length ? " each" : ""}`;
  return {
    where,
    choice: choice(
      ["read", ...places, String(each)].join(" "),
      `${at}, ${angles}`,
      {
        beside:
          each === 1 ? "" : `${String(each * where.places.length)} readings`,
        below: [
          1 < each ? "gives out-of-round" : "",
          1 < places.length ? "gives taper" : "",
        ]
          .filter((part) => part !== "")
          .join(", "),
        picked,
      },
    ),
  };
}

function repeatWay(each: number): Way {
  return {
    where: { fact: "repeat", places: [null], each },
    choice: choice(
      `repeat ${String(each)}`,
      `The same diameter ${String(each)} times`,
      {
        beside: "repeats",
        below:
          "tells how well a reading repeats, and which is a stray; it is no size of its own",
      },
    ),
  };
}

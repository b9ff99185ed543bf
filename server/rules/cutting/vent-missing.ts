// Something is driven into a blind hole, and what is behind it cannot get out.
import { given, valueIn } from "../../model/entry.ts";
import { wanted } from "../../model/evaluate/wanted.ts";
import {
  boresOfHost,
  bushesOfHole,
  fitsOfBore,
  namedIn,
  pressesOfBush,
} from "../../model/evaluate/index-of.ts";
import { hostOf } from "../../model/evaluate/size.ts";
import { nameOf } from "../../model/reference.ts";
import { entryOf, type Shop } from "../../model/shop.ts";
import { factUnder } from "../fixes.ts";
import type { Rule } from "../rule.ts";

export const ventMissing: Rule = {
  code: "vent-missing",
  level: "warning",
  about: ["hole"],
  check(shop, ref, entry) {
    const depth = given(entry, "DepthFact");
    if (
      depth.state !== "given" ||
      depth.value.bottom !== "blind" ||
      given(entry, "VentedFact").state !== "absent"
    )
      return [];
    const driven = drivenInto(shop, ref);
    const [first] = driven;
    if (first === undefined) return [];
    return [
      {
        span: depth.span,
        message: `${ref} is blind and not vented, and ${first.what} into it: the air and oil behind hold it off its seat, or burst out. Give it a vent, or a flat or groove along what goes in, and write \`vented\`.`,
        related: driven.map((each) => ({ ref: each.ref, message: each.ref })),
        fixes: [
          {
            title: "Write `vented`, where it has a vent",
            safe: false,
            edits: [factUnder(shop, ref, "vented") ?? []].flat(),
          },
        ],
      },
    ];
  },
};

interface Driven {
  readonly ref: string;
  readonly what: string;
}

/** The bushes that are pressed into a hole, and the journals that want to be driven into a bore of it. */
function drivenInto(shop: Shop, hole: string): readonly Driven[] {
  const bushes = bushesOfHole(shop, hole);
  const pressed = bushes.filter(
    (bush) =>
      0 < pressesOfBush(shop, bush).length ||
      // held by something else than its press, it slips in
      valueIn(entryOf(shop, bush), "HeldFact") === undefined,
  );
  const twin = `bore ${nameOf(hole)}`;
  const bores = [
    ...bushes.flatMap((bush) => boresOfHost(shop, bush)),
    ...(entryOf(shop, twin) !== undefined &&
    hostOf(shop, twin) === hostOf(shop, hole)
      ? [twin]
      : []),
  ];
  const shafts = bores.flatMap((bore) =>
    fitsOfBore(shop, bore).flatMap((fit) => {
      const want = wanted(shop, fit);
      const journal = namedIn(shop, fit)[0];
      return want?.known === true && want.value.low < 0 && journal !== undefined
        ? [journal]
        : [];
    }),
  );
  return [
    ...pressed.map((bush) => ({ ref: bush, what: `${bush} is pressed` })),
    ...shafts.map((ref) => ({ ref, what: `${ref} is driven` })),
  ];
}

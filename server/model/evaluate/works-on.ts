// What a step works on: what it cuts, presses and checks, and what that is made of. It says nothing of how any of it stands.
import { allOf, valueIn } from "../entry.ts";
import { entryOf, query, refOf, type Shop } from "../shop.ts";
import { boresOfHost, boresOfLine, fitsOfBore, namedIn } from "./index-of.ts";
import { stepValue } from "./order.ts";
import { hostOf } from "./size.ts";
import { kindOf } from "../reference.ts";

/** Full references, each once: first those that the step itself names. */
export const worksOn = query<readonly string[]>("works-on", (shop, ref) => {
  const { cuts, presses, checks } = stepValue(shop, ref);
  return [
    ...new Set([
      ...presses,
      ...cuts,
      ...checks,
      ...[...presses, ...cuts, ...checks].flatMap((each) => madeOf(shop, each)),
    ]),
  ];
});

function madeOf(shop: Shop, ref: string): readonly string[] {
  const named = namedIn(shop, ref).flatMap((each) => each ?? []);
  switch (kindOf(ref)) {
    case "press": {
      // a press closes the bore that its bush has, and so the fit in it
      const bores = named.flatMap((bush) => boresOfHost(shop, bush));
      return [...named, ...bores, ...fitsOf(shop, bores)];
    }
    case "line": {
      const bores = boresOfLine(shop, ref);
      const fits = fitsOf(shop, bores);
      return [
        ...toolsOf(shop, ref),
        ...bores,
        ...bores.flatMap((bore) => hostOf(shop, bore) ?? []),
        ...fits,
        ...fits.flatMap((fit) => namedIn(shop, fit)[0] ?? []),
      ];
    }
    case "fit":
      return named;
    default:
      return [];
  }
}

function fitsOf(shop: Shop, bores: readonly string[]): readonly string[] {
  return bores.flatMap((bore) => fitsOfBore(shop, bore));
}

function toolsOf(shop: Shop, line: string): readonly string[] {
  const entry = entryOf(shop, line);
  if (entry === undefined) return [];
  const reamer = refOf(shop, valueIn(entry, "ReamFact"));
  const pilots = allOf(entry, "LinePilotFact").flatMap(
    ({ value }) => refOf(shop, value?.pilot) ?? [],
  );
  return reamer === undefined ? pilots : [reamer, ...pilots];
}

// The gate before metal is cut: what a cutting or pressing step still waits for.
import type { Band } from "../../core/quantity/band.ts";
import { metresToTenths } from "../../core/quantity/exact.ts";
import { allOf, given } from "../entry.ts";
import {
  entryOf,
  isWhole,
  query,
  queryOfShop,
  refOf,
  refsOfKind,
  type Shop,
} from "../shop.ts";
import { boreSize } from "./bore.ts";
import { clearance, clearanceVerdict } from "./fit.ts";
import { boresOfLine, fitsOfBore, namedIn } from "./index-of.ts";
import { wanted } from "./wanted.ts";
import { acceptedBy } from "./concessions.ts";
import { interferenceOf, interferenceVerdict } from "./press.ts";
import { isBorne } from "./wear.ts";
import { judgeEstimate, sizeOf, sizeVerdict } from "./size.ts";
import { stepValue } from "./order.ts";

export interface Wanting {
  /** Full reference of the entry that is in the way. */
  readonly ref: string;
  /** "journal front is not measured" */
  readonly text: string;
  /** The fact that would settle it. */
  readonly fact: string;
}

export interface Gate {
  /** What is in the way; empty where nothing is known to be. */
  readonly wanting: readonly Wanting[];
  /** A line that it hangs on can't be read, which is said there: the step can't be called ready. */
  readonly unread: boolean;
}

type Found = Wanting | "unread";

/** What is in the way of a step that cuts or presses. */
export const gateOf = query<Gate>("gate", (shop, ref) => {
  const step = stepValue(shop, ref);
  const isGated = 0 < step.cuts.length + step.presses.length;
  const found: readonly Found[] = [
    ...step.cuts.flatMap((line) => wantingForLine(shop, line)),
    ...step.presses.flatMap((press) => wantingForPress(shop, press)),
  ];
  const wanting = found.filter((each) => each !== "unread");
  return {
    wanting: wanting.filter(
      (each, index) =>
        wanting.findIndex((other) => other.text === each.text) === index,
    ),
    // an entry that is missing or can't be told may be the fit that would be in the way
    unread:
      found.includes("unread") ||
      (isGated && !(isWhole(shop) && fitsAreRead(shop))),
  };
});

/** Asked by every step that cuts: looked at once for all of them, or steps times fits would hang on each other. */
const fitsAreRead = queryOfShop<boolean>("fits-are-read", (shop) =>
  refsOfKind(shop, "fit").every((fit) =>
    namedIn(shop, fit).every((named) => named !== undefined),
  ),
);

function wantingForLine(shop: Shop, line: string): readonly Found[] {
  const entry = entryOf(shop, line);
  const isRead =
    entry?.damaged === false &&
    allOf(entry, "LineBoreFact").every(
      ({ value }) => refOf(shop, value?.bore) !== undefined,
    );
  return [
    ...(isRead ? [] : ["unread" as const]),
    ...boresOfLine(shop, line).flatMap((bore) => {
      const fits = fitsOfBore(shop, bore);
      const journals = fits.flatMap((fit) => {
        const journal = namedIn(shop, fit)[0];
        return journal === undefined ? [] : wantingFeature(shop, journal);
      });
      return 0 < journals.length
        ? journals
        : wantingBore(shop, line, bore, fits);
    }),
  ];
}

function wantingBore(
  shop: Shop,
  line: string,
  bore: string,
  fits: readonly string[],
): readonly Found[] {
  const size = boreSize(shop, bore);
  if (!size.known) {
    if (size.silent) return ["unread"];
    // of a bore that is still to be cut the tool is asked for, not a reading
    const first = size.needs.find((each) => each.ref !== bore) ?? size.needs[0];
    return [
      {
        ref: first?.ref ?? line,
        text: `${bore} is not foretold${first === undefined ? "" : `: it needs ${first.text}`}`,
        fact: first?.fact ?? "ream",
      },
    ];
  }
  // a bore that is already read is no longer to be cut: its fit is judged by itself
  if (size.value.status === "measured") return [];
  return [
    ...fits.flatMap((fit): readonly Found[] => {
      if (wanted(shop, fit)?.known === false) return ["unread"];
      const found = clearance(shop, fit);
      const judged = clearanceVerdict(shop, fit);
      if (!found.known || judged === undefined || judged.verdict === "in")
        return [];
      if (judged.verdict === "out" && fitIsSignedFor(shop, fit)) return [];
      const text = `${fit} is foretold ${judged.verdict === "out" ? "out of" : "not surely within"} what it wants`;
      return [{ ref: fit, text, fact: "want" }];
    }),
    ...wantingLimits(shop, bore, size.value),
  ];
}

/** A bore that is foretold is held against its own limits too. */
function wantingLimits(
  shop: Shop,
  bore: string,
  size: Parameters<typeof judgeEstimate>[1] & { readonly from: string },
): readonly Found[] {
  const entry = entryOf(shop, bore);
  const limits = entry === undefined ? undefined : given(entry, "LimitsFact");
  if (limits?.state === "damaged") return ["unread"];
  if (limits?.state !== "given" || size.from === "limits") return [];
  const { verdict } = judgeEstimate(shop, size, limits.value, undefined);
  if (verdict === "in") return [];
  const text = `${bore} is foretold ${verdict === "out" ? "out of" : "not surely within"} its limits`;
  return [{ ref: bore, text, fact: "limits" }];
}

function wantingForPress(shop: Shop, press: string): readonly Found[] {
  const [bush, hole] = namedIn(shop, press);
  if (bush === undefined || hole === undefined) return ["unread"];
  const ofHole = wantingFeature(shop, hole);
  const bushEntry = entryOf(shop, bush);
  const ofBush: readonly Found[] =
    bushEntry?.facts.some(
      (fact) => fact.rule === "BushReadFact" || fact.rule === "OdFact",
    ) === false
      ? [
          {
            ref: bush,
            text: `${bush} has neither limits nor a reading of its od`,
            fact: "od",
          },
        ]
      : [];
  if (0 < ofHole.length + ofBush.length) return [...ofHole, ...ofBush];
  const isUnread =
    bushEntry?.damaged === true ||
    bushEntry?.facts.some(
      (fact) =>
        (fact.rule === "BushReadFact" || fact.rule === "OdFact") &&
        fact.value === undefined,
    ) === true ||
    wanted(shop, press)?.known === false;
  if (isUnread) return ["unread"];
  return interferenceVerdict(shop, press)?.verdict === "out" &&
    !pressIsSignedFor(shop, press)
    ? [
        {
          ref: press,
          text: `${press} is out of the interference that it wants`,
          fact: "want",
        },
      ]
    : [];
}

/** A journal or hole that must be measured and in before its mate is cut or pressed. */
function wantingFeature(shop: Shop, ref: string): readonly Found[] {
  const size = sizeOf(shop, ref);
  if (!size.known && size.silent) return ["unread"];
  if (!size.known || size.value.status !== "measured")
    return [{ ref, text: `${ref} is not measured`, fact: "read" }];
  const entry = entryOf(shop, ref);
  if (entry !== undefined && given(entry, "LimitsFact").state === "damaged")
    return ["unread"];
  return sizeVerdict(shop, ref)?.verdict === "out" && !isBorne(shop, ref)
    ? [{ ref, text: `${ref} is outside its limits`, fact: "read" }]
    : [];
}

/** A clearance out of what is wanted, each end of it that is out within a signed concession. */
function fitIsSignedFor(shop: Shop, fit: string): boolean {
  const found = clearance(shop, fit);
  const want = wanted(shop, fit);
  if (!found.known || want?.known !== true) return false;
  const { low, high, atBest } = found.value;
  return endsAreSignedFor(shop, fit, want.value, [
    { code: "fit-tight", value: low, judged: atBest.least, side: "low" },
    { code: "fit-loose", value: high, judged: atBest.most, side: "high" },
  ]);
}

function pressIsSignedFor(shop: Shop, press: string): boolean {
  const found = interferenceOf(shop, press);
  const want = wanted(shop, press);
  if (!found.known || want?.known !== true) return false;
  const { asMade, atBest } = found.value;
  return endsAreSignedFor(shop, press, want.value, [
    {
      code: "press-light",
      value: asMade.low,
      judged: atBest.least,
      side: "low",
    },
    {
      code: "press-heavy",
      value: asMade.high,
      judged: atBest.most,
      side: "high",
    },
  ]);
}

/** `judged` is what is held against the bound; `value` what is signed for. All m. */
function endsAreSignedFor(
  shop: Shop,
  ref: string,
  bounds: Band,
  ends: readonly {
    readonly code: string;
    readonly value: number;
    readonly judged: number;
    readonly side: "low" | "high";
  }[],
): boolean {
  return ends.every(({ code, value, judged, side }) => {
    const tenths = metresToTenths(judged);
    const isWithin =
      side === "low"
        ? metresToTenths(bounds.low) <= tenths
        : tenths <= metresToTenths(bounds.high);
    return isWithin || acceptedBy(shop, ref, { code, value }) !== undefined;
  });
}

// The gate before metal is cut: what a cutting or pressing step still waits for.
import { entryOf, query, type Shop } from "../shop.ts";
import { boreSize } from "./bore.ts";
import { clearance, clearanceVerdict } from "./fit.ts";
import { boresOfLine, fitsOfBore, namedIn } from "./index-of.ts";
import { sizeOf, sizeVerdict } from "./size.ts";
import { stepValue } from "./order.ts";

export interface Wanting {
  /** Full reference of the entry that is in the way. */
  readonly ref: string;
  /** "journal front is not measured" */
  readonly text: string;
  /** The fact that would settle it. */
  readonly fact: string;
}

/** What is in the way of a step that cuts or presses; empty where nothing is. */
export const gateOf = query<readonly Wanting[]>("gate", (shop, ref) => {
  const step = stepValue(shop, ref);
  const wanting = [
    ...step.cuts.flatMap((line) => wantingForLine(shop, line)),
    ...step.presses.flatMap((press) => wantingForPress(shop, press)),
  ];
  return wanting.filter(
    (each, index) =>
      wanting.findIndex((other) => other.text === each.text) === index,
  );
});

function wantingForLine(shop: Shop, line: string): readonly Wanting[] {
  return boresOfLine(shop, line).flatMap((bore) =>
    fitsOfBore(shop, bore).flatMap((fit) => {
      const journal = namedIn(shop, fit)[0];
      if (journal === undefined) return [];
      const ofJournal = wantingFeature(shop, journal);
      if (0 < ofJournal.length) return ofJournal;
      return wantingBore(shop, line, bore, fit);
    }),
  );
}

function wantingBore(
  shop: Shop,
  line: string,
  bore: string,
  fit: string,
): readonly Wanting[] {
  const size = boreSize(shop, bore);
  if (!size.known) {
    if (size.silent) return [];
    const [first] = size.needs;
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
  const found = clearance(shop, fit);
  const judged = clearanceVerdict(shop, fit);
  if (!found.known || judged === undefined) return [];
  return judged.verdict === "in"
    ? []
    : [
        {
          ref: fit,
          text: `${fit} is foretold ${judged.verdict === "out" ? "out of" : "not surely within"} what it wants`,
          fact: "want",
        },
      ];
}

function wantingForPress(shop: Shop, press: string): readonly Wanting[] {
  const [bush, hole] = namedIn(shop, press);
  const ofHole = hole === undefined ? [] : wantingFeature(shop, hole);
  const bushEntry = bush === undefined ? undefined : entryOf(shop, bush);
  const isRead =
    bushEntry?.facts.some(
      (fact) => fact.rule === "BushReadFact" || fact.rule === "OdFact",
    ) ?? true;
  return isRead || bush === undefined
    ? ofHole
    : [
        ...ofHole,
        {
          ref: bush,
          text: `${bush} has neither limits nor a reading of its od`,
          fact: "od",
        },
      ];
}

/** A journal or hole that must be measured and in before its mate is cut or pressed. */
function wantingFeature(shop: Shop, ref: string): readonly Wanting[] {
  const size = sizeOf(shop, ref);
  if (!size.known)
    return size.silent
      ? []
      : [{ ref, text: `${ref} is not measured`, fact: "read" }];
  if (size.value.status !== "measured")
    return [{ ref, text: `${ref} is not measured`, fact: "read" }];
  return sizeVerdict(shop, ref)?.verdict === "out"
    ? [{ ref, text: `${ref} is outside its limits`, fact: "read" }]
    : [];
}

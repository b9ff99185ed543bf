// What may stand at the margin: the entries of the language, each as its opening line and whole with its usual facts; and first of all the
// ones that the record lacks, with the names that they belong to.
import {
  ENTRIES,
  entrySpec,
  factSpec,
  type EntryKind,
} from "../../grammar/vocabulary.ts";
import { boresOfLine, namedIn } from "../model/evaluate/index-of.ts";
import { orderOf } from "../model/evaluate/order.ts";
import type { OpenFile } from "../model/project.ts";
import { entryOf, refsOfKind, type Shop } from "../model/shop.ts";
import { OF_CRIB } from "./crib-kinds.ts";
import type { Offer } from "./completion-item.ts";
import { fillingOf, MATES, newNames, unmated } from "./completion-names.ts";
import { nameOf } from "../model/reference.ts";
import {
  EMPTY,
  inTurn,
  withForm,
  withText,
  type Filling,
  type Snippet,
} from "./completion-snippet.ts";

/** The facts that an entry mostly has, in the order that they are written. */
const USUAL: Readonly<Record<EntryKind, readonly string[]>> = {
  job: ["title", "units", "use", "opened"],
  shop: ["units"],
  part: ["material"],
  journal: ["length", "limits", "read"],
  hole: ["limits", "boss", "depth", "read"],
  bush: ["material", "construction", "od", "id", "length"],
  bore: ["limits"],
  press: ["want"],
  fit: ["want", "runs", "load", "oil", "feed", "hot"],
  line: ["bore", "bore", "ream", "pilot"],
  stack: ["plus", "minus", "want"],
  step: ["do"],
  concession: ["allows", "up", "why"],
  reamer: ["size", "oversize", "drive", "material", "flutes"],
  pilot: ["od", "length"],
  gauge: ["kind", "resolution", "uncertainty", "calibrated", "due"],
  material: ["expansion", "modulus", "poisson", "yield"],
  oil: ["viscosity", "density"],
  route: ["step", "step"],
  lesson: ["reamer", "oversize", "between"],
};

const MOST_LACKING = 12;

export function entryOffers(
  open: OpenFile,
  today: string | undefined,
): readonly Offer[] {
  const { shop, file } = open;
  const opening = file.entries.find(
    ({ kind }) => kind === "job" || kind === "shop",
  )?.kind;
  // a fact is filled for an entry of its kind that has no name yet
  const fillingFor = (kind: EntryKind): Filling =>
    fillingOf(open, `${kind} `, today);
  const kinds = ENTRIES.filter(
    ({ kind }) => opening === undefined || (kind !== "job" && kind !== "shop"),
  ).map((each) => each.kind);
  return [
    ...lacking(shop, fillingFor),
    ...kinds.flatMap((kind, index): readonly Offer[] => {
      const rank = 10 + rankOf(kind, opening) + index / 100;
      const spec = entrySpec(kind);
      if (spec === undefined) return [];
      const filling = fillingFor(kind);
      const names = newNames(shop, kind);
      const openingLine = headOf(spec.form, spec.rule, names, filling);
      const whole = withFacts(openingLine, kind, USUAL[kind], filling);
      return [
        {
          label: kind,
          kind: "entry",
          insertText: openingLine.text,
          isSnippet: true,
          detail: spec.form,
          documentation: spec.means,
          rank,
        },
        {
          label: `${kind} with ${[...new Set(USUAL[kind])].join(", ")}`,
          kind: "template",
          insertText: whole.text,
          isSnippet: true,
          detail: "whole",
          documentation: spec.means,
          filterText: kind,
          rank: rank + 0.005,
        },
      ];
    }),
  ];
}

function rankOf(kind: EntryKind, opening: EntryKind | undefined): number {
  if (kind === "job" || kind === "shop") return 0;
  return (opening === "shop") === OF_CRIB.has(kind) ? 1 : 2;
}

/** The opening line, with the names that are likely in place of NAME. */
function headOf(
  form: string,
  rule: string,
  names: readonly string[],
  filling: Filling,
): Snippet {
  let first = true;
  const named: Filling = {
    ...filling,
    namesFor(word, of) {
      if (word !== "NAME" || !first) return filling.namesFor(word, of);
      first = false;
      return names;
    },
  };
  return withForm(EMPTY, form, rule, named);
}

function withFacts(
  before: Snippet,
  kind: EntryKind,
  words: readonly string[],
  filling: Filling,
): Snippet {
  const next = inTurn(filling);
  return words.reduce((snippet, word) => {
    const spec = factSpec(kind, word);
    return spec === undefined
      ? snippet
      : withForm(withText(snippet, "\n  "), spec.form, spec.rule, next);
  }, before);
}

/** Whole entries that the record lacks: a fit for a journal without one, a line for bores that none cuts. */
function lacking(
  shop: Shop,
  fillingFor: (kind: EntryKind) => Filling,
): readonly Offer[] {
  return [
    ...(["bush", "bore", "press", "fit"] as const).flatMap((kind) =>
      mates(shop, kind, fillingFor(kind)),
    ),
    ...missingLine(shop, fillingFor("line")),
    ...missingSteps(shop, fillingFor("step")),
  ].slice(0, MOST_LACKING);
}

function mates(
  shop: Shop,
  kind: "bush" | "bore" | "press" | "fit",
  filling: Filling,
): readonly Offer[] {
  const [of, slot] = MATES[kind] ?? [];
  if (of === undefined || slot === undefined) return [];
  return unmated(shop, of, kind, slot).flatMap((ref): readonly Offer[] => {
    const name = nameOf(ref);
    if (entryOf(shop, `${kind} ${name}`) !== undefined) return [];
    const head = mateHead(shop, kind, ref, name);
    return head === undefined
      ? []
      : [lackingOffer(head, kind, `${ref} has no ${kind} yet`, filling)];
  });
}

/** "fit front of journal front in bore front"; undefined where its other half is not there to be named. */
function mateHead(
  shop: Shop,
  kind: "bush" | "bore" | "press" | "fit",
  ref: string,
  name: string,
): string | undefined {
  if (kind === "bush" || kind === "bore") return `${kind} ${name} in ${ref}`;
  const other =
    kind === "fit"
      ? [`bore ${name}`, ...unmated(shop, "bore", "fit", 1)].find(
          (bore) => entryOf(shop, bore) !== undefined,
        )
      : namedIn(shop, ref)[0];
  return other === undefined
    ? undefined
    : `${kind} ${name} of ${ref} in ${other}`;
}

function lackingOffer(
  head: string,
  kind: EntryKind,
  detail: string,
  filling: Filling,
): Offer {
  const snippet = withFacts(withText(EMPTY, head), kind, USUAL[kind], filling);
  return {
    label: head,
    kind: "template",
    insertText: snippet.text,
    isSnippet: true,
    detail,
    rank: 0,
  };
}

/** Bores that a fit runs in and no line cuts, one line for all of them. */
function missingLine(shop: Shop, filling: Filling): readonly Offer[] {
  const cut = new Set(
    refsOfKind(shop, "line").flatMap((ref) => boresOfLine(shop, ref)),
  );
  const bores = refsOfKind(shop, "bore").filter((ref) => !cut.has(ref));
  if (bores.length === 0 || MOST_LACKING < bores.length) return [];
  const reaming = factSpec("line", "ream");
  if (reaming === undefined) return [];
  const head = withForm(EMPTY, "line NAME", "LineEntry", filling);
  const listed = bores.reduce(
    (snippet, ref) =>
      withForm(
        withText(snippet, `\n  bore ${nameOf(ref)}`),
        " from Z to Z",
        "LineBoreFact",
        filling,
      ),
    head,
  );
  const whole = withForm(
    withText(listed, "\n  "),
    reaming.form,
    reaming.rule,
    filling,
  );
  return [
    {
      label: `line of ${bores.join(", ")}`,
      kind: "template",
      insertText: whole.text,
      isSnippet: true,
      detail: "no line cuts these yet",
      rank: 1,
    },
  ];
}

/** Steps for the presses that no step makes, and for the lines that none cuts. */
function missingSteps(shop: Shop, filling: Filling): readonly Offer[] {
  const { steps } = orderOf(shop);
  const pressed = new Set(steps.flatMap((step) => step.presses));
  const cut = new Set(steps.flatMap((step) => step.cuts));
  return [
    ...stepFor(
      "presses",
      refsOfKind(shop, "press").filter((ref) => !pressed.has(ref)),
      filling,
    ),
    ...stepFor(
      "cuts",
      refsOfKind(shop, "line").filter((ref) => !cut.has(ref)),
      filling,
    ),
  ];
}

function stepFor(
  word: "presses" | "cuts",
  refs: readonly string[],
  filling: Filling,
): readonly Offer[] {
  if (refs.length === 0 || MOST_LACKING < refs.length) return [];
  const head = withForm(EMPTY, "step NAME", "StepEntry", filling);
  return [
    {
      label: `step that ${word} ${refs.join(", ")}`,
      kind: "template",
      insertText: withText(head, `\n  ${word} ${refs.join(", ")}`).text,
      isSnippet: true,
      detail: "in no step yet",
      rank: 2,
    },
  ];
}

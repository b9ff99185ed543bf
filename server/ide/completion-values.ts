// What may stand in places that name no entry: dates, stages, places, names, codes of findings, cautions, grades and sizes.
import { letterSizes, numberSizes } from "../core/line/gauge-sizes.ts";
import { tenthsToMetres } from "../core/quantity/exact.ts";
import { showLength } from "../core/quantity/show.ts";
import { CAUTIONS } from "../model/cautions.ts";
import { allOf } from "../model/entry.ts";
import type { OpenFile } from "../model/project.ts";
import { findingsIn } from "../rules/check.ts";
import { tokenText, type Writing } from "./completion-caret.ts";
import type { Offer } from "./completion-item.ts";
import {
  codesToAllow,
  codesToWarn,
  membersOf,
  newNames,
  peopleIn,
  placesIn,
} from "./completion-names.ts";
import { levelOf, summaryOf } from "./hover-findings.ts";
import { escaped } from "../markup/markdown.ts";
import { choiceMeaning } from "./hover-words.ts";

/** Ranks: what continues a line before what only says more exactly what stands. */
export const RANK = { names: 0, words: 10, units: 20, classes: 30 } as const;

/** Offers for what thou.ohm describes so; none for what only the writer knows. */
export function valueOffers(
  described: string,
  writing: Writing,
): readonly Offer[] {
  return OTHERS[described]?.(writing) ?? [];
}

const WORD_ORDER = [
  "to",
  "with",
  "at",
  "as",
  "from",
  "of",
  "in",
  "by",
  "on",
  "station",
];

export function wordOffer(word: string, means: string | undefined): Offer {
  const place = WORD_ORDER.indexOf(word);
  return {
    label: word,
    kind: "word",
    detail: means ?? "",
    rank: RANK.words + (place === -1 ? 0 : place / 100),
  };
}

function plainValues(
  values: readonly (readonly [string, string])[],
): readonly Offer[] {
  return values.map(([label, detail]) => ({
    label,
    kind: "value",
    detail,
    rank: RANK.names,
  }));
}

function nameOffers(
  names: readonly string[],
  detail: string,
): readonly Offer[] {
  return names.map((label) => ({
    label,
    kind: "name",
    detail,
    rank: RANK.names + 5,
  }));
}

/** By what thou.ohm calls them. */
const OTHERS: Readonly<Record<string, (writing: Writing) => readonly Offer[]>> =
  {
    "the code of a finding": codeOffers,
    "a caution": cautionOffers,
    "a date": ({ today }) =>
      today === undefined
        ? []
        : [{ label: today, kind: "date", detail: "today", rank: RANK.names }],
    "a stage": () =>
      ["bought", "pressed", "roughed", "finished", "run"].map((stage) =>
        wordOffer(stage, choiceMeaning(stage)),
      ),
    "a place": ({ open, spot }) =>
      nameOffers(placesIn(open, spot.entry), "a place that is used already"),
    "a member of the stack": ({ spot }) =>
      nameOffers(membersOf(spot.entry), "a member of this stack"),
    "a name": ({ open, caret, rule, kind }) =>
      rule.endsWith("Entry") && caret.tokens.length === 1
        ? nameOffers(
            newNames(open.shop, kind),
            `a ${kind} of this name is missing`,
          )
        : nameOffers(peopleIn(open), "has signed here before"),
    "a kind of gauge": () =>
      ["micrometer", "bore-gauge", "plug", "indicator", "air"].map((each) =>
        wordOffer(each, choiceMeaning(each)),
      ),
    "a count": countOffers,
    "an SAE grade": () =>
      plainValues(
        ["10W", "20", "30", "40", "50", "60", "80", "90", "140"].map(
          (grade) => [grade, `SAE ${grade}`],
        ),
      ),
    "a letter": ({ open }) =>
      plainValues(
        letterSizes.map((size, index) => [
          String.fromCharCode(65 + index),
          gaugeSize(open, size),
        ]),
      ),
  };

function countOffers({ open, rule }: Writing): readonly Offer[] {
  if (rule === "GradeFact")
    return plainValues(
      [
        "10",
        "15",
        "22",
        "32",
        "46",
        "68",
        "100",
        "150",
        "220",
        "320",
        "460",
      ].map((grade) => [grade, `ISO VG ${grade}`]),
    );
  if (rule === "SwingFact" || rule === "BoreSwingFact") return lobeOffers(rule);
  if (rule !== "SizeFact") return [];
  return plainValues(
    numberSizes.map((size, index) => [
      String(80 - index),
      gaugeSize(open, size),
    ]),
  );
}

/** Numbers of lobes that two points don't see, of those that three points do. */
function lobeOffers(rule: string): readonly Offer[] {
  const lobes = rule === "SwingFact" ? ["3", "5", "7", "9"] : ["3", "9"];
  return plainValues(
    lobes.map((each) => [each, "rises of the pointer in one turn"]),
  );
}

/** A number or letter size, from ten-thousandths of an inch. */
function gaugeSize({ file }: OpenFile, tenThousandths: number): string {
  return showLength(
    tenthsToMetres(tenThousandths * 25_400),
    file.context.system ?? "inch",
  );
}

function codeOffers({ open, rule, spot }: Writing): readonly Offer[] {
  if (rule === "AllowsFact") {
    const found = new Map(
      findingsIn(open).map((each) => [each.code, each.entry ?? ""] as const),
    );
    return codesToAllow().map((code) => codeOffer(code, found.get(code)));
  }
  const given = new Set(
    allOf(spot.entry, "WarnFact").flatMap(({ value, span }) =>
      value === undefined || span.line === spot.number ? [] : [value.code],
    ),
  );
  return codesToWarn()
    .filter((code) => !given.has(code))
    .map((code) => codeOffer(code, undefined));
}

/** @param on the entry that has the finding now */
function codeOffer(code: string, on: string | undefined): Offer {
  const parts = [levelOf(code), on === undefined ? "" : `now on ${on}`];
  return {
    label: code,
    kind: "code",
    detail: parts.filter((part) => part !== "").join(", "),
    documentation: summaryOf(code),
    rank: RANK.names + (on === undefined ? 1 : 0),
  };
}

function cautionOffers({ caret }: Writing): readonly Offer[] {
  const given = new Set(caret.tokens.map((token) => tokenText(caret, token)));
  return CAUTIONS.filter((each) => !given.has(each.name)).map(
    ({ name, title, text }): Offer => ({
      label: name,
      kind: "caution",
      detail: title,
      documentation: escaped(text),
      rank: RANK.names,
    }),
  );
}

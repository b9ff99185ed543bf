// A case is cut with its joint not made as in service: the bores move when it is made up as it will run.
import { metresToTenths } from "../../core/quantity/exact.ts";
import { showIn, showLength, type System } from "../../core/quantity/show.ts";
import { given, type Entry } from "../../model/entry.ts";
import { ownBores } from "../../model/evaluate/index-of.ts";
import { partOfBore } from "../../model/evaluate/line-bores.ts";
import { settings } from "../../model/evaluate/settings.ts";
import { entryOf, type Shop } from "../../model/shop.ts";
import type { FactValues, NumberRange } from "../../model/values.ts";
import { factUnder } from "../fixes.ts";
import { isInJob } from "../order/in-job.ts";
import type { Draft, DraftEdit, DraftFix, Rule } from "../rule.ts";

export const jointNotAsService: Rule = {
  code: "joint-not-as-service",
  level: "error",
  about: ["line"],
  check(shop, ref, entry) {
    const { system } = settings(shop);
    const parts = new Set(
      ownBores(shop, ref).flatMap((bore) => partOfBore(shop, bore) ?? []),
    );
    return [...parts].flatMap((part) => {
      const service = entryOf(shop, part);
      if (service === undefined) return [];
      return [
        ...compare(shop, ref, entry, part, service, "JointFact", {
          word: "joint",
          show: (gasket) => showJoint(gasket, system),
          same: (cut, as) => metresToTenths(cut) === metresToTenths(as),
        }),
        ...compare(shop, ref, entry, part, service, "BoltsFact", {
          word: "bolts",
          show: (torque) => showTorque(torque, system),
          same: (cut, as) =>
            !isUnder(cut.low, as.low) && !isUnder(as.high, cut.high),
        }),
        ...compare(shop, ref, entry, part, service, "DowelsFact", {
          word: "dowels",
          show: (dowels) => String(dowels),
          same: (cut, as) => cut === as,
        }),
      ];
    });
  },
};

interface Comparison<T> {
  readonly word: string;
  readonly show: (value: T) => string;
  readonly same: (cut: T, service: T) => boolean;
}

/** The line's fact against the part's; nothing where the part does not state it. */
function compare<K extends "JointFact" | "BoltsFact" | "DowelsFact">(
  shop: Shop,
  ref: string,
  line: Entry,
  part: string,
  service: Entry,
  rule: K,
  { word, show, same }: Comparison<FactValues[K]>,
): readonly Draft[] {
  const as = given(service, rule);
  const cut = given(line, rule);
  if (as.state !== "given" || cut.state === "damaged") return [];
  if (cut.state === "given" && same(cut.value, as.value)) return [];
  const related = [
    { ref: part, span: as.span, message: `${word} of ${part} as in service` },
  ];
  const inService = `In service ${part} has ${word} ${show(as.value)}`;
  const written = service.block.lines[as.span.line]?.body ?? "";
  const fixes = (edit: DraftEdit | undefined): readonly DraftFix[] =>
    // a bare length of another file may be in another unit
    edit === undefined || !isInJob(shop, part)
      ? []
      : [
          {
            title: `Write \`${written}\`, as it will run`,
            safe: false,
            edits: [edit],
          },
        ];
  const why = "Cut it made up as it will run, or the bores move afterwards.";
  if (cut.state === "absent") {
    return [
      {
        span: line.nameSpan,
        message: `${inService}, and the line does not say it for the cut. ${why}`,
        related,
        fixes: fixes(factUnder(shop, ref, written)),
      },
    ];
  }
  return [
    {
      span: cut.span,
      message: `${inService}, and at the cut it is ${word} ${show(cut.value)}. ${why}`,
      related,
      fixes: fixes({ span: cut.span, text: written }),
    },
  ];
}

/** Torques are written in many units: what differs by less than a millionth is the same. */
function isUnder(torque: number, than: number): boolean {
  return torque < than * (1 - 1e-6);
}

function showJoint(gasket: number, system: System): string {
  return gasket === 0 ? "bare" : `gasket ${showLength(gasket, system)}`;
}

function showTorque({ low, high }: NumberRange, system: System): string {
  return showIn(low, high, system === "inch" ? "lbf-ft" : "N-m");
}

// Which findings a concession accepts: they become information that names it. Only a finding with a value can be accepted, by a concession
// that is signed, dated and bounded. What is wrong with a concession is said by the rules in concessions/.
import { acceptedBy, concessionsOn } from "../model/evaluate/concessions.ts";
import type { Shop } from "../model/shop.ts";
import type { EntryFinding } from "./rule.ts";

/** Whether any of these is of a value, which is what a concession accepts. */
export function canBeAccepted(findings: readonly EntryFinding[]): boolean {
  return findings.some(({ value }) => value !== undefined);
}

/** The findings of an entry, those within a concession turned into information that names it. */
export function withConcessions(
  shop: Shop,
  ref: string,
  findings: readonly EntryFinding[],
): readonly EntryFinding[] {
  if (concessionsOn(shop, ref).length === 0) return findings;
  return findings.map((finding) => {
    const by = acceptedBy(shop, ref, finding);
    return by === undefined
      ? finding
      : {
          ...finding,
          level: "information",
          accepted: by.name,
          message: `${finding.message} Accepted by ${by.ref}, signed by ${by.who ?? ""} on ${by.date ?? ""}.`,
          related: [
            ...(finding.related ?? []),
            { ref: by.ref, message: "what was signed for" },
          ],
        };
  });
}

// What stands against a step that waits for nothing: warnings and errors about what it works on that no concession accepts. Wherever a step is
// called next, they are told in the same breath.
import { showCount } from "../../core/quantity/show.ts";
import { worksOn } from "../../model/evaluate/works-on.ts";
import { entryOf, type Shop } from "../../model/shop.ts";
import { withConcessions } from "../concessions.ts";
import type { EntryFinding } from "../rule.ts";
import { findingsOfText } from "../text-findings.ts";

export interface Stands {
  /** Full reference of the entry that it stands at. */
  readonly ref: string;
  readonly level: "error" | "warning";
  readonly code: string;
  readonly message: string;
}

/**
 * Errors first, else in the order of what the step works on.
 * @param findingsOf what the rules say of an entry, before any concession
 */
export function standsAbout(
  shop: Shop,
  step: string,
  findingsOf: (shop: Shop, ref: string) => readonly EntryFinding[],
): readonly Stands[] {
  const found = worksOn(shop, step).flatMap((ref): readonly Stands[] => {
    const entry = entryOf(shop, ref);
    if (entry === undefined) return [];
    return [
      ...findingsOfText(entry),
      ...withConcessions(shop, ref, findingsOf(shop, ref)),
    ].flatMap(({ level, code, message }) =>
      level === "error" || level === "warning"
        ? { ref, level, code, message }
        : [],
    );
  });
  const of = (level: Stands["level"]): readonly Stands[] =>
    found.filter((each) => each.level === level);
  return [...of("error"), ...of("warning")];
}

/** "1 error and 2 warnings stand about what it works on" */
export function standCount(stands: readonly Stands[]): string {
  const count = (level: Stands["level"]): number =>
    stands.filter((each) => each.level === level).length;
  const said = (["error", "warning"] as const)
    .filter((level) => 0 < count(level))
    .map((level) => showCount(count(level), level));
  return `${said.join(" and ")} ${stands.length === 1 ? "stands" : "stand"} about what it works on`;
}

/** "press-heavy at press front" */
export function standName({ code, ref }: Stands): string {
  return `${code} at ${ref}`;
}

/** "1 error and 2 warnings stand about what it works on: press-heavy at press front, …"; "" where none does. */
export function standWords(stands: readonly Stands[]): string {
  return stands.length === 0
    ? ""
    : `${standCount(stands)}: ${[...new Set(stands.map(standName))].join(", ")}`;
}

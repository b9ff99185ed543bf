// What the editor offers to do about findings: the fixes that they bring, one by one or all safe ones of a file at once. What a fix
// changes is the rule's.
import type { Finding, Fix } from "../model/result.ts";
import type { Range } from "./position.ts";

export interface QuickFix {
  readonly finding: Finding;
  readonly fix: Fix;
  /** It is the one fix of its finding that needs no look. */
  readonly preferred: boolean;
}

/** The fixes of the findings that a range touches, in the order of the findings. */
export function quickFixes(
  findings: readonly Finding[],
  range: Range,
): readonly QuickFix[] {
  return findings
    .filter((finding) => touches(finding, range))
    .flatMap((finding) =>
      finding.fixes
        .filter((fix) => 0 < fix.edits.length || fix.creates !== undefined)
        .map((fix) => ({ finding, fix, preferred: fix === safeFix(finding) })),
    );
}

function touches({ place }: Finding, { start, end }: Range): boolean {
  return (
    (start.line < place.line ||
      (start.line === place.line && start.character <= place.end)) &&
    (place.line < end.line ||
      (place.line === end.line && place.start <= end.character))
  );
}

/** The one safe fix of a finding; two safe ones are a choice, and a choice needs a look. */
function safeFix({ fixes }: Finding): Fix | undefined {
  const [first, second] = fixes.filter(
    (fix) => fix.safe && 0 < fix.edits.length && fix.creates === undefined,
  );
  return second === undefined ? first : undefined;
}

/** The edits of all safe fixes that stay in the file and out of each other's way: of two that overlap the first of the file. */
export function fixAll(
  findings: readonly Finding[],
  path: string,
): Fix["edits"] {
  const taken: Fix["edits"][number][] = [];
  for (const finding of findings) {
    const edits = safeFix(finding)?.edits ?? [];
    const isFree = edits.every(
      ({ place }) =>
        place.file === path &&
        taken.every(
          (other) =>
            other.place.line !== place.line ||
            other.place.end < place.start ||
            place.end < other.place.start,
        ),
    );
    if (isFree) taken.push(...edits);
  }
  return taken;
}

// The findings of a file as an editor shows them. Which findings there are is the rules'.
import type { Finding } from "../model/result.ts";

/** A finding with the level and the sentence that a person sees. */
export type ShownFinding = Pick<
  Finding,
  "code" | "level" | "place" | "message" | "related"
>;

/** An accepted finding stays in sight, as information that says who accepted it. */
export function shown(finding: Finding): ShownFinding {
  const { code, place, related, accepted } = finding;
  return accepted === null
    ? finding
    : {
        code,
        place,
        related,
        level: "information",
        message: `${finding.message} Accepted by concession ${accepted}.`,
      };
}

/** Whether a finding reads as a fault while its line is still being typed. */
export function isFault({ level }: ShownFinding): boolean {
  return level === "error" || level === "warning";
}

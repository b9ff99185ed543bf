// Each finding as the editor shows it, with the levels that are set. Most findings of a report are those of the one before: they are shown as
// they were.
import type { Diagnostic } from "vscode-languageserver";
import { isFault } from "../ide/diagnostics.ts";
import { levelled, type Levels } from "../ide/levels.ts";
import type { Finding } from "../model/result.ts";
import { diagnosticOf, type Conversion } from "./convert.ts";

export interface ShownFinding {
  readonly diagnostic: Diagnostic;
  readonly isFault: boolean;
}

/** Undefined where its code is off. */
export type Show = (finding: Finding) => ShownFinding | undefined;

/** What a finding was shown as, with the levels that were set then. */
interface Kept {
  readonly levels: Levels;
  readonly item: ShownFinding | undefined;
}

export function createShow(conversion: Conversion, levels: () => Levels): Show {
  const kept = new WeakMap<Finding, Kept>();
  return (finding) => {
    const set = levels();
    const before = kept.get(finding);
    if (before?.levels === set) return before.item;
    const shown = levelled(finding, set);
    const item =
      shown === undefined
        ? undefined
        : {
            diagnostic: diagnosticOf(shown, conversion),
            isFault: isFault(shown),
          };
    // where another file is open the editor may know it by another address the next time
    if (finding.related.every(({ place }) => place.file === finding.place.file))
      kept.set(finding, { levels: set, item });
    return item;
  };
}

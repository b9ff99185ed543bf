// A made-up job with a made-up check: everything that a report has to show at least once. The numbers belong to nothing and are checked
// nowhere; they are there to be laid out.
import type { FileLines } from "../../grammar/lines.ts";
import type { FileCheck } from "../../server/model/result.ts";
import { finding, placeOf, result, type FakeWorld } from "./fake-project.ts";

export const WINCH = `job winch-layshaft
  title "Mooring winch 3, layshaft rebush"
  units inch
  use "crib.thou"

journal front on layshaft
  limits 0.8740 to 0.8745
  read near 0.87432 0.87428 with mic-1 at 68 F
\tread far\t0.8736 with mic-1   # worn under the seal

bore front in bush front
  limits 0.8755 to 0.8760

fit front of journal front in bore front
  want 0.0008 to 0.0016
  runs 240 rpm
`;

export const CRIB = `shop crib
  units inch
reamer r-8755
  sise 0.8755
`;

function winchCheck(path: string, lines: FileLines): FileCheck {
  const at = (words: string) => placeOf(path, lines, words);
  return {
    findings: [
      finding(at("want 0.0008 to 0.0016"), {
        code: "fit-loose",
        level: "error",
        entry: "fit front",
        message:
          "The clearance of fit front would be 0.0013 to 0.0024 in, and 0.0008 to 0.0016 in is wanted: it is up to 0.0008 in too much. " +
          "Cut the bore smaller, or make the journal good.",
        related: [
          {
            place: at("journal front on layshaft"),
            message: "Journal front reads down to 0.8736 in.",
          },
          {
            place: at("limits 0.8755 to 0.8760"),
            message: "Bore front may be up to 0.8760 in.",
          },
        ],
      }),
      finding(at("0.8736"), {
        code: "reading-off-limits",
        level: "warning",
        entry: "journal front",
        message:
          "0.8736 in is 0.0004 in under the least size of journal front, 0.8740 in.",
      }),
      finding(at("0.87432 0.87428"), {
        code: "out-of-round",
        level: "hint",
        entry: "journal front",
        message: "Journal front is 0.00004 in out of round.",
      }),
      finding(at("runs 240 rpm"), {
        code: "film-thin",
        level: "warning",
        entry: "fit front",
        message: "The film is thin at 240 rpm.",
        accepted: "slow-start",
      }),
    ],
    results: [
      result({
        entry: "journal front",
        kind: "size",
        low: 0.02218944,
        nominal: 0.0222,
        high: 0.022207728,
        status: "measured",
        verdict: "out",
        text: "0.87360 to 0.87432 in",
      }),
      result({
        entry: "journal front",
        kind: "taper",
        low: 0.00001,
        nominal: 0.00001,
        high: 0.00001,
        status: "measured",
        text: "0.0007 in",
      }),
      result({
        entry: "fit front",
        kind: "clearance",
        low: 3.3e-5,
        nominal: 4.5e-5,
        high: 6.1e-5,
        status: "predicted",
        verdict: "out",
        text: "0.0013 to 0.0024 in",
        working: [
          {
            formula: "clearance = bore - journal",
            with: "0.8755 - 0.8743",
            source: "",
          },
        ],
      }),
      result({
        entry: "fit front",
        kind: "hot-clearance",
        case: 1,
        low: -0,
        nominal: 4.5e-5,
        high: 6.1e-5,
        status: "predicted",
        verdict: "unsure",
        text: "0 to 0.0024 in",
      }),
      result({
        entry: "fit front",
        kind: "film",
        needs: [
          {
            ref: "fit front",
            fact: "oil",
            text: "the oil of fit front and its temperature",
          },
          { ref: "bore front", fact: "read", text: "a reading of bore front" },
        ],
      }),
      result({
        entry: "line layshaft",
        kind: "effective-clearance",
        of: "bore front",
        low: 2e-5,
        nominal: 2e-5,
        high: 2e-5,
        status: "predicted",
        verdict: "in",
        text: "0.0008 in",
      }),
    ],
  };
}

export const WINCH_WORLD: FakeWorld = {
  uses: { "winch.thou": ["crib.thou"] },
  checks: {
    "winch.thou": winchCheck,
    "crib.thou": (path, lines) => ({
      findings: [
        finding(placeOf(path, lines, "sise"), {
          code: "word-unknown",
          level: "error",
          entry: "reamer r-8755",
          message: '"sise" is no fact of a reamer. Did you mean size?',
        }),
      ],
      results: [],
    }),
  },
};

// Advice that nobody has to take: what clearance to want, from several sides, and how fast to ream. Ranges with their source, beside each
// other; none of it is a finding.
import type { Band } from "../core/quantity/band.ts";
import { showSpeedOfCut, showTurns } from "../core/quantity/show-running.ts";
import {
  UNIT_OF_SYSTEM,
  showNumbers,
  showRange,
  stepTaken,
  type System,
} from "../core/quantity/show.ts";
import { adviceFor, type AdviceRow } from "../model/evaluate/advice.ts";
import { filmFacts } from "../model/evaluate/film-facts.ts";
import {
  reamingAdviceFor,
  type BoreAdvice,
} from "../model/evaluate/reaming-advice.ts";
import { settings } from "../model/evaluate/settings.ts";
import type { Shop } from "../model/shop.ts";
import { neededText } from "../model/known.ts";
import { blocks, escaped, list, sentence, table } from "../markup/markdown.ts";

/** What clearance a fit may want: classes of the job's own system, the shop rule, the rule by speed, and the range of the film. */
export function wantedAdvice(shop: Shop, fit: string): string {
  const { system } = settings(shop);
  const rows = adviceFor(shop, fit).filter(
    (row) => row.kind !== "class" || isOfSystem(row, system),
  );
  if (rows.length === 0) return "";
  return blocks(
    "What may be wanted here, side by side (clearances, diametral; advice):",
    table(
      ["by", "clearance", "source"],
      rows.map(({ name, kind, low, high, source }) => [
        escaped(name),
        showRange(
          low,
          high,
          system,
          // a class has the digits that its standard gives it, advice no more than usual
          kind === "class" ? stepTaken([low, high]) : undefined,
        ),
        escaped(source),
      ]),
    ),
    rows.some(({ kind }) => kind === "film") ? "" : withoutFilm(shop, fit),
  );
}

/** Why the film has no range among the advice. */
function withoutFilm(shop: Shop, fit: string): string {
  const facts = filmFacts(shop, fit);
  if (facts.known)
    return "At no clearance does the film carry this load at this speed.";
  if (facts.because !== undefined)
    return `No range of the film: ${sentence(facts.because)}.`;
  const needed = neededText(facts.needs);
  return needed === "" ? "" : `The film's own range ${sentence(needed)}.`;
}

/** B4.1 calls its running fits RC1 to RC9; no ISO class begins so. */
function isOfSystem({ name }: AdviceRow, system: System): boolean {
  return name.startsWith("RC") === (system === "inch");
}

/** Speed, turns and feed for each bore of a line that reams; bores that ask the same share a row. */
export function reamingAdvice(shop: Shop, line: string): string {
  const all = reamingAdviceFor(shop, line);
  const { system } = settings(shop);
  const rows = new Map<string, { bores: string[]; advice: BoreAdvice }>();
  const reasons = new Set<string>();
  for (const found of all) {
    if (!found.known) {
      const reason =
        found.because ?? (found.silent ? "" : neededText(found.needs));
      if (reason !== "") reasons.add(reason);
      continue;
    }
    const { value } = found;
    const key = JSON.stringify([
      value.material,
      value.drive,
      value.advice.speed,
      value.advice.turns,
      value.advice.feed,
    ]);
    const row = rows.get(key);
    if (row === undefined)
      rows.set(key, { bores: [value.bore], advice: value });
    else row.bores.push(value.bore);
  }
  if (rows.size === 0 && reasons.size === 0) return "";
  return blocks(
    "How fast to ream (advice; makers' tables differ, and a worn machine runs slower):",
    table(
      ["bore", "drive", "surface speed", "turns", "feed", "source"],
      [...rows.values()].map(({ bores, advice }) =>
        adviceRow(bores, advice, system),
      ),
    ),
    list([...reasons].map((reason) => `Not said: ${sentence(reason)}.`)),
  );
}

function adviceRow(
  bores: readonly string[],
  { drive, tool, material, advice: { speed, turns, feed }, source }: BoreAdvice,
  system: System,
): readonly string[] {
  return [
    escaped(bores.join(", ")),
    `${drive}, ${tool === undefined ? "" : `${tool === "hss" ? "high-speed steel" : tool} `}in ${material.replaceAll("-", " ")}`,
    showSpeedOfCut(speed.low, speed.high, system),
    showTurns(turns.low, turns.high),
    feed === undefined
      ? drive === "hand"
        ? "as it draws itself in"
        : "unknown: the reamer's `flutes` are not written"
      : `${showNumbers(...feedIn(feed, system))} ${UNIT_OF_SYSTEM[system]} a turn`,
    escaped(source),
  ];
}

/** A range of feed in the system's unit of length. */
function feedIn({ low, high }: Band, system: System): [number, number] {
  const unit = system === "inch" ? 0.0254 : 0.001;
  return [low / unit, high / unit];
}

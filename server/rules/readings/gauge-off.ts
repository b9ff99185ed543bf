// The shop's records taught that a gauge reads otherwise than another does. Nothing is taken off its readings for that: someone decides.
import { meanInterval } from "../../core/learning/sample.ts";
import { showLength, type System } from "../../core/quantity/show.ts";
import { given, type Entry } from "../../model/entry.ts";
import { isSetOnRing } from "../../model/evaluate/gauge.ts";
import { settings } from "../../model/evaluate/settings.ts";
import { nameOf } from "../../model/reference.ts";
import { entryOf, refOf, type Shop } from "../../model/shop.ts";
import type { Learned } from "../../model/values.ts";
import { factUnder } from "../fixes.ts";
import type { DraftFix, Rule } from "../rule.ts";

/** Of 100 pairs that agree, one is said to be off. */
const COVERAGE = 0.99;

export const gaugeOff: Rule = {
  code: "gauge-off",
  level: "information",
  about: ["lesson"],
  check(shop, _, entry) {
    const about = given(entry, "LessonGaugeFact");
    const reads = given(entry, "LessonReadsFact");
    if (about.state !== "given" || reads.state !== "given") return [];
    const [gauge, against] = [about.value.gauge, about.value.against].map(
      (site) => refOf(shop, site),
    );
    const sure = meanInterval(reads.value, COVERAGE);
    if (gauge === undefined || against === undefined || !sure.valid) return [];
    const { low, high } = sure.value;
    if (low <= 0 && 0 <= high) return [];
    const { system } = settings(shop);
    const isTied = isSetOnRing(shop, against) && !isSetOnRing(shop, gauge);
    return [
      {
        span: reads.span,
        message: `${nameOf(gauge)} reads ${biasWords(reads.value, against, system)}, more than chance explains (99 %). ${
          isTied
            ? `${against} is set on a ring, so it is ${gauge} that is off: have it calibrated, or write what it \`adds\`, and learn again.`
            : `Which of the two is off can't be told from this: read a ring or a gauge block with both.`
        }`,
        related: [
          { ref: gauge, message: `${gauge}, which reads otherwise` },
          { ref: against, message: `${against}, which it was read against` },
        ],
        fixes: isTied
          ? correctingFix(shop, gauge, entry, reads.value.mean)
          : [],
      },
    ];
  },
};

/** "0.00005 in over bore-1, spread 0.00004 in from 12" */
function biasWords(
  { mean, spread = 0, count, step }: Learned,
  against: string,
  system: System,
): string {
  const size = (value: number): string =>
    showLength(Math.abs(value), system, step);
  return `${size(mean)} ${mean < 0 ? "under" : "over"} ${nameOf(against)}, spread ${size(spread)} from ${String(count)}`;
}

/**
 * Writes what the gauge adds, with what it added before taken in; and in the lesson what is then left of the difference, since a lesson
 * counts with what each gauge adds: learning again would say the same.
 */
function correctingFix(
  shop: Shop,
  gauge: string,
  lesson: Entry,
  bias: number,
): readonly DraftFix[] {
  const entry = entryOf(shop, gauge);
  const reads = given(lesson, "LessonReadsFact");
  if (entry === undefined || reads.state !== "given") return [];
  const adds = given(entry, "AddsFact");
  if (adds.state === "damaged") return [];
  const before = adds.state === "given" ? adds.value.value : 0;
  const body = lesson.block.lines[reads.span.line]?.body ?? "";
  const unit = /\bthou\b/u.test(body) ? THOU : UM;
  const after = Number(((before - bias) / unit.size).toFixed(unit.digits));
  const fact = `adds ${written(after, unit)}`;
  const left = written(bias / unit.size + after - before / unit.size, unit);
  const edit =
    adds.state === "given"
      ? { ref: gauge, span: adds.span, text: fact }
      : factUnder(shop, gauge, fact);
  const rest = /(?:\s+spread\b.*)?\s+from\b.*$/u.exec(body)?.[0] ?? "";
  return edit === undefined
    ? []
    : [
        {
          title: `Write \`${fact}\` under ${gauge}`,
          safe: false,
          edits: [edit, { span: reads.span, text: `reads ${left}${rest}` }],
        },
      ];
}

interface Unit {
  readonly symbol: string;
  readonly size: number;
  readonly digits: number;
}

/** Corrections are written to a tenth of a tenth, or of a micrometre. */
const THOU: Unit = { symbol: "thou", size: 25.4e-6, digits: 2 };
const UM: Unit = { symbol: "um", size: 1e-6, digits: 1 };

function written(value: number, { symbol, digits }: Unit): string {
  const shown = Math.abs(value).toFixed(digits);
  const isLess = value < 0 && Number(shown) !== 0;
  return `${isLess ? "-" : "+"}${shown} ${symbol}`;
}

// The traps of a reading's clauses: a tolerance behind its values, and `on` before its gauge.
import {
  readsOnWith,
  readsWhole,
  readsWith,
  wordBefore,
  type Asked,
  isReading,
} from "./asked.ts";
import type { Damage } from "./explain.ts";

/** `read 0.8743 +/- 0.0001` */
export function toleranceOfReading(
  body: string,
  asked: Asked,
): Damage | undefined {
  const found = /\s+(?:\+\s*\/?\s*-|\u00B1)\s*\.?\d.*$/u.exec(body);
  if (found === null || !isReading(asked)) return undefined;
  const head = body.slice(0, found.index);
  const start = wordBefore(head, head.length)?.start;
  if (start === undefined || !readsWhole(head, asked)) return undefined;
  const mended = `${head.slice(start)} # ${found[0].trim()}`;
  return {
    start,
    end: body.length,
    message: `A reading is what the gauge showed, and how sure it is stands with the gauge, as its \`uncertainty\`: write the value, and the rest behind a \`#\`, as in \`${mended}\`.`,
    mended,
  };
}

/** `read 0.8743 on mic-1`, where a date would stand */
export function onGauge(
  body: string,
  asked: Asked,
  stoppedAt: number,
): Damage | undefined {
  const found =
    /(?<=\s)on\s+(?:gauge\s+)?\p{L}[\p{L}-]*\d[\p{L}\d-]*(?!\S)/u.exec(body);
  if (found === null || !isReading(asked)) return undefined;
  const { 0: text, index: start } = found;
  const end = start + text.length;
  const mended = text.replace("on", "with");
  const change = { start, end, text: mended };
  if (!readsOnWith(body, change, asked.rule, stoppedAt)) return undefined;
  return {
    start,
    end,
    message: `Behind \`on\` comes a date, and a gauge behind \`with\`: write \`${mended}\`.`,
    mended,
    safe: readsWith(body, change, asked),
  };
}

// How a vee is spoken of, and how it is written: `on a 60 deg vee`, `in a vee block of 60°`, `vee 60`.
import type { Damage } from "./explain.ts";
import { readsWith } from "./mend.ts";

const SPOKEN =
  /(?:\b(?:on|in)\s+(?:(?:an?|the)\s+)?(?<before>\d[\d.]*)[\s-]*(?:deg(?:rees?)?|\u{B0})?[\s-]*vee(?:[\s-]*block)?|(?:\b(?:on|in)\s+)?(?:\b(?:an?|the)\s+)?\bvee(?:[\s-]*block)?(?:\s+of)?\s+(?<after>\d[\d.]*)\s*(?:deg(?:rees?)?|\u{B0})?)(?![\w-])/u;

export function veeAsSpoken(body: string, rule: string): Damage | undefined {
  const found = rule === "SwingFact" ? SPOKEN.exec(body) : null;
  const angle = found?.groups?.before ?? found?.groups?.after;
  if (found === null || angle === undefined) return undefined;
  const start = found.index;
  const end = start + found[0].length;
  const mended = `on vee ${angle} deg`;
  if (
    found[0] === mended ||
    !readsWith(body, { start, end, text: mended }, rule)
  )
    return undefined;
  return {
    start,
    end,
    message: `This is written \`${mended}\`.`,
    mended,
    safe: true,
  };
}

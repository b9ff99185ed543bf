// How a vee is spoken of, and how it is written: `on a 60 deg vee`, `in a vee block of 60°`, `vee 60`.
import type { Damage } from "./explain.ts";
import { readsWith, type Asked } from "./asked.ts";

const SPOKEN =
  /(?:\b(?:on|in)\s+(?:(?:an?|the)\s+)?\d[\d.]*[\s-]*(?:deg(?:rees?)?|\u{B0})?[\s-]*vee(?:[\s-]*block)?|(?:\b(?:on|in)\s+)?(?:\b(?:an?|the)\s+)?\bvee(?:[\s-]*block)?(?:\s+of)?\s+\d[\d.]*\s*(?:deg(?:rees?)?|\u{B0})?)(?![\w-])/u;

export function veeAsSpoken(body: string, asked: Asked): Damage | undefined {
  const found = SPOKEN.exec(body);
  if (found === null) return undefined;
  const { index: start } = found;
  const text = found[0].trimEnd();
  const end = start + text.length;
  const mended = text.replace(/\D*([\d.]+).*/u, "on vee $1 deg");
  if (!readsWith(body, { start, end, text: mended }, asked)) return undefined;
  return {
    start,
    end,
    message: `This is written \`${mended}\`.`,
    mended,
    safe: true,
  };
}

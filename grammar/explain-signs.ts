// The traps of how a number is typed: the sign that a drawing puts before a size, digits of another width, a blank beside the point.
import type { Damage } from "./explain.ts";
import type { Asked } from "./asked.ts";
import { replaced } from "./replaced.ts";

/** `nominal Ø25`, `fillet R2` */
export function drawingSign(body: string, asked: Asked): Damage | undefined {
  return replaced(body, asked, SIGNED, (text) => text.replace(/^\S\s*/u, ""), {
    says: (mended) =>
      `A size stands without the sign that a drawing puts before it: write \`${mended}\`.`,
    safe: true,
  });
}

/** `nominal ２５.0` */
export function wideDigits(body: string, asked: Asked): Damage | undefined {
  return replaced(body, asked, WIDE, (text) => text.normalize("NFKC"), {
    says: (mended) =>
      `These digits are of another width than usual: write \`${mended}\`.`,
    safe: true,
  });
}

/** `length 30 .5`, `length 30. 5`, `length 30 .5in` */
export function blankAtPoint(body: string, asked: Asked): Damage | undefined {
  return replaced(body, asked, PARTED, (text) => text.replace(/\s+/u, ""), {
    says: (mended) => `A number has no blank in it: write \`${mended}\`.`,
    safe: false,
  });
}

/** `hours 12 400 h` */
export function groupedDigits(body: string, asked: Asked): Damage | undefined {
  return replaced(
    body,
    asked,
    GROUPED,
    (text) => text.replaceAll(/[ \t\u{A0}]/gu, ""),
    {
      says: (mended) => `A number has no blank in it: write \`${mended}\`.`,
      safe: false,
    },
  );
}

const GROUPED =
  /(?<=\s)[1-9]\d{0,2}[ \t\u{A0}]+\d{3}(?:[ \t\u{A0}]+\d{3})?(?:\.\d+)?(?!\S)/gu;

// the letters are often typed for the sign
const SIGNED = /(?<=\s)[ØøΦφ⌀∅R]\s*\.?\d[\d.,/-]*(?: +\d+\/\d+)?/gu;
const WIDE = /(?<=\s)[+-]?[\d.．０-９]*[．０-９][\d.．０-９]*/gu;
const PARTED = /(?<=\s)\d+(?:\s+\.|\.\s+)\d+(?=["\p{L}]*(?!\S))/gu;

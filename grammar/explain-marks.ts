// The traps of marks: a full stop at a line's end, a remark in another dress than `#`.
import type { Damage } from "./explain.ts";
import { readsWhole, wordBefore } from "./mend.ts";

/** `length 30 mm.`, `read 24.99;` */
export function markAtEnd(body: string, rule: string): Damage | undefined {
  const last = wordBefore(body, body.length);
  if (last === undefined) return undefined;
  const written = body.slice(last.start);
  // a comma has more to follow
  const mended = written.replace(/[.;:!]+$/u, "");
  if (
    mended === written ||
    !readsWhole(body.slice(0, last.start) + mended, rule)
  )
    return undefined;
  return {
    ...last,
    message: `No mark stands at the end of a line: write \`${mended}\`.`,
    mended,
    safe: true,
  };
}

/** `length 30#ok`, `length 30 // ok`, `length 30 mm (1.18 in)` */
export function otherRemark(body: string, rule: string): Damage | undefined {
  const found = REMARK.exec(body);
  if (found?.groups === undefined) return undefined;
  const { mark = "", said = "" } = found.groups;
  const head = body.slice(0, found.index);
  if (!readsWhole(head, rule)) return undefined;
  const start = wordBefore(head, head.length)?.start ?? 0;
  const mended = `${head.slice(start)} # ${mark === "(" ? `(${said}` : said}`;
  return {
    start,
    end: body.length,
    message: `A remark goes behind a \`#\` with a blank before it: write \`${mended}\`.`,
    mended,
    safe: true,
  };
}

const REMARK = /\s*(?<mark>#|\/\/+|--+|\()\s*(?<said>.*)$/u;

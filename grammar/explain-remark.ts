// The trap of a `#`: it begins a remark, and of what stands behind it a fact takes nothing. `size #7`, `read #0.8743`, `title #3 winch`.
import { readsWhole, wordBefore } from "./asked.ts";
import type { Damage } from "./explain.ts";
import type { Line } from "./lines.ts";
import { expectAfter, STOP } from "./parse.ts";

/** What is said of a line that breaks off where its remark begins; undefined where the remark may well be one. */
export function valueInRemark(
  { text, indent, body, comment }: Line,
  rule: string,
  form: string,
): Damage | undefined {
  const last = wordBefore(body, body.length);
  const remark = /^#(?<gap>\s*)(?<said>.+?)\s*(?:\s#.*)?$/su.exec(
    text.slice(comment),
  );
  if (last === undefined || remark?.groups === undefined) return undefined;
  const { gap = "", said = "" } = remark.groups;
  const isClose = gap === "";
  const meant = meantBy(said, body, rule, isClose).find((each) =>
    readsWhole(`${body} ${each}`, { rule }),
  );
  if (meant === undefined && !isClose) return undefined;
  const word = body.slice(last.start);
  const mended = meant === undefined ? {} : { mended: `${word} ${meant}` };
  return {
    start: last.start,
    end: comment + 1 + gap.length + said.length - indent,
    message: `What stands behind a \`#\` is a remark, and so nothing follows \`${word}\`: ${meant === undefined ? `write it without the \`#\`. It is written \`${form}\`.` : `write \`${word} ${meant}\`.`}`,
    ...mended,
  };
}

/** The ways to write it without its `#`: a drill's number, as it stands, as a text, as a name. */
function meantBy(
  said: string,
  body: string,
  rule: string,
  isClose: boolean,
): readonly string[] {
  const { described } = expectAfter(`${body} ${STOP}`, rule);
  const kind = /^an? (\p{Ll})/u.exec(
    rule.endsWith("Entry") ? `a ${body}` : (described[0] ?? ""),
  )?.[1];
  return [
    ...(rule === "SizeFact" ? [`no ${said}`] : []),
    ...(described.includes("a text in quotes") && isClose
      ? [`"#${said}"`]
      : []),
    said,
    ...(kind === undefined ? [] : [`${kind}-${said}`]),
  ];
}

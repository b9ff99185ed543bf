// What is told of one line, for tests of text findings.
import { toldIn } from "./found.ts";

export const HEAD = "job j\n  units inch\n";
export const JOURNAL = `${HEAD}part shaft\njournal a on shaft\n`;

/** What is told of one line, its place, level and code left out, a line each. */
export function said(
  code: string,
  line: string,
  {
    under = JOURNAL,
    others = {},
  }: {
    readonly under?: string;
    readonly others?: Readonly<Record<string, string>>;
  } = {},
): readonly string[] {
  const at = String(under.split("\n").length);
  return toldIn(`${under}${line}\n`, code, others).map((each) =>
    each
      .replace(new RegExp(`^${at}:\\d+-\\d+ \\w+ [a-z-]+ of [^:]*: `, "u"), "")
      .replace(new RegExp(`^    ${at}:`, "u"), "    "),
  );
}

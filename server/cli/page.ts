// A finding's page, which is Markdown of a few plain forms: headings, paragraphs, lists, fenced code. It is read for its summary, and laid
// out for a terminal.
import type { Paint } from "./io.ts";
import { shown, widthOf, wrapIndented } from "./terminal-text.ts";

/** The first sentence of the first paragraph. */
export function summaryOf(page: string): string {
  const lines = bodyOf(page);
  const start = lines.findIndex(
    (line) => line !== "" && !HEADING.test(line) && !FENCE.test(line),
  );
  if (start === -1) return "";
  const length = lines.slice(start).findIndex((line) => line === "");
  const paragraph = lines
    .slice(start, length === -1 ? undefined : start + length)
    .join(" ");
  return plainWords(
    /^.*?[.!?](?= [\p{Lu}\p{Ps}"]|$)/u.exec(paragraph)?.[0] ?? paragraph,
  );
}

/** The page without the marks of Markdown, for those who show plain text only. */
export function plainText(page: string): string {
  return bodyOf(page)
    .map((line) => sampleName(line) ?? line)
    .filter((line) => !FENCE.test(line))
    .map((line) => plainWords(HEADING.exec(line)?.[2] ?? line))
    .join("\n")
    .trim();
}

/** The page for a terminal: headings stand out, code is set in, paragraphs are as wide as the terminal. */
export function pageForTerminal(
  page: string,
  columns: number,
  paint: Paint,
): string {
  const out: string[] = [];
  let paragraph:
    | {
        readonly first: string;
        readonly rest: string;
        readonly words: string[];
      }
    | undefined;
  let fenced = false;
  const close = (): void => {
    if (paragraph === undefined) return;
    const text = wrapIndented(
      shown(linkless(paragraph.words.join(" "))),
      columns,
      paragraph.first,
      paragraph.rest,
      (words) => widthOf(plainWords(words)),
    );
    out.push(inlined(text, paint));
    paragraph = undefined;
  };
  for (const line of bodyOf(page)) {
    const heading = HEADING.exec(line);
    const item = ITEM.exec(line);
    if (FENCE.test(line)) {
      close();
      fenced = !fenced;
      const name = sampleName(line);
      if (name !== undefined) out.push(`  ${shown(name)}`);
    } else if (fenced) out.push(`    ${shown(line)}`.trimEnd());
    else if (line === "") {
      close();
      if (out.at(-1) !== "" && 0 < out.length) out.push("");
    } else if (heading !== null) {
      close();
      out.push(paint.bold(shown(plainWords(heading[2] ?? ""))));
    } else if (line.startsWith("|")) {
      close();
      out.push(`  ${shown(line)}`);
    } else if (item !== null) {
      close();
      const indent = (item[1] ?? "") + (item[2] ?? "");
      paragraph = {
        first: `  ${indent}`,
        rest: `  ${" ".repeat(indent.length)}`,
        words: [item[3] ?? ""],
      };
    } else if (paragraph === undefined)
      paragraph = { first: "", rest: "", words: [line] };
    else paragraph.words.push(line.trim());
  }
  close();
  return out.join("\n").trim();
}

const HEADING = /^(#{1,6})\s+(.*?)\s*#*$/;
const FENCE = /^\s*(?:```|~~~)/;
const SAMPLE = /^```thou (good|bad)(?: (\S+))?$/;
const ITEM = /^(\s*)([-*]\s+|\d+[.)]\s+)(.*)$/;

/** What stands over a sample, in words: whether it is a bad one or a good one, or the file that the one before it uses. */
function sampleName(line: string): string | undefined {
  const [, sort, file] = SAMPLE.exec(line) ?? [];
  if (sort === undefined) return undefined;
  if (file !== undefined) return `with ${file}:`;
  return sort === "bad" ? "Bad:" : "Good:";
}

/** The lines of a page without what stands between `---` at its head. */
function bodyOf(page: string): readonly string[] {
  const lines = page.split(/\r\n|\n|\r/).map((line) => line.trimEnd());
  if (lines[0] !== "---") return lines;
  const end = lines.indexOf("---", 1);
  return end === -1 ? lines : lines.slice(end + 1);
}

/** A link is its words: where it leads is of no use on a terminal. */
function linkless(text: string): string {
  return text.replace(/\[([^\]]*)\]\([^)]*\)/g, "$1");
}

function plainWords(text: string): string {
  return linkless(text)
    .replace(/\*\*([^*]+)\*\*/g, "$1")
    .replace(/`([^`]+)`/g, "$1");
}

/** Marks inside lines, after they have been wrapped as wide as they are without: the marks themselves go. */
function inlined(text: string, paint: Paint): string {
  return text
    .replace(/\*\*([^*]+)\*\*/g, (_, words: string) => paint.bold(words))
    .replace(/`([^`]+)`/g, (_, words: string) => paint.cyan(words));
}

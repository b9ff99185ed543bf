// What a finding's code stands for: its level, and the first sentence of its page. The pages are the rules'.
import { CODES } from "../rules/codes.ts";
import { RULES, TEXT_RULES } from "../rules/index.ts";
import { pages } from "../rules/pages.ts";
import { blocks } from "../markup/markdown.ts";

const LEVELS: ReadonlyMap<string, string> = new Map(
  [...TEXT_RULES, ...RULES].map((rule) => [rule.code, rule.level]),
);

/** "error"; "" where the level depends. */
export function levelOf(code: string): string {
  return LEVELS.get(code) ?? "";
}

/** The page's own first paragraph, our words; "" where it has no page. */
export function summaryOf(code: string): string {
  const page = Object.hasOwn(pages, code) ? pages[code] : undefined;
  return page?.split(/\r?\n\r?\n/)[1]?.replaceAll(/\s*\n\s*/g, " ") ?? "";
}

export function findingHover(code: string): string | undefined {
  if (!CODES.includes(code)) return undefined;
  const level = levelOf(code);
  return blocks(
    `**${code}**: a finding${level === "" ? "" : ` (${level})`}`,
    summaryOf(code),
  );
}

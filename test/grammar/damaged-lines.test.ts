// What is said of damaged lines, whole: damaged-lines.txt has each line with its rule, the place that is marked, the sentence, and the line
// as it is mended, what belongs on a line below it, of what a unit or a name belongs there, or the words that would fit. Its sentences were read one by one before they went in; read what changes as they were.
import { readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, test } from "vitest";
import { explainDamage, type Damage } from "../../grammar/explain.ts";
import { readsWhole, withMend } from "../../grammar/asked.ts";
import { parseBody } from "../../grammar/parse.ts";
import { startOfComment } from "../../grammar/tokens.ts";
import { ENTRIES } from "../../grammar/vocabulary.ts";

const FORMS = new Map(
  ENTRIES.flatMap((entry) => [
    [entry.rule, entry.form] as const,
    ...entry.facts.map((fact) => [fact.rule, fact.form] as const),
  ]),
);

/** As the page shows it, its line first. */
function shown(rule: string, body: string, damage: Damage): string {
  const {
    start,
    end,
    message,
    code,
    mended,
    safe,
    below,
    unit,
    kind,
    choices,
  } = damage;
  const mark = " ".repeat(start) + "~".repeat(end - start);
  return [
    `${rule}: ${body}`,
    " ".repeat(rule.length + 2) + mark,
    `  ${code ?? message}`,
    ...(mended === undefined
      ? []
      : [
          `  ${safe === true ? "surely" : "perhaps"}: ${withMend(body, { start, end, text: mended })}`,
        ]),
    ...(below === undefined ? [] : [`  below: ${below}`]),
    ...(unit === undefined ? [] : [`  a unit of: ${unit}`]),
    ...(kind === undefined ? [] : [`  a name of: ${kind}`]),
    ...(choices === undefined || choices.length === 0
      ? []
      : [`  one of: ${choices.join(", ")}`]),
  ].join("\n");
}

/** What of its line a record marks. */
function marked(record: string, body: string): string {
  const [head = "", marks = ""] = record.split("\n");
  const before = head.length - body.length;
  return body.slice(marks.indexOf("~") - before, marks.length - before);
}

const records = readFileSync(
  path.join(import.meta.dirname, "damaged-lines.txt"),
  "utf8",
)
  .trimEnd()
  .split("\n\n");

describe("what is said of", () => {
  test.each(records.map((record) => [record.split("\n")[0] ?? "", record]))(
    "%s",
    (head, record) => {
      const [, rule = "", body = ""] = /^(\w+): (.*)$/u.exec(head) ?? [];
      const { damagedAt } = parseBody(body, rule);
      if (damagedAt === undefined) throw new Error(`${head} reads`);
      const form = FORMS.get(rule) ?? "";
      expect(
        shown(rule, body, explainDamage(body, rule, damagedAt, form)),
      ).toBe(record);
    },
  );
});

/** Blanks of a kind for each run of them, but for those in `1 3/16`: the grammar takes only plain ones there. */
const blanked = (text: string, blank: string): string =>
  text.replaceAll(/(\d +\d+\/\d)| +/gu, (_, mixed?: string) => mixed ?? blank);
const plain = (text: string): string => text.replaceAll(/[ \t\u{A0}]+/gu, " ");

test.each([
  ["two", "  "],
  ["a tab", "\t"],
  ["a no-break space", "\u{A0}"],
])(
  "%s for each blank of a line changes nothing of what is said",
  (_, blank) => {
    for (const record of records) {
      const [head = "", , ...said] = record.split("\n");
      const [, rule = "", body = ""] = /^(\w+): (.*)$/u.exec(head) ?? [];
      const other = blanked(body, blank);
      const { damagedAt } = parseBody(other, rule);
      if (damagedAt === undefined) throw new Error(`${other} reads`);
      const form = FORMS.get(rule) ?? "";
      const damage = explainDamage(other, rule, damagedAt, form);
      const [, , ...saidNow] = shown(rule, other, damage).split("\n");
      expect(saidNow.map(plain), head).toEqual(said.map(plain));
      // the same words are marked
      expect(plain(other.slice(damage.start, damage.end)), head).toBe(
        plain(marked(record, body)),
      );
    }
  },
);

test("what is surely meant reads", () => {
  const sure = records.flatMap((record) => {
    const rule = /^\w+/.exec(record)?.[0] ?? "";
    const whole = /^ {2}surely: (.*)$/mu.exec(record)?.[1];
    // a remark is no part of what reads
    return whole === undefined
      ? []
      : [{ rule, whole: whole.slice(0, startOfComment(whole)).trimEnd() }];
  });
  expect(sure.length).toBeGreaterThan(30);
  expect(
    sure.filter(({ rule, whole }) => !readsWhole(whole, { rule })),
  ).toEqual([]);
});

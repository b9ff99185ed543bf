// Comparing every sample with itself edited in one way: what such an edit changes is said, and nothing else; the other way about says the same
// the other way about. What counts as a change at all is changes.test.ts's.
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, test } from "vitest";
import {
  compareRecords,
  type Change,
  type RecordChanges,
} from "../../server/compare/changes.ts";
import { otherUnits } from "../../server/ide/refactor-units.ts";
import { opened } from "../ide/caret.ts";
import { rewritten } from "../ide/rewritten.ts";

const SHOP = path.join(import.meta.dirname, "../../samples/shop");
const texts = new Map(
  readdirSync(SHOP)
    .filter((file) => file.endsWith(".thou"))
    .map((file) => [file, readFileSync(path.join(SHOP, file), "utf8")]),
);
const samples = [...texts.keys()].filter((file) => file !== "crib.thou");

/** A sample before and after an edit of it, or of a file that it uses. */
function compared(
  file: string,
  edit: (text: string) => string,
  edited = file,
): { readonly found: RecordChanges; readonly back: RecordChanges } {
  const other = new Map(texts);
  const text = edit(texts.get(edited) ?? "");
  expect(text, `${edited} has nothing to edit so`).not.toBe(
    texts.get(edited) ?? "",
  );
  other.set(edited, text);
  const before = opened(Object.fromEntries(texts), file);
  const after = opened(Object.fromEntries(other), file);
  return {
    found: compareRecords(before, after),
    back: compareRecords(after, before),
  };
}

const NONE = { changes: [], come: [], gone: [], isEmptied: false, worse: 0 };
const OTHER = { worse: "better", better: "worse", neither: "neither" } as const;

/**
 * The way back says what the way there says, with before and after changed over, and better for worse. Of an entry that came all is said,
 * of one that went only that it did; and which way a verdict went is said alike both ways only where there is one on both sides.
 */
function expectMirrored(found: RecordChanges, back: RecordChanges): void {
  const sorted = (all: readonly unknown[]): readonly string[] =>
    all.map((each) => JSON.stringify(each)).sort();
  const passing = new Set(
    [...found.changes, ...back.changes]
      .filter(({ what }) => what === "entry")
      .map(({ entry }) => entry),
  );
  const isSaid = ({ entry, what }: Change): boolean =>
    what === "entry" || !passing.has(entry);
  const isJudged = ({ before, after, what }: Change): boolean =>
    what === "step" ||
    [before, after].every((each) => each !== null && each.verdict !== "none");
  const words = (change: Change, turned: boolean): unknown => {
    const { entry, what, of, before, after, tendency } = change;
    const way = turned ? OTHER[tendency] : tendency;
    return {
      // a new name stands under it
      entry: what === "name" && turned ? before?.text : entry,
      what,
      of,
      case: change.case,
      before: turned ? after : before,
      after: turned ? before : after,
      ...(isJudged(change) ? { way } : {}),
    };
  };
  const findings = (
    all: RecordChanges["come"],
    turned: boolean,
  ): readonly unknown[] =>
    all.map((each) => ({
      ...each,
      tendency: turned ? OTHER[each.tendency] : each.tendency,
    }));
  expect(
    sorted(back.changes.filter(isSaid).map((each) => words(each, true))),
  ).toEqual(
    sorted(found.changes.filter(isSaid).map((each) => words(each, false))),
  );
  expect(sorted(findings(back.come, true))).toEqual(
    sorted(findings(found.gone, false)),
  );
  expect(sorted(findings(back.gone, true))).toEqual(
    sorted(findings(found.come, false)),
  );
}

const entriesOf = ({ changes }: RecordChanges): ReadonlySet<string> =>
  new Set(changes.map(({ entry }) => entry));

describe.each(samples)("%s", (file) => {
  const whole = texts.get(file) ?? "";

  test("beside itself has no change", () => {
    const open = () => opened(Object.fromEntries(texts), file);
    expect(compareRecords(open(), open())).toEqual(NONE);
  });

  test("comments, notes and blanks are no change", () => {
    const { found, back } = compared(
      file,
      (text) =>
        `# seen\n\n${text.replace(/^(\w+ [\w-]+)/mu, "$1   # here")}\n\n`,
    );
    expect(found).toEqual(NONE);
    expect(back).toEqual(NONE);
  });

  test("the other unit, exactly converted, changes no size, verdict or finding", () => {
    const other = otherUnits(opened(Object.fromEntries(texts), file));
    if (other === undefined) throw new Error(`${file} has no other unit`);
    const { found, back } = compared(file, (text) => rewritten(text, other));
    // what is shown may have other digits, never another verdict
    for (const { before, after, tendency } of found.changes) {
      expect(tendency).toBe("neither");
      expect(after?.verdict).toBe(before?.verdict);
    }
    expect(found.worse).toBe(0);
    expect([...found.come, ...found.gone]).toEqual([]);
    expectMirrored(found, back);
  });

  test.runIf(
    /^(?:journal|hole|bore) [^\n]*\n(?: {2}[^\n]*\n)*? {2}read /mu.test(whole),
  )("a reading that is another changes its own entry", () => {
    // the last digit of the first value of the first reading
    let entry = "";
    const { found, back } = compared(file, (text) =>
      text.replace(
        /^((?:journal|hole|bore) [\w-]+)([^\n]*\n(?: {2}[^\n]*\n)*? {2}read (?:[a-z]+ )?)(\d+\.\d+)(\d)/mu,
        (_, head: string, between: string, size: string, last: string) => {
          entry = head;
          return `${head}${between}${size}${String((Number(last) + 3) % 10)}`;
        },
      ),
    );
    expect(entriesOf(found)).toContain(entry);
    expectMirrored(found, back);
  });

  test.runIf(/^ {2}limits /mu.test(whole))(
    "limits that are left out are said of the entry that had them, and of nothing above it",
    () => {
      const head =
        /^((?:journal|hole|bore) [\w-]+)[^\n]*\n(?: {2}[^\n]*\n)*? {2}limits /mu.exec(
          whole,
        )?.[1] ?? "";
      const { found, back } = compared(file, (text) =>
        text.replace(/^ {2}limits [^\n]*\n/mu, ""),
      );
      const { changes, come, gone } = found;
      expect(0 < changes.length + come.length + gone.length, head).toBe(true);
      expectMirrored(found, back);
    },
  );

  test.runIf(/^fit /mu.test(whole))(
    "a want that is out of reach is worse, and the way back is better",
    () => {
      const fit = /^fit [\w-]+/mu.exec(whole)?.[0] ?? "";
      const { found, back } = compared(file, (text) =>
        text.replace(
          /^(fit [^\n]*\n(?: {2}(?!want )[^\n]*\n)*) {2}want [^\n]*\n/mu,
          "$1  want 0.9 to 1.0 in\n",
        ),
      );
      expect(entriesOf(found)).toContain(fit);
      expectMirrored(found, back);
      expect(back.worse).toBe(0);
    },
  );

  test.runIf(/^step /mu.test(whole))(
    "a step that is gone, and one that has another name",
    () => {
      const name = /^step ([\w-]+)/mu.exec(whole)?.[1] ?? "";
      const gone = compared(file, (text) =>
        text.replace(/^step [^\n]*\n(?: {2}[^\n]*\n)*/mu, ""),
      );
      expect(
        gone.found.changes.find(
          ({ entry, what }) => entry === `step ${name}` && what === "entry",
        )?.after,
      ).toBeNull();
      expectMirrored(gone.found, gone.back);
      const renamed = compared(file, (text) =>
        text.replaceAll(new RegExp(`\\b${name}\\b`, "gu"), `${name}-anew`),
      );
      expect(entriesOf(renamed.found)).toContain(`step ${name}-anew`);
      expectMirrored(renamed.found, renamed.back);
    },
  );

  test.runIf(/^step /mu.test(whole))("a step that is done is said", () => {
    const { found, back } = compared(file, (text) =>
      text.replace(
        /^(step [^\n]*\n(?: {2}(?!done)[^\n]*\n)*)(?! {2}done)/mu,
        "$1  done 2026-11-20 by AK\n",
      ),
    );
    const done = found.changes.filter(({ what }) => what === "step");
    expect(done.length).toBeGreaterThan(0);
    expectMirrored(found, back);
  });

  test("a concession that is added is said", () => {
    const fit = /^(?:fit|stack|press) [\w-]+/mu.exec(whole)?.[0] ?? "";
    const { found, back } = compared(
      file,
      (text) =>
        `${text}\nconcession as-found\n  allows fit-loose on ${fit}\n  up to 0.5 mm\n  why "tried" by AK on 2026-11-20\n`,
    );
    expect(entriesOf(found)).toContain("concession as-found");
    expectMirrored(found, back);
  });

  test.runIf(
    /^ {2}use "crib\.thou"/mu.test(whole) && /^ {2}ream with /mu.test(whole),
  )("a reamer that is ground down in the crib is said of the line", () => {
    const reamer = /^ {2}ream with ([\w-]+)/mu.exec(whole)?.[1] ?? "";
    const line = /^line [\w-]+/mu.exec(whole)?.[0] ?? "";
    const { found, back } = compared(
      file,
      (text) =>
        text
          .replace(
            new RegExp(
              `^(reamer ${reamer}\\n(?: {2}(?!size)[^\\n]*\\n)*) {2}size [^\\n]*\\n`,
              "mu",
            ),
            "$1  size 0.5 in\n",
          )
          .replace(
            new RegExp(
              `^(reamer ${reamer}\\n(?: {2}(?!read)[^\\n]*\\n)*) {2}read [^\\n]*\\n`,
              "mu",
            ),
            "$1",
          ),
      "crib.thou",
    );
    expect(entriesOf(found)).toContain(line);
    expectMirrored(found, back);
  });
});

test("every sample beside every other mirrors the way back", () => {
  const all = samples.map((file) => opened(Object.fromEntries(texts), file));
  for (const one of all)
    for (const other of all)
      expectMirrored(compareRecords(one, other), compareRecords(other, one));
});

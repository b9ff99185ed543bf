// Parsing a line: by shape as by Ohm, damaged lines, and never a throw.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readLines } from "../../grammar/lines.ts";
import {
  expectAfresh,
  LONGEST_BODY,
  parseAfresh,
} from "../../grammar/by-ohm.ts";
import { expectAfter, isRead, parseBody, STOP } from "../../grammar/parse.ts";
import { tokenize } from "../../grammar/tokens.ts";
import { nodesIn, type Node } from "../../grammar/tree.ts";
import { ENTRIES, lineSpec } from "../../grammar/vocabulary.ts";
import { samples } from "../samples.ts";

const RULES = ENTRIES.flatMap((entry) => [
  entry.rule,
  ...entry.facts.map((fact) => fact.rule),
]);

/** Every line of the samples that may be read, with the rule that reads it. */
const lines = samples.flatMap(({ text }) =>
  readLines(text).blocks.flatMap((block) =>
    block.lines.flatMap((line, index) => {
      if (line.body === "" || block.kind === undefined) return [];
      const rule = lineSpec(block.kind, line.word, index === 0)?.rule;
      return rule === undefined || LONGEST_BODY < line.body.length
        ? []
        : [{ body: line.body, rule }];
    }),
  ),
);

/** A line with a few of its characters changed, so that shapes near to real ones are tried. */
const mutated = fc
  .record({
    line: fc.constantFrom(...lines),
    at: fc.nat(60),
    remove: fc.nat(3),
    insert: fc.constantFrom(
      "",
      " ",
      "\t",
      ".",
      ",",
      "-",
      "/",
      '"',
      "1",
      "0.5",
      "7/8",
      "1 3/16",
      "mm",
      "H7",
      "RC4",
      "to",
      "in",
      "x",
      "_",
      "e",
      "%",
      "#",
      "\u{A0}",
      "é",
      "F",
      "per min",
      "1e5",
      ".5",
      "5.",
    ),
  })
  .map(({ line, at, remove, insert }) => ({
    rule: line.rule,
    body: (
      line.body.slice(0, at) +
      insert +
      line.body.slice(at + remove)
    ).trim(),
  }));

describe("by shape", () => {
  test("the samples' lines read as Ohm reads them", () => {
    for (const { body, rule } of lines)
      expect(parseBody(body, rule)).toEqual(parseAfresh(body, rule));
  });

  test("lines near to them read as Ohm reads them", () => {
    fc.assert(
      fc.property(mutated, ({ body, rule }) => {
        // twice: the first may make the shape, the second uses it
        parseBody(`${body} `, rule);
        expect(parseBody(body, rule)).toEqual(parseAfresh(body, rule));
      }),
      { numRuns: 3000 },
    );
  });

  test("lines with any words for their own read as Ohm reads them", () => {
    const words = fc.constantFrom(
      "x",
      "p1",
      "H7",
      "ab2c",
      "rear",
      "é",
      "in",
      "mm",
      "<a>",
      "<w>",
    );
    fc.assert(
      fc.property(
        fc.constantFrom(...lines),
        fc.array(words, { minLength: 6, maxLength: 6 }),
        fc.nat(63),
        ({ body, rule }, others, taken) => {
          let at = 0;
          // the first word is the rule's own
          const changed = body.replaceAll(
            /(?<=\s)[\p{L}][\p{L}\d-]*/gu,
            (word) => {
              const index = at++ % others.length;
              return taken & (1 << index) ? (others[index] ?? word) : word;
            },
          );
          expect(parseBody(changed, rule)).toEqual(parseAfresh(changed, rule));
        },
      ),
      { numRuns: 3000 },
    );
  });

  test("whether lines near to them are read at all is as Ohm says", () => {
    fc.assert(
      fc.property(mutated, ({ body, rule }) => {
        // others of its shape go before
        isRead(body.replaceAll(/\d/gu, "7"), rule);
        isRead(body.replaceAll(/[bcgq]/gu, "z"), rule);
        expect(isRead(body, rule)).toBe(
          parseAfresh(body, rule).damagedAt === undefined,
        );
      }),
      { numRuns: 3000 },
    );
  });

  test("what may follow a line that breaks off is what Ohm expects there", () => {
    const brokenOff = fc
      .record({
        line: fc.oneof(fc.constantFrom(...lines), mutated),
        at: fc.nat(60),
        after: fc.constantFrom("", STOP, ` ${STOP}`),
      })
      .map(({ line, at, after }) => ({
        rule: line.rule,
        text: line.body.slice(0, at) + after,
      }));
    fc.assert(
      fc.property(brokenOff, ({ rule, text }) => {
        // others of its shape go before
        expectAfter(text.replaceAll(/\d/gu, "7"), rule);
        expectAfter(text.replaceAll(/[bcgq]/gu, "z"), rule);
        expect(expectAfter(text, rule)).toEqual(expectAfresh(text, rule));
      }),
      { numRuns: 1000 },
    );
  });

  test("a line that only Ohm can read is read once, by each rule", () => {
    const first = parseBody("limits 0.5 or so", "LimitsFact");
    expect(parseBody("limits 0.5 or so", "LimitsFact")).toBe(first);
    expect(parseBody("limits 0.5 or so", "WantFact")).not.toEqual(first);
    expect(parseBody("limits 0.5 or no", "LimitsFact")).not.toBe(first);
  });

  test("lines of one shape are asked once what may follow them, but for one that is too long", () => {
    const first = expectAfter(`note "a" ${STOP}`, "NoteFact");
    const other = expectAfter(`note "a b" ${STOP}`, "NoteFact");
    expect(other.described).toBe(first.described);
    expect(other.at).toBe(first.at + 2);
    const long = `note "${"x".repeat(LONGEST_BODY)}" ${STOP}`;
    expect(expectAfter(long, "NoteFact")).toEqual({
      words: [],
      described: [],
      at: long.length,
    });
    expect(expectAfter('note "a"', "NoteFact")).toEqual({
      words: [],
      described: [],
      at: 8,
    });
  });

  test("two lines of one shape differ only where their numbers and names do", () => {
    const one = parseBody(
      "read near 0.87432 0.87428 with mic-1 at 68 F",
      "ReadFact",
    );
    const other = parseBody(
      "read a 10.1 9.25 with gauge-22 at 7 F",
      "ReadFact",
    );
    const types = (node: Node): readonly string[] =>
      [...nodesIn(node)].map((each) => each.type);
    expect(types(other.tree)).toEqual(types(one.tree));
  });
});

test("a line is read up to its longest, and not one character more", () => {
  const text = (length: number): string =>
    `note "${"x".repeat(length - 'note ""'.length)}"`;
  expect(parseBody(text(LONGEST_BODY), "NoteFact").damagedAt).toBeUndefined();
  const { damagedAt, tree } = parseBody(text(LONGEST_BODY + 1), "NoteFact");
  expect(damagedAt).toBe(LONGEST_BODY);
  expect(isRead(text(LONGEST_BODY), "NoteFact")).toBe(true);
  expect(isRead(text(LONGEST_BODY + 1), "NoteFact")).toBe(false);
  expect(tree.end).toBeLessThanOrEqual(LONGEST_BODY);
});

describe("any text", () => {
  const anyLine = fc.oneof(
    fc.string({ maxLength: 60, unit: "binary" }),
    mutated.map((each) => each.body),
  );

  test("is read or refused, never thrown on, and its nodes lie inside it in order", () => {
    fc.assert(
      fc.property(anyLine, fc.constantFrom(...RULES), (body, rule) => {
        const { tree, damagedAt } = parseAfresh(body, rule);
        if (damagedAt !== undefined)
          expect(damagedAt).toBeLessThanOrEqual(body.length);
        for (const node of nodesIn(tree)) {
          expect(node.start).toBeGreaterThanOrEqual(0);
          expect(node.end).toBeLessThanOrEqual(body.length);
          let at = node.start;
          for (const each of node.children) {
            expect(each.start).toBeGreaterThanOrEqual(at);
            at = each.end;
          }
          expect(at).toBeLessThanOrEqual(node.end);
        }
      }),
      { numRuns: 500 },
    );
  });

  test("is cut into tokens without gaps", () => {
    fc.assert(
      fc.property(anyLine, (body) => {
        expect(
          tokenize(body)
            .map((token) => body.slice(token.start, token.end))
            .join(""),
        ).toBe(body);
      }),
    );
  });
});

test.each([
  ["fit front of journl front", "FitEntry", "front"],
  ["bore rear in", "BoreEntry", "rear"],
  ["plus spacer 0.2 0.3", "PlusFact", "spacer"],
])("a damaged line keeps its name: %s", (body, rule, name) => {
  const { tree, damagedAt } = parseBody(body, rule);
  const found = tree.children.find((node) => node.type === "name");
  expect(damagedAt).toBeDefined();
  expect(found && body.slice(found.start, found.end)).toBe(name);
});

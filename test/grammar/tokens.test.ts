// How a line is cut into tokens, and which lines have one shape. That a shape reads as the grammar reads is tested by property in
// parse.test.ts; here is what counts as a token, and that lines of one shape are met at all.
import { describe, expect, test } from "vitest";
import { shapeOf } from "../../grammar/shape.ts";
import {
  endOfText,
  isBlank,
  startOfComment,
  tokenize,
} from "../../grammar/tokens.ts";

function cut(body: string): readonly string[] {
  return tokenize(body)
    .filter(({ kind }) => kind !== "blank")
    .map(({ kind, start, end }) => `${kind} ${body.slice(start, end)}`);
}

describe("tokens", () => {
  test.each([
    ["limits 0.8740", ["word limits", "number 0.8740"]],
    ["0.8745in", ["number 0.8745", "word in"]],
    [
      "1.5e-3 2E+6 3e4 5e",
      [...["number 1.5e-3", "number 2E+6", "number 3e4", "number 5", "word e"]],
    ],
    [".5 5. 12", ["number .5", "number 5.", "number 12"]],
    ["12-3", ["number 12", "symbol -", "number 3"]],
    ["psi-ft/min", ["word psi-ft/min"]],
    ["r-8755 sae_30", ["word r-8755", "word sae_30"]],
    [
      "18 \u{B0}C 40 % 3 cm\u{B2}/m\u{B3}\u{B7}K^2",
      [
        ...["number 18", "word \u{B0}C", "number 40", "word %", "number 3"],
        "word cm\u{B2}/m\u{B3}\u{B7}K^2",
      ],
    ],
    ["_x", ["word _x"]],
    ["a\tb\u{A0}c", ["word a", "word b", "word c"]],
    ["0.1,0.2", ["number 0.1", "symbol ,", "number 0.2"]],
    ["+/- \u{B1}", ["symbol +", "symbol /", "symbol -", "symbol \u{B1}"]],
    ["\u{1F600}x", ["symbol \u{1F600}", "word x"]],
    ["\u{D800}", ["symbol \u{D800}"]],
    // a text closes at a quote that a blank, a comma or the end follows, unless the next quote opens none
    ['note "a b"', ["word note", 'text "a b"']],
    ['"a","b" "c"', ['text "a"', "symbol ,", 'text "b"', 'text "c"']],
    ['note "12" shaft"', ["word note", 'text "12" shaft"']],
    ['note "12" shaft" "b"', ["word note", 'text "12" shaft"', 'text "b"']],
    ['7/8" x', ["number 7", "symbol /", "number 8", 'symbol "', "word x"]],
    ['a"b"', ["word a", 'symbol "', "word b", 'symbol "']],
    ['note "a', ["word note", 'symbol "', "word a"]],
    ['note "a "b', ["word note", 'symbol "', "word a", 'symbol "', "word b"]],
    ['"', ['symbol "']],
    ['""', ['text ""']],
    ['"a"b"', ['text "a"b"']],
  ])("%j", (body, tokens) => {
    expect(cut(body)).toEqual(tokens);
  });

  test("blanks are tokens too, each run of them one", () => {
    expect(
      tokenize("a \t\u{A0}b ").map(({ kind, start, end }) => [
        kind,
        start,
        end,
      ]),
    ).toEqual([
      ["word", 0, 1],
      ["blank", 1, 4],
      ["word", 4, 5],
      ["blank", 5, 6],
    ]);
  });

  test("a blank is a space, a tab or a no-break space, and nothing past the end", () => {
    expect([" ", "\t", "\u{A0}", "\n", "x", undefined].map(isBlank)).toEqual([
      ...[true, true, true, false, false, false],
    ]);
  });
});

describe("where a comment begins", () => {
  test.each([
    ["part a", 6],
    ["part a # b", 7],
    ["part a#b", 8],
    ["# b", 0],
    ["a\t#", 2],
    ['note "a # b" # c', 13],
    ['use "a","b # c" # d', 16],
    ['length 15" # c', 11],
    // what never closes hides no comment
    ['note "a # b', 8],
    ['note "a "b # c', 11],
    ['x"a # b" # c', 4],
    ['note "a" # 3" long', 9],
  ])("%j", (line, at) => {
    expect(startOfComment(line)).toBe(at);
  });
});

test.each([
  ['"a"', 0, 3],
  ['"a" "b"', 0, 3],
  ['"a" b"', 0, 6],
  ['"a", "b"', 0, 3],
  ['"a"b', 0, undefined],
  ['"a" # b"', 0, 3],
  ['"a"\t# 3"', 0, 3],
  ['"a" b#"', 0, 7],
  ['x "a"', 2, 5],
  ['"', 0, undefined],
])("the text of %j from %i ends at %s", (line, from, end) => {
  expect(endOfText(line, from)).toBe(end);
});

describe("shapes", () => {
  const same = (one: string, other: string): boolean =>
    shapeOf(one).key === shapeOf(other).key;
  test.each([
    ["read near 0.87432 with mic-1", "read a-b 1.5 with gauge-22"],
    ["read near 0.87432", "read far 10.1"],
    ["limits 1.5 to 2.5", "limits 10.25 to 20.75"],
    ["length 7", "length 1250"],
    ["length .5", "length .875"],
    ["length 5.", "length 12."],
    ["modulus 14.5e6 psi", "modulus 1.5E-7 ksi"],
    ["nominal 1 3/16", "nominal 12  7/8"],
    ['note "a"', 'note "b # c, d"'],
    ["limits 25 H7", "limits 30 f8"],
    ["limits 25 H7", "limits 30 h11"],
    ["limits 25 H7", "limits 30 JS7"],
    ["size letter F", "size letter Q"],
    ["part a-b", "part lay-shaft"],
    ["part \u{E9}ta", "part zeta"],
  ])("%j is as %j", (one, other) => {
    expect(same(one, other)).toBe(true);
  });

  test.each([
    // names of the language stand as they are
    ["read near 0.5", "read od 0.5"],
    ["units inch", "units mm"],
    ["length 1.5", "length 15"],
    ["length 1.5", "length .5"],
    ["length 5.", "length 5"],
    ["length 5.", "length 5.5"],
    ["length 1e5", "length 15"],
    ["length 1.5e5", "length 1.5"],
    ["length .5e5", "length .5"],
    ["nominal 1 3/16", "nominal 1\t3/16"],
    ["nominal 1 3/16", "nominal 1 \t3/16"],
    ["nominal 1 3/16", "nominal 1\u{A0}3/16"],
    // what touches the word before it stands as it is
    ["length 1.5mm", "length 1.5um"],
    ["length 1.5 mm", "length 1.5mm"],
    ["length 5.5.5", "length 5.5.25"],
    ["limits 25 H7", "limits 25 HHH7"],
    ["limits 25 H7", "limits 25 H777"],
    ["size letter F", "size letter FF"],
    ["part a-b", "part a_b"],
    ["part a-b", "part a1b"],
    ["speed 15 m/s", "speed 15 ms"],
    ["limits 1 + 2", "limits 1 - 2"],
  ])("%j is not as %j", (one, other) => {
    expect(same(one, other)).toBe(false);
  });

  test("say where each token but the blanks stands", () => {
    expect(shapeOf("read  0.5 mm")).toMatchObject({
      starts: [0, 6, 10],
      ends: [4, 9, 12],
    });
  });
});

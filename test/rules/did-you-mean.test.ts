// Which words are offered for one that is not known: the nearest, those of the trade, and names that have a part in common.
import { distance } from "fastest-levenshtein";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { ENTRIES } from "../../grammar/vocabulary.ts";
import { nearest } from "../../server/rules/text/near.ts";
import { check } from "./check-job.ts";

describe("a material by a part of its name", () => {
  test.each([
    ["cast-iron", "`iron-grey`, `iron-grey-class-40` or `iron-ductile`"],
    ["aluminum-a380", "`aluminium-a380`"],
    ["aluminum", "`aluminium-356-t6`, `aluminium-319` or `aluminium-a380`"],
    ["phosphor-bronze", "`bronze-c932`, `bronze-c936` or `bronze-c937`"],
  ])("%s", (name, meant) => {
    const [finding] = check(`job j\npart case\n  material ${name}\n`);
    expect(finding?.message).toContain(`did you mean ${meant}?`);
  });

  test("what has no part in common is offered where it is listed", () => {
    const [finding] = check("job j\npart case\n  material granite\n");
    expect(finding?.message).toContain("thou explain material");
    expect(finding?.fixes ?? []).toEqual([]);
  });
});

describe("did you mean", () => {
  const words = ["limits", "length", "read", "repeat", "runout", "taper"];
  test.each([
    ["limts", ["limits"]],
    ["raed", ["read"]],
    ["Limits", ["limits"]],
    ["lim", ["limits"]],
    ["run-out", ["runout"]],
    ["zzzzz", []],
    ["x", []],
  ])("%s", (word, near) => {
    expect(nearest(word, words)).toEqual(near);
  });

  test("gives none farther than another, by the distance of Levenshtein", () => {
    fc.assert(
      fc.property(
        fc.stringMatching(/^[a-z]{2,9}$/),
        fc.array(fc.stringMatching(/^[a-z]{2,9}$/), { minLength: 1 }),
        (word, candidates) => {
          const found = nearest(word, candidates);
          const least = Math.min(
            ...candidates.map((each) => distance(word, each)),
          );
          // what is nearest by plain distance is among them, unless a swap or a beginning is nearer
          for (const each of found)
            expect(
              distance(word, each) <= Math.max(least, 1) ||
                distance(word, each) === 2 ||
                each.startsWith(word),
            ).toBe(true);
          expect(found.length).toBeLessThanOrEqual(3);
        },
      ),
    );
  });

  test("words legal here come before those of other places", () => {
    const [first, second] = check(
      `job j\n  units inch\npart shaft\njournal a on shaft\n  bolts 18 lbf-ft\n  finnish 16 uin Ra\n`,
    );
    expect(first?.message).toBe(
      "`bolts` is a fact of part and line, not of journal: it stands under a part or a line.",
    );
    expect(second?.message).toBe(
      "A journal has no fact `finnish`: did you mean `finish`?",
    );
  });

  test("the shop's other words are known", () => {
    const [finding] = check(
      `job j\n  units inch\nbushing front in hole front\n`,
    );
    expect(finding?.message).toContain("did you mean `bush`?");
    expect(finding?.fixes.every((fix) => fix.safe)).toBe(false);
  });
});

/** Of each letter, those beside it on the keyboard. */
const BESIDE: Readonly<Record<string, string>> = {
  ...{ q: "wa", w: "qeas", e: "wrsd", r: "etdf", t: "ryfg", y: "tugh" },
  ...{ u: "yihj", i: "uojk", o: "ipkl", p: "ol", a: "qwsz", s: "adwezx" },
  ...{ d: "sferxc", f: "dgrtcv", g: "fhtyvb", h: "gjyubn", j: "hkuinm" },
  ...{ k: "jliom", l: "kop", z: "asx", x: "zcsd", c: "xvdf", v: "cbfg" },
  ...{ b: "vngh", n: "bmhj", m: "njk" },
};

/** A word with one slip of the hand: two letters about, one left out, one twice, the key beside it. */
function slipsOf(word: string): readonly string[] {
  return Array.from(word).flatMap((letter, at) => {
    const [before, after] = [word.slice(0, at), word.slice(at + 1)];
    return [
      `${before}${after.charAt(0)}${letter}${after.slice(1)}`,
      `${before}${after}`,
      `${before}${letter}${letter}${after}`,
      ...Array.from(BESIDE[letter] ?? "", (key) => `${before}${key}${after}`),
    ];
  });
}

const VOCABULARY: readonly (readonly [string, readonly string[]])[] = [
  ["a line in column 1", ENTRIES.map(({ kind }) => kind)],
  ...ENTRIES.map(
    ({ kind, facts }) => [kind, facts.map(({ word }) => word)] as const,
  ),
];

describe("a word with one slip in it, under", () => {
  test.each(VOCABULARY)("%s, finds that word", (_, words) => {
    const astray = words.flatMap((word) =>
      slipsOf(word)
        // one letter may be of any word
        .filter((slip) => 1 < slip.length && !words.includes(slip))
        .filter((slip) => !nearest(slip, words).includes(word))
        .map((slip) => `${slip} for ${word}`),
    );
    expect(astray).toEqual([]);
  });
});

describe("a word that has nothing to do with them, under", () => {
  const unrelated =
    "able arm bath bed belt box brake brass cat cold crane cup dark dog east fan game gear hand hat ice jar key kit lake lid map " +
    "net nose nut oak owl park phone pig pin pump quay rain ring rod rope rust sand seal sky snap sun table top torx van wax wear weld wheel wind year zip zone";
  test.each(VOCABULARY)("%s, finds none", (_, words) => {
    const astray = unrelated
      .split(" ")
      .filter((word) => !words.includes(word))
      .map((word) => [word, nearest(word, words)] as const)
      .filter(([, near]) => 0 < near.length);
    expect(astray).toEqual([]);
  });
});

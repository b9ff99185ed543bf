// Which words are offered for one that is not known: the nearest, those of the trade, and names that have a part in common.
import { distance } from "fastest-levenshtein";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
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

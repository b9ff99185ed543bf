// What a name is in TypeScript and what it is in the grammar are the same, over every sort of letter.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { isName, nameOutOf } from "../../grammar/names.ts";
import { parseAfresh } from "../../grammar/by-ohm.ts";
import { CLAUSE_WORDS, entrySpec } from "../../grammar/vocabulary.ts";

const rule = entrySpec("job")?.rule ?? "";

/** As the compiled grammar reads it, no shape of a line being known. */
const isRead = (name: string): boolean =>
  parseAfresh(`job ${name}`, rule).damagedAt === undefined;

const typed = fc.oneof(
  fc.string({ unit: "binary", maxLength: 12 }),
  fc.string({
    unit: fc.constantFrom(...Array.from("aé中𤔎𐒣²٣0-_ ʰǅª")),
    maxLength: 6,
  }),
  fc.constantFrom(...CLAUSE_WORDS),
);

describe("a name", () => {
  test("is what the grammar reads as one", () => {
    expect(isRead("a")).toBe(true);
    fc.assert(
      fc.property(
        typed.filter((text) => !/[\s#"]|^$/u.test(text)),
        (text) => {
          expect(isName(text)).toBe(isRead(text));
        },
      ),
      { numRuns: 400 },
    );
  });

  test("made out of a text is one, a word that opens a clause, or nothing", () => {
    fc.assert(
      fc.property(typed, (text) => {
        const name = nameOutOf(text);
        expect(name === "" || CLAUSE_WORDS.includes(name) || isName(name)).toBe(
          true,
        );
        expect(name === "").toBe(!/\p{L}/u.test(text.normalize("NFC")));
      }),
      { numRuns: 400 },
    );
    expect(nameOutOf(" 12 Winch gear, no. 3! ")).toBe("Winch-gear-no-3");
    expect(nameOutOf("a𐒣b")).toBe("a-b");
  });

  test("stays itself", () => {
    fc.assert(
      fc.property(typed, (text) => {
        const name = nameOutOf(text);
        expect(nameOutOf(name)).toBe(name);
      }),
    );
  });
});

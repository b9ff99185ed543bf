// How records are put into parts: none lost, none twice, no part over full, and never many small ones, however an archive grows.
import fc from "fast-check";
import { expect, test } from "vitest";
import type { Part } from "../../server/archive/layout.ts";
import { FULL, MOST_SMALL, planYear } from "../../server/archive/plan.ts";
import { TABLE_NAMES, type TableName } from "../../server/archive/schema.ts";

const bytes = Object.fromEntries(
  TABLE_NAMES.map((name) => [name, 0]),
) as Record<TableName, number>; // every table is named

/** What one export does to a year: how many records of each part are gone, and how many come. */
const exports = fc.array(
  fc.record({
    gone: fc.array(fc.double({ min: 0, max: 1, noNaN: true }), {
      maxLength: 6,
    }),
    come: fc.oneof(
      fc.integer({ min: 0, max: 3 }),
      fc.integer({ min: 0, max: 3 * FULL }),
    ),
  }),
  { maxLength: 60 },
);

test("whatever comes and goes", () => {
  fc.assert(
    fc.property(exports, (all) => {
      let parts: readonly Part[] = [];
      let records = 0;
      for (const [index, { gone, come }] of all.entries()) {
        const old = parts.map((part, at) => ({
          part,
          gone: Math.floor((gone[at] ?? 0) * part.records),
        }));
        const chunks = Array.from(
          { length: Math.ceil(come / FULL) },
          (_, number) => ({
            number,
            records: Math.min(FULL, come - number * FULL),
          }),
        );
        const { kept, made } = planYear(2026, old, chunks);
        records += come - old.reduce((sum, each) => sum + each.gone, 0);
        // each source goes to one place, or is empty
        const used = [...kept, ...made.flatMap((each) => each.from)];
        expect(new Set(used).size).toBe(used.length);
        for (const each of old)
          expect(used.includes(each.part)).toBe(each.gone < each.part.records);
        expect(
          made.flatMap((each) => each.chunks).sort((a, b) => a - b),
        ).toEqual(chunks.map(({ number }) => number));
        for (const each of old)
          if (0 < each.gone) expect(kept).not.toContain(each.part);
        parts = [
          ...kept,
          ...made.map((each, number) => ({
            name: `${index}-${number}`,
            year: 2026,
            records: each.records,
            bytes,
          })),
        ];
        expect(parts.reduce((sum, part) => sum + part.records, 0)).toBe(
          records,
        );
        for (const part of parts) {
          expect(part.records).toBeGreaterThan(0);
          expect(part.records).toBeLessThanOrEqual(FULL);
        }
        const small = parts.filter((part) => part.records < FULL / 2);
        expect(small.length).toBeLessThanOrEqual(MOST_SMALL + 1);
      }
    }),
  );
});

test("nothing new and nothing gone leaves every part", () => {
  const parts = Array.from({ length: MOST_SMALL }, (_, index) => ({
    name: String(index),
    year: 2026,
    records: 1,
    bytes,
  }));
  expect(
    planYear(
      2026,
      parts.map((part) => ({ part, gone: 0 })),
      [],
    ),
  ).toEqual({ kept: parts, made: [] });
});

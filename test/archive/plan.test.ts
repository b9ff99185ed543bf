// How records are put into parts: none lost, none twice, no part over full, and never many small ones, however an archive grows.
import fc from "fast-check";
import { expect, test } from "vitest";
import type { Part } from "../../server/archive/layout.ts";
import { MOST_SMALL, planYear } from "../../server/archive/plan.ts";
import { TABLE_NAMES, type TableName } from "../../server/archive/schema.ts";

const bytes = Object.fromEntries(
  TABLE_NAMES.map((name) => [name, 0]),
) as Record<TableName, number>; // every table is named

/** Small enough that a year soon has many. */
const full = { records: 64, rows: 1000 };

/** Records that come, each with as many rows: a chunk is closed once it is full, so its last record may go past the rows. */
const chunk = fc
  .tuple(
    fc.integer({ min: 1, max: full.records }),
    fc.constantFrom(1, 2, 5, 20, 300, 3 * full.rows),
  )
  .map(([most, each]) => {
    const records = Math.min(most, Math.ceil(full.rows / each));
    return { records, rows: records * each };
  });

/** What one export does to a year: how many records of each part are gone, and what comes. */
const exports = fc.array(
  fc.record({
    gone: fc.array(fc.double({ min: 0, max: 1, noNaN: true }), {
      maxLength: 6,
    }),
    come: fc.array(chunk, { maxLength: 4 }),
  }),
  { maxLength: 60, size: "max" },
);

test("whatever comes and goes", () => {
  fc.assert(
    fc.property(exports, (all) => {
      let parts: readonly (Part & { readonly rows: number })[] = [];
      let records = 0;
      for (const [index, { gone, come }] of all.entries()) {
        const old = parts.map((part, at) => {
          const share = gone[at] ?? 0;
          const left = Math.floor(share * part.records);
          return {
            part,
            gone: left,
            rows: part.rows - Math.floor((left / part.records) * part.rows),
          };
        });
        const chunks = come.map((each, number) => ({ number, ...each }));
        const { kept, made } = planYear(2026, old, chunks, full);
        records += come.reduce((sum, each) => sum + each.records, 0);
        records -= old.reduce((sum, each) => sum + each.gone, 0);
        // each source goes to one place, or is empty
        const used = [...kept, ...made.flatMap((each) => each.from)];
        expect(new Set(used).size).toBe(used.length);
        for (const each of old)
          expect(used.includes(each.part)).toBe(each.gone < each.part.records);
        expect(
          made
            .flatMap((each) => each.chunks)
            .sort((a, b) => a.number - b.number),
        ).toEqual(chunks);
        for (const each of old)
          if (0 < each.gone) expect(kept).not.toContain(each.part);
          // what is half full, by records or by rows, is not written again for nothing
          else if (
            full.records <= 2 * each.part.records ||
            full.rows <= 2 * each.rows
          )
            expect(kept).toContain(each.part);
        const rowsOf = new Map(old.map((each) => [each.part.name, each.rows]));
        const fresh = made.map((each, number) => ({
          name: `${index}-${number}`,
          year: 2026,
          records: each.records,
          bytes,
          rows: [
            ...each.from.map(({ name }) => rowsOf.get(name) ?? 0),
            ...each.chunks.map(({ rows }) => rows),
          ].reduce((sum, rows) => sum + rows, 0),
          sources: each.from.length + each.chunks.length,
        }));
        for (const { sources, ...part } of fresh) {
          expect(part.records).toBeGreaterThan(0);
          expect(part.records).toBeLessThanOrEqual(full.records);
          // nothing is put to what is full by itself
          if (1 < sources) expect(part.rows).toBeLessThanOrEqual(full.rows);
        }
        parts = [
          ...kept.map((part) => ({
            ...part,
            rows: rowsOf.get(part.name) ?? 0,
          })),
          ...fresh,
        ];
        expect(parts.reduce((sum, part) => sum + part.records, 0)).toBe(
          records,
        );
        const small = parts.filter(
          (part) =>
            part.records < full.records / 2 && part.rows < full.rows / 2,
        );
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
      parts.map((part) => ({ part, gone: 0, rows: 1 })),
      [],
    ),
  ).toEqual({ kept: parts, made: [] });
});

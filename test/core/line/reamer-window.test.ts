import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { isLess } from "../../../server/core/line/range.ts";
import { lineWindow } from "../../../server/core/line/reamer-window.ts";
import {
  boreLimits,
  type WantingJournal,
} from "../../../server/core/line/wanting-journal.ts";
import { known, refusal } from "./answers.ts";

const inch = 0.0254;

function journal(
  least: number,
  greatest: number,
  low = 0.0008,
  high = 0.0016,
): WantingJournal {
  return {
    least: least * inch,
    greatest: greatest * inch,
    wanted: { low: low * inch, high: high * inch },
  };
}

/** Every bore size in steps of a tenth of a thou, tried on every place of the journal: what the window must agree with. */
function suits(size: number, one: WantingJournal): boolean {
  return [one.least, one.greatest].every((diameter) => {
    const tenths = Math.round((size - diameter) * 1e10);
    return (
      Math.round(one.wanted.low * 1e10) <= tenths &&
      tenths <= Math.round(one.wanted.high * 1e10)
    );
  });
}

const tenth = 2.54e-6;
/** Journals near 100 thou in whole tenths of a thou, so that windows often touch. */
const anyJournal = fc
  .tuple(
    fc.integer({ min: 0, max: 20 }),
    fc.nat(4),
    fc.integer({ min: -2, max: 6 }),
    fc.nat(10),
  )
  .map(([at, spread, low, width]): WantingJournal => ({
    least: (1000 + at) * tenth,
    greatest: (1000 + at + spread) * tenth,
    wanted: { low: low * tenth, high: (low + width) * tenth },
  }));
const anyLine = fc.array(anyJournal, { minLength: 1, maxLength: 6 });
const sizes = Array.from({ length: 80 }, (_, step) => (980 + step) * tenth);

describe("window of one journal", () => {
  test("largest journal plus least want, smallest plus most", () => {
    const limits = known(boreLimits(journal(0.87428, 0.87435)));
    expect(limits.low / inch).toBeCloseTo(0.87515, 10);
    expect(limits.high / inch).toBeCloseTo(0.87588, 10);
  });

  test("passes itself where the journal varies more than the want is wide", () => {
    const limits = known(boreLimits(journal(0.874, 0.875)));
    expect(limits.high < limits.low).toBe(true);
  });

  test("refuses what is no journal", () => {
    expect(refusal(boreLimits(journal(0.9, 0.8)))).toContain(
      "larger to the smaller",
    );
    expect(refusal(boreLimits(journal(0.8, 0.9, 0.002, 0.001)))).toContain(
      "wanted clearance",
    );
    expect(refusal(boreLimits(journal(-1, 0.9)))).toContain("not above zero");
  });
});

describe("window of a line", () => {
  test("is the intersection", () => {
    const window = known(
      lineWindow([
        journal(0.8742, 0.8743),
        journal(0.8745, 0.8745),
        journal(0.8743, 0.8744),
      ]),
    );
    if (!window.open) throw new Error("no window");
    expect(window.window.low / inch).toBeCloseTo(0.8753, 10);
    expect(window.window.high / inch).toBeCloseTo(0.8758, 10);
  });

  test("refuses a line with a journal that is none", () => {
    expect(
      refusal(lineWindow([journal(0.8742, 0.8743), journal(0.9, 0.8)])),
    ).toContain("larger to the smaller");
  });

  test("journals whose windows touch share that one size", () => {
    const window = known(
      lineWindow([journal(0.8737, 0.8737), journal(0.8745, 0.8745)]),
    );
    expect(window.open && window.window.low / inch).toBeCloseTo(0.8753, 10);
  });

  test("holds exactly the sizes that suit every journal", () => {
    fc.assert(
      fc.property(anyLine, (line) => {
        const answer = known(lineWindow(line));
        for (const size of sizes) {
          const inside =
            answer.open &&
            answer.window.low - 5e-11 <= size &&
            size <= answer.window.high + 5e-11;
          expect(inside).toBe(line.every((one) => suits(size, one)));
        }
      }),
    );
  });

  test("doesn't depend on the order of the journals, and one more never widens it", () => {
    fc.assert(
      fc.property(anyLine, anyJournal, (line, more) => {
        const windowOf = (journals: WantingJournal[]) => {
          const answer = known(lineWindow(journals));
          return answer.open ? answer.window : undefined;
        };
        expect(windowOf([...line].reverse())).toEqual(windowOf(line));
        const [before, after] = [windowOf(line), windowOf([...line, more])];
        if (after) {
          expect(
            before &&
              !isLess(after.low, before.low) &&
              !isLess(before.high, after.high),
          ).toBe(true);
        }
      }),
    );
  });

  test("is the same in inches as in metres", () => {
    const inInches = known(
      lineWindow([journal(0.8742, 0.8743), journal(0.8745, 0.8746)]),
    );
    const inMillimetres = known(
      lineWindow([
        {
          least: 22.20468e-3,
          greatest: 22.20722e-3,
          wanted: { low: 0.02032e-3, high: 0.04064e-3 },
        },
        {
          least: 22.2123e-3,
          greatest: 22.21484e-3,
          wanted: { low: 0.02032e-3, high: 0.04064e-3 },
        },
      ]),
    );
    if (!inInches.open || !inMillimetres.open) throw new Error("no window");
    expect(inInches.window.low).toBeCloseTo(inMillimetres.window.low, 12);
    expect(inInches.window.high).toBeCloseTo(inMillimetres.window.high, 12);
  });

  test("refuses a line without journals", () => {
    expect(refusal(lineWindow([]))).toContain("no journal");
    expect(refusal(lineWindow([journal(1, 1)], -1))).toContain("width");
  });
});

function conflictOf(line: readonly WantingJournal[], room = 0) {
  const answer = known(lineWindow(line, room));
  if (answer.open) throw new Error("there is a window");
  return answer.conflict;
}

describe("no window", () => {
  const line = [
    journal(0.8742, 0.8743),
    journal(0.8755, 0.8755),
    journal(0.8743, 0.8744),
    journal(0.8754, 0.8754),
  ];

  test("names the two journals in conflict and by how much", () => {
    const conflict = conflictOf(line);
    // rear needs 0.8755 + 0.0008, front allows 0.8742 + 0.0016
    expect([conflict.needsLarger, conflict.needsSmaller]).toEqual([1, 0]);
    expect(conflict.by / inch).toBeCloseTo(0.0005, 10);
  });

  test("first way out: the fewest reamers", () => {
    const { reamers } = conflictOf(line);
    expect(reamers.map(({ journals }) => journals)).toEqual([
      [0, 2],
      [1, 3],
    ]);
    expect(reamers[1]?.window.low).toBeCloseTo(0.8763 * inch, 12);
  });

  test("second way out: size down every journal that is too large, and the line has a window of that room", () => {
    const { sizeDown } = conflictOf(line, 0.0002 * inch);
    expect(
      sizeDown?.map(({ journal: index, by }) => [
        index,
        Math.round((by / inch) * 1e6),
      ]),
    ).toEqual([
      [1, 700],
      [3, 600],
    ]);
    const sized = line.map((one, index) => {
      const by = sizeDown?.find(({ journal: at }) => at === index)?.by ?? 0;
      return { ...one, least: one.least - by, greatest: one.greatest - by };
    });
    const window = known(lineWindow(sized));
    expect(
      window.open && (window.window.high - window.window.low) / inch,
    ).toBeCloseTo(0.0002, 10);
  });

  test("third way out: the size that errs least at the worst journal", () => {
    const { accept } = conflictOf(line);
    expect(accept.size / inch).toBeCloseTo(0.87605, 10);
    expect(accept.beyond / inch).toBeCloseTo(0.00025, 10);
    expect((accept.clearances[1]?.low ?? NaN) / inch).toBeCloseTo(0.00055, 10);
    expect((accept.clearances[0]?.high ?? NaN) / inch).toBeCloseTo(0.00185, 10);
  });

  test("a journal that varies more than its want is wide is in conflict with itself: no reamer and no sizing serves it", () => {
    const conflict = conflictOf([
      journal(0.8742, 0.8743),
      journal(0.874, 0.8752),
    ]);
    expect(conflict.needsLarger).toBe(1);
    expect(conflict.needsSmaller).toBe(1);
    expect(conflict.unservable).toEqual([1]);
    expect(conflict.reamers.map(({ journals }) => journals)).toEqual([[0]]);
    expect(conflict.sizeDown).toBeUndefined();
  });

  test("ways out hold for any line", () => {
    fc.assert(
      fc.property(anyLine, (line) => {
        const answer = known(lineWindow(line));
        if (answer.open) return;
        const { reamers, unservable, sizeDown, accept, by } = answer.conflict;
        expect(0 < by).toBe(true);
        // every servable journal has one reamer, whose window suits it
        const served = reamers.flatMap(({ journals }) => journals);
        expect([...served, ...unservable].sort((a, b) => a - b)).toEqual(
          line.map((_, index) => index),
        );
        for (const { journals, window } of reamers) {
          for (const index of journals) {
            for (const size of [window.low, window.high])
              expect(suits(size, line[index] ?? journal(0, 0))).toBe(true);
          }
        }
        // and they are the fewest: no smaller set of sizes suits them all (every useful size is a window's end)
        const ends = served.map((index) => answer.each[index]?.high ?? NaN);
        expect(reamers.length).toBe(
          fewestSizes(
            ends,
            served.map((index) => line[index] ?? journal(0, 0)),
          ),
        );
        if (sizeDown) {
          const sized = line.map((one, index) => {
            const down =
              sizeDown.find(({ journal: at }) => at === index)?.by ?? 0;
            return {
              ...one,
              least: one.least - down,
              greatest: one.greatest - down,
            };
          });
          expect(known(lineWindow(sized)).open).toBe(true);
        }
        // no size on the grid errs less at its worst journal than the accepted one
        const errorOf = (size: number) =>
          Math.max(
            ...answer.each.map(({ low, high }) =>
              Math.max(low - size, size - high),
            ),
          );
        expect(errorOf(accept.size)).toBeCloseTo(accept.beyond, 12);
        for (const size of sizes)
          expect(accept.beyond - 1e-12 <= errorOf(size)).toBe(true);
      }),
    );
  });
});

/** By trying every subset of the sizes. */
function fewestSizes(
  ends: readonly number[],
  journals: readonly WantingJournal[],
): number {
  let fewest = journals.length;
  for (let set = 0; set < 2 ** ends.length; set++) {
    const chosen = ends.filter((_, bit) => set & (1 << bit));
    if (journals.every((one) => chosen.some((size) => suits(size, one))))
      fewest = Math.min(fewest, chosen.length);
  }
  return fewest;
}

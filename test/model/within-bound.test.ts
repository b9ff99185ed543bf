// Which side of its bound a concession lets a value go to: of what is too little down to it, of what is too much up to it.
import { expect, test } from "vitest";
import {
  isWithin,
  type Concession,
} from "../../server/model/evaluate/concessions.ts";

/** A concession with a bound of 2 µm. */
const bounded = (code: string): Concession => ({
  ref: "concession c",
  name: "c",
  code,
  on: "fit front",
  bound: { value: 2e-6, dimension: "length", asLength: undefined },
  who: "AK",
  date: "2026-11-02",
});
const within = (code: string, value: number): boolean | undefined =>
  isWithin({ code, value }, bounded(code), undefined);

// a clearance, an interference, a stock, a film, what is left of a line's clearance, a ratio to a gauge: each is worse the less there is
test.each([
  ...["fit-tight", "fit-interferes", "hot-tight", "cold-tight"],
  ...["press-light", "bush-slips-hot", "stock-thin"],
  ...["line-crooked", "film-thin", "gauge-coarse"],
])("%s: no less than the bound", (code) => {
  expect(within(code, 1e-6)).toBe(false);
  expect(within(code, 2e-6)).toBe(true);
  expect(within(code, 3e-6)).toBe(true);
});

test.each([
  "fit-loose",
  "hot-loose",
  "cold-loose",
  "press-heavy",
  "taper",
  "out-of-round",
  "lobed",
])("%s: no more than the bound", (code) => {
  expect(within(code, 1e-6)).toBe(true);
  expect(within(code, 2e-6)).toBe(true);
  expect(within(code, 3e-6)).toBe(false);
});

test.each(["reading-off-limits", "worn", "float-off"])(
  "%s: not to be told without what the entry asks",
  (code) => {
    expect(within(code, 1e-6)).toBeUndefined();
  },
);

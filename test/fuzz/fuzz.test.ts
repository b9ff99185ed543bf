// The fuzzer with a small budget and the same inputs at every run; run.mjs has as long as it is given.
import path from "node:path";
import { expect, test } from "vitest";
import { AIMS, fuzz } from "./fuzz.ts";

const TEST = path.join(import.meta.dirname, "..");

/** Inputs of each aim: some seconds' worth. */
const BUDGET: Readonly<Record<keyof typeof AIMS, number>> = {
  reading: 500,
  server: 90,
  cli: 60,
};

test.each(Object.entries(BUDGET))(
  "%s stands all of its inputs",
  async (aim, most) => {
    const { tried, crashes } = await fuzz({
      test: TEST,
      seed: 20261126,
      aims: [aim],
      goesOn: (inputs) => inputs < most,
    });
    expect(crashes).toEqual([]);
    expect(tried[aim]?.inputs).toBe(most);
    // a request or a command that nothing came of would make the rest idle
    expect(tried[aim]?.asked).toBeGreaterThan(most * 3);
  },
);

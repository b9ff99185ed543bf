// Reads the certified data sets of test/fixtures/nist, and makes those that NIST defines by a rule.
import { readFileSync } from "node:fs";

export interface Certified {
  readonly name: string;
  readonly mean: number;
  readonly standardDeviation: number;
  readonly values: readonly number[];
}

export function readCertified(name: string): Certified {
  const text = readFileSync(
    new URL(`../../fixtures/nist/${name}.dat`, import.meta.url),
    "utf8",
  );
  const lines = text
    .split("\n")
    .filter((line) => line !== "" && !line.startsWith("#"));
  const field = (key: string): number => {
    const line = lines.find((each) => each.startsWith(`${key} `));
    if (line === undefined) throw new Error(`${name}: no ${key}`);
    return Number(line.slice(key.length + 1));
  };
  const values = lines
    .slice(lines.indexOf("data") + 1)
    .flatMap((line) => line.split(" ").map(Number));
  if (values.length !== field("count"))
    throw new Error(`${name}: ${values.length} values`);
  return {
    name,
    mean: field("mean"),
    standardDeviation: field("standard-deviation"),
    values,
  };
}

/** The rule of NumAcc2, 3 and 4: one `middle`, then 500 pairs of a tenth below and a tenth above it, each as written in decimals. */
export function numAcc(name: string, whole: string): Certified {
  const [low, middle, high] = [`${whole}.1`, `${whole}.2`, `${whole}.3`].map(
    Number,
  ) as [number, number, number];
  const pairs = Array.from({ length: 1000 }, (_, i) =>
    i % 2 === 0 ? low : high,
  );
  return {
    name,
    mean: middle,
    standardDeviation: 0.1,
    values: [middle, ...pairs],
  };
}

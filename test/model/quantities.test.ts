// What a reader of quantities gives by itself: all of a range or list in SI, or nothing. That a line with a problem has no value besides is
// held in facts.test.ts.
import { describe, expect, test } from "vitest";
import { parseBody } from "../../grammar/parse.ts";
import { nodesIn, type Node } from "../../grammar/tree.ts";
import type { System } from "../../server/core/quantity/show.ts";
import {
  lengthsOf,
  temperatureOf,
  valueOf,
  valuesOf,
  type LineReader,
} from "../../server/model/quantities.ts";

function reader(
  body: string,
  system?: System,
): { readonly line: LineReader; readonly codes: string[] } {
  const codes: string[] = [];
  return {
    line: {
      body,
      system,
      spanOf: ({ start, end }) => ({ line: 0, start, end }),
      report: (code) => {
        codes.push(code);
      },
    },
    codes,
  };
}

/** The nodes of a type in a line, in order. */
function nodesOf(body: string, rule: string, type: string): readonly Node[] {
  return nodesIn(parseBody(body, rule).tree).filter(
    (node) => node.type === type,
  );
}

describe("lengths of a range", () => {
  const lengths = (body: string, system?: System) => {
    const { line, codes } = reader(body, system);
    const found = lengthsOf(line, nodesOf(body, "LimitsFact", "length"));
    return { found: found?.map(({ value }) => value), codes };
  };

  test("are in the file's unit where they are bare, and nothing where it has none, which is said once", () => {
    expect(lengths("limits 24 to 25", "mm").found).toEqual([0.024, 0.025]);
    expect(lengths("limits 24 to 25")).toEqual({
      found: undefined,
      codes: ["units-unwritten"],
    });
  });

  test("all have the unit at the end, and none where the first alone has one", () => {
    expect(lengths("limits 24 to 25 mm", "inch")).toEqual({
      found: [0.024, 0.025],
      codes: [],
    });
    expect(lengths("limits 24 mm to 25", "mm")).toEqual({
      found: undefined,
      codes: ["unit-missing"],
    });
  });

  test("are nothing where one can't be read, and what is wrong is said once", () => {
    expect(lengths("limits 24 to 25,1", "mm")).toEqual({
      found: undefined,
      codes: ["number-comma"],
    });
    expect(lengths("limits 24 to 25 lbf", "mm")).toEqual({
      found: undefined,
      codes: ["unit-wrong"],
    });
  });
});

test("other quantities are in SI, with their dimension, or nothing", () => {
  const runs = (body: string) => {
    const { line, codes } = reader(body);
    const [node] = nodesOf(body, "RunsFact", "rotation");
    if (node === undefined) throw new Error(`no rotation in ${body}`);
    return [
      valueOf(line, node, "rotation"),
      valuesOf(line, [node], "rotation"),
      codes,
    ];
  };
  // 240 turns a minute are 4 a second
  const [one, list] = runs("runs 240 rpm");
  expect(one).toEqual({ value: 4, dimension: "rotation" });
  expect(list).toEqual([4]);
  expect(runs("runs 240").slice(0, 2)).toEqual([undefined, undefined]);
  expect(runs("runs 240 lbf").slice(0, 2)).toEqual([undefined, undefined]);
});

test("a temperature has the step of its last digit, in kelvin, and without its unit it is none", () => {
  const at = (body: string) => {
    const { line } = reader(body, "inch");
    const [node] = nodesOf(body, "TemperatureFact", "temperature");
    if (node === undefined) throw new Error(`no temperature in ${body}`);
    return temperatureOf(line, node);
  };
  expect(at("temperature 20.5 C")?.value).toBeCloseTo(20.5, 12);
  expect(at("temperature 20.5 C")?.step).toBeCloseTo(0.1, 12);
  expect(at("temperature 68 F")?.value).toBeCloseTo(20, 12);
  expect(at("temperature 68 F")?.step).toBeCloseTo(5 / 9, 12);
  expect(at("temperature 68")).toBeUndefined();
});

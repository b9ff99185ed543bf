// The graph remembers, and works out again only what depends on a change.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  createGraph,
  Loop,
  readInput,
  readQuery,
  setInput,
  watch,
  type Graph,
} from "../../server/model/graph.ts";

function number(graph: Graph, key: string): number {
  return (readInput(graph, key, "") as number | undefined) ?? 0;
}

describe("the graph", () => {
  test("works out a value once, and again when an input of it changes", () => {
    const graph = createGraph();
    const seen: string[] = [];
    graph.trace = (key) => seen.push(key);
    const double = (): unknown =>
      readQuery(graph, "double", "", undefined, () => 2 * number(graph, "a"));
    setInput(graph, "a", "", 1);
    setInput(graph, "b", "", 1);
    expect([double(), double()]).toEqual([2, 2]);
    setInput(graph, "b", "", 5);
    expect(double()).toBe(2);
    expect(seen).toEqual(["double"]);
    setInput(graph, "a", "", 4);
    expect(double()).toBe(8);
    expect(seen).toEqual(["double", "double"]);
  });

  test("stops where a value comes out as it was", () => {
    const graph = createGraph();
    const seen: string[] = [];
    graph.trace = (key) => seen.push(key);
    const parity = (): unknown =>
      readQuery(graph, "parity", "", undefined, () => ({
        odd: number(graph, "a") % 2,
      }));
    const word = (): unknown =>
      readQuery(graph, "word", "", undefined, () =>
        (parity() as { odd: number }).odd === 1 ? "odd" : "even",
      );
    setInput(graph, "a", "", 1);
    expect(word()).toBe("odd");
    setInput(graph, "a", "", 3);
    expect(word()).toBe("odd");
    expect(seen).toEqual(["word", "parity", "parity"]);
  });

  test("an input that was missing and is set counts as a change", () => {
    const graph = createGraph();
    const there = (): unknown =>
      readQuery(
        graph,
        "there",
        "",
        undefined,
        () => readInput(graph, "x", "") !== undefined,
      );
    expect(there()).toBe(false);
    setInput(graph, "x", "", 1);
    expect(there()).toBe(true);
  });

  test("a query that asks for itself is a loop, with its keys", () => {
    const graph = createGraph();
    const one = (): unknown =>
      readQuery(graph, "one", "", undefined, () => two());
    const two = (): unknown =>
      readQuery(graph, "two", "", undefined, () => one());
    expect(one).toThrow(Loop);
    expect(one).toThrow("one → two");
  });

  test("what a query no longer reads puts it in no doubt", () => {
    const graph = createGraph();
    const doubted = watch(graph, "either");
    const either = (): unknown =>
      readQuery(graph, "either", "it", undefined, () =>
        number(graph, "which") === 1
          ? number(graph, "a")
          : number(graph, "b") + number(graph, "c"),
      );
    for (const [name, value] of [
      ["which", 1],
      ["a", 4],
      ["b", 5],
    ] as const)
      setInput(graph, name, "", value);
    expect(either()).toBe(4);
    setInput(graph, "which", "", 0);
    expect(either()).toBe(5);
    doubted.clear();
    setInput(graph, "a", "", 6);
    expect([...doubted]).toEqual([]);
    setInput(graph, "c", "", 6);
    expect([...doubted]).toEqual(["it"]);
    expect(either()).toBe(11);
  });

  test("an input that thousands read is told to each, and to those alone that still do", () => {
    const graph = createGraph();
    const doubted = watch(graph, "one");
    const one = (of: number): unknown =>
      readQuery(graph, "one", String(of), undefined, (_, own) =>
        Number(own) % 2 === number(graph, "which") ? number(graph, "a") : -1,
      );
    const all = Array.from({ length: 40 }, (_, of) => of);
    setInput(graph, "which", "", 0);
    setInput(graph, "a", "", 1);
    const read = (): unknown[] => all.map(one);
    const wanted = (which: number, a: number): number[] =>
      all.map((of) => (of % 2 === which ? a : -1));
    expect(read()).toEqual(wanted(0, 1));
    setInput(graph, "which", "", 1);
    expect(read()).toEqual(wanted(1, 1));
    doubted.clear();
    setInput(graph, "a", "", 2);
    expect([...doubted]).toEqual(all.filter((of) => of % 2 === 1).map(String));
    expect(read()).toEqual(wanted(1, 2));
  });

  test.each([1, 5, 12, 13, 30])(
    "each of %d inputs that are read again and again hangs on the query once",
    (count) => {
      const graph = createGraph();
      const names = Array.from({ length: count }, (_, at) => `in${String(at)}`);
      for (const name of names) setInput(graph, name, "", 1);
      const sum = (): unknown =>
        readQuery(graph, "sum", "", undefined, () =>
          [...names, ...names, ...names].reduce(
            (all, name) => all + number(graph, name),
            0,
          ),
        );
      expect(sum()).toBe(3 * count);
      const needs = graph.kinds.get("sum")?.cells.get("")?.needs;
      expect([needs].flat()).toHaveLength(count);
      setInput(graph, "in0", "", 2);
      expect(sum()).toBe(3 * count + 3);
    },
  );

  test("whatever a query reads the next time, it hangs on each of that once, and on nothing else", () => {
    const reads = fc.array(fc.nat(39), { maxLength: 60 });
    fc.assert(
      fc.property(fc.array(reads, { maxLength: 6 }), (lists) => {
        const graph = createGraph();
        const doubted = watch(graph, "sum");
        let list: readonly number[] = [];
        const sum = (): unknown =>
          readQuery(graph, "sum", "it", undefined, () => {
            number(graph, "round");
            return list.reduce(
              (all, at) => all + number(graph, `in${String(at)}`),
              0,
            );
          });
        lists.forEach((each, round) => {
          list = each;
          setInput(graph, "round", "", round + 1);
          sum();
          const needs = graph.kinds.get("sum")?.cells.get("it")?.needs;
          expect([needs].flat().map((need) => need?.kind.name)).toEqual([
            ...new Set(["round", ...each.map((at) => `in${String(at)}`)]),
          ]);
          const [read] = each;
          const other = [...Array(40).keys()].find((at) => !each.includes(at));
          doubted.clear();
          setInput(graph, `in${String(other)}`, "", 1000 * (round + 1));
          expect(doubted.size).toBe(0);
          if (read === undefined) return;
          setInput(graph, `in${String(read)}`, "", 2000 * (round + 1));
          expect(doubted.size).toBe(1);
          expect(sum()).toBe(
            each.reduce((all, at) => all + number(graph, `in${String(at)}`), 0),
          );
        });
      }),
    );
  });

  test("a failure is not remembered", () => {
    const graph = createGraph();
    let fails = true;
    const risky = (): unknown =>
      readQuery(graph, "risky", "", undefined, () => {
        if (fails) throw new Error("not yet");
        return 1;
      });
    expect(risky).toThrow("not yet");
    fails = false;
    expect(risky()).toBe(1);
  });

  test("a watched query is in doubt when what it reads changes, and when it failed", () => {
    const graph = createGraph();
    const doubted = watch(graph, "risky");
    const risky = (): unknown =>
      readQuery(graph, "risky", "it", undefined, () => {
        if (number(graph, "a") === 1) throw new Error("not yet");
        return 1;
      });
    expect(risky()).toBe(1);
    expect([...doubted]).toEqual([]);
    setInput(graph, "b", "", 1);
    expect([...doubted]).toEqual([]);
    setInput(graph, "a", "", 1);
    expect([...doubted]).toEqual(["it"]);
    doubted.clear();
    expect(risky).toThrow("not yet");
    expect([...doubted]).toEqual(["it"]);
  });

  test("whatever changes in whatever order, values are those worked out afresh, and those held are unless they are in doubt", () => {
    // query i sums two earlier cells; cells 0 to 4 are inputs
    const shape = fc.array(fc.tuple(fc.nat(100), fc.nat(100), fc.boolean()), {
      minLength: 1,
      maxLength: 20,
    });
    const steps = fc.array(
      fc.oneof(
        fc.record({ set: fc.nat(4), to: fc.nat(3) }),
        fc.record({ read: fc.nat(30) }),
      ),
      { maxLength: 40 },
    );
    fc.assert(
      fc.property(shape, steps, (queries, all) => {
        const graph = createGraph();
        const inputs = [0, 0, 0, 0, 0];
        const cell = (index: number): number => {
          if (index < 5) return number(graph, `in${String(index)}`);
          const [a, b, cut] = queries[index - 5] ?? [0, 0, false];
          return readQuery(graph, `q${String(index)}`, "", undefined, () => {
            const sum = cell(a % index) + cell(b % index);
            return cut ? sum % 2 : sum;
          }) as number;
        };
        const afresh = (index: number): number => {
          if (index < 5) return inputs[index] ?? 0;
          const [a, b, cut] = queries[index - 5] ?? [0, 0, false];
          const sum = afresh(a % index) + afresh(b % index);
          return cut ? sum % 2 : sum;
        };
        const doubtedOf = (index: number): Set<string> =>
          watch(graph, `q${String(index)}`);
        queries.forEach((_, index) => doubtedOf(index + 5));
        const held = new Map<number, number>();
        for (const step of all) {
          for (const [index, value] of held)
            if (doubtedOf(index).size === 0) expect(value).toBe(afresh(index));
          if ("set" in step) {
            inputs[step.set] = step.to;
            setInput(graph, `in${String(step.set)}`, "", step.to);
          } else {
            const index = step.read % (queries.length + 5);
            expect(cell(index)).toBe(afresh(index));
            if (5 <= index) held.set(index, cell(index));
            doubtedOf(index).clear();
          }
        }
      }),
    );
  });
});

// What is typed while an answer is on its way waits for its turn, and counts at once.
import { expect, test } from "vitest";
import { createTurns } from "../../client/turns.ts";

/** A step that is done when the test says so. */
function step() {
  let done = (): void => undefined;
  const isDone = new Promise<void>((resolve) => {
    done = resolve;
  });
  return { done, isDone };
}

const rest = () => new Promise(setImmediate);

test("each is taken with all before it, once the one before has been", async () => {
  const begun = step();
  const turns = createTurns(["0.8741"], begun.isDone);
  const steps = [step(), step()];
  const taking: (readonly string[])[] = [];
  const add = (input: string, number: number) => {
    turns.add(input, (inputs) => {
      taking.push(inputs);
      return steps[number]?.isDone ?? Promise.resolve();
    });
  };
  add("0.8742", 0);
  add("u", 1);
  expect(turns.inputs()).toEqual(["0.8741", "0.8742", "u"]);
  await rest();
  expect(taking).toEqual([]);
  begun.done();
  await rest();
  expect(taking).toEqual([["0.8741", "0.8742"]]);
  let isTaken = false;
  void turns.taken().then(() => {
    isTaken = true;
  });
  steps[0]?.done();
  await rest();
  expect(taking.at(-1)).toEqual(["0.8741", "0.8742", "u"]);
  expect(isTaken).toBe(false);
  steps[1]?.done();
  await rest();
  expect(isTaken).toBe(true);
});

test("where nothing was typed, all is taken once it has begun", async () => {
  const turns = createTurns([], Promise.resolve());
  await turns.taken();
  expect(turns.inputs()).toEqual([]);
});

// What was typed, in its order: each is taken once the one before has been, however fast they come.
export interface Turns {
  /** All that was typed, what is not taken yet among it. */
  inputs(): readonly string[];
  /** @param take takes it together with all before it, and fails at nothing */
  add(input: string, take: (inputs: readonly string[]) => Promise<void>): void;
  /** Once all of it is taken. */
  taken(): Promise<void>;
}

/** @param begun what the first waits for */
export function createTurns(
  before: readonly string[],
  begun: Promise<void>,
): Turns {
  let inputs = before;
  let last = begun;
  return {
    inputs: () => inputs,
    add(input, take) {
      inputs = [...inputs, input];
      const all = inputs;
      last = last.then(() => take(all));
    },
    taken: () => last,
  };
}

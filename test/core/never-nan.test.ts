// What every function of the engineering keeps to: given numbers that are none, or that nothing measures, it refuses or it gives numbers; a
// value that says it is valid never holds NaN. What each refuses, and why, is in the tests beside this one.
import { expect, test } from "vitest";

const modules = import.meta.glob<Record<string, unknown>>(
  "../../server/core/**/*.ts",
  { eager: true },
);
const STRANGE = [Number.NaN, Number.POSITIVE_INFINITY, -1, 0, 1e-3, 1e300];
/** Beyond this many arguments a function takes one strange number at a time. */
const MOST = 3;

/** Every list of that many strange numbers; of long ones, each in which all but one are the same. */
function* argumentsOf(count: number): Generator<readonly number[]> {
  if (MOST < count) {
    for (const usual of [1e-3, 1])
      for (let at = 0; at < count; at++)
        for (const strange of STRANGE)
          yield Array.from({ length: count }, (_, index) =>
            index === at ? strange : usual,
          );
    return;
  }
  const total = STRANGE.length ** count;
  for (let number = 0; number < total; number++)
    yield Array.from(
      { length: count },
      (_, at) =>
        STRANGE[Math.floor(number / STRANGE.length ** at) % STRANGE.length] ??
        0,
    );
}

function holdsNaN(value: unknown): boolean {
  if (typeof value === "number") return Number.isNaN(value);
  return (
    typeof value === "object" &&
    value !== null &&
    Object.values(value).some(holdsNaN)
  );
}

function isAnswer(
  value: unknown,
): value is { readonly valid: boolean; readonly value?: unknown } {
  return typeof value === "object" && value !== null && "valid" in value;
}

/** They take what is no plain number: whatever there is, and a word. */
const OTHERS = new Set(["valid", "stockAllowance"]);

const answering = Object.entries(modules).flatMap(([file, exports]) =>
  Object.entries(exports).flatMap(([name, made]) =>
    typeof made === "function" && 0 < made.length && !OTHERS.has(name)
      ? [
          {
            file,
            name, // whatever it takes, it is asked with numbers alone
            call: made as (...words: unknown[]) => unknown,
          },
        ]
      : [],
  ),
);

test("a valid answer never holds NaN", { timeout: 30_000 }, () => {
  const bad: string[] = [];
  const asked = new Set<string>();
  for (const { file, name, call } of answering)
    for (const words of argumentsOf(call.length)) {
      let answer: unknown;
      try {
        answer = call(...words);
      } catch {
        // it takes no plain numbers
        continue;
      }
      if (!isAnswer(answer)) continue;
      asked.add(name);
      if (answer.valid && holdsNaN(answer.value))
        bad.push(`${file} ${name}(${words.join(", ")})`);
    }
  expect(bad).toEqual([]);
  // enough of them take plain numbers for this to mean something
  expect(asked.size).toBeGreaterThan(15);
});

// Opens an answer in a test: the value or the refusal that is expected there, or a failed test.
import type { Answer } from "../../../server/core/answer.ts";

export function known<T>(answer: Answer<T>): T {
  if (!answer.valid) throw new Error(`refused, because ${answer.because}`);
  return answer.value;
}

export function refusal(answer: Answer<unknown>): string {
  if (answer.valid) throw new Error(`answered ${JSON.stringify(answer.value)}`);
  return answer.because;
}

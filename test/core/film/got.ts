// The value of an answer that a test counts on.
import type { Answer } from "../../../server/core/answer.ts";

export function got<T>(answer: Answer<T>): T {
  if (!answer.valid)
    throw new Error(`not valid here, because ${answer.because}`);
  return answer.value;
}

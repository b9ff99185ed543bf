// What becomes of the results where one fact or one entry of a sample is left out, or its line can't be read: what can't be said any more, word for
// word, and what is then said otherwise, in golden files (`npm test -- -u` writes them anew; read the difference before they are committed).
// That it is right, no golden file says; that a damaged line changes only what hangs on it is damage.test.ts's.
import { expect, test } from "vitest";
import { soundSamples } from "../samples.ts";
import { leftOut } from "./left-out.ts";

test("each fact and each entry left out, and each line damaged", async () => {
  const { unknown, otherwise } = leftOut(soundSamples);
  await expect(`${unknown.join("\n")}\n`).toMatchFileSnapshot(
    "../fixtures/without.txt",
  );
  await expect(`${otherwise.join("\n")}\n`).toMatchFileSnapshot(
    "../fixtures/otherwise.txt",
  );
});
